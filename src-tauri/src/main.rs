//! The desktop program: one window over the same crates as the terminal program.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

mod ahead;
mod apart;
mod aside;
mod ask;
mod begin;
mod calendar;
mod claim;
mod commands;
mod desk;
mod drawn;
mod drops;
mod edits;
mod engine;
mod handles;
mod history;
mod journal;
mod keeping;
mod kit;
mod leads;
mod leaving;
mod lessons;
mod naming;
mod opened;
mod outside;
mod pace_book;
mod pace_file;
mod paper;
mod print_job;
mod printer;
mod recent;
mod renewal;
mod shown;
mod stored;
mod switches;
mod ticks;
mod watching;

use desk::Desk;
use keeping::{AtDesk, Keeping};
use renewal::Renewal;
use shapes::window::{Dropped, Renewed, Trouble, View};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;
use std::sync::mpsc::Receiver;
use std::sync::{Arc, Mutex, PoisonError};
use tauri::ipc::Channel;
use tauri::{DragDropEvent, Manager, WebviewUrl, WebviewWindowBuilder, WindowEvent};

/// Setting a page asks for memory some ten thousands of times, and the C library takes longer about it.
#[cfg(unix)]
#[global_allocator]
static ALLOCATOR: tikv_jemallocator::Jemalloc = tikv_jemallocator::Jemalloc;

/// The desk every command works at.
pub(crate) struct Shared {
    desk: Mutex<Desk>,
    /// What keeps the open course from being lost.
    pub(crate) keeping: Keeping,
    /// The view that was told last by what it changed.
    renewal: Mutex<Renewal>,
    /// Why the file the program was started with is not on the desk; told once.
    refused: Mutex<Option<Trouble>>,
    /// The print that runs shall end after the document that is being set.
    pub(crate) stop_print: Arc<AtomicBool>,
    /// Where the window hears of what is dropped onto it.
    pub(crate) drops: Mutex<Option<Channel<Dropped>>>,
    /// The course that was dropped and is not open yet.
    pub(crate) course_dropped: Mutex<Option<PathBuf>>,
}

impl Shared {
    /// A desk with the course of a file on it. If the file is refused the window says so,
    /// and what lies on the desk meanwhile is the example.
    fn set_up(file: Option<PathBuf>, folder: &Path) -> Result<(Self, Receiver<()>), files::Error> {
        let (desk, refused) = match Desk::set_up(file, folder) {
            Ok(desk) => (desk, None),
            Err(refused) => (Desk::set_up(None, folder)?, Some(refused)),
        };
        let refused = refused.map(|it| shown::trouble(it.into()));
        let (keeping, poked) = Keeping::new(&desk);
        let shared = Self {
            desk: Mutex::new(desk),
            keeping,
            renewal: Mutex::default(),
            refused: Mutex::new(refused),
            stop_print: Arc::default(),
            drops: Mutex::default(),
            course_dropped: Mutex::default(),
        };
        Ok((shared, poked))
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

    /// A view as what it changes of the one of the number the window knows; whole where that is another.
    pub(crate) fn renewed(&self, known: Option<u32>, view: &View) -> Result<Renewed, Trouble> {
        let mut renewal = self.renewal.lock().unwrap_or_else(PoisonError::into_inner);
        let told = renewal.of(known, view);
        told.map_err(|wrong| shown::trouble(desk::Error::Show(wrong.to_string())))
    }

    /// The desk, for one command at a time. A command that failed half-way leaves it sound,
    /// because a desk is changed only by putting a finished one in its place.
    pub(crate) fn desk(&self) -> AtDesk<'_> {
        AtDesk::new(&self.desk, &self.keeping)
    }
}

fn main() -> ExitCode {
    if apart::is_asked_for() {
        return apart::serve();
    }
    switches::set();
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
            let file = opened::asked_for(app);
            if file
                .as_deref()
                .is_some_and(|it| claim::other_window_answers(&folder, it))
            {
                app.handle().exit(0);
                return Ok(());
            }
            let (shared, poked) = Shared::set_up(file, &folder)?;
            app.manage(shared);
            open_window(app)?;
            watching::watch(app.handle().clone(), poked);
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            commands::start,
            commands::open,
            commands::courses::your_courses,
            commands::courses::course_readiness,
            commands::courses::forget_course,
            commands::courses::open_course,
            commands::courses::open_example,
            commands::courses::begin_choices,
            commands::courses::check_answers,
            commands::courses::begin_course,
            commands::courses::course_again,
            commands::edit,
            commands::advise,
            commands::look_at,
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
            commands::ticks::ticks,
            commands::ticks::keep_ticks,
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
            commands::drops::hear_of_drops,
            commands::drops::open_dropped,
            commands::drops::look_at_roster,
            commands::drops::take_in_roster,
            commands::lessons::lesson_shelf,
            commands::lessons::lesson,
            commands::lessons::new_lesson,
            commands::lessons::change_lesson,
            commands::lessons::preview_lesson,
            commands::lessons::save_lesson,
            commands::lessons::take_lesson_away,
            commands::pace::pace_book,
            commands::pace::record_pace,
            commands::pace::take_back_pace,
            commands::pace::take_back_pace_of,
            commands::pace::look_at_pace_file,
            commands::pace::take_in_pace_file,
            commands::pace::export_pace_book,
            commands::undo,
            commands::redo,
            commands::save,
            commands::save_as,
            commands::keeping::keeping,
            commands::keeping::take_kept,
            commands::keeping::leave_kept,
            commands::keeping::read_anew,
            commands::keeping::keep_mine,
            commands::keeping::save_over,
            commands::pages::documents,
            commands::pages::preview_page,
            commands::pages::leave_pages,
            commands::pages::print_folder,
            commands::pages::choose_print_folder,
            commands::pages::print,
            commands::pages::stop_print,
            commands::paper::paper_sheets,
            commands::paper::print_sheets,
            commands::pages::show_printed,
            commands::words::reasons,
            commands::words::words,
            commands::words::sketch,
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
        // The list of open windows tells two courses apart by it. A title that can't be set does no
        // harm.
        .on_document_title_changed(|window, title| drop(window.set_title(&title)))
        .build()?;
    engine::set_up(&window)?;
    let closing = window.clone();
    window.on_window_event(move |event| match event {
        WindowEvent::DragDrop(DragDropEvent::Drop { paths, .. }) => {
            commands::drops::dropped(&closing, paths.clone());
        }
        WindowEvent::CloseRequested { api, .. }
            if closing.state::<Shared>().desk().would_be_lost() =>
        {
            api.prevent_close();
            leaving::before_closing(&closing);
        }
        WindowEvent::Focused(true) => closing.state::<Shared>().keeping.look_now(),
        _ => {}
    });
    Ok(())
}
