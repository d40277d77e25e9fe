//! A view told by what is other than in the one before, so that a key press waits for no more than it changes.

use serde_json::{Value, to_value};
use shapes::window::{Difference, Renewed, View};

/// What is no longer than this is told as a whole: to say where in it something is other takes as much.
const SHORT: usize = 200;
/// About as long as a number or a truth value is.
const A_NUMBER: usize = 5;

/// The view that was told last. The window has it, or knows another number.
#[derive(Default)]
pub(crate) struct Renewal {
    number: u32,
    /// Nothing before the first.
    told: Option<Value>,
}

impl Renewal {
    /// A view as what it changes of the view of the number that is known; whole where that is not
    /// the one told last.
    pub(crate) fn of(&mut self, known: Option<u32>, view: &View) -> serde_json::Result<Renewed> {
        let now = to_value(view)?;
        let before = self.told.take().filter(|_| known == Some(self.number));
        self.number = self.number.wrapping_add(1);
        let mut changes = Vec::new();
        let mut whole = None;
        match before {
            Some(before) => compare(&mut Vec::new(), &before, &now, &mut changes),
            None => whole = Some(now.clone()),
        }
        self.told = Some(now);
        Ok(Renewed {
            number: self.number,
            whole,
            changes,
        })
    }
}

/// Notes what is other, as deep inside as records keep their fields and lists their length.
fn compare(at: &mut Vec<String>, before: &Value, now: &Value, changes: &mut Vec<Difference>) {
    if before == now {
        return;
    }
    let Some(parts) = parts(before, now) else {
        changes.push(Difference {
            at: at.clone(),
            now: now.clone(),
        });
        return;
    };
    for (name, before, now) in parts {
        at.push(name);
        compare(at, before, now, changes);
        at.pop();
    }
}

type Part<'view> = (String, &'view Value, &'view Value);

/// The parts of two values by their names, before and now; nothing where they are not alike.
fn parts<'view>(before: &'view Value, now: &'view Value) -> Option<Vec<Part<'view>>> {
    if length(now) <= SHORT {
        return None;
    }
    match (before, now) {
        (Value::Object(before), Value::Object(now)) if before.keys().eq(now.keys()) => {
            let pairs = before.values().zip(now);
            let part = |(was, (name, is)): (_, (&String, _))| (name.clone(), was, is);
            Some(pairs.map(part).collect())
        }
        (Value::Array(before), Value::Array(now)) if before.len() == now.len() => {
            let pairs = before.iter().zip(now).enumerate();
            let part = |(at, (was, is)): (usize, _)| (at.to_string(), was, is);
            Some(pairs.map(part).collect())
        }
        _ => None,
    }
}

/// About how long the text of a value is.
fn length(value: &Value) -> usize {
    match value {
        Value::String(text) => text.len(),
        Value::Array(list) => list.iter().map(length).sum(),
        Value::Object(record) => record
            .iter()
            .map(|(name, part)| name.len() + length(part))
            .sum(),
        Value::Null | Value::Bool(_) | Value::Number(_) => A_NUMBER,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::Desk;

    /// What the window makes of it.
    fn put_together(shown: &mut Value, told: &Renewed) {
        if let Some(whole) = &told.whole {
            shown.clone_from(whole);
        }
        for change in &told.changes {
            let part = change.at.iter().fold(&mut *shown, |part, name| match part {
                Value::Array(list) => &mut list[name.parse::<usize>().expect("a place")],
                record => &mut record[name],
            });
            part.clone_from(&change.now);
        }
    }

    fn size(told: &Renewed) -> usize {
        serde_json::to_string(told).expect("JSON").len()
    }

    #[test]
    fn what_is_put_together_is_the_view_itself_after_any_edit() {
        let folder = tempfile::tempdir().expect("a folder");
        let mut desk = Desk::set_up(None, folder.path()).expect("opens");
        let (mut renewal, mut shown) = (Renewal::default(), Value::Null);
        let first = renewal.of(None, &desk.view()).expect("told");
        put_together(&mut shown, &first);
        let edits = [
            ("wall.height", "1.2 m"),
            ("title", "Another"),
            ("units", "imperial"),
            ("wall.height", "1.2 m"),
        ];
        for (at, (key, typed)) in edits.into_iter().enumerate() {
            desk.edit(key, typed, false).expect("an edit");
            let told = renewal.of(Some(renewal.number), &desk.view());
            let told = told.expect("told");
            assert!(told.whole.is_none());
            put_together(&mut shown, &told);
            let whole = to_value(desk.view()).expect("JSON");
            assert!(shown == whole, "another view after edit {at}");
        }
    }

    #[test]
    fn less_is_told_than_all() {
        let folder = tempfile::tempdir().expect("a folder");
        let mut desk = Desk::set_up(None, folder.path()).expect("opens");
        let mut renewal = Renewal::default();
        let whole = renewal.of(None, &desk.view()).expect("told");
        desk.edit("title", "Another", false).expect("an edit");
        let told = renewal.of(Some(whole.number), &desk.view()).expect("told");
        assert!(size(&told) * 5 < size(&whole));
    }

    #[test]
    fn all_is_told_to_who_knows_another_view() {
        let folder = tempfile::tempdir().expect("a folder");
        let view = Desk::set_up(None, folder.path()).expect("opens").view();
        let mut renewal = Renewal::default();
        for known in [None, Some(0), Some(7), None] {
            let told = renewal.of(known, &view).expect("told");
            assert!(told.whole.is_some(), "knows {known:?}");
            assert!(told.changes.is_empty());
        }
    }
}
