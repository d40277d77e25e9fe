//! Printed pages as others see them: text, places of words, fonts and tags, by the tools of
//! poppler-utils and by qpdf.

use serde_json::Value;
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

/// Words that stand beside each other and are read as one line.
#[derive(Debug)]
pub struct Line {
    /// Counted from 1.
    pub page: usize,
    /// The paragraph it belongs to, as far as it can be told from the page; counted from 1.
    pub block: usize,
    /// How high its first word is, from the top of its tallest letter to the foot of its deepest:
    /// in one typeface always the same part of the size of letters.
    pub height: f64,
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

    /// Every line, block by block.
    pub fn lines(&self) -> Vec<Line> {
        let mut lines: Vec<Line> = Vec::new();
        let (mut page, mut block) = (0, 0);
        for told in self.ask("pdftotext", &["-bbox-layout"], &["-"]).lines() {
            let told = told.trim();
            if told.starts_with("<page ") {
                page += 1;
            } else if told.starts_with("<block ") {
                block += 1;
            } else if told.starts_with("<line ") {
                lines.push(Line {
                    page,
                    block,
                    height: 0.0,
                    text: String::new(),
                });
            } else if told.starts_with("<word ")
                && let Some(line) = lines.last_mut()
            {
                let text = told.split_once('>').map_or("", |(_, text)| text);
                let text = text.trim_end_matches("</word>");
                if line.text.is_empty() {
                    line.height = attribute(told, "yMax") - attribute(told, "yMin");
                } else {
                    line.text.push(' ');
                }
                line.text.push_str(&plain(text));
            }
        }
        lines
    }

    /// The alternative text of each figure in the order of the file; empty where it has none.
    pub fn alternatives(&self) -> Vec<String> {
        let told = self.ask("qpdf", &["--json=2", "--json-key=qpdf"], &[]);
        let told: Value = serde_json::from_str(&told).expect("qpdf writes JSON");
        let objects = told["qpdf"][1].as_object().expect("objects").values();
        objects
            .map(|object| &object["value"])
            .filter(|value| value["/S"] == "/Figure")
            .map(|figure| {
                let text = figure["/Alt"].as_str().unwrap_or_default();
                // `u:` goes before a text, `b:` before bytes that are none.
                text.strip_prefix("u:").unwrap_or_default().to_owned()
            })
            .collect()
    }

    /// What qpdf finds wrong with the file, if anything.
    pub fn broken(&self) -> Option<String> {
        let output = Command::new("qpdf")
            .arg("--check")
            .arg(self.file.path())
            .output()
            .unwrap_or_else(|cause| panic!("qpdf: {cause}"));
        let told = [output.stdout, output.stderr].concat();
        (!output.status.success()).then(|| String::from_utf8_lossy(&told).into_owned())
    }

    /// A page as a picture in shades of grey: width, height, and a byte for each point.
    pub fn picture(&self, page: usize, dots_per_inch: u32) -> (usize, usize, Vec<u8>) {
        let [page, dots] = [page.to_string(), dots_per_inch.to_string()];
        let options = ["-gray", "-r", &dots, "-f", &page, "-l", &page];
        let output = Command::new("pdftoppm")
            .args(options)
            .arg(self.file.path())
            .stderr(Stdio::null())
            .output()
            .unwrap_or_else(|cause| panic!("pdftoppm (of poppler-utils): {cause}"));
        grey(&output.stdout).expect("pdftoppm writes a picture")
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

/// A text of XML as it is read.
fn plain(text: &str) -> String {
    let marks = [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&apos;", "'"),
    ];
    let text = marks.iter().fold(text.to_owned(), |text, (mark, sign)| {
        text.replace(mark, sign)
    });
    text.replace("&amp;", "&")
}

/// A picture in the PGM form: `P5`, width, height, greatest value, then a byte for each point.
pub fn grey(bytes: &[u8]) -> Option<(usize, usize, Vec<u8>)> {
    let mut rest = bytes;
    let mut word = || {
        let end = rest.iter().position(u8::is_ascii_whitespace)?;
        let (word, after) = rest.split_at(end);
        rest = &after[1..];
        std::str::from_utf8(word).ok()
    };
    let form = word()?;
    let [width, height, most] = [word()?, word()?, word()?].map(|it| it.parse().ok());
    let (width, height): (usize, usize) = (width?, height?);
    (form == "P5" && most == Some(255) && rest.len() == width * height)
        .then(|| (width, height, rest.to_vec()))
}

/// A text without its spaces.
pub fn letters(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}
