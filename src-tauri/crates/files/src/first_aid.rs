//! First aid for what is likely at a wall, as its file holds it.

use serde::Deserialize;

/// What to do about one injury.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Injury {
    /// A word for it.
    pub id: String,
    /// What one sees.
    pub name: String,
    /// When help is rung for: the end of a sentence that begins with `Ring`.
    pub ring: String,
    /// What to do, in order.
    pub steps: Vec<String>,
    /// Who says so.
    pub source: String,
}

/// The file of them.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Injuries {
    pub(crate) injury: Vec<Injury>,
}

#[cfg(test)]
mod tests {
    use crate::Library;

    /// A sheet that is read in a hurry says little of each, and who says it.
    #[test]
    fn each_injury_is_short_and_has_a_source() {
        let library = Library::built_in().expect("the built-in library is sound");
        let mut ids: Vec<&str> = library.first_aid.iter().map(|it| it.id.as_str()).collect();
        for due in ["crush", "bleeding", "eye", "head", "heat", "cold"] {
            assert!(ids.contains(&due), "nothing of {due}");
        }
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), library.first_aid.len());
        for it in &library.first_aid {
            assert!((2..=4).contains(&it.steps.len()), "{}", it.id);
            assert!(it.steps.iter().all(|step| step.len() <= 110), "{}", it.id);
            assert!(!it.ring.is_empty() && !it.source.is_empty(), "{}", it.id);
        }
    }
}
