//! The desktop program: one window over the same crates as the terminal program.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

mod apart;
mod ask;
mod calendar;
mod commands;
mod desk;
mod edits;
mod history;
mod kit;
mod opened;
mod pace_book;
mod print_job;
mod shown;
mod stored;

use desk::Desk;
use shapes::window::Trouble;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tauri::{Manager, WebviewUrl, WebviewWindowBuilder, WindowEvent};

/// The desk every command works at.
pub(crate) struct Shared {
    desk: Mutex<Desk>,
    /// Why the file the program was started with is not on the desk; told once.
    refused: Mutex<Option<Trouble>>,
    /// The print that runs shall end after the document that is being set.
    pub(crate) stop_print: Arc<AtomicBool>,
}

impl Shared {
    /// A desk with the course of a file on it. If the file is refused the window says so,
    /// and what lies on the desk meanwhile is the example.
    fn set_up(file: Option<PathBuf>, folder: &Path) -> Result<Self, files::Error> {
        let (desk, refused) = match Desk::set_up(file, folder) {
            Ok(desk) => (desk, None),
            Err(refused) => (Desk::set_up(None, folder)?, Some(refused)),
        };
        let refused = refused.map(|it| shown::trouble(it.into()));
        Ok(Self {
            desk: Mutex::new(desk),
            refused: Mutex::new(refused),
            stop_print: Arc::default(),
        })
    }

    /// Keeps why a file was refused until the window asks.
    pub(crate) fn refuse(&self, why: Trouble) {
        *self.refused.lock().unwrap_or_else(PoisonError::into_inner) = Some(why);
    }

    /// Why the program's file was refused, the first time this is asked.
    pub(crate) fn refused(&self) -> Option<Trouble> {
        self.refused
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take()
    }

    /// The desk, for one command at a time. A command that failed half-way leaves it sound,
    /// because a desk is changed only by putting a finished one in its place.
    pub(crate) fn desk(&self) -> MutexGuard<'_, Desk> {
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn main() -> ExitCode {
    if apart::is_asked_for() {
        return apart::serve();
    }
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(wrong) => {
            use std::io::Write;
            let _ = writeln!(std::io::stderr(), "{wrong}");
            ExitCode::from(2)
        }
    }
}

fn run() -> Result<(), Box<dyn std::error::Error>> {
    tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .setup(|app| {
            let folder = app.path().app_data_dir()?;
            app.manage(Shared::set_up(opened::asked_for(app), &folder)?);
            open_window(app)?;
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            commands::start,
            commands::open,
            commands::edit,
            commands::advise,
            commands::add_day,
            commands::remove_day,
            commands::add_break,
            commands::remove_break,
            commands::add_stretch,
            commands::add_survey,
            commands::remove_row,
            commands::kit::change_rule,
            commands::kit::take_back_rule,
            commands::kit::kit_store,
            commands::kit::put_lot,
            commands::kit::remove_lot,
            commands::kit::book_kit,
            commands::kit::release_kit,
            commands::kit::kit_home,
            commands::kit::kit_not_home,
            commands::kit::look_at_kit_list,
            commands::kit::take_in_kit_list,
            commands::kit::export_kit_list,
            commands::mark,
            commands::add_vehicle,
            commands::remove_vehicle,
            commands::day::add_rain,
            commands::day::remove_rain,
            commands::day::wish,
            commands::day::write_calendar,
            commands::day::add_absence,
            commands::day::remove_absence,
            commands::day::tell,
            commands::day::untell,
            commands::pace::pace_book,
            commands::pace::record_pace,
            commands::pace::take_back_pace,
            commands::undo,
            commands::redo,
            commands::save,
            commands::save_as,
            commands::pages::documents,
            commands::pages::preview_page,
            commands::pages::print_folder,
            commands::pages::choose_print_folder,
            commands::pages::print,
            commands::pages::stop_print,
            commands::pages::show_printed,
        ])
        .build(tauri::generate_context!())?
        .run(opened::hear);
    Ok(())
}

/// The one window: it shows only the program's own pages and opens no other.
fn open_window(app: &tauri::App) -> tauri::Result<()> {
    let window = WebviewWindowBuilder::new(app, "main", WebviewUrl::default())
        .title("Coursewright")
        .inner_size(1280.0, 800.0)
        .min_inner_size(640.0, 480.0)
        .on_navigation(|to| to.scheme() == "tauri" || to.host_str() == Some("tauri.localhost"))
        .on_new_window(|_, _| tauri::webview::NewWindowResponse::Deny)
        .build()?;
    let closing = window.clone();
    window.on_window_event(move |event| {
        if let WindowEvent::CloseRequested { api, .. } = event
            && closing.state::<Shared>().desk().unsaved()
        {
            api.prevent_close();
            ask::before_closing(&closing);
        }
    });
    Ok(())
}
