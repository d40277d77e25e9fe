//! How people tire: the share of the usual rate by the hours worked since the day began.

/// From when people tire, how fast and how far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fatigue {
    /// Hours of work in a day up to which nobody slows down.
    pub from_hours: f64,
    /// The share of the usual rate lost with each hour after.
    pub per_hour: f64,
    /// The share that is always left.
    pub least: f64,
    /// Who says so.
    pub source: String,
}

impl Fatigue {
    /// The share of the usual rate after so many hours of work since the day began:
    /// `1 - per_hour * (hours - from_hours)`, never above 1 and never below `least`.
    pub fn factor(&self, hours_worked: f64) -> f64 {
        let tired = (hours_worked - self.from_hours).max(0.0);
        (1.0 - self.per_hour * tired).max(self.least).min(1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn fatigue() -> Fatigue {
        Fatigue {
            from_hours: 4.0,
            per_hour: 0.05,
            least: 0.75,
            source: String::new(),
        }
    }

    /// By hand: 6 hours are 2 beyond the fourth, 1 - 2 * 0.05; 9 hours would be 0.75, 12 less.
    #[test]
    fn people_tire_from_the_fifth_hour() {
        for (hours, factor) in [
            (0.0, 1.0),
            (4.0, 1.0),
            (6.0, 0.9),
            (9.0, 0.75),
            (12.0, 0.75),
        ] {
            assert!((fatigue().factor(hours) - factor).abs() < 1e-12, "{hours}");
        }
    }

    proptest! {
        #[test]
        fn nobody_gets_faster_by_working_on(hours in 0.0..24.0, more in 0.0..5.0) {
            let (now, later) = (fatigue().factor(hours), fatigue().factor(hours + more));
            prop_assert!(later <= now && (0.75..=1.0).contains(&now));
        }
    }
}
