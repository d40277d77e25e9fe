//! Tools by name: when two spellings are one tool, and what is held under a name.

use super::Held;
use std::collections::HashMap;

/// What all spellings of one name share: small letters, single spaces.
pub fn name_key(name: &str) -> String {
    let mut key = String::with_capacity(name.len());
    for word in name.split_whitespace() {
        if !key.is_empty() {
            key.push(' ');
        }
        key.push_str(&word.to_lowercase());
    }
    key
}

/// Whether two names are of one tool: capitals and spacing tell nothing apart.
pub fn same_tool(one: &str, other: &str) -> bool {
    name_key(one) == name_key(other)
}

/// What is held, to be found by name.
pub(super) struct HeldByName<'h>(HashMap<String, &'h Held>);

impl<'h> HeldByName<'h> {
    /// Of two under one name, the first counts.
    pub(super) fn new(held: &'h [Held]) -> Self {
        let mut by_name = HashMap::with_capacity(held.len());
        for one in held {
            by_name.entry(name_key(&one.item)).or_insert(one);
        }
        Self(by_name)
    }

    pub(super) fn get(&self, item: &str) -> Option<&'h Held> {
        self.0.get(&name_key(item)).copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_of_one_name_share_a_key() {
        for (one, other, same) in [
            ("Walling hammer", " walling  HAMMER ", true),
            ("Über-Schaufel", "über-schaufel", true),
            ("Spade", "Spades", false),
            ("Pin\nlong", "pin long", true),
        ] {
            assert_eq!(same_tool(one, other), same, "{one:?} {other:?}");
        }
    }

    #[test]
    fn the_first_of_two_under_one_name_counts() {
        let held = [Held::counted("Spade", 5), Held::counted(" SPADE", 7)];
        let by_name = HeldByName::new(&held);
        assert_eq!(by_name.get("spade").map(|it| it.good), Some(5));
        assert_eq!(by_name.get("Spades"), None);
    }
}
