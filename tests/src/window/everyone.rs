//! For everyone: large text without loss, all by keyboard, nothing that moves for long, and every
//! change said once to those who hear the window.

use super::driver::Window;
use super::hands::Seen;
use super::open_example;
use std::fs;

/// Says what can't be read whole.
const CLIPPED: &str = include_str!("scripts/clipped.js");
/// Says what the keyboard is at.
const FOCUS: &str = include_str!("scripts/focus.js");

/// A line too long for its box.
const PLANT: &str = "\
    const planted = document.createElement('p'); planted.id = 'planted';\
    planted.textContent = 'Words that are cut off';\
    Object.assign(planted.style, { width: '5em', overflow: 'hidden', whiteSpace: 'nowrap' });\
    document.querySelector('main').prepend(planted);";

const TAB: &str = "\u{e004}";

#[test]
fn nothing_is_cut_off_or_covered_however_large_the_text() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    let planted = window.script(&format!("{PLANT} {CLIPPED}"));
    assert!(planted.contains("cut off: <p> in #planted"), "{planted}");
    window.script("document.getElementById('planted').remove()");
    let mut faults = Vec::new();
    for (size, text) in [
        ((1280, 800), ""),
        ((1024, 640), ""),
        ((1280, 800), "largest"),
        ((1024, 640), "largest"),
    ] {
        let look = "light";
        let seen = Seen { size, text, look };
        window.look_as(seen);
        for place in window.places() {
            window.visit(&place);
            window.unfold();
            let found = window.script(CLIPPED);
            faults.extend(found.lines().map(|it| format!("{place}, {seen:?}: {it}")));
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// How many steps of the Tab key a place may have; a trap of the focus would have no end.
const STEPS: usize = 400;

/// Marks what the keyboard should come to; answers how much that is. In a list whose titles the
/// arrow keys go through, that is one of them.
const MARK: &str = "\
    const all = [...document.querySelectorAll(\
      'a[href], button:enabled, input:enabled, select:enabled, textarea:enabled, summary, [tabindex=\"0\"]')];\
    const there = all.filter((it) => it.tabIndex >= 0 && it.checkVisibility({ visibilityProperty: true }));\
    for (const it of there) it.dataset.awaited = '';\
    document.activeElement?.blur(); scrollTo(0, 0);\
    return there.length";

/// Crosses off what the keyboard is at.
const CROSS_OFF: &str = "delete document.activeElement.dataset.awaited;";

/// What it never came to.
const LEFT: &str = "\
    return [...document.querySelectorAll('[data-awaited]')]\
      .map((it) => { delete it.dataset.awaited; return `never comes to <${it.localName}> ${it.id || it.textContent}` })\
      .join('\\n')";

/// Walks through a place by Tab alone until it is back at its beginning; the faults it met.
fn walk(window: &Window) -> Vec<String> {
    let awaited: usize = window.script(MARK).parse().expect("a count");
    assert!(awaited > 20, "steps and actions alone are more");
    let mut faults = Vec::new();
    for met in 0..STEPS {
        window.press_keys(TAB);
        let mut said = window.script(&format!("{CROSS_OFF} {FOCUS}"));
        if !said.ends_with('|') {
            // WebKit brings what has the focus into view with the next picture it paints.
            window.settle();
            said = window.script(FOCUS);
        }
        let (name, wrong) = said.split_once('|').expect("a name and what is wrong");
        if name.is_empty() && met > 0 {
            break;
        }
        if !wrong.is_empty() {
            faults.push(format!("{name}: {wrong}"));
        }
        let left = window.script("return document.querySelectorAll('[data-awaited]').length");
        if left == "0" {
            break;
        }
    }
    let left = window.script(LEFT);
    faults.extend(left.lines().map(str::to_owned));
    faults
}

#[test]
fn the_keyboard_alone_comes_to_everything_and_shows_where_it_is() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.look_as(Seen {
        size: (1024, 640),
        text: "",
        look: "light",
    });
    let mut faults = Vec::new();
    for place in window.places() {
        window.visit(&place);
        let found = walk(&window);
        faults.extend(found.into_iter().map(|it| format!("{place}: {it}")));
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// Says what moves for longer than a blink.
const MOVES: &str = "\
    const longest = (list) => Math.max(...list.split(',').map((it) => parseFloat(it) * (it.includes('ms') ? 1 : 1000)));\
    const moving = [];\
    for (const it of document.querySelectorAll('*')) for (const part of [null, '::before', '::after']) {\
      const { transitionDuration, transitionDelay, animationName, animationDuration, scrollBehavior } = getComputedStyle(it, part);\
      const turns = animationName === 'none' ? 0 : longest(animationDuration);\
      const slides = longest(transitionDuration) + longest(transitionDelay);\
      if (Math.max(turns, slides) > 20 || scrollBehavior === 'smooth') moving.push(`<${it.localName}> ${it.id || it.className}`);\
    }\
    return [...new Set(moving)].join('\\n')";

#[test]
fn nothing_moves_for_longer_than_a_blink_where_that_is_wished() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hollin-bank.walling");
    fs::write(&file, files::Library::example(false)).expect("writes");
    let wishes = folder.path().join("wishes");
    fs::create_dir_all(wishes.join("gtk-3.0")).expect("a folder");
    let no_motion = "[Settings]\ngtk-enable-animations=false\n";
    fs::write(wishes.join("gtk-3.0/settings.ini"), no_motion).expect("writes");
    let window = Window::open_where(&file, &[("XDG_CONFIG_HOME", &wishes)]);
    window.wait_for_text("figure-length", " m");
    let wished = window.script("return matchMedia('(prefers-reduced-motion: reduce)').matches");
    assert_eq!(wished, "true", "the system's wish reaches the window");
    for place in window.places() {
        window.visit(&place);
        window.unfold();
        assert_eq!(window.script(MOVES), "", "{place}");
    }
}

/// Keeps all that is said in live regions from here on.
const LISTEN: &str = "\
    window.heard = [];\
    const spoken = '[role=status], [role=alert], [aria-live]';\
    new MutationObserver((changes) => {\
      const regions = new Set();\
      for (const { target } of changes) {\
        const region = (target.nodeType === 1 ? target : target.parentElement)?.closest(spoken);\
        if (region) regions.add(region);\
      }\
      for (const region of regions) {\
        const words = region.textContent.trim();\
        if (words) window.heard.push(`${region.id}: ${words}`);\
      }\
    }).observe(document.body, { childList: true, characterData: true, subtree: true });";

#[test]
fn a_change_is_said_once_and_not_with_each_letter() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.visit("wall");
    let before = window.text("figure-stone");
    window.script(LISTEN);
    let heard = || window.script("return window.heard.join('\\n')");

    window.type_into("field-wall-height", "1.2");
    for letter in ["5", " ", "m"] {
        window.press_keys(letter);
    }
    window.wait_until("the change is said", || !heard().is_empty());
    window.wait_until("all is worked out", || {
        window.text("figure-stone") != before
    });
    let said = heard();
    assert_eq!(said.lines().count(), 1, "{said}");
    assert!(said.starts_with("moved-said: "), "{said}");
    assert!(said.contains(" from ") && said.contains(" to "), "{said}");
    // What could be done otherwise is asked for meanwhile, and is no change.
    std::thread::sleep(std::time::Duration::from_millis(2500));
    assert_eq!(heard(), said, "and not again");

    window.script("window.heard = []");
    window.click("save");
    window.wait_until("saving is said", || heard() == "moved-said: Saved.");
}
