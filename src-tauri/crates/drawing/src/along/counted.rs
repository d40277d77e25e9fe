//! Where the throughs of a row come along the wall as the plan counts them.
//!
//! At equal distances over the whole length; beside a raked end those that are built now over
//! what is built of the row, and the others in what is left out.

use crate::along::lie::Lie;
use crate::turns::comes_from;
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::Read;

/// A row no longer than a through and this, as its stones are laid, has none.
const LEAST_BESIDE_M: f64 = 0.25;

/// A wall whose rows are counted, and the shape its stones are laid in.
pub(crate) struct Counting<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) lie: &'a Lie<'a>,
    /// Whether heights are drawn larger than lengths: stones are then laid all along, and a
    /// rake is cut out after.
    pub(crate) exaggerated: bool,
    /// How many times larger face stones are drawn than they are.
    pub(crate) larger: f64,
}

/// One through of the count.
#[derive(Clone, Copy)]
pub(crate) struct Counted {
    /// The station of its middle.
    pub(crate) along: f64,
    /// Comes from the face that is not looked at, and ends short of the one that is.
    pub(crate) hidden: bool,
}

/// The throughs of one row, in order of station.
pub(crate) struct CountedRow {
    pub(crate) built: Vec<Counted>,
    /// In what raked ends leave out.
    pub(crate) later: Vec<Counted>,
    /// Whether stones are laid all along, and what is left out cut out after.
    pub(crate) cut_out: bool,
    /// How far along built throughs can lie, from where to where.
    pub(crate) reach: (f64, f64),
}

impl CountedRow {
    /// Those that stones are laid for.
    pub(crate) fn laid(&self) -> impl Iterator<Item = &Counted> {
        let later = self.later.iter().filter(|_| self.cut_out);
        self.built.iter().chain(later)
    }

    /// Whether a through at a station can be one of this row beside those of it that are known:
    /// where throughs come from one face and the other, not where it is the turn of the other,
    /// and not twice in one place.
    pub(crate) fn has_place(&self, at: f64, known: &[f64]) -> bool {
        if !self.laid().any(|one| one.hidden) {
            return true;
        }
        let nearest = |at: f64| {
            let off = |one: &&Counted| (one.along - at).abs();
            self.laid().min_by(|a, b| off(a).total_cmp(&off(b)))
        };
        let taken = |place: &Counted| {
            let mut known = known.iter().filter_map(|other| nearest(*other));
            known.any(|other| other.along.total_cmp(&place.along).is_eq())
        };
        nearest(at).is_some_and(|place| !place.hidden && !taken(place))
    }
}

impl Counting<'_> {
    pub(crate) fn row(&self, row: usize) -> CountedRow {
        let count = self.count(row);
        let length = self.lie.length();
        let reach = reach(self.plan, self.lie, below_top(self.plan, row));
        let (start, finish) = reach.unwrap_or((length, length));
        let raked = [0, 1].map(|at| self.is_raked(at));
        let cut_out = self.exaggerated && raked.contains(&true);
        let (built, later): (Vec<f64>, Vec<f64>) = if cut_out {
            evenly(0.0, length, count).partition(|at| start <= *at && *at <= finish)
        } else {
            let from = if raked[0] { start } else { 0.0 };
            let to = if raked[1] { finish } else { length };
            let built = self.built(count, to - from).min(count);
            (
                evenly(from, to, built).collect(),
                left_out([from, to], length, count - built),
            )
        };
        let before = |at: f64| built.iter().chain(&later).filter(|one| **one < at).count();
        let counted = |along: f64| Counted {
            along,
            hidden: comes_from(self.plan, self.course, row, before(along))
                .is_some_and(|from| from != self.lie.side),
        };
        CountedRow {
            built: built.iter().copied().map(counted).collect(),
            later: later.iter().copied().map(counted).collect(),
            cut_out,
            reach: (start, finish),
        }
    }

    pub(crate) fn count(&self, row: usize) -> usize {
        self.plan.stone.throughs.get(row).map_or(0, |row| row.count)
    }

    /// How many of a row's throughs come into what is built of it.
    fn built(&self, count: usize, long: f64) -> usize {
        if long < self.course.wall.through.width.si() + LEAST_BESIDE_M * self.larger {
            return 0;
        }
        let share = long / self.lie.length();
        ((count as f64 * share).round() as usize).max(1)
    }

    fn is_raked(&self, at: usize) -> bool {
        let end = self.plan.ends.get(at);
        end.is_some_and(|end| end.kind == End::Raked)
    }
}

/// How far a row lies below the top.
pub(crate) fn below_top(plan: &Plan, row: usize) -> f64 {
    let row = plan.stone.throughs.get(row);
    row.map_or(0.0, |row| (plan.section.height() - row.height).si())
}

/// From where to where the whole wall stands so far below its top: heads lean back, and raked
/// ends step back. Nothing where two raked ends have met below.
pub(crate) fn reach(plan: &Plan, lie: &Lie<'_>, below_top: f64) -> Option<(f64, f64)> {
    let back = |at: usize, station: f64| {
        let lean = plan.ends.get(at).map_or(0.0, |end| end.batter.lean());
        let high = lie.top(station) - below_top - lie.ground(station);
        lean * high.max(0.0)
    };
    let length = lie.length();
    let (start, finish) = (back(0, 0.0), length - back(1, length));
    (start + 0.05 < finish).then_some((start, finish))
}

/// Throughs of the count that would lie wholly in the ground.
pub(crate) fn buried(plan: &Plan, lie: &Lie<'_>, thick: f64) -> usize {
    let length = lie.length();
    let in_row = |row: usize| {
        let count = plan.stone.throughs.get(row).map_or(0, |row| row.count);
        let under = |at: &f64| lie.top(*at) - below_top(plan, row) + thick <= lie.ground(*at);
        evenly(0.0, length, count).filter(under).count()
    };
    (0..plan.stone.throughs.len()).map(in_row).sum()
}

/// So many places at equal distances.
fn evenly(from: f64, to: f64, count: usize) -> impl Iterator<Item = f64> {
    let apart = (to - from) / count.max(1) as f64;
    (0..count).map(move |at| from + (at as f64 + 0.5) * apart)
}

/// So many places in what raked ends leave out: before `from` and after `to`.
fn left_out([from, to]: [f64; 2], length: f64, count: usize) -> Vec<f64> {
    let all = from + length - to;
    if all <= 0.0 {
        return Vec::new();
    }
    let before = ((from / all * count as f64).round() as usize).min(count);
    evenly(0.0, from, before)
        .chain(evenly(to, length, count - before))
        .collect()
}
