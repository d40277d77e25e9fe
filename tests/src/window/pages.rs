//! The pages in the real window: looked at, turned, led from, printed for some and stopped.

use super::driver::Window;
use super::{open_example, picture};
use std::fs;

fn shows(window: &Window, id: &str, text: &str) {
    window.wait_until(&format!("{id} shows {text}"), || {
        window.text(id).contains(text)
    });
}

/// A key pressed on what has this id, as a person does who has no mouse.
fn press(window: &Window, id: &str, key: &str) {
    window.script(&format!(
        "const it = document.getElementById({id:?}); it.focus();\
         it.dispatchEvent(new KeyboardEvent('keydown', {{ key: {key:?}, bubbles: true, cancelable: true }}))"
    ));
}

/// The words of the page are as long as the typesetter has set them, in its own font: in points of
/// the paper, to less than one: a comma drawn under the letter before it is measured otherwise.
fn words_have_places(window: &Window) {
    let told = window.script(
        "const words = [...document.querySelectorAll('.leaf text[textLength]')];\
         const end = (it) => it.getEndPositionOfChar(it.getNumberOfChars() - 1).x;\
         const wanted = (it) => Number(it.getAttribute('x')) + Number(it.getAttribute('textLength'));\
         const off = words.filter((it) => !(Math.abs(end(it) - wanted(it)) < 1)).map((it) => it.outerHTML + end(it));\
         const fonts = [...document.fonts].filter((it) => it.status === 'loaded').map((it) => it.family);\
         return [words.length > 50, fonts.some((it) => it.includes('Atkinson')), ...off].join()",
    );
    assert_eq!(told, "true,true");
}

#[test]
fn a_page_is_looked_at_turned_and_leads_to_its_questions() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-pages");
    shows(&window, "page-count", "page 1 of 3");
    press(&window, "look-ready-list", "ArrowDown");
    shows(&window, "sheet-title", "Joining letter");
    window.click("look-frame-card");
    shows(&window, "sheet-title", "Frame card");
    shows(&window, "page-count", "page 1 of 3");
    words_have_places(&window);
    window.click("page-on");
    shows(&window, "page-count", "page 2 of 3");
    window.click("size-large");
    shows(&window, "page-count", "page 2 of 5");
    picture(&window, "window-page-large.png");
    window.click("page-back");
    shows(&window, "page-count", "page 1 of 5");
    window.wait_until("the page's parts lead to the frames", || {
        window.script("return document.querySelectorAll('[data-place=frames]').length > 0")
            == "true"
    });
    let held = "return document.querySelectorAll('svg [href^=place], svg [style]').length";
    assert_eq!(window.script(held), "0");
    let told = "return document.querySelector('[data-place=frames] > title').textContent";
    assert_eq!(window.script(told), "Figures from Frames: go there");
    window.click("from-frames");
    shows(&window, "place", "Frames");
}

/// What the pages themselves ask is on the page at once.
#[test]
fn the_page_follows_what_is_asked_of_it() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-pages");
    window.click("look-attendance-slip");
    shows(&window, "page-count", "page 1 of 4");
    window.click("whose-open");
    window.click("students-all");
    shows(&window, "whose-open", "nobody yet");
    window.click("student-pages-2");
    shows(&window, "page-count", "page 1 of 1");
    window.click("worksheet-questions-open");
    window.click("worksheet-sums");
    shows(&window, "worksheet-questions-open", "no sums");
    window.click("question-find-the-fault");
    shows(&window, "worksheet-questions-open", "1 kind left out");
    window.click("step-days");
    window.click("lessons-open");
    window.click("teach-lifting");
    shows(&window, "lessons", "asked for on this course");
}

/// Under a page nothing is drawn; what comes back is the course as it is by then.
#[test]
fn a_drawing_comes_back_from_under_the_pages_as_the_course_is_now() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    let drawn = |height: &str| {
        window.wait_until(&format!("a drawing {height} high"), || {
            let words = window.script("return document.querySelector('.drawn svg')?.textContent");
            words.contains(height)
        });
    };
    window.click("step-wall");
    window.type_into("field-wall-height", "1.23 m");
    drawn("1.23 m");
    window.click("step-pages");
    shows(&window, "page-count", "page 1 of 3");
    window.click("undo");
    window.click("step-wall");
    drawn("1.05 m");
}

#[test]
fn a_large_print_is_stopped_and_what_is_done_is_whole() {
    let (_folder, file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-pages");
    window.click("large-print");
    window.click("print");
    shows(&window, "progress", " of ");
    window.click("stop-print");
    shows(&window, "stopped", "not printed");
    let pages = file.with_file_name("hollin-bank pages");
    let printed: Vec<_> = fs::read_dir(&pages).expect("a folder").flatten().collect();
    assert!(!printed.is_empty());
    for page in printed {
        assert!(
            page.file_name()
                .to_string_lossy()
                .ends_with("-large-print.pdf")
        );
        let pdf = fs::read(page.path()).expect("reads");
        assert!(pdf.starts_with(b"%PDF") && pdf.trim_ascii_end().ends_with(b"%%EOF"));
    }
}
