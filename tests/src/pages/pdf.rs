//! A printed PDF looked into with tools of other makers: poppler and a PDF/UA checker.

use page_validation::{SafetyLimits, ValidationOptions, ValidationProfile, validate_pdf_bytes};
use std::process::Command;

/// A PDF in memory and on the disk.
pub(crate) struct Pdf {
    bytes: Vec<u8>,
    file: tempfile::NamedTempFile,
}

/// A word with its place on its page, in points.
pub(crate) struct Word {
    pub(crate) text: String,
    pub(crate) page: usize,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
    page_width: f64,
    page_height: f64,
}

impl Word {
    /// Whether it keeps a margin from every edge of its page.
    pub(crate) fn inside(&self, margin: f64) -> bool {
        margin <= self.left
            && margin <= self.top
            && self.right <= self.page_width - margin
            && self.bottom <= self.page_height - margin
    }
}

impl Pdf {
    pub(crate) fn new(bytes: Vec<u8>) -> Self {
        let file = tempfile::NamedTempFile::new().expect("a file");
        std::fs::write(file.path(), &bytes).expect("writes");
        Self { bytes, file }
    }

    /// Whether the checker calls it PDF/UA-1.
    pub(crate) fn conforms(&self) -> bool {
        let options = ValidationOptions::default()
            .profile(ValidationProfile::PdfUa1)
            .limits(SafetyLimits::unlimited());
        validate_pdf_bytes(&self.bytes, &options).is_ok_and(|report| report.is_compliant)
    }

    /// The same file with every standing of a word spoilt, its length kept.
    pub(crate) fn without(&self, word: &[u8]) -> Self {
        let mut bytes = self.bytes.clone();
        let mut at = 0;
        let mut spoilt = 0;
        while at + word.len() <= bytes.len() {
            if bytes[at..].starts_with(word) {
                bytes[at + 1] = b'X';
                spoilt += 1;
            }
            at += 1;
        }
        assert!(
            0 < spoilt,
            "{} is not in the file",
            String::from_utf8_lossy(word)
        );
        Self::new(bytes)
    }

    fn told(&self, tool: &str, arguments: &[&str]) -> String {
        let told = Command::new(tool)
            .args(arguments)
            .arg(self.file.path())
            .args(if tool == "pdftotext" { &["-"][..] } else { &[] })
            .output()
            .unwrap_or_else(|wrong| panic!("{tool}: {wrong}: cargo xtask test installs it"));
        String::from_utf8_lossy(&told.stdout).into_owned()
    }

    pub(crate) fn pages(&self) -> usize {
        let about = self.told("pdfinfo", &[]);
        let line = about
            .lines()
            .find(|line| line.starts_with("Pages:"))
            .expect("a count");
        line.trim_start_matches("Pages:")
            .trim()
            .parse()
            .expect("a number")
    }

    /// All its text, without any white space: lines break where the page wants.
    pub(crate) fn plain_text(&self) -> String {
        plain(&self.told("pdftotext", &[]))
    }

    /// How many of its fonts are not in the file.
    pub(crate) fn fonts_not_embedded(&self) -> usize {
        let fonts = self.told("pdffonts", &[]);
        let rows: Vec<&str> = fonts.lines().skip(2).collect();
        assert!(!rows.is_empty(), "a page without fonts has no text");
        // The columns from the right: object, generation, unicode, subset, embedded.
        let embedded = |row: &&str| row.split_whitespace().rev().nth(4) == Some("yes");
        rows.iter().filter(|row| !embedded(row)).count()
    }

    /// How many of its tables have no header cell.
    pub(crate) fn tables_without_heads(&self) -> usize {
        let structure = self.told("pdfinfo", &["-struct"]);
        let depth = |line: &str| line.len() - line.trim_start().len();
        let lines: Vec<&str> = structure.lines().collect();
        let is_table = |line: &str| line.trim_start().split(' ').next() == Some("Table");
        let has_head = |at: usize| {
            lines[at + 1..]
                .iter()
                .take_while(|line| depth(lines[at]) < depth(line))
                .any(|line| line.trim_start().starts_with("TH"))
        };
        (0..lines.len())
            .filter(|&at| is_table(lines[at]) && !has_head(at))
            .count()
    }

    /// Every word with its place.
    pub(crate) fn words(&self) -> Vec<Word> {
        let boxes = self.told("pdftotext", &["-bbox"]);
        let mut words = Vec::new();
        let (mut page, mut width, mut height) = (0, 0.0, 0.0);
        for line in boxes.lines().map(str::trim) {
            if line.starts_with("<page") {
                page += 1;
                (width, height) = (number(line, "width"), number(line, "height"));
            } else if line.starts_with("<word") {
                words.push(Word {
                    text: line.split(['>', '<']).nth(2).unwrap_or_default().to_owned(),
                    page,
                    left: number(line, "xMin"),
                    top: number(line, "yMin"),
                    right: number(line, "xMax"),
                    bottom: number(line, "yMax"),
                    page_width: width,
                    page_height: height,
                });
            }
        }
        assert!(!words.is_empty(), "a page without words");
        words
    }
}

/// The number in an attribute.
fn number(tag: &str, attribute: &str) -> f64 {
    let text = tag
        .split(&format!("{attribute}=\""))
        .nth(1)
        .and_then(|rest| rest.split('"').next());
    text.and_then(|text| text.parse().ok())
        .unwrap_or_else(|| panic!("{attribute} in {tag}"))
}

/// A text without white space.
pub(crate) fn plain(text: &str) -> String {
    text.chars().filter(|sign| !sign.is_whitespace()).collect()
}
