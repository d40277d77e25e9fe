//! Stone in written figures.

use craft::course::{Course, StoneKind};
use craft::plan::Plan;
use craft::quantity::{Read, Units, kilograms, show_length, show_mass, show_share};
use craft::stone::Range;
use serde::Serialize;
use ts_rs::TS;

/// The stone.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenStone")]
#[allow(missing_docs)]
pub struct Stone {
    /// The rock's word in the course file; empty if none is given.
    pub rock: String,
    pub built: String,
    /// `1.3 t to the metre`; `1100 lb to the foot`.
    pub per_length: String,
    pub low: String,
    pub mid: String,
    pub high: String,
    /// The order as a sentence; nothing to order is said too.
    pub order: String,
    /// Whole loads for the high figure; null if a load's size is not given.
    pub loads: Option<usize>,
    pub load: String,
    pub kinds: Vec<Kind>,
    pub throughs: Vec<ThroughRow>,
    pub through_count: usize,
    pub copes: usize,
    /// Along the wall.
    pub cope_thickness: String,
    /// Of one cope; empty if there is none.
    pub cope_mass: String,
    pub density: String,
    pub density_source: String,
    pub voids: String,
    pub waste: String,
    /// What lies there, as a sentence.
    pub on_site: String,
    /// What an old wall gives, as a sentence; empty if there is none.
    pub old_wall: String,
    /// `12.1 t to 14.9 t`.
    pub built_range: String,
    /// The figures all of it rests on, with their sources.
    pub rests_on: Vec<RestsOn>,
    /// What sort of throughs are counted, as a sentence; empty for none.
    pub through_reach: String,
}

/// One kind of stone in the finished wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKind")]
#[allow(missing_docs)]
pub struct Kind {
    pub kind: String,
    pub built: String,
    /// `2.1 t to 2.9 t`: four in five are within.
    pub built_range: String,
    /// With what is left over or unusable.
    pub wanted: String,
    /// High, less what is there; empty for nothing.
    pub order: String,
    /// Nothing of this kind is built in.
    pub none: bool,
}

/// A figure that the tonnage rests on.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenRestsOn")]
pub struct RestsOn {
    /// A fixed word for programs.
    pub id: String,
    /// What it is.
    pub what: String,
    /// Its centre.
    pub figure: String,
    /// `20 % to 35 %`: four in five are within.
    pub range: String,
    /// Who says so.
    pub source: String,
}

/// One row of throughs.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenThroughRow")]
#[allow(missing_docs)]
pub struct ThroughRow {
    pub height: String,
    pub length: String,
    pub count: usize,
    pub mass: String,
}

impl Stone {
    pub(super) fn of(plan: &Plan, course: &Course) -> Self {
        let units = course.units;
        let show = |mass| show_mass(mass, units);
        let stone = &plan.stone;
        let range = stone.to_deliver;
        Self {
            rock: course.stone.kind.clone().unwrap_or_default(),
            built: show(stone.built()),
            per_length: per_length(plan, units),
            low: show(range.low),
            mid: show(range.mid),
            high: show(range.high),
            order: order(plan, units),
            loads: stone.loads,
            load: course.stone.load.map(show).unwrap_or_default(),
            kinds: StoneKind::ALL
                .iter()
                .map(|kind| Kind::of(*kind, stone, units))
                .collect(),
            throughs: stone
                .throughs
                .iter()
                .map(|row| ThroughRow {
                    height: show_length(row.height, units),
                    length: show_length(row.length, units),
                    count: row.count,
                    mass: show(row.mass),
                })
                .collect(),
            through_count: stone.through_count(),
            copes: stone.copes,
            cope_thickness: show_length(course.wall.cope_thickness, units),
            cope_mass: cope_mass(plan, units),
            density: density(stone.density.si(), units),
            density_source: stone.density_source.clone(),
            voids: show_share(stone.voids),
            waste: show_share(stone.waste),
            on_site: on_site(course),
            old_wall: stone
                .old_wall
                .map(|range| {
                    format!(
                        "{} of an old wall, likely {}",
                        spread(range, units),
                        show(range.mid)
                    )
                })
                .unwrap_or_default(),
            built_range: spread(stone.built_range, units),
            rests_on: rests_on(stone, units),
            through_reach: through_reach(plan, course),
        }
    }
}

