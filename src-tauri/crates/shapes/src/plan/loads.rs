//! What travels in which vehicle, as JSON.

use craft::quantity::Read;
use serde::Serialize;

/// Everything that travels, run by run.
#[derive(Debug, Clone, Serialize)]
pub struct Loads {
    /// In order; what is needed first goes on the first.
    pub runs: Vec<Run>,
    /// Heavier, piece by piece, than anything may carry.
    pub fits_nowhere: Vec<LoadLine>,
    /// Fewer runs can't be.
    pub fewest_runs: usize,
}

/// One run of all vehicles.
#[derive(Debug, Clone, Serialize)]
pub struct Run {
    /// Vehicles and trailers in the order given.
    pub holds: Vec<LoadedHold>,
}

/// A vehicle or trailer as it is loaded.
#[derive(Debug, Clone, Serialize)]
pub struct LoadedHold {
    /// What it is called.
    pub name: String,
    /// What it may carry beside its people.
    pub limit_kg: f64,
    /// What it carries.
    pub mass_kg: f64,
    /// In loading order: what is needed first goes in last.
    pub lines: Vec<LoadLine>,
}

/// Some pieces of one kind in one place.
#[derive(Debug, Clone, Serialize)]
pub struct LoadLine {
    /// What it is.
    pub item: String,
    /// How many.
    pub count: usize,
    /// All of them.
    pub mass_kg: f64,
}

impl Loads {
    pub(super) fn of(loads: &craft::loads::Loads) -> Self {
        Self {
            runs: loads.runs.iter().map(Run::of).collect(),
            fits_nowhere: loads.fits_nowhere.iter().map(LoadLine::of).collect(),
            fewest_runs: loads.fewest,
        }
    }
}

impl Run {
    fn of(run: &craft::loads::Run) -> Self {
        let hold = |hold: &craft::loads::Loaded| LoadedHold {
            name: hold.name.clone(),
            limit_kg: hold.limit.si(),
            mass_kg: hold.mass().si(),
            lines: hold.lines.iter().map(LoadLine::of).collect(),
        };
        Self {
            holds: run.holds.iter().map(hold).collect(),
        }
    }
}

impl LoadLine {
    fn of(line: &craft::loads::Line) -> Self {
        Self {
            item: line.name.clone(),
            count: line.count,
            mass_kg: line.mass().si(),
        }
    }
}
