//! The manual pages and shell completions, made from what the command line really takes.
//!
//! Both are asked of the built program, so that they always belong to it: the package and those
//! who build for themselves get the same ones.

use crate::arguments::Arguments;
use clap::{Command, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;
use std::error::Error;
use std::io;
use std::path::Path;
use std::process::ExitCode;

/// Writes a page for the program and one for each of its calls into a folder.
pub(crate) fn pages(folder: &Path) -> Result<ExitCode, Box<dyn Error>> {
    let mut all = Arguments::command().disable_help_subcommand(true);
    // A call under another then knows its whole name.
    all.build();
    std::fs::create_dir_all(folder)
        .and_then(|()| write(&all, folder))
        .map_err(|wrong| {
            format!(
                "{}: can't be written: {wrong}\nname a folder you may write to",
                folder.display()
            )
        })?;
    Ok(ExitCode::SUCCESS)
}

/// Writes the page of a call and those of all under it.
fn write(call: &Command, folder: &Path) -> io::Result<()> {
    let page = Man::new(call.clone())
        .source(concat!("coursewright ", env!("CARGO_PKG_VERSION")))
        .manual("Coursewright");
    std::fs::write(folder.join(page.get_filename()), text(&page, call)?)?;
    call.get_subcommands()
        .filter(|it| !it.is_hide_set())
        .try_for_each(|it| write(it, folder))
}

fn text(page: &Man, call: &Command) -> io::Result<Vec<u8>> {
    let mut text = Vec::new();
    page.render_title(&mut text)?;
    page.render_name_section(&mut text)?;
    page.render_synopsis_section(&mut text)?;
    page.render_description_section(&mut text)?;
    page.render_options_section(&mut text)?;
    if call.has_subcommands() {
        page.render_subcommands_section(&mut text)?;
    }
    if let Some(notes) = call.get_after_help() {
        // Its lines stand as they were written: some are calls to be copied.
        let notes = as_it_stands(&notes.to_string());
        text.extend(format!(".SH NOTES\n.nf\n{notes}\n.fi\n").bytes());
    }
    Ok(text)
}

/// Text that a manual page shows letter by letter.
fn as_it_stands(text: &str) -> String {
    let escaped = text.replace('\\', "\\e").replace('-', "\\-");
    let lines = escaped.lines().map(|line| match line.chars().next() {
        Some('.' | '\'') => format!("\\&{line}"),
        _ => line.to_owned(),
    });
    lines.collect::<Vec<_>>().join("\n")
}

/// Writes what a shell needs to complete the calls of this program.
pub(crate) fn completions(shell: Shell, out: &mut String) -> Result<ExitCode, Box<dyn Error>> {
    let mut text = Vec::new();
    let mut command = for_people(&Arguments::command());
    clap_complete::generate(shell, &mut command, "coursewright", &mut text);
    out.push_str(&String::from_utf8(text)?);
    Ok(ExitCode::SUCCESS)
}

/// The command line without the calls that are for the program itself: a shell would offer them.
fn for_people(all: &Command) -> Command {
    let calls = all.get_subcommands().filter(|it| !it.is_hide_set());
    Command::new("coursewright")
        .version(env!("CARGO_PKG_VERSION"))
        .subcommands(calls.cloned())
}
