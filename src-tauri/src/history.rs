//! Every text of the open course since it was opened, and what led from one to the next.

mod difference;

use difference::Difference;
use files::course;
use shapes::window::Changed;
use std::collections::{BTreeMap, BTreeSet};

/// Every value of a course file as typed, by key.
pub(crate) type Values = BTreeMap<String, String>;

/// The texts in order, with the one that is shown. Of all others only the differences are kept.
pub(crate) struct History {
    first: String,
    shown: String,
    /// The values of the text that is shown, by key.
    values: Values,
    steps: Vec<Step>,
    /// So many of the steps are done; those after them were undone.
    done: usize,
}

/// A step from one text to the next.
struct Step {
    difference: Difference,
    /// Values that are no longer what they were.
    changed: Vec<Changed>,
    /// The field it was typed in: as long as a person stays there, it is one step.
    field: Option<String>,
}

impl History {
    pub(crate) fn new(text: String) -> Self {
        Self {
            first: text.clone(),
            values: course::values(&text),
            shown: text,
            steps: Vec::new(),
            done: 0,
        }
    }

    /// The text it began with.
    pub(crate) fn first(&self) -> &str {
        &self.first
    }

    /// The text that is shown.
    pub(crate) fn text(&self) -> &str {
        &self.shown
    }

    /// The values of the text that is shown, by key.
    pub(crate) fn values(&self) -> &Values {
        &self.values
    }

    /// The text a person would come back to by undoing; nothing at the first.
    pub(crate) fn before(&self) -> Option<String> {
        let step = self.last()?;
        Some(step.difference.undone_in(&self.shown))
    }

    /// The text that was undone last; nothing if none was.
    pub(crate) fn after(&self) -> Option<String> {
        let step = self.steps.get(self.done)?;
        Some(step.difference.done_to(&self.shown))
    }

    /// What undoing would take back.
    pub(crate) fn undo_of(&self) -> Option<&[Changed]> {
        self.last().map(|step| step.changed.as_slice())
    }

    /// What redoing would do again.
    pub(crate) fn redo_of(&self) -> Option<&[Changed]> {
        self.steps
            .get(self.done)
            .map(|step| step.changed.as_slice())
    }

    /// Whether the last step was typed in this field, so that more typing there goes on with it.
    pub(crate) fn goes_on(&self, field: &str) -> bool {
        let typed_here = |step: &Step| step.field.as_deref() == Some(field);
        self.done == self.steps.len() && self.last().is_some_and(typed_here)
    }

    /// A step to another text. One that goes on with the step before takes its place, and where it
    /// leads back to where that began, nothing is left of it.
    pub(crate) fn step(&mut self, text: String, field: Option<&str>, goes_on: bool) {
        self.steps.truncate(self.done);
        if goes_on {
            self.back();
            self.steps.truncate(self.done);
        }
        if text == self.shown {
            return;
        }
        let values = course::values(&text);
        self.steps.push(Step {
            difference: Difference::between(&self.shown, &text),
            changed: changed_values(&self.values, &values),
            field: field.map(ToOwned::to_owned),
        });
        self.done += 1;
        (self.shown, self.values) = (text, values);
    }

    pub(crate) fn back(&mut self) {
        if let Some(before) = self.before() {
            self.done -= 1;
            for it in &self.steps[self.done].changed {
                put(&mut self.values, &it.key, it.from.as_ref());
            }
            self.shown = before;
        }
    }

    pub(crate) fn forth(&mut self) {
        if let Some(after) = self.after() {
            for it in &self.steps[self.done].changed {
                put(&mut self.values, &it.key, it.to.as_ref());
            }
            self.shown = after;
            self.done += 1;
        }
    }

    /// The step that led to the text that is shown.
    fn last(&self) -> Option<&Step> {
        self.steps.get(self.done.checked_sub(1)?)
    }
}

/// A value by its key, or none.
fn put(values: &mut Values, key: &str, value: Option<&String>) {
    match value {
        Some(value) => values.insert(key.to_owned(), value.clone()),
        None => values.remove(key),
    };
}

/// The values that differ between two texts, in the order of their keys.
pub(crate) fn changed(before: &str, after: &str) -> Vec<Changed> {
    changed_values(&course::values(before), &course::values(after))
}

fn changed_values(before: &Values, after: &Values) -> Vec<Changed> {
    let keys: BTreeSet<&String> = before.keys().chain(after.keys()).collect();
    keys.into_iter()
        .filter(|key| before.get(*key) != after.get(*key))
        .map(|key| Changed {
            key: key.clone(),
            from: before.get(key).cloned(),
            to: after.get(key).cloned(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn history() -> History {
        History::new("[wall]\nheight = \"1 m\"\n".to_owned())
    }

    fn wall(height: &str) -> String {
        format!("[wall]\nheight = \"{height}\"\n")
    }

    #[test]
    fn typing_in_one_field_is_one_step() {
        let mut history = history();
        for (typed, goes_on) in [("1.2 m", false), ("1.25 m", true)] {
            assert_eq!(history.goes_on("wall.height"), goes_on);
            history.step(wall(typed), Some("wall.height"), goes_on);
        }
        let undo = history.undo_of().expect("a step");
        assert_eq!(undo.len(), 1);
        assert_eq!(undo[0].key, "wall.height");
        assert_eq!(undo[0].from.as_deref(), Some("1 m"));
        assert_eq!(undo[0].to.as_deref(), Some("1.25 m"));
        assert_eq!(history.before().as_deref(), Some(wall("1 m").as_str()));
    }

    #[test]
    fn the_values_are_always_those_of_the_text() {
        let mut history = history();
        let longer = format!("{}top_width = \"0.35 m\"\n", wall("1.2 m"));
        for text in [wall("1.2 m"), longer, "title = \"Another\"\n".to_owned()] {
            history.step(text, None, false);
            assert_eq!(*history.values(), course::values(history.text()));
        }
        for go in [History::back, History::forth] {
            for _ in 0..3 {
                go(&mut history);
                assert_eq!(*history.values(), course::values(history.text()));
            }
        }
        history.step(wall("1 m"), Some("wall.height"), false);
        history.step(wall("1.4 m"), Some("wall.height"), true);
        assert_eq!(*history.values(), course::values(history.text()));
    }

    #[test]
    fn typing_back_to_where_it_began_leaves_no_step() {
        let mut history = history();
        history.step(wall("1.2 m"), Some("wall.height"), false);
        history.step(wall("1 m"), Some("wall.height"), true);
        assert_eq!(history.undo_of(), None);
        assert_eq!(history.text(), wall("1 m"));
    }

    #[test]
    fn a_new_step_lets_go_of_what_was_undone() {
        let mut history = history();
        history.step(wall("1.2 m"), None, false);
        history.step(wall("1.4 m"), None, false);
        history.back();
        assert_eq!(history.after().as_deref(), Some(wall("1.4 m").as_str()));
        assert!(!history.goes_on("wall.height"));
        history.step(wall("0.9 m"), None, false);
        assert_eq!(history.redo_of(), None);
        history.back();
        history.back();
        assert_eq!(history.text(), wall("1 m"));
        history.back();
        assert_eq!(history.text(), wall("1 m"));
        history.forth();
        history.forth();
        history.forth();
        assert_eq!(history.text(), wall("0.9 m"));
    }
}
