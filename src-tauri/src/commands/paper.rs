//! The commands of printing on paper: the pages are set and held by the window, then the system
//! asks for a printer.

use super::Reply;
use super::pages::away_from_the_desk;
use crate::Shared;
use crate::aside::PRINTED;
use crate::printer::{self, Wish};
use crate::shown::trouble;
use shapes::window::{PagesAsked, PaperEnd, PaperSheets, Printing};
use std::sync::atomic::Ordering;
use tauri::ipc::Channel;
use tauri::{State, WebviewWindow};

/// Every page of these documents, and tells how far it has come; null if it was stopped.
#[tauri::command]
pub(crate) async fn paper_sheets(
    shared: State<'_, Shared>,
    names: Vec<String>,
    asked: PagesAsked,
    told: Channel<Printing>,
) -> Reply<Option<PaperSheets>> {
    let job = shared.desk().print_job(asked).map_err(trouble)?;
    let stop = shared.stop_print.clone();
    stop.store(false, Ordering::Relaxed);
    away_from_the_desk(&PRINTED, move || {
        job.sheets(&names, |printing| {
            // A window that no longer listens does not end a print.
            let _ = told.send(printing);
            !stop.load(Ordering::Relaxed)
        })
    })
    .await
}

/// The system asks for a printer, and prints what the window holds ready.
#[tauri::command]
pub(crate) async fn print_sheets(
    window: WebviewWindow,
    shared: State<'_, Shared>,
    letter: bool,
) -> Reply<PaperEnd> {
    // Where somebody prints into a file, it is offered beside the pages of the folder.
    let beside = shared.desk().print_folder();
    printer::asked(&window, Wish { letter, beside })
        .await
        .map_err(trouble)
}
