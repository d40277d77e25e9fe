//! The terminal program: new, again, plan, explain, check, print, calendar, told, pace, kit, its manual.

mod again;
mod arguments;
mod explain;
mod kit;
mod manual;
mod pace;
mod print;
mod run;
mod text;
mod told;

use arguments::{Arguments, Call};
use clap::Parser;
use std::process::ExitCode;

/// Setting a page asks for memory some ten thousands of times, and the C library takes longer about it.
#[cfg(unix)]
#[global_allocator]
static ALLOCATOR: tikv_jemallocator::Jemalloc = tikv_jemallocator::Jemalloc;

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let mut out = String::new();
    let done = match &arguments.call {
        Call::New { file, imperial } => run::new(file, *imperial, &mut out),
        Call::Again(asked) => again::written(asked, &mut out),
        Call::Plan { file, json, store } => run::plan(file, *json, store.as_deref(), &mut out),
        Call::Explain {
            file,
            figure,
            store,
        } => explain::explain(file, figure.as_deref(), store.as_deref(), &mut out),
        Call::Check { file, store, names } => run::check(file, store.as_deref(), *names, &mut out),
        Call::Print(asked) => print::print(asked, &mut out),
        Call::Calendar(calendar) => run::calendar(calendar, &mut out),
        Call::Told(told) => told::told(told, &mut out),
        Call::Pace(call) => pace::pace(call, &mut out),
        Call::Kit(call) => kit::kit(call, &mut out),
        Call::Licences => run::licences(&mut out),
        Call::Completions { shell } => manual::completions(*shell, &mut out),
        Call::Manual { out: folder } => manual::pages(folder),
        Call::Apart => print::apart(),
    };
    let code = done.unwrap_or_else(|refused| {
        tell(&refused.to_string());
        ExitCode::from(2)
    });
    report(&mut std::io::stdout(), &out);
    code
}

/// A message beside the answer.
pub(crate) fn tell(message: &str) {
    let lines: Vec<String> = message.lines().map(text::harmless).collect();
    report(&mut std::io::stderr(), &format!("{}\n", lines.join("\n")));
}

/// A reader that has gone away, as `head` does, is no trouble of ours.
fn report(to: &mut impl std::io::Write, text: &str) {
    let _ = to.write_all(text.as_bytes()).and_then(|()| to.flush());
}
