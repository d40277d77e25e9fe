//! Each answer read on its own: what it is, or what is wrong with it and what would be right.

use super::{Answers, DayHours};
use crate::course::nearest;
use crate::course::time_of_day;
use crate::{Fault, Zones};
use chrono::{NaiveDate, NaiveTime, Offset, TimeZone};
use chrono_tz::{TZ_VARIANTS, Tz};
use craft::quantity::Units;
use craft::tables::Tables;
use std::ops::RangeInclusive;

/// A longer name fits on no page.
const LONGEST_NAME: usize = 120;
/// Hands-on courses run from one to five days; twice as many fit in.
const DAYS: RangeInclusive<u32> = 1..=10;
/// In an hour or two nobody is taught to build.
const HOURS: RangeInclusive<i64> = 3..=14;
/// Hours between the sun and the clock that no zone keeps: the widest zones come to about three.
const CLOCK_HOURS: f64 = 4.5;

/// A count of people.
pub(super) struct Count {
    pub(super) key: &'static str,
    range: RangeInclusive<u32>,
}

/// The counts of people, in the order of the answers.
pub(super) const PEOPLE: [Count; 4] = [
    Count::of("group.instructors", 1..=40),
    Count::of("group.novices", 0..=100),
    Count::of("group.improvers", 0..=100),
    Count::of("group.experienced", 0..=100),
];

/// The answers, understood.
pub(super) struct Checked {
    pub(super) place: Place,
    pub(super) hours: DayHours,
    pub(super) people: [u32; 4],
    pub(super) units: Units,
    pub(super) stone: String,
    pub(super) frames: &'static str,
    /// Empty where it is not known.
    pub(super) in_stock: String,
}

/// Where the course is held.
pub(super) struct Place {
    pub(super) name: String,
    pub(super) country: String,
    pub(super) latitude: f64,
    pub(super) longitude: f64,
    pub(super) time_zone: Tz,
}

/// What is wrong, in the order it was found.
#[derive(Default)]
pub(super) struct Faults(Vec<Fault>);

impl Faults {
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) fn into_list(self) -> Vec<Fault> {
        self.0
    }

    fn add(&mut self, code: &'static str, key: &str, what: String, cure: &str) {
        self.0.push(Fault {
            code,
            key: key.to_owned(),
            at: 0,
            what,
            cure: cure.to_owned(),
        });
    }

    /// The answer, or nothing after its fault was told.
    fn need<T>(
        &mut self,
        found: Option<T>,
        key: &str,
        what: impl FnOnce() -> String,
        cure: &str,
    ) -> Option<T> {
        if found.is_none() {
            self.add("bad-answer", key, what(), cure);
        }
        found
    }
}

impl Count {
    const fn of(key: &'static str, range: RangeInclusive<u32>) -> Self {
        Self { key, range }
    }
}

/// All answers; nothing where one can't be read, which then stands among the faults.
pub(super) fn all(
    answers: &Answers,
    tables: &Tables,
    zones: &Zones,
    faults: &mut Faults,
) -> Option<Checked> {
    let name = name(&answers.place, faults);
    let country = country(&answers.country, faults);
    let time_zone = time_zone(&answers.time_zone, faults);
    let hours = hours(answers, faults);
    let spot = coordinates(answers, zones, time_zone, faults);
    if let (Some(zone), Some(hours), Some(spot)) = (time_zone, &hours, spot) {
        beside_the_clock(zone, hours.first, spot, faults);
    }
    let people = people(answers, faults);
    let units = units(&answers.units, faults);
    let stone = stone(&answers.stone, tables, faults);
    let frames = ["bar", "timber"]
        .into_iter()
        .find(|it| *it == answers.frames);
    let what = || format!("there are no frames called \"{}\"", answers.frames);
    let frames = faults.need(
        frames,
        "frames.kind",
        what,
        "choose \"bar\" frames or \"timber\" frames",
    );
    let in_stock = in_stock(&answers.in_stock, faults);
    let (latitude, longitude) = spot?;
    Some(Checked {
        place: Place {
            name: name?,
            country: country?,
            latitude,
            longitude,
            time_zone: time_zone?,
        },
        hours: hours?,
        people: people?,
        units: units?,
        stone: stone?,
        frames: frames?,
        in_stock: in_stock?,
    })
}

