//! The commands of what is dropped onto the window or pasted as a list of people.

use super::Reply;
use crate::Shared;
use crate::leaving::may_leave;
use crate::shown::trouble;
use shapes::window::{Dropped, RosterPreview, View};
use std::path::PathBuf;
use std::sync::PoisonError;
use tauri::ipc::Channel;
use tauri::{AppHandle, Manager, State, WebviewWindow};

/// Where the window hears of what is dropped.
#[tauri::command(async)]
pub(crate) fn hear_of_drops(shared: State<'_, Shared>, told: Channel<Dropped>) {
    *shared.drops.lock().unwrap_or_else(PoisonError::into_inner) = Some(told);
}

/// Looks at what was dropped, away from the thread of the window, and tells it.
pub(crate) fn dropped(window: &WebviewWindow, paths: Vec<PathBuf>) {
    let window = window.clone();
    tauri::async_runtime::spawn_blocking(move || {
        let shared = window.state::<Shared>();
        let what = shared.desk().dropped(&paths);
        if matches!(what, Dropped::Course) {
            let mut course = shared
                .course_dropped
                .lock()
                .unwrap_or_else(PoisonError::into_inner);
            *course = paths.into_iter().next();
        }
        let told = shared.drops.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(told) = told.as_ref() {
            // A window that no longer listens has closed.
            let _ = told.send(what);
        }
    });
}

/// Opens the course that was dropped; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn open_dropped(app: AppHandle, shared: State<'_, Shared>) -> Reply<Option<View>> {
    let path = {
        let mut course = shared
            .course_dropped
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        course.take()
    };
    let Some(path) = path else { return Ok(None) };
    if !may_leave(&app, &shared)? {
        return Ok(None);
    }
    let mut desk = shared.desk();
    desk.open(path).map_err(trouble)?;
    Ok(Some(desk.view()))
}

/// What taking in a pasted list of people would change.
#[tauri::command(async)]
pub(crate) fn look_at_roster(shared: State<'_, Shared>, pasted: &str) -> Reply<RosterPreview> {
    shared.desk().look_at_roster(pasted).map_err(trouble)
}

/// Takes in a pasted list of people; `whole`: who is not in it goes.
#[tauri::command(async)]
pub(crate) fn take_in_roster(shared: State<'_, Shared>, pasted: &str, whole: bool) -> Reply<View> {
    let mut desk = shared.desk();
    desk.take_in_roster(pasted, whole).map_err(trouble)?;
    Ok(desk.view())
}
