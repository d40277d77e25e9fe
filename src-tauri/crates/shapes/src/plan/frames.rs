//! The setting-out as JSON: frames, bays, bars, boards, strings and moves.

use super::Timber;
use craft::course::FrameKind;
use craft::plan::Plan;
use craft::quantity::{Length, Read};
use serde::Serialize;

/// The setting-out.
#[derive(Debug, Clone, Serialize)]
pub struct Frames {
    /// `bar` or `timber`.
    pub kind: String,
    /// Frames the line takes.
    pub count: usize,
    /// Sets to bring.
    pub sets: usize,
    /// Frames missing; null if nobody has counted.
    pub short: Option<usize>,
    /// One per built end, apart from the frames.
    pub end_profiles: usize,
    /// The longest distance between neighbours.
    pub bay_m: f64,
    /// One row per frame, in order of station.
    pub rows: Vec<FrameRow>,
    /// From frame to frame; the last bay of a ring comes back to station 0.
    pub bays: Vec<Bay>,
    /// The arcs of the line.
    pub curves: Vec<Curve>,
    /// The bars; null where the frames are of timber.
    pub bars: Option<Bars>,
    /// One per bar.
    pub caps: usize,
    /// The board of each bar frame.
    pub board: Option<Board>,
    /// What the bars do in a dug footing.
    pub trench: Option<Trench>,
    /// Cut list and lumber; null where the frames are of bars.
    pub timber: Option<Timber>,
    /// The leapfrog, when fewer frames are in stock than stations.
    pub moves: Vec<Move>,
    /// What building in bays does, where frames are moved along.
    pub leapfrog: Option<Leapfrog>,
    /// String heights from the ground up.
    pub strings: Vec<StringHeight>,
    /// The string to bring.
    pub string: StringToBring,
}

/// One frame.
#[derive(Debug, Clone, Serialize)]
pub struct FrameRow {
    /// Along the centre line.
    pub station_m: f64,
    /// Level of the ground on the centre line.
    pub ground_m: f64,
    /// Ground to the underside of the board, on the centre line.
    pub height_m: f64,
    /// Between the bars at the ground.
    pub base_width_m: f64,
    /// Centre line to the inner face of the left bar at the ground.
    pub left_offset_m: f64,
    /// The same on the right.
    pub right_offset_m: f64,
    /// Ground to the underside of the board at the left bar, plumb.
    pub left_rise_m: f64,
    /// The same on the right.
    pub right_rise_m: f64,
    /// A level board has equal rises here.
    pub level_across: bool,
    /// On the ground plan, along the direction in which the line sets off.
    pub x_m: f64,
    /// On the ground plan, to the left of that direction.
    pub y_m: f64,
    /// The line's own direction, anticlockwise from the first.
    pub heading_degrees: f64,
}

/// What lies between two neighbouring frames.
#[derive(Debug, Clone, Serialize)]
pub struct Bay {
    /// Station of the frame it begins at.
    pub from_m: f64,
    /// Station of the frame it ends at.
    pub to_m: f64,
    /// A tape pulled straight between the left marks at the ground.
    pub left_taped_m: f64,
    /// The same on the right.
    pub right_taped_m: f64,
    /// From the left mark to the next right one.
    pub left_to_right_m: f64,
    /// From the right mark to the next left one.
    pub right_to_left_m: f64,
    /// How far a straight string is off the left face at the middle.
    pub left_bow_m: f64,
    /// The same on the right.
    pub right_bow_m: f64,
    /// The longest string of the left face, without tails.
    pub left_string_m: f64,
    /// The same on the right.
    pub right_string_m: f64,
}

/// One arc, and how the string keeps to it.
#[derive(Debug, Clone, Serialize)]
pub struct Curve {
    /// Where it begins.
    pub from_m: f64,
    /// Where it ends.
    pub to_m: f64,
    /// Of the centre line.
    pub radius_m: f64,
    /// `left` or `right`.
    pub turn: String,
    /// The longest of its bays.
    pub bay_m: f64,
    /// The most a straight string is off the left face.
    pub left_bow_m: f64,
    /// The same on the right.
    pub right_bow_m: f64,
    /// The longest bay that keeps the outer face's bow within the tolerance.
    pub spacing_for_tolerance_m: f64,
    /// The outer face's bow is more than the tolerance.
    pub too_far: bool,
}

