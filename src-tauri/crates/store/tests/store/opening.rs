//! Opening: no store yet, an old one, a newer one, one that is something else or damaged.

use super::desk::{Desk, april, items, lot, owned};
use craft::quantity::kilograms;
use rusqlite::Connection;
use std::path::Path;
use store::{Lot, ReadOnly, Store};

const OLD: [&str; 3] = [
    include_str!("old/kit-1.sql"),
    include_str!("old/kit-2.sql"),
    include_str!("old/kit-3.sql"),
];

/// A database as another program, or another version of this one, would write it.
fn database(folder: &Path, statements: &str) {
    let db = Connection::open(folder.join("kit.db")).expect("a database");
    db.execute_batch(statements).expect("statements");
}

/// The tables and indexes, and the version.
fn schema(folder: &Path) -> (Vec<String>, u32) {
    let db = Connection::open(folder.join("kit.db")).expect("a database");
    let ask = "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name";
    let mut ask = db.prepare(ask).expect("a question");
    let texts = ask.query_map([], |row| row.get(0)).expect("rows");
    let texts = texts.collect::<Result<_, _>>().expect("texts");
    let version = db.query_row("PRAGMA user_version", [], |row| row.get(0));
    (texts, version.expect("a version"))
}

fn old_lot() -> Lot {
    Lot {
        unit: "piece".to_owned(),
        mass: Some(kilograms(4.5)),
        note: "oak".to_owned(),
        ..owned("Frame", "Club", [6, 1, 0])
    }
}

#[test]
fn a_missing_folder_is_made() {
    let desk = Desk::new();
    let folder = desk.file("deep/down");
    let mut store = Store::open(&folder).expect("a store");
    assert!(!store.is_read_only());
    store.add_lot(&lot("Spade", 2)).expect("added");
    drop(store);
    let store = Store::open(&folder).expect("the store");
    assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
}

#[test]
fn reading_where_there_is_no_store_makes_none() {
    let desk = Desk::new();
    for folder in [desk.path().to_owned(), desk.file("nowhere")] {
        let mut store = Store::read(&folder).expect("an empty store");
        assert_eq!(store.lots().expect("lots"), []);
        assert_eq!(store.held_for(None, &[april(1)]).expect("held"), []);
        assert_eq!(store.notice(), None);
        let refused = store.add_lot(&lot("Spade", 1)).expect_err("read only");
        assert_eq!(
            refused.to_string(),
            "The kit store was opened for reading only. Nothing was changed."
        );
        assert!(!folder.join("kit.db").exists());
    }
    assert!(!desk.file("nowhere").exists());
}

#[test]
fn reading_changes_nothing() {
    let desk = Desk::new();
    desk.with(&[lot("Spade", 2)]);
    let before = std::fs::read(desk.file("kit.db")).expect("the file");
    let mut store = Store::read(desk.path()).expect("the store");
    assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
    let course = desk.course("A", &[april(1)]);
    assert_eq!(
        store.book(&course, &[]).expect_err("read only").code(),
        "read-only"
    );
    drop(store);
    assert_eq!(
        std::fs::read(desk.file("kit.db")).expect("the file"),
        before
    );
    assert_eq!(
        std::fs::read_dir(desk.path()).expect("the folder").count(),
        1
    );
}

#[test]
fn a_store_of_each_old_version_is_brought_up() {
    let new = Desk::new();
    new.store();
    let newest = schema(new.path());
    assert_eq!(
        newest.1 as usize,
        OLD.len() + 1,
        "a version without its old store"
    );
    for old in OLD {
        let desk = Desk::new();
        database(desk.path(), old);
        let before = std::fs::read(desk.file("kit.db")).expect("the file");
        // One that only plans reads it as it is.
        let reading = Store::read(desk.path()).expect("the store");
        assert_eq!(reading.lots().expect("lots"), [old_lot()]);
        assert_eq!(reading.clashes().expect("clashes").not_in_store, []);
        assert_eq!(reading.pace_records().expect("records"), []);
        drop(reading);
        assert_eq!(
            std::fs::read(desk.file("kit.db")).expect("the file"),
            before
        );
        let mut store = desk.store();
        assert_eq!(store.lots().expect("lots"), [old_lot()]);
        store
            .book(&desk.course("B", &[april(24)]), &items(&[("Frame", 5)]))
            .expect("booked");
        drop(store);
        assert_eq!(schema(desk.path()), newest, "{old}");
    }
}

#[test]
fn bookings_of_version_2_still_count() {
    let desk = Desk::new();
    database(desk.path(), OLD[1]);
    let clashes = desk.store().clashes().expect("clashes").clashes;
    assert_eq!(
        clashes[0].to_string(),
        "Frame on 24 April 2027: 7 usable, 8 booked (A 8)."
    );
}

