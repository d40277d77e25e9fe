//! The course as an iCalendar file (RFC 5545), for the calendar on a phone.
//!
//! The library writes, escapes and folds the lines and works the VTIMEZONE out of the zone's
//! own changes; here is which entries there are and what they say. The same course gives the
//! same bytes: no clock is asked and no number is drawn. Nothing of the students is in it.

mod event;
mod file;

use crate::Course;
use calcard::common::{CalendarScale, PartialDateTime};
use calcard::icalendar::{
    ICalendar, ICalendarComponent, ICalendarComponentType, ICalendarProperty, ICalendarValue,
};
use chrono::{Datelike, NaiveDate, NaiveTime};
use event::Events;

pub use file::save;

/// Who wrote the file; [`save`] knows our own files by it.
const WRITER: &str = "-//Coursewright//Course calendar//EN";

/// How much of the days goes into the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Detail {
    /// Every line of the timetable at its time, so that a phone says what comes next. The day
    /// itself stands above them as a whole-day entry with place and timetable; as a block of
    /// its hours it would lie beside every line and halve the width of a phone.
    #[default]
    Entries,
    /// One block for each day, from arriving to leaving: what students keep free.
    Days,
}

/// A calendar file before it is saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Calendar {
    /// The whole file, lines ended as RFC 5545 asks.
    pub text: String,
    /// How many days it holds.
    pub days: usize,
    /// How many lines of the timetable it holds, the days not among them.
    pub entries: usize,
}

/// The course as a calendar. `made` is the date the entries say they were written on, which is
/// how a calendar program tells a newer entry from an older one; without it, the first course
/// day, so that the same course gives the same bytes.
pub fn calendar(course: &Course, detail: Detail, made: Option<NaiveDate>) -> Calendar {
    let days = &course.file.course.days;
    let first = days.first().map(|day| day.date).unwrap_or_default();
    let events = Events::new(course, made.unwrap_or(first));
    let mut all = Vec::new();
    for number in 0..days.len() {
        all.push(events.day(number, detail));
        if detail == Detail::Entries {
            all.extend(events.entries(number));
        }
    }
    let entries = all.len() - days.len();
    let mut calendar = whole(all);
    let last = days.last().map_or(first, |day| day.date);
    let zone = course.file.course.venue.time_zone.name();
    calendar.add_timezone(zone, new_year(first, -1), new_year(last, 2));
    Calendar {
        text: calendar.to_string(),
        days: days.len(),
        entries,
    }
}

/// The outermost component with all others in it, in their order.
fn whole(events: Vec<ICalendarComponent>) -> ICalendar {
    let mut outer = ICalendarComponent::new(ICalendarComponentType::VCalendar);
    let gregorian = ICalendarValue::CalendarScale(CalendarScale::Gregorian);
    outer.add_property(ICalendarProperty::Version, "2.0".to_owned());
    outer.add_property(ICalendarProperty::Prodid, WRITER.to_owned());
    outer.add_property(ICalendarProperty::Calscale, gregorian);
    let mut components = vec![outer];
    for event in events {
        // A course of some days has far fewer entries than a u32 can count.
        let number = u32::try_from(components.len()).unwrap_or(u32::MAX);
        components[0].component_ids.push(number);
        components.push(event);
    }
    ICalendar { components }
}

/// Seconds since 1970 of the new year so many years after a date's own. From the one before the
/// course to the second after it there are two changes of the clock of each sort, from which the
/// library reads the zone's yearly rule.
fn new_year(date: NaiveDate, years: i32) -> i64 {
    let day = NaiveDate::from_ymd_opt(date.year() + years, 1, 1).unwrap_or(date);
    day.and_time(NaiveTime::MIN).and_utc().timestamp()
}

/// A date without a time.
fn date_value(date: NaiveDate) -> PartialDateTime {
    PartialDateTime {
        year: u16::try_from(date.year()).ok(),
        month: u8::try_from(date.month()).ok(),
        day: u8::try_from(date.day()).ok(),
        ..PartialDateTime::default()
    }
}

#[cfg(test)]
mod tests;
