//! A whole face: the ground prepared, the stones laid course by course, the cope set.

use super::given::{Face, FaceEnd, PlantedFault, is_sound};
use super::levels::Levels;
use super::luck::Luck;
use super::planted::plant;
use super::polygon::Upright;
use super::reserved::{Reserved, settle};
use super::rows::{Extent, Rows};
use super::skyline::{Edge, Piece, Wall, on_the_ground};
use super::stone::Stone;
use crate::quantity::{Read, whole_number};

/// The wall is laid at most so many times to get every joint crossed.
const ATTEMPTS: i32 = 6;
/// The ground is looked at in steps of this, in metres.
const LOOK_M: f64 = 0.01;
/// No bench of the ground is shorter, in metres.
const LEAST_BENCH_M: f64 = 0.25;
/// The edge of a bench and the end of a settled stone over it are this far apart, in metres.
const APART_M: f64 = 0.08;
/// On bare ground a course begins where no more than this share of it is below ground.
const SUNK: f64 = 0.35;

/// Lays the stones of a face; the rules of the trade are kept but for the faults asked for.
///
/// The same face and faults give the same stones on every machine. A face whose sizes are
/// no sizes (not above zero, not finite, no ground, no top above it) has no stones.
pub fn lay(face: &Face, faults: &[PlantedFault]) -> Vec<Stone> {
    if !is_sound(face) {
        return Vec::new();
    }
    let mut wall = raise(face, faults, 0);
    for attempt in 1..ATTEMPTS {
        if wall.uncrossed == 0 {
            break;
        }
        let other = raise(face, faults, attempt);
        if other.uncrossed < wall.uncrossed {
            wall = other;
        }
    }
    if 0.0 < face.cope_height.si() && 0.0 < face.cope_thickness.si() {
        let ends = cope_ends(face, &wall);
        wall.set_copes(
            ends,
            face.cope_height.si(),
            face.cope_thickness.si().max(0.03),
        );
    }
    wall.stones
}

/// Lays everything under the cope. Where some joint could not be crossed, another attempt
/// picks other stones.
fn raise(face: &Face, faults: &[PlantedFault], attempt: i32) -> Wall {
    let mut wall = begin(face, faults, attempt);
    let depth = face.footing_depth.si();
    wall.sky = benches(&wall, 0.0 < depth);
    if 0.0 < depth {
        wall.lay_footing(depth);
    }
    wall.build();
    wall
}

fn begin(face: &Face, faults: &[PlantedFault], attempt: i32) -> Wall {
    let (ground, top) = (Levels::new(&face.ground), Levels::new(&face.top));
    let length = face.length.si();
    let rows = Rows::new(
        &Extent {
            ground: &ground,
            top: &top,
            length,
            courses: face.course_heights.map(Read::si),
            throughs: level_throughs(face, &top),
        },
        face.seed,
    );
    let mut reserved = settle(face, &rows, &top, faults);
    plant(face, &rows, faults, attempt, &mut reserved);
    let [short, long] = face.stone_lengths.map(Read::si);
    Wall {
        length,
        steps: top.steps(),
        edges: [
            edge(face.ends[0], 0.0, 1.0, ground.at(0.0)),
            edge(face.ends[1], length, -1.0, ground.at(length)),
        ],
        ground,
        top,
        section: face.section,
        lengths: [short.min(long), long.max(short)],
        rows,
        reserved,
        luck: Luck::new(face.seed, 100 + u64::from(attempt.unsigned_abs())),
        laid: Vec::new(),
        sky: Vec::new(),
        stones: Vec::new(),
        uncrossed: 0,
    }
}

/// Beds and thickness of throughs under a top that is level throughout.
fn level_throughs(face: &Face, top: &Levels) -> Vec<[f64; 2]> {
    let [low, high] = top.span(0.0, face.length.si());
    if 1e-3 < high - low {
        return Vec::new();
    }
    face.throughs
        .iter()
        .map(|row| [high - row.below_top.si(), row.thickness.si()])
        .collect()
}

