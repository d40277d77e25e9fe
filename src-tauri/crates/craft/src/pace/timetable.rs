//! The timetable: the programme followed once at middling pace, with breaks and tidying.

use super::calendar::{Calendar, DAY_MINUTES, Span, day_at, left_of, minutes_to, to_the_minute};
use super::fixed::{Fixed, QUARTER, Timed, What};
use super::follow::{Scratch, Witness};
use super::luck::Course;
use super::programme::{Programme, Step};
use super::shut::{Reason, Shut, because};
use crate::course::Day;
use crate::tables::{Before, Lesson, Stage, Work};

/// One line of the timetable. Times are minutes of the calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Which day, counted from 0.
    pub day: usize,
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub to: f64,
    /// What happens.
    pub what: String,
    /// What sort of thing it is.
    pub kind: EntryKind,
    /// The stage or the lesson, where it is one.
    pub of: Option<Of>,
}

/// What an entry is about, by its place in its table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Of {
    /// A stage of the work.
    Stage(usize),
    /// A lesson.
    Lesson(usize),
}

/// What sort of thing an entry is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EntryKind {
    /// Somebody teaches.
    Lesson,
    /// The wall rises.
    Build,
    /// Nobody works.
    Break,
    /// Somebody warns.
    Safety,
    /// Tools in, site made safe.
    Tidy,
}

impl EntryKind {
    /// The word a plan uses for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Lesson => "lesson",
            Self::Build => "build",
            Self::Break => "break",
            Self::Safety => "safety",
            Self::Tidy => "tidy",
        }
    }
}

/// What a timetable is made of.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The course days.
    pub days: &'a [Day],
    /// What there is to do.
    pub programme: &'a Programme,
    /// When there is time.
    pub calendar: &'a Calendar,
    /// What stands at fixed times.
    pub timed: &'a Timed,
    /// When nothing is built although the day runs.
    pub shut: &'a [Shut],
    /// How many times slower than usual each stage goes in the middle.
    pub middling: &'a [f64],
    /// The stages.
    pub stages: &'a [Stage],
    /// The lessons.
    pub lessons: &'a [Lesson],
}

/// The entries of all days in order; no two overlap and none leaves its day.
///
/// Where a talk or a stage meets another, the time is put to the quarter hour; where either
/// meets a break or the end of the day, that one's own time holds.
pub fn timetable(asked: &Asked<'_>) -> Vec<Entry> {
    let middling = Course::middling(asked.middling);
    let mut seen = Seen::default();
    let mut scratch = Scratch::new(asked.programme);
    let (programme, calendar) = (asked.programme, asked.calendar);
    programme.follow(calendar, [middling], &mut scratch, &mut seen);
    let mut entries = asked.talks(&seen);
    entries.extend(asked.work(&seen));
    let mut entries: Vec<Entry> = entries
        .into_iter()
        .map(|entry| on_the_quarter(entry, calendar))
        .collect();
    entries.extend(asked.timed.fixed.iter().map(|fixed| asked.fixed(fixed)));
    entries.extend(asked.shut());
    entries.retain(|entry| entry.from < entry.to);
    entries.sort_by(|a, b| a.from.total_cmp(&b.from));
    join(entries)
}

/// What was seen of the course in the middle.
#[derive(Debug, Default)]
struct Seen {
    lessons: Vec<(usize, f64, Span)>,
    done: Vec<f64>,
    /// The step whose lessons can't be given any more.
    stopped: Option<usize>,
}

impl Witness for Seen {
    fn lesson(&mut self, _course: usize, lesson: usize, waited_from: f64, span: Span) {
        self.lessons.push((lesson, waited_from, span));
    }

    fn stopped(&mut self, _course: usize, step: usize) {
        self.stopped = Some(step);
    }

    fn done(&mut self, _course: usize, _step: usize, clock: f64) {
        self.done.push(clock);
    }
}

