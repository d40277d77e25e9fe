//! Page templates of the instructor's own: printed where they work; named and left aside where
//! they do not, and the rest still prints.

use super::desk::{Desk, names};
use checks::courses::{plain, with};
use checks::paper::Paper;
use checks::program::Ran;
use std::time::{Duration, Instant};

const HEAD: &str = "#set document(title: \"Mine\")\n= Mine\n";

/// Prints two documents with one template of one's own, for the first of them.
fn prints(template: &str) -> (Desk, Ran) {
    let desk = Desk::with_course(&plain());
    desk.put("store/lessons/pages/ready-list.typ", template);
    let [store, out] = ["store", "out"].map(|name| desk.file(name).display().to_string());
    let only = "ready-list,stone-order";
    let ran = desk.call("print", &["--out", &out, "--only", only, "--store", &store]);
    (desk, ran)
}

/// What is wrong with how a broken template was met.
fn faults(template: &str, place: &str, says: &str) -> Vec<String> {
    let (desk, ran) = prints(template);
    let mut faults = Vec::new();
    if ran.code != Some(0) || names(&desk.file("out")) != ["ready-list.pdf", "stone-order.pdf"] {
        faults.push(format!("{says}: {:?} {}{}", ran.code, ran.out, ran.err));
        return faults;
    }
    let named = format!("store/lessons/pages/ready-list.typ{place}: ");
    for part in [
        &*named,
        says,
        "ready-list is printed from the built-in template",
    ] {
        if !ran.err.contains(part) {
            faults.push(format!("no {part:?} in {}", ran.err));
        }
    }
    if ran.err.contains("stone-order is printed from") {
        faults.push("the other document was printed from another template too".to_owned());
    }
    let pdf = std::fs::read(desk.file("out/ready-list.pdf")).expect("a page");
    let text = Paper::new(&pdf).text();
    if !text.contains("Ready list") || text.contains("Mine") {
        faults.push(format!("{says}: not the built-in page: {text}"));
    }
    faults
}

#[test]
fn a_broken_template_is_named_with_its_line_and_the_built_in_one_prints() {
    let mut all = Vec::new();
    for (template, place, says) in [
        // It does not parse, fails, warns, breaks the standard.
        ("= Mine\n#let x = (\n", ":2:10", "unclosed delimiter"),
        ("= Mine\n#no-such-thing\n", ":2:2", "unknown variable"),
        (
            "#set document(title: \"Mine\")\n#set text(font: \"Nonesuch\")\n= Mine\n",
            ":2:17",
            "unknown font",
        ),
        ("= Mine\n", "", "missing document title"),
        (
            "#set document(title: \"Mine\")\n= Mine\n#figure(rect())\n",
            ":3:2",
            "missing alt text",
        ),
        // It loops, holds itself, reads files, asks for packages.
        ("#while true { 1 }\n", ":1:8", "condition is always true"),
        (
            "#let f(x) = f(x + 1)\n#f(0)\n",
            ":1:13",
            "maximum function call depth",
        ),
        (
            "= Mine\n#read(\"/etc/passwd\")\n",
            ":2:7",
            "not one of the files",
        ),
        ("#import \"@preview/x:0.1.0\": y\n", ":1:9", "no packages"),
        ("#import \"ready-list.typ\": x\n", ":1:9", "cyclic"),
    ] {
        all.extend(faults(template, place, says));
    }
    assert!(all.is_empty(), "\n{}\n", all.join("\n"));
}

/// One that runs for ever is stopped; so is all else that is made with it, without waiting again.
#[test]
fn a_template_that_runs_for_ever_is_stopped() {
    let desk = Desk::with_course(&plain());
    let look = include_str!("../../../lessons/pages/look.typ");
    let endless = "#let far = range(1000000)\n\
                   #for a in far { for b in far { for c in far { let sum = a + b + c } } }\n";
    desk.put(
        "store/lessons/pages/look.typ",
        &format!("// Mine.\n{endless}{look}"),
    );
    let [store, out] = ["store", "out"].map(|name| desk.file(name).display().to_string());
    let only = "ready-list,stone-order,progress-sheet";
    let begun = Instant::now();
    let ran = desk.call("print", &["--out", &out, "--only", only, "--store", &store]);
    let took = begun.elapsed();
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(names(&desk.file("out")).len(), 3);
    assert_eq!(ran.err.matches("lessons/pages/look.typ: ").count(), 3);
    for name in ["ready-list", "stone-order", "progress-sheet"] {
        let told = format!("{name} is printed from the built-in template");
        assert!(ran.err.contains(&told), "{}", ran.err);
    }
    assert!(ran.err.contains("after 20 seconds"), "{}", ran.err);
    // Each by itself would have taken the limit.
    assert!(took < Duration::from_secs(40), "{took:?}");
}

