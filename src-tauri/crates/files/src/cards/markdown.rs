//! The text of a lesson: Markdown read into paragraphs, lists and headings, and nothing else.

use super::wording::Wording;
use crate::shelf::Text;
use crate::{Error, Fault};
use pulldown_cmark::{Event, HeadingLevel, OffsetIter, Options, Parser, Tag};
use std::iter::Peekable;
use std::ops::Range;

/// Lists in lists and emphasis in emphasis go so deep at most.
const DEEPEST: usize = 6;

/// A block of a text.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A heading within the text.
    Heading(Vec<Span>),
    /// A paragraph.
    Paragraph(Vec<Span>),
    /// A list.
    List {
        /// Its items are counted.
        numbered: bool,
        /// What stands at each.
        items: Vec<Vec<Block>>,
    },
}

/// A stretch of a line.
#[derive(Debug, Clone, PartialEq)]
pub enum Span {
    /// Words.
    Words(Wording),
    /// Words that matter most.
    Strong(Vec<Span>),
    /// Words that are stressed.
    Emphasis(Vec<Span>),
}

/// The blocks of the Markdown that begins at a byte of a file.
pub(super) fn blocks(file: &Text, from: usize) -> Result<Vec<Block>, Error> {
    // What is not a part of a lesson is looked for, so that it can be named and not printed raw.
    let options = Options::ENABLE_TABLES
        | Options::ENABLE_FOOTNOTES
        | Options::ENABLE_STRIKETHROUGH
        | Options::ENABLE_TASKLISTS;
    let parser = Parser::new_ext(&file.text[from..], options);
    let mut reader = Reader {
        file,
        from,
        events: parser.into_offset_iter().peekable(),
    };
    reader.blocks(0)
}

struct Reader<'a> {
    file: &'a Text,
    from: usize,
    events: Peekable<OffsetIter<'a>>,
}

/// Words of one line after another, and where each stands in the file.
#[derive(Default)]
struct Run {
    words: String,
    places: Vec<(usize, usize)>,
}

impl Run {
    fn add(&mut self, words: &str, at: usize) {
        self.places.push((self.words.len(), at));
        self.words.push_str(words);
    }

    /// Where a byte of the words stands in the file.
    fn place(&self, byte: usize) -> usize {
        let mut before = self.places.iter().rev();
        let before = before.find(|(words, _)| *words <= byte);
        before.map_or(0, |(words, at)| at + (byte - words))
    }
}

