//! Words with figures in braces: quantities, and figures of the course by name.

use crate::course::nearest;
use crate::quantity;
use craft::quantity::{Length, Mass, Units, kilograms, metres, show_mass, show_roughly};
use serde::de::{Deserialize, Deserializer, Error};

/// What stands in place of a figure that a course has not got.
const MISSING: &str = "(see the setting-out sheet)";

/// Words with figures to be filled in.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Wording(Vec<Piece>);

#[derive(Debug, Clone, PartialEq)]
enum Piece {
    Words(String),
    Length(Length),
    Mass(Mass),
    Figure(Figure),
}

/// A figure of a course that a lesson can name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Figure {
    /// Ground to the underside of the cope.
    Height,
    /// The wall at the ground.
    BaseWidth,
    /// The wall under the cope.
    TopWidth,
    /// The wall along its line.
    Length,
    /// How far the faces lean, as `1 in 6`.
    Batter,
    /// Ground to the bottom of the trench.
    FootingDepth,
    /// Of a cope.
    CopeHeight,
    /// Of the first row of throughs.
    ThroughHeight,
    /// From through to through.
    ThroughSpacing,
    /// How far the string moves up at once.
    StringStep,
    /// How deep bars go.
    Embedment,
    /// From frame to frame.
    FrameSpacing,
    /// How many learn.
    Students,
    /// The kind of stone.
    Rock,
}

impl Figure {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::Height,
        Self::BaseWidth,
        Self::TopWidth,
        Self::Length,
        Self::Batter,
        Self::FootingDepth,
        Self::CopeHeight,
        Self::ThroughHeight,
        Self::ThroughSpacing,
        Self::StringStep,
        Self::Embedment,
        Self::FrameSpacing,
        Self::Students,
        Self::Rock,
    ];

    /// The word a lesson uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::Height => "height",
            Self::BaseWidth => "base-width",
            Self::TopWidth => "top-width",
            Self::Length => "length",
            Self::Batter => "batter",
            Self::FootingDepth => "footing-depth",
            Self::CopeHeight => "cope-height",
            Self::ThroughHeight => "through-height",
            Self::ThroughSpacing => "through-spacing",
            Self::StringStep => "string-step",
            Self::Embedment => "embedment",
            Self::FrameSpacing => "frame-spacing",
            Self::Students => "students",
            Self::Rock => "rock",
        }
    }
}

/// What is wrong with a pair of braces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Wrong {
    /// Where, in bytes from the beginning.
    pub(crate) at: usize,
    pub(crate) what: String,
    pub(crate) cure: String,
}

impl Wording {
    /// Reads words with figures in braces; `{{` and `}}` stand for a brace itself.
    pub(crate) fn read(text: &str) -> Result<Self, Wrong> {
        let mut pieces = Vec::new();
        let mut words = String::new();
        let mut at = 0;
        while let Some(next) = text[at..].find(['{', '}']).map(|by| at + by) {
            words.push_str(&text[at..next]);
            let rest = &text[next..];
            if rest.starts_with("{{") || rest.starts_with("}}") {
                words.push_str(&rest[..1]);
                at = next + 2;
                continue;
            }
            let inside = braced(rest).map_err(|(what, cure)| Wrong {
                at: next,
                what,
                cure,
            })?;
            if !words.is_empty() {
                pieces.push(Piece::Words(std::mem::take(&mut words)));
            }
            pieces.push(piece(inside).map_err(|(what, cure)| Wrong {
                at: next,
                what,
                cure,
            })?);
            at = next + inside.len() + 2;
        }
        words.push_str(&text[at..]);
        if !words.is_empty() {
            pieces.push(Piece::Words(words));
        }
        Ok(Self(pieces))
    }

    /// The words with every figure filled in: quantities in these units by rule of thumb, the
    /// figures of the course as `figure` writes them. One that it has not got is looked up
    /// elsewhere, and says where.
    pub fn filled(&self, units: Units, figure: impl Fn(Figure) -> Option<String>) -> String {
        let pieces = self.0.iter().map(|piece| match piece {
            Piece::Words(words) => words.clone(),
            Piece::Length(length) => whole(&show_roughly(*length, units)),
            Piece::Mass(mass) => whole(&show_mass(*mass, units)),
            Piece::Figure(it) => figure(*it).unwrap_or_else(|| MISSING.to_owned()),
        });
        pieces.collect()
    }
}

impl<'de> Deserialize<'de> for Wording {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        Self::read(&text)
            .map_err(|wrong| D::Error::custom(format!("{}; {}", wrong.what, wrong.cure)))
    }
}

/// A figure that no line may break: its spaces hold together what is on either side.
pub fn whole(figure: &str) -> String {
    figure.replace(' ', "\u{a0}")
}

