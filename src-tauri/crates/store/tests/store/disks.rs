//! Full disks, and places where nothing can be written.

use super::desk::{Desk, april, lot};
use super::power::cut_off;
use std::path::PathBuf;
use std::process::Command;
use store::{Lot, Mode, Store};

/// A small disk of its own; only root can make one.
struct Disk {
    desk: Desk,
}

impl Disk {
    fn new(kilobytes: u32) -> Option<Self> {
        let disk = Self { desk: Desk::new() };
        let size = format!("size={kilobytes}k");
        if disk.mount(&["-t", "tmpfs", "-o", &size, "tmpfs"]) {
            return Some(disk);
        }
        println!("not checked: only root can mount a small disk");
        None
    }

    fn mount(&self, how: &[&str]) -> bool {
        let mut command = Command::new("mount");
        command.args(how).arg(self.desk.path());
        command.output().is_ok_and(|output| output.status.success())
    }

    fn read_only(&self) {
        assert!(self.mount(&["-o", "remount,ro"]), "the disk stays writable");
    }

    fn filling(&self) -> PathBuf {
        self.desk.file("filling")
    }

    /// As much as fits; the last write is the one that fails.
    fn fill(&self) {
        let _ = std::fs::write(self.filling(), vec![0; 10_000_000]);
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.desk.path()).output();
    }
}

fn many() -> String {
    let rows: String = (0..4_000)
        .map(|n| format!("A long name of item {n},{}\n", n % 9))
        .collect();
    format!("item,good\n{rows}")
}

#[test]
fn a_full_disk_leaves_the_old_store_whole() {
    let Some(disk) = Disk::new(400) else { return };
    let mut store = disk.desk.with(&[lot("Spade", 2)]);
    let elsewhere = Desk::new();
    let list = store::KitList::read(&elsewhere.put("kit.csv", many())).expect("a list");
    let preview = store.preview(&list).expect("a preview");
    disk.fill();
    let refused = store.apply(&preview, Mode::Merge).expect_err("no room");
    assert_eq!(
        refused.to_string(),
        "The disk is full. The kit store is as it was before; make room and try again."
    );
    assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
    drop(store);
    // It can still be opened, and written again once there is room.
    let mut store = Store::open(disk.desk.path()).expect("the store");
    assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
    std::fs::remove_file(disk.filling()).expect("room");
    store.set_lot(&lot("Spade", 3)).expect("set");
}

#[test]
fn a_full_disk_without_a_store_reads_as_empty() {
    let Some(disk) = Disk::new(100) else { return };
    disk.fill();
    let mut store = Store::open(disk.desk.path()).expect("a store");
    assert_eq!(store.lots().expect("lots"), []);
    assert_eq!(
        store.add_lot(&lot("Spade", 1)).expect_err("no room").code(),
        "read-only"
    );
}

fn not_writable(store: &mut Store, disk: &Disk, lots: &[Lot]) {
    let notice = store.notice().expect("a notice").to_string();
    assert_eq!(
        disk.desk.words(&notice),
        "The kit store in FOLDER can't be written, so it is open for reading only. Allow writing to that folder, or make room on its disk, to change it."
    );
    assert_eq!(store.lots().expect("lots"), lots);
    assert_eq!(
        store.held_for(None, &[april(1)]).expect("held").len(),
        lots.len()
    );
    let refused = store.add_lot(&lot("Pick", 1)).expect_err("read only");
    assert_eq!(
        refused.to_string(),
        format!("{notice} Nothing was changed.")
    );
}

#[test]
fn a_read_only_disk_is_read() {
    let Some(disk) = Disk::new(400) else { return };
    disk.desk.with(&[lot("Spade", 2)]);
    disk.read_only();
    let mut store = Store::open(disk.desk.path()).expect("the store");
    not_writable(&mut store, &disk, &[lot("Spade", 2)]);
    let reading = Store::read(disk.desk.path()).expect("the store");
    assert_eq!(reading.notice(), None);
}

#[test]
fn a_read_only_disk_without_a_store_reads_as_empty() {
    let Some(disk) = Disk::new(400) else { return };
    disk.read_only();
    let mut store = Store::open(disk.desk.path()).expect("a store");
    not_writable(&mut store, &disk, &[]);
    let store = Store::open(&disk.desk.file("deeper")).expect("a store");
    assert!(store.is_read_only());
}

#[test]
fn an_old_store_on_a_read_only_disk_is_read() {
    let Some(disk) = Disk::new(400) else { return };
    let db = rusqlite::Connection::open(disk.desk.file("kit.db")).expect("a database");
    db.execute_batch(include_str!("old/kit-1.sql"))
        .expect("statements");
    drop(db);
    disk.read_only();
    let store = Store::open(disk.desk.path()).expect("the store");
    assert_eq!(store.lots().expect("lots")[0].item, "Frame");
    assert_eq!(store.courses().expect("courses"), []);
    assert!(store.notice().is_some());
}

#[test]
fn half_a_change_on_a_read_only_disk_is_told() {
    let Some(disk) = Disk::new(20_000) else {
        return;
    };
    let desk = Desk::new();
    let mut store = desk.store();
    desk.import(&mut store, &many(), Mode::Merge);
    drop(store);
    cut_off(desk.path(), disk.desk.path());
    disk.read_only();
    for opened in [Store::open(disk.desk.path()), Store::read(disk.desk.path())] {
        assert_eq!(
            disk.desk
                .words(&opened.expect_err("half a change").to_string()),
            "kit.db: the last change to the kit store was cut off, and putting it right takes writing to its folder, which is not allowed. Allow that once."
        );
    }
}

/// Root may write where others may not, so this one is for everybody else.
#[cfg(unix)]
#[test]
fn a_folder_of_somebody_else_is_read() {
    use std::os::unix::fs::PermissionsExt;
    let desk = Desk::new();
    desk.with(&[lot("Spade", 2)]);
    let allow = |mode| {
        let permissions = std::fs::Permissions::from_mode(mode);
        std::fs::set_permissions(desk.path(), permissions).expect("they are set");
    };
    allow(0o555);
    if std::fs::write(desk.file("filling"), "").is_ok() {
        println!("not checked here: this user may write anywhere");
    } else {
        let mut store = Store::open(desk.path()).expect("the store");
        assert!(store.notice().is_some());
        assert_eq!(store.lots().expect("lots"), [lot("Spade", 2)]);
        assert_eq!(
            store
                .add_lot(&lot("Pick", 1))
                .expect_err("read only")
                .code(),
            "read-only"
        );
    }
    allow(0o755);
}
