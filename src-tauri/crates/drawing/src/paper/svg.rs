//! A scene written as SVG that needs no style sheet and no script.
//!
//! Looks are presentation attributes, so that the drawing is right on its own and a strict
//! content policy has nothing to refuse; classes let a window recolour it for the dark.

use crate::paper::pen::{Fill, Look, Pen};
use crate::paper::scene::{Anchor, Mark, Point, Scene, Text};
use std::fmt::Write;

/// The face every text is set in.
const FONT: &str = "Atkinson Hyperlegible Next";
const INK: &str = "#000000";
const PAPER: &str = "#ffffff";

impl Scene {
    /// The scene as an SVG file: paper millimetres, words included, no styles, no scripts.
    pub fn svg(&self) -> String {
        let (name, width, height) = (self.name, number(self.width_mm), number(self.height_mm));
        let mut out = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\" class=\"drawing drawing-{name}\" \
             aria-labelledby=\"{name}-title\" aria-describedby=\"{name}-desc\">\n\
             <title id=\"{name}-title\">{}</title>\n<desc id=\"{name}-desc\">{}</desc>\n",
            escaped(&self.title),
            escaped(&self.description)
        );
        for run in self.marks.chunk_by(|a, b| pen(a) == pen(b)) {
            let pen = run.first().map_or(Pen::Text, pen);
            open_group(&mut out, pen);
            for mark in run {
                put_mark(&mut out, mark);
            }
            out.push_str("</g>\n");
        }
        out.push_str("</svg>\n");
        out
    }
}

fn pen(mark: &Mark) -> Pen {
    match mark {
        Mark::Line { pen, .. }
        | Mark::Polyline { pen, .. }
        | Mark::Polygon { pen, .. }
        | Mark::Circle { pen, .. } => *pen,
        Mark::Text(_) => Pen::Text,
    }
}

fn open_group(out: &mut String, pen: Pen) {
    let Look {
        weight_mm,
        dashes_mm,
        fill,
    } = pen.look();
    let fill = match fill {
        Fill::Nothing => "none",
        Fill::Paper => PAPER,
        Fill::Ink => INK,
    };
    put(
        out,
        format_args!("<g class=\"{}\" fill=\"{fill}\"", pen.class()),
    );
    if pen == Pen::Text {
        put(out, format_args!(" font-family=\"{FONT}\""));
    }
    if 0.0 < weight_mm {
        put(
            out,
            format_args!(
                " stroke=\"{INK}\" stroke-width=\"{}\" stroke-linejoin=\"round\"",
                number(weight_mm)
            ),
        );
    }
    if !dashes_mm.is_empty() {
        let dashes: Vec<String> = dashes_mm.iter().copied().map(number).collect();
        put(
            out,
            format_args!(" stroke-dasharray=\"{}\"", dashes.join(" ")),
        );
    }
    out.push_str(">\n");
}

fn put_mark(out: &mut String, mark: &Mark) {
    match mark {
        Mark::Line { from, to, .. } => put(
            out,
            format_args!(
                "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>\n",
                number(from.x),
                number(from.y),
                number(to.x),
                number(to.y)
            ),
        ),
        Mark::Polyline { points, .. } => put(
            out,
            format_args!("<polyline fill=\"none\" points=\"{}\"/>\n", corners(points)),
        ),
        Mark::Polygon { points, .. } => {
            put(
                out,
                format_args!("<polygon points=\"{}\"/>\n", corners(points)),
            );
        }
        Mark::Circle {
            centre, radius_mm, ..
        } => put(
            out,
            format_args!(
                "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n",
                number(centre.x),
                number(centre.y),
                number(*radius_mm)
            ),
        ),
        Mark::Text(text) => put_text(out, text),
    }
}

fn put_text(out: &mut String, text: &Text) {
    let (x, y) = (number(text.at.x), number(text.at.y));
    put(
        out,
        format_args!(
            "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"",
            number(text.size_mm)
        ),
    );
    if text.bold {
        out.push_str(" font-weight=\"bold\"");
    }
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if text.turned {
        put(out, format_args!(" transform=\"rotate(-90 {x} {y})\""));
    }
    put(out, format_args!(">{}</text>\n", escaped(&text.words)));
}

fn corners(points: &[Point]) -> String {
    let mut out = String::with_capacity(points.len() * "123.45,123.45 ".len());
    for (at, point) in points.iter().enumerate() {
        let gap = if at == 0 { "" } else { " " };
        put(
            &mut out,
            format_args!("{gap}{},{}", hundredths(point.x), hundredths(point.y)),
        );
    }
    out
}

/// As [`hundredths`], with no needless noughts.
fn number(value: f64) -> String {
    hundredths(value).to_string()
}

/// Hundredths of a millimetre are finer than any printer.
fn hundredths(value: f64) -> f64 {
    // Minus nothing is nothing.
    (value * 100.0).round() / 100.0 + 0.0
}

/// Text as XML holds it; characters XML can't hold become spaces.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{FFFE}' | '\u{FFFF}' => out.push(' '),
            letter if letter.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
    out
}

/// Writing to a string can't fail; the result says nothing.
fn put(out: &mut String, what: std::fmt::Arguments<'_>) {
    let _ = out.write_fmt(what);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_person_types_can_not_break_the_file() {
        assert_eq!(
            escaped("Tom & <b>\"Jo\"</b>\u{0}\u{1b}"),
            "Tom &amp; &lt;b&gt;&quot;Jo&quot;&lt;/b&gt;  "
        );
    }

    #[test]
    fn numbers_are_short() {
        assert_eq!(number(-0.001), "0");
        assert_eq!(number(12.3456), "12.35");
        assert_eq!(number(5.0), "5");
    }

    #[test]
    fn every_pen_has_its_own_class_and_look() {
        let mut classes: Vec<_> = Pen::ALL.iter().map(|pen| pen.class()).collect();
        classes.sort_unstable();
        classes.dedup();
        assert_eq!(classes.len(), Pen::ALL.len());
    }
}
