//! The commands that keep a course from being lost: what earlier sittings left, and what others do
//! to its file.

use super::Reply;
use crate::Shared;
use crate::leaving::may_leave;
use crate::shown::trouble;
use shapes::window::{Keeping, View};
use tauri::ipc::Channel;
use tauri::{AppHandle, State};

/// Tells how things stand, now and whenever that changes.
#[tauri::command(async)]
pub(crate) fn keeping(shared: State<'_, Shared>, told: Channel<Keeping>) {
    shared.keeping.listen(told);
    // Whoever leaves the desk tells.
    drop(shared.desk());
}

/// Puts kept changes on the desk; null if the person thought better of leaving what lies there.
#[tauri::command]
pub(crate) async fn take_kept(
    app: AppHandle,
    shared: State<'_, Shared>,
    id: String,
) -> Reply<Option<View>> {
    if !shared.keeping.is_here(&id) && !may_leave(&app, &shared)? {
        return Ok(None);
    }
    let mut desk = shared.desk();
    shared.keeping.take(&mut desk, &id).map_err(trouble)?;
    Ok(Some(desk.view()))
}

/// Lets go of kept changes.
#[tauri::command(async)]
pub(crate) fn leave_kept(shared: State<'_, Shared>, id: &str) {
    shared.keeping.leave(id);
    drop(shared.desk());
}

/// What the disk holds now, as one step that can be undone.
#[tauri::command(async)]
pub(crate) fn read_anew(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.read_anew().map_err(trouble)?;
    Ok(desk.view())
}

/// The course stays as it is here, whatever another program has written.
#[tauri::command(async)]
pub(crate) fn keep_mine(shared: State<'_, Shared>) -> View {
    let mut desk = shared.desk();
    desk.keep_mine();
    desk.view()
}

/// Saves over what another program has written, once the person has said so.
#[tauri::command(async)]
pub(crate) fn save_over(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    let path = desk.lives_in().map_err(trouble)?;
    shared.keeping.may_save(&path).map_err(trouble)?;
    desk.save_over().map_err(trouble)?;
    Ok(desk.view())
}
