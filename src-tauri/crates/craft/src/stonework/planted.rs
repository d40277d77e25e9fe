//! Faults put into a face on purpose: the stones that make them, and where they can go.

use super::given::{Face, PlantedFault, PlantedKind};
use super::levels::Levels;
use super::reserved::Reserved;
use super::rows::Rows;
use super::stone::Role;
use crate::quantity::Read;

/// How far from the wished place a fault may go, in steps of this many metres.
const STEP_M: f64 = 0.08;
const STEPS: i32 = 18;
/// Lengths beside a planted joint, course by course, as shares of a usual stone: their far
/// ends lap, so that only the one joint is wrong.
const LEFT: [f64; 3] = [1.0, 0.62, 1.1];
const RIGHT: [f64; 3] = [0.68, 1.12, 0.66];

/// Reserves the stones of every fault that is made of stones. A later attempt takes
/// other places.
pub(super) fn plant(
    face: &Face,
    rows: &Rows,
    faults: &[PlantedFault],
    attempt: i32,
    settled: &mut Vec<Reserved>,
) {
    let site = Site {
        rows,
        ground: Levels::new(&face.ground),
        top: Levels::new(&face.top),
        length: face.length.si(),
    };
    let [short, long] = face.stone_lengths.map(Read::si);
    let usual = ((short + long) / 2.0).max(0.25);
    for fault in faults {
        let make = |x: f64, row: usize| -> Vec<Reserved> {
            match fault.kind {
                PlantedKind::RunningJoint => straight(x, row, usual),
                PlantedKind::Traced => vec![traced(x, row, 1.1 * long)],
                PlantedKind::MissingThrough | PlantedKind::HollowHearting => Vec::new(),
            }
        };
        if let Some(stones) = site.find(fault.at(), attempt, settled, make) {
            settled.extend(stones);
        }
    }
}

/// Joints one over the other for three courses, one more than it takes, to be plain.
fn straight(x: f64, row: usize, usual: f64) -> Vec<Reserved> {
    let mut stones = Vec::new();
    for course in 0..LEFT.len() {
        let row = row + 2 * course;
        let at = x + if course % 2 == 1 { 0.006 } else { 0.0 };
        for (from, to) in [
            (at - usual * LEFT[course], at),
            (at, at + usual * RIGHT[course]),
        ] {
            let mut one = Reserved::new(from, to, row, Role::Face);
            one.squared = 0.2;
            one.plumb = true;
            stones.push(one);
        }
    }
    stones
}

fn traced(x: f64, row: usize, along: f64) -> Reserved {
    let mut one = Reserved::new(x - along / 2.0, x + along / 2.0, row, Role::Face);
    one.traced = true;
    one.squared = 0.3;
    one
}

/// Where faults can go.
struct Site<'a> {
    rows: &'a Rows,
    ground: Levels,
    top: Levels,
    length: f64,
}

impl Site<'_> {
    /// The stones of a fault at the nearest place that takes them; a later attempt takes
    /// the next place.
    fn find(
        &self,
        [x, y]: [f64; 2],
        attempt: i32,
        settled: &[Reserved],
        make: impl Fn(f64, usize) -> Vec<Reserved>,
    ) -> Option<Vec<Reserved>> {
        let mut skip = attempt;
        let mut last = None;
        for step in 0..STEPS {
            for sign in [1.0, -1.0] {
                let x = x + sign * STEP_M * f64::from(step);
                let bed = self.rows.nearest_bed(x, y);
                for row in [bed, bed.saturating_sub(2), bed + 2, bed.saturating_sub(4)] {
                    let stones = make(x, row);
                    let takes = |one: &Reserved| {
                        self.holds(one) && settled.iter().all(|other| one.goes_with(other))
                    };
                    if stones.is_empty() || !stones.iter().all(takes) {
                        continue;
                    }
                    if skip == 0 {
                        return Some(stones);
                    }
                    skip -= 1;
                    last = Some(stones);
                }
            }
        }
        last
    }

    /// Whether the wall is there, and goes on above and beside.
    fn holds(&self, one: &Reserved) -> bool {
        let (from, to) = (one.from - 0.15, one.to + 0.15);
        if from < 0.0 || self.length < to {
            return false;
        }
        let over = |x: f64| self.rows.level(one.row + one.lines, x);
        let highest = over(from).max(over(to)).max(over((from + to) / 2.0));
        let ground = self.ground.span(from, to)[1];
        let lowest = self
            .rows
            .level(one.row, from)
            .min(self.rows.level(one.row, to));
        highest + 0.05 < self.top.span(from, to)[0] && ground - 0.03 < lowest
    }
}
