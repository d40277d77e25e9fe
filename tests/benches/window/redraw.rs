//! From a key going down to the page that is looked at being another: heights typed at the wall, and
//! taken back one by one in sight of the page.

use crate::driver::Window;
use crate::open;
use crate::presses::Presses;
use serde_json::json;
use std::thread::sleep;
use std::time::Duration;

/// Documents of drawings, of tables, of many pages, and of one that can't be set in pieces.
const DOCUMENTS: [&str; 5] = [
    "setting-out",
    "run-sheet",
    "worksheets",
    "stone-order",
    "worksheets-key",
];
const PRESSES: usize = 32;
const CONTROL: &str = "\u{e009}";

pub(crate) fn measure() {
    for document in DOCUMENTS {
        let (_folder, window) = open();
        window.visit("wall");
        for at in 0..=PRESSES {
            let height = format!("{:.3} m", 1.0 + (at * 7 % 200) as f64 / 1000.0);
            window.type_into("field-wall-height", &height);
            window.click("step-wall");
        }
        window.visit("pages");
        window.click(&format!("look-{document}"));
        sleep(Duration::from_secs(2));
        let mut presses = Presses::listen(&window, ".leaf");
        for _ in 0..PRESSES {
            presses.press(undo);
            // What could be done otherwise is worked out by then, and the document set whole.
            sleep(Duration::from_millis(700));
        }
        presses.tell(&format!("page of {document}"));
    }
}

fn undo(window: &Window) {
    let keys = [
        json!({ "type": "keyDown", "value": CONTROL }),
        json!({ "type": "keyDown", "value": "z" }),
        json!({ "type": "keyUp", "value": "z" }),
        json!({ "type": "keyUp", "value": CONTROL }),
    ];
    let actions = json!({ "actions": [{ "type": "key", "id": "keys", "actions": keys }] });
    window.call("actions", &actions).expect("keys are pressed");
}
