//! The commands of the window: translation in, one call, translation out.

use crate::Shared;
use crate::ask;
use crate::leaving::{self, may_leave};
use crate::recent;
use crate::shown::trouble;
use shapes::window::{Renewed, Trouble, View};
use tauri::{AppHandle, State};

pub(crate) mod courses;
pub(crate) mod day;
pub(crate) mod drops;
pub(crate) mod keeping;
pub(crate) mod kit;
pub(crate) mod lessons;
pub(crate) mod pace;
pub(crate) mod pages;
pub(crate) mod paper;
pub(crate) mod ticks;
pub(crate) mod words;

type Reply<T> = Result<T, Trouble>;

/// The course the program was started with.
#[tauri::command(async)]
pub(crate) fn start(shared: State<'_, Shared>) -> Reply<View> {
    shared
        .refused()
        .map_or_else(|| Ok(recent::noted(&shared.desk()).view()), Err)
}

/// Another course; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn open(app: AppHandle, shared: State<'_, Shared>) -> Reply<Option<View>> {
    if !may_leave(&app, &shared)? {
        return Ok(None);
    }
    let Some(path) = ask::course_to_open(&app) else {
        return Ok(None);
    };
    let mut desk = shared.desk();
    desk.open(path).map_err(trouble)?;
    Ok(Some(recent::noted(&desk).view()))
}

/// Sets one key of the course. `goes_on`: the person has typed there before and never left, so
/// that it is one change to undo. `known`: the number of the view the window got last.
#[tauri::command(async)]
pub(crate) fn edit(
    shared: State<'_, Shared>,
    key: &str,
    text: &str,
    goes_on: bool,
    known: Option<u32>,
) -> Reply<Renewed> {
    let mut desk = shared.desk();
    desk.edit(key, text, goes_on).map_err(trouble)?;
    shared.renewed(known, &desk.view())
}

/// What could be done otherwise, which no change waits for. `known` as for [`edit`].
#[tauri::command(async)]
pub(crate) fn advise(shared: State<'_, Shared>, known: Option<u32>) -> Reply<Renewed> {
    let mut desk = shared.desk();
    desk.advise().map_err(trouble)?;
    shared.renewed(known, &desk.view())
}

/// From now on the window shows this drawing, or none: it is in this view and in all that follow.
/// `known` as for [`edit`].
#[tauri::command(async)]
pub(crate) fn look_at(
    shared: State<'_, Shared>,
    drawing: Option<String>,
    known: Option<u32>,
) -> Reply<Renewed> {
    let mut desk = shared.desk();
    desk.look_at(drawing);
    shared.renewed(known, &desk.view())
}

/// One more course day.
#[tauri::command(async)]
pub(crate) fn add_day(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_day().map_err(trouble)?;
    Ok(desk.view())
}

/// The last course day fewer.
#[tauri::command(async)]
pub(crate) fn remove_day(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_day().map_err(trouble)?;
    Ok(desk.view())
}

/// One more break in a day.
#[tauri::command(async)]
pub(crate) fn add_break(shared: State<'_, Shared>, day: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_break(day).map_err(trouble)?;
    Ok(desk.view())
}

/// One break of a day fewer.
#[tauri::command(async)]
pub(crate) fn remove_break(shared: State<'_, Shared>, day: usize, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_break(day, at).map_err(trouble)?;
    Ok(desk.view())
}

/// One more stretch at the end of the line.
#[tauri::command(async)]
pub(crate) fn add_stretch(shared: State<'_, Shared>, bent: bool) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_stretch(bent).map_err(trouble)?;
    Ok(desk.view())
}

/// One more surveyed station.
#[tauri::command(async)]
pub(crate) fn add_survey(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_survey().map_err(trouble)?;
    Ok(desk.view())
}

/// One row of the line or of the survey fewer.
#[tauri::command(async)]
pub(crate) fn remove_row(shared: State<'_, Shared>, key: String, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_row(&key, at).map_err(trouble)?;
    Ok(desk.view())
}

/// Ticks or unticks a thing to see to.
#[tauri::command(async)]
pub(crate) fn mark(shared: State<'_, Shared>, id: &str, done: bool) -> Reply<View> {
    let mut desk = shared.desk();
    desk.mark(id, done).map_err(trouble)?;
    Ok(desk.view())
}

/// One more vehicle.
#[tauri::command(async)]
pub(crate) fn add_vehicle(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_vehicle().map_err(trouble)?;
    Ok(desk.view())
}

/// One vehicle fewer.
#[tauri::command(async)]
pub(crate) fn remove_vehicle(shared: State<'_, Shared>, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_vehicle(at).map_err(trouble)?;
    Ok(desk.view())
}

/// Back to before the last change. `known` as for [`edit`].
#[tauri::command(async)]
pub(crate) fn undo(shared: State<'_, Shared>, known: Option<u32>) -> Reply<Renewed> {
    let mut desk = shared.desk();
    desk.undo().map_err(trouble)?;
    shared.renewed(known, &desk.view())
}

/// Forward again. `known` as for [`edit`].
#[tauri::command(async)]
pub(crate) fn redo(shared: State<'_, Shared>, known: Option<u32>) -> Reply<Renewed> {
    let mut desk = shared.desk();
    desk.redo().map_err(trouble)?;
    shared.renewed(known, &desk.view())
}

/// Saves the course where it lives; a course that has never been saved asks where.
#[tauri::command]
pub(crate) async fn save(app: AppHandle, shared: State<'_, Shared>) -> Reply<Option<View>> {
    let saved = leaving::save(&app, &shared)?;
    Ok(saved.then(|| shared.desk().view()))
}

/// Saves the course where the person says; null if they thought better of it.
#[tauri::command]
pub(crate) async fn save_as(app: AppHandle, shared: State<'_, Shared>) -> Reply<Option<View>> {
    let saved = leaving::save_as(&app, &shared)?;
    Ok(saved.then(|| shared.desk().view()))
}
