//! A student's luck: which numbers of a list a question takes.

use super::Kind;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Simulated courses take the streams from 0 up, far fewer than these.
const FIRST_STREAM: u64 = 1_000_000;

/// Words of the stream kept for one question, far more than any takes.
const WORDS_PER_KIND: u128 = 1024;

/// The draws of one question of one student.
///
/// Choosing and shuffling are done here and not by a library, whose way of turning random
/// words into places may change with its version; a sheet may not.
pub(super) struct Draw {
    random: ChaCha8Rng,
    /// 0 or 1, and the other for both neighbours.
    side: usize,
}

impl Draw {
    /// Every kind has its own stretch of the student's stream, so that leaving one out or
    /// adding one changes no other.
    pub(super) fn new(seed: u64, student: usize, kind: Kind) -> Self {
        let mut random = ChaCha8Rng::seed_from_u64(seed);
        random.set_stream(FIRST_STREAM.wrapping_add(student as u64));
        random.set_word_pos(kind as u128 * WORDS_PER_KIND);
        Self {
            random,
            // With the kind, so that no student has the even places all down the sheet.
            side: student.wrapping_add(kind as usize) % 2,
        }
    }

    /// One of the list.
    pub(super) fn pick<T: Copy>(&mut self, list: &[T]) -> Option<T> {
        let at = self.below(list.len());
        list.get(at).copied()
    }

    /// One of every second in the list. A neighbour has the others, so that no neighbour
    /// draws the same.
    pub(super) fn pick_unlike_neighbours<T: Copy>(&mut self, list: &[T]) -> Option<T> {
        let half = self.half(list);
        self.pick(&half)
    }

    /// Every second of the list. A neighbour has the others.
    pub(super) fn half<T: Copy>(&self, list: &[T]) -> Vec<T> {
        list.iter().copied().skip(self.side).step_by(2).collect()
    }

    /// Whether a number is one of this student's: the even ones, or the odd ones. A neighbour
    /// has the others.
    pub(super) fn is_mine(&self, number: usize) -> bool {
        number % 2 == self.side
    }

    /// A seed for what is laid by chance. A neighbour has another.
    pub(super) fn seed(&mut self) -> u64 {
        (self.random.next_u64() >> 16 << 1) | self.side as u64
    }

    /// Places in a list of `size`, `count` of every second one, in no order; a neighbour has
    /// the others.
    pub(super) fn some_unlike_neighbours(&mut self, size: usize, count: usize) -> Vec<usize> {
        let half = size.saturating_sub(self.side).div_ceil(2);
        let places = self.some_of(half, count).into_iter();
        places.map(|at| 2 * at + self.side).collect()
    }

    /// `count` of the numbers below `size`, in no order; all of them if there are not so
    /// many.
    pub(super) fn some_of(&mut self, size: usize, count: usize) -> Vec<usize> {
        let mut all: Vec<usize> = (0..size).collect();
        for last in (1..size).rev() {
            let at = self.below(last + 1);
            all.swap(at, last);
        }
        all.truncate(count);
        all
    }

    /// A whole number below `size`; 0 below nothing. The unevenness is under one in 2⁵⁰.
    fn below(&mut self, size: usize) -> usize {
        let wide = u128::from(self.random.next_u64()) * size as u128;
        (wide >> 64) as usize
    }
}