impl Asked<'_> {
    /// The lessons given when they are due. A break may cut one that is too long for any
    /// stretch.
    fn talks(&self, seen: &Seen) -> Vec<Entry> {
        let given = seen.lessons.iter();
        given
            .flat_map(|(lesson, _, span)| {
                let pieces = self.open_within(*span).into_iter();
                pieces.map(|piece| self.lesson(*lesson, piece))
            })
            .collect()
    }

    fn lesson(&self, number: usize, span: Span) -> Entry {
        let lesson = &self.lessons[number];
        let kind = if lesson.safety {
            EntryKind::Safety
        } else {
            EntryKind::Lesson
        };
        let what = self.by_lamplight(&lesson.title, span);
        self.entry(span, &what, kind, Some(Of::Lesson(number)))
    }

    fn entry(&self, span: Span, what: &str, kind: EntryKind, of: Option<Of>) -> Entry {
        Entry {
            day: day_at(self.days, span.from),
            from: span.from,
            to: span.to,
            what: what.to_owned(),
            kind,
            of,
        }
    }

    fn fixed(&self, fixed: &Fixed) -> Entry {
        match &fixed.what {
            What::Break { name, .. } => self.entry(fixed.span, name, EntryKind::Break, None),
            What::Lesson { lesson, .. } => self.lesson(*lesson, fixed.span),
            What::Tidy => {
                let is_tidy = |stage: &&Stage| matches!(stage.work, Work::EachDay(_));
                let name = self.stages.iter().find(is_tidy).map(|it| it.name.as_str());
                let what = name.unwrap_or("Tidy and make safe");
                let what = self.by_lamplight(what, fixed.span);
                self.entry(fixed.span, &what, EntryKind::Tidy, None)
            }
        }
    }

    /// Everything between the lessons: the stage that is not done yet, waiting for a lesson, or,
    /// at the end, time in hand.
    fn work(&self, seen: &Seen) -> Vec<Entry> {
        let mut entries = Vec::new();
        let talks: Vec<Span> = seen.lessons.iter().map(|(_, _, span)| *span).collect();
        let waits: Vec<(usize, Span)> = seen
            .lessons
            .iter()
            .filter(|(_, from, span)| *from < span.from)
            .map(|(lesson, from, span)| {
                let (from, to) = (*from, span.from);
                (*lesson, Span { from, to })
            })
            .collect();
        let waited = waits.iter().map(|(_, wait)| wait);
        let taken: Vec<Span> = talks.iter().chain(waited).copied().collect();
        let whole = Span {
            from: f64::NEG_INFINITY,
            to: f64::INFINITY,
        };
        for (lesson, wait) in &waits {
            let open = self.open_within(*wait).into_iter();
            entries.extend(open.map(|span| self.waiting(span, *lesson)));
        }
        for free in left_of(whole, &taken) {
            for open in self.open_within(free) {
                entries.extend(self.stages_within(open, seen));
            }
        }
        entries
    }

    /// What goes on while a lesson is waited for: never the stage it opens.
    fn waiting(&self, span: Span, lesson: usize) -> Entry {
        let lesson = &self.lessons[lesson];
        let sorts = |stage: &&Stage| {
            lesson.before == Before::Stage(stage.id.clone())
                && matches!(stage.work, Work::HeapTonnes | Work::StrippedTonnes)
        };
        let meanwhile = match self.stages.iter().find(sorts) {
            Some(_) => "bring up tools and clear the working strip",
            None => "sort stone and clear the working strip",
        };
        let what = format!("Waiting for \"{}\": {meanwhile}", lesson.title);
        self.entry(span, &what, EntryKind::Build, None)
    }

    /// What fills the hours in which nothing is built.
    fn shut(&self) -> impl Iterator<Item = Entry> {
        let closed = self.timed.closed();
        self.shut.iter().flat_map(move |it| {
            let what = match it.why {
                Reason::Dark => "Too dark to build",
                Reason::Nobody => "Nobody is there",
            };
            let free = left_of(it.span, &closed).into_iter();
            free.map(move |span| self.entry(span, what, EntryKind::Break, None))
        })
    }

    /// What is done in the dark says so, with the time of dawn or dusk.
    fn by_lamplight(&self, what: &str, span: Span) -> String {
        let clock = |minutes: f64| {
            let of_day = to_the_minute(minutes).rem_euclid(DAY_MINUTES);
            format!("{:02.0}:{:02.0}", (of_day / 60.0).floor(), of_day % 60.0)
        };
        let dark = because(self.shut, Reason::Dark);
        let mut dark = dark.iter();
        let Some(dark) = dark.find(|it| span.from < it.to && it.from < span.to) else {
            return what.to_owned();
        };
        let day = &self.days[day_at(self.days, span.from)];
        if dark.from <= minutes_to(self.days, day.date, day.start) {
            format!("{what} (dark until {})", clock(dark.to))
        } else {
            format!("{what} (dark from {})", clock(dark.from))
        }
    }

    /// The open stretches within another.
    fn open_within(&self, span: Span) -> Vec<Span> {
        let open = self.calendar.open().iter();
        open.map(|open| Span {
            from: open.from.max(span.from),
            to: open.to.min(span.to),
        })
        .filter(|piece| piece.from < piece.to)
        .collect()
    }

    fn stages_within(&self, open: Span, seen: &Seen) -> Vec<Entry> {
        let mut entries = Vec::new();
        let mut from = open.from;
        let steps = self.programme.steps.iter().zip(&seen.done).enumerate();
        for (number, (step, end)) in steps {
            if let Some((lesson, over)) = lesson_of(step, seen.stopped == Some(number)) {
                let to = over.min(*end).min(open.to);
                if from < to {
                    entries.push(self.waiting(Span { from, to }, lesson));
                    from = to;
                }
            }
            let to = end.min(open.to);
            if from < to {
                let name = &self.stages[step.stage].name;
                let of = Some(Of::Stage(step.stage));
                entries.push(self.entry(Span { from, to }, name, EntryKind::Build, of));
                from = to;
            }
        }
        if from < open.to {
            let what = "Time in hand: mend faults, lay a stretch again, look back along the wall";
            let span = Span { from, to: open.to };
            entries.push(self.entry(span, what, EntryKind::Build, None));
        }
        entries
    }
}

