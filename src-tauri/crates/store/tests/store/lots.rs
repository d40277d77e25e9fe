//! Lots: added, changed, removed; and what no lot can be.

use super::desk::{Desk, lot, owned};
use craft::quantity::kilograms;
use store::Lot;

#[test]
fn a_lot_is_kept_as_it_was_given() {
    let desk = Desk::new();
    let spade = Lot {
        item: " Garden spade ".to_owned(),
        unit: "piece".to_owned(),
        owner: "Walling club".to_owned(),
        good: 5,
        care: 2,
        broken: 1,
        mass: Some(kilograms(1.9)),
        note: "two with long shafts\r\nblue handles".to_owned(),
    };
    desk.with(std::slice::from_ref(&spade));
    let kept = Lot {
        item: "Garden spade".to_owned(),
        note: "two with long shafts\nblue handles".to_owned(),
        ..spade
    };
    assert_eq!(desk.store().lots().expect("lots"), [kept]);
}

#[test]
fn item_and_owner_name_a_lot_whatever_the_capitals() {
    let desk = Desk::new();
    let mut store = desk.with(&[lot("Über-Spade", 2), owned("Über-Spade", "Club", [1, 0, 0])]);
    let refused = store.add_lot(&owned("über-spade", "CLUB", [9, 0, 0]));
    assert_eq!(
        refused.expect_err("there").to_string(),
        "\"über-spade\" (CLUB) is in the kit store already. Change that entry instead of adding another."
    );
    store.set_lot(&lot("ÜBER-SPADE", 7)).expect("set");
    let lots = store.lots().expect("lots");
    assert_eq!(
        lots,
        [lot("ÜBER-SPADE", 7), owned("Über-Spade", "Club", [1, 0, 0])]
    );
}

#[test]
fn a_lot_is_renamed_but_not_onto_another() {
    let desk = Desk::new();
    let mut store = desk.with(&[lot("Spade", 2), lot("Shovel", 3)]);
    let refused = store.change_lot("spade", "", &lot("shovel", 1));
    assert_eq!(refused.expect_err("taken").code(), "lot-there");
    store
        .change_lot("SPADE", "", &lot("spade", 4))
        .expect("changed");
    store
        .change_lot("spade", "", &owned("Digger", "Club", [4, 1, 0]))
        .expect("renamed");
    assert_eq!(
        store.lots().expect("lots"),
        [owned("Digger", "Club", [4, 1, 0]), lot("Shovel", 3)]
    );
    let refused = store.change_lot("spade", "", &lot("spade", 4));
    assert_eq!(
        refused.expect_err("gone").to_string(),
        "\"spade\" is not in the kit store. Somebody may have removed it; look at the list again."
    );
    store.remove_lot("digger", "club").expect("removed");
    assert_eq!(
        store.remove_lot("digger", "club").expect_err("gone").code(),
        "no-such-lot"
    );
    assert_eq!(store.lots().expect("lots"), [lot("Shovel", 3)]);
}

#[test]
fn what_no_lot_can_be_is_refused_in_words() {
    let mut store = Desk::new().store();
    let heavy = Lot {
        mass: Some(kilograms(10_000.5)),
        ..lot("Digger", 1)
    };
    let weightless = Lot {
        mass: Some(kilograms(f64::NAN)),
        ..lot("Digger", 1)
    };
    let wordy = Lot {
        note: "x".repeat(2_001),
        ..lot("Digger", 1)
    };
    for (lot, code, words) in [
        (
            lot(" \n", 1),
            "empty-item",
            "An item needs a name. Write what it is, such as \"Walling hammer\".",
        ),
        (
            lot("Spade", 100_001),
            "too-many",
            "100001 of \"Spade\" (good) is more than a store holds, which is 100000 at most. Look for a slip of the finger.",
        ),
        (
            owned("Spade", "", [0, 4_000_000_000, 0]),
            "too-many",
            "4000000000 of \"Spade\" (needs care) is more than a store holds, which is 100000 at most. Look for a slip of the finger.",
        ),
        (
            heavy,
            "mass",
            "The mass of one \"Digger\" must be from 0 to 10000 kg; it is 10000.5. Write the mass of a single one in kilograms.",
        ),
        (
            weightless,
            "mass",
            "The mass of one \"Digger\" must be from 0 to 10000 kg; it is NaN. Write the mass of a single one in kilograms.",
        ),
        (
            wordy,
            "too-long",
            "The note has 2001 characters, and 2000 at most can be kept. Shorten it.",
        ),
        (
            lot("Spa\u{1b}de", 1),
            "unshowable",
            "The item holds a character that can't be shown (U+001B). Type it again without it.",
        ),
    ] {
        let refused = store.set_lot(&lot).expect_err(code);
        assert_eq!(
            (refused.code(), refused.to_string().as_str()),
            (code, words)
        );
    }
    assert_eq!(store.lots().expect("lots"), []);
}
