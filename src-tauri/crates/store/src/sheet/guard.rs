//! A guard before texts that a spreadsheet would take for a formula.
//!
//! A text that begins with one of [`DANGEROUS`] is written with an apostrophe before it; one
//! that begins with an apostrophe and then one of them, or another apostrophe, likewise, so
//! that taking the guard off again gives every text back.
//!
//! # Source
//! OWASP, "CSV Injection": which characters begin a formula, full-width forms and line breaks
//! included. The apostrophe is spreadsheets' own sign for "this is text".

use std::borrow::Cow;

/// What a spreadsheet may take for the beginning of a formula.
const DANGEROUS: [char; 11] = [
    '=', '+', '-', '@', '\t', '\r', '\n', '\u{FF1D}', '\u{FF0B}', '\u{FF0D}', '\u{FF20}',
];

const GUARD: char = '\'';

/// The text as it is written into a cell.
pub(super) fn put(text: &str) -> Cow<'_, str> {
    let behind_a_guard = |rest: &str| rest.starts_with(DANGEROUS) || rest.starts_with(GUARD);
    let guarded = text.strip_prefix(GUARD).is_some_and(behind_a_guard);
    if guarded || text.starts_with(DANGEROUS) {
        Cow::Owned(format!("{GUARD}{text}"))
    } else {
        Cow::Borrowed(text)
    }
}

/// The text of a cell, without the guard.
pub(super) fn take_off(cell: &str) -> &str {
    match cell.strip_prefix(GUARD) {
        Some(text) if text.starts_with(DANGEROUS) || text.starts_with(GUARD) => text,
        _ => cell,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn only_what_is_dangerous_is_guarded() {
        for (text, cell) in [
            ("=1+1", "'=1+1"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("-", "'-"),
            ("'=1", "''=1"),
            ("''", "'''"),
            ("'", "'"),
            ("'tis", "'tis"),
            ("Spade", "Spade"),
            ("\u{FF1D}1", "'\u{FF1D}1"),
            ("", ""),
        ] {
            assert_eq!(put(text), cell);
            assert_eq!(take_off(cell), text);
        }
    }

    proptest! {
        #[test]
        fn the_guard_comes_off_again(text in "['=+@\t\r\n a-]{0,6}") {
            let cell = put(&text);
            prop_assert!(!cell.starts_with(DANGEROUS));
            prop_assert_eq!(take_off(&cell), text.as_str());
        }
    }
}