/// The lesson a step may not begin before, and when it is over: never where the course ends
/// before it is given.
fn lesson_of(step: &Step, stopped: bool) -> Option<(usize, f64)> {
    match step.lessons.first() {
        Some(lesson) if stopped => Some((*lesson, f64::INFINITY)),
        _ => step.after,
    }
}

/// Times within a stretch go to the quarter hour; its edges are fixed by breaks and hours.
fn on_the_quarter(mut entry: Entry, calendar: &Calendar) -> Entry {
    let open = calendar.open().iter();
    let Some((from, to)) = open
        .filter(|open| open.from <= entry.from && entry.from < open.to)
        .map(|open| calendar.unbroken(open))
        .next()
    else {
        return entry;
    };
    let quarter = |time: f64| ((time / QUARTER).round() * QUARTER).clamp(from, to);
    if from < entry.from {
        entry.from = quarter(entry.from);
    }
    if entry.to < to {
        entry.to = quarter(entry.to);
    }
    entry
}

/// Neighbours that say the same and touch become one.
fn join(entries: Vec<Entry>) -> Vec<Entry> {
    let mut joined: Vec<Entry> = Vec::new();
    for entry in entries {
        match joined.last_mut() {
            Some(last)
                if last.what == entry.what
                    && last.kind == entry.kind
                    && (last.to - entry.from).abs() < 1e-6 =>
            {
                last.to = entry.to;
            }
            _ => joined.push(entry),
        }
    }
    joined
}
