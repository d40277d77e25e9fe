//! Set-up and chores: `cargo xtask open`, `test` and the rest.

mod chores;
mod deb;
mod licences;
mod run;
mod set_up;

use std::process::ExitCode;

const HELP: &str = "\
cargo xtask open [FILE]   set up what is missing, build, and open the window on FILE or on an
                          example course; without a display, print the example's pack instead
cargo xtask test          set up what is missing and pass all checks, the real window among them
cargo xtask bindings      write the window's types anew from the shapes in Rust
cargo xtask pictures      take the pictures of the README and of tests/pictures anew
cargo xtask icons         draw the icons anew, in every size, from src-tauri/icons/*.svg
cargo xtask deb           build both programs for use and pack them as target/deb/release/*.deb;
                          with --debug pack those built for the checks, to try the packing
cargo xtask bench         measure what the README says was measured";

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let done = match (arguments.next().as_deref(), arguments.next()) {
        (Some("open"), file) => chores::open(file.as_deref()),
        (Some("test"), None) => chores::test(),
        (Some("bindings"), None) => chores::bindings(),
        (Some("pictures"), None) => chores::pictures(),
        (Some("icons"), None) => chores::icons(),
        (Some("deb"), None) => deb::for_use(),
        (Some("deb"), Some(how)) if how == "--debug" => deb::to_try(),
        (Some("bench"), None) => chores::bench(),
        _ => Err(HELP.to_owned()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            run::say(&why);
            ExitCode::FAILURE
        }
    }
}
