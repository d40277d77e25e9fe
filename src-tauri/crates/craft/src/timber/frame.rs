//! One nailed frame: from a wall's measurements to the pieces of its "A", each with its length
//! and saw angles.
//!
//! Seen along the wall, x runs across it and depth runs plumb down from the underside of the
//! top rail. With T the width there, l the lean of a face (1/n), s its slope factor
//! `sqrt(1 + l²)` and b the width of the batten:
//!
//! - inner edge of a leg = the wall's face: `x = T/2 + l · depth` out from the middle;
//! - outer edge: `b · s` farther out, because b is measured square to the leg;
//! - leg: `rise · s + projection + below`. Both ends are sawn level, so they are parallel,
//!   both long edges are alike, and the saw is set `atan(l)` off square;
//! - rail at a depth: outer edge to outer edge at its underside, where the legs spread most,
//!   and the overhang at each end: `T + depth (l₁ + l₂) + b (s₁ + s₂) + 2 · overhang`;
//! - brace: its middle line runs from the left leg's outer edge at the middle of the lower
//!   rail to the right leg's outer edge at the middle of the top rail. With d the depth of the
//!   lower rail's underside it rises d over a run of
//!   `T + b (s₁ + s₂) + l₁ (d - b/2) - l₂ b/2`, at the angle `β = atan(d / run)`. Its ends are
//!   sawn along the legs' outer edges: `β + atan(l₁)` off square at the foot and
//!   `β - atan(l₂)` at the head. Its longer edge is `(b/2) |tan foot - tan head|` longer than
//!   the middle line, and it takes up `(b/2) (|tan foot| + |tan head|)` more than that line.

use super::Timber;
use crate::Error;
use crate::frames::FrameRow;
use crate::quantity::{Length, Read, metres};
use crate::wall::{Batter, Section, Side};

/// What a frame has to follow. Faces are the inner faces of the legs: the string runs there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrameShape {
    /// Between the inner faces of the legs at the underside of the top rail: the width under
    /// the cope.
    pub top_width: Length,
    /// How the left face leans.
    pub left: Batter,
    /// How the right face leans.
    pub right: Batter,
    /// Ground to the underside of the top rail at the left leg, plumb.
    pub left_rise: Length,
    /// The same at the right leg.
    pub right_rise: Length,
}

impl FrameShape {
    /// The frame that stands at a row of the setting-out.
    pub fn at(row: &FrameRow, section: &Section) -> Self {
        Self {
            top_width: section.top_width(),
            left: section.batter(Side::Left),
            right: section.batter(Side::Right),
            left_rise: row.left_rise,
            right_rise: row.right_rise,
        }
    }

    fn check(&self) -> Result<(), Error> {
        for (key, given) in [
            ("wall.top_width", self.top_width),
            ("wall.height", self.left_rise),
            ("wall.height", self.right_rise),
        ] {
            if given.si() <= 0.0 || !given.si().is_finite() {
                return Err(Error::NotPositive { key, given });
            }
        }
        Ok(())
    }

    /// Both slope factors together: how many batten widths two legs take up sideways.
    fn slopes(&self) -> f64 {
        self.left.slope_factor() + self.right.slope_factor()
    }
}

/// A place in the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The leg along the left face.
    LeftLeg,
    /// The leg along the right face.
    RightLeg,
    /// Across the legs, its underside at the top of the wall.
    TopRail,
    /// Across the legs, near the ground.
    LowerRail,
    /// From low on the left leg to high on the right one.
    Brace,
}

/// One piece of batten.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Where it goes.
    pub part: Part,
    /// Its longest edge.
    pub length: Length,
    /// From tip to tip along the batten: the longest edge and what a slanting end stands
    /// beyond it.
    pub overall: Length,
    /// How far the saw is set off square at each end, in degrees; the lower end (for a rail
    /// the left) first. 0 is a square end.
    pub ends_degrees: [f64; 2],
}

