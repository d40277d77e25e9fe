//! The commands of the kit store and the kit rules.

use super::Reply;
use crate::Shared;
use crate::ask;
use crate::shown::trouble;
use shapes::window::{CountedHome, KitListPreview, KitStore, LotTyped, ReturnTyped, RuleKey, View};
use tauri::{AppHandle, State};

/// The kit store, for the open course.
#[tauri::command(async)]
pub(crate) fn kit_store(shared: State<'_, Shared>) -> Reply<KitStore> {
    shared.desk().kit_store().map_err(trouble)
}

/// Puts a lot in place of another, or beside the others.
#[tauri::command(async)]
pub(crate) fn put_lot(
    shared: State<'_, Shared>,
    was: Option<(String, String)>,
    lot: LotTyped,
) -> Reply<View> {
    let mut desk = shared.desk();
    let was = was
        .as_ref()
        .map(|(item, owner)| (item.as_str(), owner.as_str()));
    desk.put_lot(was, &lot).map_err(trouble)?;
    Ok(desk.view())
}

/// Takes a lot out of the store.
#[tauri::command(async)]
pub(crate) fn remove_lot(shared: State<'_, Shared>, item: &str, owner: &str) -> Reply<View> {
    let mut desk = shared.desk();
    desk.remove_lot(item, owner).map_err(trouble)?;
    Ok(desk.view())
}

/// Books the load list of the course for its days.
#[tauri::command(async)]
pub(crate) fn book_kit(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.book_kit().map_err(trouble)?;
    Ok(desk.view())
}

/// Lets go of what the course has booked.
#[tauri::command(async)]
pub(crate) fn release_kit(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.release_kit().map_err(trouble)?;
    Ok(desk.view())
}

/// Counts the kit of the course home.
#[tauri::command(async)]
pub(crate) fn kit_home(shared: State<'_, Shared>, returns: Vec<ReturnTyped>) -> Reply<CountedHome> {
    shared.desk().kit_home(&returns).map_err(trouble)
}

/// Takes counting home back.
#[tauri::command(async)]
pub(crate) fn kit_not_home(shared: State<'_, Shared>) -> Reply<View> {
    let mut desk = shared.desk();
    desk.kit_not_home().map_err(trouble)?;
    Ok(desk.view())
}

/// What taking in a kit list would change; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn look_at_kit_list(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<KitListPreview>> {
    let Some(file) = ask::kit_list_to_take_in(&app) else {
        return Ok(None);
    };
    let preview = shared.desk().look_at_kit_list(&file).map_err(trouble)?;
    Ok(Some(preview))
}

/// Takes in the kit list that was looked at last.
#[tauri::command(async)]
pub(crate) fn take_in_kit_list(shared: State<'_, Shared>, replace: bool) -> Reply<View> {
    let mut desk = shared.desk();
    desk.take_in_kit_list(replace).map_err(trouble)?;
    Ok(desk.view())
}

/// Writes the kit list to a file and gives its name; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn export_kit_list(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<String>> {
    let Some(file) = ask::where_to_export(&app) else {
        return Ok(None);
    };
    shared.desk().export_kit_list(&file).map_err(trouble)?;
    Ok(Some(file.display().to_string()))
}

/// Changes a kit rule for this course, or for good.
#[tauri::command(async)]
pub(crate) fn change_rule(
    shared: State<'_, Shared>,
    item: &str,
    keys: Vec<RuleKey>,
    for_good: bool,
) -> Reply<View> {
    let mut desk = shared.desk();
    let changed = if for_good {
        desk.change_rule_for_good(item, &keys)
    } else {
        desk.change_rule(item, &keys)
    };
    changed.map_err(trouble)?;
    Ok(desk.view())
}

/// Takes back what this course, or the instructor for good, changed of a kit rule.
#[tauri::command(async)]
pub(crate) fn take_back_rule(shared: State<'_, Shared>, item: &str, for_good: bool) -> Reply<View> {
    let mut desk = shared.desk();
    let taken_back = if for_good {
        desk.take_back_rule_for_good(item)
    } else {
        desk.take_back_rule(item)
    };
    taken_back.map_err(trouble)?;
    Ok(desk.view())
}
