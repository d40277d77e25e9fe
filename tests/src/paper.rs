//! Printed pages as others see them: text, places of words, fonts and tags, by the tools of
//! poppler-utils.

use std::process::{Command, Stdio};

/// One PDF on the disk, for as long as it is looked at.
pub struct Paper {
    file: tempfile::NamedTempFile,
}

/// A word with its page and its place, in points from the top left.
#[derive(Debug)]
pub struct Word {
    /// Counted from 1.
    pub page: usize,
    /// The paper's width and height.
    pub paper: [f64; 2],
    /// Left, top, right, bottom.
    pub place: [f64; 4],
    /// What it says.
    pub text: String,
}

impl Paper {
    /// Looks at these bytes.
    pub fn new(pdf: &[u8]) -> Self {
        let file = tempfile::NamedTempFile::new().expect("a file");
        std::fs::write(file.path(), pdf).expect("the pages are written");
        Self { file }
    }

    fn ask(&self, tool: &str, before: &[&str], after: &[&str]) -> String {
        let output = Command::new(tool)
            .args(before)
            .arg(self.file.path())
            .args(after)
            .stderr(Stdio::null())
            .output()
            .unwrap_or_else(|cause| panic!("{tool} (of poppler-utils): {cause}"));
        assert!(output.status.success(), "{tool} can't read the pages");
        // Alternative texts come in an encoding of their own.
        String::from_utf8_lossy(&output.stdout).into_owned()
    }

    /// All words in the order they were set in: a cell of a table is not torn apart.
    pub fn text(&self) -> String {
        self.ask("pdftotext", &["-raw"], &["-"])
    }

    /// All words without any space between them: lines may break anywhere.
    pub fn letters(&self) -> String {
        letters(&self.text())
    }

    /// The text of each page.
    pub fn pages(&self) -> Vec<String> {
        let text = self.text();
        let mut pages: Vec<String> = text.split('\u{c}').map(str::to_owned).collect();
        // The tool ends each page with a form feed.
        pages.pop();
        pages
    }

    /// Every word with its place.
    pub fn words(&self) -> Vec<Word> {
        let mut words = Vec::new();
        let (mut page, mut paper) = (0, [0.0; 2]);
        for line in self.ask("pdftotext", &["-bbox"], &["-"]).lines() {
            let line = line.trim();
            if line.starts_with("<page ") {
                page += 1;
                paper = ["width", "height"].map(|key| attribute(line, key));
            } else if line.starts_with("<word ") {
                let place = ["xMin", "yMin", "xMax", "yMax"].map(|key| attribute(line, key));
                let text = line.split_once('>').map_or("", |(_, text)| text);
                words.push(Word {
                    page,
                    paper,
                    place,
                    text: text.trim_end_matches("</word>").to_owned(),
                });
            }
        }
        words
    }

    /// Names of fonts that are not in the file itself.
    pub fn fonts_left_out(&self) -> Vec<String> {
        let list = self.ask("pdffonts", &[], &[]);
        let fonts: Vec<&str> = list.lines().skip(2).collect();
        assert!(!fonts.is_empty(), "pages without any font");
        fonts
            .into_iter()
            // From the end: emb, sub, uni, and the two numbers of the object.
            .filter(|line| line.split_whitespace().rev().nth(4) != Some("yes"))
            .map(str::to_owned)
            .collect()
    }

    /// For each table, in order, whether any of its cells is a head.
    pub fn tables_with_heads(&self) -> Vec<bool> {
        let mut tables: Vec<(usize, bool)> = Vec::new();
        for line in self.ask("pdfinfo", &["-struct"], &[]).lines() {
            let deep = line.len() - line.trim_start().len();
            let tag = line.split_whitespace().next().unwrap_or_default();
            if tag == "Table" {
                tables.push((deep, false));
            } else if tag == "TH"
                && let Some((at, head)) = tables.last_mut()
                && *at < deep
            {
                *head = true;
            }
        }
        tables.into_iter().map(|(_, head)| head).collect()
    }

    /// The title a viewer shows.
    pub fn title(&self) -> String {
        let about = self.ask("pdfinfo", &[], &[]);
        let title = about.lines().find_map(|line| line.strip_prefix("Title:"));
        title.unwrap_or_default().trim().to_owned()
    }
}

fn attribute(line: &str, key: &str) -> f64 {
    let from = format!("{key}=\"");
    line.split_once(&from)
        .and_then(|(_, rest)| rest.split('"').next())
        .and_then(|number| number.parse().ok())
        .unwrap_or_else(|| panic!("no {key} in {line}"))
}

/// A text without its spaces.
pub fn letters(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}
