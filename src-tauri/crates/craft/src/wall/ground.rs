//! The ground a wall stands on, as it was surveyed along the line.

use super::Side;
use crate::quantity::{Length, Read, metres};

/// The levels of the ground at one station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Survey {
    /// Along the centre line.
    pub station: Length,
    /// On the centre line.
    pub level: Length,
    /// At the left face.
    pub left: Length,
    /// At the right face.
    pub right: Length,
}

impl Survey {
    fn at(&self, across: Across) -> Length {
        match across {
            Across::Centre => self.level,
            Across::Face(Side::Left) => self.left,
            Across::Face(Side::Right) => self.right,
        }
    }
}

/// Where across the wall a level is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Across {
    /// On the centre line.
    Centre,
    /// At one face.
    Face(Side),
}

/// Ground that is straight between surveyed stations; beyond the first and the last the
/// nearest level holds. Without any it is level, at 0.
///
/// Invariant: stations in order, each once.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Ground {
    surveyed: Vec<Survey>,
}

impl Ground {
    /// Ground with these levels; of several at one station the first counts.
    pub fn new(mut surveyed: Vec<Survey>) -> Self {
        surveyed.sort_by(|a, b| a.station.si().total_cmp(&b.station.si()));
        surveyed.dedup_by(|a, b| a.station == b.station);
        Self { surveyed }
    }

    /// What was surveyed, in order of station.
    pub fn surveyed(&self) -> &[Survey] {
        &self.surveyed
    }

    /// The level at a station.
    pub fn level(&self, across: Across, station: Length) -> Length {
        let next = self
            .surveyed
            .partition_point(|survey| survey.station < station);
        match (
            self.surveyed.get(next.wrapping_sub(1)),
            self.surveyed.get(next),
        ) {
            (Some(before), Some(after)) => {
                let share = (station - before.station) / (after.station - before.station);
                before.at(across) + (after.at(across) - before.at(across)) * share
            }
            (Some(only), None) | (None, Some(only)) => only.at(across),
            (None, None) => metres(0.0),
        }
    }

    /// Whether it is the same level everywhere, so that nothing has to be said of it.
    pub fn is_level(&self) -> bool {
        let first = self.level(Across::Centre, metres(0.0));
        self.surveyed
            .iter()
            .all(|survey| survey.level == first && survey.left == first && survey.right == first)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn survey(station: f64, level: f64, right: f64) -> Survey {
        Survey {
            station: metres(station),
            level: metres(level),
            left: metres(level),
            right: metres(right),
        }
    }

    /// By hand: from 0.1 at 2 m to 0.5 at 6 m is 0.2 at 3 m.
    #[test]
    fn straight_between_stations_and_level_beyond() {
        let ground = Ground::new(vec![survey(6.0, 0.5, 0.3), survey(2.0, 0.1, 0.1)]);
        let centre = |at: f64| ground.level(Across::Centre, metres(at)).si();
        for (at, level) in [(0.0, 0.1), (2.0, 0.1), (3.0, 0.2), (6.0, 0.5), (9.0, 0.5)] {
            assert!((centre(at) - level).abs() < 1e-12, "at {at}");
        }
        let right = ground.level(Across::Face(Side::Right), metres(4.0)).si();
        assert!((right - 0.2).abs() < 1e-12);
        assert!(!ground.is_level() && Ground::default().is_level());
    }
}