/// What stands between an opening brace and its closing one.
fn braced(rest: &str) -> Result<&str, (String, String)> {
    let Some(after) = rest.strip_prefix('{') else {
        let what = "a } without a { before it".to_owned();
        return Err((
            what,
            "write {1.5 m} or {height}; }} is a plain brace".to_owned(),
        ));
    };
    match after.find(['{', '}']) {
        Some(end) if after[end..].starts_with('}') => Ok(&after[..end]),
        _ => {
            let what = "a { without its }".to_owned();
            Err((
                what,
                "write {1.5 m} or {height}; {{ is a plain brace".to_owned(),
            ))
        }
    }
}

/// A quantity where it begins with a number, else a figure by its name.
fn piece(inside: &str) -> Result<Piece, (String, String)> {
    let inside = inside.trim();
    let is_number = |sign: char| sign.is_ascii_digit() || ".+-".contains(sign);
    if inside.starts_with(is_number) {
        let length = quantity::length(inside).ok();
        let mass = quantity::mass(inside).ok();
        let length = length.filter(|it| metres(0.0) <= *it).map(Piece::Length);
        let mass = mass.filter(|it| kilograms(0.0) <= *it).map(Piece::Mass);
        return length.or(mass).ok_or_else(|| {
            let what = format!("{{{inside}}} is neither a length nor a mass");
            (
                what,
                "write a quantity such as {50 mm}, {1.5 m} or {55 kg}".to_owned(),
            )
        });
    }
    let mut all = Figure::ALL.into_iter();
    if let Some(figure) = all.find(|figure| figure.word() == inside) {
        return Ok(Piece::Figure(figure));
    }
    let words = Figure::ALL.map(Figure::word);
    let what = format!("there is no figure {{{inside}}}");
    let cure = match nearest(inside, words.into_iter()) {
        Some(near) => format!("did you mean {{{near}}}? There are {}", words.join(", ")),
        None => format!("there are {}", words.join(", ")),
    };
    Err((what, cure))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn filled(text: &str, units: Units) -> String {
        let wording = Wording::read(text).expect(text);
        let filled = wording.filled(units, |figure| match figure {
            Figure::Height => Some("1.07 m".to_owned()),
            Figure::Students => Some("8".to_owned()),
            _ => None,
        });
        filled.replace('\u{a0}', " ")
    }

    #[test]
    fn figures_are_filled_in_the_units_of_the_course() {
        for (text, metric, imperial) in [
            ("no figure at all", "no figure at all", "no figure at all"),
            ("a {15 mm} gap", "a 1.5 cm gap", "a 1/2 in gap"),
            ("{50 mm}", "5 cm", "2 in"),
            (
                "{1.5 m} apart, {55 kg} each",
                "1.5 m apart, 55 kg each",
                "4 ft 11 in apart, 121 lb each",
            ),
            ("{2 in} and { 3 ft }", "5 cm and 91 cm", "2 in and 3 ft"),
            (
                "{height} high for {students}",
                "1.07 m high for 8",
                "1.07 m high for 8",
            ),
            (
                "a cope of {cope-height}",
                "a cope of (see the setting-out sheet)",
                "a cope of (see the setting-out sheet)",
            ),
            ("{{plain}} {1 m}", "{plain} 1 m", "{plain} 3 ft 3 in"),
            ("", "", ""),
        ] {
            assert_eq!(filled(text, Units::Metric), metric);
            assert_eq!(filled(text, Units::Imperial), imperial);
        }
    }

    #[test]
    fn no_line_breaks_within_a_quantity() {
        let wording = Wording::read("a gap of {1.5 m}").expect("sound");
        let filled = wording.filled(Units::Imperial, |_| None);
        assert_eq!(filled, "a gap of 4\u{a0}ft\u{a0}11\u{a0}in");
    }

    #[test]
    fn every_figure_is_read_by_its_name() {
        for figure in Figure::ALL {
            let wording = Wording::read(&format!("{{{}}}", figure.word())).expect("a figure");
            assert_eq!(wording.0, [Piece::Figure(figure)]);
        }
    }

    #[test]
    fn what_can_not_be_filled_is_refused_where_it_stands() {
        for (text, at, what, cure) in [
            (
                "a {heigth}",
                2,
                "there is no figure {heigth}",
                "did you mean {height}?",
            ),
            (
                "{}",
                0,
                "there is no figure {}",
                "there are height, base-width",
            ),
            (
                "so {5 furlongs}",
                3,
                "{5 furlongs} is neither a length nor a mass",
                "write a quantity",
            ),
            (
                "so {5}",
                3,
                "{5} is neither a length nor a mass",
                "write a quantity",
            ),
            ("so {-5 mm}", 3, "{-5 mm} is neither", "write a quantity"),
            ("so {5 mm", 3, "a { without its }", "{{ is a plain brace"),
            (
                "so {5 mm {height}",
                3,
                "a { without its }",
                "{{ is a plain brace",
            ),
            ("so 5 mm} high", 7, "a } without a {", "}} is a plain brace"),
        ] {
            let wrong = Wording::read(text).expect_err(text);
            assert_eq!(wrong.at, at, "{text}");
            assert!(wrong.what.starts_with(what), "{text}: {}", wrong.what);
            assert!(wrong.cure.contains(cure), "{text}: {}", wrong.cure);
        }
    }
}
