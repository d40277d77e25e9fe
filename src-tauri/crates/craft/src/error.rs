//! Every way a sum can refuse, each with a sentence for the person who asked.

use crate::quantity::{Length, Mass, Units, show_length, show_mark, show_mass};

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
    /// Ground that reaches the top of the wall.
    #[error(
        "at station {} the ground is at {} and the top of the wall at {}, not above it",
        show_mark(*station, units.unwrap_or(Units::Metric)),
        show_mark(*ground, units.unwrap_or(Units::Metric)),
        show_mark(*top, units.unwrap_or(Units::Metric))
    )]
    GroundAboveTop {
        /// The surveyed station, counted from 0, and its key; nothing between two of them.
        survey: Option<(usize, &'static str)>,
        /// Along the centre line.
        station: Length,
        /// Level of the ground.
        ground: Length,
        /// Level of the top.
        top: Length,
        /// How to write the lengths; metres when not said.
        units: Option<Units>,
    },
    /// An arc too tight for the width of the wall.
    #[error(
        "an arc of radius {} is too tight at station {}: the wall reaches {} to that side, its footing included",
        show_mark(*radius, units.unwrap_or(Units::Metric)),
        show_mark(*station, units.unwrap_or(Units::Metric)),
        show_mark(*least, units.unwrap_or(Units::Metric))
    )]
    RadiusTooSmall {
        /// The stretch of the line, counted from 0.
        stretch: usize,
        /// Of the centre line.
        radius: Length,
        /// Centre line to the edge of the inner face or its footing.
        least: Length,
        /// Along the centre line.
        station: Length,
        /// How to write the lengths; metres when not said.
        units: Option<Units>,
    },
    /// A figure for the bank behind a retaining wall that no bank has.
    #[error("this must be from {least} to {most} {unit}; it is {given}")]
    BankFigure {
        /// The course file's key.
        key: &'static str,
        /// What the figures are counted in.
        unit: &'static str,
        /// What was given.
        given: f64,
        /// The range.
        least: f64,
        /// The range.
        most: f64,
    },
    /// Fill higher than the wall that is to hold it.
    #[error(
        "the bank is {} high, which is more than the wall's {}",
        show_length(*retained, units.unwrap_or(Units::Metric)),
        show_length(*height, units.unwrap_or(Units::Metric))
    )]
    BankAboveWall {
        /// Height of the fill against the back.
        retained: Length,
        /// Ground to the underside of the cope.
        height: Length,
        /// How to write the lengths; metres when not said.
        units: Option<Units>,
    },
    /// A bank that would slide without any wall being moved.
    #[error(
        "a bank that rises at {slope_degrees} degrees can't stand in fill whose friction angle is {friction_degrees} degrees"
    )]
    BankTooSteep {
        /// The bank's surface from level.
        slope_degrees: f64,
        /// Friction within the fill.
        friction_degrees: f64,
    },
    /// A back on which a part of the fill would lie still.
    #[error(
        "the wall's back leans {lean_degrees:.1} degrees from plumb; the check of a retaining wall holds up to {most_degrees:.1} degrees"
    )]
    BackTooFlat {
        /// The back from plumb.
        lean_degrees: f64,
        /// The most for this bank, either way.
        most_degrees: f64,
    },
    /// Nobody to teach.
    #[error("there are no students")]
    NoStudents,
    /// People who alone weigh what their vehicle may carry.
    #[error(
        "{people} people at {} each leave nothing of the payload of {}",
        show_mass(*person, units.unwrap_or(Units::Metric)),
        show_mass(*payload, units.unwrap_or(Units::Metric))
    )]
    PeopleFillVehicle {
        /// Which vehicle, counted from 0.
        vehicle: usize,
        /// How many people.
        people: u32,
        /// One person with what they carry.
        person: Mass,
        /// What the vehicle may carry.
        payload: Mass,
        /// How to write the masses; kilograms when not said.
        units: Option<Units>,
    },
    /// A thing marked done that is not in the list.
    #[error("there is nothing called \"{given}\" to be seen to")]
    UnknownTask {
        /// Which of the marks, counted from 0.
        at: usize,
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
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
    /// A kit rule changed that is not there, or added without what a new one needs.
    #[error("no kit rule is named \"{given}\", and a new one needs both per and each")]
    NewTool {
        /// The change, counted from 0.
        at: usize,
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A kit rule added for one size of a tool that comes in sizes.
    #[error("\"{given}\" is one size of \"{rule}\", whose sizes are counted by one rule")]
    OneSize {
        /// The change, counted from 0.
        at: usize,
        /// What was given.
        given: String,
        /// The rule of all sizes.
        rule: String,
    },
    /// A tool needed for a stage that does not exist.
    #[error("\"{given}\" is not a stage that something could be needed for")]
    NeededFor {
        /// The change, counted from 0.
        at: usize,
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
            Self::GroundAboveTop { .. } => "ground-above-top",
            Self::RadiusTooSmall { .. } => "radius-too-small",
            Self::BankFigure { .. } => "bank-figure",
            Self::BankAboveWall { .. } => "bank-above-wall",
            Self::BankTooSteep { .. } => "bank-too-steep",
            Self::BackTooFlat { .. } => "back-too-flat",
            Self::NoStudents => "no-students",
            Self::PeopleFillVehicle { .. } => "people-fill-vehicle",
            Self::UnknownTask { .. } => "unknown-task",
            Self::UnknownBar { .. } => "unknown-bar",
            Self::UnknownStone { .. } => "unknown-stone",
            Self::UnknownTool { .. } => "unknown-tool",
            Self::NewTool { .. } => "new-tool",
            Self::OneSize { .. } => "one-size",
            Self::NeededFor { .. } => "needed-for",
            Self::UnknownStage { .. } => "unknown-stage",
            Self::Table { .. } => "table",
        }
    }

    /// The key of the course file to point at, if it is about one.
    pub fn key(&self) -> Option<String> {
        let key = match self {
            Self::NotABatter { .. } | Self::BackTooFlat { .. } => "wall.batter",
            Self::NotPositive { key, .. } | Self::BankFigure { key, .. } => key,
            Self::ThroughRow { .. } => "wall.through_rows",
            Self::TooManyThroughs { .. } => "wall.through_spacing",
            Self::GroundAboveTop { survey, .. } => match survey {
                Some((number, key)) => return Some(format!("wall.ground.{number}.{key}")),
                None => "wall.ground",
            },
            Self::RadiusTooSmall { stretch, .. } => {
                return Some(format!("wall.line.{stretch}.radius"));
            }
            Self::BankAboveWall { .. } => "wall.bank.height",
            Self::BankTooSteep { .. } => "wall.bank.slope_degrees",
            Self::NoStudents => "group",
            Self::PeopleFillVehicle { vehicle, .. } => {
                return Some(format!("vehicle.{vehicle}.people"));
            }
            Self::UnknownTask { at, .. } => return Some(format!("ready.done.{at}")),
            Self::UnknownBar { .. } => "frames.bar",
            Self::UnknownStone { .. } => "stone.kind",
            Self::UnknownTool { .. } => "kit.on_hand",
            Self::NewTool { at, .. } | Self::OneSize { at, .. } => {
                return Some(format!("kit.rule.{at}.item"));
            }
            Self::NeededFor { at, .. } => return Some(format!("kit.rule.{at}.needed_for")),
            Self::UnknownStage { .. } => "pace.rates",
            Self::Table { .. } => return None,
        };
        Some(key.to_owned())
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
            Self::GroundAboveTop { .. } => {
                "correct the level, raise the wall, or let the top follow the ground".to_owned()
            }
            Self::RadiusTooSmall { .. } => {
                "give a larger radius, a narrower or a lower wall".to_owned()
            }
            Self::BankFigure { .. } => {
                "give a figure within these; for ground that has none, ask a licensed engineer"
                    .to_owned()
            }
            Self::BankAboveWall { .. } => {
                "lower the bank, raise the wall, or give what rises behind the wall as a slope"
                    .to_owned()
            }
            Self::BankTooSteep { .. } => {
                "lay the bank flatter, and ask a licensed engineer about one that is steep already"
                    .to_owned()
            }
            Self::BackTooFlat { .. } => {
                "build the back nearer to plumb, or ask a licensed engineer".to_owned()
            }
            Self::NoStudents => {
                "give novices, improvers or experienced, or name the students".to_owned()
            }
            Self::PeopleFillVehicle { .. } => {
                "let fewer travel in it, or give the payload that stands in its papers".to_owned()
            }
            Self::UnknownTask { .. } => {
                "write an id as the list of what is not ready shows it, or leave it out".to_owned()
            }
            Self::UnknownBar { known, .. }
            | Self::UnknownStone { known, .. }
            | Self::UnknownTool { known, .. }
            | Self::NeededFor { known, .. }
            | Self::UnknownStage { known, .. } => format!("there are: {}", known.join(", ")),
            Self::NewTool { .. } => NEW_TOOL.to_owned(),
            Self::OneSize { rule, .. } => {
                format!("change the rule \"{rule}\"; it asks for what each size takes")
            }
            Self::Table { .. } => {
                "put the row back, or remove your own copy of the table so that the built-in one is used"
                    .to_owned()
            }
        }
    }

    /// The same refusal with its lengths written in these units.
    pub fn shown_in(mut self, shown: Units) -> Self {
        match &mut self {
            Self::ThroughRow { units, .. }
            | Self::GroundAboveTop { units, .. }
            | Self::RadiusTooSmall { units, .. }
            | Self::BankAboveWall { units, .. }
            | Self::PeopleFillVehicle { units, .. } => *units = Some(shown),
            _ => {}
        }
        self
    }

    /// The word given and the words there are, where a word was looked up.
    pub fn choices(&self) -> Option<(&str, &[String])> {
        match self {
            Self::UnknownBar { given, known }
            | Self::UnknownStone { given, known }
            | Self::UnknownTool { given, known }
            | Self::NewTool { given, known, .. }
            | Self::NeededFor { given, known, .. }
            | Self::UnknownStage { given, known }
            | Self::UnknownTask { given, known, .. } => Some((given, known)),
            _ => None,
        }
    }

    /// What would be right, where one of the words there are is much like the one given.
    pub fn cure_with(&self, nearest: &str) -> String {
        match self {
            Self::NewTool { .. } => format!("did you mean \"{nearest}\"? Else {NEW_TOOL}"),
            _ => format!("did you mean \"{nearest}\"?"),
        }
    }
}

/// What makes a tool that no rule names into a rule.
const NEW_TOOL: &str = "say how a new one is counted, such as per = \"pair\" and each = 1";
