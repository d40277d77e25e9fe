//! The real window measured: how soon it can be used, how soon figures and pages follow a
//! key, and what memory it takes. Run with `cargo xtask bench`; nothing here fails a build.
//!
//! It measures the programs beside its own folder of builds, in front of a screen nobody sees.

#[allow(dead_code)]
#[path = "../src/window/driver.rs"]
mod driver;
#[path = "window/figures.rs"]
mod figures;
#[allow(dead_code)]
#[path = "../src/window/hands.rs"]
mod hands;
#[path = "window/memory.rs"]
mod memory;
#[allow(dead_code)]
#[path = "../src/window/network.rs"]
mod network;
#[path = "window/presses.rs"]
mod presses;
#[path = "window/redraw.rs"]
mod redraw;
#[path = "../src/window/screen.rs"]
mod screen;
#[path = "window/start.rs"]
mod start;

use driver::Window;
use files::Library;
use std::fs;
use std::path::PathBuf;

fn main() {
    // `cargo test --benches` asks whether it runs, not how fast.
    if !std::env::args().any(|it| it == "--bench") {
        return;
    }
    let load = fs::read_to_string("/proc/loadavg").unwrap_or_default();
    println!("\nThe window; load of the machine before: {}", load.trim());
    start::measure();
    figures::measure();
    redraw::measure();
    memory::measure();
}

/// The window with an empty page, if it has been built.
fn empty_window() -> Option<PathBuf> {
    let program = driver::program().with_file_name("examples");
    Some(program.join("empty_window")).filter(|it| it.exists())
}

/// The example in a folder of its own.
fn example() -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hollin-bank.walling");
    fs::write(&file, Library::example(false)).expect("writes");
    (folder, file)
}

/// The window open on the example, with nothing between it and the machine.
fn open() -> (tempfile::TempDir, Window) {
    let (folder, file) = example();
    let options = serde_json::json!({ "binary": driver::program(), "args": [file] });
    let window = Window::launch(&options, None, folder.path(), &[]);
    window.wait_for_text("figure-length", " m");
    (folder, window)
}

/// The value below which this share of all lies.
fn percentile(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = (values.len() as f64 * share) as usize;
    values
        .get(at.min(values.len().saturating_sub(1)))
        .copied()
        .unwrap_or(f64::NAN)
}
