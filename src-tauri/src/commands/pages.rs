//! The commands of the pages: looked at, printed, stopped, shown in their folder.

use super::Reply;
use crate::ahead::PageWanted;
use crate::aside::{Aside, PRINTED, Waiting};
use crate::desk::Error;
use crate::shown::trouble;
use crate::{Shared, ask};
use shapes::window::{Document, PagePreview, PagesAsked, Printed, Printing};
use std::sync::atomic::Ordering;
use tauri::ipc::Channel;
use tauri::{AppHandle, State};

/// The documents there are.
#[tauri::command(async)]
pub(crate) fn documents(shared: State<'_, Shared>) -> Vec<Document> {
    let desk = shared.desk();
    let shape = |it: &documents::Document| Document {
        name: it.name.to_owned(),
        title: it.title.to_owned(),
        what: it.what.to_owned(),
        private: it.is_private(),
        wanted: it.wanted(&desk.course),
    };
    documents::DOCUMENTS.iter().map(shape).collect()
}

/// One page of a document of the course as it is now.
#[tauri::command]
pub(crate) async fn preview_page(
    shared: State<'_, Shared>,
    document: String,
    page: usize,
    asked: PagesAsked,
) -> Reply<PagePreview> {
    let wanted = PageWanted {
        document,
        page,
        asked,
    };
    let begun = shared.desk().page(wanted).map_err(trouble)?;
    told(begun).await
}

/// Pages have been out of sight for a while.
#[tauri::command(async)]
pub(crate) fn leave_pages(shared: State<'_, Shared>) {
    shared.desk().leave_pages();
}

/// Where pages would go; null if a folder must be chosen first.
#[tauri::command]
pub(crate) fn print_folder(shared: State<'_, Shared>) -> Option<String> {
    shared
        .desk()
        .print_folder()
        .map(|folder| folder.display().to_string())
}

/// Where pages shall go; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn choose_print_folder(
    app: AppHandle,
    shared: State<'_, Shared>,
) -> Reply<Option<String>> {
    let Some(folder) = ask::where_to_print(&app) else {
        return Ok(None);
    };
    let shown = folder.display().to_string();
    shared.desk().print_into(folder);
    Ok(Some(shown))
}

/// Prints documents into the folder, and tells how far it has come.
#[tauri::command]
pub(crate) async fn print(
    shared: State<'_, Shared>,
    names: Vec<String>,
    asked: PagesAsked,
    told: Channel<Printing>,
) -> Reply<Printed> {
    let (job, folder) = {
        let mut desk = shared.desk();
        let folder = desk
            .print_folder()
            .ok_or_else(|| trouble(Error::NoFolder))?;
        (desk.print_job(asked).map_err(trouble)?, folder)
    };
    let stop = shared.stop_print.clone();
    stop.store(false, Ordering::Relaxed);
    let into = folder.clone();
    let printed = away_from_the_desk(&PRINTED, move || {
        let pack = job.run(&names, &into, |printing| {
            // A window that no longer listens does not end a print.
            let _ = told.send(printing);
            !stop.load(Ordering::Relaxed)
        })?;
        let name = |file: &std::path::PathBuf| {
            file.file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default()
        };
        Ok(Printed {
            folder: into.display().to_string(),
            files: pack.files.iter().map(name).collect(),
            pages: pack.pages,
            left: names.len().saturating_sub(pack.files.len()),
            unprintable: pack.unprintable.iter().collect(),
            own: job.own(&pack),
        })
    })
    .await?;
    shared.desk().printed(folder);
    Ok(printed)
}

/// Ends a print after the document that is being set.
#[tauri::command]
pub(crate) fn stop_print(shared: State<'_, Shared>) {
    shared.stop_print.store(true, Ordering::Relaxed);
}

/// Opens the folder of the last print.
#[tauri::command]
pub(crate) async fn show_printed(shared: State<'_, Shared>) -> Reply<()> {
    let folder = shared
        .desk()
        .last_print()
        .ok_or_else(|| trouble(Error::NoFolder))?;
    opener::open(folder).map_err(|wrong| trouble(Error::Show(wrong.to_string())))
}

/// Does what takes long on a thread beside the desk.
pub(super) async fn away_from_the_desk<T: Send + 'static>(
    aside: &Aside,
    work: impl FnOnce() -> Result<T, Error> + Send + 'static,
) -> Reply<T> {
    told(aside.begin(work)).await
}

async fn told<T>(begun: Waiting<Result<T, Error>>) -> Reply<T> {
    let broken = || Error::Show("setting the page broke down".to_owned());
    let done = begun.done().await;
    done.unwrap_or_else(|| Err(broken())).map_err(trouble)
}
