//! The system asks for a printer: the dialogue in which one is chosen, and what came of it.
//!
//! What is printed is the window's own page, whose style for print shows nothing but the sheets
//! that were set for it.

use crate::desk::Error;
use shapes::window::PaperEnd;
use std::path::PathBuf;
use tauri::WebviewWindow;

/// What the dialogue begins with.
pub(crate) struct Wish {
    /// US Letter; A4 otherwise.
    pub(crate) letter: bool,
    /// Beside this folder, and under its name, a file is offered.
    pub(crate) beside: Option<PathBuf>,
}

/// Shows the dialogue. On Linux it answers when the printer has the pages or nobody wants them
/// any more; elsewhere the dialogue is still open.
#[cfg(target_os = "linux")]
pub(crate) async fn asked(window: &WebviewWindow, wish: Wish) -> Result<PaperEnd, Error> {
    let (end, ended) = tokio::sync::oneshot::channel();
    window
        .with_webview(move |webview| linux::ask(&webview.inner(), &wish, end))
        .map_err(|wrong| Error::Printer(wrong.to_string()))?;
    // Without an answer the window has gone.
    ended.await.unwrap_or(Ok(PaperEnd::NotSent))
}

/// See above.
#[cfg(not(target_os = "linux"))]
pub(crate) async fn asked(window: &WebviewWindow, _wish: Wish) -> Result<PaperEnd, Error> {
    window
        .print()
        .map(|()| PaperEnd::Asking)
        .map_err(|wrong| Error::Printer(wrong.to_string()))
}

#[cfg(target_os = "linux")]
mod linux {
    use super::{Error, PaperEnd, Wish};
    use gtk::prelude::*;
    use std::cell::RefCell;
    use std::rc::Rc;
    use tokio::sync::oneshot::Sender;
    use webkit2gtk::{PrintOperation, PrintOperationExt, PrintOperationResponse, WebView};

    type End = Result<PaperEnd, Error>;

    /// The engine does not ask the page for its paper and its margins, so that they are said
    /// here. The pages bring margins of their own.
    fn page_setup(letter: bool) -> gtk::PageSetup {
        let size = if letter { "na_letter" } else { "iso_a4" };
        let setup = gtk::PageSetup::new();
        setup.set_paper_size(&gtk::PaperSize::new(Some(size)));
        setup.set_top_margin(0.0, gtk::Unit::Points);
        setup.set_bottom_margin(0.0, gtk::Unit::Points);
        setup.set_left_margin(0.0, gtk::Unit::Points);
        setup.set_right_margin(0.0, gtk::Unit::Points);
        setup
    }

    /// One side of the paper, or a document would begin on the back of another.
    fn settings(wish: &Wish) -> gtk::PrintSettings {
        let settings = gtk::PrintSettings::new();
        settings.set("duplex", Some("simplex"));
        if let Some(folder) = &wish.beside {
            let text = |part: &std::ffi::OsStr| part.to_string_lossy().into_owned();
            let name = folder.file_name().map(text);
            let within = folder.parent().map(|it| text(it.as_os_str()));
            settings.set("output-basename", name.as_deref());
            settings.set("output-dir", within.as_deref());
        }
        settings
    }

    /// Waits in the dialogue; the pages go to the printer after it.
    pub(super) fn ask(webview: &WebView, wish: &Wish, end: Sender<End>) {
        let operation = PrintOperation::new(webview);
        operation.set_page_setup(&page_setup(wish.letter));
        operation.set_print_settings(&settings(wish));
        // Whichever comes first tells; a failure is followed by the end of the operation.
        let end = Rc::new(RefCell::new(Some(end)));
        let tell = move |what: End| {
            if let Some(end) = end.borrow_mut().take() {
                // Whoever asked may have gone.
                let _ = end.send(what);
            }
        };
        let failed = tell.clone();
        operation.connect_failed(move |_, why| failed(Err(Error::Printer(why.to_string()))));
        let finished = tell.clone();
        operation.connect_finished(move |_| finished(Ok(PaperEnd::Sent)));
        let window = webview
            .toplevel()
            .and_then(|it| it.downcast::<gtk::Window>().ok());
        if operation.run_dialog(window.as_ref()) == PrintOperationResponse::Cancel {
            tell(Ok(PaperEnd::NotSent));
        }
    }
}
