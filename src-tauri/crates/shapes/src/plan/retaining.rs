//! The bank behind a retaining wall as JSON: its drainage and the teaching check.

use craft::quantity::{Read, in_tonnes};
use craft::retaining::Verdict;
use serde::Serialize;

/// What is to be known of a wall that holds back a bank. The check is for teaching and
/// approves nothing.
#[derive(Debug, Clone, Serialize)]
pub struct Retaining {
    /// The bank's side: `left` or `right`.
    pub retained: String,
    /// Where the wall is highest.
    pub highest_m: f64,
    /// Bottom of the footing to the top with its cope, there.
    pub from_footing_m: f64,
    /// The building authority and a licensed engineer are to be asked.
    pub must_ask: bool,
    /// Base width for each unit of height.
    pub base_share: f64,
    /// Thickness of the drainage stone.
    pub drainage_m: f64,
    /// The drainage stone as it lies.
    pub backfill_m3: f64,
    /// Its mass.
    pub backfill_t: f64,
    /// The check for one metre where the wall is highest.
    pub check: Check,
}

/// The teaching check of one metre of wall.
#[derive(Debug, Clone, Serialize)]
pub struct Check {
    /// Coulomb's active coefficient.
    pub ka: f64,
    /// Height of the fill.
    pub bank_height_m: f64,
    /// Of the fill.
    pub fill_kg_m3: f64,
    /// Friction within the fill.
    pub friction_degrees: f64,
    /// Friction between the fill and the back.
    pub wall_friction_degrees: f64,
    /// Friction under the wall.
    pub base_friction_degrees: f64,
    /// The bank's surface from level.
    pub slope_degrees: f64,
    /// A load spread over the bank.
    pub load_kpa: f64,
    /// Weight of the wall.
    pub weight_kn_m: f64,
    /// Thrust on the back.
    pub thrust_kn_m: f64,
    /// Where it meets the back, above the ground in front.
    pub thrust_height_m: f64,
    /// Safety against tipping about the toe.
    pub overturning: f64,
    /// Safety against sliding.
    pub sliding: f64,
    /// Where the resultant meets the base, as a share of it from the toe.
    pub resultant_share: Option<f64>,
    /// Pressure on the ground under the toe.
    pub toe_pressure_kpa: Option<f64>,
    /// `above both`, `below overturning`, `below sliding` or `below both`. Above is no approval.
    pub verdict: String,
}

impl Retaining {
    pub(super) fn of(it: &craft::retaining::Retaining) -> Self {
        Self {
            retained: it.given.side.word().to_owned(),
            highest_m: it.highest.si(),
            from_footing_m: it.from_footing.si(),
            must_ask: it.must_ask,
            base_share: it.base_share,
            drainage_m: it.drainage.si(),
            backfill_m3: it.backfill.si(),
            backfill_t: in_tonnes(it.backfill_mass),
            check: Check::of(it),
        }
    }
}

impl Check {
    fn of(it: &craft::retaining::Retaining) -> Self {
        let (bank, check) = (&it.bank, &it.check);
        Self {
            ka: check.ka,
            bank_height_m: bank.retained.si(),
            fill_kg_m3: bank.fill.si(),
            friction_degrees: bank.friction_degrees,
            wall_friction_degrees: bank.wall_friction_degrees,
            base_friction_degrees: bank.base_friction_degrees,
            slope_degrees: bank.slope_degrees,
            load_kpa: bank.load_kpa,
            weight_kn_m: check.weight_kn_m,
            thrust_kn_m: check.thrust_kn_m(),
            thrust_height_m: check.thrust_height.si(),
            overturning: check.overturning,
            sliding: check.sliding,
            resultant_share: check.resultant_share,
            toe_pressure_kpa: check.toe_pressure_kpa,
            verdict: match it.verdict {
                Verdict::AboveBoth => "above both",
                Verdict::BelowOverturning => "below overturning",
                Verdict::BelowSliding => "below sliding",
                Verdict::BelowBoth => "below both",
            }
            .to_owned(),
        }
    }
}
