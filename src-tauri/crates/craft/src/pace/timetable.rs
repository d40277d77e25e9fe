//! The timetable: the programme followed once at middling pace, with breaks and tidying.

use super::calendar::{Calendar, Spent, day_at, minutes_to};
use super::programme::{Programme, Step, Witness};
use crate::course::Day;
use crate::tables::{Before, Lesson, Stage};

/// Times on paper go to the quarter hour (common practice, no source).
const QUARTER: f64 = 15.0;

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

/// The tables a timetable takes its words from.
#[derive(Debug, Clone, Copy)]
pub struct Words<'a> {
    /// The stages.
    pub stages: &'a [Stage],
    /// The lessons.
    pub lessons: &'a [Lesson],
}

/// The entries of all days in order; no two overlap and none leaves its day.
///
/// Where a talk or a stage meets another, the time is put to the quarter hour; where either
/// meets a break or the end of the day, the break's own time holds.
pub fn timetable(
    days: &[Day],
    programme: &Programme,
    calendar: &Calendar,
    slowness: &[f64],
    words: Words<'_>,
) -> Vec<Entry> {
    let mut pieces = Pieces {
        words,
        calendar,
        days,
        entries: Vec::new(),
        end: 0.0,
    };
    programme.follow(calendar, slowness, &mut pieces);
    let end = pieces.end;
    let mut entries = pieces.entries;
    entries.extend(in_hand(calendar, words.lessons, end));
    let mut entries: Vec<Entry> = entries
        .into_iter()
        .map(|entry| on_the_quarter(entry, calendar))
        .collect();
    entries.extend(breaks(days));
    entries.extend(tidying(days, calendar));
    entries.retain(|entry| entry.from < entry.to);
    entries.sort_by(|a, b| a.from.total_cmp(&b.from));
    join(entries)
}

struct Pieces<'a> {
    words: Words<'a>,
    calendar: &'a Calendar,
    days: &'a [Day],
    entries: Vec<Entry>,
    end: f64,
}

impl Witness for Pieces<'_> {
    fn piece(&mut self, step: Step, spent: Spent, from: f64, to: f64) {
        let (what, kind) = self.name(step, spent);
        self.entries.push(Entry {
            day: day_at(self.days, from),
            from,
            to,
            what,
            kind,
        });
        self.end = to;
    }

    fn done(&mut self, _step: Step, at: f64) {
        self.end = at.min(self.calendar.open().last().map_or(at, |open| open.to));
    }
}

impl Pieces<'_> {
    fn name(&self, step: Step, spent: Spent) -> (String, EntryKind) {
        let lesson = |number: usize| {
            let lesson = &self.words.lessons[number];
            (lesson.title.clone(), lesson_kind(lesson))
        };
        match (spent, step) {
            (Spent::Morning(number), _) | (Spent::Lesson, Step::Lesson(number)) => lesson(number),
            (Spent::Work, Step::Stage(number)) => {
                (self.words.stages[number].name.clone(), EntryKind::Build)
            }
            // Too little time for the next talk before a break, whatever step it was.
            _ => (
                "Sort stone and clear the working strip".to_owned(),
                EntryKind::Build,
            ),
        }
    }
}

/// What is left of the open time when the wall is done; a later day still begins with its
/// own lesson.
fn in_hand(calendar: &Calendar, lessons: &[Lesson], end: f64) -> Vec<Entry> {
    let mut entries = Vec::new();
    for open in calendar.open().iter().filter(|open| end < open.to) {
        let mut from = open.from.max(end);
        let mut spend = |to: f64, what: &str, kind| {
            let to = to.min(open.to);
            entries.push(Entry {
                day: open.day,
                from,
                to,
                what: what.to_owned(),
                kind,
            });
            from = to;
        };
        let opens_a_later_day = open.first_of_day && end < open.from && 0 < open.day;
        let mut now = open.from;
        for lesson in lessons
            .iter()
            .filter(|it| opens_a_later_day && it.before == Before::EachDay)
        {
            now += f64::from(lesson.minutes);
            spend(now, &lesson.title, lesson_kind(lesson));
        }
        spend(
            open.to,
            "Time in hand: mend faults, lay a stretch again, look back along the wall",
            EntryKind::Build,
        );
    }
    entries
}

fn lesson_kind(lesson: &Lesson) -> EntryKind {
    if lesson.safety {
        EntryKind::Safety
    } else {
        EntryKind::Lesson
    }
}

fn on_the_quarter(mut entry: Entry, calendar: &Calendar) -> Entry {
    let Some(open) = calendar
        .open()
        .iter()
        .find(|open| open.from <= entry.from && entry.from < open.to)
    else {
        return entry;
    };
    let quarter = |time: f64| ((time / QUARTER).round() * QUARTER).clamp(open.from, open.to);
    // The edges of the stretch are fixed by breaks and hours, on the quarter or not.
    if open.from < entry.from {
        entry.from = quarter(entry.from);
    }
    if entry.to < open.to {
        entry.to = quarter(entry.to);
    }
    entry
}

fn breaks(days: &[Day]) -> impl Iterator<Item = Entry> {
    days.iter().flat_map(move |day| {
        day.breaks.iter().map(move |it| {
            let from = minutes_to(days, day.date, it.start);
            Entry {
                day: day_at(days, from),
                from,
                to: from + f64::from(it.minutes),
                what: it.name.clone(),
                kind: EntryKind::Break,
            }
        })
    })
}

/// From the last open minute of a day to its finish, breaks taken out.
fn tidying(days: &[Day], calendar: &Calendar) -> Vec<Entry> {
    days.iter()
        .enumerate()
        .filter_map(|(number, day)| {
            let finish = minutes_to(days, day.date, day.finish);
            let after_breaks = day
                .breaks
                .iter()
                .map(|it| minutes_to(days, day.date, it.start) + f64::from(it.minutes));
            let last_open = calendar
                .open()
                .iter()
                .filter(|open| open.day == number)
                .map(|open| open.to);
            let from = after_breaks
                .chain(last_open)
                .fold(minutes_to(days, day.date, day.start), f64::max);
            (from < finish).then(|| Entry {
                day: number,
                from,
                to: finish,
                what: "Tidy, count the tools, make the wall and the site safe".to_owned(),
                kind: EntryKind::Tidy,
            })
        })
        .collect()
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
