//! How big a stone of a given mass is, so that it can be shown with two hands.

use crate::quantity::{Density, Length, Mass, Read, metres};

/// A stone of one mass in two shapes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StoneSize {
    /// The edge of it as a cube.
    pub cube: Length,
    /// As a flat stone: along the face, into the wall, high.
    pub flat: [Length; 3],
}

impl StoneSize {
    /// The size of a solid block of this mass: `cube = (mass / density)^(1/3)`; a flat stone
    /// whose sides are as `a : b : c` has the sides `a k, b k, c k` with
    /// `k = (mass / density / (a b c))^(1/3)`.
    ///
    /// A real stone is no block and fills less of the space it takes up, so a stone as big
    /// as this is rather lighter. Nothing where mass, density or ratio is nothing or less.
    ///
    /// Source: plane geometry.
    pub fn of(mass: Mass, density: Density, ratio: [f64; 3]) -> Self {
        let volume = mass.si() / density.si();
        let edge = |volume: f64| {
            let fits = 0.0 < volume && volume.is_finite();
            if fits { volume.cbrt() } else { 0.0 }
        };
        let fits = ratio.iter().all(|side| 0.0 < *side);
        let unit = if fits {
            edge(volume / ratio.iter().product::<f64>())
        } else {
            0.0
        };
        Self {
            cube: metres(edge(volume)),
            flat: ratio.map(|side| metres(if fits { side * unit } else { 0.0 })),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{kg_per_m3, kilograms};

    /// By hand: 20.8 kg at 2600 kg/m3 is 0.008 m3, a cube of 0.2 m; 15.6 kg is 0.006 m3,
    /// which as 3 : 2 : 1 is 0.3 by 0.2 by 0.1 m.
    #[test]
    fn a_stone_is_as_big_as_its_mass_says() {
        let limestone = kg_per_m3(2600.0);
        let size = |mass| StoneSize::of(kilograms(mass), limestone, [3.0, 2.0, 1.0]);
        assert!((size(20.8).cube.si() - 0.2).abs() < 1e-9);
        for (ours, due) in size(15.6).flat.map(Read::si).iter().zip([0.3, 0.2, 0.1]) {
            assert!((ours - due).abs() < 1e-9, "{ours}");
        }
    }

    #[test]
    fn no_stone_has_no_size() {
        let nothing = StoneSize {
            cube: metres(0.0),
            flat: [metres(0.0); 3],
        };
        for (mass, density, ratio) in [
            (0.0, 2600.0, [3.0, 2.0, 1.0]),
            (-1.0, 2600.0, [3.0, 2.0, 1.0]),
            (1.0, 0.0, [3.0, 2.0, 1.0]),
            (f64::NAN, 2600.0, [3.0, 2.0, 1.0]),
        ] {
            assert_eq!(
                StoneSize::of(kilograms(mass), kg_per_m3(density), ratio),
                nothing
            );
        }
    }
}
