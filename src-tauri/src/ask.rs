//! What the program asks in dialogs of the system: which file, which folder, lose changes?

use shapes::window::Trouble;
use std::path::PathBuf;
use tauri::AppHandle;
use tauri_plugin_dialog::{
    DialogExt, FilePath, MessageDialogButtons, MessageDialogKind, MessageDialogResult,
};

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

/// What becomes of changes that are not saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Leaving {
    Save,
    Lose,
    Stay,
}

/// Before a course is left with changes. What the return key presses loses nothing, nor does
/// closing the dialog.
pub(crate) fn about_the_course(app: &AppHandle) -> Leaving {
    let buttons = [SAVE, LOSE, STAY];
    match pressed(app, "The course has changes that are not saved.", buttons).as_deref() {
        Some(SAVE) => Leaving::Save,
        Some(LOSE) => Leaving::Lose,
        _ => Leaving::Stay,
    }
}

/// Before the window closes on a lesson with changes, which is saved at its own place only.
pub(crate) fn about_lessons(app: &AppHandle) -> Leaving {
    let buttons = [STAY, LOSE, "Cancel"];
    match pressed(app, "A lesson has changes that are not saved.", buttons).as_deref() {
        Some(LOSE) => Leaving::Lose,
        _ => Leaving::Stay,
    }
}

const SAVE: &str = "Save";
const LOSE: &str = "Close without saving";
const STAY: &str = "Stay";

fn pressed(app: &AppHandle, message: &str, [first, second, third]: [&str; 3]) -> Option<String> {
    let [first, second, third] = [first, second, third].map(ToOwned::to_owned);
    let dialog = app.dialog().message(message).title("Not saved");
    let buttons = MessageDialogButtons::YesNoCancelCustom(first, second, third);
    match dialog.buttons(buttons).blocking_show_with_result() {
        MessageDialogResult::Custom(label) => Some(label),
        _ => None,
    }
}

/// Tells what went wrong where no place of the window can.
pub(crate) fn tell(app: &AppHandle, trouble: &Trouble) {
    app.dialog()
        .message(format!("{}\n{}", trouble.what, trouble.cure))
        .title("Not saved")
        .kind(MessageDialogKind::Error)
        .blocking_show();
}
