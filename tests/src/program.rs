//! The terminal program as it was built, run from outside.

use std::path::PathBuf;
use std::process::{Command, Output};

/// What a run of the program left behind.
pub struct Ran {
    /// The exit code; none if a signal ended it.
    pub code: Option<i32>,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

/// The built program.
pub fn path() -> PathBuf {
    let this = std::env::current_exe().expect("a check knows where it is");
    let folder = this.parent().and_then(|deps| deps.parent());
    let name = format!("coursewright{}", std::env::consts::EXE_SUFFIX);
    let program = folder.expect("the folder of built programs").join(name);
    assert!(
        program.is_file(),
        "{} is not there: run cargo build --bin coursewright first",
        program.display()
    );
    program
}

/// Runs the program; it must not panic, whatever it is asked.
pub fn run<A: AsRef<std::ffi::OsStr>>(arguments: &[A]) -> Ran {
    finish(Command::new(path()).args(arguments).output())
}

/// What a finished run left behind.
pub fn finish(output: std::io::Result<Output>) -> Ran {
    let output = output.expect("the program runs");
    let ran = Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("text"),
        err: String::from_utf8(output.stderr).expect("text"),
    };
    assert!(!ran.err.contains("panicked"), "{}", ran.err);
    ran
}
