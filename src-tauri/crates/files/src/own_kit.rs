//! Kit rules changed for good: the instructor's own `kit-own.toml`, edited as text and saved.

use crate::course::{change_in, own_changes, take_back_in};
use crate::save::save;
use crate::shelf::{Shelf, Text};
use crate::tables::{KIT_OWN, rules_with};
use crate::{Error, Fault};
use std::path::Path;
use toml_edit::{DocumentMut, Item};

/// How a new file begins.
const HEAD: &str = "\
# Kit rules of your own: each [[rule]] names a tool and what is different from the rule of that
# name in kit.toml, on every course. off = true switches a rule off; a tool that no rule names
# needs per and each. A course file may say otherwise once more, as [[kit.rule]].
";

/// The text of `kit-own.toml` with the rule of a tool changed for good; an empty text makes a
/// new file. Keys and values as in [`crate::course::change_rule`].
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn change_for_good(text: &str, item: &str, keys: &[(&str, &str)]) -> Result<String, Fault> {
    let text = if text.trim().is_empty() { HEAD } else { text };
    edited(text, |all| change_in(all, item, keys))
}

/// The text of `kit-own.toml` without what it changes of the rule of a tool.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn take_back_for_good(text: &str, item: &str) -> Result<String, Fault> {
    edited(text, |all| {
        take_back_in(all, item);
        Ok(())
    })
}

/// Changes the rule of a tool for good in an instructor's store, making the file if there is
/// none. What every library of this store would refuse is refused here, and nothing is saved.
///
/// # Errors
/// [`Error::Refused`] for a change that can't be made, such as a tool no rule names without
/// `per` and `each`; [`Error::Read`]; [`Error::Write`].
pub fn save_change(store: &Path, item: &str, keys: &[(&str, &str)]) -> Result<(), Error> {
    write(store, |text| change_for_good(text, item, keys))
}

/// Takes back, in an instructor's store, what was changed for good of the rule of a tool.
///
/// # Errors
/// As [`save_change`].
pub fn save_taken_back(store: &Path, item: &str) -> Result<(), Error> {
    write(store, |text| take_back_for_good(text, item))
}

/// The tools whose rules the instructor's own file changes.
pub(crate) fn items(shelf: &Shelf) -> Result<Vec<String>, Error> {
    let Some(own) = shelf.own(KIT_OWN)? else {
        return Ok(Vec::new());
    };
    let changes = own_changes(&own.text).map_err(|fault| own.refuse(fault))?;
    Ok(changes.into_iter().map(|it| it.item).collect())
}

fn edited(text: &str, edit: impl FnOnce(&mut Item) -> Result<(), Fault>) -> Result<String, Fault> {
    own_changes(text)?;
    let mut document: DocumentMut = text.parse().map_err(|_| no_file())?;
    // Comments with no rule below them would end up below a new one.
    let head = if document.is_empty() {
        text.trim_end()
    } else {
        ""
    };
    if document.is_empty() {
        document = DocumentMut::new();
    }
    edit(document.as_item_mut())?;
    let text = match (head, document.to_string()) {
        ("", rules) => rules,
        (head, rules) if rules.is_empty() => format!("{head}\n"),
        (head, rules) => format!("{head}\n\n{}", rules.trim_start()),
    };
    own_changes(&text).map(|_| text)
}

/// A text that was just read can't but be TOML.
fn no_file() -> Fault {
    Fault {
        code: "not-toml",
        key: String::new(),
        at: 0,
        what: "this is not TOML".to_owned(),
        cure: "change it in the file itself".to_owned(),
    }
}

