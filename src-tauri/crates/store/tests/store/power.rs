//! Power lost in the middle of an import: the store is the old one or the new one.
//!
//! A process killed is not a disk that lost its power: what the system had taken still
//! reaches the disk. That the order of writing survives a pulled plug is SQLite's promise.

use super::desk::{Desk, lot};
use rusqlite::Connection;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use store::{KitList, Lot, Mode, Store};

/// Tells the child, which runs the same test, what folder to work in.
const CHILD: &str = "KIT_STORE_IMPORTS_IN";
/// A child is killed at least so often, and more often on a machine so slow that it is
/// seldom caught in a change.
const ROUNDS: u64 = 40;
const MOST_ROUNDS: u64 = 400;
const CUT_OFF: u32 = 10;

/// A list that shares half its items with the other.
fn list(which: u32) -> Vec<Lot> {
    let name = |n| format!("Item {:05}", n + which * 750);
    (0..1_500).map(|n| lot(&name(n), n % 50 + which)).collect()
}

fn write_list(desk: &Desk, name: &str, lots: &[Lot]) {
    let rows: String = lots
        .iter()
        .map(|lot| format!("{},{}\n", lot.item, lot.good))
        .collect();
    desk.put(name, format!("item,good\n{rows}"));
}

fn import(store: &mut Store, list: &Path) {
    let list = KitList::read(list).expect("a sound list");
    let preview = store.preview(&list).expect("a preview");
    store.apply(&preview, Mode::Replace).expect("taken in");
}

/// What the child does until it is killed.
fn import_for_ever(folder: &Path) -> ! {
    let mut store = Store::open(folder).expect("the store");
    loop {
        import(&mut store, &folder.join("new.csv"));
        import(&mut store, &folder.join("old.csv"));
    }
}

#[test]
fn a_killed_import_leaves_the_old_store_or_the_new_one() {
    if let Some(folder) = std::env::var_os(CHILD) {
        import_for_ever(Path::new(&folder));
    }
    let desk = Desk::new();
    let (old, new) = (list(0), list(1));
    write_list(&desk, "old.csv", &old);
    write_list(&desk, "new.csv", &new);
    import(&mut desk.store(), &desk.file("old.csv"));
    let (mut cut_off, mut olds, mut news) = (0, 0, 0);
    for round in 0..MOST_ROUNDS {
        if ROUNDS <= round && CUT_OFF <= cut_off && 0 < olds && 0 < news {
            break;
        }
        let mut child = Command::new(std::env::current_exe().expect("this program"))
            .args([
                "--exact",
                "store::power::a_killed_import_leaves_the_old_store_or_the_new_one",
            ])
            .env(CHILD, desk.path())
            .stdout(Stdio::null())
            .spawn()
            .expect("a child");
        // At moments spread over start and several imports, later ones as time goes on.
        std::thread::sleep(Duration::from_millis(15 + round * 53 % (120 + round)));
        child.kill().expect("killed");
        child.wait().expect("gone");
        cut_off += u32::from(desk.file("kit.db-journal").exists());
        // Whoever looks first, one that only reads or one that changes, puts the file right.
        let opened = if round % 2 == 0 {
            Store::read(desk.path())
        } else {
            Store::open(desk.path())
        };
        let lots = opened.expect("the store").lots().expect("lots");
        olds += u32::from(lots == old);
        news += u32::from(lots == new);
        assert!(
            lots == old || lots == new,
            "half a store of {} lots",
            lots.len()
        );
    }
    let told = format!("{cut_off} cut off in a change; {olds} old, {news} new");
    println!("{told}");
    let enough = CUT_OFF <= cut_off && 0 < olds && 0 < news;
    assert!(enough, "too seldom to have checked anything: {told}");
}

/// A store as a pulled plug leaves it: the file half changed, the journal beside it.
pub(crate) fn cut_off(folder: &Path, to: &Path) {
    let db = Connection::open(folder.join("kit.db")).expect("the file");
    // With no memory for pages the change reaches the file before it is done.
    let half = "PRAGMA cache_size = 1; BEGIN IMMEDIATE;
        UPDATE lot SET good = 99, note = hex(zeroblob(500));";
    db.execute_batch(half).expect("half a change");
    for name in ["kit.db", "kit.db-journal"] {
        std::fs::copy(folder.join(name), to.join(name)).expect("copied");
    }
}

#[test]
fn half_a_change_is_taken_out_by_whoever_comes_first() {
    let desk = Desk::new();
    write_list(&desk, "old.csv", &list(0));
    import(&mut desk.store(), &desk.file("old.csv"));
    for open in [Store::open, Store::read] {
        let other = Desk::new();
        cut_off(desk.path(), other.path());
        let changed = std::fs::read(other.file("kit.db")).expect("the file");
        let whole = std::fs::read(desk.file("kit.db")).expect("the file");
        assert!(
            changed != whole,
            "the file was not half changed, so this checks nothing"
        );
        let store = open(other.path()).expect("the store");
        assert!(store.lots().expect("lots") == list(0));
        drop(store);
        assert!(!other.file("kit.db-journal").exists());
    }
}
