//! From a key going down to the figures following it: 200 presses typed into the wall's height.

use crate::open;
use crate::presses::Presses;
use std::thread::sleep;
use std::time::Duration;

const PRESSES: usize = 200;
const BACK: &str = "\u{e003}";

pub(crate) fn measure() {
    let (_folder, window) = open();
    window.visit("wall");
    window.type_into("field-wall-height", "1.1 m");
    // Back to before the unit: a length without one would be refused.
    window.press_keys("\u{e012}\u{e012}");
    sleep(Duration::from_secs(2));
    let mut presses = Presses::listen(&window, "aside");
    for at in 0..PRESSES {
        let digit = (1 + (at / 4 + at % 4 * 3) % 9).to_string();
        // Two digits more, and both taken back: heights of 1.1 to 1.199 m.
        let key = if at % 4 < 2 { digit.as_str() } else { BACK };
        presses.press(|window| window.press_keys(key));
        // Nobody types without a breath; what is worked out afterwards is done by then or not.
        sleep(Duration::from_millis(60));
    }
    presses.tell("figures");
}
