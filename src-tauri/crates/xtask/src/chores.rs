//! The chores themselves, each a short list of steps.

use crate::run::{Done, cargo, npm, run, say, top};
use crate::set_up;
use std::path::{Path, PathBuf};

/// The course that is opened when none is named.
const EXAMPLE: &str = "hollin-bank";

/// Builds the window and opens it on a course.
pub(crate) fn open(file: Option<&str>) -> Done {
    set_up::for_the_window()?;
    if !has_display() {
        return print_example();
    }
    // The same build as for the checks, so that the large libraries are compiled once for both.
    run(cargo(&["build", "--workspace", "--bins"]))?;
    let file = match file {
        Some(file) => PathBuf::from(file),
        None => example_to_try()?,
    };
    let mut window = crate::run::program(&built("coursewright-desktop"), &[]);
    window.arg(file);
    run(window)
}

fn has_display() -> bool {
    ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
}

/// A copy of the example that may be changed without changing the one in `lessons/`.
fn example_to_try() -> Result<PathBuf, String> {
    let folder = top().join("target").join("try");
    let file = folder.join(format!("{EXAMPLE}.walling"));
    if !file.exists() {
        std::fs::create_dir_all(&folder).map_err(|wrong| wrong.to_string())?;
        let example = top()
            .join("lessons/examples")
            .join(format!("{EXAMPLE}.walling"));
        std::fs::copy(example, &file).map_err(|wrong| wrong.to_string())?;
    }
    Ok(file)
}

fn print_example() -> Done {
    run(cargo(&["build", "--bin", "coursewright"]))?;
    let file = example_to_try()?;
    let folder = file.with_file_name(format!("{EXAMPLE} pages"));
    let mut print = crate::run::program(&built("coursewright"), &["print"]);
    print.arg(&file).arg("--out").arg(&folder);
    run(print)?;
    say(&format!(
        "There is no display to open a window on. The pages are in {}",
        folder.display()
    ));
    Ok(())
}

fn built(program: &str) -> String {
    target().join("debug").join(program).display().to_string()
}

/// Where cargo puts what it builds.
pub(crate) fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| top().join("target"), |it| top().join(it))
}

/// Every check there is, the cheap ones first.
pub(crate) fn test() -> Done {
    set_up::for_the_checks()?;
    run(cargo(&["fmt", "--all", "--check"]))?;
    run(npm(&["run", "--silent", "check"]))?;
    run(npm(&["run", "--silent", "test"]))?;
    let clippy = [
        "clippy",
        "--workspace",
        "--all-targets",
        "--quiet",
        "--",
        "-D",
        "warnings",
    ];
    run(cargo(&clippy))?;
    // The checks of whole programs want the programs built.
    run(cargo(&["build", "--workspace", "--bins"]))?;
    run(cargo(&["test", "--workspace", "--no-fail-fast"]))
}

/// The window's types, written anew.
pub(crate) fn bindings() -> Done {
    let mut test = cargo(&["test", "--quiet", "--package", "shapes", "bindings"]);
    test.env("UPDATE_BINDINGS", "1");
    run(test)
}

/// The pictures of the real window and of printed pages.
pub(crate) fn pictures() -> Done {
    set_up::for_the_checks()?;
    run(cargo(&["build", "--workspace", "--bins"]))?;
    let folder = top().join("tests/pictures");
    std::fs::create_dir_all(&folder).map_err(|wrong| wrong.to_string())?;
    let mut window = cargo(&["test", "--workspace", "--test", "window"]);
    window.env("TAKE_PICTURES", &folder);
    run(window)?;
    let mut pages = cargo(&["test", "--workspace", "--test", "pages", "pictures"]);
    pages.env("TAKE_PICTURES", &folder);
    run(pages)?;
    page_picture(&folder)
}

/// The first page of the setting-out sheet as a picture.
fn page_picture(folder: &Path) -> Done {
    let pages = target().join("pictures");
    let mut print = crate::run::program(&built("coursewright"), &["print"]);
    print
        .arg(format!("lessons/examples/{EXAMPLE}.walling"))
        .args(["--only", "setting-out", "--out"])
        .arg(&pages);
    run(print)?;
    let mut picture = crate::run::program(
        "pdftoppm",
        &["-png", "-r", "80", "-f", "1", "-l", "1", "-singlefile"],
    );
    picture
        .arg(pages.join("setting-out.pdf"))
        .arg(folder.join("setting-out"));
    run(picture)
}

/// The icons as pictures of every size, from their drawings.
pub(crate) fn icons() -> Done {
    set_up::for_the_checks()?;
    let mut draw = cargo(&["test", "--workspace", "--test", "package", "icons"]);
    draw.env("DRAW_ICONS", "1");
    run(draw)
}

/// What the README says was measured.
pub(crate) fn bench() -> Done {
    set_up::for_the_checks()?;
    // The window is measured as it is given away, beside one that shows nothing.
    run(cargo(&["build", "--release", "--workspace", "--bins"]))?;
    run(cargo(&[
        "build",
        "--release",
        "--workspace",
        "--example",
        "empty_window",
    ]))?;
    run(cargo(&[
        "bench",
        "--package",
        "checks",
        "--package",
        "store",
    ]))
}
