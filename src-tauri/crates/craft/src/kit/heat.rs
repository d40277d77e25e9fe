//! How hot the course days are, for what is carried by heat: water above all.

use crate::conditions::Conditions;
use crate::course::Day;
use crate::quantity::in_celsius;
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

/// From here on people look for shade: where the US National Weather Service's heat index begins
/// to ask for caution, 80 °F.
const HOT_C: f64 = 26.7;
/// From here on people work in shirt sleeves (common practice, no source).
const WARM_C: f64 = 20.0;

/// Who says how hot it will be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SaidBy {
    /// The course file, in so many words.
    Course,
    /// The highest of the temperatures typed in for its days.
    Forecast,
    /// The season at the place.
    Season,
}

/// The heat a course reckons with, and who says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weather {
    /// How hot it is.
    pub heat: Heat,
    /// Who says so.
    pub said: SaidBy,
}

impl Weather {
    /// What the course says, else by the hottest day typed in, else by the season there: warm in
    /// the hot months, mild in the others. Nothing is taken for hot that nobody has called hot,
    /// because a hot month has cool weeks (common practice, no source).
    pub fn of(said: Option<Heat>, days: &[Day], conditions: &Conditions) -> Self {
        let highs = days.iter().filter_map(|day| day.weather.high);
        let hottest = highs.map(in_celsius).reduce(f64::max);
        let by_season = if conditions.met(Applies::Hot) {
            Heat::Warm
        } else {
            Heat::Mild
        };
        match (said, hottest) {
            (Some(heat), _) => Self {
                heat,
                said: SaidBy::Course,
            },
            (None, Some(celsius)) => Self {
                heat: by_degrees(celsius),
                said: SaidBy::Forecast,
            },
            (None, None) => Self {
                heat: by_season,
                said: SaidBy::Season,
            },
        }
    }

    /// `in mild weather (by the season there)`; `in hot weather (as the course says)`.
    pub(super) fn words(self) -> String {
        let who = match self.said {
            SaidBy::Course => "as the course says",
            SaidBy::Forecast => "by the forecast typed in",
            SaidBy::Season => "by the season there",
        };
        format!("in {} weather ({who})", self.heat.word())
    }
}

fn by_degrees(celsius: f64) -> Heat {
    if HOT_C <= celsius {
        Heat::Hot
    } else if WARM_C <= celsius {
        Heat::Warm
    } else {
        Heat::Mild
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;

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
            let weather = Weather::of(said, &[], conditions);
            assert_eq!(weather.heat, heat);
            assert_eq!(weather.said == SaidBy::Course, said.is_some());
        }
    }

    #[test]
    fn the_hottest_day_typed_in_counts_before_the_season() {
        let (course, ..) = &*crate::plan::sample::SAMPLE;
        let mut days = course.days.clone();
        days[0].weather.high = Some(celsius(12.0));
        days[1].weather.high = Some(celsius(29.0));
        let weather = Weather::of(None, &days, &Conditions::just(&[]));
        assert_eq!((weather.heat, weather.said), (Heat::Hot, SaidBy::Forecast));
        days[1].weather.high = Some(celsius(21.0));
        let weather = Weather::of(None, &days, &Conditions::just(&[]));
        assert_eq!(
            weather.words(),
            "in warm weather (by the forecast typed in)"
        );
    }
}