/// One that takes all memory is stopped where the system tells how much it has taken, and fails
/// by itself where not.
#[test]
fn a_template_that_takes_all_memory_is_stopped() {
    for template in [
        "#let all = range(30000000000)\n",
        "#let text = \"stone\"\n#for at in range(60) { text = text + text }\n#text.len()\n",
    ] {
        let (desk, ran) = prints(&format!("{template}{HEAD}"));
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert_eq!(names(&desk.file("out")).len(), 2, "{}", ran.out);
        let told = "ready-list is printed from the built-in template";
        assert!(ran.err.contains(told), "{}", ran.out);
        assert!(ran.err.contains("can't be used"), "{}", ran.err);
    }
}

#[test]
fn a_template_that_is_no_text_is_told_and_left_aside() {
    let desk = Desk::with_course(&plain());
    let path = desk.put("store/lessons/pages/ready-list.typ", "");
    std::fs::write(&path, [0xFF, 0xFE, 0x00, 0x41]).expect("written");
    let [store, out] = ["store", "out"].map(|name| desk.file(name).display().to_string());
    let rest = ["--out", &out, "--only", "ready-list", "--store", &store];
    let ran = desk.call("print", &rest);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.err.contains("lessons/pages/ready-list.typ"),
        "{}",
        ran.out
    );
    assert!(desk.file("out/ready-list.pdf").is_file());
}

/// A name that no font holds is told with where it stands.
#[test]
fn a_name_no_font_holds_is_told_with_its_place() {
    let desk = Desk::with_course(&with(&[(
        "[wall]\n",
        "[[student]]\nname = \"Ash Grove\"\n[[student]]\nname = \"\u{77F3} Wall\"\n[wall]\n",
    )]));
    let out = desk.file("out").display().to_string();
    let ran = desk.call("print", &["--out", &out, "--only", "run-sheet"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told = "  in student 2 name: \u{77F3} Wall";
    assert!(ran.out.contains(told), "{}", ran.out);
}

/// A template that takes no other's place is mostly a mistyped name.
#[test]
fn a_mistyped_name_is_told_with_the_nearest() {
    let desk = Desk::with_course(&plain());
    desk.put("store/lessons/pages/redy-list.typ", HEAD);
    // Another's helper is used, whatever it is called.
    desk.put("store/lessons/pages/mine.typ", "#let mine = [Mine]\n");
    let stone = format!("#import \"mine.typ\": mine\n{HEAD}#mine\n");
    desk.put("store/lessons/pages/stone-order.typ", &stone);
    let [store, out] = ["store", "out"].map(|name| desk.file(name).display().to_string());
    let rest = ["--out", &out, "--only", "ready-list", "--store", &store];
    let ran = desk.call("print", &rest);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for part in [
        "redy-list.typ: no page is made with a template of this name",
        "did you mean ready-list.typ?",
    ] {
        assert!(ran.err.contains(part), "{}", ran.err);
    }
    assert!(!ran.err.contains("mine.typ"), "{}", ran.err);
}

#[test]
fn a_store_that_is_not_there_is_told_in_plain_words() {
    let desk = Desk::with_course(&plain());
    let store = desk.file("stoer").display().to_string();
    let ran = desk.call("plan", &["--store", &store]);
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(
        ran.err
            .starts_with(&format!("{store}: there is no such folder\n")),
        "{}",
        ran.err
    );
    assert!(
        ran.err.contains("name the folder that holds"),
        "{}",
        ran.err
    );
}
