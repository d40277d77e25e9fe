//! From a key going down to the figures following it: 200 presses typed into the wall's height.

use crate::{open, percentile};
use std::time::{Duration, Instant};

const LISTEN: &str = include_str!("presses.js");
const PRESSES: usize = 200;
const BACK: &str = "\u{e003}";

pub(crate) fn measure() {
    let (_folder, window) = open();
    window.visit("wall");
    window.type_into("field-wall-height", "1.1 m");
    // Back to before the unit: a length without one would be refused.
    window.press_keys("\u{e012}\u{e012}");
    std::thread::sleep(Duration::from_secs(2));
    window.script(LISTEN);
    let mut missed = 0;
    for at in 0..PRESSES {
        let digit = (1 + (at / 4 + at % 4 * 3) % 9).to_string();
        // Two digits more, and both taken back: heights of 1.1 to 1.199 m.
        let key = if at % 4 < 2 { digit.as_str() } else { BACK };
        window.press_keys(key);
        let end = Instant::now() + Duration::from_secs(5);
        let heard = || {
            window
                .script("return window.presses.length")
                .parse::<usize>()
        };
        while heard().is_ok_and(|heard| heard + missed <= at) {
            if Instant::now() > end {
                missed += 1;
                break;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        // Nobody types without a breath; what is worked out afterwards is done by then or not.
        std::thread::sleep(Duration::from_millis(60));
    }
    let read = |what: &str| -> Vec<f64> {
        let all = window.script(&format!(
            "return window.presses.map((it) => it.{what}).join(' ')"
        ));
        all.split(' ').filter_map(|it| it.parse().ok()).collect()
    };
    for (what, mut times) in [("changed", read("changed")), ("painted", read("painted"))] {
        let (median, late) = (percentile(&mut times, 0.5), percentile(&mut times, 0.95));
        let count = times.len();
        println!(
            "| key press to figures {what} | median {median:.0} ms | 95th percentile of {count} {late:.0} ms |"
        );
    }
    if missed > 0 {
        println!("| presses that changed nothing | {missed} | |");
    }
}
