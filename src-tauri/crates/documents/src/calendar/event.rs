//! One entry of the calendar: a course day or a line of its timetable.

use super::{Detail, date_value};
use crate::Course;
use calcard::common::PartialDateTime;
use calcard::icalendar::{
    ICalendarComponent, ICalendarComponentType, ICalendarEntry, ICalendarParameter,
    ICalendarProperty, ICalendarTransparency, ICalendarValue, ICalendarValueType,
};
use chrono::{DateTime, NaiveDate, Timelike};
use chrono_tz::Tz;
use craft::pace::calendar::minutes_to;
use craft::pace::timetable::Of;
use craft::pace::{Entry, EntryKind};
use shapes::{Clock, DateStyle};
use uuid::Uuid;

/// What our identifiers are derived from. Drawn once and never changed: a new one would make
/// every entry that somebody imported a stranger to its successor.
const NAMESPACE: Uuid = Uuid::from_u128(0x5f0c_7d3e_92ab_4c61_8e17_3ad2_40b9_6f58);

/// Degrees are written to so many parts: six decimals, as RFC 5545 asks in section 3.8.1.6.
const PARTS_OF_A_DEGREE: f64 = 1e6;

/// A place is told from others to so many parts of a degree.
const PARTS_OF_A_PLACE: f64 = 100.0;

/// What all entries of one course have in common.
pub(super) struct Events<'a> {
    course: &'a Course,
    clock: Clock,
    made: NaiveDate,
}

impl<'a> Events<'a> {
    pub(super) fn new(course: &'a Course, made: NaiveDate) -> Self {
        Self {
            course,
            // Only its local times are asked for, never how they are written.
            clock: Clock::new(&course.file.course, DateStyle::British),
            made,
        }
    }

    /// A course day, counted from 0.
    pub(super) fn day(&self, number: usize, detail: Detail) -> ICalendarComponent {
        let given = &self.course.file.course;
        let day = &given.days[number];
        let mut event = self.event(&self.uid(day.date, "day", "", 1), &given.title);
        if detail == Detail::Entries {
            let next = day.date.succ_opt().unwrap_or(day.date);
            whole_day(&mut event, ICalendarProperty::Dtstart, day.date);
            whole_day(&mut event, ICalendarProperty::Dtend, next);
        } else {
            let minutes = |time| minutes_to(&given.days, day.date, time);
            self.hours(&mut event, minutes(day.start), minutes(day.finish));
        }
        // Above entries that have their own times it must not make all the night busy.
        let shown = match detail {
            Detail::Entries => ICalendarTransparency::Transparent,
            Detail::Days => ICalendarTransparency::Opaque,
        };
        event.add_property(ICalendarProperty::Transp, shown);
        if !given.venue.name.trim().is_empty() {
            event.add_property(ICalendarProperty::Location, clean(&given.venue.name));
        }
        let degrees = [given.venue.latitude, given.venue.longitude].map(degrees);
        event
            .entries
            .push(ICalendarEntry::new(ICalendarProperty::Geo).with_values(degrees.to_vec()));
        event.add_property(ICalendarProperty::Description, self.told(number));
        event
    }

    /// The lines of a day's timetable.
    pub(super) fn entries(&self, day: usize) -> impl Iterator<Item = ICalendarComponent> {
        let date = self.course.file.course.days[day].date;
        let lines = self.course.plan.timetable.iter();
        let mut before: Vec<(&str, &str)> = Vec::new();
        lines.filter(move |line| line.day == day).map(move |line| {
            let (kind, about) = (line.kind.word(), self.about(line));
            before.push((kind, about));
            let nth = before.iter().filter(|it| **it == (kind, about)).count();
            let mut event = self.event(&self.uid(date, kind, about, nth), &line.what);
            self.hours(&mut event, line.from, line.to);
            let shown = match line.kind {
                EntryKind::Break => ICalendarTransparency::Transparent,
                _ => ICalendarTransparency::Opaque,
            };
            event.add_property(ICalendarProperty::Transp, shown);
            event.add_property(ICalendarProperty::Categories, category(line.kind));
            event
        })
    }

    /// What a line is about, by a word that stays when its title or its time is another: the id of
    /// its stage or lesson, else what it says; tidying comes once and needs no word.
    fn about<'l>(&'l self, line: &'l Entry) -> &'l str {
        let tables = &self.course.library.tables;
        let id = match line.of {
            Some(Of::Stage(stage)) => tables.stages.get(stage).map(|it| it.id.as_str()),
            Some(Of::Lesson(lesson)) => tables.lessons.get(lesson).map(|it| it.id.as_str()),
            None => None,
        };
        match line.kind {
            EntryKind::Tidy => "",
            _ => id.unwrap_or(&line.what),
        }
    }

