//! Every way a sum can refuse, each with a sentence for the person who asked.

use crate::quantity::{Length, Units, show_length};

/// Why a plan could not be worked out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// A batter was not one in something.
    #[error("a batter is written as the n of \"1 in n\", more than zero; it is {n}")]
    NotABatter {
        /// What was given.
        n: f64,
    },
    /// A measurement that must be more than nothing was not.
    #[error("this must be more than zero; it is {}", show_length(*given, Units::Metric))]
    NotPositive {
        /// The course file's key.
        key: &'static str,
        /// What was given.
        given: Length,
    },
    /// A row of throughs outside the wall.
    #[error(
        "a row of throughs at {} is not between the ground and the top, which is at {}",
        show_length(*row, units.unwrap_or(Units::Metric)),
        show_length(*height, units.unwrap_or(Units::Metric))
    )]
    ThroughRow {
        /// The row's height above the ground.
        row: Length,
        /// The height of the wall.
        height: Length,
        /// How to write the lengths; metres when not said.
        units: Option<Units>,
    },
    /// Throughs heavier than the wall they are in.
    #[error(
        "the throughs alone ({throughs_t:.2} t) are more stone than the body of the wall holds ({body_t:.2} t)"
    )]
    TooManyThroughs {
        /// Mass of all throughs.
        throughs_t: f64,
        /// Mass of the body.
        body_t: f64,
    },
    /// Nobody to teach.
    #[error("there are no students")]
    NoStudents,
    /// A bar size the table does not hold.
    #[error("\"{given}\" is not a bar in the table of bars")]
    UnknownBar {
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A stone the table does not hold.
    #[error("\"{given}\" is not in the table of stone")]
    UnknownStone {
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A tool counted that no rule names.
    #[error("\"{given}\" is not a tool in the table of kit rules")]
    UnknownTool {
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A rate for a stage that does not exist.
    #[error("\"{given}\" is not a stage in the table of stages")]
    UnknownStage {
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A table the sums rely on lacks a row.
    #[error("the table {table} has no row for \"{missing}\"")]
    Table {
        /// The table's file.
        table: &'static str,
        /// What was looked for.
        missing: String,
    },
}

impl Error {
    /// A short, fixed name for programs. Never changes once shipped.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotABatter { .. } => "not-a-batter",
            Self::NotPositive { .. } => "not-positive",
            Self::ThroughRow { .. } => "through-row",
            Self::TooManyThroughs { .. } => "too-many-throughs",
            Self::NoStudents => "no-students",
            Self::UnknownBar { .. } => "unknown-bar",
            Self::UnknownStone { .. } => "unknown-stone",
            Self::UnknownTool { .. } => "unknown-tool",
            Self::UnknownStage { .. } => "unknown-stage",
            Self::Table { .. } => "table",
        }
    }

    /// The key of the course file to point at, if it is about one.
    pub fn key(&self) -> Option<&str> {
        match self {
            Self::NotABatter { .. } => Some("wall.batter"),
            Self::NotPositive { key, .. } => Some(key),
            Self::ThroughRow { .. } => Some("wall.through_rows"),
            Self::TooManyThroughs { .. } => Some("wall.through_spacing"),
            Self::NoStudents => Some("group"),
            Self::UnknownBar { .. } => Some("frames.bar"),
            Self::UnknownStone { .. } => Some("stone.kind"),
            Self::UnknownTool { .. } => Some("kit.on_hand"),
            Self::UnknownStage { .. } => Some("pace.rates"),
            Self::Table { .. } => None,
        }
    }

    /// What would be right.
    pub fn cure(&self) -> String {
        match self {
            Self::NotABatter { .. } => {
                "write 6 for 1 in 6, or \"plumb\" for a face that rises straight up".to_owned()
            }
            Self::NotPositive { .. } => "write a length such as \"1.07 m\" or \"3 ft 6 in\"".to_owned(),
            Self::ThroughRow { .. } => {
                "lower the row, raise the wall, or leave the row out".to_owned()
            }
            Self::TooManyThroughs { .. } => {
                "set the throughs farther apart or give their real size".to_owned()
            }
            Self::NoStudents => {
                "give novices, improvers or experienced, or name the students".to_owned()
            }
            Self::UnknownBar { known, .. }
            | Self::UnknownStone { known, .. }
            | Self::UnknownTool { known, .. }
            | Self::UnknownStage { known, .. } => format!("there are: {}", known.join(", ")),
            Self::Table { .. } => {
                "put the row back, or remove your own copy of the table so that the built-in one is used"
                    .to_owned()
            }
        }
    }

    /// The word given and the words there are, where a word was looked up.
    pub fn choices(&self) -> Option<(&str, &[String])> {
        match self {
            Self::UnknownBar { given, known }
            | Self::UnknownStone { given, known }
            | Self::UnknownTool { given, known }
            | Self::UnknownStage { given, known } => Some((given, known)),
            _ => None,
        }
    }
}
