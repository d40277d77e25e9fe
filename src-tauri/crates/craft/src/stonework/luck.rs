//! Chance from a seed: plain draws, and a noise that belongs to a place.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Draws in order. Numbers are made here and not by a library, whose way of turning random
/// words into numbers may change with its version; a drawing may not.
pub(super) struct Luck {
    random: ChaCha8Rng,
}

impl Luck {
    /// The draws of one part of the drawing; parts do not disturb each other.
    pub(super) fn new(seed: u64, part: u64) -> Self {
        let mut random = ChaCha8Rng::seed_from_u64(seed);
        random.set_stream(2_000_000 + part);
        Self { random }
    }

    /// From 0 up to, but not including, 1.
    pub(super) fn unit(&mut self) -> f64 {
        (self.random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Evenly between two numbers.
    pub(super) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// From -1 to 1, mostly near 0.
    pub(super) fn bell(&mut self) -> f64 {
        (self.unit() + self.unit() + self.unit()) / 1.5 - 1.0
    }

    /// True in this share of cases.
    pub(super) fn chance(&mut self, share: f64) -> bool {
        self.unit() < share
    }
}

/// A smooth wander from -1 to 1 along the wall: the same at the same place, whoever asks.
pub(super) fn wander(seed: u64, line: u64, x: f64, wave: f64) -> f64 {
    let at = x / wave;
    let cell = at.floor();
    let part = at - cell;
    let ease = part * part * (3.0 - 2.0 * part);
    // The cast saturates; no wall is long enough for that.
    let cell = cell as i64;
    let a = scatter(seed, line, cell);
    let b = scatter(seed, line, cell.wrapping_add(1));
    a + (b - a) * ease
}

/// A number from -1 to 1 out of three whole ones (the finaliser of the SplitMix64
/// generator, public domain).
fn scatter(seed: u64, line: u64, cell: i64) -> f64 {
    let mut z = seed
        .wrapping_add(line.wrapping_mul(0x9E37_79B9_7F4A_7C15))
        .wrapping_add((cell as u64).wrapping_mul(0xD1B5_4A32_D192_ED03));
    for _ in 0..2 {
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^= z >> 31;
    }
    (z >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
}
