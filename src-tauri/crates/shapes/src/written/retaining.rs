//! The bank behind a retaining wall in written figures, and the teaching check with what it
//! takes for granted.

use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Units, show_length, show_mark, show_mass, show_volume};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// A wall that holds back a bank.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenRetaining")]
#[allow(missing_docs)]
pub struct Retaining {
    /// The side the bank lies on, and the side the wall is set out from.
    pub bank: String,
    pub front: String,
    pub highest: String,
    pub from_footing: String,
    pub drainage: String,
    pub backfill: String,
    pub backfill_mass: String,
    /// `58 %`.
    pub base_share: String,
    /// The bank the check reckons with, as name and figure.
    pub reckoned: Vec<(String, String)>,
    /// Safety against tipping and against sliding, with the limit they are held against.
    pub overturning: String,
    pub sliding: String,
    pub limit: String,
    /// Where the resultant meets the base, in words.
    pub resultant: String,
    /// What the check takes for granted.
    pub assumptions: Vec<String>,
    /// Whom to ask, and when.
    pub ask: String,
    pub must_ask: bool,
    /// Frame by frame, from the foot of the front face: to the top of it, to the back.
    pub from_front: Vec<FromFront>,
}

/// One frame measured from the foot of its front face.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenFromFront")]
#[allow(missing_docs)]
pub struct FromFront {
    pub number: usize,
    /// Back to the top edge of the front face: the batter over the rise.
    pub to_top: String,
    /// Back to the foot of the back face.
    pub to_back: String,
    pub rise: String,
}

impl Retaining {
    pub(super) fn of(plan: &Plan, course: &Course, tables: &Tables) -> Option<Self> {
        let it = plan.retaining.as_ref()?;
        let units = course.units;
        let show = |length| show_length(length, units);
        let front = it.given.side.other();
        let table = &tables.retaining;
        Some(Self {
            bank: it.given.side.word().to_owned(),
            front: front.word().to_owned(),
            highest: show(it.highest),
            from_footing: show(it.from_footing),
            drainage: show_mark(it.drainage, units),
            backfill: show_volume(it.backfill, units),
            backfill_mass: show_mass(it.backfill_mass, units),
            base_share: format!("{:.0} %", it.base_share * 100.0),
            reckoned: reckoned(it, units),
            overturning: format!("{:.2}", it.check.overturning),
            sliding: format!("{:.2}", it.check.sliding),
            limit: format!("{}", table.limits.overturning),
            resultant: resultant(&it.check),
            assumptions: table.assumptions.clone(),
            ask: table.ask.clone(),
            must_ask: it.must_ask,
            from_front: plan
                .frames
                .rows
                .iter()
                .enumerate()
                .map(|(at, row)| {
                    let rise = row.rise(front);
                    let half = plan.section.top_width() / 2.0;
                    FromFront {
                        number: at + 1,
                        to_top: show_mark(row.offset(front) - half, units),
                        to_back: show_mark(row.base_width(), units),
                        rise: show_mark(rise, units),
                    }
                })
                .collect(),
        })
    }
}

fn reckoned(it: &craft::retaining::Retaining, units: Units) -> Vec<(String, String)> {
    let (bank, check) = (&it.bank, &it.check);
    let degrees = |angle: f64| format!("{angle:.0}°");
    let named = |name: &str, figure: String| (name.to_owned(), figure);
    let mut rows = vec![
        named("Height of the bank", show_length(bank.retained, units)),
        named("Fill as it lies", density(bank.fill, units)),
        named("Friction within the fill", degrees(bank.friction_degrees)),
        named(
            "Friction at the back of the wall",
            degrees(bank.wall_friction_degrees),
        ),
        named(
            "Friction under the wall",
            degrees(bank.base_friction_degrees),
        ),
        named("Slope of the bank above", degrees(bank.slope_degrees)),
    ];
    if 0.0 < bank.load_kpa {
        rows.push(named("Load above", format!("{} kN/m²", bank.load_kpa)));
    }
    rows.push(named(
        "Share of the fill's weight that pushes (Ka)",
        format!("{:.3}", check.ka),
    ));
    rows.push(named(
        "Push on each metre of wall",
        format!("{:.1} kN", check.thrust_kn_m()),
    ));
    rows.push(named(
        "Weight of each metre of wall",
        format!("{:.1} kN", check.weight_kn_m),
    ));
    rows
}

fn density(density: craft::quantity::Density, units: Units) -> String {
    use craft::quantity::{FOOT_M, POUND_KG, Read};
    match units {
        Units::Metric => format!("{:.0} kg/m³", density.si()),
        Units::Imperial => format!("{:.0} lb/ft³", density.si() * FOOT_M.powi(3) / POUND_KG),
    }
}

fn resultant(check: &craft::retaining::Check) -> String {
    match check.resultant_share {
        None => "The push lifts the wall off its base.".to_owned(),
        Some(share) if share < 0.0 => {
            "The line of force falls in front of the wall: it tips.".to_owned()
        }
        Some(_) if check.in_middle_third() => {
            "The line of force meets the base in its middle third.".to_owned()
        }
        Some(share) if share < 1.0 / 3.0 => {
            "The line of force meets the base near the front edge, outside its middle third."
                .to_owned()
        }
        Some(_) => "The line of force meets the base near the back.".to_owned(),
    }
}
