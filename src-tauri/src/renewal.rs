//! A view told by what is other than in the one before, so that a key press waits for no more than it changes.

use serde_json::from_str;
use serde_json::value::RawValue;
use shapes::window::{Difference, Renewed, View};
use std::collections::BTreeMap;

/// What is no longer than this is told as a whole: to say where in it something is other takes as much.
const SHORT: usize = 200;

/// The view that was told last. The window has it, or knows another number.
#[derive(Default)]
pub(crate) struct Renewal {
    number: u32,
    /// Nothing before the first.
    told: Option<Box<RawValue>>,
}

impl Renewal {
    /// A view as what it changes of the view of the number that is known; whole where that is not
    /// the one told last.
    pub(crate) fn of(&mut self, known: Option<u32>, view: &View) -> serde_json::Result<Renewed> {
        let now = serde_json::value::to_raw_value(view)?;
        let before = self.told.take().filter(|_| known == Some(self.number));
        self.number = self.number.wrapping_add(1);
        let mut changes = Vec::new();
        if let Some(before) = &before {
            compare(&[], before, &now, &mut changes)?;
        }
        self.told = Some(now.clone());
        Ok(Renewed {
            number: self.number,
            whole: before.is_none().then_some(now),
            changes,
        })
    }
}

type Record<'json> = BTreeMap<String, &'json RawValue>;
type List<'json> = Vec<&'json RawValue>;

/// Notes what is other, as deep inside as records keep their fields and lists their length.
fn compare(
    at: &[String],
    before: &RawValue,
    now: &RawValue,
    changes: &mut Vec<Difference>,
) -> serde_json::Result<()> {
    if let Some(parts) = parts(before, now)? {
        for (name, [before, now]) in parts {
            if before.get() != now.get() {
                compare(&[at, &[name]].concat(), before, now, changes)?;
            }
        }
    } else {
        changes.push(Difference {
            at: at.to_vec(),
            now: now.to_owned(),
        });
    }
    Ok(())
}

type Part<'json> = (String, [&'json RawValue; 2]);

/// The parts of two values by their names, before and now; nothing where they are not alike.
fn parts<'json>(
    before: &'json RawValue,
    now: &'json RawValue,
) -> serde_json::Result<Option<Vec<Part<'json>>>> {
    let [before, now] = [before.get(), now.get()];
    let both = |opened: char| before.starts_with(opened) && now.starts_with(opened);
    if now.len() <= SHORT {
        return Ok(None);
    }
    if both('{') {
        let (before, now): (Record, Record) = (from_str(before)?, from_str(now)?);
        let alike = before.keys().eq(now.keys());
        let pairs = before.into_values().zip(now);
        return Ok(alike.then(|| pairs.map(|(was, (name, is))| (name, [was, is])).collect()));
    }
    if both('[') {
        let (before, now): (List, List) = (from_str(before)?, from_str(now)?);
        let alike = before.len() == now.len();
        let pairs = before.into_iter().zip(now).enumerate();
        return Ok(alike.then(|| {
            pairs
                .map(|(at, (was, is))| (at.to_string(), [was, is]))
                .collect()
        }));
    }
    Ok(None)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::Desk;
    use serde_json::Value;

    /// What the window makes of it.
    fn put_together(shown: &mut Value, told: &Renewed) {
        if let Some(whole) = &told.whole {
            *shown = from_str(whole.get()).expect("JSON");
        }
        for change in &told.changes {
            let part = change.at.iter().fold(&mut *shown, |part, name| match part {
                Value::Array(list) => &mut list[name.parse::<usize>().expect("a place")],
                record => &mut record[name],
            });
            *part = from_str(change.now.get()).expect("JSON");
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
            // Through text as what was told, which rounds numbers alike.
            let whole = serde_json::to_string(&desk.view()).expect("JSON");
            let whole: Value = from_str(&whole).expect("JSON");
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
