//! A course read from its text, table by table; the first fault found is the answer.

use super::node::{Entry, Section, nearest};
use super::{CourseFile, FORMAT, Language, Paper};
use crate::American;
use crate::Fault;
use chrono_tz::{TZ_VARIANTS, Tz};
use craft::course::{Course, GivenRate, Venue};
use craft::quantity::Units;
use std::cell::RefCell;
use toml_edit::Document;

mod absence;
mod bank;
mod days;
mod emergency;
mod frames;
mod ground;
mod kit;
mod line;
mod money;
mod people;
mod ready;
mod rules;
mod running;
mod stone;
mod vehicles;
mod wall;
mod wishes;
mod worksheets;

pub(crate) use rules::{kit_rules, own_changes, own_kit_rules};

const TABLES: [&str; 23] = [
    "format",
    "title",
    "units",
    "paper",
    "language",
    "venue",
    "emergency",
    "day",
    "group",
    "student",
    "absence",
    "wall",
    "stone",
    "frames",
    "kit",
    "vehicle",
    "money",
    "ready",
    "pace",
    "timetable",
    "worksheets",
    "wish",
    "progress",
];

pub(super) fn course(text: &str) -> Result<CourseFile, Fault> {
    if text.trim().is_empty() {
        return Err(whole(
            "empty",
            "the file is empty",
            "coursewright new FILE writes an example to start from",
        ));
    }
    let document = document(text)?;
    let places = RefCell::default();
    let root = Section::root(document.as_table(), &places);
    format(&root)?;
    root.only(&TABLES)?;
    let frames = root.section("frames")?;
    let wall = wall::wall(&root.section("wall")?)?;
    let frames = frames::frames(&frames, wall.footing.map(|footing| footing.depth))?;
    let (group, private) = people::group(&root)?;
    let pace = root.section("pace")?;
    pace.only(&["chance", "seed", "rates", "beforehand", "without"])?;
    let days = days::days(&root)?;
    let course = Course {
        title: title(&root)?,
        units: root.get("units").map_or(Ok(Units::Metric), |it| {
            it.word(&[("metric", Units::Metric), ("imperial", Units::Imperial)])
        })?,
        venue: venue(&root.section("venue")?)?,
        running: running::running(&root, &days)?,
        recorded: Vec::new(),
        absences: absence::absences(&root, &days, &group.students)?,
        days,
        group,
        stone: stone::stone(&root.section("stone")?, &wall)?,
        wall,
        frames,
        kit: kit::kit(&root.section("kit")?)?,
        vehicles: vehicles::vehicles(&root)?,
        money: money::money(&root)?,
        ready: ready::ready(&root)?,
        rates: rates(&pace.section("rates")?)?,
        chance: pace.get("chance").map_or(Ok(0.8), |it| chance(&it))?,
        seed: pace
            .get("seed")
            .map_or(Ok(1), |it| it.whole(0, u32::MAX))?
            .into(),
        worksheets: worksheets::worksheets(&root.section("worksheets")?)?,
    };
    let paper = root.get("paper").map_or(Ok(Paper::A4), |it| {
        it.word(&[("a4", Paper::A4), ("letter", Paper::Letter)])
    })?;
    let language = root.get("language").map_or(Ok(Language::EnGb), |it| {
        it.word(&[("en-GB", Language::EnGb), ("en-US", Language::EnUs)])
    })?;
    Ok(CourseFile {
        course,
        paper,
        language,
        roster: !private.is_empty(),
        private,
        emergency: emergency::emergency(&root)?,
        typed: American::built_in().words_of(&without_comments(text)),
        places: places.into_inner(),
    })
}

/// A course file without what follows a `#` outside of quotes: nobody prints it.
fn without_comments(text: &str) -> String {
    let lines = text.lines().map(|line| {
        let mut quoted = false;
        let comment = line.find(|it| {
            quoted ^= it == '"';
            it == '#' && !quoted
        });
        comment.map_or(line, |at| &line[..at])
    });
    lines.collect::<Vec<_>>().join("\n")
}

/// The text as TOML.
fn document(text: &str) -> Result<Document<&str>, Fault> {
    Document::parse(text).map_err(|error| Fault {
        code: "not-toml",
        key: String::new(),
        at: error.span().map_or(0, |span| span.start),
        what: format!("this is not TOML: {}", error.message().replace('\n', ", ")),
        cure: "mend this line; text and quantities stand in double quotes, dates and times do not"
            .to_owned(),
    })
}

