//! How often: lifts by the minute, lifting in bursts, and the frequency table of NIOSH.

use super::{System, WorkTime};
use crate::quantity::Length;
use std::time::Duration;

/// Lifts to the minute, averaged over 15 minutes.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct PerMinute(pub f64);

/// Rarer lifting counts as this often: once in five minutes.
const LEAST: f64 = 0.2;

/// No lifting is faster than this, not even in bursts.
const FASTEST: f64 = 15.0;

/// Minutes over which lifts are counted.
const COUNTED_MINUTES: f64 = 15.0;

/// Whether the hands take hold below the best height (75 cm or 30 in), or at it or above:
/// the two columns of the frequency and the grip tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// Below it.
    Below,
    /// At it or above.
    AtOrAbove,
}

impl Band {
    /// The band of a height above the floor. What is no number counts as below.
    pub fn of(height: Length, system: System) -> Self {
        let it = system.constants();
        if it.height_best <= it.number(height) {
            Self::AtOrAbove
        } else {
            Self::Below
        }
    }
}

/// FM by lifts to the minute. Columns: up to 1 h, up to 2 h, up to 8 h; in each, hands below
/// the best height and at it or above.
///
/// Source: NIOSH 94-110, Table 5, p. 15. The reprint on p. 31 has 2 in the first row where
/// 0.2 is meant.
const TABLE: [(f64, [[f64; 2]; 3]); 17] = [
    (0.2, [[1.00, 1.00], [0.95, 0.95], [0.85, 0.85]]),
    (0.5, [[0.97, 0.97], [0.92, 0.92], [0.81, 0.81]]),
    (1.0, [[0.94, 0.94], [0.88, 0.88], [0.75, 0.75]]),
    (2.0, [[0.91, 0.91], [0.84, 0.84], [0.65, 0.65]]),
    (3.0, [[0.88, 0.88], [0.79, 0.79], [0.55, 0.55]]),
    (4.0, [[0.84, 0.84], [0.72, 0.72], [0.45, 0.45]]),
    (5.0, [[0.80, 0.80], [0.60, 0.60], [0.35, 0.35]]),
    (6.0, [[0.75, 0.75], [0.50, 0.50], [0.27, 0.27]]),
    (7.0, [[0.70, 0.70], [0.42, 0.42], [0.22, 0.22]]),
    (8.0, [[0.60, 0.60], [0.35, 0.35], [0.18, 0.18]]),
    (9.0, [[0.52, 0.52], [0.30, 0.30], [0.00, 0.15]]),
    (10.0, [[0.45, 0.45], [0.26, 0.26], [0.00, 0.13]]),
    (11.0, [[0.41, 0.41], [0.00, 0.23], [0.00, 0.00]]),
    (12.0, [[0.37, 0.37], [0.00, 0.21], [0.00, 0.00]]),
    (13.0, [[0.00, 0.34], [0.00, 0.00], [0.00, 0.00]]),
    (14.0, [[0.00, 0.31], [0.00, 0.00], [0.00, 0.00]]),
    (15.0, [[0.00, 0.28], [0.00, 0.00], [0.00, 0.00]]),
];

fn cell(row: &[[f64; 2]; 3], work: WorkTime, origin: Band) -> f64 {
    let [short, moderate, long] = row;
    let [below, above] = match work {
        WorkTime::Short => short,
        WorkTime::Moderate => moderate,
        WorkTime::Long => long,
    };
    match origin {
        Band::Below => *below,
        Band::AtOrAbove => *above,
    }
}

impl PerMinute {
    /// The rate that counts when people lift in bursts shorter than 15 minutes and do light
    /// work for the rest of them: `lifts to the minute · minutes of lifting / 15`. A
    /// burst of 15 minutes or more counts in full, and so does one above 15 lifts to
    /// the minute, for which there is no lifting.
    ///
    /// How long the lifting counts as ([`WorkTime`]) still goes by the rests between
    /// sessions, not by those between bursts.
    ///
    /// Source: NIOSH 94-110, p. 16.
    pub fn in_bursts(self, burst: Duration) -> Self {
        let minutes = burst.as_secs_f64() / 60.0;
        if FASTEST < self.0 || COUNTED_MINUTES <= minutes {
            return self;
        }
        Self(self.0 * minutes / COUNTED_MINUTES)
    }

