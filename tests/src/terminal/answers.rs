//! What the program answers: help, exit codes, refusals, and readers that go away.

use super::desk::{Desk, ready};
use checks::courses::{plain, with};
use checks::program::{finish, path, run};
use files::Library;
use std::process::{Command, Stdio};

#[test]
fn new_writes_an_example_and_never_overwrites() {
    for (flag, imperial) in [(&[][..], false), (&["--imperial"], true)] {
        let desk = Desk::new();
        let made = desk.call("new", flag);
        assert_eq!(made.code, Some(0), "{}", made.err);
        let text = std::fs::read_to_string(desk.course()).expect("a course");
        assert_eq!(text, Library::example(imperial));
        assert_eq!(desk.call("plan", &[]).code, Some(0));
        std::fs::write(desk.course(), "mine").expect("written");
        let refused = desk.call("new", flag);
        assert_eq!(refused.code, Some(2));
        assert!(refused.err.contains("not overwritten"), "{}", refused.err);
        let kept = std::fs::read_to_string(desk.course()).expect("a course");
        assert_eq!(kept, "mine");
        assert_eq!(desk.names(), ["course.walling"]);
    }
}

#[test]
fn new_does_not_overwrite_through_a_link_that_leads_nowhere() {
    let desk = Desk::new();
    #[cfg(unix)]
    std::os::unix::fs::symlink(desk.file("elsewhere"), desk.course()).expect("a link");
    #[cfg(unix)]
    {
        assert_eq!(desk.call("new", &[]).code, Some(2));
        assert!(!desk.file("elsewhere").exists());
    }
}

#[test]
fn the_plan_for_people_has_the_figures_of_the_plan_for_programs() {
    let desk = Desk::with_course(&plain());
    let plan = desk.call("plan", &[]).out;
    for words in [
        "Plain course",
        "6.00 m",
        "0.767 m",
        "Lunch",
        "Dinner",
        "Student 1",
        "Steel bar",
        "16:30",
        "Chance of finishing",
    ] {
        assert!(plan.contains(words), "no {words:?} in\n{plan}");
    }
    let lines_up = plan.lines().all(|line| line == line.trim_end());
    assert!(lines_up, "spaces at the end of a line");
}

#[test]
fn check_exits_with_0_when_there_is_nothing_to_do() {
    let desk = Desk::with_course(&ready());
    let ran = desk.call("check", &[]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.starts_with("Nothing to do"), "{}", ran.out);
    // General cautions are printed and count for nothing.
    assert!(ran.out.contains("Local codes"), "{}", ran.out);
}

/// Each of these alone makes the ready course unready.
#[test]
fn check_exits_with_1_for_each_thing_there_is_to_do() {
    for (change, words) in [
        (("face = \"20 t\"", "face = \"1 t\""), "Order stone"),
        (("in_stock = 6", "in_stock = 1"), "frame"),
        (
            (
                "stock_lengths = [\"5 ft\", \"6 ft\", \"8 ft\"]",
                "stock_lengths = [\"3 ft\"]",
            ),
            "bar",
        ),
        (
            ("\"Walling hammer\" = 40", "\"Walling hammer\" = 1"),
            "Walling hammer",
        ),
        (("\"1 m\"", "\"30 m\""), "chance"),
    ] {
        let text = checks::courses::changed(ready(), &[change]);
        let ran = Desk::with_course(&text).call("check", &[]);
        assert_eq!(ran.code, Some(1), "{words}: {}{}", ran.out, ran.err);
        assert!(ran.out.contains(words), "no {words:?} in\n{}", ran.out);
    }
}

#[test]
fn a_refused_file_exits_with_2_from_every_call_and_stays_as_it_was() {
    let text = with(&[("height = \"1.07 m\"", "hieght = \"1.07 m\"")]);
    for (call, rest) in [
        ("plan", &[][..]),
        ("plan", &["--json"]),
        ("check", &[]),
        ("print", &["--out", "out-of-a-refused-file"]),
    ] {
        let desk = Desk::with_course(&text);
        let ran = desk.call(call, rest);
        assert_eq!(ran.code, Some(2), "{call}");
        assert!(ran.out.is_empty(), "{}", ran.out);
        let place = format!("{}:36:1: ", desk.course().display());
        let mut lines = ran.err.lines();
        let first = lines.next().expect("a first line");
        assert!(
            first.starts_with(&place) && first.contains("hieght"),
            "{first}"
        );
        assert_eq!(lines.next(), Some("did you mean height?"));
        let after = std::fs::read_to_string(desk.course()).expect("the course");
        assert_eq!(after, text);
        assert_eq!(desk.names(), ["course.walling"]);
    }
    assert!(!std::path::Path::new("out-of-a-refused-file").exists());
}

