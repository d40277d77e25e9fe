//! Names and notes as they are kept: tidied at the door.

use crate::Error;

/// Characters of an item, a unit or an owner.
pub(crate) const MOST_OF_NAME: usize = 200;
/// Characters of a note.
pub(crate) const MOST_OF_NOTE: usize = 2_000;

/// The text without space around it and with plain line ends.
///
/// # Errors
/// [`Error::TooLong`]; [`Error::Unshowable`] for control characters and for the two that a
/// workbook can't hold.
pub(crate) fn tidy(field: &'static str, text: &str, most: usize) -> Result<String, Error> {
    let tidied = text.replace("\r\n", "\n").replace('\r', "\n");
    let tidied = tidied.trim();
    let given = tidied.chars().count();
    if most < given {
        return Err(Error::TooLong { field, given, most });
    }
    let plain = |c: char| matches!(c, '\n' | '\t');
    let unshowable =
        |c: char| (c.is_control() && !plain(c)) || matches!(c, '\u{FFFE}' | '\u{FFFF}');
    match tidied.chars().find(|c| unshowable(*c)) {
        Some(character) => Err(Error::Unshowable { field, character }),
        None => Ok(tidied.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_tidied_and_refused() {
        assert_eq!(tidy("item", " a\r\nb\rc\t ", 9).expect("tidied"), "a\nb\nc");
        let refused = |text| tidy("note", text, 3).expect_err("refused").to_string();
        assert_eq!(
            refused("four"),
            "The note has 4 characters, and 3 at most can be kept. Shorten it."
        );
        assert_eq!(
            refused("a\u{7}b"),
            "The note holds a character that can't be shown (U+0007). Type it again without it."
        );
        assert!(tidy("item", "\u{FFFF}", 3).is_err());
        assert_eq!(tidy("item", "😀é'", 3).expect("kept"), "😀é'");
    }
}