/// The bars of all frames.
#[derive(Debug, Clone, Serialize)]
pub struct Bars {
    /// Two to a frame.
    pub count: usize,
    /// The stock length chosen; null if none is long enough.
    pub length_m: Option<f64>,
    /// The shortest that would do.
    pub needed_length_m: f64,
    /// Nominal.
    pub diameter_mm: f64,
    /// All bars together.
    pub mass_kg: Option<f64>,
}

/// The board of a bar frame.
#[derive(Debug, Clone, Serialize)]
pub struct Board {
    /// Along the board.
    pub length_m: f64,
    /// Along the wall.
    pub width_m: f64,
    /// Upwards.
    pub thickness_m: f64,
    /// From the middle of one eye to the middle of the other, at the underside.
    pub eyes_m: f64,
    /// Of an eye across.
    pub eye_m: f64,
}

/// Bars where a trench is dug.
#[derive(Debug, Clone, Serialize)]
pub struct Trench {
    /// The bars pass through the footing rather than beside it.
    pub through_footing: bool,
    /// Gaps to leave in the footing.
    pub gaps: usize,
    /// Width of one along the wall.
    pub gap_m: f64,
    /// Along the bar, below the bottom of the trench: all that grips.
    pub grip_m: f64,
}

/// One move of the leapfrog.
#[derive(Debug, Clone, Serialize)]
pub struct Move {
    /// The frame, counted from 1 at station 0.
    pub frame: usize,
    /// Where it stood.
    pub from_m: f64,
    /// Where it goes.
    pub to_m: f64,
    /// The wall stands to its full height up to here before the frame is drawn.
    pub built_to_m: f64,
}

/// What building in bays does.
#[derive(Debug, Clone, Serialize)]
pub struct Leapfrog {
    /// Frames that stand at one time.
    pub in_use: usize,
    /// The stretch they span.
    pub room_m: f64,
    /// Facing pairs that find a place there.
    pub pairs: usize,
    /// Facing pairs the group makes.
    pub of_pairs: usize,
}

/// A height of the string.
#[derive(Debug, Clone, Serialize)]
pub struct StringHeight {
    /// Above the ground at station 0.
    pub height_m: f64,
    /// Between the faces there.
    pub width_m: f64,
}

/// The string to bring.
#[derive(Debug, Clone, Serialize)]
pub struct StringToBring {
    /// All of it, tails included.
    pub total_m: f64,
    /// Beyond a frame at each end of a string.
    pub tail_m: f64,
    /// How far the longest one sags at its middle.
    pub sag_m: f64,
}

impl Frames {
    pub(super) fn of(plan: &Plan, kind: FrameKind) -> Self {
        let (frames, fittings) = (&plan.frames, &plan.fittings);
        Self {
            kind: match kind {
                FrameKind::Bar => "bar",
                FrameKind::Timber => "timber",
            }
            .to_owned(),
            count: frames.rows.len(),
            sets: frames.sets,
            short: frames.short,
            end_profiles: frames.end_profiles,
            bay_m: frames.bay().si(),
            rows: frames
                .rows
                .iter()
                .map(|row| FrameRow::of(row, plan))
                .collect(),
            bays: bays(plan),
            curves: fittings.curves.iter().map(Curve::of).collect(),
            bars: frames.bars.as_ref().map(Bars::of),
            caps: frames.bars.as_ref().map_or(0, |bars| bars.count),
            board: fittings.board.as_ref().map(Board::of),
            trench: fittings.trench.as_ref().map(Trench::of),
            timber: plan.timber.as_ref().map(Timber::of),
            moves: frames.moves.iter().map(Move::of).collect(),
            leapfrog: plan.leapfrog.as_ref().map(Leapfrog::of),
            strings: frames.strings.iter().map(StringHeight::of).collect(),
            string: StringToBring {
                total_m: fittings.string.total.si(),
                tail_m: fittings.string.tail.si(),
                sag_m: fittings.string.sag.si(),
            },
        }
    }
}