fn name(typed: &str, faults: &mut Faults) -> Option<String> {
    let key = "venue.name";
    let name = typed.split_whitespace().collect::<Vec<_>>().join(" ");
    let long = name.chars().count();
    if LONGEST_NAME < long {
        let what = format!("this name has {long} letters, and {LONGEST_NAME} fit on a page");
        faults.add("bad-answer", key, what, "give it a shorter name");
        return None;
    }
    let given = Some(name).filter(|it| !it.is_empty());
    let what = || "the place has no name yet".to_owned();
    let cure = "say where the course is held, such as \"Hollin Bank Farm\"";
    faults.need(given, key, what, cure)
}

fn country(typed: &str, faults: &mut Faults) -> Option<String> {
    let code = typed.trim().to_uppercase();
    let two = code.len() == 2 && code.bytes().all(|it| it.is_ascii_uppercase());
    let found = Some(code).filter(|it| two || it.is_empty());
    let what = || format!("\"{}\" is not a country code", short(typed));
    let cure = "write the two letters of the country, such as \"GB\", or leave it empty";
    faults.need(found, "venue.country", what, cure)
}

fn time_zone(typed: &str, faults: &mut Faults) -> Option<Tz> {
    let typed = typed.trim();
    let cure = nearest(typed, TZ_VARIANTS.iter().map(|zone| zone.name())).map_or_else(
        || "choose a zone of the list, such as \"Europe/London\"".to_owned(),
        |near| format!("did you mean \"{near}\"?"),
    );
    let what = || format!("there is no time zone \"{}\"", short(typed));
    faults.need(typed.parse().ok(), "venue.time_zone", what, &cure)
}

/// The place in degrees, north and east positive; that of the zone where none is given.
fn coordinates(
    answers: &Answers,
    zones: &Zones,
    zone: Option<Tz>,
    faults: &mut Faults,
) -> Option<(f64, f64)> {
    let [north, east] = [&answers.latitude, &answers.longitude].map(|it| it.trim());
    if north.is_empty() && east.is_empty() {
        let name = zone?.name();
        let found = zones.named(name, answers.country.trim());
        let what = || format!("nothing is known of where {name} lies");
        let cure = "give the place in degrees, for the hours of daylight, such as 54.2";
        let spot = found.map(|it| (it.latitude, it.longitude));
        return faults.need(spot, "venue.latitude", what, cure);
    }
    let north = degrees(north, "venue.latitude", 90.0, faults);
    let east = degrees(east, "venue.longitude", 180.0, faults);
    Some((north?, east?))
}

fn degrees(typed: &str, key: &str, most: f64, faults: &mut Faults) -> Option<f64> {
    let found = typed
        .replace(',', ".")
        .replace('\u{2212}', "-")
        .trim_end_matches(['\u{b0}', ' '])
        .parse::<f64>()
        .ok()
        .filter(|it| it.abs() <= most);
    let what = || match typed {
        "" => "the other of the two coordinates is missing".to_owned(),
        _ => format!("\"{}\" is not a number of degrees", short(typed)),
    };
    let cure = format!(
        "give both in degrees, from -{most} to {most}, such as 54.2 and -2.4, or leave both empty"
    );
    faults.need(found, key, what, &cure)
}

/// Coordinates far from where the clock is kept: a wrong sign, most likely.
fn beside_the_clock(zone: Tz, first: NaiveDate, (_, longitude): (f64, f64), faults: &mut Faults) {
    let noon = first.and_time(NaiveTime::MIN);
    let seconds = zone.offset_from_utc_datetime(&noon).fix().local_minus_utc();
    let apart = (f64::from(seconds) / 3600.0 - longitude / 15.0).rem_euclid(24.0);
    let apart = apart.min(24.0 - apart);
    if CLOCK_HOURS < apart {
        let what = format!(
            "at {longitude} degrees the sun is {apart:.0} hours away from the clock of {}",
            zone.name()
        );
        let cure = "look at the sign: east is positive, west is negative; or choose another zone";
        faults.add("bad-answer", "venue.longitude", what, cure);
    }
}

