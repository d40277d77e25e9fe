//! Stone and tools in written figures.

use craft::course::{Course, StoneKind};
use craft::kit::{KitLine as Line, total_mass};
use craft::plan::Plan;
use craft::quantity::{Read, Units, kilograms, show_length, show_mass, show_share};
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
    pub density: String,
    pub density_source: String,
    pub voids: String,
    pub waste: String,
    /// What lies there, as a sentence.
    pub on_site: String,
}

/// One kind of stone in the finished wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKind")]
#[allow(missing_docs)]
pub struct Kind {
    pub kind: String,
    pub built: String,
    /// With what is left over or unusable.
    pub wanted: String,
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

/// The tools.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKit")]
pub struct Kit {
    /// One line a tool.
    pub lines: Vec<KitLine>,
    /// All that are needed.
    pub mass: String,
    /// How many lines are short.
    pub short: usize,
}

/// One line of the tool list.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKitLine")]
#[allow(missing_docs)]
pub struct KitLine {
    pub item: String,
    /// `8`, `3 pairs`.
    pub need: String,
    /// Empty if nobody has counted.
    pub have: String,
    /// Empty if nobody has counted or none is missing.
    pub short: String,
    pub why: String,
    pub mass: String,
    pub place: String,
    pub safety_critical: bool,
    pub consumable: bool,
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
            density: density(stone.density.si(), units),
            density_source: stone.density_source.clone(),
            voids: show_share(stone.voids),
            waste: show_share(stone.waste),
            on_site: on_site(course),
        }
    }
}

fn order(plan: &Plan, units: Units) -> String {
    let range = plan.stone.to_deliver;
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
        Self {
            kind: kind.word().to_owned(),
            built: show_mass(built, units),
            wanted: show_mass(stone.wanted(built), units),
        }
    }
}

impl Kit {
    pub(super) fn of(lines: &[Line], units: Units) -> Self {
        Self {
            mass: show_mass(total_mass(lines), units),
            short: lines
                .iter()
                .filter(|line| line.short.is_some_and(|short| 0 < short))
                .count(),
            lines: lines.iter().map(|line| KitLine::of(line, units)).collect(),
        }
    }
}

impl KitLine {
    fn of(line: &Line, units: Units) -> Self {
        let counted = |count: usize| match line.unit.as_str() {
            "" => count.to_string(),
            unit if count == 1 || unit.len() <= 2 => format!("{count} {unit}"),
            unit => format!("{count} {unit}s"),
        };
        Self {
            item: line.item.clone(),
            need: counted(line.need),
            have: line.have.map(counted).unwrap_or_default(),
            short: line
                .short
                .filter(|short| 0 < *short)
                .map(counted)
                .unwrap_or_default(),
            why: line.why.clone(),
            mass: show_mass(line.mass, units),
            place: line.place.clone(),
            safety_critical: line.safety_critical,
            consumable: line.consumable,
        }
    }
}
