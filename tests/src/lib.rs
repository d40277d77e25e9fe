//! Checks on the whole, from outside; see README.md. Here: tables whose rows name their source.

pub mod courses;
pub mod paper;
pub mod program;
pub mod reading;

use std::collections::HashMap;
use std::path::PathBuf;

/// What a check found wrong with one row.
pub type Found = Result<(), String>;

/// One row of a table in `tests/tables`.
pub struct Row {
    place: String,
    source: String,
    cells: HashMap<String, String>,
}

impl Row {
    /// The text of a column; a column the table does not have is a mistake in the check.
    pub fn text(&self, column: &str) -> &str {
        self.cells
            .get(column)
            .unwrap_or_else(|| panic!("{}: there is no column {column}", self.place))
    }

    /// The text of a column, if anything stands there.
    pub fn given(&self, column: &str) -> Option<&str> {
        Some(self.text(column)).filter(|text| !text.is_empty())
    }

    /// The number in a column. A fraction such as 48/7 is one too.
    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        let plain = |text: &str| -> f64 {
            text.trim()
                .parse()
                .unwrap_or_else(|_| panic!("{}: {column} is no number: {text}", self.place))
        };
        match text.split_once('/') {
            Some((top, bottom)) => plain(top) / plain(bottom),
            None => plain(text),
        }
    }

    /// Holds if two figures agree to within `off`; says file, line, case, both and the source.
    pub fn near(&self, what: &str, ours: f64, theirs: f64, off: f64) -> Found {
        // Written so that what is no number is far off.
        if (ours - theirs).abs() <= off {
            return Ok(());
        }
        Err(self.fault(&format!("{what} is {ours}, the table says {theirs}")))
    }

    /// Holds if a figure lies between two, ends included.
    pub fn between(&self, what: &str, ours: f64, low: f64, high: f64) -> Found {
        if low <= ours && ours <= high {
            return Ok(());
        }
        Err(self.fault(&format!("{what} is {ours}, the table says {low} to {high}")))
    }

    /// Holds if two texts are the same.
    pub fn same(&self, what: &str, ours: &str, theirs: &str) -> Found {
        if ours == theirs {
            return Ok(());
        }
        Err(self.fault(&format!(
            "{what} is\n    {ours}\n  the table says\n    {theirs}"
        )))
    }

    /// What is wrong, with where it stands and who vouches for it.
    pub fn fault(&self, what: &str) -> String {
        format!("{}: {what} ({})", self.place, self.source)
    }
}

/// Checks every row of a table and tells of all that are wrong, not of the first alone.
pub fn every_row(table: &str, check: impl Fn(&Row) -> Found) {
    let rows = rows(table);
    assert!(!rows.is_empty(), "{table} has no rows");
    let faults: Vec<String> = rows.iter().filter_map(|row| check(row).err()).collect();
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// The rows of `tests/tables/NAME`. Each must have a case of its own, and a source or a why.
pub fn rows(table: &str) -> Vec<Row> {
    let path = folder("tables").join(table);
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(&path)
        .unwrap_or_else(|cause| panic!("{}: {cause}", path.display()));
    let head = reader.headers().expect("a first line").clone();
    let mut rows: Vec<Row> = Vec::new();
    for record in reader.records() {
        let record = record.unwrap_or_else(|cause| panic!("{table}: {cause}"));
        let line = record.position().map_or(0, csv::Position::line);
        let cells: HashMap<String, String> = head
            .iter()
            .zip(record.iter())
            .map(|(column, cell)| (column.to_owned(), cell.trim().to_owned()))
            .collect();
        let cell = |column: &str| cells.get(column).cloned().unwrap_or_default();
        // A table about words says why, one about figures who vouches for them.
        let source = [cell("source"), cell("why")].concat();
        let case = cell("case");
        let place = format!("{table}:{line} {case}");
        assert!(!case.is_empty(), "{table}:{line}: the row needs a case");
        assert!(
            !source.is_empty(),
            "{place}: the row needs a source or a why"
        );
        let twice = rows.iter().any(|row| row.cells["case"] == case);
        assert!(!twice, "{place}: another row has this case");
        rows.push(Row {
            place,
            source,
            cells,
        });
    }
    rows
}

/// A folder of this crate.
pub fn folder(name: &str) -> PathBuf {
    root().join("tests").join(name)
}

/// The top of the whole.
pub fn root() -> PathBuf {
    let tests = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    tests.parent().expect("the folder above").to_owned()
}

/// How many cases a property is tried on, always the same ones. `PROPTEST_RNG_SEED` draws
/// others, `PROPTEST_CASES` more.
pub fn cases(usual: u32) -> proptest::test_runner::Config {
    let set = |name| std::env::var_os(name).is_some();
    let mut config = proptest::test_runner::Config {
        failure_persistence: None,
        ..proptest::test_runner::Config::default()
    };
    if !set("PROPTEST_CASES") {
        config.cases = usual;
    }
    if !set("PROPTEST_RNG_SEED") {
        config.rng_seed = proptest::test_runner::RngSeed::Fixed(1);
    }
    config
}
