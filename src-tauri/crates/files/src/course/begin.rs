//! A new course from six answers: where, when, who, in which units, of what stone, with what
//! frames. Everything else stands in a template of `lessons/begin`, as an ordinary field wall.

mod check;
#[cfg(test)]
mod tests;

use super::edit::{DayHours, begun};
use crate::shelf;
use crate::{Fault, Zones};
use check::{Checked, Faults, Place};
use chrono::{Datelike, Days, NaiveDate, Weekday};
use craft::quantity::Units;
use craft::tables::Tables;

/// The answers as they were typed. What is wrong with one is told by the key of the course file
/// that it becomes; the number of days has the key `day`.
#[derive(Debug, Clone, PartialEq, Eq)]
#[allow(missing_docs)]
pub struct Answers {
    /// What the place is called.
    pub place: String,
    /// Two letters of ISO 3166-1; empty for a country whose emergency number is not known.
    pub country: String,
    /// Degrees; both empty for the place the time zone is named after.
    pub latitude: String,
    pub longitude: String,
    /// The zone's IANA name.
    pub time_zone: String,
    /// As `2027-04-24`.
    pub first_day: String,
    pub days: String,
    /// As `09:00`; the same on every day, and so is the finish.
    pub start: String,
    pub finish: String,
    pub instructors: String,
    pub novices: String,
    pub improvers: String,
    pub experienced: String,
    /// `metric` or `imperial`.
    pub units: String,
    /// A key of the stone table.
    pub stone: String,
    /// `bar` or `timber`.
    pub frames: String,
    /// How many frames there are; empty where nobody has counted them.
    pub in_stock: String,
}

/// Weeks from today to the course that is offered: stone is ordered and people are asked
/// meanwhile (common practice, no source).
const WEEKS_AHEAD: u64 = 6;

/// The zone that is offered on a machine that keeps no country's clock, as UTC.
const ELSEWHERE: &str = "Europe/London";

impl Answers {
    /// What is filled in before anything was answered, on a machine in this zone: three days from a
    /// Friday some weeks on, eight who have never built, mixed stone. Only the place's name is left open.
    pub fn usual(zone: &str, today: NaiveDate, zones: &Zones) -> Self {
        let known = zones.named(zone, "");
        let zone = known.or_else(|| zones.named(ELSEWHERE, ""));
        let (country, name) = zone.map_or(("", ELSEWHERE), |it| (&it.country, &it.name));
        let text = ToOwned::to_owned;
        Self {
            place: String::new(),
            country: text(country),
            latitude: String::new(),
            longitude: String::new(),
            time_zone: text(name),
            first_day: friday_after(today).to_string(),
            days: text("3"),
            start: text("09:00"),
            finish: text("16:30"),
            instructors: text("1"),
            novices: text("8"),
            improvers: text("0"),
            experienced: text("0"),
            units: text(word(zones.units(country))),
            stone: text("fieldstone"),
            frames: text("bar"),
            in_stock: String::new(),
        }
    }
}

fn friday_after(today: NaiveDate) -> NaiveDate {
    let ahead = today.checked_add_days(Days::new(7 * WEEKS_AHEAD));
    let mut days = ahead.unwrap_or(today).iter_days();
    days.find(|day| day.weekday() == Weekday::Fri)
        .unwrap_or(today)
}

/// The text of a new course, complete and with notes, as a person would keep it.
///
/// # Errors
/// A [`Fault`] for each answer that can't be, in the order of the questions.
pub fn begin(answers: &Answers, tables: &Tables, zones: &Zones) -> Result<String, Vec<Fault>> {
    let mut faults = Faults::default();
    let checked = check::all(answers, tables, zones, &mut faults);
    let Some(checked) = checked.filter(|_| faults.is_empty()) else {
        return Err(faults.into_list());
    };
    let name = format!("begin/{}.walling", word(checked.units));
    let template = shelf::built_in(&name).unwrap_or_default();
    begun(template, &keys(&checked, zones), &checked.hours).map_err(|fault| vec![fault])
}

/// What is put into the template.
fn keys(checked: &Checked, zones: &Zones) -> Vec<(&'static str, String)> {
    let Place {
        name,
        country,
        latitude,
        longitude,
        time_zone,
    } = &checked.place;
    let mut keys = vec![
        ("title", format!("Walling at {name}")),
        ("paper", zones.paper(country).word().to_owned()),
        ("language", zones.language(country).word().to_owned()),
        ("venue.name", name.clone()),
        ("venue.country", country.clone()),
        ("venue.latitude", latitude.to_string()),
        ("venue.longitude", longitude.to_string()),
        ("venue.time_zone", time_zone.name().to_owned()),
        ("stone.kind", checked.stone.clone()),
        ("frames.kind", checked.frames.to_owned()),
        ("frames.in_stock", checked.in_stock.clone()),
    ];
    for (key, count) in check::PEOPLE.iter().zip(&checked.people) {
        keys.push((key.key, count.to_string()));
    }
    keys
}

fn word(units: Units) -> &'static str {
    match units {
        Units::Metric => "metric",
        Units::Imperial => "imperial",
    }
}
