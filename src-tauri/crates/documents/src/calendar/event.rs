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
use craft::pace::EntryKind;
use craft::pace::calendar::minutes_to;
use shapes::{Clock, DateStyle};
use uuid::Uuid;

/// What our identifiers are derived from. Drawn once and never changed: a new one would make
/// every entry that somebody imported a stranger to its successor.
const NAMESPACE: Uuid = Uuid::from_u128(0x5f0c_7d3e_92ab_4c61_8e17_3ad2_40b9_6f58);

/// Degrees are written to so many parts: six decimals, as RFC 5545 asks in section 3.8.1.6.
const PARTS_OF_A_DEGREE: f64 = 1e6;

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
        let mut event = self.event(day.date, 0, &given.title);
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
        lines
            .filter(move |line| line.day == day)
            .enumerate()
            .map(move |(number, line)| {
                let mut event = self.event(date, number + 1, &line.what);
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

    /// What every entry begins with. The number counts within the day; 0 is the day itself.
    fn event(&self, date: NaiveDate, number: usize, summary: &str) -> ICalendarComponent {
        let title = &self.course.file.course.title;
        let name = format!("{title}\n{date}\n{number}");
        let uid = Uuid::new_v5(&NAMESPACE, name.as_bytes());
        let mut event = ICalendarComponent::new(ICalendarComponentType::VEvent);
        event.add_uid(&uid.hyphenated().to_string());
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
