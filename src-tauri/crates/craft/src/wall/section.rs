//! The cross-section of a wall: two faces that lean in from the ground to the cope.

use crate::Error;
use crate::quantity::{Area, Length, Read, Volume, metres};

/// How far a face leans in for each unit it rises. A plumb face leans 0.
///
/// Invariant: zero or more, and finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Batter {
    lean: f64,
}

impl Batter {
    /// A face that rises straight up.
    pub const PLUMB: Self = Self { lean: 0.0 };
    /// One along for one up.
    pub const ONE_IN_ONE: Self = Self { lean: 1.0 };

    /// The batter written `1 in n`: 1 in for n up.
    ///
    /// # Errors
    /// [`Error::NotABatter`] unless `n` is more than zero and finite.
    pub fn one_in(n: f64) -> Result<Self, Error> {
        if 0.0 < n && n.is_finite() {
            Ok(Self { lean: 1.0 / n })
        } else {
            Err(Error::NotABatter { n })
        }
    }

    /// Horizontal for each unit of rise, no unit: 1/n.
    pub fn lean(self) -> f64 {
        self.lean
    }

    /// The n of 1 in n; `None` for a plumb face.
    pub fn n(self) -> Option<f64> {
        (0.0 < self.lean).then(|| 1.0 / self.lean)
    }

    /// Length along the face for each unit of rise: `sqrt(1 + 1/n²)`. Plane geometry.
    pub fn slope_factor(self) -> f64 {
        self.lean.hypot(1.0)
    }
}

/// A side of the wall, as seen looking along it from station 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The left face.
    Left,
    /// The right face.
    Right,
}

impl Side {
    /// Left and right.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// The side across the wall.
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    /// The trade's word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

/// A wall cut across, from the ground to the underside of the cope.
///
/// Invariant: height and top width are more than zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    height: Length,
    top_width: Length,
    left: Batter,
    right: Batter,
}

impl Section {
    /// The section with these measurements.
    ///
    /// # Errors
    /// [`Error::NotPositive`] if the height or the top width is zero or less, or no number.
    pub fn new(
        height: Length,
        top_width: Length,
        left: Batter,
        right: Batter,
    ) -> Result<Self, Error> {
        for (key, given) in [("wall.height", height), ("wall.top_width", top_width)] {
            if given.si() <= 0.0 || !given.si().is_finite() {
                return Err(Error::NotPositive { key, given });
            }
        }
        Ok(Self {
            height,
            top_width,
            left,
            right,
        })
    }

    /// Ground to the underside of the cope.
    pub fn height(&self) -> Length {
        self.height
    }

    /// Width under the cope.
    pub fn top_width(&self) -> Length {
        self.top_width
    }

    /// The batter of one face.
    pub fn batter(&self, side: Side) -> Batter {
        match side {
            Side::Left => self.left,
            Side::Right => self.right,
        }
    }

    /// `k = 1/n_left + 1/n_right`: how much narrower the wall gets for each unit of rise.
    pub fn narrowing(&self) -> f64 {
        self.left.lean + self.right.lean
    }

    /// `w(y) = T + (H - y) k`, with y the height above the ground.
    pub fn width_at(&self, above_ground: Length) -> Length {
        self.top_width + (self.height - above_ground) * self.narrowing()
    }

    /// `w(0)`: the width at the ground.
    pub fn base_width(&self) -> Length {
        self.width_at(metres(0.0))
    }

    /// `A = (w(0) + T) / 2 · H`: the body without footing and cope.
    pub fn area(&self) -> Area {
        (self.base_width() + self.top_width) * self.height / 2.0
    }

    /// The area from the top down to a depth d: `A(d) = T d + k d² / 2`.
    pub fn area_to_depth(&self, below_top: Length) -> Area {
        (self.top_width + below_top * (self.narrowing() / 2.0)) * below_top
    }

    /// The first moment of that area about the centre line, positive to the right:
    /// `M(d) = (T d² (b - a) / 2 + d³ (b² - a²) / 3) / 2` with a and b the leans of the left
    /// and the right face. Plane geometry; `M / A` is how far the centroid lies off.
    pub fn moment_to_depth(&self, below_top: Length) -> Volume {
        let (a, b) = (self.left.lean, self.right.lean);
        let square = below_top * below_top;
        (square * self.top_width * ((b - a) / 2.0) + square * below_top * ((b * b - a * a) / 3.0))
            / 2.0
    }

    /// Centre line (the middle of the top) to a face, at a depth below the top:
    /// `T/2 + depth / n`.
    pub fn offset(&self, side: Side, below_top: Length) -> Length {
        self.top_width / 2.0 + below_top * self.batter(side).lean
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::INCH_M;

    fn inches(n: f64) -> Length {
        metres(n * INCH_M)
    }

    /// By hand: 42 in to the cope, 16 in top, 1 in 6 each side: 16 + 2 · 42/6 = 30 in.
    #[test]
    fn a_thirty_inch_base() {
        let six = Batter::one_in(6.0).expect("six is more than zero");
        let section = Section::new(inches(42.0), inches(16.0), six, six).expect("sound");
        assert!((section.base_width() - inches(30.0)).si().abs() < 1e-12);
        assert!((section.width_at(inches(42.0)) - inches(16.0)).si().abs() < 1e-12);
        let half = section.offset(Side::Left, section.height());
        assert!((half - inches(15.0)).si().abs() < 1e-12);
    }

    /// Two roads to one answer: the closed forms against level slices summed.
    #[test]
    fn area_and_moment_are_the_sums_of_their_slices() {
        let batter = |n| Batter::one_in(n).expect("sound");
        let section = Section::new(metres(1.2), metres(0.4), batter(5.0), batter(9.0));
        let section = section.expect("sound");
        let (slices, depth) = (20_000, 0.9);
        let step = depth / f64::from(slices);
        let (mut area, mut moment) = (0.0, 0.0);
        for slice in 0..slices {
            let at = metres((f64::from(slice) + 0.5) * step);
            let [left, right] = [Side::Left, Side::Right].map(|side| section.offset(side, at).si());
            area += (left + right) * step;
            moment += (right + left) * (right - left) / 2.0 * step;
        }
        assert!((section.area_to_depth(metres(depth)).si() - area).abs() < 1e-9);
        assert!((section.moment_to_depth(metres(depth)).si() - moment).abs() < 1e-9);
        let whole = section.area_to_depth(section.height());
        assert!((whole - section.area()).si().abs() < 1e-12);
    }

    #[test]
    fn nonsense_is_refused() {
        for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(Batter::one_in(bad).is_err());
            let plumb = Batter::PLUMB;
            assert!(Section::new(metres(bad), metres(0.4), plumb, plumb).is_err());
            assert!(Section::new(metres(1.0), metres(bad), plumb, plumb).is_err());
        }
    }
}
