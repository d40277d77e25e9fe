//! What goes with each refusal: its name for programs, the key it is about, what would be right.

use super::Error;
use crate::quantity::Units;

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
            Self::NoSuchBay { .. } => "no-such-bay",
            Self::NoSuchWall { .. } => "no-such-wall",
            Self::TooSoon { .. } => "too-soon",
            Self::Absurd(_) => "absurd-record",
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
            Self::UnknownStage { key, .. } => key,
            Self::NoSuchBay { at, .. } => return Some(format!("progress.{at}.bay")),
            Self::NoSuchWall { at, .. } => return Some(format!("progress.{at}.wall")),
            Self::TooSoon { at, .. } => return Some(format!("progress.{at}.time")),
            Self::Absurd(_) | Self::Table { .. } => return None,
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
            Self::NoSuchBay { open: true, .. } => {
                "the wall is being built, but its length is still worked out anew with every change: write down the one that was set out, such as length = \"6.75 m\" under [wall]".to_owned()
            }
            Self::NoSuchBay { bays: 1, .. } => "leave the bay out, or write 1".to_owned(),
            Self::NoSuchBay { bays, .. } => format!("count the bays from 1 to {bays}, or leave it out for all"),
            Self::NoSuchWall { .. } => {
                "write the size the wall was to have at that time, or leave it out for the size it has now".to_owned()
            }
            Self::TooSoon { .. } => {
                "correct the time, the stage or the share done; what was done beforehand goes into [pace] beforehand"
                    .to_owned()
            }
            Self::Absurd(_) => {
                "take the record back: coursewright pace take-back COURSE --store DIR".to_owned()
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
            | Self::UnknownStage { given, known, .. }
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