    /// The name by which a calendar program knows an entry again when the course has been changed:
    /// the date, what sort of entry, what it is about, and the how manyeth of those that day.
    ///
    /// A course is known by its place, to a hundredth of a degree (about 1 km), and by its seed. Its
    /// title and its first day may change; its dates are in the name anyway; a pin on the map that
    /// is set a few metres better leaves the name alone. Two courses at one place on one date need
    /// two seeds.
    fn uid(&self, date: NaiveDate, kind: &str, about: &str, nth: usize) -> String {
        let given = &self.course.file.course;
        let degrees = [given.venue.latitude, given.venue.longitude];
        // Nought has no sign.
        let [north, east] = degrees.map(|it| (it * PARTS_OF_A_PLACE).round() + 0.0);
        let seed = given.seed;
        let name = format!("{north}\n{east}\n{seed}\n{date}\n{kind}\n{about}\n{nth}");
        let uid = Uuid::new_v5(&NAMESPACE, name.as_bytes());
        uid.hyphenated().to_string()
    }

    /// What every entry begins with.
    fn event(&self, uid: &str, summary: &str) -> ICalendarComponent {
        let mut event = ICalendarComponent::new(ICalendarComponentType::VEvent);
        event.add_uid(uid);
        event.add_dtstamp(PartialDateTime {
            hour: Some(0),
            minute: Some(0),
            second: Some(0),
            // No hours and no minutes off: the time is written as UTC.
            tz_hour: Some(0),
            tz_minute: Some(0),
            ..date_value(self.made)
        });
        event.add_sequence(0);
        event.add_property(ICalendarProperty::Summary, clean(summary));
        event
    }

    /// Begin and end, in minutes of the course calendar.
    fn hours(&self, event: &mut ICalendarComponent, from: f64, to: f64) {
        let [from, to] = [from, to].map(|minutes| self.clock.local(minutes));
        timed(event, ICalendarProperty::Dtstart, &from);
        // What begins in the hour that the clock skips is an hour later and may begin after its
        // end; an entry without an end is allowed, one that ends before it begins is not.
        if from < to {
            timed(event, ICalendarProperty::Dtend, &to);
        }
    }

    /// A day's timetable in plain lines, in the words of the pages.
    fn told(&self, number: usize) -> String {
        let days = &self.course.written.days;
        let Some(day) = days.get(number) else {
            return String::new();
        };
        let mut lines = vec![format!(
            "Day {} of {}, {} to {}",
            day.number,
            days.len(),
            day.start,
            day.finish
        )];
        let entries = day.entries.iter();
        lines.extend(entries.map(|it| format!("{} - {}  {}", it.start, it.finish, it.what)));
        lines.push(format!("Sunrise {}, sunset {}", day.sunrise, day.sunset));
        clean(&lines.join("\n"))
    }
}

/// A local time with the name of its zone. In the hour that comes twice in autumn a time written
/// like this is the first of the two (RFC 5545, section 3.3.5), as it is in the plan.
fn timed(event: &mut ICalendarComponent, property: ICalendarProperty, time: &DateTime<Tz>) {
    let part = |number: u32| u8::try_from(number).ok();
    let value = PartialDateTime {
        hour: part(time.hour()),
        minute: part(time.minute()),
        second: part(time.second()),
        ..date_value(time.date_naive())
    };
    let zone = ICalendarParameter::tzid(time.timezone().name().to_owned());
    event.add_property_with_params(property, [zone], value);
}

fn whole_day(event: &mut ICalendarComponent, property: ICalendarProperty, date: NaiveDate) {
    let kind = ICalendarParameter::value(ICalendarValueType::Date);
    event.add_property_with_params(property, [kind], date_value(date));
}

/// Degrees to six decimals; nought has no sign.
fn degrees(degrees: f64) -> ICalendarValue {
    let rounded = (degrees * PARTS_OF_A_DEGREE).round() / PARTS_OF_A_DEGREE;
    ICalendarValue::Float(rounded + 0.0)
}

/// What calendar programs that colour by sort are told.
fn category(kind: EntryKind) -> String {
    match kind {
        EntryKind::Lesson => "Lesson",
        EntryKind::Build => "Building",
        EntryKind::Break => "Break",
        EntryKind::Safety => "Safety",
        EntryKind::Tidy => "Tidying",
    }
    .to_owned()
}

/// Text as RFC 5545 allows it: line ends alike, and no other control characters but the tab.
fn clean(text: &str) -> String {
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    text.chars()
        .filter(|it| !it.is_control() || matches!(it, '\n' | '\t'))
        .collect()
}
