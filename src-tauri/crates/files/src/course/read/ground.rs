//! The ground as it was surveyed.

use crate::Fault;
use crate::course::node::Section;
use craft::quantity::Length;
use craft::wall::Survey;

/// How far a level may lie from the survey's own zero, which may be the sea.
const LEVEL_M: f64 = 9000.0;

/// Surveyed levels in order of station.
pub(super) fn ground(section: &Section<'_>) -> Result<Vec<Survey>, Fault> {
    let mut surveyed: Vec<Survey> = Vec::new();
    for one in section.tables("ground")? {
        let survey = survey(&one, surveyed.last())?;
        surveyed.push(survey);
    }
    Ok(surveyed)
}

fn survey(section: &Section<'_>, before: Option<&Survey>) -> Result<Survey, Fault> {
    section.only(&["station", "level", "left", "right"])?;
    let station_entry = section.need(
        "station",
        "give the place along the line: station = \"3 m\"",
    )?;
    let station = station_entry.length(0.0, 400.0)?;
    if before.is_some_and(|before| station <= before.station) {
        return Err(station_entry.fault(
            "station-order",
            "this station does not come after the one before it",
            "give each station once, in order from station 0",
        ));
    }
    let level = section
        .need("level", "give the level of the ground: level = \"-0.12 m\"")?
        .length(-LEVEL_M, LEVEL_M)?;
    let at_face = |key: &str| -> Result<Length, Fault> {
        section
            .get(key)
            .map_or(Ok(level), |entry| entry.length(-LEVEL_M, LEVEL_M))
    };
    Ok(Survey {
        station,
        level,
        left: at_face("left")?,
        right: at_face("right")?,
    })
}
