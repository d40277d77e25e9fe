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
        Error::Show(why) => plain("can-not-show", format!("This can't be shown: {why}"), ""),
    }
}

fn plain(code: &str, what: String, cure: &str) -> Trouble {
    Trouble {
        code: code.to_owned(),
        key: String::new(),
        what,
        cure: cure.to_owned(),
    }
}
