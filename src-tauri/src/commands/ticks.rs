//! The commands of what is ticked off the load list.

use super::Reply;
use crate::Shared;
use crate::shown::trouble;
use tauri::State;

/// The lines of the load list that are ticked.
#[tauri::command(async)]
pub(crate) fn ticks(shared: State<'_, Shared>) -> Vec<String> {
    shared.desk().ticks()
}

/// Keeps the lines of the load list that are ticked.
#[tauri::command(async)]
pub(crate) fn keep_ticks(shared: State<'_, Shared>, ticked: Vec<String>) -> Reply<()> {
    shared.desk().keep_ticks(ticked).map_err(trouble)
}