#[test]
fn what_came_home_in_version_3_can_still_be_taken_back() {
    let desk = Desk::new();
    database(desk.path(), OLD[2]);
    let mut store = desk.store();
    let course = Path::new("/courses/b.walling");
    let counted = store.counted_home(course).expect("read").expect("counted");
    assert_eq!((counted.on, counted.returns[0].care), (april(26), 1));
    store.take_back_home(course).expect("taken back");
    let lots = store.lots().expect("lots");
    assert_eq!((lots[0].good, lots[0].care), (7, 0));
}

#[test]
fn a_newer_store_is_read_and_not_changed() {
    let desk = Desk::new();
    desk.with(&[lot("Spade", 2)]);
    // A later version that keeps one thing more, and keeps homecomings in another way.
    database(
        desk.path(),
        "ALTER TABLE lot ADD COLUMN colour TEXT; DROP TABLE homecoming; PRAGMA user_version = 9",
    );
    let before = std::fs::read(desk.file("kit.db")).expect("the file");
    for opened in [Store::open(desk.path()), Store::read(desk.path())] {
        let mut store = opened.expect("the store");
        let notice = ReadOnly::Newer {
            written: 9,
            known: 4,
        };
        assert_eq!(store.notice(), Some(&notice));
        let words = "The kit store was written by a newer Coursewright (its version is 9, this program knows 4), so it is open for reading only. Use the newer program to change it.";
        assert_eq!(notice.to_string(), words);
        assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
        let unreadable = store.clashes().expect_err("kept otherwise");
        assert_eq!(unreadable.code(), "newer-store");
        assert_eq!(
            unreadable.to_string(),
            format!("{words} What was asked for is kept there in a way this program can't read.")
        );
        let refused = store.set_lot(&lot("Spade", 3)).expect_err("read only");
        assert_eq!(refused.to_string(), format!("{words} Nothing was changed."));
    }
    assert_eq!(
        std::fs::read(desk.file("kit.db")).expect("the file"),
        before
    );
}

#[test]
fn what_is_no_store_is_refused_and_left_alone() {
    let foreign = Desk::new();
    database(
        foreign.path(),
        "CREATE TABLE song (title TEXT); PRAGMA user_version = 2",
    );
    let text = Desk::new();
    text.put("kit.db", "item,good\nSpade,3\n".repeat(500));
    for desk in [foreign, text] {
        let before = std::fs::read(desk.file("kit.db")).expect("the file");
        for opened in [Store::open(desk.path()), Store::read(desk.path())] {
            let refused = opened.expect_err("no store");
            assert_eq!(refused.code(), "not-a-store");
            assert_eq!(
                desk.words(&refused.to_string()),
                "kit.db: this is not a kit store, and it was left as it is. Move it away to begin a new store, or put your own store's file in its place."
            );
        }
        assert_eq!(
            std::fs::read(desk.file("kit.db")).expect("the file"),
            before
        );
    }
}

#[test]
fn a_damaged_store_is_refused_and_left_alone() {
    let desk = Desk::new();
    let lots: Vec<Lot> = (0..2_000).map(|n| lot(&format!("Item {n}"), n)).collect();
    let mut store = desk.store();
    let text: String = lots
        .iter()
        .map(|lot| format!("{},{}\n", lot.item, lot.good))
        .collect();
    desk.import(
        &mut store,
        &format!("item,good\n{text}"),
        store::Mode::Replace,
    );
    drop(store);
    let sound = std::fs::read(desk.file("kit.db")).expect("the file");
    let mut zeroed = sound.clone();
    zeroed[4096 * 3..4096 * 5].fill(0);
    let cut = sound[..sound.len() / 2].to_vec();
    for damaged in [zeroed, cut] {
        desk.put("kit.db", &damaged);
        for opened in [Store::open(desk.path()), Store::read(desk.path())] {
            let refused = opened.expect_err("damaged");
            assert_eq!(
                desk.words(&refused.to_string()),
                "kit.db: the kit store is damaged, and it was left as it is. Put back a copy of the file from a backup, or move it away to begin a new store."
            );
        }
        assert_eq!(
            std::fs::read(desk.file("kit.db")).expect("the file"),
            damaged
        );
    }
}

#[test]
fn an_empty_file_is_a_store_that_was_about_to_begin() {
    let desk = Desk::new();
    desk.put("kit.db", "");
    assert_eq!(
        Store::read(desk.path())
            .expect("read")
            .lots()
            .expect("lots"),
        []
    );
    desk.with(&[lot("Spade", 1)]);
    assert_eq!(desk.store().lots().expect("lots").len(), 1);
}

#[test]
fn a_folder_that_can_not_be_is_told() {
    let desk = Desk::new();
    desk.put("file", "");
    let refused = Store::open(&desk.file("file/deeper")).expect_err("no folder");
    assert_eq!(
        desk.words(&refused.to_string()),
        "file/deeper: the folder for the kit store can't be made: a file is in its way. Choose another folder."
    );
    std::fs::create_dir(desk.file("kit.db")).expect("a folder");
    for opened in [Store::open(desk.path()), Store::read(desk.path())] {
        assert_eq!(
            desk.words(&opened.expect_err("a folder").to_string()),
            "kit.db: the kit store can't be opened. Look at whose file it is and who may read it."
        );
    }
}
