//! Checks of the pace book: by hand, and what must hold for any records.

use super::{Book, Record, StageRecord};
use crate::pace::belief::Belief;
use crate::pace::belief::tests::{near, spread, stages};
use crate::tables::PaceSpread;
use proptest::prelude::*;

fn row(stage: &str, usual_minutes: f64, taken_minutes: f64) -> StageRecord {
    StageRecord {
        stage: stage.to_owned(),
        usual_minutes,
        taken_minutes,
        tied: None,
    }
}

fn record(stages: Vec<StageRecord>) -> Record {
    Record {
        course: "Hollin Bank weekend".to_owned(),
        stages,
    }
}

fn book(records: &[Record]) -> Book {
    Book::of(records, &stages(), &spread()).expect("sound records")
}

/// The stage in the first place of the table that the checks use.
const DIG: &str = "TrenchCubicMetres";
const FOOTING: &str = "FootingTonnes";
const FIXED: &str = "Minutes(15)";

fn alike(one: &Belief, other: &Belief, within: f64) -> bool {
    let places = 0..one.len();
    places.clone().all(|row| {
        near(one.mean(row), other.mean(row), within)
            && places.clone().all(|column| {
                let (here, there) = (one.covariance(row, column), other.covariance(row, column));
                near(here, there, within)
            })
    })
}

#[test]
fn an_empty_book_believes_what_is_built_in() {
    let built_in = Belief::built_in(&stages(), &spread());
    assert!(alike(&book(&[]).belief(), &built_in, 1e-15));
}

/// By hand: digging took 1.5 times as long, once, read off without error and with no spread
/// between stages. The instructor's part of it is 0.18² / 0.22² of ln 1.5 = 0.405465, which is
/// 0.271427, and its variance 0.0324 - 0.0324² / 0.0484 = 0.010711.
#[test]
fn the_instructors_part_of_one_course_is_learned() {
    let exact = PaceSpread {
        stage: 0.0,
        instructor_stage: 0.0,
        reading: 0.0,
        clock_minutes: 0.0,
        ..spread()
    };
    let once = [record(vec![row(DIG, 100.0, 150.0)])];
    let belief = Book::of(&once, &stages(), &exact).expect("sound").belief();
    for stage in [0, 1, 3] {
        assert!(near(belief.mean(stage), 0.271_427, 1e-6));
        let due = 0.010_711 + 0.0484 - 0.0324;
        assert!(near(belief.variance(stage), due, 1e-6));
    }
    assert!(near(belief.mean(2), 0.0, 0.0));
    assert!(near(belief.variance(2), 0.0, 0.0));
}

/// By hand: with so many courses alike the book believes them, and what is left is what is new
/// on each course: √(0.0484 - 0.0324 + 0.0289 - 0.0144) = 0.174642.
#[test]
fn many_courses_leave_only_what_is_new_on_each() {
    let always = record(vec![row(DIG, 200.0, 280.0), row(FOOTING, 200.0, 280.0)]);
    let belief = book(&vec![always; 2_000]).belief();
    for stage in [0, 1] {
        assert!(near(belief.mean(stage), 1.4_f64.ln(), 1e-3));
        assert!(near(belief.variance(stage).sqrt(), 0.174_642, 1e-3));
    }
}

#[test]
fn the_slowest_pair_is_not_learned_as_a_slow_group() {
    let free = row(FOOTING, 200.0, 240.0);
    let tied = StageRecord {
        tied: Some(4.0),
        ..free.clone()
    };
    let believed = |row: StageRecord| book(&[record(vec![row])]).belief().mean(1);
    let (free, tied) = (believed(free), believed(tied));
    assert!(0.03 < free - tied, "{free} {tied}");
}

#[test]
fn what_the_table_does_not_hold_tells_nothing() {
    let rows = vec![row("Whitewash", 60.0, 90.0), row(FIXED, 15.0, 30.0)];
    assert_eq!(book(&[record(rows)]), book(&[]));
}

#[test]
fn a_pace_that_no_group_has_is_refused() {
    for (usual, taken) in [
        (100.0, 9.9),
        (100.0, 1001.0),
        (0.0, 0.0),
        (0.0, 10.0),
        (10.0, 0.0),
        (-10.0, -10.0),
        (10.0, -10.0),
        (f64::NAN, 10.0),
        (10.0, f64::INFINITY),
        (f64::INFINITY, f64::INFINITY),
    ] {
        let records = [record(vec![
            row(DIG, 60.0, 60.0),
            row(FOOTING, usual, taken),
        ])];
        let refused = Book::of(&records, &stages(), &spread()).expect_err("absurd");
        assert_eq!(refused.stage, FOOTING, "{usual} {taken}");
    }
    let records = [record(vec![row(DIG, 240.0, 5.0)])];
    let refused = Book::of(&records, &stages(), &spread()).expect_err("absurd");
    assert_eq!(
        refused.to_string(),
        "\"Hollin Bank weekend\": the stage \"TrenchCubicMetres\" is said to have taken 5 minutes where 240 are usual. It takes between a tenth of its usual time and ten times as long: look for a slip of the pen, or leave the stage out."
    );
    for taken in [10.0, 1000.0] {
        assert!(record(vec![row(DIG, 100.0, taken)]).check().is_ok());
    }
}

#[test]
fn rates_are_shown_before_and_after() {
    use crate::tables::Rate;
    let mut table = crate::worksheet::sample::tables().pace;
    let rate = |stage: &str, hours| Rate {
        stage: stage.to_owned(),
        hours,
        source: String::new(),
    };
    table.rates = vec![rate(FOOTING, [3.0, 2.0, 1.0]), rate("Whitewash", [1.0; 3])];
    let slow = record(vec![row(FOOTING, 200.0, 300.0)]);
    let shown = book(&[slow]).rates(&table);
    assert_eq!(shown.len(), 1);
    assert_eq!(shown[0].stage, FOOTING);
    assert_eq!(Vec::from(shown[0].before_hours), table.rates[0].hours);
    let factor = shown[0].after_hours[0] / 3.0;
    assert!(1.2 < factor && factor < 1.5, "{factor}");
    assert!(near(shown[0].after_hours[2], factor, 1e-12));
    assert!(near(shown[0].before_spread, 0.278_029, 1e-6));
    assert!(shown[0].after_spread < shown[0].before_spread);
}

fn any_record() -> impl Strategy<Value = Record> {
    let rows = [DIG, FOOTING, FIXED, "SecondLiftTonnes"].map(|stage| {
        let tied = prop::option::of(1.0..12.0);
        prop::option::of(
            (10.0..600.0, 0.11..9.0, tied).prop_map(move |(usual, slowness, tied)| StageRecord {
                tied,
                ..row(stage, usual, usual * slowness)
            }),
        )
    });
    rows.prop_map(|rows| record(rows.into_iter().flatten().collect()))
}

proptest! {
    #[test]
    fn the_order_of_records_does_not_matter(
        records in prop::collection::vec(any_record(), 2..6),
    ) {
        let back: Vec<Record> = records.iter().rev().cloned().collect();
        prop_assert!(alike(&book(&records).belief(), &book(&back).belief(), 1e-9));
    }

    #[test]
    fn a_record_never_makes_the_next_course_less_sure(
        records in prop::collection::vec(any_record(), 1..6),
    ) {
        let (before, after) = (book(&records[1..]).belief(), book(&records).belief());
        for stage in 0..4 {
            prop_assert!(after.variance(stage) <= before.variance(stage) + 1e-12);
        }
    }
}
