//! Runs Tauri's build step. Naming the commands denies each to the window until the
//! capability allows it.

const COMMANDS: &[&str] = &[
    "start",
    "open",
    "edit",
    "advise",
    "add_day",
    "remove_day",
    "add_break",
    "remove_break",
    "add_stretch",
    "add_survey",
    "remove_row",
    "change_rule",
    "take_back_rule",
    "kit_store",
    "put_lot",
    "remove_lot",
    "book_kit",
    "release_kit",
    "kit_home",
    "kit_not_home",
    "look_at_kit_list",
    "take_in_kit_list",
    "export_kit_list",
    "mark",
    "add_vehicle",
    "remove_vehicle",
    "add_rain",
    "remove_rain",
    "wish",
    "write_calendar",
    "add_absence",
    "remove_absence",
    "tell",
    "untell",
    "pace_book",
    "record_pace",
    "take_back_pace",
    "undo",
    "redo",
    "save",
    "save_as",
    "documents",
    "preview_page",
    "print_folder",
    "choose_print_folder",
    "print",
    "stop_print",
    "show_printed",
];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let manifest = tauri_build::AppManifest::new().commands(COMMANDS);
    tauri_build::try_build(tauri_build::Attributes::new().app_manifest(manifest))?;
    Ok(())
}
