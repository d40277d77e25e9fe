//! The one shape in which any refusal reaches the window.

use crate::desk::Error;
use documents::Replaced;
use files::{Library, Refusal};
use shapes::window::Trouble;

pub(crate) fn trouble(error: Error) -> Trouble {
    match error {
        Error::Fault(fault) => Trouble {
            code: fault.code.to_owned(),
            key: fault.key,
            what: fault.what,
            cure: fault.cure,
        },
        Error::Files(files::Error::Refused(refusal)) => Trouble {
            key: refusal.key.clone(),
            ..at_its_line(&refusal)
        },
        Error::Files(error) => plain(error.code(), error.to_string(), ""),
        Error::Print(error) => plain(error.code(), error.to_string(), ""),
        Error::ChangedOutside(path) => plain(
            "changed-outside",
            format!(
                "{} has been changed by another program since it was opened.",
                path.display()
            ),
            "Nothing was overwritten. Save under another name, or open the file again.",
        ),
        Error::InOtherWindow(path) => plain(
            "in-other-window",
            format!("{} is open in another window.", path.display()),
            "It has been brought to the front. Nothing has changed here.",
        ),
        Error::OpenElsewhere(path) => plain(
            "open-elsewhere",
            format!(
                "{} is open in another window, and that one saves it.",
                path.display()
            ),
            "Nothing was overwritten. Save under another name, or close the other window first.",
        ),
        Error::NothingKept => plain(
            "nothing-kept",
            "These changes are no longer kept: another window has taken or left them.".to_owned(),
            "",
        ),
        Error::NoDocument(name) => plain(
            "no-document",
            format!("There is no document {name}."),
            "Choose one of the list.",
        ),
        Error::NoFolder => plain(
            "no-folder",
            "There is no folder to print into yet.".to_owned(),
            "Save the course, or choose a folder.",
        ),
        Error::Printer(why) => plain(
            "printer",
            format!("The pages did not reach the printer: {why}."),
            "See that it is on and has paper, or print into a folder and print from there.",
        ),
        Error::Store(error) => Trouble {
            key: match &error {
                store::Error::MoreThanBooked { item, .. } => format!("back.{item}"),
                _ => String::new(),
            },
            ..told(error.code(), &error.to_string())
        },
        Error::NoStore(why) => told("no-store", &why),
        Error::NeverSaved => plain(
            "never-saved",
            "This course has not been saved yet, so the kit store can't know it.".to_owned(),
            "Save it first.",
        ),
        Error::NothingTold => plain(
            "nothing-told",
            "Nothing has been told of this course yet, so there is no pace to record.".to_owned(),
            "Tell on the day how far each stage has come; the time of day comes with it.",
        ),
        Error::NotARoster(faults) => plain(
            "not-a-roster",
            "This list can't be taken in.".to_owned(),
            &faults.join("\n"),
        ),
        Error::NotTyped(wrong) => Trouble {
            code: "not-typed".to_owned(),
            key: wrong.field,
            what: wrong.what,
            cure: wrong.cure.to_owned(),
        },
        Error::Show(why) => plain("can-not-show", format!("This can't be shown: {why}"), ""),
    }
}

/// What of the instructor's own could not be used: their lessons, their templates that could not
/// be read, and those that failed.
pub(crate) fn own(library: &Library, replaced: &[Replaced]) -> Vec<Trouble> {
    let lessons = library.faults.iter().map(at_its_line);
    let unread = library.pages_unread.iter().map(|what| {
        let cure = "The built-in page template is used.";
        plain("can-not-read-page", what.clone(), cure)
    });
    let failed = replaced.iter().map(|it| {
        let title = documents::named(it.document).map_or(it.document, |it| it.title);
        let cure = "This is the built-in page.";
        plain(it.why.code(), format!("{title}: {}", it.why), cure)
    });
    lessons.chain(unread).chain(failed).collect()
}

/// A refusal with its file and its line, about no field of the window.
fn at_its_line(refusal: &Refusal) -> Trouble {
    Trouble {
        code: refusal.code.to_owned(),
        key: String::new(),
        what: format!("{}, line {}: {}", refusal.file, refusal.line, refusal.what),
        cure: refusal.cure.clone(),
    }
}

/// A message of several lines: the first is what is wrong, the others what would be right.
fn told(code: &str, message: &str) -> Trouble {
    let (what, cure) = message.split_once('\n').unwrap_or((message, ""));
    plain(code, what.to_owned(), cure)
}

pub(crate) fn plain(code: &str, what: String, cure: &str) -> Trouble {
    Trouble {
        code: code.to_owned(),
        key: String::new(),
        what,
        cure: cure.to_owned(),
    }
}
