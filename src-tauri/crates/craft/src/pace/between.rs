//! How long the group built between two reports: lessons and planned waiting taken out.
//!
//! The programme is followed from the last report on: so many minutes of building, with the
//! lessons where they fall due. The minutes with which it has come as far as was told, just when
//! that was told, are those that were built. Between "the footing is done" and the next stage
//! stands a lesson, and a report can't say whether it has been given yet: then a range of minutes
//! fits, and what the group is known to need decides within it.

use super::calendar::Calendar;

/// Halvings of a stretch of minutes: to far less than a second.
const HALVINGS: u32 = 40;

/// What rounding leaves of a minute.
const HAIR: f64 = 1e-7;

/// One stage, or what was done of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Piece {
    /// Its share of the work that goes by pace.
    pub(super) share: f64,
    /// Minutes of it that go by the clock.
    pub(super) fixed: f64,
    /// Minutes of the lessons that came before it, and were not given yet.
    pub(super) lessons: Vec<f64>,
    /// When the lesson by wish before it is over, on the clock.
    pub(super) after: Option<f64>,
}

/// The time between two reports.
pub(super) struct Between<'a> {
    pub(super) calendar: &'a Calendar,
    /// The clock at the report before, and at this one.
    pub(super) from: f64,
    pub(super) now: f64,
    /// Working minutes between them that are known to have gone into lessons and waiting.
    pub(super) aside: f64,
    /// What was done, in order.
    pub(super) pieces: Vec<Piece>,
    /// What stands before the next stage; nothing where no bay is ready for it.
    pub(super) next: Option<Piece>,
    /// So many minutes of the first lessons may have been given before the report before.
    pub(super) earlier: f64,
}

/// What the group did in that time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spent {
    /// Working minutes of building.
    pub(super) built: f64,
    /// The fewest and the most that fit.
    pub(super) range: [f64; 2],
    /// Minutes of lessons that must have been given before the report before.
    pub(super) earlier: f64,
    /// Minutes of the next stage's lessons given so far.
    pub(super) given: f64,
    /// Working minutes that went into those and into waiting for them.
    pub(super) aside: f64,
}

impl Between<'_> {
    /// All working minutes between the reports.
    fn working(&self) -> f64 {
        self.calendar.working_at(self.now) - self.calendar.working_at(self.from)
    }

    /// How many times its usual minutes everything took at the least, the fixed times too.
    pub(super) fn pace(&self, usual: f64) -> f64 {
        let fixed: f64 = self.pieces.iter().map(|piece| piece.fixed).sum();
        let most = self.working().max(0.0) / (usual + fixed).max(f64::MIN_POSITIVE);
        last(most, |pace| {
            self.end(pace * usual, pace, self.earlier) <= self.now
        })
    }

    /// What was built, where `expected` minutes are what the group is known to need for it.
    /// Whoever pegs the line in less than its time has not built the rest in none: the building
    /// is never less than at the `pace` of everything, if that is above `quickest`.
    pub(super) fn spent(&self, usual: f64, expected: f64, quickest: f64) -> Spent {
        let most = self.working().max(0.0);
        let mut fixed = 1.0;
        let mut range = [
            // As soon as the lessons last till now; waiting may take up more than that.
            last(most, |built| self.over(built) < self.now - HAIR),
            last(most, |built| self.end(built, 1.0, self.earlier) <= self.now),
        ];
        if range[1] < usual * quickest {
            fixed = self.pace(usual);
            range = [fixed * usual; 2];
        }
        range[0] = range[0].min(range[1]);
        let built = expected.clamp(range[0], range[1]);
        let late = |earlier: f64| self.now < self.end(built, fixed, earlier);
        let earlier = if 0.0 < self.earlier && late(0.0) {
            last(self.earlier, late)
        } else {
            0.0
        };
        let (given, aside) = self.after(self.end(built, fixed, earlier));
        Spent {
            built,
            range,
            earlier,
            given,
            aside,
        }
    }

    /// When so many minutes of building are over, infinite if the course is.
    fn end(&self, built: f64, fixed: f64, earlier: f64) -> f64 {
        let begun = self.calendar.working_at(self.from) + self.aside;
        let mut clock = self.from.max(self.calendar.clock_at(begun));
        let mut earlier = earlier;
        for piece in &self.pieces {
            clock = self.taught(piece, clock, &mut earlier);
            let work = built * piece.share + fixed * piece.fixed;
            if 0.0 < work {
                let before = self.calendar.working_at(clock);
                clock = clock.max(self.calendar.clock_at(before + work));
            }
        }
        clock
    }

    /// When the lessons before the next stage are over as well.
    fn over(&self, built: f64) -> f64 {
        let end = self.end(built, 1.0, 0.0);
        let next = self.next.as_ref();
        next.map_or(end, |next| self.taught(next, end, &mut 0.0))
    }

    /// When the lessons before a stage are over.
    fn taught(&self, piece: &Piece, clock: f64, earlier: &mut f64) -> f64 {
        let mut clock = piece.after.map_or(clock, |after| clock.max(after));
        for lesson in &piece.lessons {
            let before = earlier.min(*lesson);
            *earlier -= before;
            if 0.0 < lesson - before {
                let talk = self.calendar.talk(clock, lesson - before);
                clock = talk.map_or(f64::INFINITY, |talk| talk.to);
            }
        }
        clock
    }

    /// Minutes of the next stage's lessons given between the end of the building and now, and
    /// the working minutes that went by.
    fn after(&self, end: f64) -> (f64, f64) {
        let Some(next) = self.next.as_ref().filter(|_| end < self.now) else {
            return (0.0, 0.0);
        };
        let mut clock = next.after.map_or(end, |after| end.max(after));
        let mut given = 0.0;
        for lesson in &next.lessons {
            let Some(talk) = self.calendar.talk(clock, *lesson) else {
                break;
            };
            given += (self.now.min(talk.to) - talk.from).clamp(0.0, *lesson);
            clock = talk.to;
        }
        let aside = self.calendar.working_at(self.now) - self.calendar.working_at(end);
        (given, aside)
    }
}

/// The greatest number up to `most` for which something holds that holds below and not above.
fn last(most: f64, holds: impl Fn(f64) -> bool) -> f64 {
    if holds(most) {
        return most;
    }
    let (mut low, mut high) = (0.0, most);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}
