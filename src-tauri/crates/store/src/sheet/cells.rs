//! Rows and cells as both kinds of file give them.

/// A row that is not blank.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    /// Counted from 1.
    pub(super) number: u32,
    /// The cells that hold something, each with its column counted from 0.
    pub(super) cells: Vec<(u32, Cell)>,
}

/// What a cell holds.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cell {
    /// Words, or digits kept as words.
    Text(String),
    /// A number.
    Number(f64),
    /// Something that is worked out.
    Formula,
    /// A thing that is neither, described: `is a date`.
    Other(String),
}

/// How numbers kept as text are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Marks {
    /// `1.5`: commas separate columns.
    Point,
    /// `1,5`: semicolons separate columns.
    Comma,
    /// Nobody can tell.
    Either,
}
