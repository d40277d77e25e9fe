//! Six answers: whatever they are within range they make a sound course; else they are refused
//! at their key.

use super::*;
use crate::Library;
use crate::course::CourseFile;
use craft::course::Experience;
use craft::plan::{Asked, Memory};
use proptest::prelude::*;
use std::sync::LazyLock;

static LIBRARY: LazyLock<Library> = LazyLock::new(|| Library::built_in().expect("the library"));
static ZONES: LazyLock<Zones> = LazyLock::new(|| Zones::built_in().expect("the zones"));

fn today() -> NaiveDate {
    "2027-01-04".parse().expect("a Monday")
}

fn usual() -> Answers {
    Answers {
        place: "Thorn Beck".to_owned(),
        ..Answers::usual("Europe/London", today(), &ZONES)
    }
}

fn made(answers: &Answers) -> Result<String, Vec<Fault>> {
    begin(answers, &LIBRARY.tables, &ZONES)
}

#[test]
fn with_a_name_the_usual_answers_are_a_course() {
    let text = made(&usual()).expect("a course");
    let file = CourseFile::parse(&text).expect("sound");
    let plan = file.plan(&LIBRARY).expect("a plan");
    assert!(0.8 <= plan.forecast.chance, "{}", plan.forecast.chance);
    // Four pairs have room to stand.
    assert!(6.0 <= plan.sizing.length.value, "{:?}", plan.sizing.length);
    let course = &file.course;
    assert_eq!(course.title, "Walling at Thorn Beck");
    assert_eq!(course.venue.country.as_deref(), Some("GB"));
    assert!((course.venue.latitude - 51.51).abs() < 1e-9);
    // Six weeks after that Monday is Monday 15 February; the Friday after it is the 19th.
    let dates: Vec<String> = course.days.iter().map(|it| it.date.to_string()).collect();
    assert_eq!(dates, ["2027-02-19", "2027-02-20", "2027-02-21"]);
    assert_eq!(course.days[0].breaks.len(), 3);
    assert_eq!(course.group.students.len(), 8);
    assert_eq!(course.frames.in_stock, None);
    assert!(text.contains("# never built before"), "{text}");
    assert_eq!(text.matches("[[day]]").count(), 3);
    assert!(text.find("[[day]]") < text.find("[group]"));
}

#[test]
fn an_answer_is_found_again_in_the_course() {
    let answers = Answers {
        country: "US".to_owned(),
        time_zone: "America/Chicago".to_owned(),
        latitude: "38,1".to_owned(),
        longitude: "-85.5".to_owned(),
        units: "imperial".to_owned(),
        days: "4".to_owned(),
        experienced: "3".to_owned(),
        stone: "limestone".to_owned(),
        frames: "timber".to_owned(),
        in_stock: "4".to_owned(),
        ..usual()
    };
    let text = made(&answers).expect("a course");
    let file = CourseFile::parse(&text).expect("sound");
    let course = &file.course;
    assert_eq!(course.units, Units::Imperial);
    assert_eq!(file.paper.word(), "letter");
    assert_eq!(file.language.word(), "en-US");
    assert_eq!(
        (course.venue.latitude, course.venue.longitude),
        (38.1, -85.5)
    );
    assert_eq!(course.days.len(), 4);
    let experienced = course.group.students.iter();
    let experienced = experienced.filter(|it| it.experience == Experience::Experienced);
    assert_eq!(experienced.count(), 3);
    assert_eq!(course.stone.kind.as_deref(), Some("limestone"));
    assert_eq!(course.frames.in_stock, Some(4));
    file.plan(&LIBRARY).expect("a plan");
}

/// A machine set to UTC says nothing of where it stands.
#[test]
fn a_clock_of_no_country_offers_a_known_one() {
    let usual = Answers::usual("UTC", today(), &ZONES);
    assert_eq!(
        (usual.country.as_str(), usual.time_zone.as_str()),
        ("GB", "Europe/London")
    );
}

