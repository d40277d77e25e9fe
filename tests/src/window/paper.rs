//! Printing on paper in the real window: the system's own dialogue opens, is left, and prints.

use super::driver::Window;
use super::keyboard::{Key, Keyboard};
use super::picture;
use files::Library;
use std::fs;
use std::time::Duration;

/// The example, open in a system that knows no printer but its file.
fn open_without_printers() -> (tempfile::TempDir, Window) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hollin-bank.walling");
    fs::write(&file, Library::example(false)).expect("writes");
    let settings = folder.path().join("settings");
    fs::create_dir_all(settings.join("gtk-3.0")).expect("a folder");
    let only_file = "[Settings]\ngtk-print-backends=file\n";
    fs::write(settings.join("gtk-3.0/settings.ini"), only_file).expect("writes");
    let window = Window::open_where(&file, &[("XDG_CONFIG_HOME", &settings)]);
    window.wait_for_text("figure-length", " m");
    window.click("step-pages");
    (folder, window)
}

fn shows(window: &Window, id: &str, text: &str) {
    window.wait_until(&format!("{id} shows {text}"), || {
        window.text(id).contains(text)
    });
}

fn sheets(window: &Window) -> String {
    window.script("return document.querySelectorAll('.paper-sheet').length")
}

/// Two documents of three pages each, set and held; the dialogue is open.
fn ask_for_a_printer(window: &Window) {
    window.click("print-on-paper");
    shows(window, "progress", "6 pages ready");
    std::thread::sleep(Duration::from_millis(1500));
}

#[test]
fn chosen_pages_are_held_for_the_dialogue_printed_and_let_go_of() {
    let (folder, window) = open_without_printers();
    window.click("tick-none");
    shows(&window, "nothing", "No page is ticked");
    window.click("document-register");
    window.click("document-frame-card");
    assert_eq!(sheets(&window), "0");
    let mut hand = Keyboard::of(&window.screen);

    ask_for_a_printer(&window);
    let held = "const all = [...document.querySelectorAll('.paper-sheet img')];\
        const words = (it) => decodeURIComponent(it.src).replace(/base64,([^\"]*)/g, (_, it) => atob(it));\
        return [all.length, all.filter((it) => it.naturalWidth > 0).length,\
            ...new Set(all.map((it) => `${it.style.width} ${it.style.height}`)),\
            all.filter((it) => words(it).includes('<text')).length,\
            getComputedStyle(document.querySelector('.sheets')).display].join(', ')";
    // A4 in points; words are outlines, or another type would stand in; none is on the screen.
    assert_eq!(
        window.script(held),
        "6, 6, 595.275591pt 841.889764pt, 0, none"
    );
    hand.press(&[Key::Escape]);
    shows(&window, "paper-outcome", "Nothing was printed");
    assert_eq!(sheets(&window), "0");

    // The list of printers, the one there is, and print.
    ask_for_a_printer(&window);
    hand.press(&[Key::Tab, Key::Down, Key::Return]);
    shows(&window, "paper-outcome", "6 pages handed over");
    assert_eq!(sheets(&window), "0");
    picture(&window, "window-paper.png");
    let pdf = fs::read(folder.path().join("hollin-bank pages.pdf")).expect("beside the course");
    let text = String::from_utf8_lossy(&pdf);
    let count = |what: &str| text.matches(what).count();
    assert_eq!(count("/MediaBox [0 0 595"), 6, "six pages of A4");
    // The window writes in fonts, the pages in outlines: nothing of the window is printed.
    assert_eq!(count("/FontFile"), 0);
}

#[test]
fn a_stop_while_pages_are_set_asks_for_no_printer() {
    let (folder, window) = open_without_printers();
    window.click("large-print");
    window.click("print-on-paper");
    shows(&window, "progress", " of ");
    window.click("stop-print");
    shows(&window, "paper-outcome", "Stopped: nothing was printed");
    assert_eq!(sheets(&window), "0");
    assert!(!folder.path().join("hollin-bank pages.pdf").exists());
}
