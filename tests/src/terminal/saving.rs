//! Folders that can't be written and disks that are full: what was there stays whole.

use super::desk::{Desk, names};
use checks::courses::{plain, with};
use checks::program::{Ran, run};
use std::path::{Path, PathBuf};
use std::process::Command;

/// A small disk of its own; only root can make one.
struct Disk {
    folder: tempfile::TempDir,
}

impl Disk {
    /// A disk that holds so much; none, and a word about it, where that is not allowed.
    fn new(kilobytes: u32) -> Option<Self> {
        let folder = tempfile::tempdir().expect("a folder");
        let size = format!("size={kilobytes}k");
        let disk = Self { folder };
        let made = disk.mount(&["-t", "tmpfs", "-o", &size, "tmpfs"]);
        if made {
            return Some(disk);
        }
        println!("not checked: only root can mount a small disk");
        std::mem::forget(disk);
        None
    }

    fn mount(&self, how: &[&str]) -> bool {
        let mut command = Command::new("mount");
        command.args(how).arg(self.path());
        command.output().is_ok_and(|output| output.status.success())
    }

    fn read_only(&self) {
        assert!(self.mount(&["-o", "remount,ro"]), "the disk stays writable");
    }

    fn fill(&self) {
        // As much as fits; the last write is the one that fails.
        let _ = std::fs::write(self.path().join("filling"), vec![0; 10_000_000]);
    }

    fn path(&self) -> PathBuf {
        self.folder.path().to_owned()
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.path()).output();
    }
}

fn new(path: &Path) -> Ran {
    run(&["new".as_ref(), path.as_os_str()])
}

/// Prints two documents of another course over those in a folder, which must fail, and looks
/// at what is left.
fn nothing_is_lost(folder: &Path, before: &[u8], words: &str) {
    let desk = Desk::with_course(&with(&[("Plain course", "Another course")]));
    let shown = folder.display().to_string();
    let ran = desk.call("print", &["--out", &shown, "--only", "run-sheet"]);
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(
        ran.err.contains(words) && ran.err.contains("unharmed"),
        "{}",
        ran.err
    );
    let after = std::fs::read(folder.join("run-sheet.pdf")).expect("the old page");
    assert!(after == before, "the old page was changed");
    let ran = new(&folder.join("new.walling"));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.err.contains(words), "{}", ran.err);
    assert!(!folder.join("new.walling").exists(), "half a file was left");
    let leftovers: Vec<String> = names(folder)
        .into_iter()
        .filter(|name| name != "run-sheet.pdf" && name != "filling")
        .collect();
    assert!(leftovers.is_empty(), "left behind: {leftovers:?}");
}

/// Prints into a folder while that can still be done.
fn printed(folder: &Path) -> Vec<u8> {
    let shown = folder.display().to_string();
    let desk = Desk::with_course(&plain());
    let ran = desk.call("print", &["--out", &shown, "--only", "run-sheet"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    std::fs::read(folder.join("run-sheet.pdf")).expect("a page")
}

#[test]
fn a_full_disk_leaves_the_old_page_whole() {
    let Some(disk) = Disk::new(400) else { return };
    let before = printed(&disk.path());
    disk.fill();
    nothing_is_lost(&disk.path(), &before, "the disk is full");
}

#[test]
fn a_read_only_disk_leaves_the_old_page_whole() {
    let Some(disk) = Disk::new(400) else { return };
    let before = printed(&disk.path());
    disk.read_only();
    nothing_is_lost(&disk.path(), &before, "not allowed");
}

/// Root may write where others may not, so this one is for everybody else.
#[cfg(unix)]
#[test]
fn a_read_only_folder_leaves_the_old_page_whole() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a folder");
    let before = printed(folder.path());
    let allow = |mode| {
        let permissions = std::fs::Permissions::from_mode(mode);
        std::fs::set_permissions(folder.path(), permissions).expect("they are set");
    };
    allow(0o555);
    if std::fs::write(folder.path().join("filling"), "").is_ok() {
        println!("not checked here: this user may write anywhere");
    } else {
        nothing_is_lost(folder.path(), &before, "not allowed");
    }
    allow(0o755);
}

#[test]
fn a_folder_that_can_not_be_made_is_told() {
    let desk = Desk::with_course(&plain());
    let out = desk.put("a-file", "not a folder").join("pages");
    let ran = desk.call("print", &["--out", &out.display().to_string()]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("a-file"), "{}", ran.err);
}

#[cfg(unix)]
#[test]
fn a_page_that_is_a_link_is_printed_where_the_link_leads() {
    let desk = Desk::with_course(&plain());
    let (out, real) = (desk.file("out"), desk.file("real.pdf"));
    std::fs::create_dir(&out).expect("a folder");
    std::fs::write(&real, "old").expect("a file");
    std::os::unix::fs::symlink(&real, out.join("stone-order.pdf")).expect("a link");
    let shown = out.display().to_string();
    let ran = desk.call("print", &["--out", &shown, "--only", "stone-order"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        std::fs::read(&real)
            .expect("the file")
            .starts_with(b"%PDF-")
    );
    let link = std::fs::symlink_metadata(out.join("stone-order.pdf")).expect("the link");
    assert!(link.file_type().is_symlink());
}