impl FrameRow {
    fn of(row: &craft::frames::FrameRow, plan: &Plan) -> Self {
        let place = plan.wall.line.place(row.station);
        Self {
            station_m: row.station.si(),
            ground_m: row.ground.si(),
            height_m: row.height.si(),
            base_width_m: row.base_width().si(),
            left_offset_m: row.left_offset.si(),
            right_offset_m: row.right_offset.si(),
            left_rise_m: row.left_rise.si(),
            right_rise_m: row.right_rise.si(),
            level_across: row.is_level_across(),
            x_m: place.x_m,
            y_m: place.y_m,
            heading_degrees: place.heading.to_degrees(),
        }
    }
}

fn bays(plan: &Plan) -> Vec<Bay> {
    let strings = plan.fittings.string.bays.iter();
    plan.frames
        .bays
        .iter()
        .zip(strings)
        .map(|(bay, string)| {
            let of = |both: [Length; 2]| both.map(Read::si);
            let [left_taped_m, right_taped_m] = of(bay.taped);
            let [left_to_right_m, right_to_left_m] = of(bay.diagonals);
            let [left_bow_m, right_bow_m] = of(bay.bow);
            let [left_string_m, right_string_m] = of(*string);
            Bay {
                from_m: bay.from.si(),
                to_m: bay.to.si(),
                left_taped_m,
                right_taped_m,
                left_to_right_m,
                right_to_left_m,
                left_bow_m,
                right_bow_m,
                left_string_m,
                right_string_m,
            }
        })
        .collect()
}

impl Curve {
    fn of(curve: &craft::frames::Curve) -> Self {
        Self {
            from_m: curve.from.si(),
            to_m: curve.to.si(),
            radius_m: curve.bend.radius.si(),
            turn: curve.bend.turn.word().to_owned(),
            bay_m: curve.bay.si(),
            left_bow_m: curve.bow[0].si(),
            right_bow_m: curve.bow[1].si(),
            spacing_for_tolerance_m: curve.spacing_for_tolerance.si(),
            too_far: curve.too_far,
        }
    }
}

impl Bars {
    fn of(bars: &craft::frames::Bars) -> Self {
        Self {
            count: bars.count,
            length_m: bars.chosen.map(Read::si),
            needed_length_m: bars.needed.si(),
            diameter_mm: bars.diameter.si() * 1000.0,
            mass_kg: bars.mass.map(Read::si),
        }
    }
}

impl Board {
    fn of(board: &craft::frames::Board) -> Self {
        Self {
            length_m: board.length.si(),
            width_m: board.width.si(),
            thickness_m: board.thickness.si(),
            eyes_m: board.eyes.si(),
            eye_m: board.eye.si(),
        }
    }
}

impl Trench {
    fn of(trench: &craft::frames::Trench) -> Self {
        Self {
            through_footing: trench.through_footing,
            gaps: trench.gaps,
            gap_m: trench.gap.si(),
            grip_m: trench.grip.si(),
        }
    }
}

impl Move {
    fn of(one: &craft::frames::Move) -> Self {
        Self {
            frame: one.frame,
            from_m: one.from.si(),
            to_m: one.to.si(),
            built_to_m: one.built_to.si(),
        }
    }
}

impl Leapfrog {
    fn of(leapfrog: &craft::frames::Leapfrog) -> Self {
        Self {
            in_use: leapfrog.in_use,
            room_m: leapfrog.room.si(),
            pairs: leapfrog.pairs,
            of_pairs: leapfrog.of_pairs,
        }
    }
}

impl StringHeight {
    fn of(one: &craft::frames::StringHeight) -> Self {
        Self {
            height_m: one.height.si(),
            width_m: one.width.si(),
        }
    }
}
