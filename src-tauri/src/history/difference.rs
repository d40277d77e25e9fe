//! In what two texts differ: all that lies between what they begin and what they end with.

/// What turns one text into another, and back.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Difference {
    /// Where they begin to differ, in bytes.
    at: usize,
    /// What stands there in the one.
    was: String,
    /// And in the other.
    is: String,
}

impl Difference {
    pub(super) fn between(before: &str, after: &str) -> Self {
        let at = same(before.chars(), after.chars());
        let (before, after) = (&before[at..], &after[at..]);
        let behind = same(before.chars().rev(), after.chars().rev());
        Self {
            at,
            was: before[..before.len() - behind].to_owned(),
            is: after[..after.len() - behind].to_owned(),
        }
    }

    /// The text after, from the one before.
    pub(super) fn done_to(&self, before: &str) -> String {
        put(before, self.at, &self.was, &self.is)
    }

    /// The text before, from the one after.
    pub(super) fn undone_in(&self, after: &str) -> String {
        put(after, self.at, &self.is, &self.was)
    }
}

/// So many bytes are the same from the beginning.
fn same(one: impl Iterator<Item = char>, two: impl Iterator<Item = char>) -> usize {
    let same = one.zip(two).take_while(|(one, two)| one == two);
    same.map(|(sign, _)| sign.len_utf8()).sum()
}

fn put(text: &str, at: usize, old: &str, new: &str) -> String {
    let mut text = text.to_owned();
    text.replace_range(at..at + old.len(), new);
    text
}

#[cfg(test)]
mod tests {
    use super::Difference;

    #[test]
    fn each_text_comes_back_from_the_other() {
        let texts = [
            "",
            "a",
            "aa",
            "aaa",
            "height = \"1 m\"\n",
            "height = \"1.2 m\"\n",
            "name = \"Øland\"\n",
            "name = \"Ĝland\"\n",
            "name = \"Øland Ø\"\n",
        ];
        for before in texts {
            for after in texts {
                let between = Difference::between(before, after);
                assert_eq!(between.done_to(before), after, "{between:?}");
                assert_eq!(between.undone_in(after), before, "{between:?}");
            }
        }
    }

    #[test]
    fn only_what_differs_is_kept() {
        let between = Difference::between("height = \"1 m\"\n", "height = \"1.2 m\"\n");
        let expected = Difference {
            at: 11,
            was: String::new(),
            is: ".2".to_owned(),
        };
        assert_eq!(between, expected);
    }
}
