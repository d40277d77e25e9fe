//! From the start of the process to a window that can be used, beside one with an empty page.

use crate::driver::{Window, program};
use crate::{empty_window, example, percentile};
use serde_json::json;
use std::fs;
use std::path::Path;

const TIMES: usize = 7;

/// Writes down when it is, then becomes the program.
const STAMPED: &str = "date +%s%3N > \"$0\"; exec \"$@\"";

/// Answers with the time at which it holds and has been painted.
const WHEN_IT_HOLDS: &str = "\
    const done = arguments[arguments.length - 1];\
    (function look() { requestAnimationFrame(() => holds() ? done(String(Date.now())) : look()) })()";

pub(crate) fn measure() {
    let (_folder, file) = example();
    let ours = times(&[&program(), &file], USABLE);
    row("start to first figure shown and input possible", ours);
    if let Some(empty) = empty_window() {
        let empty = times(&[&empty], "document.readyState === 'complete'");
        row("the same of a window with an empty page", empty);
    }
}

const USABLE: &str = "\
    document.getElementById('figure-length')?.textContent && document.querySelector('main h2')";

fn row(what: &str, mut times: Vec<f64>) {
    let (median, worst) = (percentile(&mut times, 0.5), percentile(&mut times, 1.0));
    println!("| {what} | median {median:.0} ms | slowest of {TIMES} {worst:.0} ms |");
}

/// Milliseconds from the start of a program to when this holds in its page. The driver must have
/// reached the window before it can ask, which counts for both alike.
fn times(command: &[&Path], holds: &str) -> Vec<f64> {
    let once = || {
        let stamp = tempfile::NamedTempFile::new().expect("a stamp");
        let mut arguments = vec![json!("-c"), json!(STAMPED), json!(stamp.path())];
        arguments.extend(command.iter().map(|it| json!(it)));
        let data = tempfile::tempdir().expect("a data folder");
        let window = Window::launch(
            &json!({ "binary": "/bin/sh", "args": arguments }),
            None,
            data.path(),
            &[],
        );
        let asked = format!("const holds = () => {holds}; {WHEN_IT_HOLDS}");
        let there: f64 = window.script_async(&asked).parse().expect("a time");
        let began = fs::read_to_string(stamp.path()).expect("the stamp");
        there - began.trim().parse::<f64>().expect("a time")
    };
    (0..TIMES).map(|_| once()).collect()
}
