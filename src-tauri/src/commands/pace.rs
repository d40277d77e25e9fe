//! The commands of the pace book.

use super::Reply;
use crate::Shared;
use crate::shown::trouble;
use shapes::window::PaceBook;
use tauri::State;

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
