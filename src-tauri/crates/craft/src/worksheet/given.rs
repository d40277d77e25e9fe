//! What a course asks of its worksheets: how hard, and which questions.

use super::Kind;

/// A sheet of which no number is given fills no more pages than this.
const PAGES: usize = 4;
const SIXTHS: usize = 6;

/// How hard the questions are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Level {
    /// Whole numbers, one step.
    Easy,
    /// As on a usual course.
    #[default]
    Usual,
    /// Odd numbers, more steps.
    Hard,
}

impl Level {
    /// From the easiest.
    pub const ALL: [Self; 3] = [Self::Easy, Self::Usual, Self::Hard];

    /// The number a course file gives: 1, 2 or 3.
    pub fn number(self) -> u32 {
        match self {
            Self::Easy => 1,
            Self::Usual => 2,
            Self::Hard => 3,
        }
    }

    /// One of three by the level.
    pub(super) fn pick<T>(self, easy: T, usual: T, hard: T) -> T {
        match self {
            Self::Easy => easy,
            Self::Usual => usual,
            Self::Hard => hard,
        }
    }
}

/// What a course asks of its worksheets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorksheetsGiven {
    /// How hard.
    pub level: Level,
    /// Kinds that are not asked.
    pub left_out: Vec<Kind>,
    /// Whether sums are asked at all.
    pub arithmetic: bool,
    /// How many questions at most; as many as fill four pages where nothing is said.
    pub questions: Option<usize>,
}

impl Default for WorksheetsGiven {
    fn default() -> Self {
        Self {
            level: Level::default(),
            left_out: Vec::new(),
            arithmetic: true,
            questions: None,
        }
    }
}

impl WorksheetsGiven {
    /// The kinds that are asked, as they stand on a sheet. They are the same for everybody,
    /// so that an instructor can go through them with the whole group.
    pub fn kinds(&self) -> Vec<Kind> {
        let wanted = Kind::BY_USE
            .into_iter()
            .filter(|kind| !self.left_out.contains(kind))
            .filter(|kind| self.arithmetic || !kind.is_sum());
        let chosen: Vec<Kind> = match self.questions {
            Some(most) => wanted.take(most).collect(),
            None => {
                let mut room = PAGES * SIXTHS;
                wanted
                    .take_while(|kind| match room.checked_sub(kind.sixths_of_a_page()) {
                        Some(left) => {
                            room = left;
                            true
                        }
                        None => false,
                    })
                    .collect()
            }
        };
        let asked = Kind::ALL.into_iter();
        asked.filter(|kind| chosen.contains(kind)).collect()
    }

    /// How hard a kind is asked. Where no sums are wanted, those that come to a sum only at
    /// the hardest level stop short of it.
    pub fn level_of(&self, kind: Kind) -> Level {
        if self.arithmetic || kind.is_sum() {
            self.level
        } else {
            match kind {
                Kind::OnePersonLift | Kind::ReadTheTable => self.level.min(Level::Usual),
                _ => self.level,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sixths(kinds: &[Kind]) -> usize {
        kinds.iter().map(|kind| kind.sixths_of_a_page()).sum()
    }

    #[test]
    fn a_sheet_of_no_given_number_fills_four_pages() {
        let kinds = WorksheetsGiven::default().kinds();
        assert_eq!(sixths(&kinds), PAGES * SIXTHS);
        assert_eq!(kinds.len(), 10);
        let places: Vec<usize> = kinds
            .iter()
            .filter_map(|kind| Kind::ALL.iter().position(|one| one == kind))
            .collect();
        assert!(places.is_sorted_by(|a, b| a < b), "{places:?}");
    }

    #[test]
    fn a_kind_left_out_makes_room_for_the_next() {
        let given = WorksheetsGiven {
            left_out: vec![Kind::Tonnes],
            ..WorksheetsGiven::default()
        };
        let kinds = given.kinds();
        assert_eq!(kinds.len(), 10);
        assert!(!kinds.contains(&Kind::Tonnes) && kinds.contains(&Kind::GaugeOffset));
    }

    #[test]
    fn without_arithmetic_there_is_no_sum() {
        let given = WorksheetsGiven {
            arithmetic: false,
            level: Level::Hard,
            ..WorksheetsGiven::default()
        };
        let kinds = given.kinds();
        assert_eq!(kinds.len(), 7);
        assert!(kinds.iter().all(|kind| !kind.is_sum()));
        assert_eq!(given.level_of(Kind::OnePersonLift), Level::Usual);
        assert_eq!(given.level_of(Kind::FindTheFault), Level::Hard);
    }

    #[test]
    fn a_given_number_is_kept_to() {
        for most in 0..=Kind::ALL.len() {
            let given = WorksheetsGiven {
                questions: Some(most),
                ..WorksheetsGiven::default()
            };
            assert_eq!(given.kinds().len(), most);
        }
        let given = WorksheetsGiven {
            left_out: Kind::ALL.to_vec(),
            ..WorksheetsGiven::default()
        };
        assert_eq!(given.kinds(), []);
    }

    #[test]
    fn every_kind_stands_once_in_both_orders() {
        for kind in Kind::ALL {
            let times = |all: [Kind; 17]| all.iter().filter(|one| **one == kind).count();
            assert_eq!((times(Kind::ALL), times(Kind::BY_USE)), (1, 1), "{kind:?}");
        }
    }
}