fn hours(answers: &Answers, faults: &mut Faults) -> Option<DayHours> {
    let first = first_day(&answers.first_day, faults);
    let days = whole("day", &answers.days, &DAYS, faults);
    let start = time("day.0.start", &answers.start, faults);
    let finish = time("day.0.finish", &answers.finish, faults);
    let (start, finish) = (start?, finish?);
    let (least, most) = (*HOURS.start(), *HOURS.end());
    let cure = format!("a course day has {least} to {most} hours, such as 09:00 to 16:30");
    let key = "day.0.finish";
    let minutes = (finish - start).num_minutes();
    if minutes <= 0 {
        let what = format!(
            "the day ends at {}, not after its start at {}",
            finish.format("%H:%M"),
            start.format("%H:%M")
        );
        faults.add("finish-before-start", key, what, &cure);
        return None;
    }
    if minutes < 60 * least || 60 * most < minutes {
        let what = format!("the day is {} h {:02} min long", minutes / 60, minutes % 60);
        faults.add("bad-answer", key, what, &cure);
        return None;
    }
    Some(DayHours {
        first: first?,
        days: days?.into(),
        start,
        finish,
    })
}

/// Dates of the years that anyone plans for.
fn first_day(typed: &str, faults: &mut Faults) -> Option<NaiveDate> {
    use chrono::Datelike;
    let date = typed.trim().parse::<NaiveDate>().ok();
    let found = date.filter(|it| (1970..=2199).contains(&it.year()));
    let what = || match typed.trim() {
        "" => "there is no date yet".to_owned(),
        typed => format!("\"{}\" is not the date of a course", short(typed)),
    };
    let cure = "give the first day as year, month and day, such as 2027-04-24";
    faults.need(found, "day.0.date", what, cure)
}

fn time(key: &str, typed: &str, faults: &mut Faults) -> Option<NaiveTime> {
    let what = || match typed.trim() {
        "" => "there is no time yet".to_owned(),
        typed => format!("\"{}\" is not a time of day", short(typed)),
    };
    let cure = "give the time of day as 09:00, or as 9 am";
    faults.need(time_of_day(typed), key, what, cure)
}

fn people(answers: &Answers, faults: &mut Faults) -> Option<[u32; 4]> {
    let typed = [
        &answers.instructors,
        &answers.novices,
        &answers.improvers,
        &answers.experienced,
    ];
    let mut counts = [0; 4];
    let mut sound = true;
    for ((count, typed), of) in counts.iter_mut().zip(typed).zip(&PEOPLE) {
        let nobody = typed.trim().is_empty() && *of.range.start() == 0;
        let typed = if nobody { "0" } else { typed };
        match whole(of.key, typed, &of.range, faults) {
            Some(found) => *count = found,
            None => sound = false,
        }
    }
    if sound && counts[1..].iter().sum::<u32>() == 0 {
        let cure = "say how many there are of each: never built before, a course or two, more";
        let what = "there are no students".to_owned();
        faults.add("no-students", "group.novices", what, cure);
        return None;
    }
    Some(counts).filter(|_| sound)
}

fn whole(key: &str, typed: &str, range: &RangeInclusive<u32>, faults: &mut Faults) -> Option<u32> {
    let number = typed.trim().parse::<u32>().ok();
    let what = || match typed.trim() {
        "" => "there is no number yet".to_owned(),
        typed => format!("\"{}\" can't be", short(typed)),
    };
    let cure = format!(
        "give a whole number from {} to {}",
        range.start(),
        range.end()
    );
    faults.need(number.filter(|it| range.contains(it)), key, what, &cure)
}

fn units(typed: &str, faults: &mut Faults) -> Option<Units> {
    let found = match typed {
        "metric" => Some(Units::Metric),
        "imperial" => Some(Units::Imperial),
        _ => None,
    };
    let what = || format!("there are no units called \"{}\"", short(typed));
    faults.need(found, "units", what, "choose \"metric\" or \"imperial\"")
}

fn stone(typed: &str, tables: &Tables, faults: &mut Faults) -> Option<String> {
    let keys = || tables.stone.rocks.iter().map(|rock| rock.key.as_str());
    let found = keys().find(|key| *key == typed).map(str::to_owned);
    let cure = nearest(typed, keys()).map_or_else(
        || "choose a stone of the list".to_owned(),
        |near| format!("did you mean \"{near}\"?"),
    );
    let what = || format!("there is no stone \"{}\" in the table", short(typed));
    faults.need(found, "stone.kind", what, &cure)
}

fn in_stock(typed: &str, faults: &mut Faults) -> Option<String> {
    if typed.trim().is_empty() {
        return Some(String::new());
    }
    let count = whole("frames.in_stock", typed, &(0..=1000), faults)?;
    Some(count.to_string())
}

/// What was typed, as far as a message has room for it.
fn short(typed: &str) -> String {
    let mut short: String = typed.chars().take(40).collect();
    if short.len() < typed.len() {
        short.push_str("...");
    }
    short
}
