//! Before the course on the desk is left: what is not saved is saved, or lost, or the person stays.

use crate::Shared;
use crate::ask::{self, Leaving};
use crate::recent;
use crate::shown::trouble;
use shapes::window::Trouble;
use tauri::{AppHandle, Manager, WebviewWindow};

/// Whether another course may take the place of the one on the desk.
pub(crate) fn may_leave(app: &AppHandle, shared: &Shared) -> Result<bool, Trouble> {
    if !shared.desk().unsaved() {
        return Ok(true);
    }
    match ask::about_the_course(app) {
        Leaving::Save => save(app, shared),
        Leaving::Lose => Ok(true),
        Leaving::Stay => Ok(false),
    }
}

/// Saves the course where it lives; one that has never been saved asks where. False if the person
/// thought better of it.
pub(crate) fn save(app: &AppHandle, shared: &Shared) -> Result<bool, Trouble> {
    let path = shared.desk().path().map(ToOwned::to_owned);
    let Some(path) = path else {
        return save_as(app, shared);
    };
    shared.keeping.may_save(&path).map_err(trouble)?;
    let mut desk = shared.desk();
    desk.save(&path).map_err(trouble)?;
    recent::noted(&desk);
    Ok(true)
}

/// Saves the course where the person says; false if they thought better of it.
pub(crate) fn save_as(app: &AppHandle, shared: &Shared) -> Result<bool, Trouble> {
    let name = shared.desk().name_to_save();
    let Some(path) = ask::where_to_save(app, &name) else {
        return Ok(false);
    };
    shared.keeping.may_save(&path).map_err(trouble)?;
    let mut desk = shared.desk();
    desk.save_as(path).map_err(trouble)?;
    recent::noted(&desk);
    Ok(true)
}

/// Asks before the window closes, without holding it up.
pub(crate) fn before_closing(window: &WebviewWindow) {
    let closing = window.clone();
    std::thread::spawn(move || {
        let (app, shared) = (closing.app_handle(), closing.state::<Shared>());
        match may_close(app, &shared) {
            Ok(true) => {
                shared.keeping.end();
                // The window goes whatever the desk holds; nothing is left to be told.
                let _ = closing.destroy();
            }
            Ok(false) => {}
            Err(trouble) => ask::tell(app, &trouble),
        }
    });
}

fn may_close(app: &AppHandle, shared: &Shared) -> Result<bool, Trouble> {
    if !may_leave(app, shared)? {
        return Ok(false);
    }
    let lessons = shared.desk().has_unsaved_lessons();
    Ok(!lessons || ask::about_lessons(app) == Leaving::Lose)
}
