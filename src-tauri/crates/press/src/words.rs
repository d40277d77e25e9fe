//! Words of a page that is looked at, written as words.
//!
//! The typesetter draws every letter as an outline, of which a page full of text has some hundred
//! kilobytes. Who shows the page has the font most of it is set in: what that font would set alike by
//! itself is written as words, a tenth as long and sooner on the screen. What it would not, such as a
//! fraction, a ligature or a name in another script, stays outlines.

use crate::TEXT_FAMILY;
use crate::stand_ins::replaced;
use typst::layout::{Abs, Em, Frame, FrameItem, Size};
use typst::model::{Destination, Url};
use typst::text::{FontInfo, FontStyle, FontWeight, Glyph, TextItem};
use typst::visualize::{Color, Paint};
use typst_layout::Page;

/// The typesetter is given a link to this and a number in place of a run of words.
const STANDS_FOR: &str = "stands-for-words:";
/// How it begins a link, and how it ends one.
const LINK: &str = "<a ";
const LINK_ENDS: &str = "</a>";

/// A page as SVG.
pub(crate) fn svg(page: &Page) -> String {
    let mut page = page.clone();
    let mut runs = Vec::new();
    take(&mut page.frame, &mut runs);
    put(&crate::svg(&page), &runs)
}

/// Takes the words out of a frame and leaves a stand-in for each run.
fn take(frame: &mut Frame, runs: &mut Vec<String>) {
    frame.retain(|item| {
        match item {
            FrameItem::Text(text) => {
                if let (Some(run), Some(stand_in)) = (written(text), stand_in(runs.len())) {
                    runs.push(run);
                    *item = stand_in;
                }
            }
            FrameItem::Group(group) => take(&mut group.frame, runs),
            _ => {}
        }
        true
    });
}

fn stand_in(number: usize) -> Option<FrameItem> {
    let url = Url::new(format!("{STANDS_FOR}{number}")).ok()?;
    Some(FrameItem::Link(Destination::Url(url), Size::zero()))
}

/// The page with the runs in the places of their stand-ins.
fn put(page: &str, runs: &[String]) -> String {
    let head = format!("<svg font-family=\"{TEXT_FAMILY}\"");
    let body = page.strip_prefix("<svg").unwrap_or(page);
    head + &replaced(body, LINK, LINK_ENDS, |link| put_one(link, runs))
}

/// The run that a link stands for, in its place; nothing for any other link.
fn put_one(link: &str, runs: &[String]) -> Option<String> {
    let (before, after) = link.split_once(&format!(" href=\"{STANDS_FOR}"))?;
    let (number, _) = after.split_once('"')?;
    let run = runs.get(number.parse::<usize>().ok()?)?;
    let place = before.strip_prefix(LINK.trim_end())?;
    Some(format!("<g{place}>{run}</g>"))
}

/// A run of words; nothing where the font would not set it alike by itself.
fn written(run: &TextItem) -> Option<String> {
    let face = run.font.info();
    let Paint::Solid(ink) = &run.fill else {
        return None;
    };
    if face.family.as_str() != TEXT_FAMILY || run.stroke.is_some() || !plain(run) {
        return None;
    }
    let words: String = words(run).iter().map(Word::svg).collect();
    Some(format!("<g{}>{words}</g>", look(face, run.size, ink)))
}

/// A word of a run, and how far behind the run's place it begins and ends: who shows the page may
/// round the widths of letters to whole dots of the screen, which this spreads over the word.
struct Word {
    text: String,
    from: Abs,
    to: Abs,
}

impl Word {
    fn svg(&self) -> String {
        let long = self.to - self.from;
        // One letter has no gap to be made wider or narrower.
        let long = if self.text.chars().nth(1).is_some() {
            format!(" textLength=\"{:.2}\"", long.to_pt())
        } else {
            String::new()
        };
        let text = self.text.replace('&', "&amp;").replace('<', "&lt;");
        format!("<text x=\"{:.2}\"{long}>{text}</text>", self.from.to_pt())
    }
}

/// The words of a run. Not its letters one by one: the window's engine keeps eight bytes of each
/// place it is given, for good, and of a part of a run (`tspan`) some five hundred.
fn words(run: &TextItem) -> Vec<Word> {
    let mut words: Vec<Word> = Vec::new();
    let mut behind = Abs::zero();
    let mut begins = true;
    for (glyph, c) in run.glyphs.iter().zip(run.text.chars()) {
        let from = behind + glyph.x_offset.at(run.size);
        behind += glyph.x_advance.at(run.size);
        if c == ' ' {
            begins = true;
        } else if begins {
            begins = false;
            let text = c.to_string();
            let to = behind;
            words.push(Word { text, from, to });
        } else if let Some(word) = words.last_mut() {
            word.text.push(c);
            word.to = behind;
        }
    }
    words
}

fn look(face: &FontInfo, size: Abs, ink: &Color) -> String {
    let bold = face.variant.weight >= FontWeight::BOLD;
    let italic = face.variant.style == FontStyle::Italic;
    format!(
        " font-size=\"{:.2}\"{}{} fill=\"{}\"",
        size.to_pt(),
        if bold { " font-weight=\"700\"" } else { "" },
        if italic { " font-style=\"italic\"" } else { "" },
        ink.to_hex()
    )
}

/// Each character is the glyph that the font has for it by itself, one after the other on one line.
fn plain(run: &TextItem) -> bool {
    let mut end = 0;
    run.glyphs.iter().all(|glyph| {
        let range = glyph.range();
        let follows = range.start == end;
        end = range.end;
        let own = sole(&run.text, glyph).and_then(|c| run.font.ttf().glyph_index(c));
        follows && own.is_some_and(|own| own.0 == glyph.id) && glyph.y_offset == Em::zero()
    })
}

/// The one character that a glyph is of.
fn sole(text: &str, glyph: &Glyph) -> Option<char> {
    let mut all = text.get(glyph.range())?.chars();
    let c = all.next()?;
    all.next().is_none().then_some(c)
}
