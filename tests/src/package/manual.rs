//! The manual pages and the completions name every call of the terminal program.

use checks::program::run;
use std::collections::BTreeMap;
use std::process::Command;

/// The calls a help text lists, without the help itself.
fn calls(help: &str) -> Vec<String> {
    let list = help.split("\nCommands:\n").nth(1).unwrap_or_default();
    let lines = list.lines().take_while(|line| line.starts_with("  "));
    lines
        // What goes on below a call is set further in.
        .filter(|line| !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

/// Every call with its words, as the program's own help tells them.
fn all_calls() -> Vec<Vec<String>> {
    let mut found = Vec::new();
    let mut queue = vec![Vec::new()];
    while let Some(words) = queue.pop() {
        let mut asked: Vec<String> = words.clone();
        asked.push("--help".to_owned());
        let help = run(&asked).out;
        for name in calls(&help) {
            let call = [words.clone(), vec![name]].concat();
            queue.push(call.clone());
            found.push(call);
        }
    }
    found.sort();
    assert!(20 < found.len(), "this check looks at nothing: {found:?}");
    found
}

/// The pages by the names of their files.
fn pages() -> BTreeMap<String, String> {
    let folder = tempfile::tempdir().expect("a folder");
    let into = folder.path().join("new");
    let ran = run(&["manual", "--out", into.to_str().expect("a path")]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let files = std::fs::read_dir(&into).expect("pages");
    files
        .map(|file| file.expect("a page"))
        .map(|file| {
            let text = std::fs::read_to_string(file.path()).expect("text");
            (file.file_name().to_string_lossy().into_owned(), text)
        })
        .collect()
}

#[test]
fn every_call_has_a_page_and_no_other_has() {
    let due = all_calls().into_iter().map(|call| call.join("-"));
    let mut due: Vec<String> = due.map(|call| format!("coursewright-{call}.1")).collect();
    due.push("coursewright.1".to_owned());
    due.sort();
    let there: Vec<String> = pages().into_keys().collect();
    assert_eq!(there, due);
}

#[test]
fn the_first_page_leads_to_every_call() {
    let page = pages().remove("coursewright.1").expect("a page");
    for call in all_calls().iter().filter(|call| call.len() == 1) {
        let name = format!("coursewright\\-{}(1)", call[0].replace('-', "\\-"));
        assert!(page.contains(&name), "{name} is not in\n{page}");
    }
    assert!(!page.contains("apart"), "a call of the program's own");
    assert!(
        page.contains("First steps:\n  coursewright new"),
        "the help says more than this page"
    );
}

/// Read as `man` reads them, the pages have nothing that can't be set.
#[test]
fn pages_are_set_without_a_complaint() {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, page) in pages() {
        let file = folder.path().join(&name);
        std::fs::write(&file, page).expect("writes");
        let set = Command::new("groff")
            .args(["-man", "-Tutf8", "-ww", "-z"])
            .arg(&file)
            .output()
            .expect("groff is there (groff-base)");
        assert!(set.status.success(), "{name}");
        assert_eq!(String::from_utf8_lossy(&set.stderr), "", "{name}");
    }
}

#[test]
fn every_shell_is_told_every_call() {
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let ran = run(&["completions", shell]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{shell}");
        for name in all_calls().iter().flatten() {
            assert!(ran.out.contains(name.as_str()), "{shell}: {name}");
        }
        assert!(!ran.out.contains("set-apart"), "{shell}");
    }
}

/// What bash offers when Tab is pressed after these words.
fn offered(words: &[&str]) -> Vec<String> {
    let script = run(&["completions", "bash"]).out;
    let last = words.last().expect("a word");
    let before = words[words.len() - 2];
    let ask = format!(
        "{script}\nCOMP_WORDS=({}); COMP_CWORD={}; _coursewright coursewright '{last}' '{before}'\n\
         printf '%s\\n' \"${{COMPREPLY[@]}}\"",
        words
            .iter()
            .map(|word| format!("'{word}' "))
            .collect::<String>(),
        words.len() - 1,
    );
    let output = Command::new("bash").arg("-c").arg(ask).output();
    let output = output.expect("bash runs");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && said.is_empty(), "{said}");
    let lines = String::from_utf8_lossy(&output.stdout).into_owned();
    let offered = lines.lines().filter(|line| !line.is_empty());
    offered.map(str::to_owned).collect()
}

#[test]
fn bash_completes_calls_and_their_options() {
    assert_eq!(offered(&["coursewright", "pl"]), ["plan"]);
    assert_eq!(offered(&["coursewright", "kit", "exp"]), ["export"]);
    assert_eq!(
        offered(&["coursewright", "print", "--lar"]),
        ["--large-print"]
    );
    assert_eq!(offered(&["coursewright", "set"]), [""; 0]);
}

#[test]
fn a_shell_nobody_knows_and_a_folder_that_cannot_be_are_refused() {
    let ran = run(&["completions", "abacus"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("fish"), "{}", ran.err);
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("a file");
    std::fs::write(&file, "").expect("writes");
    let ran = run(&["manual", "--out", file.to_str().expect("a path")]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("can't be written"), "{}", ran.err);
}
