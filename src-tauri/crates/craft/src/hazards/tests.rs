//! What is matched and how it is rated, case by case.

use super::{Circumstance, Circumstances, Level, Likelihood, Rating, Severity, hazards};
use crate::course::{FrameKind, OldWall, Spell};
use crate::plan::{plan, sample};
use crate::quantity::metres;
use crate::tables::{Applies, Hazard, HazardTable};
use Likelihood::{Likely, Possible, Unlikely};
use Severity::{Grave, Serious, Slight};
use chrono::NaiveTime;

fn rating(likelihood: Likelihood, severity: Severity) -> Rating {
    Rating {
        likelihood,
        severity,
    }
}

fn hazard(id: &str, met_by: &[Circumstance], before: Rating, after: Rating) -> Hazard {
    Hazard {
        id: id.to_owned(),
        name: id.to_owned(),
        harm: "invented".to_owned(),
        who: "everyone".to_owned(),
        met_by: met_by.to_vec(),
        ask: None,
        before,
        controls: vec!["do something".to_owned()],
        after,
        cautions: Vec::new(),
        source: "invented".to_owned(),
    }
}

/// One hazard for each circumstance, named by its word.
fn one_for_each() -> HazardTable {
    let any = rating(Possible, Serious);
    HazardTable {
        knee: metres(0.5),
        waist: metres(0.9),
        hazards: Circumstance::all()
            .map(|it| hazard(it.word(), &[it], any, any))
            .collect(),
        ..HazardTable::default()
    }
}

/// BS 8800:1996, annex D, table D.1: trivial, tolerable, moderate, substantial, intolerable.
#[test]
fn the_level_is_that_of_the_published_estimator() {
    for (likelihood, severity, level) in [
        (Unlikely, Slight, Level::VeryLow),
        (Unlikely, Serious, Level::Low),
        (Unlikely, Grave, Level::Medium),
        (Possible, Slight, Level::Low),
        (Possible, Serious, Level::Medium),
        (Possible, Grave, Level::High),
        (Likely, Slight, Level::Medium),
        (Likely, Serious, Level::High),
        (Likely, Grave, Level::VeryHigh),
    ] {
        let given = rating(likelihood, severity);
        assert_eq!(given.level(), level, "{likelihood:?} and {severity:?}");
    }
}

#[test]
fn worse_in_either_way_is_above() {
    let middle = rating(Possible, Serious);
    assert!(!middle.is_above(middle));
    assert!(rating(Likely, Slight).is_above(middle));
    assert!(rating(Unlikely, Grave).is_above(middle));
    assert!(!rating(Unlikely, Slight).is_above(middle));
}

#[test]
fn the_highest_remaining_risk_comes_first_then_the_highest_before() {
    let always = [Circumstance::Course(Applies::Always)];
    let (low, high) = (rating(Unlikely, Slight), rating(Likely, Grave));
    let table = HazardTable {
        hazards: vec![
            hazard("first of two", &always, low, low),
            hazard("second of two", &always, low, low),
            hazard("was high", &always, high, low),
            hazard("stays high", &always, high, high),
            hazard("not met", &[Circumstance::Rain], high, high),
        ],
        ..HazardTable::default()
    };
    let shown = hazards(&table, &Circumstances::just(&[(always[0], "")]));
    let ids: Vec<&str> = shown.iter().map(|it| it.id.as_str()).collect();
    assert_eq!(
        ids,
        ["stays high", "was high", "first of two", "second of two"]
    );
    assert!(shown.iter().all(|it| it.because.is_empty()));
}

#[test]
fn any_of_its_circumstances_will_do_and_all_that_hold_are_told() {
    let (knee, rain) = (Circumstance::OverKnee, Circumstance::Rain);
    let holding = Circumstances::just(&[(knee, "so high"), (rain, "wet")]);
    let told = |these: &[Circumstance]| holding.reasons(these).map(|it| it.join("; "));
    assert_eq!(
        told(&[knee, Circumstance::OverWaist]),
        Some("so high".to_owned())
    );
    assert_eq!(told(&[rain, knee]), Some("so high; wet".to_owned()));
    assert_eq!(told(&[Circumstance::ManyStudents]), None);
}

/// The words and reasons that a course meets, in the order of the table.
fn met(change: impl Fn(&mut crate::course::Course)) -> Vec<(String, String)> {
    let (_, tables, _) = &*sample::SAMPLE;
    let mut tables = tables.clone();
    tables.hazards = one_for_each();
    let mut course = sample::course();
    change(&mut course);
    let plan = plan(&course, &tables).expect("a sound course");
    let shown = plan.hazards.into_iter();
    shown.map(|it| (it.id, it.because)).collect()
}

/// Each change of the sample course, and the circumstance that it brings or takes away, with
/// a part of the reason that is due.
#[test]
fn a_course_meets_what_it_brings_with_it() {
    type Change = fn(&mut crate::course::Course);
    let cases: [(&str, &str, Change, Option<&str>); 14] = [
        ("plain", "always", |_| {}, Some("")),
        ("plain", "bars", |_| {}, Some("bars of steel")),
        ("plain", "throughs", |_| {}, Some("throughs are set")),
        ("plain", "heads", |_| {}, Some("an end is built")),
        // 1.07 m of wall and 0.25 m of cope.
        ("plain", "over-waist", |_| {}, Some("1.32 m high")),
        ("plain", "old-wall", |_| {}, None),
        ("plain", "rain", |_| {}, None),
        (
            "plain",
            "many-students",
            |_| {},
            Some("8 students to an instructor"),
        ),
        (
            "timber",
            "bars",
            |course| course.frames.kind = FrameKind::Timber,
            None,
        ),
        (
            "two teach",
            "many-students",
            |course| course.group.instructors = 2,
            None,
        ),
        (
            "low",
            "over-waist",
            |course| {
                course.wall.height = metres(0.6);
                course.wall.cope_height = metres(0.25);
            },
            None,
        ),
        (
            "low",
            "over-knee",
            |course| {
                course.wall.height = metres(0.6);
                course.wall.cope_height = metres(0.0);
            },
            Some("0.60 m high"),
        ),
        (
            "wet",
            "rain",
            |course| {
                course.days[1].weather.rain = vec![Spell {
                    start: NaiveTime::from_hms_opt(10, 0, 0).expect("a time"),
                    minutes: 60,
                }];
            },
            Some("day 2"),
        ),
        (
            "old wall",
            "old-wall",
            |course| course.stone.old_wall = Some(old_wall()),
            Some("taken down"),
        ),
    ];
    for (course, word, change, due) in cases {
        let all = met(change);
        let found = all
            .iter()
            .find(|(id, _)| id == word)
            .map(|it| it.1.as_str());
        match (found, due) {
            (None, None) => {}
            (Some(found), Some(due)) => assert!(found.contains(due), "{course}, {word}: {found}"),
            _ => panic!("{course}, {word}: {found:?}, due {due:?}"),
        }
    }
}

fn old_wall() -> OldWall {
    OldWall {
        length: metres(4.0),
        height: metres(1.0),
        base_width: metres(0.7),
        top_width: metres(0.4),
        cope_height: metres(0.0),
        footing: None,
        reused: None,
    }
}

#[test]
fn every_word_is_its_own() {
    let mut words: Vec<&str> = Circumstance::all().map(Circumstance::word).collect();
    let all = words.len();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), all);
}
