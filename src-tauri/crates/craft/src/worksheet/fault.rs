//! The question of what is wrong with a face, drawn stone by stone.
//!
//! The stones are laid with faults on purpose; the answer is what the checker finds in them,
//! which knows nothing of how they were laid. Only faults that a face shows are asked about:
//! how far a stone reaches into the wall, it does not.

use super::draw::Draw;
use super::scale::{Scale, capital};
use super::{Kind, Level, Question};
use crate::quantity::{Length, Read, Units, metres, show_length, whole_number};
use crate::stonework::{
    Face, FaceEnd, Fault, FaultKind, PlantedFault, PlantedKind, Point, Stone, ThroughRow, check,
    lay,
};
use crate::wall::{Batter, Section};

/// The face asked about (common practice, no source): a usual wall that goes on at both ends.
const LENGTH_M: f64 = 4.5;
const HEIGHT_M: f64 = 1.1;
const COPE_M: f64 = 0.22;
const THROUGHS_M: f64 = 0.9;
/// Where a joint is put, along the face, three times in each column. Joints stand at least so
/// far apart, and so far from a through left out.
const PLACES_M: [f64; 15] = [
    0.55, 0.65, 0.75, 1.1, 1.35, 1.6, 2.0, 2.25, 2.5, 2.9, 3.15, 3.4, 3.75, 3.85, 3.95,
];
const APART_M: f64 = 0.8;
const FROM_THROUGH_M: f64 = 0.5;
/// A fault is found no farther from where it was wished than this.
const NEAR_M: f64 = 0.4;
/// Throughs that can be left out, counted from the left end: those between two others, so that
/// the gap runs from through to through.
const INNER: [f64; 3] = [1.5, 2.5, 3.5];
/// A joint stands so far from the line between two columns, which would hide it.
const CLEAR_M: f64 = 0.07;
/// Columns as wide as throughs stand apart: one left out is in the middle of a column.
const COLUMNS: usize = 5;
const ROWS: usize = 3;
/// Heights of planted joints above the ground: below the throughs and above them.
const HEIGHTS_M: [f64; 2] = [0.25, 0.7];
/// Stones beside a joint through three courses: plain to whoever looks for two.
const PLAIN_JOINT: usize = 6;
/// Walls are laid until one has just the faults asked for. With twice as many, draws would run
/// into those of the next question.
const ATTEMPTS: usize = 64;

/// Squares over a face by which a place is told: letters along, numbers up from the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// How many columns.
    pub columns: usize,
    /// How many rows.
    pub rows: usize,
    /// How wide a square is.
    pub width: Length,
    /// How high a square is.
    pub height: Length,
}

impl Grid {
    /// The column a point lies in, counted from 0; the nearest one for a point outside.
    pub fn column(&self, at: Point) -> usize {
        step_of(at.x, self.width, self.columns)
    }

    /// The letter of a column, counted from 0.
    pub fn letter(column: usize) -> char {
        ('A'..='Z').nth(column).unwrap_or('?')
    }

    /// The square a point lies in, `C2`; the nearest one for a point outside.
    pub fn square(&self, at: Point) -> String {
        format!(
            "{}{}",
            Self::letter(self.column(at)),
            step_of(at.y, self.height, self.rows) + 1
        )
    }
}

/// In which of so many steps a length ends, counted from 0.
fn step_of(at: Length, step: Length, count: usize) -> usize {
    let place = whole_number((at.si() / step.si()).floor().max(0.0));
    place.min(count.saturating_sub(1))
}

/// A face with faults, and what is wrong with it.
#[derive(Debug, Clone, PartialEq)]
pub struct FaultWall {
    /// Its stones.
    pub stones: Vec<Stone>,
    /// What the checker finds, from left to right.
    pub faults: Vec<Fault>,
    /// Along the wall.
    pub length: Length,
    /// Ground to the top of the cope.
    pub height: Length,
    /// Its squares.
    pub grid: Grid,
}

/// The face one student looks for faults in, counted from 0: at level 1 a running joint, at
/// level 2 a running joint and a missing through, at level 3 two running joints and a missing
/// through. Neighbours have joints in other columns: the columns of one add up to an even number,
/// those of the other to an odd one.
///
/// `None` if no face comes out with just these.
pub fn fault_wall(seed: u64, level: Level, student: usize) -> Option<FaultWall> {
    let mut draw = Draw::new(seed, student, Kind::FindTheFault);
    let grid = Grid {
        columns: COLUMNS,
        rows: ROWS,
        width: metres(LENGTH_M / COLUMNS as f64),
        height: metres((HEIGHT_M + COPE_M) / ROWS as f64),
    };
    (0..ATTEMPTS).find_map(|_| {
        let planted = planted(&mut draw, level)?;
        let face = face(draw.seed())?;
        let stones = lay(&face, &planted);
        let mut faults = check(&stones, &face.expectations());
        faults.sort_by(|a, b| a.at.x.si().total_cmp(&b.at.x.si()));
        let joints = faults
            .iter()
            .filter(|fault| fault.kind == FaultKind::RunningJoint);
        let columns: usize = joints.map(|fault| grid.column(fault.at)).sum();
        (is_as_asked(&planted, &faults) && draw.is_mine(columns)).then(|| FaultWall {
            stones,
            faults,
            length: face.length,
            height: metres(HEIGHT_M + COPE_M),
            grid,
        })
    })
}

