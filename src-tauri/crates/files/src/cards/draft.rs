//! A lesson card while it is written: its text taken apart for an editor, and one part of it changed
//! so that all the rest stays as a person wrote it.

use super::FENCE;
use crate::course::with_ends_of;
use crate::shelf::plain_lines;
use toml_edit::{Array, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// What closes the head of a card.
pub(super) const CLOSES: &str = "\n+++\n";

/// What stands before a text in some editors' files.
const MARK: char = '\u{FEFF}';

/// The parts of a card as they are written, sound or not.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[allow(missing_docs)]
pub struct Parts {
    pub title: String,
    pub kind: String,
    /// As typed, so that what is no number can be told.
    pub minutes: String,
    pub before: String,
    /// Empty where it is not said.
    pub when: Vec<String>,
    pub drawings: Vec<String>,
    pub aims: Vec<String>,
    pub show: Vec<String>,
    pub kit: Vec<String>,
    pub hazards: Vec<String>,
    pub mistakes: Vec<String>,
    /// What is asked and what is right.
    pub questions: Vec<(String, String)>,
    /// What is said, in Markdown, without the empty lines above it.
    pub body: String,
}

/// A change of one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change<'a> {
    /// `title`, `kind`, `minutes` or `before`.
    Word(&'a str, &'a str),
    /// `when`, `drawings`, `aims`, `show`, `kit`, `hazards` or `mistakes`.
    Lines(&'a str, &'a [String]),
    /// What is asked and what is right.
    Questions(&'a [(String, String)]),
    /// What is said.
    Body(&'a str),
}

/// Where head and body lie in a text with plain lines.
struct Cut<'a> {
    head: &'a str,
    /// The empty lines between the head and the first words.
    gap: &'a str,
    body: &'a str,
}

fn cut(text: &str) -> Option<Cut<'_>> {
    let rest = text.strip_prefix(FENCE)?;
    let end = rest.find(CLOSES)?;
    let after = &rest[end + CLOSES.len()..];
    let body = after.trim_start_matches('\n');
    Some(Cut {
        // With its last line feed, so that what is added to it stands on a line of its own.
        head: &rest[..=end],
        gap: &after[..after.len() - body.len()],
        body,
    })
}

/// How many lines stand above the body of a card with plain lines.
pub(super) fn lines_above(text: &str) -> usize {
    cut(text).map_or(0, |it| {
        let above = text.len() - it.body.len();
        text[..above].matches('\n').count()
    })
}

/// The key of the head that a line of a card with plain lines belongs to, counted from 1.
pub(super) fn key_at(text: &str, line: usize) -> Option<String> {
    let cut = cut(text)?;
    let document: toml_edit::Document<&str> = toml_edit::Document::parse(cut.head).ok()?;
    let line_of = |at: usize| 2 + cut.head[..at.min(cut.head.len())].matches('\n').count();
    let keys = document.as_table().iter().filter_map(|(key, item)| {
        let span = item.span()?;
        let last = span.end.saturating_sub(1).max(span.start);
        (line_of(span.start)..=line_of(last))
            .contains(&line)
            .then(|| key.to_owned())
    });
    keys.last()
}

/// The parts of a card; nothing where its head can't be told from its text or is no TOML, so that
/// it can only be mended as a whole.
pub fn parts(text: &str) -> Option<Parts> {
    let plain = plain_lines(text);
    let cut = cut(&plain)?;
    let document: DocumentMut = cut.head.parse().ok()?;
    let word = |key: &str| document.get(key).map(shown).unwrap_or_default();
    let lines = |key: &str| document.get(key).map(texts).unwrap_or_default();
    Some(Parts {
        title: word("title"),
        kind: word("kind"),
        minutes: word("minutes"),
        before: word("before"),
        when: lines("when"),
        drawings: lines("drawings"),
        aims: lines("aims"),
        show: lines("show"),
        kit: lines("kit"),
        hazards: lines("hazards"),
        mistakes: lines("mistakes"),
        questions: document.get("questions").map(pairs).unwrap_or_default(),
        body: cut.body.to_owned(),
    })
}