    /// FM, the frequency multiplier, no unit: Table 5, straight between its rows.
    ///
    /// Below 0.2 to the minute 0.2 counts. Beyond the last row of a column that is more than
    /// nothing FM is 0, without a slope down to it: "Lifting above the maximum frequency
    /// results in a RWL of 0.0" (p. 15). The manual says nothing of the gap between
    /// that row and the next, and no lifting is the more careful reading.
    /// The band is that of the hands at the origin, also for the destination.
    ///
    /// Source: NIOSH 94-110, sections 1.3 and 1.3.5, pp. 7 and 13 to 15.
    pub fn multiplier(self, work: WorkTime, origin: Band) -> f64 {
        // A rate that is no number fails every comparison and ends at nothing.
        let rate = if self.0 < LEAST { LEAST } else { self.0 };
        for pair in TABLE.windows(2) {
            let [(slow, low), (fast, high)] = pair else {
                continue;
            };
            if !(*slow..=*fast).contains(&rate) {
                continue;
            }
            let [low, high] = [low, high].map(|row| cell(row, work, origin));
            let share = (rate - slow) / (fast - slow);
            if share <= 0.0 {
                return low;
            }
            return if 0.0 < high {
                low + (high - low) * share
            } else {
                0.0
            };
        }
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{INCH_M, metres};

    fn near(ours: f64, theirs: f64) {
        assert!((ours - theirs).abs() < 1e-9, "{ours}, due {theirs}");
    }

    /// NIOSH 94-110, p. 16: 10 to the minute for 8 of 15 minutes is 5.33; the rest by hand.
    #[test]
    fn bursts_are_spread_over_a_quarter_of_an_hour() {
        for (rate, minutes, due) in [
            (10.0, 8, 80.0 / 15.0),
            (10.0, 5, 50.0 / 15.0),
            (10.0, 15, 10.0),
            (10.0, 40, 10.0),
            (16.0, 1, 16.0),
            (15.0, 3, 3.0),
        ] {
            let burst = Duration::from_secs(minutes * 60);
            near(PerMinute(rate).in_bursts(burst).0, due);
        }
    }

    /// 2.4 to the minute is interpolated between 2 and 3 in Example 7 of NIOSH 94-110 (pp. 56
    /// and 57). The others by hand from Table 5.
    #[test]
    fn the_table_is_read_between_its_rows_and_never_past_its_last() {
        use Band::{AtOrAbove, Below};
        use WorkTime::{Long, Moderate, Short};
        for (rate, work, origin, due) in [
            (2.4, Short, Below, 0.91 - 0.4 * 0.03),
            (0.0, Short, Below, 1.00),
            (-3.0, Long, Below, 0.85),
            (0.1, Moderate, AtOrAbove, 0.95),
            (0.35, Long, Below, 0.83),
            (8.0, Long, Below, 0.18),
            (8.01, Long, Below, 0.0),
            (9.5, Long, AtOrAbove, 0.14),
            (12.0, Short, Below, 0.37),
            (12.5, Short, Below, 0.0),
            (13.0, Short, Below, 0.0),
            (15.0, Short, AtOrAbove, 0.28),
            (15.01, Short, AtOrAbove, 0.0),
            (f64::INFINITY, Short, AtOrAbove, 0.0),
            (f64::NAN, Short, AtOrAbove, 0.0),
        ] {
            near(PerMinute(rate).multiplier(work, origin), due);
        }
    }

    #[test]
    fn the_bands_part_at_75_cm_and_at_30_in() {
        let parted = metres(0.755);
        assert_eq!(Band::of(parted, System::Metric), Band::AtOrAbove);
        assert_eq!(Band::of(parted, System::Us), Band::Below);
        assert_eq!(Band::of(metres(0.75), System::Metric), Band::AtOrAbove);
        assert_eq!(Band::of(metres(30.0 * INCH_M), System::Us), Band::AtOrAbove);
        assert_eq!(Band::of(metres(0.749), System::Metric), Band::Below);
        assert_eq!(Band::of(metres(f64::NAN), System::Metric), Band::Below);
    }
}
