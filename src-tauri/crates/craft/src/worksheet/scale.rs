//! The measure a sheet is written in: whole centimetres, or whole inches.

use crate::quantity::{INCH_M, Length, Read, Units, metres, round_to_mark, show_length, show_mark};

/// Marks of a tape that numbers are chosen by, and how they are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Scale {
    pub(super) units: Units,
}

impl Scale {
    pub(super) fn of(units: Units) -> Self {
        Self { units }
    }

    /// So many centimetres or inches.
    pub(super) fn marks(self, count: u32) -> Length {
        match self.units {
            Units::Metric => metres(f64::from(count) / 100.0),
            Units::Imperial => metres(f64::from(count) * INCH_M),
        }
    }

    /// The list in marks of this scale.
    pub(super) fn either<T>(self, metric: T, imperial: T) -> T {
        match self.units {
            Units::Metric => metric,
            Units::Imperial => imperial,
        }
    }

    /// Whether `marks / n` is a whole centimetre, or a quarter of an inch.
    pub(super) fn comes_out(self, marks: u32, n: u32) -> bool {
        (marks * self.either(1, 4)).is_multiple_of(n)
    }

    /// As it stands in a question or an answer: `1.20 m`; `3 ft 6 in`.
    pub(super) fn write(self, length: Length) -> String {
        show_length(length, self.units)
    }

    /// As it stands in a sum: `1.20 m`; `42 in`, which needs no carrying over feet.
    pub(super) fn in_sum(self, length: Length) -> String {
        match self.units {
            Units::Metric => self.write(length),
            Units::Imperial => format!("{} in", number(length.si() / INCH_M, 2)),
        }
    }

    /// As it stands at the end of a sum: `0.80 m`; `30 in, on the tape 2 ft 6 in`.
    pub(super) fn total(self, length: Length) -> String {
        let (sum, tape) = (self.in_sum(length), self.write(length));
        if sum == tape {
            tape
        } else {
            format!("{sum}, on the tape {tape}")
        }
    }

    /// A length that is marked to the millimetre or the sixteenth of an inch, in a sum.
    pub(super) fn mark_in_sum(self, length: Length) -> String {
        match self.units {
            Units::Metric => show_mark(length, self.units),
            Units::Imperial => self.in_sum(length),
        }
    }

    /// A mark as it stands in a sum: what the printed figure says, no more. In inches the
    /// sixteenth that a question gives, and of that the two decimals of a sum.
    pub(super) fn as_in_sum(self, length: Length) -> Length {
        let mark = round_to_mark(length, self.units);
        match self.units {
            Units::Metric => mark,
            Units::Imperial => {
                metres((mark.si() / INCH_M * 100.0).round_ties_even() / 100.0 * INCH_M)
            }
        }
    }

    /// How far off a length may be.
    pub(super) fn tolerance(self) -> String {
        self.either("within 1 cm (3/8 in)", "within 1/4 in (6 mm)")
            .to_owned()
    }
}

/// With a capital letter, as a line begins.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// At most so many decimals, and none that say nothing: `0.8`, `66.58`, `42`.
pub(super) fn number(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// What comes of rounding to a count: `4.83, so 5`; `5` where there is nothing to round.
pub(super) fn rounded(exact: f64, count: usize) -> String {
    let exact = number(exact, 2);
    if exact == count.to_string() {
        exact
    } else {
        format!("{exact}, so {count}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_no_needless_decimals() {
        assert_eq!(number(0.8, 2), "0.8");
        assert_eq!(number(66.579, 2), "66.58");
        assert_eq!(number(40.0, 0), "40");
        assert_eq!(number(42.0, 2), "42");
        assert_eq!(rounded(29.0 / 6.0, 5), "4.83, so 5");
        assert_eq!(rounded(5.0, 5), "5");
    }

    #[test]
    fn inches_come_out_by_the_quarter_and_metres_by_the_centimetre() {
        let (metric, imperial) = (Scale::of(Units::Metric), Scale::of(Units::Imperial));
        assert!(imperial.comes_out(50, 8) && !metric.comes_out(50, 8));
        assert!(!imperial.comes_out(40, 6) && metric.comes_out(48, 6));
        assert_eq!(
            imperial.total(imperial.marks(30)),
            "30 in, on the tape 2 ft 6 in"
        );
        assert_eq!(imperial.total(imperial.marks(8)), "8 in");
        assert_eq!(metric.total(metric.marks(80)), "0.80 m");
    }
}