/// The text with one part changed; nothing where [`parts`] has nothing. Where the part is what it
/// was, the text is the same byte for byte.
pub fn changed(text: &str, change: Change<'_>) -> Option<String> {
    let plain = plain_lines(text);
    let cut = cut(&plain)?;
    let now = match change {
        Change::Body(body) if plain_lines(body) == cut.body => return Some(text.to_owned()),
        Change::Body(body) => format!("{FENCE}{}+++\n{}{}", cut.head, cut.gap, plain_lines(body)),
        _ => {
            let mut document: DocumentMut = cut.head.parse().ok()?;
            put(document.as_table_mut(), change);
            let head = document.to_string();
            if head == cut.head {
                return Some(text.to_owned());
            }
            let ends = if head.ends_with('\n') { "" } else { "\n" };
            format!("{FENCE}{head}{ends}+++\n{}{}", cut.gap, cut.body)
        }
    };
    let now = with_ends_of(text, now);
    Some(if text.starts_with(MARK) {
        format!("{MARK}{now}")
    } else {
        now
    })
}

fn put(table: &mut Table, change: Change<'_>) {
    match change {
        Change::Word(key, typed) => put_word(table, key, typed),
        Change::Lines(key, lines) => {
            let old = table.get(key).map(texts).unwrap_or_default();
            if old != lines || !table.contains_key(key) {
                let mut array = array_at(table, key);
                replace(&mut array, &old, lines, |_, line| {
                    Value::from(line.as_str())
                });
                table[key] = Item::Value(Value::Array(array));
            }
        }
        Change::Questions(asked) => put_questions(table, asked),
        Change::Body(_) => {}
    }
}

/// A number stays one as long as it reads as one; everything else is a text.
fn put_word(table: &mut Table, key: &str, typed: &str) {
    if table.get(key).map(shown).as_deref() == Some(typed) {
        return;
    }
    let number = typed
        .trim()
        .parse::<i64>()
        .ok()
        .filter(|_| key == "minutes");
    let mut value = number.map_or_else(|| Value::from(typed), Value::from);
    if let Some(old) = table.get(key).and_then(Item::as_value) {
        *value.decor_mut() = old.decor().clone();
    }
    table[key] = Item::Value(value);
}

fn put_questions(table: &mut Table, asked: &[(String, String)]) {
    if let Some(Item::ArrayOfTables(tables)) = table.get_mut("questions") {
        while asked.len() < tables.len() {
            tables.remove(tables.len() - 1);
        }
        for (at, (ask, answer)) in asked.iter().enumerate() {
            if tables.get(at).is_none() {
                tables.push(Table::new());
            }
            if let Some(one) = tables.get_mut(at) {
                put_word(one, "ask", ask);
                put_word(one, "answer", answer);
            }
        }
        return;
    }
    let old = table.get("questions").map(pairs).unwrap_or_default();
    let mut array = array_at(table, "questions");
    replace(&mut array, &old, asked, |was, (ask, answer)| {
        let mut one = was
            .and_then(Value::as_inline_table)
            .cloned()
            .unwrap_or_else(InlineTable::new);
        for (key, text) in [("ask", ask), ("answer", answer)] {
            if one.get(key).and_then(Value::as_str) == Some(text.as_str()) {
                continue;
            }
            let mut value = Value::from(text.as_str());
            if let Some(old) = one.get(key) {
                *value.decor_mut() = old.decor().clone();
            }
            one.insert(key, value);
        }
        Value::InlineTable(one)
    });
    table["questions"] = Item::Value(Value::Array(array));
}

/// The list under a key; a new one where there is none.
fn array_at(table: &Table, key: &str) -> Array {
    let found = table.get(key).and_then(Item::as_array);
    found.cloned().unwrap_or_default()
}

