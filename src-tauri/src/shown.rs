//! The one shape in which any refusal reaches the window.

use crate::desk::Error;
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
            code: refusal.code.to_owned(),
            key: refusal.key.clone(),
            what: format!("{}, line {}: {}", refusal.file, refusal.line, refusal.what),
            cure: refusal.cure.clone(),
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
        Error::NoFolder => plain(
            "no-folder",
            "There is no folder to print into yet.".to_owned(),
            "Save the course, or choose a folder.",
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
        Error::NotTyped(wrong) => Trouble {
            code: "not-typed".to_owned(),
            key: wrong.field,
            what: wrong.what,
            cure: wrong.cure.to_owned(),
        },
        Error::Show(why) => plain("can-not-show", format!("This can't be shown: {why}"), ""),
    }
}

/// A message of several lines: the first is what is wrong, the others what would be right.
fn told(code: &str, message: &str) -> Trouble {
    let (what, cure) = message.split_once('\n').unwrap_or((message, ""));
    plain(code, what.to_owned(), cure)
}

fn plain(code: &str, what: String, cure: &str) -> Trouble {
    Trouble {
        code: code.to_owned(),
        key: String::new(),
        what,
        cure: cure.to_owned(),
    }
}
