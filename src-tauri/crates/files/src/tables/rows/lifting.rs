//! The rows of `lifting.toml`.

use crate::tables::figures::{self, WrittenLength};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(try_from = "Rows")]
pub(crate) struct Lifting {
    pub(crate) rows: Rows,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rows {
    pub(crate) hands: HowLifted,
    pub(crate) place: Vec<Place>,
    pub(crate) lift: Vec<Lift>,
    pub(crate) body: Bodies,
    pub(crate) flat_stone: FlatStone,
    pub(crate) team: Team,
    pub(crate) heavy: Heavy,
    pub(crate) limit: Vec<Limit>,
}

/// Most hours of lifting in a day that the equation knows of.
const MOST_HOURS: f64 = 8.0;

impl TryFrom<Rows> for Lifting {
    type Error = String;

    /// Refuses what no single row can see: a place that is not there, two of one name, a
    /// place without a height or with two, more hours than the guides know.
    fn try_from(rows: Rows) -> Result<Self, String> {
        let ids: Vec<&str> = rows.place.iter().map(|place| place.id.as_str()).collect();
        for (number, place) in rows.place.iter().enumerate() {
            let id = &place.id;
            if ids.iter().take(number).any(|other| other == id) {
                return Err(format!("two places have the id \"{id}\""));
            }
            if place.height.is_some() == place.at.is_some() {
                return Err(format!(
                    "the place \"{id}\" needs either a height, or at = \"ground\" or \"top\""
                ));
            }
        }
        for lift in &rows.lift {
            for id in lift.from.iter().chain([&lift.to]) {
                if !ids.contains(&id.as_str()) {
                    return Err(format!(
                        "a lift of the stage \"{}\" names the place \"{id}\"; the places are: {}",
                        lift.stage,
                        ids.join(", ")
                    ));
                }
            }
        }
        if MOST_HOURS < rows.hands.hours {
            return Err(format!(
                "{} hours of lifting a day; the NIOSH equation knows of up to {MOST_HOURS}",
                rows.hands.hours
            ));
        }
        Ok(Self { rows })
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HowLifted {
    pub(crate) reach: WrittenLength,
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) twist_degrees: f64,
    pub(crate) grip: Grip,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) hours: f64,
    pub(crate) carried: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Grip {
    Good,
    Fair,
    Poor,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Place {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) height: Option<WrittenLength>,
    pub(crate) at: Option<At>,
    pub(crate) source: String,
}

#[derive(Deserialize, Clone, Copy)]
#[serde(rename_all = "lowercase")]
pub(crate) enum At {
    Ground,
    Top,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Lift {
    pub(crate) stage: String,
    pub(crate) from: Vec<String>,
    pub(crate) to: String,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) lifts_per_minute: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bodies {
    pub(crate) men: Body,
    pub(crate) women: Body,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Body {
    pub(crate) shoulder: WrittenLength,
    pub(crate) elbow: WrittenLength,
    pub(crate) knuckle: WrittenLength,
    pub(crate) mid_lower_leg: WrittenLength,
    pub(crate) elbow_to_grip: WrittenLength,
    pub(crate) shoulder_to_grip: WrittenLength,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FlatStone {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) along: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) deep: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) high: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Team {
    #[serde(deserialize_with = "figures::share")]
    pub(crate) two: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) three: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Heavy {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) bar_most_kg: f64,
    pub(crate) bar_height: WrittenLength,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) ramp_most_kg: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Limit {
    pub(crate) text: String,
    #[serde(rename = "source")]
    _source: String,
}
