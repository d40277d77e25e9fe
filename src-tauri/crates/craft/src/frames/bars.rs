//! The bars of all frames: how long they must be, and which stock length does.

use super::FrameRow;
use crate::Error;
use crate::course::FramesGiven;
use crate::quantity::{Length, Mass, Read, metres};
use crate::tables::Bar;
use crate::wall::{Section, Side};

/// The bars of all frames.
#[derive(Debug, Clone, PartialEq)]
pub struct Bars {
    /// Two to a frame.
    pub count: usize,
    /// The shortest that would do for all of them.
    pub needed: Length,
    /// The shortest stock length that does; `None` if none does.
    pub chosen: Option<Length>,
    /// Nominal diameter.
    pub diameter: Length,
    /// All bars together, if a stock length does.
    pub mass: Option<Mass>,
}

/// What is marked along one bar, from its foot up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarMarks {
    /// From the foot to the ground.
    pub in_ground: Length,
    /// From the ground to the underside of the board.
    pub to_board: Length,
    /// From the underside of the board to the head.
    pub above: Length,
}

impl BarMarks {
    /// From the foot to the head.
    pub fn length(&self) -> Length {
        self.in_ground + self.to_board + self.above
    }
}

impl Bars {
    /// The marks of the bar at one side of a frame: `rise · sqrt(1 + 1/n²)` to the board, the
    /// embedment below, and above it all that is left of the stock length; where no stock
    /// length does, the projection that was asked for.
    pub fn marks(
        &self,
        row: &FrameRow,
        side: Side,
        section: &Section,
        given: &FramesGiven,
    ) -> BarMarks {
        let to_board = row.rise(side) * section.batter(side).slope_factor();
        let in_ground = given.embedment;
        BarMarks {
            in_ground,
            to_board,
            above: self
                .chosen
                .map_or(given.projection, |length| length - in_ground - to_board),
        }
    }
}

/// Needed: `rise · sqrt(1 + 1/n²) + embedment + projection`, the largest over all frames.
pub(super) fn choose(
    section: &Section,
    rows: &[FrameRow],
    given: &FramesGiven,
    bars: &[Bar],
) -> Result<Bars, Error> {
    let bar = bars
        .iter()
        .find(|bar| bar.key == given.bar)
        .ok_or_else(|| Error::UnknownBar {
            given: given.bar.clone(),
            known: bars.iter().map(|bar| bar.key.clone()).collect(),
        })?;
    let needed = needed(section, rows, given);
    let chosen = given
        .stock_lengths
        .iter()
        .copied()
        .filter(|stock| needed.si() <= stock.si() + 1e-9)
        .min_by(|a, b| a.si().total_cmp(&b.si()));
    let count = 2 * rows.len();
    Ok(Bars {
        count,
        needed,
        chosen,
        diameter: bar.diameter,
        mass: chosen.map(|length| bar.mass * length * count as f64),
    })
}

fn needed(section: &Section, rows: &[FrameRow], given: &FramesGiven) -> Length {
    let along = |row: &FrameRow, side| row.rise(side) * section.batter(side).slope_factor();
    let longest = rows
        .iter()
        .flat_map(|row| Side::BOTH.map(|side| along(row, side).si()))
        .fold(0.0, f64::max);
    metres(longest) + given.embedment + given.projection
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::{CurveSpacing, FrameKind};
    use crate::quantity::kg_per_m;
    use crate::wall::Batter;

    /// By hand: at 3 in 4 a rise of 0.8 m is 1.0 m along the bar (3-4-5). With 0.5 m in the
    /// ground 1.6 m of bar is needed for 0.1 m above the board; a bar of 1.8 m leaves 0.3 m.
    #[test]
    fn what_is_left_of_a_stock_length_stands_above_the_board() {
        let lean = Batter::one_in(4.0 / 3.0).expect("sound");
        let section = Section::new(metres(0.8), metres(0.4), lean, lean).expect("sound");
        let row = FrameRow {
            station: metres(0.0),
            ground: metres(0.0),
            height: metres(0.8),
            left_offset: metres(0.8),
            right_offset: metres(0.8),
            left_rise: metres(0.8),
            right_rise: metres(0.8),
        };
        let mut given = FramesGiven {
            kind: FrameKind::Bar,
            in_stock: None,
            set_size: 1,
            leapfrog: false,
            spacing: metres(3.0),
            curve: CurveSpacing::AtMost(metres(1.5)),
            tolerance: metres(0.025),
            lumber_lengths: Vec::new(),
            bar: "16 mm".to_owned(),
            stock_lengths: vec![metres(2.4), metres(1.8)],
            embedment: metres(0.5),
            projection: metres(0.1),
        };
        let steel = Bar {
            key: "16 mm".to_owned(),
            diameter: metres(0.016),
            mass: kg_per_m(1.58),
            source: String::new(),
        };
        let marks = |given: &FramesGiven| {
            let bars = choose(&section, &[row], given, std::slice::from_ref(&steel));
            let bars = bars.expect("the bar is known");
            bars.marks(&row, Side::Left, &section, given)
        };
        let long = marks(&given);
        assert!((long.to_board.si() - 1.0).abs() < 1e-12);
        assert!((long.above.si() - 0.3).abs() < 1e-12);
        assert!((long.length().si() - 1.8).abs() < 1e-12);
        given.stock_lengths = vec![metres(1.5)];
        assert!((marks(&given).length().si() - 1.6).abs() < 1e-12);
    }
}