#[test]
fn without_a_country_the_number_to_ring_is_a_blank() {
    let answers = Answers {
        country: String::new(),
        ..usual()
    };
    let text = made(&answers).expect("a course");
    let file = CourseFile::parse(&text).expect("sound");
    assert_eq!(file.course.venue.country, None);
}

#[test]
fn what_can_not_be_is_refused_at_its_key_with_what_would_be_right() {
    type Change = fn(&mut Answers, String);
    let cases: &[(Change, &str, &str, &str, &str)] = &[
        (
            |it, to| it.place = to,
            " ",
            "venue.name",
            "no name yet",
            "such as",
        ),
        (
            |it, to| it.country = to,
            "Britain",
            "venue.country",
            "not a country code",
            "two letters",
        ),
        (
            |it, to| it.time_zone = to,
            "Europe/Londn",
            "venue.time_zone",
            "no time zone",
            "Europe/London",
        ),
        (
            |it, to| it.latitude = to,
            "54.2",
            "venue.longitude",
            "other of the two",
            "both empty",
        ),
        (
            |it, to| it.latitude = to,
            "95",
            "venue.latitude",
            "\"95\" is not",
            "-90 to 90",
        ),
        (
            |it, to| it.first_day = to,
            "24 April",
            "day.0.date",
            "\"24 April\"",
            "2027-04-24",
        ),
        (
            |it, to| it.first_day = to,
            "2027-02-30",
            "day.0.date",
            "not the date",
            "2027-04-24",
        ),
        (
            |it, to| it.days = to,
            "0",
            "day",
            "\"0\" can't be",
            "from 1 to 10",
        ),
        (
            |it, to| it.start = to,
            "nine",
            "day.0.start",
            "not a time of day",
            "09:00",
        ),
        (
            |it, to| it.finish = to,
            "08:00",
            "day.0.finish",
            "not after its start",
            "3 to 14 hours",
        ),
        (
            |it, to| it.finish = to,
            "10:15",
            "day.0.finish",
            "1 h 15 min long",
            "3 to 14 hours",
        ),
        (
            |it, to| it.instructors = to,
            "0",
            "group.instructors",
            "can't be",
            "from 1 to 40",
        ),
        (
            |it, to| it.novices = to,
            "-3",
            "group.novices",
            "\"-3\" can't be",
            "whole number",
        ),
        (
            |it, to| it.novices = to,
            "0",
            "group.novices",
            "no students",
            "how many",
        ),
        (
            |it, to| it.units = to,
            "yards",
            "units",
            "no units",
            "metric",
        ),
        (
            |it, to| it.stone = to,
            "limston",
            "stone.kind",
            "no stone",
            "limestone",
        ),
        (
            |it, to| it.frames = to,
            "",
            "frames.kind",
            "no frames",
            "timber",
        ),
        (
            |it, to| it.in_stock = to,
            "a few",
            "frames.in_stock",
            "\"a few\"",
            "whole number",
        ),
    ];
    for (change, typed, key, what, cure) in cases {
        let mut answers = usual();
        change(&mut answers, (*typed).to_owned());
        let faults = made(&answers).expect_err(key);
        let fault = faults.iter().find(|it| it.key == *key);
        let fault = fault.unwrap_or_else(|| panic!("{key}: {faults:?}"));
        assert!(fault.what.contains(what), "{key}: {}", fault.what);
        assert!(fault.cure.contains(cure), "{key}: {}", fault.cure);
    }
}

#[test]
fn all_that_is_wrong_is_told_at_once() {
    let answers = Answers {
        place: String::new(),
        days: "many".to_owned(),
        stone: String::new(),
        ..usual()
    };
    let faults = made(&answers).expect_err("three faults");
    let keys: Vec<&str> = faults.iter().map(|it| it.key.as_str()).collect();
    assert_eq!(keys, ["venue.name", "day", "stone.kind"]);
}