fn write(store: &Path, edit: impl FnOnce(&str) -> Result<String, Fault>) -> Result<(), Error> {
    let shelf = Shelf {
        own: Some(store.join("lessons")),
    };
    let file = store.join("lessons").join(KIT_OWN);
    let old = shelf.own(KIT_OWN)?;
    let old = old.unwrap_or_else(|| Text::of(&file, String::new()));
    let text = edit(&old.text).map_err(|fault| old.refuse(fault))?;
    let new = Text::of(&file, text);
    rules_with(&shelf, &new)?;
    if let Some(folder) = file.parent() {
        std::fs::create_dir_all(folder).map_err(|cause| Error::Write {
            path: file.clone(),
            cause,
        })?;
    }
    save(&file, new.text.as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use craft::tables::{Each, KitRule};

    fn rule<'l>(library: &'l Library, item: &str) -> Option<&'l KitRule> {
        library.tables.kit.iter().find(|rule| rule.item == item)
    }

    #[test]
    fn a_change_for_good_is_there_whenever_the_store_is_read() {
        let store = tempfile::tempdir().expect("a folder");
        let built_in = Library::built_in().expect("sound");
        save_change(store.path(), "spade", &[("each", "3"), ("mass", "5 lb")]).expect("saved");
        save_change(store.path(), "Kettle", &[("per", "group"), ("each", "1")]).expect("saved");
        save_change(store.path(), "Pencil", &[("off", "true")]).expect("saved");
        let library = Library::with_store(store.path()).expect("sound");
        let spade = rule(&library, "Spade").expect("a rule");
        assert_eq!(spade.each, Each::Same(3.0));
        assert_eq!(spade.source, "changed for good");
        assert_eq!(
            rule(&library, "Kettle").expect("a rule").source,
            "added for good"
        );
        assert!(rule(&library, "Pencil").expect("a rule").off);
        // Nothing else has changed.
        for was in &built_in.tables.kit {
            if !["Spade", "Pencil"].contains(&was.item.as_str()) {
                assert_eq!(Some(was), rule(&library, &was.item));
            }
        }
        for item in ["Spade", "Kettle", "Pencil"] {
            save_taken_back(store.path(), item).expect("saved");
        }
        let library = Library::with_store(store.path()).expect("sound");
        assert_eq!(library.tables.kit, built_in.tables.kit);
    }

    #[test]
    fn what_would_spoil_the_store_is_not_saved() {
        let store = tempfile::tempdir().expect("a folder");
        let refused = save_change(store.path(), "Spode", &[("each", "3")]).expect_err("refused");
        let file = store.path().join("lessons").join(KIT_OWN);
        assert_eq!(
            refused.to_string(),
            format!(
                "{}:6:1: rule 1.item: no kit rule is named \"Spode\", and a new one needs both \
                 per and each\ndid you mean \"Spade\"? Else say how a new one is counted, such \
                 as per = \"pair\" and each = 1",
                file.display()
            )
        );
        assert!(!file.exists());
        let refused = save_change(store.path(), "Spade", &[("needed_for", "digging")]);
        assert_eq!(refused.expect_err("refused").code(), "needed-for");
    }

    #[test]
    fn a_fault_in_the_file_is_named_with_its_line() {
        let store = tempfile::tempdir().expect("a folder");
        let file = store.path().join("lessons").join(KIT_OWN);
        std::fs::create_dir_all(file.parent().expect("a folder")).expect("makes it");
        std::fs::write(&file, "[[rule]]\nitem = \"Spade\"\neach = -1\n").expect("writes");
        let refused = Library::with_store(store.path()).expect_err("refused");
        let due = format!(
            "{}:3:1: rule 1.each: this is less than nothing",
            file.display()
        );
        assert!(refused.to_string().starts_with(&due), "{refused}");
        // Nor is such a file changed by adding to it.
        let added = save_change(store.path(), "Tape", &[("least", "4")]).expect_err("refused");
        assert_eq!(added.to_string(), refused.to_string());
    }

    #[test]
    fn comments_in_a_file_of_ones_own_stay() {
        let text = "# mine\n[[rule]]\nitem = \"Spade\" # the long ones\neach = 2\n";
        let more = change_for_good(text, "Tape", &[("least", "4")]).expect("changed");
        assert_eq!(
            more,
            format!("{text}\n[[rule]]\nitem = \"Tape\"\nleast = 4\n")
        );
        assert_eq!(take_back_for_good(&more, "tape").expect("taken back"), text);
        assert_eq!(
            change_for_good("[[rule]\n", "Tape", &[])
                .expect_err("broken")
                .code,
            "not-toml"
        );
    }
}
