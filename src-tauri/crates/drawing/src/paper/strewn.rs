//! What hatching and textures are strewn with: corners, steps and chance that comes out the
//! same every time.

/// A corner in metres: to the right and up.
pub(crate) type Corner = (f64, f64);

/// 0, 1, 2 ... below `count`, as numbers to reckon with.
pub(crate) fn steps(count: f64) -> impl Iterator<Item = f64> {
    (0_u32..)
        .map(f64::from)
        .take_while(move |step| *step < count)
}

/// A number from 0 to 1 that looks like chance and depends on the key alone (the mixing
/// steps of SplitMix64, Steele, Lea and Flood, "Fast Splittable Pseudorandom Number
/// Generators", 2014, from memory).
pub(crate) fn chance(key: u64) -> f64 {
    let mut z = key.wrapping_add(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^= z >> 31;
    // 53 bits are what a float holds exactly.
    (z >> 11) as f64 / (1_u64 << 53) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chance_is_the_same_every_time_and_spread_evenly() {
        assert!((chance(7) - chance(7)).abs() < f64::EPSILON);
        let mean = (0..1000).map(chance).sum::<f64>() / 1000.0;
        assert!((mean - 0.5).abs() < 0.05, "{mean}");
    }
}
