//! Which file the program is to open: the one it was started with, or one the system hands over.
//!
//! A double click starts the program with the file's path, on macOS excepted: there the system
//! starts it without one and hands files over as events, before the desk is set up or later.
//! Everywhere each file has a window, and a run of the program, of its own.

use crate::Shared;
use crate::shown::trouble;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Mutex, PoisonError};
use tauri::{AppHandle, Manager, RunEvent, Url};

/// A file that was handed over before there was a desk to lay it on.
struct Waiting(Mutex<Option<PathBuf>>);

/// The file to set the desk up with.
pub(crate) fn asked_for(app: &impl Manager<tauri::Wry>) -> Option<PathBuf> {
    let named = std::env::args_os().nth(1).map(PathBuf::from);
    let waiting = || {
        let waiting = app.try_state::<Waiting>()?;
        let mut file = waiting.0.lock().unwrap_or_else(PoisonError::into_inner);
        file.take()
    };
    named.or_else(waiting)
}

/// Opens the files that an event hands over; no other event matters here.
pub(crate) fn hear(app: &AppHandle, event: RunEvent) {
    let urls = match event {
        #[cfg(target_os = "macos")]
        RunEvent::Opened { urls } => urls,
        _ => Vec::new(),
    };
    for file in files(&urls) {
        take(app, file);
    }
}

/// The files among what is handed over; a web address is none.
fn files(urls: &[Url]) -> Vec<PathBuf> {
    let path = |url: &Url| url.to_file_path().ok();
    urls.iter().filter_map(path).collect()
}

/// Lays a file on the desk if nothing of anybody's lies there, and else opens another window.
fn take(app: &AppHandle, file: PathBuf) {
    let Some(shared) = app.try_state::<Shared>() else {
        if !app.manage(Waiting(Mutex::new(Some(file.clone())))) {
            run_on(file);
        }
        return;
    };
    if lay(&shared, &file)
        && let Some(window) = app.get_webview_window("main")
    {
        // Without this the window shows the example until it is next changed.
        let _ = window.reload();
    } else {
        run_on(file);
    }
}

/// Lays a file on a desk that holds only the untouched example. What is wrong with it is told
/// when the window asks for its course.
fn lay(shared: &Shared, file: &Path) -> bool {
    let mut desk = shared.desk();
    if desk.path().is_some() || desk.unsaved() {
        return false;
    }
    if let Err(wrong) = desk.open(file.to_owned()) {
        shared.refuse(trouble(wrong));
    }
    true
}

/// Another run of this program, with a window of its own.
fn run_on(file: PathBuf) {
    if let Ok(program) = std::env::current_exe() {
        // There is nobody to tell when it can't be started: the file was opened elsewhere.
        let _ = Command::new(program).arg(file).spawn();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ::files::Library;

    fn url(text: &str) -> Url {
        Url::parse(text).expect("an address")
    }

    #[cfg(unix)]
    #[test]
    fn addresses_of_files_are_read_with_blanks_and_letters_of_every_kind() {
        let handed = [
            url("file:///home/h/Mauer%20am%20B%C3%BChl.walling"),
            url("https://example.org/weekend.walling"),
            url("file:///tmp/50%25%20%23done.walling"),
        ];
        let due = ["/home/h/Mauer am Bühl.walling", "/tmp/50% #done.walling"];
        assert_eq!(super::files(&handed), due.map(PathBuf::from));
    }

    fn example(folder: &Path, name: &str) -> PathBuf {
        let file = folder.join(name);
        std::fs::write(&file, Library::example(false)).expect("writes");
        file
    }

    #[test]
    fn a_file_is_laid_on_an_untouched_desk_and_on_no_other() {
        let folder = tempfile::tempdir().expect("a folder");
        let store = folder.path().join("store");
        let shared = Shared::set_up(None, &store).expect("a desk").0;
        let file = example(folder.path(), "Käse & Stein (1).walling");
        assert!(lay(&shared, &file));
        assert_eq!(shared.desk().path(), Some(file.as_path()));
        let other = example(folder.path(), "other.walling");
        assert!(!lay(&shared, &other), "a file lies there");
        assert_eq!(shared.desk().path(), Some(file.as_path()));
    }

    #[test]
    fn a_touched_example_stays_and_a_refused_file_is_told() {
        let folder = tempfile::tempdir().expect("a folder");
        let store = folder.path().join("store");
        let shared = Shared::set_up(None, &store).expect("a desk").0;
        let empty = folder.path().join("empty.walling");
        std::fs::write(&empty, "").expect("writes");
        assert!(lay(&shared, &empty));
        assert!(shared.refused().is_some());
        assert_eq!(shared.desk().path(), None);
        let edited = shared.desk().edit("group.novices", "5", false);
        edited.expect("edits");
        assert!(!lay(&shared, &example(folder.path(), "other.walling")));
    }
}