fn face(seed: u64) -> Option<Face> {
    let six = Batter::one_in(6.0).ok()?;
    let level = |y: f64| {
        vec![Point {
            x: metres(0.0),
            y: metres(y),
        }]
    };
    Some(Face {
        length: metres(LENGTH_M),
        ground: level(0.0),
        top: level(HEIGHT_M),
        section: Section::new(metres(HEIGHT_M), metres(0.4), six, six).ok()?,
        throughs: vec![ThroughRow {
            below_top: metres(HEIGHT_M / 2.0),
            spacing: metres(THROUGHS_M),
            width: metres(0.3),
            thickness: metres(0.11),
        }],
        cope_height: metres(COPE_M),
        cope_thickness: metres(0.1),
        footing_depth: metres(0.0),
        ends: [FaceEnd::OnAndOn; 2],
        course_heights: [metres(0.15), metres(0.1)],
        stone_lengths: [metres(0.15), metres(0.42)],
        seed,
    })
}

/// What is put in, and about where.
fn planted(draw: &mut Draw, level: Level) -> Option<Vec<PlantedFault>> {
    let middle = metres(HEIGHT_M / 2.0);
    let mut faults = Vec::new();
    let mut free = PLACES_M.to_vec();
    if level != Level::Easy {
        let x = draw.pick(&INNER)? * THROUGHS_M;
        faults.push(PlantedFault::new(
            PlantedKind::MissingThrough,
            metres(x),
            middle,
        ));
        free.retain(|place| FROM_THROUGH_M <= (x - place).abs());
    }
    for _ in 0..level.pick(1, 1, 2) {
        let x = draw.pick(&free)?;
        let y = draw.pick(&HEIGHTS_M)?;
        faults.push(PlantedFault::new(
            PlantedKind::RunningJoint,
            metres(x),
            metres(y),
        ));
        free.retain(|place| APART_M < (x - place).abs());
    }
    Some(faults)
}

/// Whether just those faults are found that were put in, each about where it was and to be seen.
fn is_as_asked(planted: &[PlantedFault], found: &[Fault]) -> bool {
    let same = |one: &PlantedFault, fault: &Fault| {
        let kind = match one.kind {
            PlantedKind::RunningJoint => FaultKind::RunningJoint,
            PlantedKind::Traced => FaultKind::Traced,
            PlantedKind::MissingThrough => FaultKind::MissingThrough,
            PlantedKind::HollowHearting => FaultKind::HollowHearting,
        };
        kind == fault.kind && (one.near.x - fault.at.x).si().abs() < NEAR_M
    };
    let column = LENGTH_M / COLUMNS as f64;
    let is_plain = |fault: &Fault| {
        let over = fault.at.x.si() % column;
        match fault.kind {
            // A through at either end of the gap.
            FaultKind::MissingThrough => fault.stones.len() == 2,
            _ => PLAIN_JOINT <= fault.stones.len() && (CLEAR_M..column - CLEAR_M).contains(&over),
        }
    };
    planted.len() == found.len()
        && found.iter().all(is_plain)
        && planted
            .iter()
            .all(|one| found.iter().any(|fault| same(one, fault)))
}

/// Where the faults are, and what they are.
pub(super) fn find(wall: FaultWall, level: Level, units: Units) -> Question {
    let count = level.pick(
        "This wall has one fault. Write",
        "This wall has two faults. For each one, write",
        "This wall has faults. For each one, write",
    );
    let told: Vec<String> = wall
        .faults
        .iter()
        .map(|fault| format!("{} {}", wall.grid.square(fault.at), name(fault.kind)))
        .collect();
    let why: Vec<String> = wall
        .faults
        .iter()
        .map(|fault| reason(fault, &wall.grid, units))
        .collect();
    Question {
        ask: format!(
            "{count} the square its middle lies in and its number. The wall \
             goes on at both ends. Throughs have a heavy line, one about every {}.",
            Scale::of(units).either("0.9 m", "3 ft")
        ),
        working: why.join("\n"),
        answer: told.join("; "),
        tolerance: "any square the fault reaches is right".to_owned(),
        value: wall.faults.len() as f64,
        prompts: FOUND.map(|kind| capital(explained(kind))).to_vec(),
        wall: Some(wall),
        ..Question::of(Kind::FindTheFault)
    }
}

