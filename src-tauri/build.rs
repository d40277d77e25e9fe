//! Runs Tauri's build step. Naming the commands denies each to the window until the
//! capability allows it.

const COMMANDS: &[&str] = &[
    "start",
    "open",
    "edit",
    "add_day",
    "remove_day",
    "add_break",
    "remove_break",
    "add_stretch",
    "add_survey",
    "remove_row",
    "undo",
    "redo",
    "save",
    "save_as",
    "documents",
    "print_folder",
    "choose_print_folder",
    "print",
    "show_printed",
];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let manifest = tauri_build::AppManifest::new().commands(COMMANDS);
    tauri_build::try_build(tauri_build::Attributes::new().app_manifest(manifest))?;
    Ok(())
}
