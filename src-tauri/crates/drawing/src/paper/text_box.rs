//! How much room a text takes, measured by the letters' own widths.

use crate::paper::scene::{Anchor, Point, Text};

/// A box on paper, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TextBox {
    /// Its left edge.
    pub(crate) left: f64,
    /// Its upper edge.
    pub(crate) top: f64,
    /// Its right edge.
    pub(crate) right: f64,
    /// Its lower edge.
    pub(crate) bottom: f64,
}

impl TextBox {
    /// The box a text takes.
    pub(crate) fn of(text: &Text) -> Self {
        let width = width(&text.words, text.size_mm, text.bold);
        let up = text.size_mm * ascent(&text.words);
        let down = text.size_mm * DESCENT;
        let before = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        let Point { x, y } = text.at;
        if text.turned {
            // A quarter turn to the left: what was right is up, what was up is left.
            return Self {
                left: x - up,
                top: y - (width - before),
                right: x + down,
                bottom: y + before,
            };
        }
        Self {
            left: x - before,
            top: y - up,
            right: x + (width - before),
            bottom: y + down,
        }
    }

    /// The smallest box that holds all points.
    pub(crate) fn around(points: &[Point]) -> Self {
        points.iter().fold(Self::NOTHING, |all, point| {
            all.with(Self {
                left: point.x,
                top: point.y,
                right: point.x,
                bottom: point.y,
            })
        })
    }

    /// A box that holds nothing and widens to the first box joined to it.
    pub(crate) const NOTHING: Self = Self {
        left: f64::INFINITY,
        top: f64::INFINITY,
        right: f64::NEG_INFINITY,
        bottom: f64::NEG_INFINITY,
    };

    /// The smallest box that holds both.
    pub(crate) fn with(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }

    pub(crate) fn width(self) -> f64 {
        self.right - self.left
    }

    pub(crate) fn height(self) -> f64 {
        self.bottom - self.top
    }
}

/// Below the base line, in parts of the size: the tail of a bold g is 0.201.
const DESCENT: f64 = 0.21;

/// Above the base line, in parts of the size: letters and the sign for degrees reach 0.75,
/// accents on capitals 0.88.
fn ascent(words: &str) -> f64 {
    let low = |letter: char| letter.is_ascii() || letter == '°';
    if words.chars().all(low) { 0.76 } else { 0.9 }
}

/// How wide a line of text is, in millimetres.
pub(crate) fn width(words: &str, size_mm: f64, bold: bool) -> f64 {
    let table = if bold { &BOLD } else { &REGULAR };
    millimetres(advances(words, table), size_mm)
}

/// The widths of all letters, in thousandths of the size.
fn advances(words: &str, table: &[u16; 95]) -> u32 {
    words.chars().map(|letter| advance(letter, table)).sum()
}

fn millimetres(thousandths: u32, size_mm: f64) -> f64 {
    f64::from(thousandths) / 1000.0 * size_mm
}

fn advance(letter: char, table: &[u16; 95]) -> u32 {
    let code = u32::from(letter);
    match code {
        // The table holds the printable ASCII characters.
        32..=126 => table
            .get((code - 32) as usize)
            .map_or(WIDEST, |width| u32::from(*width)),
        // Latin letters with accents; the ligatures count as widest.
        0xC6 | 0xE6 | 0x152 | 0x153 => WIDEST,
        0xA0..=0x24F => 750,
        _ => WIDEST,
    }
}

/// What any letter takes at most, in thousandths of the size.
const WIDEST: u32 = 1030;

/// Advance widths of Atkinson Hyperlegible Next Regular 2.001, space to tilde, in
/// thousandths of the size (its `hmtx` table).
const REGULAR: [u16; 95] = [
    280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 648, 407, 548,
    576, 614, 588, 598, 510, 615, 595, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569,
    552, 694, 694, 392, 512, 631, 541, 824, 693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623,
    575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564, 538, 314, 558, 550, 252, 245, 492,
    262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344, 237, 344, 555,
];

/// The same of the Bold face.
const BOLD: [u16; 95] = [
    312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440, 659, 440, 579,
    600, 624, 607, 626, 537, 624, 571, 272, 272, 569, 612, 569, 547, 781, 678, 643, 658, 688, 597,
    566, 718, 701, 424, 561, 663, 552, 858, 717, 746, 629, 756, 650, 610, 607, 686, 644, 886, 685,
    650, 618, 340, 440, 344, 582, 400, 288, 552, 596, 510, 596, 563, 365, 593, 571, 300, 259, 555,
    318, 882, 571, 576, 596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381, 254, 381, 537,
];

/// Breaks words into lines no wider than `room_mm`; a single word that is wider stays whole.
pub(crate) fn wrap(words: &str, size_mm: f64, room_mm: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut wide = 0;
    for word in words.split_whitespace() {
        let own = advances(word, &REGULAR);
        let with_it = wide + advance(' ', &REGULAR) + own;
        match lines.last_mut() {
            Some(line) if millimetres(with_it, size_mm) <= room_mm => {
                line.push(' ');
                line.push_str(word);
                wide = with_it;
            }
            _ => {
                lines.push(word.to_owned());
                wide = own;
            }
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand from the font's widths: 0 is 659, point 272, 3 is 600, 9 is 571, space 312,
    /// m 882: 3296 thousandths; at 5 mm that is 16.48 mm.
    #[test]
    fn a_figure_is_as_wide_as_its_letters() {
        assert!((width("0.39 m", 5.0, true) - 16.48).abs() < 1e-9);
    }

    #[test]
    fn a_turned_text_takes_its_length_upwards() {
        let mut text = Text {
            at: Point::new(10.0, 20.0),
            words: "0.39 m".to_owned(),
            size_mm: 5.0,
            bold: true,
            anchor: Anchor::Start,
            turned: false,
        };
        let flat = TextBox::of(&text);
        text.turned = true;
        let turned = TextBox::of(&text);
        assert!((flat.width() - turned.height()).abs() < 1e-9);
        assert!((flat.height() - turned.width()).abs() < 1e-9);
        assert!((turned.bottom - 20.0).abs() < 1e-9 && turned.top < 4.0);
    }

    #[test]
    fn lines_break_between_words_and_keep_to_the_room() {
        let lines = wrap("Small rings mark the heights of the strings.", 3.2, 30.0);
        assert!(1 < lines.len());
        assert!(lines.iter().all(|line| width(line, 3.2, false) <= 30.0));
        assert_eq!(
            lines.join(" "),
            "Small rings mark the heights of the strings."
        );
    }
}
