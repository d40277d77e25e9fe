//! What memory the window takes: the program and the processes its page runs in, at the start and
//! while 2,000 edits and 1,000 visits go by, each with the way back; beside that of a window with an
//! empty page.

use crate::driver::Window;
use crate::{empty_window, open};
use serde_json::json;
use std::collections::HashMap;
use std::fs;
use std::thread::sleep;
use std::time::Duration;

/// Edits in one go, and how many goes.
const EDITS: usize = 20;
const ROUNDS: usize = 100;

/// Edits one after another, each waited for, and a visit to the next place with every second.
const SCRIPT: &str = "\
    const done = arguments[arguments.length - 1];\
    const wait = (ms) => new Promise((resolve) => setTimeout(resolve, ms));\
    const steps = [...document.querySelectorAll('nav [id^=step-]')];\
    (async () => {\
      for (let at = 0; at < EDITS; at++) {\
        if (at % 2 === 0) { steps[(at / 2 + ROUND) % steps.length].click(); await wait(20); document.getElementById('step-wall').click(); await wait(20) }\
        const field = document.getElementById('field-wall-height');\
        field.focus(); field.value = `${(1 + ((at * 7 + ROUND) % 300) / 1000).toFixed(3)} m`;\
        field.dispatchEvent(new Event('input', { bubbles: true }));\
        await wait(15);\
        while (document.querySelector('.outcome').getAttribute('aria-busy') === 'true') await wait(2);\
        field.blur();\
      }\
    })().then(() => done('done'), (wrong) => done(String(wrong)))";

pub(crate) fn measure() {
    if let Some(program) = empty_window() {
        let data = tempfile::tempdir().expect("a data folder");
        let window = Window::launch(&json!({ "binary": program }), None, data.path(), &[]);
        // The process of its page is still being started when the driver has the window.
        sleep(Duration::from_secs(5));
        row("of a window with an empty page", window.starter());
    }
    let (_folder, window) = open();
    window.visit("wall");
    row("at the start", window.starter());
    for round in 1..=ROUNDS {
        let script = SCRIPT.replace("EDITS", &EDITS.to_string());
        let said = window.script_async(&script.replace("ROUND", &round.to_string()));
        assert_eq!(said, "done");
        if round % (ROUNDS / 4) == 0 {
            row(&format!("after {} edits", round * EDITS), window.starter());
        }
    }
}

fn row(when: &str, starter: u32) {
    let mut shares: Vec<String> = Vec::new();
    let (mut rss, mut pss) = (0.0, 0.0);
    for process in below(starter) {
        let Some((name, own_rss, own_pss)) = memory(process) else {
            continue;
        };
        rss += own_rss;
        pss += own_pss;
        shares.push(format!("{name} {own_pss:.0}"));
    }
    let shares = shares.join(", ");
    println!("| memory {when} | RSS {rss:.0} MB | PSS {pss:.0} MB ({shares}) |");
}

/// All processes that this one or its children started.
fn below(starter: u32) -> Vec<u32> {
    let mut children: HashMap<u32, Vec<u32>> = HashMap::new();
    for entry in fs::read_dir("/proc").into_iter().flatten().flatten() {
        let Some(process) = entry.file_name().to_str().and_then(|it| it.parse().ok()) else {
            continue;
        };
        // After the name in brackets: the state, then the parent.
        let stat = fs::read_to_string(entry.path().join("stat")).unwrap_or_default();
        let parent = stat.rsplit(')').next().and_then(|it| it.split(' ').nth(2));
        if let Some(parent) = parent.and_then(|it| it.parse().ok()) {
            children.entry(parent).or_default().push(process);
        }
    }
    let mut found = Vec::new();
    let mut next = vec![starter];
    while let Some(process) = next.pop() {
        for child in children.get(&process).into_iter().flatten() {
            found.push(*child);
            next.push(*child);
        }
    }
    found
}

/// A process's name, and its memory in MB: all it holds, and its share where it is shared.
fn memory(process: u32) -> Option<(String, f64, f64)> {
    let name = fs::read_to_string(format!("/proc/{process}/comm")).ok()?;
    let rollup = fs::read_to_string(format!("/proc/{process}/smaps_rollup")).ok()?;
    let read = |key: &str| {
        let line = rollup.lines().find(|line| line.starts_with(key))?;
        let kilobytes: f64 = line.split_whitespace().nth(1)?.parse().ok()?;
        Some(kilobytes / 1000.0)
    };
    Some((name.trim().to_owned(), read("Rss:")?, read("Pss:")?))
}
