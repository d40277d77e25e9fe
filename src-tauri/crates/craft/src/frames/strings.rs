//! Strings: the heights they are set at, how long they are, and how far they sag.

use super::Bay;
use crate::quantity::{Force, Length, LinearMassDensity, Read, metres, steps_to_cover};
use crate::tables::StringTable;
use crate::wall::{Bend, Side, Wall};

/// A string is moved up by no more than this (common practice, no source: 0.15 to 0.20 m).
const STRING_STEP_M: f64 = 0.20;

/// Standard gravity in m/s² (third General Conference on Weights and Measures, 1901).
const GRAVITY_M_S2: f64 = 9.806_65;

/// A height at which the string is set, and the wall's width there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StringHeight {
    /// Above the ground at station 0.
    pub height: Length,
    /// Between the faces.
    pub width: Length,
}

/// The string to bring: one along each face of each bay, moved up from height to height.
#[derive(Debug, Clone, PartialEq)]
pub struct Strings {
    /// For each bay the longest string of its left and of its right face, without tails.
    pub bays: Vec<[Length; 2]>,
    /// Beyond a frame at each end of a string, to tie it with.
    pub tail: Length,
    /// All of it, tails included.
    pub total: Length,
    /// How far the longest one sags at its middle.
    pub sag: Length,
}

/// Each lift (ground to the first through row, row to row, last row to the top) in equal
/// steps of at most [`STRING_STEP_M`], so that a string always stands at a through row. Where
/// the ground falls below that at station 0 the strings go on down to it, counted below 0.
pub(super) fn heights(wall: &Wall, through_rows: &[Length]) -> Vec<StringHeight> {
    let section = &wall.section;
    let mut levels = through_rows.to_vec();
    let mut from = lowest_ground(wall);
    if from < metres(0.0) {
        levels.push(metres(0.0));
    }
    levels.push(section.height());
    levels.sort_by(|a, b| a.si().total_cmp(&b.si()));
    let mut strings = Vec::new();
    for to in levels {
        if to <= from {
            continue;
        }
        let steps = steps_to_cover(to - from, metres(STRING_STEP_M));
        for step in 1..=steps {
            let height = if step == steps {
                to
            } else {
                from + (to - from) * (step as f64 / steps as f64)
            };
            strings.push(StringHeight {
                height,
                width: section.width_at(height),
            });
        }
        from = to;
    }
    strings
}

/// The lowest ground under the wall, measured from the top down as rows and strings are: 0
/// where none lies lower than at station 0, less where it does by more than a hand's breadth.
fn lowest_ground(wall: &Wall) -> Length {
    let heights = wall.pieces().into_iter().flat_map(|piece| piece.height);
    let highest = heights.fold(0.0, |most, height| f64::max(most, height.si()));
    let lowest = wall.section.height() - metres(highest);
    if lowest < metres(-STRING_STEP_M / 2.0) {
        lowest
    } else {
        metres(0.0)
    }
}

/// The strings of all bays.
pub(super) fn strings(
    wall: &Wall,
    bays: &[Bay],
    heights: &[StringHeight],
    table: &StringTable,
) -> Strings {
    let longest = |bay: &Bay| Side::BOTH.map(|side| longest(wall, bay, side, heights));
    let each: Vec<[Length; 2]> = bays.iter().map(longest).collect();
    let all = || each.iter().flatten();
    Strings {
        tail: table.tail,
        total: all().fold(metres(0.0), |sum, one| sum + *one + table.tail * 2.0),
        sag: all().fold(metres(0.0), |most, one| {
            let sags = sag(*one, table.mass, table.pull);
            if most < sags { sags } else { most }
        }),
        bays: each,
    }
}

/// The longest string of a bay at one face: low on the outer face of a curve, high on the
/// inner one. Strings run parallel to the top.
fn longest(wall: &Wall, bay: &Bay, side: Side, heights: &[StringHeight]) -> Length {
    let hair = (bay.to - bay.from) * 1e-6;
    let rise = wall.top_level(bay.to - hair) - wall.top_level(bay.from);
    heights.iter().fold(metres(0.0), |longest, string| {
        let depth = wall.section.height() - string.height;
        let level = chord(bay.bend, side, wall.section.offset(side, depth), bay.length);
        let slanting = metres(level.si().hypot(rise.si()));
        if longest < slanting {
            slanting
        } else {
            longest
        }
    })
}

/// Straight across a bay at a face: `2 r sin(b / 2R)` on an arc.
fn chord(bend: Option<Bend>, side: Side, offset: Length, bay: Length) -> Length {
    let Some(bend) = bend else {
        return bay;
    };
    let turned = (bay / bend.radius).get::<uom::si::ratio::ratio>();
    bend.radius_at(side, offset) * (2.0 * (turned / 2.0).sin())
}

/// How far a string sags at its middle: `(T/w) (cosh(w L / 2T) - 1)`, the catenary with the
/// horizontal pull T and the weight w for each unit of length.
pub fn sag(length: Length, mass: LinearMassDensity, pull: Force) -> Length {
    // Both in newtons and metres, so that their quotient is a length.
    let weight = mass.si() * GRAVITY_M_S2;
    let drawn = pull.si() / weight;
    metres(drawn * ((length.si() / (2.0 * drawn)).cosh() - 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Batter, Ground, Section, Survey};

    /// By hand: the ground falls by 0.5 m, so that below station 0 there are three strings
    /// (0.5 in steps of at most 0.2): at -0.333, -0.167 and 0; then 1.0 m in five steps.
    #[test]
    fn strings_go_on_down_where_the_ground_falls() {
        let eight = Batter::one_in(8.0).expect("sound");
        let section = Section::new(metres(1.0), metres(0.4), eight, eight).expect("sound");
        let survey = |station: f64, level: f64| Survey {
            station: metres(station),
            level: metres(level),
            left: metres(level),
            right: metres(level),
        };
        let mut wall = Wall::plain(section, metres(9.0));
        assert_eq!(heights(&wall, &[]).len(), 5);
        wall.ground = Ground::new(vec![survey(0.0, 0.0), survey(9.0, -0.5)]);
        let strings = heights(&wall, &[]);
        assert_eq!(strings.len(), 8);
        assert!((strings[0].height.si() + 1.0 / 3.0).abs() < 1e-12);
        assert!(strings[2].height.si().abs() < 1e-12);
        // w(y) goes on below 0: 0.4 + (1 + 1/3) · 2/8.
        assert!((strings[0].width.si() - (0.4 + (4.0 / 3.0) / 4.0)).abs() < 1e-12);
    }

    use crate::quantity::{kg_per_m, newtons};

    /// The parabola `w L² / 8T` is very near the catenary where the sag is small (surveying
    /// texts on taping).
    #[test]
    fn a_taut_string_sags_as_a_parabola() {
        let (length, weight, pull) = (10.0, 0.01, 20.0);
        let mass = kg_per_m(weight / GRAVITY_M_S2);
        let by_catenary = sag(metres(length), mass, newtons(pull)).si();
        let by_parabola = weight * length * length / (8.0 * pull);
        assert!((by_catenary - by_parabola).abs() < 1e-7);
    }
}
