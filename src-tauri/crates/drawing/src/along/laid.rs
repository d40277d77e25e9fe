//! The stones of the elevation, laid one by one.
//!
//! Throughs, copes and ends have their real sizes. Face stones too, where those can be told
//! apart on paper; else they are larger and fewer. Where heights are drawn larger than
//! lengths, stones are laid in the drawn shape, so that they still look like stones.

use crate::along::counted::{CountedRow, Counting, below_top};
use crate::along::lie::{Lie, Place};
use crate::paper::scale::Scale;
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::stonework::{self, FaceEnd, PlantedFault, PlantedKind, Role, Stone, ThroughRow};
use craft::wall::Batter;

/// Heights of the lowest course and of the one under the cope, and the shortest and longest
/// stone along the face (common practice, no source).
const COURSES_M: [f64; 2] = [0.17, 0.1];
const STONES_M: [f64; 2] = [0.14, 0.48];
/// The course under the cope on paper, where the real one would be lower: all face stones
/// are then larger by as much.
const LEAST_COURSE_MM: f64 = 1.4;

/// How many times larger face stones are drawn at a scale than they are.
pub(crate) fn larger(scale: Scale) -> f64 {
    (LEAST_COURSE_MM / (COURSES_M[1] * scale.mm_per_m())).max(1.0)
}

/// One stone.
pub(crate) struct LaidStone {
    /// Its corners: stations and levels.
    pub(crate) outline: Vec<Place>,
    pub(crate) role: Role,
}

/// All stones of a wall but those of its footing.
pub(crate) struct Laid {
    pub(crate) stones: Vec<LaidStone>,
    /// Where throughs stand above the ground: the stations of their middles, row by row.
    in_rows: Vec<Vec<f64>>,
}

impl Laid {
    /// The stones for a drawing at a scale, with heights drawn so many times larger.
    pub(crate) fn of(
        plan: &Plan,
        course: &Course,
        lie: &Lie<'_>,
        scale: Scale,
        times: u32,
    ) -> Self {
        let laying = Laying {
            plan,
            course,
            lie,
            times: f64::from(times),
            larger: larger(scale),
        };
        let counted = laying.counted();
        let stones: Vec<LaidStone> = stonework::lay(&laying.face(), &laying.hidden(&counted))
            .iter()
            .filter(|stone| stone.role != Role::Footing)
            .map(|stone| laying.real(stone))
            .filter(|stone| laying.is_built(stone))
            .collect();
        Self {
            in_rows: in_rows(plan, lie, &counted, &stones),
            stones,
        }
    }

    /// Where throughs of a row stand above the ground.
    pub(crate) fn in_row(&self, row: usize) -> &[f64] {
        self.in_rows.get(row).map_or(&[], Vec::as_slice)
    }
}

/// A wall and the paper it is drawn on.
struct Laying<'a> {
    plan: &'a Plan,
    course: &'a Course,
    lie: &'a Lie<'a>,
    /// How many times larger heights are drawn than lengths.
    times: f64,
    /// How many times larger face stones are drawn than they are. The wall is laid smaller
    /// by as much, of stones of their own size.
    larger: f64,
}

