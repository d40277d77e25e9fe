//! Set-up: what a fresh Debian machine with Rust and Node.js still lacks.

use crate::run::{Done, npm, program, run, say, succeeds, top};
use std::path::Path;

/// To build the window.
const TO_BUILD: &[&str] = &["build-essential", "pkg-config", "libwebkit2gtk-4.1-dev"];

/// To drive the real window without a screen, to look into pages and into the package.
const TO_TEST: &[&str] = &[
    "dbus",
    "groff-base",
    "librsvg2-bin",
    "poppler-utils",
    "qpdf",
    "strace",
    "webkit2gtk-driver",
    "xauth",
    "xvfb",
];

/// Everything the window is built from.
pub(crate) fn for_the_window() -> Done {
    packages(TO_BUILD)?;
    window_files()
}

/// Everything the checks need beside that.
pub(crate) fn for_the_checks() -> Done {
    for_the_window()?;
    packages(TO_TEST)
}

/// Debian packages that are not there yet.
fn packages(wanted: &[&str]) -> Done {
    let missing: Vec<&str> = wanted
        .iter()
        .copied()
        .filter(|name| !installed(name))
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    say(&format!("Setting up: {}", missing.join(" ")));
    run(as_root(&["apt-get", "update", "-qq"])).map_err(|why| by_hand(&why, &missing))?;
    let mut install = vec!["apt-get", "install", "-y", "-qq", "--no-install-recommends"];
    install.extend(&missing);
    run(as_root(&install)).map_err(|why| by_hand(&why, &missing))
}

fn by_hand(why: &str, missing: &[&str]) -> String {
    format!(
        "{why}\nInstall these by hand and try again: {}",
        missing.join(" ")
    )
}

fn installed(package: &str) -> bool {
    let query = program("dpkg-query", &["-W", "-f=${Status}", package]);
    let mut query = query;
    query
        .output()
        .is_ok_and(|output| output.stdout.ends_with(b"ok installed"))
}

fn as_root(words: &[&str]) -> std::process::Command {
    let is_root = program("id", &["-u"])
        .output()
        .is_ok_and(|id| id.stdout.trim_ascii() == b"0");
    let mut command = match words {
        [first, rest @ ..] if is_root => program(first, rest),
        words => program("sudo", words),
    };
    command.env("DEBIAN_FRONTEND", "noninteractive");
    command
}

/// The window's own files: its libraries as the lock file names them, and its pages.
fn window_files() -> Done {
    if !succeeds(npm(&["--version"])) {
        return Err("npm is missing: install Node.js 20 or newer".to_owned());
    }
    let ui = top().join("ui");
    let (lock, there) = (
        ui.join("package-lock.json"),
        ui.join("node_modules/.package-lock.json"),
    );
    if !newer(&there, &lock) {
        run(npm(&["ci", "--no-audit", "--no-fund"]))?;
    }
    run(npm(&["run", "--silent", "build"]))
}

fn newer(one: &Path, than: &Path) -> bool {
    let time = |path: &Path| path.metadata().and_then(|about| about.modified()).ok();
    match (time(one), time(than)) {
        (Some(one), Some(than)) => than <= one,
        _ => false,
    }
}
