//! Own cards put on the shelf, judged and taken away.

use super::*;
use std::fs;

fn library() -> Library {
    Library::built_in().expect("sound")
}

#[test]
fn own_cards_stand_beside_and_over_the_built_in_ones() {
    let store = tempfile::tempdir().expect("a folder");
    let copes = written(store.path(), "copes").expect("there");
    assert_eq!(whose_is(store.path(), "copes"), Some(Whose::BuiltIn));
    let mine = copes.replace("title = \"Copes\"", "title = \"Our copes\"");
    save_card(store.path(), "copes", &mine).expect("saves");
    save_card(store.path(), "frost", &new_card("frost", "Frost")).expect("saves");
    let all = on_shelf(store.path());
    assert!(all.contains(&("copes".to_owned(), Whose::Replaces)));
    assert!(all.contains(&("frost".to_owned(), Whose::Own)));
    assert!(all.contains(&("throughs".to_owned(), Whose::BuiltIn)));
    assert_eq!(written(store.path(), "copes").expect("there"), mine);

    let read = Library::with_store(store.path()).expect("sound");
    assert!(read.faults.is_empty(), "{:?}", read.faults);
    let titles: Vec<&str> = read.cards.iter().map(|card| card.title.as_str()).collect();
    assert!(
        titles.contains(&"Our copes") && titles.contains(&"Frost"),
        "{titles:?}"
    );

    for id in ["copes", "frost", "frost"] {
        take_away(store.path(), id).expect("takes it away");
    }
    assert_eq!(written(store.path(), "copes").expect("there"), copes);
    assert_eq!(whose_is(store.path(), "frost"), None);
}

#[test]
fn a_name_that_leads_out_of_the_folder_is_none() {
    let store = tempfile::tempdir().expect("a folder");
    for id in ["", ".", "../copes", "a/b", "a\\b", "c:d", ".hidden"] {
        assert!(save_card(store.path(), id, "").is_err(), "{id}");
        assert!(take_away(store.path(), id).is_err(), "{id}");
        assert!(written(store.path(), id).is_err(), "{id}");
    }
    assert_eq!(fs::read_dir(store.path()).expect("lists").count(), 0);
}

#[test]
fn a_new_card_is_sound_whatever_it_is_called() {
    for title in [
        "Frost & stone",
        "\"Quoted\" \\ 'both'",
        "壁 🧱",
        &"long ".repeat(200),
    ] {
        let id = name_for(title, &["frost-stone", "lesson"]);
        let text = new_card(&id, title.trim());
        let (card, lesson) = library()
            .read_card(&id, &text)
            .unwrap_or_else(|it| panic!("{title}: {it:?}"));
        assert_eq!(card.title, title.trim());
        assert!(lesson.when.is_empty(), "taught only where it is asked for");
    }
    assert_eq!(name_for("Frost & stone", &["frost-stone"]), "frost-stone-2");
    assert_eq!(name_for("壁", &["lesson", "lesson-2"]), "lesson-3");
}

#[test]
fn a_fault_is_told_where_it_can_be_mended() {
    let store = tempfile::tempdir().expect("a folder");
    let sound = written(store.path(), "throughs").expect("there");
    let line_of =
        |text: &str, words: &str| text.lines().position(|it| it.contains(words)).expect(words) + 1;
    for (find, with, key, what) in [
        (
            "minutes = 15",
            "minutes = \"ages\"",
            "minutes",
            "this is no length of a lesson",
        ),
        (
            "minutes = 15",
            "minutes = 0",
            "minutes",
            "this is no length of a lesson",
        ),
        (
            "title = \"Throughs\"",
            "title = \" \"",
            "title",
            "this lesson has no title",
        ),
        (
            "before = \"throughs\"",
            "before = \"through\"",
            "before",
            "did you mean \"throughs\"?",
        ),
        (
            "\"lifting\", ",
            "\"liftin\", ",
            "hazards",
            "there is no caution \"liftin\"",
        ),
        ("Say what a through does", "Say {heigth}", "aims", "heigth"),
    ] {
        let broken = sound.replacen(find, with, 1);
        let wrong = library().read_card("throughs", &broken).expect_err(with);
        assert_eq!(wrong.key, key, "{wrong:?}");
        assert!(wrong.what.contains(what), "{wrong:?}");
        assert_eq!(wrong.text_line, None);
        assert_eq!(
            wrong.line,
            line_of(&broken, with.trim_start_matches(", ")),
            "{wrong:?}"
        );
    }
    let broken = sound.replacen("## First the bed", "## First the {bedd}", 1);
    let wrong = library()
        .read_card("throughs", &broken)
        .expect_err("a figure");
    assert_eq!(wrong.line, line_of(&broken, "{bedd}"));
    let body = draft::parts(&broken).expect("a head").body;
    assert_eq!(wrong.text_line, Some(line_of(&body, "{bedd}")));
    let windows = broken.replace('\n', "\r\n");
    assert_eq!(
        library()
            .read_card("throughs", &windows)
            .expect_err("a figure"),
        wrong
    );
}

#[test]
fn every_built_in_card_reads_as_it_stands() {
    let store = tempfile::tempdir().expect("a folder");
    for (id, _) in on_shelf(store.path()) {
        let text = written(store.path(), &id).expect("there");
        assert!(library().read_card(&id, &text).is_ok(), "{id}");
        assert!(draft::parts(&text).is_some(), "{id}");
    }
}
