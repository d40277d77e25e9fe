//! How high each stone of a stretch is: a course, half of one, or now and then two.

use super::bond::least_lap;
use super::polygon::Upright;
use super::setting::LEAST_COURSE_M;
use super::skyline::Wall;
use super::valley::Planned;

/// No stone beside a reserved place, as near as this, rises over the line it stands on.
const BESIDE_M: f64 = 0.13;

impl Wall {
    /// The highest line a stone from here to there may rise to.
    fn barrier(&self, row: usize, from: f64, to: f64) -> usize {
        self.reserved
            .iter()
            .filter(|one| row < one.row && one.from - BESIDE_M < to && from < one.to + BESIDE_M)
            .map(|one| one.row)
            .min()
            .unwrap_or(usize::MAX)
    }

    /// One course, a thin stone, or now and then two courses.
    pub(super) fn choose_heights(
        &mut self,
        row: usize,
        planned: &mut [Planned],
        caps: [Option<usize>; 2],
    ) {
        let (mut thin, mut since_tall) = (0_usize, 0.0);
        for i in 0..planned.len() {
            let chances = self.chances(row, planned, i, since_tall);
            let wished = match planned[i].reserved {
                Some(which) => self.reserved[which].lines,
                None if 0 < thin && chances.may_thin => {
                    thin -= 1;
                    1
                }
                None if row.is_multiple_of(2) => self.on_a_bed(&chances, &mut thin),
                None => self.on_a_half_line(&chances),
            };
            let most = self.most_lines(row, planned, i, caps);
            let lines = wished.min(most).max(1);
            planned[i].lines = lines;
            since_tall = if 2 < lines {
                0.0
            } else {
                since_tall + chances.length
            };
        }
    }

    fn span(&self, row: usize, one: &Planned) -> [f64; 2] {
        one.sides
            .map(|side: Upright| side.at(self.rows.level(row, side.x)))
    }

    fn chances(&self, row: usize, planned: &[Planned], i: usize, since_tall: f64) -> Chances {
        let [from, to] = self.span(row, &planned[i]);
        let thin_length = planned[i..]
            .iter()
            .take(3)
            .take_while(|one| one.reserved.is_none())
            .map(|one| {
                let [from, to] = self.span(row, one);
                to - from
            })
            .sum();
        let bed = row + 2 - row % 2;
        Chances {
            length: to - from,
            share: self.share(from, self.rows.level(row, from)),
            course: self.rows.course(row),
            since_tall,
            at_end: i == 0 || i + 1 == planned.len(),
            thin_length,
            may_thin: self.even_top(bed, from, to),
            may_jump: self.under_top(bed + 2, from, to)[1],
        }
    }

    /// Near where a course dies out against the top, each stone is one course high: whether
    /// the line is below the top hereabouts, or up to it all along.
    fn even_top(&self, line: usize, from: f64, to: f64) -> bool {
        let [some, all] = self.under_top(line, from, to);
        some == all
    }

    /// Whether a line is a course below the top anywhere near a stone, and everywhere near.
    fn under_top(&self, line: usize, from: f64, to: f64) -> [bool; 2] {
        let (from, to) = ((from - 0.45).max(0.0), (to + 0.45).min(self.length));
        let under = [0.0, 0.25, 0.5, 0.75, 1.0].map(|part| {
            let x = from + (to - from) * part;
            let top = self.top.at(x).min(self.top.before(x));
            line < self.rows.last() && self.rows.level(line, x) + LEAST_COURSE_M <= top
        });
        [under.contains(&true), !under.contains(&false)]
    }

    /// How many lines a stone may rise for the sake of what stands beside and above it.
    fn most_lines(
        &self,
        row: usize,
        planned: &[Planned],
        i: usize,
        caps: [Option<usize>; 2],
    ) -> usize {
        let [from, to] = self.span(row, &planned[i]);
        let mut most = self.barrier(row, from, to) - row;
        if i == 0 {
            most = most.min(caps[0].map_or(most, |cap| cap - row));
        }
        if i + 1 == planned.len() {
            most = most.min(caps[1].map_or(most, |cap| cap - row));
        }
        // A tall stone's joints end farther up, where a settled stone may end too.
        let reach = least_lap(self.lengths[0]) + 0.03;
        let ends_there = |x: f64| {
            self.reserved
                .iter()
                .filter(|one| row + 2 < one.row && one.row <= row + 4)
                .flat_map(|one| [one.from, one.to])
                .chain(self.steps.iter().copied())
                .any(|end| (end - x).abs() < reach)
        };
        if 2 < most && (ends_there(from) || ends_there(to)) {
            most = 2 - row % 2;
        }
        // A joint beside a settled stone ends with it: the next one up is settled too.
        for beside in [i.checked_sub(1), Some(i + 1)].into_iter().flatten() {
            if let Some(which) = planned.get(beside).and_then(|one| one.reserved) {
                most = most.min(self.reserved[which].lines);
            }
        }
        most
    }

    fn on_a_bed(&mut self, room: &Chances, thin: &mut usize) -> usize {
        let luck = &mut self.luck;
        let (first, second, third) = (luck.unit(), luck.unit(), luck.unit());
        let may_thin = room.may_thin && 0.085 < room.course && 0.26 < room.thin_length;
        if may_thin && first < 0.10 + 0.06 * room.share {
            *thin = if room.length < 0.26 || second < 0.6 {
                1
            } else {
                0
            };
            if third < 0.35 {
                *thin += 1;
            }
            return 1;
        }
        let may_jump = room.may_jump
            && !room.at_end
            && 0.35 < room.since_tall
            && (0.15..0.42).contains(&room.length);
        if may_jump && second < 0.17 - 0.09 * room.share {
            return if third < 0.55 { 3 } else { 4 };
        }
        2
    }

    fn on_a_half_line(&mut self, room: &Chances) -> usize {
        let draw = self.luck.unit();
        if room.may_jump && !room.at_end && 0.16 < room.length && draw < 0.3 {
            if draw < 0.1 { 2 } else { 3 }
        } else {
            1
        }
    }
}

/// What the choice of a stone's height turns on, in metres.
struct Chances {
    length: f64,
    share: f64,
    course: f64,
    since_tall: f64,
    at_end: bool,
    thin_length: f64,
    may_thin: bool,
    may_jump: bool,
}