/// `2.1 t to 2.9 t`.
fn spread(range: Range, units: Units) -> String {
    format!(
        "{} to {}",
        show_mass(range.low, units),
        show_mass(range.high, units)
    )
}

fn rests_on(stone: &craft::stone::Stone, units: Units) -> Vec<RestsOn> {
    let is_used = |it: &&craft::stone::Resting| match it.id {
        "reused" => stone.old_wall.is_some(),
        "cope-fill" => 0 < stone.copes,
        _ => true,
    };
    let figures = stone.makeup.rests_on.iter().filter(is_used);
    figures
        .map(|it| {
            let show = |figure: f64| match it.id {
                "density" => density(figure, units),
                _ => show_share(figure),
            };
            RestsOn {
                id: it.id.to_owned(),
                what: it.name.to_owned(),
                figure: show(it.figure.centre),
                range: format!("{} to {}", show(it.figure.low), show(it.figure.high)),
                source: it.source.clone(),
            }
        })
        .collect()
}

fn through_reach(plan: &Plan, course: &Course) -> String {
    use craft::course::ThroughReach;
    if plan.stone.throughs.is_empty() {
        return String::new();
    }
    match course.wall.through_reach {
        ThroughReach::Across => "They cross the wall from face to face.".to_owned(),
        ThroughReach::ThreeQuarters => {
            "Three-quarter throughs: three quarters of the width, from one face and the other in turn."
                .to_owned()
        }
    }
}

/// The lifting guide weighs this wall's own stones; a cope is one of them.
fn cope_mass(plan: &Plan, units: Units) -> String {
    let stones = &plan.lifting.stones;
    let cope = stones.iter().find(|it| it.name == "cope");
    cope.map(|it| show_mass(it.mass, units)).unwrap_or_default()
}

fn order(plan: &Plan, units: Units) -> String {
    let range = plan.stone.to_deliver;
    if plan.stone.practice_pitch {
        return "Nothing to order: the pitch stood before, and its stone lies there.".to_owned();
    }
    if range.high <= kilograms(0.0) {
        return "Nothing to order: what lies there is enough.".to_owned();
    }
    let loads = match plan.stone.loads {
        Some(1) => ", 1 load".to_owned(),
        Some(loads) => format!(", {loads} loads"),
        None => String::new(),
    };
    format!("Order {}{loads}.", show_mass(range.high, units))
}

fn per_length(plan: &Plan, units: Units) -> String {
    use craft::quantity::FOOT_M;
    let per_metre = craft::stone::per_metre(&plan.stone, plan.sizing.length);
    match units {
        Units::Metric => format!("{} to the metre", show_mass(per_metre, units)),
        Units::Imperial => format!("{} to the foot", show_mass(per_metre * FOOT_M, units)),
    }
}

/// `2500 kg/m³`; `156 lb/ft³`.
fn density(kg_per_m3: f64, units: Units) -> String {
    use craft::quantity::{FOOT_M, POUND_KG};
    match units {
        Units::Metric => format!("{kg_per_m3:.0} kg/m³"),
        Units::Imperial => format!("{:.0} lb/ft³", kg_per_m3 / POUND_KG * FOOT_M.powi(3)),
    }
}

fn on_site(course: &Course) -> String {
    use craft::course::OnSite;
    let show = |mass| show_mass(mass, course.units);
    match &course.stone.on_site {
        OnSite::Heap(mass) if mass.si() <= 0.0 => "nothing".to_owned(),
        OnSite::Heap(mass) => format!("{}, unsorted", show(*mass)),
        OnSite::ByKind(kinds) => {
            let words: Vec<String> = kinds
                .iter()
                .map(|(kind, mass)| format!("{} of {}", show(*mass), kind.word()))
                .collect();
            crate::clock::list(&words)
        }
    }
}

impl Kind {
    fn of(kind: StoneKind, stone: &craft::stone::Stone, units: Units) -> Self {
        let built = stone.kind(kind);
        let range = stone.kinds.iter().find(|it| it.kind == kind);
        let order = range.map(|it| it.to_deliver.high);
        Self {
            kind: kind.word().to_owned(),
            built: show_mass(built, units),
            built_range: range.map(|it| spread(it.built, units)).unwrap_or_default(),
            wanted: show_mass(stone.wanted(built), units),
            order: order
                .filter(|high| kilograms(0.0) < *high)
                .map(|high| show_mass(high, units))
                .unwrap_or_default(),
            none: built <= kilograms(0.0),
        }
    }
}
