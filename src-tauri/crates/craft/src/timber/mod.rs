//! Nailed timber frames: the pieces of each, the cut list of all, and the lumber to buy.
//!
//! Read [`frame`] for the geometry, [`list`] for the cut list and [`cutting`] for the buying.
//! How the cutting is found, in the order it is tried:
//!
//! - `fill`: the longest piece left and whatever fills its batten best;
//! - `relax`, over `simplex` and `knapsack`: what the battens must cost at least, by column
//!   generation;
//! - `dive`: from that relaxation to whole battens;
//! - `search`: every packing that could be better, for small cases.
//!
//! `solve` stops at the first that is proved least. All effort is counted in steps and not in
//! seconds, so the same frames give the same answer on every machine.

pub mod cutting;
mod dive;
mod fill;
pub mod frame;
mod knapsack;
pub mod list;
mod problem;
mod relax;
mod saw;
mod search;
mod simplex;
mod solve;

pub use cutting::{Buy, Cutting, Lumber, Pattern, Share, Wanted, cut};
pub use frame::{FrameShape, Part, Piece};
pub use list::{CutRow, Kind, Use};

use crate::Error;
use crate::quantity::{Length, Read};
#[cfg(test)]
use crate::quantity::{metres, millimetres};

/// How timber frames are made and what they are made of.
#[derive(Debug, Clone, PartialEq)]
pub struct Timber {
    /// Width of the batten: its broad face lies in the plane of the frame.
    pub width: Length,
    /// Thickness of the batten. For the order only: no length depends on it.
    pub thickness: Length,
    /// From the underside of the top rail to the top end of a leg, along the leg. The rail is
    /// nailed here, so less than the batten's width leaves too little to nail to.
    pub projection: Length,
    /// From the ground down to the foot of a leg, along the leg.
    pub below_ground: Length,
    /// From the outer edge of a leg to the end of a rail.
    pub overhang: Length,
    /// The underside of the lower rail above the ground, at the leg where the ground is higher.
    pub lower_rail: Length,
    /// What it is cut from.
    pub lumber: Lumber,
}

#[cfg(test)]
impl Default for Timber {
    /// Roofing batten of 50 by 25 mm in lengths by the 0.6 m, a 3 mm saw (common practice, no
    /// source: all of it).
    fn default() -> Self {
        Self {
            width: millimetres(50.0),
            thickness: millimetres(25.0),
            projection: millimetres(100.0),
            below_ground: metres(0.0),
            overhang: millimetres(50.0),
            lower_rail: millimetres(200.0),
            lumber: Lumber {
                stock_lengths: [1.8, 2.4, 3.0, 3.6, 4.2, 4.8].map(metres).to_vec(),
                kerf: millimetres(3.0),
                end_waste: millimetres(10.0),
            },
        }
    }
}

/// Everything about the timber frames of one wall.
#[derive(Debug, Clone, PartialEq)]
pub struct TimberPlan {
    /// What they are made of.
    pub timber: Timber,
    /// The pieces of each frame, in the order given.
    pub frames: Vec<Vec<Piece>>,
    /// Like pieces of all frames together.
    pub list: Vec<CutRow>,
    /// What to buy and how to cut it; its rows are those of the list.
    pub cutting: Cutting,
}

impl Timber {
    /// The pieces, the cut list and the cutting for these frames, counted from 1.
    ///
    /// # Errors
    /// [`Error::NotPositive`] if a length that must be more than zero is not, one that may be
    /// zero is less, or one is no number.
    pub fn plan(&self, shapes: &[FrameShape]) -> Result<TimberPlan, Error> {
        self.check()?;
        let frames = shapes
            .iter()
            .map(|shape| frame::pieces(shape, self))
            .collect::<Result<Vec<_>, Error>>()?;
        let list = list::cut_list(&frames, self.lumber.kerf);
        let wanted: Vec<Wanted> = list
            .iter()
            .map(|row| Wanted {
                length: row.takes,
                count: row.count,
            })
            .collect();
        let cutting = cut(&wanted, &self.lumber);
        Ok(TimberPlan {
            timber: self.clone(),
            frames,
            list,
            cutting,
        })
    }

