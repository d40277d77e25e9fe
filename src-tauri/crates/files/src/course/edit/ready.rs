//! Marks of what has been seen to, set and taken back.

use super::{checked, no_such, parsed, text_value};
use crate::Fault;
use toml_edit::{Array, DocumentMut, Item, RawString, Table, Value};

/// The text with something marked done, or no longer so, by its id. The first mark makes the
/// `[ready]` table; taking the last one back leaves it, for the list is kept from then on.
/// Comments stay. Whether there is such a thing shows when the course is planned.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn mark(text: &str, id: &str, done: bool) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let marks = marks(&mut document)?;
    let at = marks.iter().position(|it| it.as_str() == Some(id));
    match (at, done) {
        (None, true) => add(marks, id),
        (Some(at), false) => take(marks, at),
        _ => {}
    }
    checked(document, text)
}

fn marks(document: &mut DocumentMut) -> Result<&mut Array, Fault> {
    let root = document.as_table_mut();
    root.entry("ready")
        .or_insert_with(|| Item::Table(Table::new()))
        .as_table_like_mut()
        .ok_or_else(|| no_such("ready"))?
        .entry("done")
        .or_insert_with(|| Item::Value(Value::Array(Array::new())))
        .as_array_mut()
        .ok_or_else(|| no_such("ready.done"))
}

/// One mark more, written as the last one is, on a line of its own or not. A comment behind
/// the last one stays behind it.
fn add(marks: &mut Array, id: &str) {
    let mut value = text_value(id);
    let last = marks.len().checked_sub(1);
    if let Some(last) = last.and_then(|last| marks.get_mut(last)) {
        let (before, behind) = (said(last.decor().prefix()), said(last.decor().suffix()));
        last.decor_mut().set_suffix("");
        let own_line = before.rfind('\n').map_or("", |line| &before[line..]);
        let comment = format!("{behind}{}", said(Some(marks.trailing())));
        let decor = value.decor_mut();
        if comment.contains('#') {
            let line = if own_line.is_empty() { "\n" } else { own_line };
            decor.set_prefix(format!("{}{line}", comment.trim_end()));
            decor.set_suffix("");
            marks.set_trailing("\n");
        } else {
            decor.set_prefix(if own_line.is_empty() { " " } else { own_line });
            decor.set_suffix(behind);
        }
    }
    marks.push_formatted(value);
}

/// One mark less. A comment before it, which may speak of the mark before, stays.
fn take(marks: &mut Array, at: usize) {
    let taken = marks.remove(at);
    let (before, behind) = (said(taken.decor().prefix()), said(taken.decor().suffix()));
    let comment = before.contains('#');
    if let Some(next) = marks.get_mut(at) {
        let own = said(next.decor().prefix());
        let prefix = match own.contains('#') {
            _ if comment => format!("{}{own}", before.trim_end()),
            true => own,
            false => before,
        };
        next.decor_mut().set_prefix(prefix);
        return;
    }
    if comment {
        let trailing = said(Some(marks.trailing()));
        let end = if trailing.contains('\n') {
            &trailing
        } else {
            "\n"
        };
        marks.set_trailing(format!("{}{end}", before.trim_end()));
    }
    if let Some(last) = at.checked_sub(1).and_then(|last| marks.get_mut(last)) {
        last.decor_mut().set_suffix(behind);
    }
}

fn said(raw: Option<&RawString>) -> String {
    let text = raw.and_then(RawString::as_str);
    text.unwrap_or_default().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::CourseFile;

    fn done(text: &str) -> Option<Vec<String>> {
        let ready = CourseFile::parse(text).expect("sound").course.ready;
        ready.map(|it| it.done)
    }

    fn with(more: &str) -> String {
        format!("{}\n{more}", Library::example(false))
    }

    #[test]
    fn the_first_mark_makes_the_table_and_the_last_leaves_it() {
        let text = Library::example(false);
        let one = mark(text, "permission", true).expect("a mark");
        assert_eq!(one, format!("{text}\n[ready]\ndone = [\"permission\"]\n"));
        let two = mark(&one, "kit:walling-hammer", true).expect("two");
        assert!(
            two.ends_with("done = [\"permission\", \"kit:walling-hammer\"]\n"),
            "{two}"
        );
        assert_eq!(mark(&two, "permission", true).expect("again"), two);
        let back = mark(&two, "permission", false).expect("one less");
        assert!(
            back.ends_with("done = [\"kit:walling-hammer\"]\n"),
            "{back}"
        );
        let none = mark(&back, "kit:walling-hammer", false).expect("none");
        assert_eq!(done(&none), Some(Vec::new()));
        assert_eq!(mark(&none, "stone", false).expect("as it was"), none);
    }

    #[test]
    fn comments_stay_whatever_is_marked() {
        let text = with(
            "[ready]                # what is done\ndone = [\n  \"permission\",        # letter in the folder\n  \"insurance\",         # until May\n]\n",
        );
        let more = mark(&text, "stone", true).expect("a mark");
        assert!(
            more.ends_with(
                "done = [\n  \"permission\",        # letter in the folder\n  \"insurance\",         # until May\n  \"stone\",\n]\n"
            ),
            "{more}"
        );
        for id in ["permission", "insurance", "stone"] {
            let less = mark(&more, id, false).expect("one less");
            for comment in ["# what is done", "# letter in the folder", "# until May"] {
                assert!(less.contains(comment), "{id}: {less}");
            }
            assert_eq!(done(&less).map(|it| it.len()), Some(2), "{id}");
            assert_eq!(
                done(&less).map(|it| it.contains(&id.to_owned())),
                Some(false)
            );
        }
        let without_comma = text.replace("  \"insurance\",", "  \"insurance\"");
        let more = mark(&without_comma, "stone", true).expect("a mark");
        assert!(
            more.contains("\"insurance\",         # until May\n  \"stone\"\n]"),
            "{more}"
        );
    }

    #[test]
    fn a_table_on_one_line_is_marked_as_well() {
        let text = Library::example(false);
        let text = text.replacen("[venue]", "ready = { done = [ \"stone\" ] }\n\n[venue]", 1);
        let more = mark(&text, "permission", true).expect("a mark");
        assert_eq!(
            done(&more),
            Some(vec!["stone".to_owned(), "permission".to_owned()])
        );
        assert_eq!(mark(&more, "permission", false).expect("back"), text);
        assert!(mark("nonsense", "stone", true).is_err());
    }

    /// What anyone could type as an id comes back as typed.
    #[test]
    fn an_id_of_any_signs_is_kept() {
        for id in ["kit:\"long\" tape", "prepare:schärfen", "a\\b", "new\nline"] {
            let text = mark(Library::example(false), id, true).expect(id);
            assert_eq!(done(&text), Some(vec![id.to_owned()]));
            let back = mark(&text, id, false).expect(id);
            assert_eq!(done(&back), Some(Vec::new()));
        }
    }
}
