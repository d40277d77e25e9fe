//! The commands of the shelf of lessons: what there is, one lesson written, looked at, kept, taken away.

use super::Reply;
use super::pages::away_from_the_desk;
use crate::Shared;
use crate::aside::LOOKED_AT;
use crate::shown::trouble;
use shapes::window::{LessonChange, LessonDraft, LessonKept, LessonShelf, PagePreview};
use tauri::State;

/// All lessons, and what a lesson can be put together from.
#[tauri::command(async)]
pub(crate) fn lesson_shelf(shared: State<'_, Shared>) -> LessonShelf {
    shared.desk().lesson_shelf()
}

/// A lesson as it is written.
#[tauri::command(async)]
pub(crate) fn lesson(shared: State<'_, Shared>, id: &str) -> Reply<LessonDraft> {
    shared.desk().lesson(id).map_err(trouble)
}

/// A lesson to be written; nothing is saved yet.
#[tauri::command(async)]
pub(crate) fn new_lesson(shared: State<'_, Shared>, title: &str) -> LessonDraft {
    shared.desk().new_lesson(title)
}

/// A lesson with one part as it was typed; nothing is saved.
#[tauri::command(async)]
pub(crate) fn change_lesson(
    shared: State<'_, Shared>,
    id: &str,
    text: &str,
    change: LessonChange,
) -> LessonDraft {
    shared.desk().change_lesson(id, text, &change)
}

/// One page of a lesson as it is written now; null while it is not sound.
#[tauri::command]
pub(crate) async fn preview_lesson(
    shared: State<'_, Shared>,
    id: String,
    text: String,
    document: String,
    page: usize,
) -> Reply<Option<PagePreview>> {
    let job = shared.desk().lesson_job(&id, &text).map_err(trouble)?;
    let Some(job) = job else { return Ok(None) };
    away_from_the_desk(&LOOKED_AT, move || job.page(&document, page))
        .await
        .map(Some)
}

/// Puts a lesson on the instructor's own shelf.
#[tauri::command(async)]
pub(crate) fn save_lesson(shared: State<'_, Shared>, id: &str, text: &str) -> Reply<LessonKept> {
    shared.desk().save_lesson(id, text).map_err(trouble)
}

/// Takes the instructor's own lesson off the shelf; what is being written stays at the editor.
#[tauri::command(async)]
pub(crate) fn take_lesson_away(
    shared: State<'_, Shared>,
    id: &str,
    text: &str,
) -> Reply<LessonKept> {
    shared.desk().take_lesson_away(id, text).map_err(trouble)
}