fn edge(end: FaceEnd, x: f64, inward: f64, ground: f64) -> Edge {
    let lean = match end {
        FaceEnd::Head(batter) => inward * batter.lean(),
        _ => 0.0,
    };
    Edge {
        line: Upright { x, y: ground, lean },
        raked_from: (end == FaceEnd::Raked).then_some(ground),
    }
}

/// The ground in benches, each the start of one course.
fn benches(wall: &Wall, trench: bool) -> Vec<Piece> {
    let count = whole_number((wall.length / LOOK_M).round()).max(1);
    let step = wall.length / count as f64;
    let mut sky: Vec<Piece> = Vec::new();
    for i in 0..count {
        let x = step * (i as f64 + 0.5);
        let ground = wall.ground.at(x);
        // In a trench the first course stands below the ground; on bare ground it may
        // begin a little above its bed line, where that line runs into the ground.
        let under = wall.rows.bed_under(x, ground + 0.01);
        let sunk = wall.rows.level(under + 2, x) - ground;
        let row = if !trench && sunk < SUNK * wall.rows.course(under) {
            (under + 2).min(wall.rows.last())
        } else {
            under
        };
        match sky.last_mut() {
            Some(piece) if piece.row == row => piece.to = step * (i + 1) as f64,
            _ => sky.push(on_the_ground(step * i as f64, step * (i + 1) as f64, row)),
        }
    }
    keep_apart(join_short(sky), &wall.reserved)
}

/// Benches too short for a stone are dug down to the lower one beside them.
fn join_short(mut sky: Vec<Piece>) -> Vec<Piece> {
    while 1 < sky.len() {
        let Some(i) = sky.iter().position(|one| one.to - one.from < LEAST_BENCH_M) else {
            break;
        };
        let beside = [i.checked_sub(1), (i + 1 < sky.len()).then_some(i + 1)];
        let lowest = beside.into_iter().flatten().min_by_key(|j| sky[*j].row);
        let Some(into) = lowest else { break };
        let row = sky[into].row.min(sky[i].row);
        let (first, last) = (i.min(into), i.max(into));
        let joined = on_the_ground(sky[first].from, sky[last].to, row);
        sky.splice(first..=last, [joined]);
    }
    sky
}

/// The edge of a bench is a joint: it is dug back from where a settled stone ends above.
fn keep_apart(mut sky: Vec<Piece>, reserved: &[Reserved]) -> Vec<Piece> {
    for i in 1..sky.len() {
        let (left, right) = (sky[i - 1], sky[i]);
        let row = left.row.max(right.row);
        let into = if left.row < right.row { 1.0 } else { -1.0 };
        let ends: Vec<f64> = reserved
            .iter()
            .filter(|one| one.row == row)
            .flat_map(Reserved::joints)
            .collect();
        let mut edge = left.to;
        // Past one end there may be another.
        for _ in 0..3 {
            if let Some(end) = ends.iter().find(|end| (*end - edge).abs() < APART_M) {
                edge = end + into * APART_M * 1.01;
            }
        }
        if left.from + APART_M < edge && edge < right.to - APART_M {
            sky[i - 1].to = edge;
            sky[i].from = edge;
        }
    }
    sky
}

/// From where to where copes are set: up to a built end, short of a raked one.
fn cope_ends(face: &Face, wall: &Wall) -> [f64; 2] {
    let mut ends = face.reach(&wall.top, 0.0);
    for (side, inward) in [(0, 1.0), (1, -1.0)] {
        match face.ends[side] {
            FaceEnd::Head(_) => {
                let level = wall.top.at(ends[side]);
                ends[side] = wall.edges[side].line.at(level);
            }
            FaceEnd::Raked => ends[side] += inward * 0.1,
            FaceEnd::Joined | FaceEnd::OnAndOn => {}
        }
    }
    ends
}