/// What can be wrong, as the sheet numbers it.
const FOUND: [FaultKind; 2] = [FaultKind::RunningJoint, FaultKind::MissingThrough];

fn explained(kind: FaultKind) -> &'static str {
    match kind {
        FaultKind::RunningJoint => "running joint: an upright joint through two courses or more",
        FaultKind::Traced => "traced stone: its length lies along the face",
        FaultKind::MissingThrough => "through left out",
        FaultKind::HollowHearting => "hollow: no hearting",
    }
}

fn name(kind: FaultKind) -> String {
    let number = FOUND.iter().position(|one| *one == kind);
    let words = explained(kind).split(':').next().unwrap_or_default();
    match number {
        Some(at) => format!("{} ({words})", at + 1),
        None => words.to_owned(),
    }
}

fn reason(fault: &Fault, grid: &Grid, units: Units) -> String {
    let (square, size) = (grid.square(fault.at), show_length(fault.size, units));
    match fault.kind {
        FaultKind::RunningJoint => {
            format!(
                "{square}: {size} of joint that no stone crosses; take down and lay a stone over it"
            )
        }
        FaultKind::MissingThrough => {
            format!("{square}: {size} from one through to the next; set one between")
        }
        FaultKind::Traced => format!("{square}: a stone {size} long that reaches in too little"),
        FaultKind::HollowHearting => format!("{square}: a hole {size} wide"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEED: u64 = 20_270_424;

    fn of(level: Level, student: usize) -> FaultWall {
        fault_wall(SEED, level, student).expect("a wall")
    }

    /// By hand: squares of 0.9 by 0.44 m.
    #[test]
    fn squares_are_counted_from_the_left_and_from_the_ground() {
        let wall = of(Level::Easy, 0);
        let at = |x: f64, y: f64| {
            wall.grid.square(Point {
                x: metres(x),
                y: metres(y),
            })
        };
        assert_eq!(at(0.1, 0.1), "A1");
        assert_eq!(at(1.9, 0.5), "C2");
        assert_eq!(at(4.49, 1.31), "E3");
        assert_eq!(at(9.0, -1.0), "E1");
    }

    /// The wall that is shown has just the faults its level says, wherever a student sits; no
    /// neighbour's joints are in the same columns, so that what is read off a neighbour is wrong.
    #[test]
    fn every_student_has_the_faults_of_the_level_and_no_neighbour_has_the_same() {
        for (level, joints, throughs) in [
            (Level::Easy, 1, 0),
            (Level::Usual, 1, 1),
            (Level::Hard, 2, 1),
        ] {
            let mut before: Option<Vec<usize>> = None;
            let mut answers = std::collections::BTreeSet::new();
            for student in 0..200 {
                let wall = of(level, student);
                let of = |kind| wall.faults.iter().filter(move |one| one.kind == kind);
                assert_eq!(wall.faults.len(), joints + throughs, "{:?}", wall.faults);
                assert_eq!(of(FaultKind::MissingThrough).count(), throughs);
                let columns: Vec<usize> = of(FaultKind::RunningJoint)
                    .map(|one| wall.grid.column(one.at))
                    .collect();
                assert_ne!(before.as_ref(), Some(&columns), "{level:?} {student}");
                before = Some(columns);
                answers.insert(find(wall, level, Units::Metric).answer);
            }
            assert!(8 <= answers.len(), "{level:?}: {answers:?}");
        }
    }

    /// By hand: throughs at 0.45 m and every 0.90 m from there, each up to 0.02 m off. One left
    /// out is missing midway between two that are there, 1.80 m apart.
    #[test]
    fn a_through_is_left_out_between_two_that_are_there() {
        for student in 0..100 {
            let wall = of(Level::Hard, student);
            for gap in wall
                .faults
                .iter()
                .filter(|one| one.kind == FaultKind::MissingThrough)
            {
                assert!((gap.size.si() - 1.8).abs() < 0.06, "{gap:?}");
                let off = INNER.map(|at| (gap.at.x.si() - at * THROUGHS_M).abs());
                assert!(off.iter().any(|off| *off < 0.03), "{gap:?}");
            }
        }
    }

    /// Whoever mends the wall finds nothing: the faults are those that were put in.
    #[test]
    fn without_faults_put_in_nothing_is_found() {
        for seed in 0..40 {
            let face = face(seed).expect("sound");
            assert_eq!(check(&lay(&face, &[]), &face.expectations()), []);
        }
    }

    #[test]
    fn the_answer_names_square_and_number() {
        let question = find(of(Level::Hard, 3), Level::Hard, Units::Metric);
        assert_eq!(question.answer.split("; ").count(), 3);
        assert!(
            question.answer.contains(" 2 (through left out)"),
            "{}",
            question.answer
        );
        assert_eq!(question.prompts.len(), 2);
    }
}