/// Files beside one are named without their folder, and not all names are plain.
#[test]
fn files_are_found_where_the_caller_stands() {
    let desk = Desk::new();
    let name = "Kurs på Bøgård, #1.walling";
    for arguments in [
        &["new", name][..],
        &["plan", name],
        &["print", name, "--out", "sider", "--only", "stone-order"],
    ] {
        let mut command = Command::new(path());
        command.args(arguments).current_dir(desk.path());
        let ran = finish(command.output());
        assert_eq!(ran.code, Some(0), "{arguments:?}: {}", ran.err);
    }
    assert_eq!(desk.names(), [name]);
    assert!(desk.file("sider/stone-order.pdf").is_file());
}

/// The window's libraries are not needed where there is no window.
#[cfg(target_os = "linux")]
#[test]
fn the_program_does_not_link_the_webview() {
    let program = std::fs::read(path()).expect("the program");
    for library in ["libwebkit2gtk", "libgtk-3", "libjavascriptcoregtk"] {
        let linked = program
            .windows(library.len())
            .any(|part| part == library.as_bytes());
        assert!(!linked, "{library} is linked");
    }
}

/// The file is named as the person named it.
#[test]
fn a_refusal_names_the_file_as_it_was_given() {
    let desk = Desk::with_course("format = 99\n");
    let mut command = Command::new(path());
    command
        .args(["plan", "course.walling"])
        .current_dir(desk.path());
    let ran = finish(command.output());
    assert!(ran.err.starts_with("course.walling:1:1: "), "{}", ran.err);
}

#[test]
fn a_file_that_is_not_there_or_is_no_file_exits_with_2() {
    let desk = Desk::new();
    for call in ["plan", "check"] {
        let ran = desk.call(call, &[]);
        assert_eq!(ran.code, Some(2));
        assert!(ran.err.contains("course.walling"), "{}", ran.err);
    }
    std::fs::create_dir(desk.course()).expect("a folder");
    assert_eq!(desk.call("plan", &[]).code, Some(2));
    assert_eq!(desk.call("new", &[]).code, Some(2));
    let nowhere = desk.file("no-such-folder/course.walling");
    let ran = run(&["new".as_ref(), nowhere.as_os_str()]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("does not exist"), "{}", ran.err);
}

#[test]
fn help_teaches() {
    let ran = run(&["--help"]);
    assert_eq!(ran.code, Some(0));
    for words in [
        "new",
        "plan",
        "check",
        "print",
        "First steps",
        "3 ft 6 in",
        "Exit codes",
    ] {
        assert!(ran.out.contains(words), "no {words:?} in\n{}", ran.out);
    }
    for (call, words) in [
        ("new", "--imperial"),
        ("plan", "--json"),
        ("check", "exit 1"),
        ("print", "--only"),
    ] {
        let ran = run(&[call, "--help"]);
        assert_eq!(ran.code, Some(0), "{call}");
        assert!(ran.out.contains(words), "no {words:?} in\n{}", ran.out);
    }
    let version = run(&["--version"]);
    assert!(version.out.starts_with("coursewright "), "{}", version.out);
}

#[test]
fn what_is_no_call_exits_with_2_and_says_what_there_is() {
    for arguments in [
        &[][..],
        &["paln"],
        &["plan"],
        &["plan", "a", "--jsn"],
        &["print", "a"],
    ] {
        let ran = run(arguments);
        assert_eq!(ran.code, Some(2), "{arguments:?}");
        assert!(ran.err.contains("Usage"), "{arguments:?}: {}", ran.err);
    }
}

/// As when the answer is piped to `head` and `head` has seen enough.
#[test]
fn a_reader_that_goes_away_is_no_trouble() {
    for (text, rest) in [
        (plain(), &["--json"][..]),
        (plain(), &[]),
        ("no".to_owned(), &[]),
    ] {
        let desk = Desk::with_course(&text);
        let mut child = Command::new(path())
            .arg("plan")
            .arg(desk.course())
            .args(rest)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program runs");
        drop(child.stdout.take());
        let ran = finish(child.wait_with_output());
        assert!(
            matches!(ran.code, Some(0 | 2)),
            "{:?}: {}",
            ran.code,
            ran.err
        );
    }
}

/// What a person typed must not give orders to the terminal it is shown on.
#[test]
fn typed_text_gives_no_orders_to_the_terminal() {
    let title = r#"title = "Red \u001b[31m alert \u0007 \u009b2J""#;
    let desk = Desk::with_course(&with(&[("title = \"Plain course\"", title)]));
    let bad = Desk::with_course(&with(&[("kind = \"bar\"", r#"kind = "b\u001b[31mr""#)]));
    for text in [desk.call("plan", &[]).out, bad.call("plan", &[]).err] {
        let order = text.chars().find(|c| c.is_control() && *c != '\n');
        assert_eq!(order, None, "{text:?}");
    }
}
