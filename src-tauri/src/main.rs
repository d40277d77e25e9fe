//! The desktop program: one window over the same crates as the terminal program.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

mod ask;
mod commands;
mod desk;
mod shown;

use desk::Desk;
use std::process::ExitCode;
use std::sync::{Mutex, MutexGuard, PoisonError};
use tauri::{Manager, WebviewUrl, WebviewWindowBuilder, WindowEvent};

/// The desk every command works at.
pub(crate) struct Shared(Mutex<Desk>);

impl Shared {
    /// The desk, for one command at a time. A command that failed half-way leaves it sound,
    /// because a desk is changed only by putting a finished one in its place.
    pub(crate) fn desk(&self) -> MutexGuard<'_, Desk> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn main() -> ExitCode {
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
    let file = std::env::args_os().nth(1).map(Into::into);
    let desk = Desk::set_up(file)?;
    tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .manage(Shared(Mutex::new(desk)))
        .setup(|app| {
            open_window(app)?;
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            commands::start,
            commands::open,
            commands::edit,
            commands::add_day,
            commands::remove_day,
            commands::undo,
            commands::redo,
            commands::save,
            commands::save_as,
            commands::documents,
            commands::print_folder,
            commands::choose_print_folder,
            commands::print,
            commands::show_printed,
        ])
        .run(tauri::generate_context!())?;
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