impl Laying<'_> {
    /// The face in the shape in which it is drawn.
    fn face(&self) -> stonework::Face {
        let (wall, lie) = (&self.course.wall, self.lie);
        let length = lie.length();
        let footing = wall.footing.map_or(metres(0.0), |footing| footing.depth);
        stonework::Face {
            length: self.along(self.plan.wall.length()),
            ground: self.points(lie.ground_line(0.0, length)),
            top: self.points(lie.top_line(0.0, length)),
            section: self.plan.section,
            throughs: self.through_rows(),
            cope_height: self.upwards(wall.cope_height),
            cope_thickness: self.along(self.cope_thickness()),
            footing_depth: self.upwards(footing),
            ends: [0, 1].map(|at| self.end(at)),
            course_heights: COURSES_M.map(metres),
            stone_lengths: STONES_M.map(metres),
            seed: self.course.seed,
        }
    }

    /// A length along the wall as it is laid.
    fn along(&self, length: Length) -> Length {
        length / self.larger
    }

    /// A height as it is laid.
    fn upwards(&self, height: Length) -> Length {
        height * (self.times / self.larger)
    }

    fn points(&self, line: Vec<Place>) -> Vec<stonework::Point> {
        let zero = self.lie.zero();
        line.into_iter()
            .map(|(x, y)| stonework::Point {
                x: self.along(metres(x)),
                y: self.upwards(metres(y - zero)),
            })
            .collect()
    }

    fn end(&self, at: usize) -> FaceEnd {
        let Some(end) = self.plan.ends.get(at) else {
            return FaceEnd::OnAndOn;
        };
        match end.kind {
            End::Head => FaceEnd::Head(self.drawn(end.batter)),
            End::Joined => FaceEnd::Joined,
            // Only in its own shape does a rake rise one in one; else it is cut out after.
            End::Raked if self.times <= 1.0 => FaceEnd::Raked,
            End::Raked => FaceEnd::OnAndOn,
        }
    }

    fn drawn(&self, batter: Batter) -> Batter {
        let steeper = batter.n().map(|n| Batter::one_in(n * self.times));
        steeper.and_then(Result::ok).unwrap_or(Batter::PLUMB)
    }

    /// Throughs as the plan counts them: at equal distances, so many to the whole length.
    fn through_rows(&self) -> Vec<ThroughRow> {
        let size = self.course.wall.through;
        let rows = self.plan.stone.throughs.iter();
        rows.map(|row| ThroughRow {
            below_top: self.upwards(self.plan.section.height() - row.height),
            spacing: self.along(self.plan.wall.length() / row.count as f64),
            width: self.along(size.width),
            thickness: self.upwards(size.thickness),
        })
        .collect()
    }

    /// The rows of throughs as the plan counts them.
    fn counted(&self) -> Vec<CountedRow> {
        let counting = Counting {
            plan: self.plan,
            course: self.course,
            lie: self.lie,
            exaggerated: 1.0 < self.times,
            larger: self.larger,
        };
        let rows = 0..self.plan.stone.throughs.len();
        rows.map(|row| counting.row(row)).collect()
    }

    /// Throughs that come from the other face: in this one they are left out, and face stones
    /// laid before their tails.
    fn hidden(&self, counted: &[CountedRow]) -> Vec<PlantedFault> {
        let zero = self.lie.zero();
        let mut faults = Vec::new();
        for (row, counted) in counted.iter().enumerate() {
            let below = below_top(self.plan, row);
            for one in counted.laid().filter(|one| one.hidden) {
                let level = self.lie.top(one.along) - below - zero;
                faults.push(PlantedFault::new(
                    PlantedKind::MissingThrough,
                    self.along(metres(one.along)),
                    self.upwards(metres(level)),
                ));
            }
        }
        faults
    }

    /// As many copes as the plan counts come between built ends.
    fn cope_thickness(&self) -> Length {
        let (plan, lie) = (self.plan, self.lie);
        let raked = plan.ends.iter().any(|end| end.kind == End::Raked);
        if raked || plan.stone.copes == 0 {
            return self.course.wall.cope_thickness;
        }
        let back = |station: f64, at: usize| {
            let lean = plan.ends.get(at).map_or(0.0, |end| end.batter.lean());
            lean * (lie.top(station) - lie.ground(station))
        };
        let length = lie.length();
        let set = length - back(0.0, 0) - back(length, 1);
        metres(set / plan.stone.copes as f64)
    }

    /// A stone in its real place. A through of which a leaning head or the ground leaves but
    /// a sliver is none.
    fn real(&self, stone: &Stone) -> LaidStone {
        let zero = self.lie.zero();
        let outline: Vec<Place> = stone
            .outline
            .iter()
            .map(|point| {
                let up = point.y.si() * self.larger / self.times;
                (point.x.si() * self.larger, up + zero)
            })
            .collect();
        let (least, most) = span(&outline);
        let is_sliver = most - least < 0.5 * self.course.wall.through.width.si();
        let is_buried = levels(&outline).1 <= self.lie.ground((least + most) / 2.0);
        let role = if stone.role == Role::Through && (is_sliver || is_buried) {
            Role::Face
        } else {
            stone.role
        };
        LaidStone { outline, role }
    }

    /// Whether a stone is not in what a raked end leaves out: one along for one up.
    fn is_built(&self, stone: &LaidStone) -> bool {
        let (least, most) = span(&stone.outline);
        let (low, high) = levels(&stone.outline);
        let length = self.lie.length();
        [(0, 0.0, least), (1, length, length - most)]
            .into_iter()
            .all(|(at, station, away)| {
                let end = self.plan.ends.get(at);
                let raked = end.is_some_and(|end| end.kind == End::Raked);
                let middle = (low + high) / 2.0 - self.lie.ground(station);
                !raked || self.times <= 1.0 || middle <= away
            })
    }
}

/// Where throughs stand above the ground: the stations of their middles, row by row. Each
/// belongs to the row nearest in height, of those that have a place for it there.
fn in_rows(
    plan: &Plan,
    lie: &Lie<'_>,
    counted: &[CountedRow],
    stones: &[LaidStone],
) -> Vec<Vec<f64>> {
    let rows = &plan.stone.throughs;
    let mut middles: Vec<Vec<f64>> = vec![Vec::new(); rows.len()];
    for stone in stones.iter().filter(|stone| stone.role == Role::Through) {
        let (least, most) = span(&stone.outline);
        let (low, _) = levels(&stone.outline);
        let at = (least + most) / 2.0;
        let above = plan.section.height().si() - (lie.top(at) - low);
        let off = |row: &usize| {
            let has_place = counted[*row].has_place(at, &middles[*row]);
            (!has_place, (rows[*row].height.si() - above).abs())
        };
        let nearest = (0..rows.len()).min_by(|a, b| {
            let (a, b) = (off(a), off(b));
            a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
        });
        if let Some(row) = nearest.and_then(|row| middles.get_mut(row)) {
            row.push(at);
        }
    }
    middles
}

/// The first and the last station of an outline.
pub(crate) fn span(outline: &[Place]) -> (f64, f64) {
    least_and_most(outline.iter().map(|place| place.0))
}

/// The lowest and the highest level of an outline.
fn levels(outline: &[Place]) -> (f64, f64) {
    least_and_most(outline.iter().map(|place| place.1))
}

fn least_and_most(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold(
        (f64::INFINITY, f64::NEG_INFINITY),
        |(least, most), value| (least.min(value), most.max(value)),
    )
}
