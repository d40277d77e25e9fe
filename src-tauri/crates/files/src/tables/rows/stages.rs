//! The rows of the table of stages as its file holds them. The file says what each key means.
#![allow(missing_docs)]

use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stages {
    pub(crate) stage: Vec<Stage>,
}

/// A stage as the sums want it.
#[derive(Deserialize)]
#[serde(try_from = "Row")]
pub(crate) struct Stage(pub(crate) craft::tables::Stage);

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    id: String,
    name: String,
    work: Option<Work>,
    minutes: Option<u32>,
    each_day_minutes: Option<u32>,
    crew: Crew,
    #[serde(default)]
    string: bool,
    along: Along,
    #[serde(default)]
    beforehand: bool,
    note: String,
    if_left: String,
}

#[derive(Deserialize)]
enum Along {
    #[serde(rename = "bay by bay")]
    BayByBay,
    #[serde(rename = "together")]
    Together,
}

#[derive(Deserialize)]
enum Work {
    #[serde(rename = "stripped tonnes")]
    Stripped,
    #[serde(rename = "heap tonnes")]
    Heap,
    #[serde(rename = "trench cubic metres")]
    Trench,
    #[serde(rename = "frames")]
    Frames,
    #[serde(rename = "footing tonnes")]
    Footing,
    #[serde(rename = "first lift tonnes")]
    FirstLift,
    #[serde(rename = "throughs")]
    Throughs,
    #[serde(rename = "second lift tonnes")]
    SecondLift,
    #[serde(rename = "heads")]
    Heads,
    #[serde(rename = "metres")]
    Metres,
    #[serde(rename = "cope ends")]
    CopeEnds,
    #[serde(rename = "cope metres")]
    CopeMetres,
}

impl From<Work> for craft::tables::Work {
    fn from(work: Work) -> Self {
        match work {
            Work::Stripped => Self::StrippedTonnes,
            Work::Heap => Self::HeapTonnes,
            Work::Trench => Self::TrenchCubicMetres,
            Work::Frames => Self::Frames,
            Work::Footing => Self::FootingTonnes,
            Work::FirstLift => Self::FirstLiftTonnes,
            Work::Throughs => Self::Throughs,
            Work::SecondLift => Self::SecondLiftTonnes,
            Work::Heads => Self::Heads,
            Work::Metres => Self::Metres,
            Work::CopeEnds => Self::CopeEnds,
            Work::CopeMetres => Self::CopeMetres,
        }
    }
}

#[derive(Deserialize)]
enum Crew {
    #[serde(rename = "everyone")]
    Everyone,
    #[serde(rename = "facing pairs")]
    FacingPairs,
    #[serde(rename = "diggers")]
    Diggers,
    #[serde(rename = "coping crews")]
    CopingCrews,
}

impl TryFrom<Row> for Stage {
    type Error = String;

    /// Refuses a stage with no amount of work or more than one.
    fn try_from(row: Row) -> Result<Self, String> {
        let works: Vec<craft::tables::Work> = [
            row.work.map(Into::into),
            row.minutes.map(craft::tables::Work::Minutes),
            row.each_day_minutes.map(craft::tables::Work::EachDay),
        ]
        .into_iter()
        .flatten()
        .collect();
        let [work] = works.as_slice() else {
            return Err(format!(
                "the stage \"{}\" needs one of work, minutes and each_day_minutes",
                row.id
            ));
        };
        Ok(Self(craft::tables::Stage {
            work: *work,
            crew: match row.crew {
                Crew::Everyone => craft::tables::Crew::Everyone,
                Crew::FacingPairs => craft::tables::Crew::FacingPairs,
                Crew::Diggers => craft::tables::Crew::Diggers,
                Crew::CopingCrews => craft::tables::Crew::CopingCrews,
            },
            along: match row.along {
                Along::BayByBay => craft::tables::Along::BayByBay,
                Along::Together => craft::tables::Along::Together,
            },
            id: row.id,
            name: row.name,
            string: row.string,
            beforehand: row.beforehand,
            note: row.note,
            if_left: row.if_left,
        }))
    }
}
