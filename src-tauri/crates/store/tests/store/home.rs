//! Kit that comes home: the store follows, and can be put back.

use super::desk::{Desk, april, items, lot, owned};
use store::{CountedHome, CourseEntry, Homecoming, Lot, Return, Store};

fn back(item: &str, counts: [u32; 5]) -> Return {
    let [back, care, broken, used_up, lost] = counts;
    Return {
        item: item.to_owned(),
        owner: None,
        back,
        care,
        broken,
        used_up,
        lost,
    }
}

fn of(owner: &str, it: Return) -> Return {
    Return {
        owner: Some(owner.to_owned()),
        ..it
    }
}

/// A course on the 24th and 25th with these lots and bookings.
fn out(desk: &Desk, lots: &[Lot], booked: &[(&str, u32)]) -> (Store, CourseEntry) {
    let mut store = desk.with(lots);
    let course = desk.course("Hollin Bank", &[april(24), april(25)]);
    store.book(&course, &items(booked)).expect("booked");
    (store, course)
}

#[test]
fn the_store_follows_and_can_be_put_back() {
    // Lots as good, needs care, broken; then what is booked and counted home; then the lots.
    let own = |counts| owned("Hammer", "", counts);
    let club = |counts| owned("Hammer", "Club", counts);
    type Case = (Vec<Lot>, u32, Vec<Return>, Vec<Lot>);
    let cases: [Case; 9] = [
        (
            vec![own([8, 0, 0])],
            6,
            vec![back("hammer", [6, 0, 0, 0, 0])],
            vec![own([8, 0, 0])],
        ),
        (
            vec![own([8, 0, 1])],
            6,
            vec![back("Hammer", [3, 1, 2, 0, 0])],
            vec![own([5, 1, 3])],
        ),
        (
            vec![own([8, 0, 0])],
            6,
            vec![back("Hammer", [0, 0, 0, 4, 2])],
            vec![own([2, 0, 0])],
        ),
        // Seven went, two of them in need of care; two came back so: nothing is new.
        (
            vec![own([5, 2, 0])],
            7,
            vec![back("Hammer", [5, 2, 0, 0, 0])],
            vec![own([5, 2, 0])],
        ),
        // Three went, the good ones first; two came back in need of care.
        (
            vec![own([5, 2, 0])],
            3,
            vec![back("Hammer", [1, 2, 0, 0, 0])],
            vec![own([3, 4, 0])],
        ),
        // All went, and more is lost than was good.
        (
            vec![own([2, 3, 0])],
            5,
            vec![back("Hammer", [0, 1, 0, 0, 4])],
            vec![own([0, 1, 0])],
        ),
        // The instructor's own break first, unless it is said whose they were.
        (
            vec![own([2, 0, 0]), club([4, 0, 0])],
            6,
            vec![back("Hammer", [3, 0, 3, 0, 0])],
            vec![own([0, 0, 2]), club([3, 0, 1])],
        ),
        (
            vec![own([2, 0, 0]), club([4, 0, 0])],
            6,
            vec![
                of("", back("Hammer", [2, 0, 0, 0, 0])),
                of("club", back("Hammer", [1, 0, 3, 0, 0])),
            ],
            vec![own([2, 0, 0]), club([1, 0, 3])],
        ),
        (vec![own([8, 0, 0])], 6, vec![], vec![own([8, 0, 0])]),
    ];
    for (lots, booked, returns, after) in cases {
        let desk = Desk::new();
        let (mut store, course) = out(&desk, &lots, &[("Hammer", booked)]);
        store.home(&course.path, &returns, april(25)).expect("home");
        assert_eq!(store.lots().expect("lots"), after, "{lots:?} {returns:?}");
        let free = store.held_for(None, &course.days).expect("held");
        assert_eq!(free[0].taken, [], "a course that is home holds nothing");
        assert_eq!(
            store.courses().expect("courses")[0].home_on,
            Some(april(25))
        );
        let (on, returns) = (april(25), returns.clone());
        let counted = store.counted_home(&course.path).expect("a count");
        assert_eq!(counted, Some(CountedHome { on, returns }));
        store.take_back_home(&course.path).expect("taken back");
        assert_eq!(store.counted_home(&course.path).expect("no count"), None);
        assert_eq!(store.lots().expect("lots"), lots, "{after:?} put back");
        let free = store.held_for(None, &course.days).expect("held");
        assert_eq!(free[0].taken.len(), 2, "it is out again on both days");
    }
}

#[test]
fn what_was_not_counted_and_what_no_lot_holds_is_told() {
    let desk = Desk::new();
    let booked = [("Hammer", 6), ("Gloves", 10), ("Tent", 1)];
    let (mut store, course) = out(&desk, &[lot("Hammer", 3), lot("Gloves", 12)], &booked);
    let returns = [
        back("Hammer", [1, 0, 5, 0, 0]),
        back("Tent", [0, 0, 0, 0, 1]),
        back("Gloves", [4, 0, 0, 3, 0]),
    ];
    let told = store.home(&course.path, &returns, april(25)).expect("home");
    let expected = Homecoming {
        uncounted: items(&[("Gloves", 3)]),
        not_in_store: items(&[("Hammer", 2), ("Tent", 1)]),
    };
    assert_eq!(told, expected);
    assert_eq!(
        store.lots().expect("lots"),
        [lot("Gloves", 9), owned("Hammer", "", [0, 0, 3])]
    );
}

