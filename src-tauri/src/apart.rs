//! A second run of this program, which sets the instructor's own page templates: one that does
//! not end can be ended with it.

use press::{Apart, Limits, Press};
use std::process::ExitCode;

/// The argument by which this program runs itself a second time. No course file is called so.
const APART: &str = "--set-apart";

/// A press that can try the instructor's own templates in a second run.
pub(crate) fn press() -> Press {
    match std::env::current_exe() {
        Ok(this) => Press::new().beside(Apart::new(this, &[APART], Limits::default())),
        // Where a program can't know its own file its own templates are trusted.
        Err(_) => Press::new(),
    }
}

pub(crate) fn is_asked_for() -> bool {
    std::env::args_os().nth(1).is_some_and(|it| it == APART)
}

/// The second run: no window, only pages.
pub(crate) fn serve() -> ExitCode {
    match press::serve(std::io::stdin(), &mut std::io::stdout().lock()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}
