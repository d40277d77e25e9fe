//! Every way a sum can refuse, each with a sentence for the person who asked.

mod answers;

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
    /// A stage or a lesson that does not exist, or not for this.
    #[error("\"{given}\" is not {what}")]
    UnknownStage {
        /// The course file's key.
        key: String,
        /// What it should have been.
        what: &'static str,
        /// What was given.
        given: String,
        /// What there is.
        known: Vec<String>,
    },
    /// Progress of a bay the wall does not have.
    #[error("the wall has {}", if *bays == 1 { "one bay".to_owned() } else { format!("{bays} bays") })]
    NoSuchBay {
        /// The report, counted from 0.
        at: usize,
        /// How many there are.
        bays: usize,
        /// The length of the wall is worked out anew with every change.
        open: bool,
    },
    /// Progress of a wall that can't stand.
    #[error("the wall it tells of can't be built: {why}")]
    NoSuchWall {
        /// The report, counted from 0.
        at: usize,
        /// Why not.
        why: String,
    },
    /// Progress that can't have been made in the time.
    #[error(
        "the stage \"{stage}\" and those before it can't have come so far in {minutes:.0} minutes of building; that usually takes {usual:.0}"
    )]
    TooSoon {
        /// The report, counted from 0.
        at: usize,
        /// The stage.
        stage: String,
        /// Building minutes since the report before.
        minutes: f64,
        /// Minutes it usually takes.
        usual: f64,
    },
    /// A record of an earlier course with a pace that no group has.
    #[error(transparent)]
    Absurd(#[from] crate::pace::book::Absurd),
    /// A table the sums rely on lacks a row.
    #[error("the table {table} has no row for \"{missing}\"")]
    Table {
        /// The table's file.
        table: &'static str,
        /// What was looked for.
        missing: String,
    },
}
