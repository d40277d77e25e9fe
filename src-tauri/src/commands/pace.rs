//! The commands of the pace book.

use super::Reply;
use crate::Shared;
use crate::ask;
use crate::shown::trouble;
use shapes::window::{PaceBook, PacePreview};
use tauri::{AppHandle, State};

/// The pace book, for the open course.
#[tauri::command(async)]
pub(crate) fn pace_book(shared: State<'_, Shared>) -> Reply<PaceBook> {
    shared.desk().pace_book().map_err(trouble)
}

/// Puts the open course into the pace book.
#[tauri::command(async)]
pub(crate) fn record_pace(shared: State<'_, Shared>) -> Reply<PaceBook> {
    let mut desk = shared.desk();
    desk.record_pace().map_err(trouble)?;
    desk.pace_book().map_err(trouble)
}

/// Takes the newest record of the open course back.
#[tauri::command(async)]
pub(crate) fn take_back_pace(shared: State<'_, Shared>) -> Reply<PaceBook> {
    let mut desk = shared.desk();
    desk.take_back_pace().map_err(trouble)?;
    desk.pace_book().map_err(trouble)
}

/// Takes a course out of the pace book, by its place in it; what was recorded of it before counts again.
#[tauri::command(async)]
pub(crate) fn take_back_pace_of(shared: State<'_, Shared>, at: usize) -> Reply<PaceBook> {
    let mut desk = shared.desk();
    desk.take_back_pace_of(at).map_err(trouble)?;
    desk.pace_book().map_err(trouble)
}

/// What taking in a pace book would change; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn look_at_pace_file(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<PacePreview>> {
    let Some(file) = ask::pace_book_to_take_in(&app) else {
        return Ok(None);
    };
    let preview = shared.desk().look_at_pace_file(&file).map_err(trouble)?;
    Ok(Some(preview))
}

/// Takes in the pace book that was looked at last.
#[tauri::command(async)]
pub(crate) fn take_in_pace_file(shared: State<'_, Shared>) -> Reply<PaceBook> {
    let mut desk = shared.desk();
    desk.take_in_pace_file().map_err(trouble)?;
    desk.pace_book().map_err(trouble)
}

/// Writes the pace book to a file and gives its name; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn export_pace_book(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<String>> {
    let Some(file) = ask::where_to_write_pace_book(&app) else {
        return Ok(None);
    };
    shared.desk().export_pace_book(&file).map_err(trouble)?;
    Ok(Some(file.display().to_string()))
}