#[test]
fn a_wrong_count_is_refused_and_nothing_changes() {
    let desk = Desk::new();
    let (mut store, course) = out(
        &desk,
        &[lot("Hammer", 8), lot("Spade", 3)],
        &[("Hammer", 6)],
    );
    let lots = store.lots().expect("lots");
    for (returns, on, words) in [
        (
            vec![back("Hammer", [4, 1, 1, 0, 1])],
            25,
            "\"Hollin Bank\" has booked 6 of \"Hammer\", and 7 are counted home. Count again: back, needs care, broken, used up and lost together make 6 at most.",
        ),
        (
            vec![
                back("Hammer", [4, 0, 0, 0, 0]),
                of("Club", back("HAMMER", [0, 0, 0, 0, 3])),
            ],
            25,
            "\"Hollin Bank\" has booked 6 of \"Hammer\", and 7 are counted home. Count again: back, needs care, broken, used up and lost together make 6 at most.",
        ),
        (
            vec![back("Hammer", [u32::MAX, u32::MAX, 0, 0, 0])],
            25,
            "\"Hollin Bank\" has booked 6 of \"Hammer\", and 8589934590 are counted home. Count again: back, needs care, broken, used up and lost together make 6 at most.",
        ),
        (
            vec![
                back("Hammer", [0, 0, 6, 0, 0]),
                back("Spade", [0, 0, 1, 0, 0]),
            ],
            25,
            "\"Hollin Bank\" has booked no \"Spade\", so none can be counted home. Add what else came back to the store itself.",
        ),
        (
            vec![],
            23,
            "\"Hollin Bank\" begins on 24 April 2027, so its kit can't be counted home on 23 April 2027. Look at the date.",
        ),
    ] {
        let refused = store
            .home(&course.path, &returns, april(on))
            .expect_err(words);
        assert_eq!(refused.to_string(), words);
        assert_eq!(store.lots().expect("lots"), lots);
        assert_eq!(store.courses().expect("courses")[0].home_on, None);
    }
}

#[test]
fn home_is_counted_once() {
    let desk = Desk::new();
    let (mut store, course) = out(&desk, &[lot("Hammer", 8)], &[("Hammer", 6)]);
    let nothing = store.take_back_home(&course.path).expect_err("not home");
    assert_eq!(
        nothing.to_string(),
        "The kit of \"Hollin Bank\" has not been counted home, so there is nothing to take back."
    );
    store.home(&course.path, &[], april(26)).expect("home");
    for refused in [
        store.home(&course.path, &[], april(26)).expect_err("twice"),
        store
            .book(&course, &items(&[("Hammer", 1)]))
            .expect_err("over"),
    ] {
        assert_eq!(
            refused.to_string(),
            "The kit of \"Hollin Bank\" was counted home on 26 April 2027. Take that count back first, or give the course days after it."
        );
    }
    let unknown = store
        .home(&desk.file("other.walling"), &[], april(26))
        .expect_err("unknown");
    assert_eq!(
        desk.words(&unknown.to_string()),
        "other.walling: this course has booked nothing in the kit store. Book its kit first."
    );
}

#[test]
fn a_course_file_used_again_next_month_books_anew() {
    let desk = Desk::new();
    let (mut store, course) = out(&desk, &[lot("Hammer", 8)], &[("Hammer", 6)]);
    store
        .home(&course.path, &[back("Hammer", [5, 0, 0, 0, 1])], april(25))
        .expect("home");
    let again = CourseEntry {
        days: vec![april(28), april(29)],
        ..course
    };
    store
        .book(&again, &items(&[("Hammer", 7)]))
        .expect("booked");
    assert_eq!(store.courses().expect("courses")[0].home_on, None);
    assert_eq!(
        store.take_back_home(&again.path).expect_err("out").code(),
        "not-home"
    );
    store
        .home(&again.path, &[back("Hammer", [6, 0, 0, 0, 1])], april(29))
        .expect("home");
    store.take_back_home(&again.path).expect("taken back");
    assert_eq!(
        store.lots().expect("lots"),
        [lot("Hammer", 7)],
        "only the second is undone"
    );
}

#[test]
fn a_count_is_taken_back_around_other_changes_or_not_at_all() {
    let desk = Desk::new();
    let (mut store, course) = out(
        &desk,
        &[lot("Hammer", 8), lot("Spade", 4)],
        &[("Hammer", 6), ("Spade", 2)],
    );
    let returns = [
        back("Hammer", [4, 0, 2, 0, 0]),
        back("Spade", [0, 0, 0, 0, 2]),
    ];
    store.home(&course.path, &returns, april(25)).expect("home");
    // Renamed, and three more bought.
    let renamed = owned("Walling hammer", "", [9, 0, 2]);
    store.change_lot("Hammer", "", &renamed).expect("renamed");
    store.take_back_home(&course.path).expect("taken back");
    assert_eq!(
        store.lots().expect("lots"),
        [lot("Spade", 4), lot("Walling hammer", 11)]
    );
    store
        .change_lot("Walling hammer", "", &lot("Hammer", 8))
        .expect("renamed");
    store.home(&course.path, &returns, april(25)).expect("home");
    // Mended meanwhile: there is no broken one to take back.
    store.set_lot(&lot("Hammer", 8)).expect("set");
    let refused = store.take_back_home(&course.path).expect_err("mended");
    assert_eq!(
        refused.to_string(),
        "The count of \"Hollin Bank\" can't be taken back, because \"Hammer\" has been changed since. Put the store right by hand."
    );
    assert_eq!(
        store.lots().expect("lots"),
        [lot("Hammer", 8), lot("Spade", 2)]
    );
    store.remove_lot("hammer", "").expect("removed");
    assert_eq!(
        store.take_back_home(&course.path).expect_err("gone").code(),
        "changed-since-home"
    );
}
