//! The pace book in the store: recorded, replaced, taken back, refused.

use super::desk::{Desk, april, items};
use craft::pace::book::{Record, StageRecord};
use store::{PaceRecord, Store};

fn row(stage: &str, usual_minutes: f64, taken_minutes: f64) -> StageRecord {
    StageRecord {
        stage: stage.to_owned(),
        usual_minutes,
        taken_minutes,
        tied: None,
    }
}

/// A course that began on this day of April and was recorded two days after.
fn course(desk: &Desk, title: &str, day: u32, stages: &[StageRecord]) -> PaceRecord {
    PaceRecord {
        path: desk.course(title, &[]).path,
        first_day: april(day),
        recorded_on: april(day + 2),
        record: Record {
            course: title.to_owned(),
            stages: stages.to_vec(),
        },
    }
}

/// A laid stage comes back with its pairs, and the stages in the order in which they were given.
fn rows(dig: f64) -> Vec<StageRecord> {
    let lift = StageRecord {
        tied: Some(3.5),
        ..row("first-lift", 200.0, 260.25)
    };
    vec![lift, row("dig", 60.0, dig)]
}

fn counting(store: &Store) -> Vec<PaceRecord> {
    store.pace_records().expect("records")
}

#[test]
fn what_is_recorded_comes_back_by_date() {
    let desk = Desk::new();
    let late = course(&desk, "Late", 20, &rows(80.0));
    let early = course(&desk, "Early", 2, &rows(60.0));
    let mut store = desk.store();
    store.record(&late).expect("recorded");
    store.record(&early).expect("recorded");
    drop(store);
    assert_eq!(counting(&desk.store()), [early.clone(), late.clone()]);
    let reading = Store::read(desk.path()).expect("the store");
    assert_eq!(counting(&reading), [early, late]);
}

#[test]
fn a_newer_record_of_a_course_counts_and_can_be_taken_back() {
    let desk = Desk::new();
    let mut store = desk.store();
    let [first, second, third] = [60.0, 80.0, 100.0].map(|dig| course(&desk, "A", 3, &rows(dig)));
    let other = course(&desk, "B", 9, &rows(70.0));
    for record in [&first, &other, &second, &third] {
        store.record(record).expect("recorded");
    }
    assert_eq!(counting(&store), [third.clone(), other.clone()]);
    let mut taken_back = || store.take_back_record(&first.path);
    assert_eq!(taken_back().expect("taken back"), Some(second));
    assert_eq!(taken_back().expect("taken back"), Some(first.clone()));
    assert_eq!(taken_back().expect("taken back"), None);
    let refused = taken_back().expect_err("nothing left");
    assert_eq!(refused.code(), "not-recorded");
    assert_eq!(
        desk.words(&refused.to_string()),
        "A.walling: no pace is recorded of this course, so there is nothing to take back."
    );
    assert_eq!(counting(&store), std::slice::from_ref(&other));
    store.record(&first).expect("recorded anew");
    assert_eq!(counting(&store), [first, other]);
}

#[test]
fn records_stay_when_kit_is_released_and_follow_the_file() {
    let desk = Desk::new();
    let mut store = desk.store();
    let [old, new] = [60.0, 80.0].map(|dig| course(&desk, "A", 3, &rows(dig)));
    let booking = desk.course("A", &[april(3)]);
    store
        .book(&booking, &items(&[("Frame", 2)]))
        .expect("booked");
    store.record(&old).expect("recorded");
    store.record(&new).expect("recorded");
    assert!(store.release(&booking.path).expect("released"));
    assert_eq!(counting(&store), std::slice::from_ref(&new));
    let moved = desk.file("Renamed.walling");
    assert!(store.move_course(&booking.path, &moved).expect("moved"));
    assert!(
        !store
            .move_course(&booking.path, &moved)
            .expect("known no more")
    );
    let at = |record: PaceRecord| PaceRecord {
        path: moved.clone(),
        ..record
    };
    assert_eq!(counting(&store), [at(new)]);
    let other = course(&desk, "B", 3, &rows(70.0));
    store.record(&other).expect("recorded");
    let there = store.move_course(&other.path, &moved).expect_err("there");
    assert_eq!(there.code(), "course-there");
    let before = store.take_back_record(&moved).expect("taken back");
    assert_eq!(before, Some(at(old)));
}

#[test]
fn what_can_not_be_is_refused_and_nothing_changes() {
    let desk = Desk::new();
    let mut store = desk.store();
    let kept = course(&desk, "A", 3, &rows(60.0));
    store.record(&kept).expect("recorded");
    let tied = |pairs| StageRecord {
        tied: Some(pairs),
        ..row("heads", 60.0, 60.0)
    };
    for (stages, code, words) in [
        (
            vec![row("dig", 240.0, 5.0)],
            "absurd-pace",
            "\"A\": the stage \"dig\" is said to have taken 5 minutes where 240 are usual. It takes between a tenth of its usual time and ten times as long: look for a slip of the pen, or leave the stage out.",
        ),
        (
            vec![],
            "nothing-recorded",
            "Nothing is recorded of \"A\". Say how long at least one stage took.",
        ),
        (
            vec![row(" ", 60.0, 60.0)],
            "unnamed-stage",
            "A stage recorded of \"A\" has no name. Name it as the stage table does.",
        ),
        (
            vec![row("dig", 60.0, 60.0), row(" dig", 30.0, 30.0)],
            "stage-twice",
            "The stage \"dig\" is recorded twice. Add its times up in one row.",
        ),
        (
            vec![tied(0.5)],
            "tied-pairs",
            "0.5 pairs are said to be tied by the string at the stage \"heads\". Count the pairs at the string, 1 or more; leave it out where nobody waited for a string.",
        ),
    ] {
        let refused = store
            .record(&course(&desk, "A", 3, &stages))
            .expect_err(code);
        assert_eq!(
            (refused.code(), refused.to_string().as_str()),
            (code, words)
        );
    }
    for (usual, taken) in [
        (f64::NAN, 5.0),
        (5.0, f64::INFINITY),
        (0.0, 0.0),
        (-5.0, -5.0),
    ] {
        let rows = [row("dig", usual, taken)];
        let refused = store
            .record(&course(&desk, "A", 3, &rows))
            .expect_err("absurd");
        assert_eq!(refused.code(), "absurd-pace", "{usual} {taken}");
    }
    for pairs in [f64::NAN, f64::INFINITY, -1.0, 1_001.0] {
        let refused = store.record(&course(&desk, "A", 3, &[tied(pairs)]));
        assert_eq!(refused.expect_err("pairs").code(), "tied-pairs", "{pairs}");
    }
    let mut early = course(&desk, "A", 3, &rows(60.0));
    early.recorded_on = april(2);
    assert_eq!(
        store.record(&early).expect_err("too early").to_string(),
        "\"A\" begins on 3 April 2027, so its pace can't be recorded on 2 April 2027. Look at the date."
    );
    let mut long = course(&desk, "A", 3, &rows(60.0));
    long.record.course = "x".repeat(2_001);
    assert_eq!(store.record(&long).expect_err("long").code(), "too-long");
    assert_eq!(counting(&store), std::slice::from_ref(&kept));
    drop(store);
    let mut reading = Store::read(desk.path()).expect("the store");
    assert_eq!(
        reading.record(&kept).expect_err("read only").code(),
        "read-only"
    );
}
