//! How hot the course days are, for what is carried by heat: water above all.

use crate::conditions::Conditions;
use crate::tables::Applies;

/// How hot it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Heat {
    /// People work in a jersey.
    Mild,
    /// People work in shirt sleeves.
    Warm,
    /// People look for shade.
    Hot,
}

impl Heat {
    /// All of them, the coolest first.
    pub const ALL: [Self; 3] = [Self::Mild, Self::Warm, Self::Hot];

    /// The word the tables and the course file use.
    pub fn word(self) -> &'static str {
        match self {
            Self::Mild => "mild",
            Self::Warm => "warm",
            Self::Hot => "hot",
        }
    }
}

/// The heat a course reckons with, and who says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weather {
    /// How hot it is.
    pub heat: Heat,
    /// The course says so; else the season does.
    pub said: bool,
}

impl Weather {
    /// What the course says, else by the season there: warm in the hot months, mild in the
    /// others. Nothing is taken for hot that nobody has called hot, because a hot month has
    /// cool weeks (common practice, no source).
    pub fn of(said: Option<Heat>, conditions: &Conditions) -> Self {
        let by_season = if conditions.met(Applies::Hot) {
            Heat::Warm
        } else {
            Heat::Mild
        };
        Self {
            heat: said.unwrap_or(by_season),
            said: said.is_some(),
        }
    }

    /// `in mild weather (by the season there)`; `in hot weather (as the course says)`.
    pub(super) fn words(self) -> String {
        let who = if self.said {
            "as the course says"
        } else {
            "by the season there"
        };
        format!("in {} weather ({who})", self.heat.word())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_course_says_counts_before_the_season() {
        let summer = Conditions::just(&[Applies::Hot]);
        let spring = Conditions::just(&[]);
        for (said, conditions, heat) in [
            (None, &summer, Heat::Warm),
            (None, &spring, Heat::Mild),
            (Some(Heat::Hot), &spring, Heat::Hot),
            (Some(Heat::Mild), &summer, Heat::Mild),
        ] {
            let weather = Weather::of(said, conditions);
            assert_eq!((weather.heat, weather.said), (heat, said.is_some()));
        }
    }
}