    fn check(&self) -> Result<(), Error> {
        let some = [self.width, self.thickness];
        let stock = self.lumber.stock_lengths.iter().copied();
        let none_or_some = [
            self.projection,
            self.below_ground,
            self.overhang,
            self.lower_rail,
            self.lumber.kerf,
            self.lumber.end_waste,
        ];
        let wrong = |given: &Length| !given.si().is_finite() || given.si() <= 0.0;
        let below = |given: &Length| !given.si().is_finite() || given.si() < 0.0;
        let bad = some.into_iter().chain(stock).find(wrong);
        match bad.or(none_or_some.into_iter().find(below)) {
            Some(given) => Err(Error::NotPositive {
                key: "frames.lumber_lengths",
                given,
            }),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::Batter;

    fn shape(rise: f64, lean: f64) -> FrameShape {
        let batter = Batter::one_in(lean).expect("more than zero");
        FrameShape {
            top_width: metres(0.41),
            left: batter,
            right: batter,
            left_rise: metres(rise),
            right_rise: metres(rise),
        }
    }

    /// By hand: six frames alike are 12 legs and 6 each of top rail, lower rail and brace. The
    /// line that each share points at must have been cut to its count.
    #[test]
    fn six_frames_alike() {
        let timber = Timber::default();
        let plan = timber.plan(&[shape(1.07, 6.0); 6]).expect("sound");
        let counts: Vec<usize> = plan.list.iter().map(|row| row.count).collect();
        assert_eq!(counts, [12, 6, 6, 6]);
        assert!(
            plan.list
                .iter()
                .all(|row| row.frames() == [1, 2, 3, 4, 5, 6])
        );
        let mut cut = [0; 4];
        for pattern in &plan.cutting.patterns {
            for share in &pattern.pieces {
                cut[share.row] += share.count * pattern.times;
            }
        }
        assert_eq!(cut, [12, 6, 6, 6]);
        assert!(plan.cutting.proved_least());
        assert!(plan.cutting.too_long.is_empty());
        assert!(plan.cutting.waste_share() < 0.05);
    }

    #[test]
    fn a_leg_longer_than_any_stock_is_named_and_the_rest_is_cut() {
        let mut timber = Timber::default();
        timber.lumber.stock_lengths = vec![metres(1.8)];
        let plan = timber.plan(&[shape(1.9, 6.0)]).expect("sound");
        let long: Vec<Kind> = plan
            .cutting
            .too_long
            .iter()
            .map(|&row| plan.list[row].kind)
            .collect();
        assert_eq!(long, [Kind::Leg, Kind::Brace]);
        assert!(metres(1.0) < plan.cutting.bought);
    }

    #[test]
    fn frames_all_different_are_cut_alike_every_time() {
        let shapes: Vec<FrameShape> = (0..40)
            .map(|at| shape(0.9 + 0.007 * f64::from(at), 6.0 + 0.05 * f64::from(at)))
            .collect();
        let plan = Timber::default().plan(&shapes).expect("sound");
        let pieces: usize = plan.list.iter().map(|row| row.count).sum();
        assert_eq!(pieces, 200);
        assert_eq!(Timber::default().plan(&shapes).expect("sound"), plan);
    }

    #[test]
    fn no_frames_need_no_lumber_and_nonsense_is_refused() {
        let none = Timber::default().plan(&[]).expect("nothing is sound");
        assert!(none.list.is_empty() && none.cutting.buy.is_empty());
        for bad in [-0.1, f64::NAN, f64::INFINITY] {
            let mut timbers = [(); 3].map(|()| Timber::default());
            timbers[0].width = metres(bad);
            timbers[1].overhang = metres(bad);
            timbers[2].lumber.stock_lengths.push(metres(bad));
            for timber in timbers {
                let refused = timber.plan(&[shape(1.0, 6.0)]);
                assert!(matches!(refused, Err(Error::NotPositive { .. })));
            }
        }
    }
}
