//! A view told by what is other than in the one before, so that a key press waits for no more than it changes.

use serde_json::value::RawValue;
use shapes::window::{Fields, Renewed, View};
use std::collections::BTreeMap;

/// The parts of a view that are told field by field: they are nine tenths of it.
const WRITTEN: &str = "written";
const DRAWINGS: &str = "drawings";

/// The view that was told last. The window has it, or knows another number.
#[derive(Default)]
pub(crate) struct Renewal {
    number: u32,
    /// As JSON; empty before the first.
    text: String,
}

impl Renewal {
    /// A view as what it changes of the view of the number that is known; whole where that is not
    /// the one told last.
    pub(crate) fn of(&mut self, known: Option<u32>, view: &View) -> serde_json::Result<Renewed> {
        let text = serde_json::to_string(view)?;
        let before = known.filter(|known| *known == self.number && !self.text.is_empty());
        let number = self.number.wrapping_add(1);
        let told = match before {
            Some(_) => Parts::of(&text)?.other_than(&Parts::of(&self.text)?),
            None => Parts::of(&text)?,
        };
        let told = told.told(number, before);
        *self = Self { number, text };
        Ok(told)
    }
}

type Record<'json> = BTreeMap<&'json str, &'json RawValue>;

/// A view's fields, with those of its large parts for themselves.
struct Parts<'json> {
    view: Record<'json>,
    written: Record<'json>,
    drawings: Record<'json>,
}

impl<'json> Parts<'json> {
    fn of(text: &'json str) -> serde_json::Result<Self> {
        let mut view: Record<'json> = serde_json::from_str(text)?;
        let mut taken_out = |name| view.remove(name).map_or("{}", RawValue::get);
        let [written, drawings] = [WRITTEN, DRAWINGS].map(&mut taken_out);
        Ok(Self {
            written: serde_json::from_str(written)?,
            drawings: serde_json::from_str(drawings)?,
            view,
        })
    }

    fn other_than(self, before: &Self) -> Self {
        Self {
            view: other(self.view, &before.view),
            written: other(self.written, &before.written),
            drawings: other(self.drawings, &before.drawings),
        }
    }

    fn told(self, number: u32, before: Option<u32>) -> Renewed {
        Renewed {
            number,
            before,
            view: owned(self.view),
            written: owned(self.written),
            drawings: owned(self.drawings),
        }
    }
}

/// What of a record is other. Every view has the same fields, so none is ever missing.
fn other<'json>(mut now: Record<'json>, before: &Record) -> Record<'json> {
    now.retain(|name, value| before.get(name).map(|it| it.get()) != Some(value.get()));
    now
}

fn owned(record: Record) -> Fields {
    let fields = record.into_iter();
    fields
        .map(|(name, value)| (name.to_owned(), value.to_owned()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::Desk;
    use serde_json::{Value, json};

    /// What the window makes of it.
    fn put_together(shown: &mut Value, told: &Renewed) {
        if told.before.is_none() {
            *shown = json!({ WRITTEN: {}, DRAWINGS: {} });
        }
        let told = serde_json::to_value(told).expect("JSON");
        let mut put = |at: &str, fields: &Value| {
            let into = shown.pointer_mut(at).expect("a record");
            for (name, value) in fields.as_object().expect("fields") {
                into[name] = value.clone();
            }
        };
        put("", &told["view"]);
        put("/written", &told["written"]);
        put("/drawings", &told["drawings"]);
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
            assert!(told.before.is_some());
            put_together(&mut shown, &told);
            // Through text as what was told, which rounds numbers alike.
            let whole = serde_json::to_string(&desk.view()).expect("JSON");
            let whole: Value = serde_json::from_str(&whole).expect("JSON");
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
            assert_eq!(told.before, None, "knows {known:?}");
            assert!(told.view.contains_key("values"));
        }
    }
}
