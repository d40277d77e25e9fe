//! Where nothing can be written: the old file stays whole, and the words say why.

use checks::courses::with;
use checks::program::{Ran, run};
use std::fs;
use std::path::Path;
use std::process::Command;

fn succeeds(program: &str, arguments: &[&str]) -> bool {
    Command::new(program)
        .args(arguments)
        .output()
        .is_ok_and(|output| output.status.success())
}

/// A small file system of its own, which can be filled and made read-only.
struct Small {
    folder: tempfile::TempDir,
}

impl Small {
    /// Nothing where this machine does not let us mount.
    fn mount() -> Option<Self> {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().display().to_string();
        let mounted = succeeds("mount", &["-t", "tmpfs", "-o", "size=64k", "tmpfs", &path]);
        mounted.then_some(Self { folder })
    }

    fn path(&self) -> &Path {
        self.folder.path()
    }

    fn read_only(&self) {
        let path = self.path().display().to_string();
        assert!(
            succeeds("mount", &["-o", "remount,ro", &path]),
            "made read-only"
        );
    }
}

impl Drop for Small {
    fn drop(&mut self) {
        succeeds("umount", &["-l", &self.path().display().to_string()]);
    }
}

fn print_into(folder: &Path) -> Ran {
    let course = tempfile::NamedTempFile::new().expect("a file");
    fs::write(course.path(), with(&[])).expect("writes");
    let (file, out) = (
        course.path().display().to_string(),
        folder.display().to_string(),
    );
    run(&["print", &file, "--out", &out, "--only", "stone-order"])
}

#[test]
fn on_a_full_disk_the_old_page_stays_whole() {
    let Some(disk) = Small::mount() else {
        println!("not tried: mounting is not allowed here");
        return;
    };
    let page = disk.path().join("stone-order.pdf");
    fs::write(&page, "the old page").expect("writes");
    // Fill the rest, so that not even a small new page finds room.
    let _ = fs::write(disk.path().join("filler"), vec![0_u8; 64 * 1024]);
    let ran = print_into(disk.path());
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.err.contains("the disk is full"), "{}", ran.err);
    assert_eq!(fs::read_to_string(&page).expect("reads"), "the old page");
    let left = fs::read_dir(disk.path()).expect("lists").count();
    assert_eq!(left, 2, "nothing unfinished is left behind");
}

#[test]
fn on_a_read_only_disk_the_words_say_so() {
    let Some(disk) = Small::mount() else {
        println!("not tried: mounting is not allowed here");
        return;
    };
    let page = disk.path().join("stone-order.pdf");
    fs::write(&page, "the old page").expect("writes");
    disk.read_only();
    let ran = print_into(disk.path());
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err.contains("writing is not allowed there"),
        "{}",
        ran.err
    );
    assert_eq!(fs::read_to_string(&page).expect("reads"), "the old page");
    let new = run(&[
        "new",
        &disk.path().join("new.walling").display().to_string(),
    ]);
    assert_eq!(new.code, Some(2));
    assert!(
        new.err.contains("writing is not allowed there"),
        "{}",
        new.err
    );
}

#[test]
fn a_folder_that_can_not_be_made_is_told() {
    let file = tempfile::NamedTempFile::new().expect("a file");
    let ran = print_into(&file.path().join("pages"));
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("this folder can't be made"), "{}", ran.err);
}