/// Puts new lines in place of old ones. What stays the same at both ends keeps its place, its
/// spelling and its remarks.
fn replace<T: PartialEq>(
    array: &mut Array,
    old: &[T],
    new: &[T],
    value: impl Fn(Option<&Value>, &T) -> Value,
) {
    // A list that holds something else than is shown is written anew.
    let old = if old.len() == array.len() { old } else { &[] };
    if old.is_empty() {
        array.clear();
    }
    let same = |(one, other): &(&T, &T)| one == other;
    let first = old.iter().zip(new).take_while(same).count();
    let ends = old[first..].iter().rev().zip(new[first..].iter().rev());
    let last = ends.take_while(same).count();
    let (from, to) = (first, new.len() - last);
    for gone in (to..old.len() - last).rev() {
        let remark = take_remark(array, gone);
        array.remove(gone);
        put_remark(array, gone, &remark);
    }
    for (at, new) in new.iter().enumerate().take(to).skip(from) {
        if at < old.len() - last {
            let now = value(array.get(at), new);
            array.replace(at, now);
        } else {
            let mut one = value(None, new);
            set_off(&mut one, array, at);
            let remark = take_remark(array, at);
            array.insert_formatted(at, one);
            put_remark(array, at, &remark);
        }
    }
}

/// What stands before a place of a list, of a value or behind the last.
fn before(array: &Array, at: usize) -> String {
    let raw = match array.get(at) {
        Some(value) => value.decor().prefix(),
        None => Some(array.trailing()),
    };
    raw.and_then(|it| it.as_str())
        .unwrap_or_default()
        .to_owned()
}

fn set_before(array: &mut Array, at: usize, text: String) {
    match array.get_mut(at) {
        Some(value) => value.decor_mut().set_prefix(text),
        None => array.set_trailing(text),
    }
}

/// The remark behind the line above, which the library keeps with what comes next.
fn take_remark(array: &mut Array, at: usize) -> String {
    let whole = before(array, at);
    let Some(end) = whole
        .find('\n')
        .filter(|end| !whole[..*end].trim().is_empty())
    else {
        return String::new();
    };
    set_before(array, at, whole[end..].to_owned());
    whole[..end].to_owned()
}

fn put_remark(array: &mut Array, at: usize, remark: &str) {
    if remark.is_empty() {
        return;
    }
    let rest = before(array, at);
    let line = if rest.contains('\n') { "" } else { "\n" };
    set_before(array, at, format!("{remark}{line}{rest}"));
}

/// Room before a new line as the lines beside it have it.
fn set_off(value: &mut Value, array: &Array, at: usize) {
    let beside = at.checked_sub(1).and_then(|before| array.get(before));
    let prefix = match beside {
        Some(beside) => {
            let prefix = beside.decor().prefix().and_then(|it| it.as_str());
            let prefix = prefix.unwrap_or_default();
            // A remark above the line before belongs to that line alone.
            match prefix.rfind('\n') {
                Some(end) => prefix[end..].to_owned(),
                None => " ".to_owned(),
            }
        }
        None => String::new(),
    };
    value.decor_mut().set_prefix(prefix);
}

/// A value as a field shows it.
fn shown(item: &Item) -> String {
    match item.as_value() {
        Some(Value::String(text)) => text.value().clone(),
        Some(Value::Integer(number)) => number.value().to_string(),
        Some(other) => other.to_string().trim().to_owned(),
        None => String::new(),
    }
}

fn texts(item: &Item) -> Vec<String> {
    let values = item.as_array().into_iter().flatten();
    values
        .filter_map(|it| it.as_str().map(ToOwned::to_owned))
        .collect()
}

fn pairs(item: &Item) -> Vec<(String, String)> {
    let pair = |table: &dyn TableLike| {
        let of = |key: &str| table.get(key).map(shown).unwrap_or_default();
        (of("ask"), of("answer"))
    };
    match item {
        Item::ArrayOfTables(tables) => tables.iter().map(|it| pair(it)).collect(),
        _ => {
            let values = item.as_array().into_iter().flatten();
            let tables = values.filter_map(Value::as_inline_table);
            tables.map(|it| pair(it)).collect()
        }
    }
}

#[cfg(test)]
mod tests;