fn whole(code: &'static str, what: &str, cure: &str) -> Fault {
    Fault {
        code,
        key: String::new(),
        at: 0,
        what: what.to_owned(),
        cure: cure.to_owned(),
    }
}

/// Looked at before anything else: a newer file may hold keys that are unknown here.
fn format(root: &Section<'_>) -> Result<(), Fault> {
    let cure = format!("begin the file with format = {FORMAT}");
    let entry = root.need("format", &cure)?;
    let given = entry.whole(0, u32::MAX).map_err(|fault| Fault {
        cure: cure.clone(),
        ..fault
    })?;
    if FORMAT < i64::from(given) {
        return Err(entry.fault(
            "newer-format",
            &format!("{given} is newer than this program knows ({FORMAT})"),
            "open it with a newer Coursewright; nothing has been changed",
        ));
    }
    if i64::from(given) < FORMAT {
        return Err(entry.fault(
            "no-such-format",
            &format!("there is no format {given}"),
            &cure,
        ));
    }
    Ok(())
}

fn title(root: &Section<'_>) -> Result<String, Fault> {
    let entry = root.need("title", "give the course a title: title = \"...\"")?;
    let title = entry.text()?.trim();
    if title.is_empty() {
        return Err(entry.fault(
            "empty-text",
            "the title is empty",
            "give the course a title",
        ));
    }
    Ok(title.to_owned())
}

fn chance(entry: &Entry<'_>) -> Result<f64, Fault> {
    let chance = entry.share()?;
    if chance <= 0.0 {
        return Err(entry.fault(
            "out-of-range",
            "a chance of nothing asks for no wall",
            "a share above 0 and below 1, such as 0.8",
        ));
    }
    Ok(chance)
}

fn venue(section: &Section<'_>) -> Result<Venue, Fault> {
    section.only(&[
        "name",
        "country",
        "latitude",
        "longitude",
        "time_zone",
        "longest_wall",
    ])?;
    let degrees = |key: &str, most: f64| {
        section
            .need(key, "give the place in degrees, for the hours of daylight")?
            .number(-most, most)
    };
    Ok(Venue {
        name: section
            .get("name")
            .map_or(Ok(""), |it| it.text())?
            .to_owned(),
        country: section.get("country").map(|it| country(&it)).transpose()?,
        latitude: degrees("latitude", 90.0)?,
        longitude: degrees("longitude", 180.0)?,
        time_zone: zone(&section.need("time_zone", "give the zone, such as \"Europe/London\"")?)?,
        longest_wall: section
            .get("longest_wall")
            .map(|it| it.length(0.25, 400.0))
            .transpose()?,
    })
}

fn country(entry: &Entry<'_>) -> Result<String, Fault> {
    let code = entry.text()?;
    let two_capitals = code.len() == 2 && code.bytes().all(|b| b.is_ascii_uppercase());
    if two_capitals {
        return Ok(code.to_owned());
    }
    Err(entry.fault(
        "unknown-word",
        &format!("\"{code}\" is not a country code"),
        "write the two capitals of ISO 3166, such as \"GB\" or \"US\", or leave it out",
    ))
}

fn zone(entry: &Entry<'_>) -> Result<Tz, Fault> {
    let given = entry.text()?;
    given.parse().map_err(|_| {
        let cure = nearest(given, TZ_VARIANTS.iter().map(|zone| zone.name())).map_or_else(
            || "write the zone's IANA name, such as \"Europe/London\"".to_owned(),
            |near| format!("did you mean \"{near}\"?"),
        );
        entry.fault(
            "unknown-word",
            &format!("there is no time zone \"{given}\""),
            &cure,
        )
    })
}

fn rates(section: &Section<'_>) -> Result<Vec<GivenRate>, Fault> {
    section
        .entries()
        .into_iter()
        .map(|(stage, entry)| {
            let table = entry.table()?;
            table.only(&["novice", "improver", "experienced"])?;
            let hours = |key: &str| {
                table
                    .need(
                        key,
                        "give hours hands-on for novice, improver and experienced",
                    )?
                    .number(0.01, 100.0)
            };
            Ok(GivenRate {
                stage,
                hours: [hours("novice")?, hours("improver")?, hours("experienced")?],
            })
        })
        .collect()
}
