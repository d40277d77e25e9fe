//! Taking a list in: what it would change, the two ways to do it, and that it is all or none.

use super::desk::{Desk, april, items, lot, owned};
use craft::quantity::kilograms;
use store::{Changed, KitList, Lot, Mode, Preview, Store};

fn look(desk: &Desk, store: &Store, text: &str) -> Preview {
    let list = KitList::read(&desk.put("kit.csv", text)).expect("a sound list");
    store.preview(&list).expect("a preview")
}

fn hammer() -> Lot {
    Lot {
        unit: "piece".to_owned(),
        mass: Some(kilograms(1.25)),
        note: "ash shafts".to_owned(),
        ..owned("Hammer", "", [8, 1, 2])
    }
}

const LIST: &str =
    "Good,ITEM,Owner,Needs_Care\n9,hammer,,0\n4,Spade,,1\n2,Spade,Club,\n6,Frame,,\n";

#[test]
fn a_preview_tells_what_is_new_different_the_same_and_missing() {
    let desk = Desk::new();
    let tent = owned("Tent", "Club", [1, 0, 0]);
    let spade = owned("Spade", "", [4, 1, 0]);
    let store = desk.with(&[hammer(), spade.clone(), tent.clone()]);
    let preview = look(&desk, &store, LIST);
    assert_eq!(
        preview.added,
        [owned("Spade", "Club", [2, 0, 0]), lot("Frame", 6)]
    );
    // What the file has no column for stays: two broken ones, the mass, the note.
    let after = Lot {
        item: "hammer".to_owned(),
        good: 9,
        care: 0,
        ..hammer()
    };
    let before = hammer();
    assert_eq!(preview.changed, [Changed { before, after }]);
    assert_eq!(preview.same, [spade]);
    assert_eq!(preview.not_in_file, [tent]);
    assert_eq!(
        store.lots().expect("lots").len(),
        3,
        "looking changes nothing"
    );
}

#[test]
fn merging_keeps_what_the_file_does_not_name_and_replacing_does_not() {
    for (mode, items) in [
        (
            Mode::Merge,
            &["Frame", "hammer", "Spade", "Spade", "Tent"][..],
        ),
        (Mode::Replace, &["Frame", "hammer", "Spade", "Spade"]),
    ] {
        let desk = Desk::new();
        let mut store = desk.with(&[hammer(), owned("Tent", "Club", [1, 0, 0])]);
        let preview = look(&desk, &store, LIST);
        store.apply(&preview, mode).expect("taken in");
        let lots = store.lots().expect("lots");
        let names: Vec<&str> = lots.iter().map(|lot| lot.item.as_str()).collect();
        assert_eq!(names, items);
        assert_eq!(
            (lots[1].good, lots[1].broken, lots[1].mass),
            (9, 2, hammer().mass)
        );
        let again = look(&desk, &store, LIST);
        assert_eq!(
            (again.added.len(), again.changed.len(), again.same.len()),
            (0, 0, 4)
        );
    }
}

#[test]
fn bookings_stay_when_the_list_is_replaced() {
    let desk = Desk::new();
    let mut store = desk.with(&[hammer(), lot("Tent", 1)]);
    let course = desk.course("A", &[april(24)]);
    store
        .book(&course, &items(&[("Hammer", 9), ("Tent", 1)]))
        .expect("booked");
    desk.import(&mut store, "item,good\nHammer,7\n", Mode::Replace);
    let found = store.clashes().expect("clashes");
    assert_eq!(
        found.clashes[0].to_string(),
        "Hammer on 24 April 2027: 8 usable, 9 booked (A 9)."
    );
    assert_eq!(found.not_in_store[0].item, "Tent");
}

#[test]
fn only_what_was_looked_at_is_done() {
    let desk = Desk::new();
    let mut store = desk.with(&[hammer()]);
    let preview = look(&desk, &store, LIST);
    // Another program changes the store meanwhile.
    desk.store().add_lot(&lot("Bucket", 3)).expect("added");
    for mode in [Mode::Merge, Mode::Replace] {
        let refused = store.apply(&preview, mode).expect_err("changed");
        assert_eq!(
            refused.to_string(),
            "The kit store was changed since this import was looked at, so nothing was imported. Look at what it would change once more."
        );
    }
    assert_eq!(store.lots().expect("lots"), [lot("Bucket", 3), hammer()]);
    let preview = look(&desk, &store, LIST);
    store.apply(&preview, Mode::Replace).expect("taken in");
    assert_eq!(store.lots().expect("lots").len(), 4);
}
