//! Parts of a card read and changed, and all the rest left as it was.

use super::*;

/// As people write: spaces, remarks, both kinds of quotes.
const CARD: &str = r#"+++
id = "frost"
title   = 'Frost & stone'   # for January
minutes = 15
before = "footing"
aims = ["One", "Two"]
show = [
  # the first thing
  "A stone", # sandstone
  "A split",
]
questions = [
  { ask = "How deep?", answer = "{height}" },
  { answer = 'Yes', ask = "Does it lift?" },
]
+++


Text of **one**

  - list
"#;

fn strings(lines: &[&str]) -> Vec<String> {
    lines.iter().map(|&it| it.to_owned()).collect()
}

#[test]
fn a_card_is_taken_apart() {
    let parts = parts(CARD).expect("a head");
    assert_eq!(parts.title, "Frost & stone");
    assert_eq!(parts.minutes, "15");
    assert_eq!(parts.show, ["A stone", "A split"]);
    assert_eq!(
        parts.questions[1],
        ("Does it lift?".to_owned(), "Yes".to_owned())
    );
    assert_eq!(parts.body, "Text of **one**\n\n  - list\n");
    assert!(parts.kit.is_empty() && parts.when.is_empty());
}

#[test]
fn what_is_said_again_changes_no_byte() {
    let windows = format!("\u{FEFF}{}", CARD.replace('\n', "\r\n"));
    for text in [CARD, windows.as_str()] {
        let is = parts(text).expect("a head");
        for change in [
            Change::Word("title", &is.title),
            Change::Word("minutes", &is.minutes),
            Change::Lines("show", &is.show),
            Change::Questions(&is.questions),
            Change::Body(&is.body),
        ] {
            assert_eq!(changed(text, change).as_deref(), Some(text), "{change:?}");
        }
    }
}

#[test]
fn one_part_changes_and_the_rest_stays() {
    for (change, was, is) in [
        (
            Change::Word("title", "Ice"),
            "title   = 'Frost & stone'   # for January",
            "title   = \"Ice\"   # for January",
        ),
        (
            Change::Word("minutes", "30"),
            "minutes = 15",
            "minutes = 30",
        ),
        (
            Change::Word("minutes", "ages"),
            "minutes = 15",
            "minutes = \"ages\"",
        ),
        (
            Change::Lines("aims", &strings(&["One", "Two", "Three"])),
            "[\"One\", \"Two\"]",
            "[\"One\", \"Two\", \"Three\"]",
        ),
        (Change::Lines("aims", &[]), "[\"One\", \"Two\"]", "[]"),
        (
            Change::Lines("show", &strings(&["A stone", "A wedge", "A split"])),
            "  \"A stone\", # sandstone\n",
            "  \"A stone\", # sandstone\n  \"A wedge\",\n",
        ),
        (
            Change::Lines("show", &strings(&["A stone", "A split", "A wedge"])),
            "  \"A split\",\n",
            "  \"A split\",\n  \"A wedge\",\n",
        ),
        (
            Change::Lines("show", &strings(&["A stone"])),
            "  \"A split\",\n",
            "",
        ),
        (
            Change::Questions(&[
                ("How deep?".to_owned(), "Deep".to_owned()),
                ("Does it lift?".to_owned(), "Yes".to_owned()),
            ]),
            "answer = \"{height}\"",
            "answer = \"Deep\"",
        ),
        (
            Change::Body("Other words.\n"),
            "Text of **one**\n\n  - list\n",
            "Other words.\n",
        ),
    ] {
        let expected = CARD.replacen(was, is, 1);
        assert_ne!(expected, CARD, "{was}");
        assert_eq!(
            changed(CARD, change).as_deref(),
            Some(expected.as_str()),
            "{change:?}"
        );
    }
}

#[test]
fn a_part_that_is_not_there_is_written_at_the_end_of_the_head() {
    let kit = strings(&["Bucket"]);
    let text = changed(CARD, Change::Lines("kit", &kit)).expect("a head");
    assert_eq!(
        text,
        CARD.replacen("]\n+++\n", "]\nkit = [\"Bucket\"]\n+++\n", 1)
    );
}

#[test]
fn questions_in_tables_of_their_own_stay_there() {
    let text =
        "+++\nid = \"a\"\n\n[[questions]]\nask = \"A?\" # first\nanswer = \"a\"\n+++\nWords\n";
    let asked = [
        ("A?".to_owned(), "b".to_owned()),
        ("B?".to_owned(), "c".to_owned()),
    ];
    let now = changed(text, Change::Questions(&asked)).expect("a head");
    assert!(
        now.contains("ask = \"A?\" # first\nanswer = \"b\"\n"),
        "{now}"
    );
    assert_eq!(parts(&now).expect("a head").questions, asked);
    assert!(now.ends_with("+++\nWords\n"), "{now}");
}

#[test]
fn line_ends_stay_those_of_the_file() {
    let windows = CARD.replace('\n', "\r\n");
    let now = changed(&windows, Change::Body("One\nTwo\n")).expect("a head");
    assert!(now.ends_with("One\r\nTwo\r\n"));
    assert_eq!(now.matches('\n').count(), now.matches("\r\n").count());
}

#[test]
fn a_card_without_a_head_is_mended_as_a_whole() {
    for text in [
        "",
        "words",
        "+++\nid = \"a\"\nno end",
        "+++\nno toml here\n+++\n",
    ] {
        assert_eq!(parts(text), None, "{text}");
        assert_eq!(changed(text, Change::Word("title", "A")), None, "{text}");
    }
}

#[test]
fn a_line_is_told_by_its_key_or_by_its_place_in_the_text() {
    for (line, key) in [(2, "id"), (7, "show"), (10, "show"), (13, "questions")] {
        assert_eq!(key_at(CARD, line).as_deref(), Some(key), "{line}");
    }
    assert_eq!(lines_above(CARD), 18);
}

/// Whatever is typed stands in the card afterwards, and the rest is as it was.
#[test]
fn what_is_typed_is_what_is_read() {
    let long = "long ".repeat(2000);
    let odd = [
        "",
        " ",
        "\"",
        "\\",
        "'",
        "'''",
        "\"\"\"",
        "\\n",
        "#",
        "+++",
        "= [",
        "{50 mm}",
        "\u{7}",
        "\u{1F9F1} \u{58C1}",
        "a\"b'c\\d",
        "\t tab",
        &long,
    ];
    let before = parts(CARD).expect("a head");
    for title in odd {
        for count in [0, 1, 3, 5] {
            let lines = odd.iter().cycle().take(count);
            let lines: Vec<String> = lines.map(|it| format!("{it}{title}")).collect();
            let asked = lines.iter().map(|it| (it.clone(), title.to_owned()));
            let asked: Vec<(String, String)> = asked.collect();
            let text = changed(CARD, Change::Word("title", title)).expect("a head");
            let text = changed(&text, Change::Lines("show", &lines)).expect("a head");
            let text = changed(&text, Change::Questions(&asked)).expect("a head");
            let now = parts(&text).expect("a head");
            assert_eq!(now.title, title);
            assert_eq!(now.show, lines);
            assert_eq!(now.questions, asked);
            assert_eq!((&now.body, &now.aims), (&before.body, &before.aims));
        }
        let text = changed(CARD, Change::Body(title)).expect("a head");
        assert_eq!(parts(&text).expect("a head").body, title);
    }
}
