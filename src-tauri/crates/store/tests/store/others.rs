//! Two programs on one store: both may write, and neither is lost.

use super::desk::{Desk, lot};
use rusqlite::Connection;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use store::Store;

const CHILD: &str = "KIT_STORE_ADDS_IN";
const NAME: &str = "KIT_STORE_ADDS_AS";
const EACH: u32 = 60;
const ROUNDS: u32 = 400;

fn add(folder: &Path, who: &str) {
    let mut store = Store::open(folder).expect("the store");
    for number in 0..EACH {
        store
            .add_lot(&lot(&format!("{who} {number}"), number))
            .expect("added");
        let spade = store
            .lots()
            .expect("lots")
            .into_iter()
            .find(|lot| lot.item == "Spade");
        assert_eq!(spade.map(|lot| lot.good), Some(7));
    }
}

fn child(folder: &Path, who: &str) -> Child {
    Command::new(std::env::current_exe().expect("this program"))
        .args([
            "--exact",
            "store::others::programs_that_write_at_once_wait_for_each_other",
        ])
        .env(CHILD, folder)
        .env(NAME, who)
        .stdout(Stdio::null())
        .spawn()
        .expect("a child")
}

#[test]
fn programs_that_write_at_once_wait_for_each_other() {
    if let Some(folder) = std::env::var_os(CHILD) {
        return add(Path::new(&folder), &std::env::var(NAME).expect("a name"));
    }
    let desk = Desk::new();
    desk.with(&[lot("Spade", 7)]);
    let children = ["one", "two"].map(|who| child(desk.path(), who));
    add(desk.path(), "three");
    for mut child in children {
        assert!(child.wait().expect("it ends").success());
    }
    let lots = desk.store().lots().expect("lots");
    assert_eq!(lots.len() as u32, 3 * EACH + 1);
    for who in ["one", "two", "three"] {
        let theirs = lots.iter().filter(|lot| lot.item.starts_with(who));
        assert_eq!(
            theirs.map(|lot| lot.good).sum::<u32>(),
            EACH * (EACH - 1) / 2
        );
    }
}

#[test]
fn two_that_find_no_store_make_one() {
    let desk = Desk::new();
    let children = ["Spade", "two"].map(|who| child(desk.path(), who));
    for mut child in children {
        // They fail for want of the spade, but not before the store was made and written.
        child.wait().expect("it ends");
    }
    let store = desk.store();
    let lots = store.lots().expect("lots");
    let first: Vec<&str> = lots.iter().map(|lot| lot.item.as_str()).collect();
    assert_eq!(first, ["Spade 0", "two 0"]);
}

/// Whoever looks while another program makes the store finds none, or the whole of it. A
/// round rarely meets the moment between two looks; of so many some do.
#[test]
fn a_store_in_the_making_is_never_taken_for_something_else() {
    for _ in 0..ROUNDS {
        let desk = Desk::new();
        let made = AtomicBool::new(false);
        std::thread::scope(|both| {
            both.spawn(|| {
                while !made.load(Ordering::Relaxed) {
                    Store::read(desk.path()).expect("none yet, or a store");
                }
            });
            let store = Store::open(desk.path());
            // First of all, or who looks would look for ever where it failed.
            made.store(true, Ordering::Relaxed);
            store.expect("the store");
        });
    }
}

#[test]
fn a_store_that_stays_busy_is_told_and_not_changed() {
    let desk = Desk::new();
    let mut store = desk.with(&[lot("Spade", 7)]);
    let other = Connection::open(desk.file("kit.db")).expect("the file");
    other.execute_batch("BEGIN IMMEDIATE").expect("begun");
    let refused = store.add_lot(&lot("Pick", 1)).expect_err("busy");
    assert_eq!(
        refused.to_string(),
        "Another program is changing the kit store. Nothing was changed here; try again in a moment."
    );
    // Reading goes on meanwhile, and so does opening.
    assert_eq!(store.lots().expect("lots").len(), 1);
    assert_eq!(
        Store::read(desk.path())
            .expect("read")
            .lots()
            .expect("lots")
            .len(),
        1
    );
    other.execute_batch("ROLLBACK").expect("given up");
    store.add_lot(&lot("Pick", 1)).expect("added");
}
