//! The commands of how the days run: weather, lessons, people away, and what is told on the day, the calendar file.

use super::Reply;
use crate::Shared;
use crate::ask;
use crate::edits::Told;
use crate::shown::trouble;
use shapes::window::View;
use tauri::{AppHandle, State};

/// One more spell of rain in a day.
#[tauri::command(async)]
pub(crate) fn add_rain(shared: State<'_, Shared>, day: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_rain(day).map_err(trouble)?;
    Ok(desk.view())
}

/// One spell of rain of a day fewer.
#[tauri::command(async)]
pub(crate) fn remove_rain(shared: State<'_, Shared>, day: usize, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_rain(day, at).map_err(trouble)?;
    Ok(desk.view())
}

/// A lesson at a time, first thing on a day, or where it falls by itself.
#[tauri::command(async)]
pub(crate) fn wish(
    shared: State<'_, Shared>,
    lesson: &str,
    day: Option<usize>,
    time: &str,
) -> Reply<View> {
    let mut desk = shared.desk();
    desk.wish(lesson, day, time).map_err(trouble)?;
    Ok(desk.view())
}

/// Writes the days as a calendar file and gives its name; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn write_calendar(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<String>> {
    let name = shared.desk().calendar_name();
    let Some(file) = ask::where_to_write_calendar(&app, &name) else {
        return Ok(None);
    };
    let today = chrono::Local::now().date_naive();
    shared
        .desk()
        .write_calendar(&file, today)
        .map_err(trouble)?;
    Ok(Some(file.display().to_string()))
}

/// One more absence.
#[tauri::command(async)]
pub(crate) fn add_absence(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.add_absence().map_err(trouble)?;
    Ok(desk.view())
}

/// One absence fewer.
#[tauri::command(async)]
pub(crate) fn remove_absence(shared: State<'_, Shared>, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_absence(at).map_err(trouble)?;
    Ok(desk.view())
}

/// How far a stage has come.
#[tauri::command(async)]
pub(crate) fn tell(
    shared: State<'_, Shared>,
    day: usize,
    time: &str,
    stage: &str,
    bay: Option<usize>,
    done: &str,
) -> Reply<View> {
    let mut desk = shared.desk();
    let told = Told {
        day,
        time,
        stage,
        bay,
        done,
    };
    desk.tell(&told).map_err(trouble)?;
    Ok(desk.view())
}

/// One report fewer.
#[tauri::command(async)]
pub(crate) fn untell(shared: State<'_, Shared>, at: usize) -> Reply<View> {
    let mut desk = shared.desk();
    desk.untell(at).map_err(trouble)?;
    Ok(desk.view())
}
