//! What the program asks in dialogs of the system: which file, which folder, lose changes?

use crate::Shared;
use std::path::PathBuf;
use tauri::{AppHandle, Manager, WebviewWindow};
use tauri_plugin_dialog::{DialogExt, FilePath, MessageDialogButtons};

/// The endings of kit lists.
const KIT_LISTS: [&str; 2] = ["xlsx", "csv"];
/// The ending of course files.
const ENDING: &str = "walling";
/// The ending of calendar files.
const CALENDAR: &str = "ics";
/// The ending of pace books.
const PACE_BOOK: &str = "csv";

pub(crate) fn course_to_open(app: &AppHandle) -> Option<PathBuf> {
    path(
        app.dialog()
            .file()
            .add_filter("Course", &[ENDING])
            .blocking_pick_file(),
    )
}

/// `name` is what the course may be called, without the ending.
pub(crate) fn where_to_save(app: &AppHandle, name: &str) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Course", &[ENDING]);
    let chosen = path(
        dialog
            .set_file_name(format!("{name}.{ENDING}"))
            .blocking_save_file(),
    )?;
    Some(ending(chosen, ENDING))
}

pub(crate) fn kit_list_to_take_in(app: &AppHandle) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Kit list", &KIT_LISTS);
    path(dialog.blocking_pick_file())
}

pub(crate) fn where_to_export(app: &AppHandle) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Kit list", &KIT_LISTS);
    path(dialog.set_file_name("kit.xlsx").blocking_save_file())
}

pub(crate) fn pace_book_to_take_in(app: &AppHandle) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Pace book", &[PACE_BOOK]);
    path(dialog.blocking_pick_file())
}

pub(crate) fn where_to_write_pace_book(app: &AppHandle) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Pace book", &[PACE_BOOK]);
    let chosen = path(dialog.set_file_name("pace.csv").blocking_save_file())?;
    Some(ending(chosen, PACE_BOOK))
}

pub(crate) fn where_to_write_calendar(app: &AppHandle, name: &str) -> Option<PathBuf> {
    let dialog = app.dialog().file().add_filter("Calendar", &[CALENDAR]);
    let chosen = path(dialog.set_file_name(name).blocking_save_file())?;
    Some(ending(chosen, CALENDAR))
}

pub(crate) fn where_to_print(app: &AppHandle) -> Option<PathBuf> {
    path(app.dialog().file().blocking_pick_folder())
}

/// A file whose name was typed without an ending gets it.
fn ending(chosen: PathBuf, ending: &str) -> PathBuf {
    if chosen.extension().is_some() {
        chosen
    } else {
        chosen.with_extension(ending)
    }
}

fn path(chosen: Option<FilePath>) -> Option<PathBuf> {
    chosen.and_then(|it| it.into_path().ok())
}

/// Whether changes that are not saved may be lost.
pub(crate) fn may_leave(app: &AppHandle) -> bool {
    app.dialog()
        .message(LOSE)
        .title("Not saved")
        .buttons(lose_or_stay())
        .blocking_show()
}

/// Asks the same before the window closes, without holding the window up.
pub(crate) fn before_closing(window: &WebviewWindow) {
    let closing = window.clone();
    window
        .app_handle()
        .dialog()
        .message(LOSE)
        .title("Not saved")
        .buttons(lose_or_stay())
        .show(move |lose| {
            if lose {
                closing.state::<Shared>().keeping.end();
                // The window goes whatever the desk holds; nothing is left to be told.
                let _ = closing.destroy();
            }
        });
}

const LOSE: &str = "There are changes that are not saved, in this course or in a lesson. Close without saving them?";

fn lose_or_stay() -> MessageDialogButtons {
    MessageDialogButtons::OkCancelCustom("Close without saving".to_owned(), "Stay".to_owned())
}