/// The pieces of one frame: two legs and the top rail, and where the frame is tall enough to
/// take them the lower rail and the brace.
///
/// The lower rail is level and stands its height above the higher ground. Where it would not
/// keep clear of the top rail, both it and the brace are left out.
///
/// # Errors
/// [`Error::NotPositive`] if a width or a rise is zero or less, or no number.
pub fn pieces(shape: &FrameShape, timber: &Timber) -> Result<Vec<Piece>, Error> {
    shape.check()?;
    let mut pieces = vec![
        leg(Part::LeftLeg, shape.left, shape.left_rise, timber),
        leg(Part::RightLeg, shape.right, shape.right_rise, timber),
        rail(Part::TopRail, shape, metres(0.0), timber),
    ];
    let shorter = metres(shape.left_rise.si().min(shape.right_rise.si()));
    let depth = shorter - timber.lower_rail;
    if timber.width < depth {
        pieces.push(rail(Part::LowerRail, shape, depth, timber));
        pieces.push(brace(shape, depth, timber));
    }
    Ok(pieces)
}

fn leg(part: Part, batter: Batter, rise: Length, timber: &Timber) -> Piece {
    let length = rise * batter.slope_factor() + timber.projection + timber.below_ground;
    let angle = batter.lean().atan().to_degrees();
    Piece {
        part,
        length,
        // The ends are parallel: each tip stands b · tan(angle) = b · l beyond the other edge.
        overall: length + timber.width * batter.lean(),
        ends_degrees: [angle, angle],
    }
}

fn rail(part: Part, shape: &FrameShape, depth: Length, timber: &Timber) -> Piece {
    let narrowing = shape.left.lean() + shape.right.lean();
    let length =
        shape.top_width + depth * narrowing + timber.width * shape.slopes() + timber.overhang * 2.0;
    Piece {
        part,
        length,
        overall: length,
        ends_degrees: [0.0, 0.0],
    }
}

