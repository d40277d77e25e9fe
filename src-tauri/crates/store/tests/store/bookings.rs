//! Bookings: what a course finds free, and what clashes.

use super::desk::{Desk, april, items, lot, owned};
use craft::kit::{Held, Taken};
use store::{CourseEntry, Store};

fn taken(course: &str, day: u32, count: u32) -> Taken {
    Taken {
        course: course.to_owned(),
        date: april(day),
        count,
    }
}

/// Two courses that overlap on the 24th, and one a month earlier.
fn three(desk: &Desk) -> (Store, [CourseEntry; 3]) {
    let mut store = desk.with(&[
        owned("Spade", "", [5, 1, 2]),
        owned("spade", "Club", [2, 0, 0]),
        lot("Frame", 6),
    ]);
    let bank = desk.course("Hollin Bank", &[april(23), april(24)]);
    let pasture = desk.course("Quarry Pasture", &[april(24), april(25)]);
    let early = desk.course("Early", &[april(1)]);
    let book = |store: &mut Store, course, what| store.book(course, &items(what)).expect("booked");
    book(&mut store, &bank, &[("Spade", 5), ("Frame", 4)]);
    book(
        &mut store,
        &pasture,
        &[("SPADE", 2), ("Frame", 3), ("Tent", 1)],
    );
    book(&mut store, &early, &[("Frame", 6)]);
    (store, [bank, pasture, early])
}

#[test]
fn a_course_sees_what_others_have_taken_and_not_its_own() {
    let desk = Desk::new();
    let (store, [bank, ..]) = three(&desk);
    let held = store.held_for(Some(&bank.path), &bank.days).expect("held");
    let frame = Held {
        taken: vec![taken("Quarry Pasture", 24, 3)],
        ..Held::counted("Frame", 6)
    };
    let spade = Held {
        care: 1,
        broken: 2,
        owners: vec!["Club".to_owned()],
        taken: vec![taken("Quarry Pasture", 24, 2)],
        ..Held::counted("Spade", 7)
    };
    assert_eq!(held, [frame, spade]);
    assert_eq!(held[0].free(), 3);
}

#[test]
fn a_course_not_yet_known_sees_them_all() {
    let desk = Desk::new();
    let (store, _) = three(&desk);
    let held = store.held_for(None, &[april(24), april(24)]).expect("held");
    assert_eq!(
        held[0].taken,
        [taken("Hollin Bank", 24, 4), taken("Quarry Pasture", 24, 3)]
    );
    assert_eq!(held[0].free(), 0);
    let none = store.held_for(None, &[]).expect("held");
    assert!(none.iter().all(|held| held.taken.is_empty()));
}

#[test]
fn a_clash_names_the_day_and_the_courses() {
    let desk = Desk::new();
    let (store, _) = three(&desk);
    let found = store.clashes().expect("clashes");
    let words: Vec<String> = found.clashes.iter().map(ToString::to_string).collect();
    assert_eq!(
        words,
        ["Frame on 24 April 2027: 6 usable, 7 booked (Hollin Bank 4, Quarry Pasture 3)."]
    );
    let words: Vec<String> = found.not_in_store.iter().map(ToString::to_string).collect();
    assert_eq!(
        words,
        ["Tent: booked (Quarry Pasture 1), but not in the store."]
    );
}

#[test]
fn what_breaks_after_it_was_booked_clashes() {
    let desk = Desk::new();
    let (mut store, _) = three(&desk);
    store.set_lot(&owned("Frame", "", [4, 1, 1])).expect("set");
    let found = store.clashes().expect("clashes").clashes;
    let words: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert_eq!(
        words,
        [
            "Frame on 1 April 2027: 5 usable, 6 booked (Early 6).",
            "Frame on 24 April 2027: 5 usable, 7 booked (Hollin Bank 4, Quarry Pasture 3).",
        ]
    );
}

#[test]
fn booking_again_counts_in_place_of_what_was_booked() {
    let desk = Desk::new();
    let (mut store, [bank, ..]) = three(&desk);
    let later = CourseEntry {
        title: "Hollin Bank again".to_owned(),
        days: vec![april(27), april(26), april(27)],
        ..bank.clone()
    };
    store
        .book(&later, &items(&[("Frame", 2), ("frame ", 1), ("Spade", 0)]))
        .expect("booked");
    assert_eq!(store.clashes().expect("clashes").clashes, []);
    let courses = store.courses().expect("courses");
    let titles: Vec<&str> = courses.iter().map(|it| it.course.title.as_str()).collect();
    assert_eq!(titles, ["Early", "Quarry Pasture", "Hollin Bank again"]);
    assert_eq!(courses[2].items, items(&[("Frame", 3)]));
    assert_eq!(courses[2].course.days, [april(26), april(27)]);
}

#[test]
fn what_is_released_is_free() {
    let desk = Desk::new();
    let (mut store, [bank, pasture, _]) = three(&desk);
    assert!(store.release(&pasture.path).expect("released"));
    assert!(!store.release(&pasture.path).expect("known no more"));
    let held = store.held_for(Some(&bank.path), &bank.days).expect("held");
    assert!(held.iter().all(|held| held.taken.is_empty()));
}

#[test]
fn a_course_file_may_move() {
    let desk = Desk::new();
    let (mut store, [bank, pasture, _]) = three(&desk);
    let new = desk.file("renamed.walling");
    assert!(store.move_course(&bank.path, &new).expect("moved"));
    assert!(!store.move_course(&bank.path, &new).expect("known no more"));
    assert!(store.move_course(&new, &new).expect("the same place"));
    let held = store.held_for(Some(&new), &bank.days).expect("held");
    assert_eq!(held[0].taken, [taken("Quarry Pasture", 24, 3)]);
    let refused = store.move_course(&new, &pasture.path).expect_err("taken");
    assert_eq!(
        desk.words(&refused.to_string()),
        "Quarry Pasture.walling: the store knows a course of this name already. Release its kit and take its record back first, or choose another name."
    );
}

#[cfg(unix)]
#[test]
fn two_ways_to_a_course_file_are_one_course() {
    let desk = Desk::new();
    let (mut store, [bank, ..]) = three(&desk);
    std::fs::create_dir(desk.file("real")).expect("a folder");
    desk.put("real/a.walling", "");
    std::os::unix::fs::symlink(desk.file("real"), desk.file("way")).expect("a link");
    let course = |path| CourseEntry {
        path,
        ..bank.clone()
    };
    let book = items(&[("Frame", 1)]);
    store
        .book(&course(desk.file("real/a.walling")), &book)
        .expect("booked");
    store
        .book(&course(desk.file("way/../way/a.walling")), &book)
        .expect("booked");
    // Of a file that is gone the folder is still followed.
    store
        .book(&course(desk.file("real/gone.walling")), &book)
        .expect("booked");
    store
        .book(&course(desk.file("way/gone.walling")), &book)
        .expect("booked");
    assert_eq!(store.courses().expect("courses").len(), 3 + 2);
}

#[test]
fn what_can_not_be_booked_is_refused_and_nothing_changes() {
    let desk = Desk::new();
    let (mut store, [bank, ..]) = three(&desk);
    let before = store.courses().expect("courses");
    for (what, code) in [
        (&[("Frame", 1), (" ", 1)][..], "empty-item"),
        (&[("Frame", 100_001)], "too-many"),
        (&[("Frame", 60_000), ("frame", 60_000)], "too-many"),
    ] {
        assert_eq!(
            store.book(&bank, &items(what)).expect_err(code).code(),
            code
        );
    }
    assert_eq!(store.courses().expect("courses"), before);
}
