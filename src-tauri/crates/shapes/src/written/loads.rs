//! What travels in which vehicle, in written figures.

use super::kit::counted;
use craft::kit::KitLine;
use craft::loads::{Line, Loaded};
use craft::quantity::{Units, show_mass, show_share};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// Everything that travels, run by run.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLoads")]
pub struct Loads {
    /// In order; what is needed first goes on the first.
    pub runs: Vec<Run>,
    /// What is too heavy for any vehicle, in words; empty for nothing.
    pub fits_nowhere: String,
    /// The same, line by line.
    pub too_heavy: Vec<LoadLine>,
    /// How many runs, and whether fewer could be, as a sentence.
    pub told: String,
    /// What the driver minds.
    pub notes: Vec<String>,
}

/// One run of all vehicles.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenRun")]
#[allow(missing_docs)]
pub struct Run {
    pub number: usize,
    pub holds: Vec<Hold>,
}

/// A vehicle or trailer as it is loaded.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenHold")]
pub struct Hold {
    /// What it is called.
    pub name: String,
    /// What it carries.
    pub mass: String,
    /// What it may carry beside its people.
    pub limit: String,
    /// The one as a share of the other.
    pub share: String,
    /// In loading order: what is needed first goes in last.
    pub lines: Vec<LoadLine>,
}

/// Some pieces of one kind in one place.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLoadLine")]
#[allow(missing_docs)]
pub struct LoadLine {
    pub item: String,
    pub count: usize,
    /// `8`, `3 pairs`.
    pub carried: String,
    pub mass: String,
}

impl Loads {
    pub(super) fn of(
        loads: &craft::loads::Loads,
        kit: &[KitLine],
        tables: &Tables,
        units: Units,
    ) -> Self {
        let line = |it: &Line| LoadLine::of(it, kit, units);
        let hold = |it: &Loaded| Hold::of(it, line, units);
        let too_heavy: Vec<String> = loads
            .fits_nowhere
            .iter()
            .map(|line| format!("{} ({} each)", line.name, show_mass(line.each, units)))
            .collect();
        let notes = tables.ready.loading.notes.iter();
        Self {
            runs: loads
                .runs
                .iter()
                .enumerate()
                .map(|(at, run)| Run {
                    number: at + 1,
                    holds: run.holds.iter().map(hold).collect(),
                })
                .collect(),
            fits_nowhere: crate::clock::list(&too_heavy),
            too_heavy: loads.fits_nowhere.iter().map(line).collect(),
            told: told(loads),
            notes: notes.map(|note| note.text.clone()).collect(),
        }
    }
}

fn told(loads: &craft::loads::Loads) -> String {
    match loads.runs.len() {
        0 => "Nothing to carry.".to_owned(),
        1 => "All of it goes in one run.".to_owned(),
        runs if runs == loads.fewest => {
            format!("It takes {runs} runs; the limits leave no way with fewer.")
        }
        runs => format!("It takes {runs} runs."),
    }
}

impl Hold {
    fn of(hold: &Loaded, line: impl Fn(&Line) -> LoadLine, units: Units) -> Self {
        Self {
            name: hold.name.clone(),
            mass: show_mass(hold.mass(), units),
            limit: show_mass(hold.limit, units),
            share: show_share(hold.share()),
            lines: hold.lines.iter().map(line).collect(),
        }
    }
}

impl LoadLine {
    fn of(line: &Line, kit: &[KitLine], units: Units) -> Self {
        let unit = kit.iter().find(|it| it.item == line.name);
        Self {
            item: line.name.clone(),
            count: line.count,
            carried: counted(line.count, unit.map_or("", |it| &it.unit)),
            mass: show_mass(line.mass(), units),
        }
    }
}