fn brace(shape: &FrameShape, depth: Length, timber: &Timber) -> Piece {
    let half = timber.width / 2.0;
    let run = shape.top_width + timber.width * shape.slopes() + (depth - half) * shape.left.lean()
        - half * shape.right.lean();
    let middle = metres(run.si().hypot(depth.si()));
    let angle = depth.si().atan2(run.si());
    let foot = angle + shape.left.lean().atan();
    let head = angle - shape.right.lean().atan();
    Piece {
        part: Part::Brace,
        length: middle + half * (foot.tan() - head.tan()).abs(),
        overall: middle + half * (foot.tan().abs() + head.tan().abs()),
        ends_degrees: [foot.to_degrees(), head.to_degrees()],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Across and up, in metres.
    type Point = (f64, f64);

    fn one_in(n: f64) -> Batter {
        Batter::one_in(n).expect("more than zero")
    }

    fn shape(top: f64, left: Batter, right: Batter, rises: [f64; 2]) -> FrameShape {
        FrameShape {
            top_width: metres(top),
            left,
            right,
            left_rise: metres(rises[0]),
            right_rise: metres(rises[1]),
        }
    }

    fn piece(shape: &FrameShape, timber: &Timber, part: Part) -> Piece {
        let all = pieces(shape, timber).expect("sound");
        *all.iter().find(|piece| piece.part == part).expect("there")
    }

    fn near(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-9, "{a} is not {b}");
    }

    /// By hand, plane geometry: 1 in 6 is atan(1/6) = 9.4623 degrees off plumb and
    /// sqrt(1 + 1/36) = 1.013794 longer than plumb. 1.2 m up is 1.216553 m along the leg, and
    /// 0.1 m above the rail's underside makes 1.316553 m.
    #[test]
    fn a_leg_of_one_in_six() {
        let six = one_in(6.0);
        let timber = Timber::default();
        let leg = piece(&shape(0.4, six, six, [1.2, 1.2]), &timber, Part::LeftLeg);
        assert!((leg.ends_degrees[0] - 9.4623).abs() < 5e-5);
        assert!((leg.ends_degrees[1] - 9.4623).abs() < 5e-5);
        assert!((six.slope_factor() - 1.013_794).abs() < 5e-7);
        assert!((leg.length.si() - 1.316_553).abs() < 5e-7);
        // 50 mm in 1 in 6 is 8.33 mm from tip to shoulder.
        assert!((leg.overall.si() - leg.length.si() - 0.05 / 6.0).abs() < 1e-12);
    }

    /// By hand, on a 3-4-5 triangle. Faces of 3 in 4 (n = 4/3) lean 0.75 and have a slope
    /// factor of 1.25: 0.8 m up is 1.0 m along. The batten of 50 mm stands 62.5 mm sideways.
    /// Top rail: 0.4 + 2 · 0.0625 + 2 · 0.05 = 0.625. Lower rail, 0.2 m above the ground and so
    /// 0.6 m down: 0.6 · 1.5 = 0.9 wider, 1.525.
    #[test]
    fn three_four_five() {
        let lean = one_in(4.0 / 3.0);
        let timber = Timber::default();
        let wide = shape(0.4, lean, lean, [0.8, 0.8]);
        near(piece(&wide, &timber, Part::RightLeg).length.si(), 1.1);
        near(piece(&wide, &timber, Part::TopRail).length.si(), 0.625);
        near(piece(&wide, &timber, Part::LowerRail).length.si(), 1.525);
    }

    /// By hand: a plumb frame is a rectangle with a diagonal. 0.5 between the legs and
    /// 2 · 0.05 of leg make a run of 0.6; 1.0 less 0.2 is a rise of 0.8; so the brace's middle
    /// line is 1.0 (3-4-5) and it leans atan(4/3) = 53.1301 degrees. Both ends are sawn alike,
    /// so each edge is as long as the middle line.
    #[test]
    fn a_plumb_frame_is_square_and_its_brace_a_diagonal() {
        let timber = Timber::default();
        let square = shape(0.5, Batter::PLUMB, Batter::PLUMB, [1.0, 1.0]);
        let leg = piece(&square, &timber, Part::LeftLeg);
        near(leg.ends_degrees[0], 0.0);
        near(leg.ends_degrees[1], 0.0);
        near(leg.length.si(), 1.1);
        near(leg.overall.si(), 1.1);
        let brace = piece(&square, &timber, Part::Brace);
        near(brace.length.si(), 1.0);
        assert!((brace.ends_degrees[0] - 53.1301).abs() < 5e-5);
        near(brace.ends_degrees[0], brace.ends_degrees[1]);
        // Half of 50 mm at a slope of 4/3, at each end.
        near(brace.overall.si(), 1.0 + 0.05 * 4.0 / 3.0);
    }

    /// By hand: the ground falls 0.3 m from left to right, so the right leg alone is longer, by
    /// 0.3 m of slope; the rail is as high above the ground on the left as it should be.
    #[test]
    fn on_a_slope_only_the_lower_leg_is_longer() {
        let (six, timber) = (one_in(6.0), Timber::default());
        let level = shape(0.4, six, six, [1.0, 1.0]);
        let falling = shape(0.4, six, six, [1.0, 1.3]);
        let longer = |part| {
            let (a, b) = (piece(&level, &timber, part), piece(&falling, &timber, part));
            (b.length - a.length).si()
        };
        near(longer(Part::RightLeg), 0.3 * six.slope_factor());
        for part in [Part::LeftLeg, Part::TopRail, Part::LowerRail, Part::Brace] {
            near(longer(part), 0.0);
        }
    }

    #[test]
    fn a_low_frame_has_neither_lower_rail_nor_brace_and_nonsense_is_refused() {
        let timber = Timber::default();
        let low = shape(0.4, Batter::PLUMB, Batter::PLUMB, [0.25, 0.6]);
        assert_eq!(pieces(&low, &timber).expect("sound").len(), 3);
        for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            for wrong in [
                shape(bad, Batter::PLUMB, Batter::PLUMB, [1.0, 1.0]),
                shape(0.4, Batter::PLUMB, Batter::PLUMB, [bad, 1.0]),
                shape(0.4, Batter::PLUMB, Batter::PLUMB, [1.0, bad]),
            ] {
                assert!(matches!(
                    pieces(&wrong, &timber),
                    Err(Error::NotPositive { .. })
                ));
            }
        }
    }

    fn apart(a: Point, b: Point) -> f64 {
        (a.0 - b.0).hypot(a.1 - b.1)
    }

    /// Where the line through a towards `along` meets the line through b towards `other`.
    fn meet(a: Point, along: Point, b: Point, other: Point) -> Point {
        let cross = along.0 * other.1 - along.1 * other.0;
        let t = ((b.0 - a.0) * other.1 - (b.1 - a.1) * other.0) / cross;
        (a.0 + t * along.0, a.1 + t * along.1)
    }

    /// The angle at a corner between two directions, in degrees off square.
    fn off_square(along: Point, cut: Point) -> f64 {
        let dot = along.0 * cut.0 + along.1 * cut.1;
        let lengths = apart((0.0, 0.0), along) * apart((0.0, 0.0), cut);
        (90.0 - (dot / lengths).acos().to_degrees()).abs()
    }

    /// A point on the outer edge of a leg at a height above the rail's underside. The inner
    /// edge is moved out square to the leg by the batten's width.
    fn outer(shape: &FrameShape, side: Side, up: f64, width: f64) -> (Point, Point) {
        let (out, batter) = match side {
            Side::Left => (-1.0, shape.left),
            Side::Right => (1.0, shape.right),
        };
        let along = (-out * batter.lean(), 1.0);
        let long = apart((0.0, 0.0), along);
        let moved = (out * width / long, width * batter.lean() / long);
        let start = (out * shape.top_width.si() / 2.0 + moved.0, moved.1);
        (meet(start, along, (0.0, up), (1.0, 0.0)), along)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        /// A second road: the corners of leg, rail and brace by meeting lines, then measured.
        #[test]
        fn corners_measured_agree(
            top in 0.3_f64..0.6,
            ns in prop::array::uniform2(4.0_f64..14.0),
            rises in prop::array::uniform2(0.7_f64..1.6),
            width in 0.03_f64..0.08,
        ) {
            let timber = Timber { width: metres(width), ..Timber::default() };
            let shape = shape(top, one_in(ns[0]), one_in(ns[1]), rises);
            let up = (1.0, 0.0);

            // Left leg: its inner edge from the ground to the rail's underside.
            let foot = (-top / 2.0 - rises[0] / ns[0], -rises[0]);
            let leg = piece(&shape, &timber, Part::LeftLeg);
            let plain = leg.length - timber.projection - timber.below_ground;
            prop_assert!((plain.si() - apart(foot, (-top / 2.0, 0.0))).abs() < 1e-9);
            let along = (1.0 / ns[0], 1.0);
            prop_assert!((leg.ends_degrees[0] - off_square(along, up)).abs() < 1e-7);

            // Lower rail: between the outer edges at its underside.
            let down = timber.lower_rail.si() - rises[0].min(rises[1]);
            let wide = apart(
                outer(&shape, Side::Left, down, width).0,
                outer(&shape, Side::Right, down, width).0,
            );
            let rail = piece(&shape, &timber, Part::LowerRail);
            prop_assert!((rail.length - timber.overhang * 2.0 - metres(wide)).si().abs() < 1e-9);

            // Brace: two edges, each half a width from the middle line, cut off by the legs.
            let (low, left) = outer(&shape, Side::Left, down + width / 2.0, width);
            let (high, right) = outer(&shape, Side::Right, width / 2.0, width);
            let along = (high.0 - low.0, high.1 - low.1);
            let long = apart(low, high);
            let square = (-along.1 / long, along.0 / long);
            let corners = [-1.0, 1.0].map(|edge| {
                let by = edge * width / 2.0;
                let start = (low.0 + by * square.0, low.1 + by * square.1);
                (meet(start, along, low, left), meet(start, along, high, right))
            });
            let brace = piece(&shape, &timber, Part::Brace);
            let longest = corners.map(|(a, b)| apart(a, b)).into_iter().fold(0.0, f64::max);
            prop_assert!((brace.length.si() - longest).abs() < 1e-9);
            let reach = corners
                .iter()
                .flat_map(|(a, b)| [a, b])
                .map(|p| (p.0 * along.0 + p.1 * along.1) / long);
            let (first, last) = reach.fold((f64::MAX, f64::MIN), |(lo, hi), at| {
                (lo.min(at), hi.max(at))
            });
            prop_assert!((brace.overall.si() - (last - first)).abs() < 1e-9);
            prop_assert!((brace.ends_degrees[0] - off_square(along, left)).abs() < 1e-7);
            prop_assert!((brace.ends_degrees[1].abs() - off_square(along, right)).abs() < 1e-7);
        }
    }
}
