//! The Debian package, packed from the programs as they were last built and unpacked again.

use crate::root;
use checks::program;
use std::collections::BTreeSet;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

/// What a program says; it must end well.
fn said(name: &str, arguments: &[&str], at: &Path) -> String {
    let output = Command::new(name).args(arguments).arg(at).output();
    let output = output.unwrap_or_else(|cause| panic!("{name}: {cause}"));
    let wrong = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{name}: {wrong}");
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// The package and what is in it, unpacked.
struct Package {
    file: PathBuf,
    tree: tempfile::TempDir,
}

/// Packed once for all checks.
static PACKAGE: LazyLock<Package> = LazyLock::new(|| {
    let built = program::path();
    let built = built.parent().expect("the folder of built programs");
    let output = Command::new(built.join("xtask"))
        .args(["deb", "--debug"])
        .env("CARGO", env!("CARGO"))
        .env(
            "CARGO_TARGET_DIR",
            built.parent().expect("the folder above"),
        )
        .output()
        .expect("xtask is built: cargo build --workspace --bins");
    let wrong = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{wrong}");
    let folder = built.with_file_name("deb").join("debug");
    let files = std::fs::read_dir(folder).expect("packages");
    let file = files
        .map(|it| it.expect("a file").path())
        .find(|path| path.extension().is_some_and(|it| it == "deb"))
        .expect("a package");
    let tree = tempfile::tempdir().expect("a folder");
    let unpack = Command::new("dpkg-deb")
        .arg("-x")
        .arg(&file)
        .arg(tree.path())
        .status();
    assert!(unpack.expect("dpkg-deb runs").success());
    Package { file, tree }
});

fn inside(path: &str) -> PathBuf {
    PACKAGE.tree.path().join(path)
}

fn unsqueezed(path: &str) -> String {
    said("gzip", &["-dc"], &inside(path))
}

#[test]
fn everything_is_in_its_usual_place() {
    let mut due = vec![
        "usr/bin/coursewright",
        "usr/bin/coursewright-desktop",
        "usr/share/applications/coursewright-desktop.desktop",
        "usr/share/mime/packages/coursewright.xml",
        "usr/share/icons/hicolor/scalable/apps/coursewright.svg",
        "usr/share/icons/hicolor/scalable/mimetypes/application-x-walling.svg",
        "usr/share/man/man1/coursewright.1.gz",
        "usr/share/man/man1/coursewright-kit-export.1.gz",
        "usr/share/man/man1/coursewright-desktop.1.gz",
        "usr/share/bash-completion/completions/coursewright",
        "usr/share/zsh/vendor-completions/_coursewright",
        "usr/share/fish/vendor_completions.d/coursewright.fish",
        "usr/share/doc/coursewright/copyright",
        "usr/share/doc/coursewright/changelog.gz",
        "usr/share/doc/coursewright/third-party-licences.gz",
    ];
    due.extend(["usr/share/icons/hicolor/16x16/apps/coursewright.png"]);
    due.extend(["usr/share/icons/hicolor/256x256/mimetypes/application-x-walling.png"]);
    for file in due {
        assert!(inside(file).is_file(), "{file} is not there");
    }
}

#[test]
fn files_belong_to_root_and_only_programs_can_be_run() {
    let list = said("dpkg-deb", &["-c"], &PACKAGE.file);
    assert!(list.contains("usr/bin/coursewright"), "{list}");
    for line in list.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        let due = match (
            words[0].starts_with('d'),
            words[5].starts_with("./usr/bin/"),
        ) {
            (true, _) => "drwxr-xr-x",
            (false, true) => "-rwxr-xr-x",
            (false, false) => "-rw-r--r--",
        };
        assert_eq!((words[0], words[1]), (due, "root/root"), "{line}");
    }
}

#[test]
fn the_package_says_who_it_is_and_what_it_needs() {
    let about = said("dpkg-deb", &["-f"], &PACKAGE.file);
    let version = env!("CARGO_PKG_VERSION");
    assert!(
        about.contains(&format!("\nVersion: {version}\n")),
        "{about}"
    );
    for library in ["libc6 (>= ", "libwebkit2gtk-4.1-0", "libgtk-3-0"] {
        assert!(about.contains(library), "{about}");
    }
    assert!(
        !about.contains(['{', '#']),
        "something is not filled in: {about}"
    );
}

#[test]
fn the_packed_program_runs() {
    let packed = inside("usr/bin/coursewright");
    let mode = packed.metadata().expect("a program").permissions().mode();
    assert_eq!(mode & 0o777, 0o755);
    let example = root().join("lessons/examples/hollin-bank.walling");
    let plan = said(&packed.display().to_string(), &["plan", "--json"], &example);
    let built = program::run(&["plan", "--json", example.to_str().expect("a path")]);
    assert_eq!(plan, built.out);
}

/// A double click finds the type, the program, and the picture.
#[test]
fn the_menu_entry_is_sound_and_opens_the_file_it_is_given() {
    let entry = inside("usr/share/applications/coursewright-desktop.desktop");
    let validated = Command::new("desktop-file-validate").arg(&entry).output();
    match validated {
        Ok(output) => assert_eq!(String::from_utf8_lossy(&output.stdout), ""),
        Err(_) => println!("not checked: desktop-file-validate (desktop-file-utils) is not there"),
    }
    let entry = std::fs::read_to_string(entry).expect("an entry");
    let value = |key: &str| {
        let start = format!("{key}=");
        let line = entry.lines().find_map(|line| line.strip_prefix(&start));
        line.unwrap_or_else(|| panic!("no {key}")).to_owned()
    };
    let exec = value("Exec");
    let (name, file) = exec.split_once(' ').expect("a program and its file");
    assert_eq!(file, "%f", "one window for each file");
    assert!(inside(&format!("usr/bin/{name}")).is_file());
    let icon = format!("usr/share/icons/hicolor/48x48/apps/{}.png", value("Icon"));
    assert!(inside(&icon).is_file());
}

#[test]
fn every_library_is_named_with_its_terms() {
    let text = unsqueezed("usr/share/doc/coursewright/third-party-licences.gz");
    for name in ["tauri v", "typst v", "rusqlite v", "svelte v", "clap v"] {
        let line = text.lines().find(|line| line.starts_with(name));
        let line = line.unwrap_or_else(|| panic!("{name} is not named"));
        let terms = line.split(": ").nth(1).unwrap_or_default();
        assert!(
            ["MIT", "Apache"].iter().any(|it| terms.starts_with(it)),
            "{line}"
        );
    }
    for words in [
        "Mozilla Public License Version 2.0",
        "SIL OPEN FONT LICENSE",
        "Apache License",
        "UNICODE LICENSE V3",
        // Of a library in C that a crate of another licence brings along.
        "files in the jemalloc source distribution are",
    ] {
        assert!(text.contains(words), "{words} is not there");
    }
    // Whoever came without a text of their own stands with a licence whose text is there.
    let without = text.split("names of others:\n").nth(1).expect("a list");
    let terms: BTreeSet<&str> = without
        .lines()
        .take_while(|line| line.starts_with("  "))
        .filter_map(|line| line.split(": ").nth(1))
        .collect();
    for terms in terms {
        let known = ["MIT", "Apache-2.0", "BSD-3-Clause", "0BSD"];
        assert!(
            known.iter().any(|it| terms.contains(it)),
            "{terms}: no text of it"
        );
    }
}
