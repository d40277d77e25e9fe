//! What stands behind figures and words in the real window: reasons and meanings, by keys alone.

use super::driver::Window;
use super::{open_example, picture};

fn shows(window: &Window, id: &str, text: &str) {
    window.wait_until(&format!("{id} shows {text}"), || {
        window.text(id).contains(text)
    });
}

fn focused(window: &Window) -> String {
    window.script("return document.activeElement?.id || document.activeElement?.textContent")
}

fn escape(window: &Window) {
    window.script(
        "document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }))",
    );
}

/// The reason opens below its figure, follows the course while it is open, and Escape gives the
/// focus back.
#[test]
fn a_figure_says_why() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("why-figure-length");
    shows(&window, "reason-figure-length", "Elbow room");
    shows(
        &window,
        "reason-figure-length",
        "common practice, no source",
    );
    shows(&window, "behind-said", "Why Length");
    picture(&window, "window-why.png");
    window.click("step-wall");
    let before = window.text("reason-figure-length");
    window.type_into("field-wall-height", "0.9 m");
    window.wait_until("the reason follows", || {
        window.text("reason-figure-length") != before
    });
    window.click("why-wall-base-width");
    shows(&window, "reason-wall-base-width", "0.90 m");
    window.script("document.getElementById('reason-close').focus()");
    escape(&window);
    window.wait_until("the focus is back at its button", || {
        focused(&window).contains("why-wall-base-width")
    });
}

/// A word of the trade shows its meaning with its drawing beside the word, and the list has all.
#[test]
fn a_word_says_what_it_means() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-wall");
    window.wait_until("words are marked", || {
        window.script("return String(document.querySelectorAll('.ask .term').length > 2)") == "true"
    });
    window.script("const it = document.querySelector('.ask .term'); it.focus(); it.click()");
    window.wait_until("the meaning", || {
        window.script("return String(!!document.querySelector('#meaning'))") == "true"
    });
    picture(&window, "window-meaning.png");
    let held = "return String(document.querySelectorAll('#meaning svg [style]').length)";
    assert_eq!(window.script(held), "0");
    escape(&window);
    window.wait_until("it is put away, and the focus is at the word", || {
        window.script("return String(!document.querySelector('#meaning') && document.activeElement.className.includes('term'))")
            == "true"
    });
    window.click("step-words");
    window.type_into("words-sought", "through stone");
    shows(&window, "words-count", "1 word");
    window.script("document.querySelector('#words .term').click()");
    window.wait_until("its sketch is set", || {
        window.script("return String(!!document.querySelector('#meaning .sketch svg'))") == "true"
    });
    picture(&window, "window-words.png");
}
