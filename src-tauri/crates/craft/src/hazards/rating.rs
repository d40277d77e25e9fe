//! How likely a hazard hurts someone, how badly, and the level of risk the two come to.

/// How likely it is that somebody on a course is hurt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Likelihood {
    /// It would surprise an instructor.
    Unlikely,
    /// It has happened on courses.
    Possible,
    /// It happens, unless something is done.
    Likely,
}

/// How badly, taking the worst that could well happen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// First aid on the spot, and back to work.
    Slight,
    /// A doctor, and days or weeks off.
    Serious,
    /// A life changed or lost.
    Grave,
}

/// What likelihood and severity come to. There is no level for no risk: some always remains.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Level {
    VeryLow,
    Low,
    Medium,
    High,
    VeryHigh,
}

/// How likely and how badly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rating {
    /// How likely.
    pub likelihood: Likelihood,
    /// How badly.
    pub severity: Severity,
}

impl Likelihood {
    /// All, the least first.
    pub const ALL: [Self; 3] = [Self::Unlikely, Self::Possible, Self::Likely];

    /// The word the table uses and a person reads.
    pub fn word(self) -> &'static str {
        match self {
            Self::Unlikely => "unlikely",
            Self::Possible => "possible",
            Self::Likely => "likely",
        }
    }
}

impl Severity {
    /// All, the least first.
    pub const ALL: [Self; 3] = [Self::Slight, Self::Serious, Self::Grave];

    /// The word the table uses and a person reads.
    pub fn word(self) -> &'static str {
        match self {
            Self::Slight => "slight",
            Self::Serious => "serious",
            Self::Grave => "grave",
        }
    }
}

impl Level {
    /// All, the lowest first.
    pub const ALL: [Self; 5] = [
        Self::VeryLow,
        Self::Low,
        Self::Medium,
        Self::High,
        Self::VeryHigh,
    ];

    /// The word a person reads.
    pub fn word(self) -> &'static str {
        match self {
            Self::VeryLow => "very low",
            Self::Low => "low",
            Self::Medium => "medium",
            Self::High => "high",
            Self::VeryHigh => "very high",
        }
    }
}

impl Rating {
    /// The level of risk: three by three, one level up for each step of either. This is the
    /// simple risk level estimator of BS 8800:1996, *Guide to occupational health and safety
    /// management systems*, annex D (trivial, tolerable, moderate, substantial, intolerable),
    /// from memory, in plainer words.
    pub fn level(self) -> Level {
        use Likelihood::{Likely, Possible, Unlikely};
        use Severity::{Grave, Serious, Slight};
        match (self.likelihood, self.severity) {
            (Unlikely, Slight) => Level::VeryLow,
            (Unlikely, Serious) | (Possible, Slight) => Level::Low,
            (Unlikely, Grave) | (Possible, Serious) | (Likely, Slight) => Level::Medium,
            (Possible, Grave) | (Likely, Serious) => Level::High,
            (Likely, Grave) => Level::VeryHigh,
        }
    }

    /// Whether it is above another in likelihood or in severity: no control may make either
    /// worse.
    pub fn is_above(self, other: Self) -> bool {
        other.likelihood < self.likelihood || other.severity < self.severity
    }
}
