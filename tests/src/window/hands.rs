//! What hands do at the window beyond a click: visit a place, press keys, size it, set its look.

use super::driver::Window;
use serde_json::json;

/// How the window is looked at: its size, the word for its text, the word for its colours.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Seen {
    pub(crate) size: (u32, u32),
    pub(crate) text: &'static str,
    pub(crate) look: &'static str,
}

impl Window {
    /// The places there are, as the window itself lists them.
    pub(crate) fn places(&self) -> Vec<String> {
        let names = self.script(
            "return [...document.querySelectorAll('nav [id^=step-]')]\
             .map((step) => step.id.slice('step-'.length)).join(' ')",
        );
        let names: Vec<String> = names.split_whitespace().map(str::to_owned).collect();
        assert!(names.len() > 10, "the window lists its places: {names:?}");
        names
    }

    /// Goes to a place and waits until it stands.
    pub(crate) fn visit(&self, place: &str) {
        let step = format!("step-{place}");
        self.click(&step);
        self.wait_until("the place is shown", || {
            self.script("return document.querySelector('[aria-current]')?.id") == step
        });
        self.settle();
    }

    /// Everything that can be unfolded is.
    pub(crate) fn unfold(&self) {
        self.script("document.querySelectorAll('details').forEach((it) => { it.open = true })");
        self.settle();
    }

    /// Until what is shown has been painted.
    pub(crate) fn settle(&self) {
        self.script_async(
            "const done = arguments[arguments.length - 1];\
             requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50)))",
        );
    }

    pub(crate) fn look_as(&self, seen: Seen) {
        let (width, height) = seen.size;
        let size = json!({ "x": 0, "y": 0, "width": width, "height": height });
        self.call("window/rect", &size).expect("another size");
        self.wait_until("the size is taken", || {
            self.script("return innerWidth") == width.to_string()
        });
        let Seen { text, look, .. } = seen;
        self.script(&format!(
            "const page = document.documentElement.dataset;\
             page.text = {text:?}; page.look = {look:?}"
        ));
    }

    /// Presses keys one after another, whatever has the focus.
    pub(crate) fn press_keys(&self, keys: &str) {
        let each = keys.chars().flat_map(|key| {
            let value = key.to_string();
            [
                json!({ "type": "keyDown", "value": value }),
                json!({ "type": "keyUp", "value": value }),
            ]
        });
        let keys: Vec<_> = each.collect();
        let actions = json!({ "actions": [{ "type": "key", "id": "keys", "actions": keys }] });
        self.call("actions", &actions).expect("keys are pressed");
    }
}
