//! Key presses timed in the window: from the key going down to what it changes, and to its being painted.

use crate::driver::Window;
use crate::percentile;
use std::time::{Duration, Instant};

const LISTEN: &str = include_str!("presses.js");

/// Key presses that are listened to.
pub(crate) struct Presses<'a> {
    window: &'a Window,
    /// How many were pressed.
    count: usize,
    /// How many of them changed nothing.
    missed: usize,
}

impl<'a> Presses<'a> {
    /// From now on, and what this selector names is watched for a change.
    pub(crate) fn listen(window: &'a Window, watched: &str) -> Self {
        window.script(&LISTEN.replace("WATCHED", &format!("{watched:?}")));
        Self {
            window,
            count: 0,
            missed: 0,
        }
    }

    /// Presses, and waits until something has changed.
    pub(crate) fn press(&mut self, press: impl FnOnce(&Window)) {
        press(self.window);
        self.count += 1;
        let end = Instant::now() + Duration::from_secs(5);
        while self.heard() + self.missed < self.count {
            if Instant::now() > end {
                self.missed += 1;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    fn heard(&self) -> usize {
        let heard = self.window.script("return window.presses.length");
        heard.parse().unwrap_or(0)
    }

    /// Tells of all of them, as what a key press leads to.
    pub(crate) fn tell(&self, what: &str) {
        for step in ["changed", "painted"] {
            let all = self.window.script(&format!(
                "return window.presses.map((it) => it.{step}).join(' ')"
            ));
            let mut times: Vec<f64> = all.split(' ').filter_map(|it| it.parse().ok()).collect();
            let (median, late) = (percentile(&mut times, 0.5), percentile(&mut times, 0.95));
            let count = times.len();
            println!(
                "| key press to {what} {step} | median {median:.0} ms | 95th percentile of {count} {late:.0} ms |"
            );
        }
        if self.missed > 0 {
            println!("| presses that changed no {what} | {} | |", self.missed);
        }
    }
}