/// A longitude with the wrong sign puts noon into the night.
#[test]
fn a_place_far_from_its_clock_is_refused() {
    let at = |zone: &str, longitude: &str| {
        made(&Answers {
            time_zone: zone.to_owned(),
            latitude: "40".to_owned(),
            longitude: longitude.to_owned(),
            ..usual()
        })
    };
    assert!(at("America/New_York", "-84.6").is_ok());
    let faults = at("America/New_York", "84.6").expect_err("the other side of the globe");
    assert_eq!(faults[0].key, "venue.longitude");
    assert!(faults[0].cure.contains("sign"), "{}", faults[0].cure);
    // The west of China keeps the clock of its east; the date line runs through no zone.
    assert!(at("Asia/Shanghai", "74").is_ok());
    assert!(at("Pacific/Auckland", "-176.5").is_ok());
}

#[test]
fn a_pasted_page_is_refused_in_few_words() {
    let answers = Answers {
        place: "rain ".repeat(2000),
        days: "9".repeat(10_000),
        ..usual()
    };
    for fault in made(&answers).expect_err("too long") {
        assert!(fault.what.len() < 120, "{}", fault.what);
    }
}

fn answers() -> impl Strategy<Value = Answers> {
    let zone = 0..ZONES.zones.len();
    let rocks = LIBRARY.tables.stone.rocks.len();
    let when = (0_u64..4000, 1_u32..=10, 0_u32..=60, 3_u32..=14);
    let who = (1_u32..=8, 0_u32..=30, 0_u32..=12, 0_u32..=12);
    let stock = prop_oneof![Just(None), (0_u32..=12).prop_map(Some)];
    let place = "[A-Za-z0-9\"'\\\\ \u{e9}\u{4e2d}#\\[\\]]{1,20}";
    (
        zone,
        when,
        who,
        any::<(bool, bool)>(),
        0..rocks,
        stock,
        place,
    )
        .prop_map(|(zone, when, who, (metric, bar), rock, stock, place)| {
            let zone = &ZONES.zones[zone];
            let (after, days, from, hours) = when;
            let start = from * 15 % ((24 - hours) * 60);
            let time = |minutes: u32| format!("{:02}:{:02}", minutes / 60, minutes % 60);
            let first = today() + Days::new(after);
            let finish = (start + hours * 60).min(24 * 60 - 1);
            Answers {
                place: format!("P{place}"),
                country: zone.country.clone(),
                latitude: String::new(),
                longitude: String::new(),
                time_zone: zone.name.clone(),
                first_day: first.to_string(),
                days: days.to_string(),
                start: time(start.min(finish - 180)),
                finish: time(finish),
                instructors: who.0.to_string(),
                novices: who.1.max(1).to_string(),
                improvers: who.2.to_string(),
                experienced: who.3.to_string(),
                units: word(if metric {
                    Units::Metric
                } else {
                    Units::Imperial
                })
                .to_owned(),
                stone: LIBRARY.tables.stone.rocks[rock].key.clone(),
                frames: if bar { "bar" } else { "timber" }.to_owned(),
                in_stock: stock.map(|it| it.to_string()).unwrap_or_default(),
            }
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any zone, season, hours, group, stone and stock: a plan with a wall of some length.
    #[test]
    fn whatever_is_answered_there_is_a_plan(answers in answers()) {
        let text = made(&answers).map_err(|it| TestCaseError::fail(format!("{it:?}")))?;
        let file = CourseFile::parse(&text).map_err(|it| TestCaseError::fail(it.what))?;
        prop_assert_eq!(file.course.days.len().to_string(), answers.days);
        prop_assert!(file.course.venue.name.starts_with('P'));
        let plan = file.plan_again(&LIBRARY, Asked::Figures, &mut Memory::default());
        let plan = plan.map_err(|it| TestCaseError::fail(format!("{}: {}", it.key, it.what)))?;
        let length = plan.sizing.length.value;
        prop_assert!(length.is_finite() && 0.0 < length, "{} m", length);
        prop_assert!(plan.forecast.chance.is_finite());
    }
}
