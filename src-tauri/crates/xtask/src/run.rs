//! Running other programs: shown before they run, and heard when they fail.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Why a chore stopped, as a sentence.
pub(crate) type Done = Result<(), String>;

/// The folder of the workspace.
pub(crate) fn top() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(3).unwrap_or(here).to_owned()
}

/// Says a line on the error stream, which keeps the output of what is run clean.
pub(crate) fn say(line: &str) {
    let _ = writeln!(std::io::stderr(), "{line}");
}

/// A program to be run from the top of the workspace.
pub(crate) fn program(name: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(name);
    command.args(arguments).current_dir(top());
    command
}

/// Cargo, as the one that runs this.
pub(crate) fn cargo(arguments: &[&str]) -> Command {
    program(
        &std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned()),
        arguments,
    )
}

/// npm, in the folder of the window.
pub(crate) fn npm(arguments: &[&str]) -> Command {
    let mut command = program("npm", arguments);
    command.current_dir(top().join("ui"));
    command
}

/// Runs a program to its end.
pub(crate) fn run(mut command: Command) -> Done {
    let shown = shown(&command);
    say(&format!("> {shown}"));
    let status = command
        .status()
        .map_err(|wrong| format!("{shown}: can't be run: {wrong}"))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("{shown}: failed"))
    }
}

/// Runs a program to its end and hears what it says; it is shown only when it fails.
pub(crate) fn heard(command: &mut Command) -> Result<String, String> {
    let output = command
        .output()
        .map_err(|wrong| format!("{}: can't be run: {wrong}", shown(command)))?;
    if output.status.success() {
        return String::from_utf8(output.stdout)
            .map_err(|_| format!("{}: did not answer in text", shown(command)));
    }
    let said = String::from_utf8_lossy(&output.stderr);
    Err(format!("{}: failed\n{}", shown(command), said.trim_end()))
}

/// Whether a program ends well; nothing of it is shown.
pub(crate) fn succeeds(mut command: Command) -> bool {
    command.output().is_ok_and(|output| output.status.success())
}

fn shown(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words
        .map(|word| word.to_string_lossy())
        .collect::<Vec<_>>()
        .join(" ")
}