impl Reader<'_> {
    /// Blocks up to the end of what they stand in.
    fn blocks(&mut self, depth: usize) -> Result<Vec<Block>, Error> {
        let mut blocks = Vec::new();
        while let Some((event, range)) = self.events.peek().cloned() {
            match event {
                Event::End(_) => break,
                Event::Start(Tag::Paragraph) => {
                    let spans = self.within(depth, &range, Self::spans)?;
                    blocks.push(Block::Paragraph(spans));
                }
                Event::Start(Tag::Heading {
                    level: HeadingLevel::H2,
                    ..
                }) => {
                    let spans = self.within(depth, &range, Self::spans)?;
                    blocks.push(Block::Heading(spans));
                }
                Event::Start(Tag::List(first)) => {
                    let items = self.within(depth, &range, Self::items)?;
                    let numbered = first.is_some();
                    blocks.push(Block::List { numbered, items });
                }
                // A list without empty lines has its words straight in its items.
                event if is_inline(&event) => {
                    let spans = self.spans(depth)?;
                    blocks.push(Block::Paragraph(spans));
                }
                event => return Err(self.no_place(&event, &range)),
            }
        }
        Ok(blocks)
    }

    fn items(&mut self, depth: usize) -> Result<Vec<Vec<Block>>, Error> {
        let mut items = Vec::new();
        while let Some((Event::Start(Tag::Item), range)) = self.events.peek().cloned() {
            items.push(self.within(depth, &range, Self::blocks)?);
        }
        Ok(items)
    }

    /// Words up to the end of what they stand in, or up to a block.
    fn spans(&mut self, depth: usize) -> Result<Vec<Span>, Error> {
        let mut spans = Vec::new();
        let mut run = Run::default();
        while let Some((event, range)) = self.events.peek().cloned() {
            match event {
                Event::Text(words) => run.add(&words, self.from + range.start),
                // Where a line ends says nothing: lines are broken anew on the page.
                Event::SoftBreak | Event::HardBreak => run.add(" ", self.from + range.start),
                Event::Start(Tag::Strong) => {
                    self.put(&mut spans, &mut run)?;
                    spans.push(Span::Strong(self.within(depth, &range, Self::spans)?));
                    continue;
                }
                Event::Start(Tag::Emphasis) => {
                    self.put(&mut spans, &mut run)?;
                    spans.push(Span::Emphasis(self.within(depth, &range, Self::spans)?));
                    continue;
                }
                Event::End(_) | Event::Start(Tag::List(_) | Tag::Paragraph) => break,
                event => return Err(self.no_place(&event, &range)),
            }
            self.events.next();
        }
        self.put(&mut spans, &mut run)?;
        Ok(spans)
    }

    /// What stands between a beginning and its end, a step deeper.
    fn within<T>(
        &mut self,
        depth: usize,
        range: &Range<usize>,
        read: impl FnOnce(&mut Self, usize) -> Result<T, Error>,
    ) -> Result<T, Error> {
        if DEEPEST < depth {
            return Err(self.refuse(
                self.from + range.start,
                "too-deep",
                "lists or emphasis stand too deep in one another".to_owned(),
                "write it with fewer of them inside another".to_owned(),
            ));
        }
        self.events.next();
        let read = read(self, depth + 1)?;
        self.events.next();
        Ok(read)
    }

    /// Ends a run of words.
    fn put(&self, spans: &mut Vec<Span>, run: &mut Run) -> Result<(), Error> {
        let run = std::mem::take(run);
        if run.words.is_empty() {
            return Ok(());
        }
        let wording = Wording::read(&run.words).map_err(|wrong| {
            self.refuse(run.place(wrong.at), "bad-figure", wrong.what, wrong.cure)
        })?;
        spans.push(Span::Words(wording));
        Ok(())
    }

    fn no_place(&self, event: &Event<'_>, range: &Range<usize>) -> Error {
        let what = format!("{} has no place in a lesson", named(event));
        let cure = "write paragraphs, **bold**, *italic*, lists with - or 1. and headings with ##";
        self.refuse(self.from + range.start, "no-place", what, cure.to_owned())
    }

    fn refuse(&self, at: usize, code: &'static str, what: String, cure: String) -> Error {
        self.file.refuse(Fault {
            code,
            key: String::new(),
            at,
            what,
            cure,
        })
    }
}

fn is_inline(event: &Event<'_>) -> bool {
    matches!(
        event,
        Event::Text(_)
            | Event::SoftBreak
            | Event::HardBreak
            | Event::Start(Tag::Strong | Tag::Emphasis)
    )
}

/// What a person would call it.
fn named(event: &Event<'_>) -> &'static str {
    match event {
        Event::Html(_) | Event::InlineHtml(_) | Event::Start(Tag::HtmlBlock) => "HTML",
        Event::Code(_) => "code between `",
        Event::Start(Tag::CodeBlock(_)) => "a line that four spaces or ``` make code",
        Event::Start(Tag::Image { .. }) => "a picture",
        Event::Start(Tag::Link { .. }) => "a link",
        Event::Start(Tag::Table(_)) => "a table",
        Event::Start(Tag::BlockQuote(_)) => "a quotation with >",
        Event::Start(Tag::Heading { .. }) => "a heading other than ##",
        Event::Start(Tag::Strikethrough) => "text struck out with ~",
        Event::Start(Tag::FootnoteDefinition(_)) | Event::FootnoteReference(_) => "a footnote",
        Event::TaskListMarker(_) => "a box to tick",
        Event::Rule => "a line across",
        _ => "this",
    }
}

#[cfg(test)]
mod tests;
