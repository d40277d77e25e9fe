//! The stone a wall takes: by kind, as built and as delivered, with its spread.

use crate::Error;
use crate::course::{OnSite, StoneGiven, StoneKind, WallGiven};
use crate::quantity::{
    Density, Length, Mass, Read, in_tonnes, kg_per_m3, kilograms, steps_to_cover, tonnes,
    whole_number,
};
use crate::tables::StoneTable;
use crate::wall::{Volumes, Wall};

/// The 90th percentile of the standard normal distribution (any statistical table).
const Z90: f64 = 1.281_551_565_544_600_4;

/// All the stone of one wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Stone {
    /// Of the solid stone.
    pub density: Density,
    /// Where the density comes from.
    pub density_source: String,
    /// Share of the wall that is air.
    pub voids: f64,
    /// Share of what is delivered that is not built in.
    pub waste: f64,
    /// In the finished wall, by kind.
    pub by_kind: [(StoneKind, Mass); 5],
    /// Standard deviation of the log of what is delivered.
    pub log_spread: f64,
    /// Still to be delivered.
    pub to_deliver: Range,
    /// Whole deliveries for the high figure, if the size of one is known.
    pub loads: Option<usize>,
    /// The throughs, row by row.
    pub throughs: Vec<ThroughRow>,
    /// Stones on top.
    pub copes: usize,
    /// Unsorted stone to pick over: what lies there and what comes.
    pub heap: Mass,
}

/// Low, likely, high: the 10th, 50th and 90th percentile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// One in ten is below.
    pub low: Mass,
    /// As likely above as below.
    pub mid: Mass,
    /// One in ten is above.
    pub high: Mass,
}

/// One row of throughs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThroughRow {
    /// Above the ground.
    pub height: Length,
    /// Of one through.
    pub length: Length,
    /// How many.
    pub count: usize,
    /// Of one through.
    pub mass: Mass,
}

impl Stone {
    /// In the finished wall.
    pub fn built(&self) -> Mass {
        self.by_kind
            .iter()
            .fold(kilograms(0.0), |sum, (_, mass)| sum + *mass)
    }

    /// In the finished wall, of one kind.
    pub fn kind(&self, kind: StoneKind) -> Mass {
        self.by_kind
            .iter()
            .find(|(which, _)| *which == kind)
            .map_or(kilograms(0.0), |(_, mass)| *mass)
    }

    /// What must be at hand for so much in the wall: `built / (1 - waste)`.
    pub fn wanted(&self, built: Mass) -> Mass {
        built / (1.0 - self.waste)
    }

    /// How many throughs there are in all rows.
    pub fn through_count(&self) -> usize {
        self.throughs.iter().map(|row| row.count).sum()
    }

    /// The stone of a wall as it stands.
    ///
    /// Built: (body + footing) · density · (1 - voids), and the cope at its own fill;
    /// throughs by count and size, the rest of the body shared between face and hearting.
    ///
    /// # Errors
    /// [`Error::UnknownStone`] for a rock not in the table; [`Error::TooManyThroughs`] if
    /// the throughs outweigh the body.
    pub fn of(
        wall: &WallGiven,
        standing: &Wall,
        volumes: &Volumes,
        given: &StoneGiven,
        table: &StoneTable,
    ) -> Result<Self, Error> {
        let rock = Rock::of(given, table)?;
        let voids = given.voids.unwrap_or(table.voids.centre);
        let waste = given.waste.unwrap_or(table.waste.centre);
        let hearting_share = given.hearting_share.unwrap_or(table.hearting_share.centre);
        let solid = 1.0 - voids;
        let throughs = through_rows(wall, standing, rock.density);
        let throughs_mass = throughs
            .iter()
            .fold(kilograms(0.0), |sum, row| sum + row.mass * row.count as f64);
        let body = volumes.body * rock.density * solid;
        let rest = body - throughs_mass;
        if rest < kilograms(0.0) {
            return Err(Error::TooManyThroughs {
                throughs_t: in_tonnes(throughs_mass),
                body_t: in_tonnes(body),
            });
        }
        let by_kind = [
            (StoneKind::Footing, volumes.footing * rock.density * solid),
            (StoneKind::Face, rest * (1.0 - hearting_share)),
            (StoneKind::Hearting, rest * hearting_share),
            (StoneKind::Throughs, throughs_mass),
            (
                StoneKind::Copes,
                volumes.cope * rock.density * table.cope_fill.centre,
            ),
        ];
        let log_spread = log_spread(&rock, voids, waste, table);
        let to_deliver = Range::at(log_spread, |factor| deliver(&by_kind, waste, factor, given));
        Ok(Self {
            density: rock.density,
            density_source: rock.source,
            voids,
            waste,
            by_kind,
            log_spread,
            loads: given.load.map(|load| loads(to_deliver.high, load)),
            heap: heap(to_deliver.mid, given),
            to_deliver,
            throughs,
            copes: copes(wall, standing.length()),
        })
    }
}

impl Range {
    fn at(log_spread: f64, mass: impl Fn(f64) -> Mass) -> Self {
        Self {
            low: mass((-Z90 * log_spread).exp()),
            mid: mass(1.0),
            high: mass((Z90 * log_spread).exp()),
        }
    }
}

/// The density in use, its spread and its source.
struct Rock {
    density: Density,
    log_spread: f64,
    source: String,
}

impl Rock {
    /// A given density is a centre that keeps the spread of its rock; without a rock, that
    /// of the widest rock in the table.
    fn of(given: &StoneGiven, table: &StoneTable) -> Result<Self, Error> {
        let spread =
            |rock: &crate::tables::Rock| (rock.high.si() / rock.low.si()).ln() / (2.0 * Z90);
        let named = match &given.kind {
            Some(key) => Some(
                table
                    .rocks
                    .iter()
                    .find(|rock| rock.key == *key)
                    .ok_or_else(|| Error::UnknownStone {
                        given: key.clone(),
                        known: table.rocks.iter().map(|rock| rock.key.clone()).collect(),
                    })?,
            ),
            None => None,
        };
        let widest = || table.rocks.iter().map(spread).fold(0.0, f64::max);
        match (named, given.density) {
            (Some(rock), None) => Ok(Self {
                density: rock.density,
                log_spread: spread(rock),
                source: rock.source.clone(),
            }),
            (rock, Some(density)) => Ok(Self {
                density,
                log_spread: rock.map_or_else(widest, spread),
                source: "given in the course file".to_owned(),
            }),
            (None, None) => Ok(Self {
                density: kg_per_m3(2600.0),
                log_spread: widest(),
                source: "no stone given: a middling rock, common practice, no source".to_owned(),
            }),
        }
    }
}

/// The spread of `density · (1 - voids) / (1 - waste)`: the parts differ independently, so
/// the variances of their logarithms add up (first order: an error of x in the voids moves
/// the log by x / (1 - voids)).
fn log_spread(rock: &Rock, voids: f64, waste: f64, table: &StoneTable) -> f64 {
    let share = |low: f64, high: f64, at: f64| (high - low) / (2.0 * Z90) / (1.0 - at).max(0.05);
    let voids = share(table.voids.low, table.voids.high, voids);
    let waste = share(table.waste.low, table.waste.high, waste);
    (rock.log_spread.powi(2) + voids.powi(2) + waste.powi(2)).sqrt()
}

/// What must still come when the wall takes `factor` times the likely stone: built over
/// (1 - waste) less what is on site, kind by kind where that is known, never below nothing.
fn deliver(by_kind: &[(StoneKind, Mass); 5], waste: f64, factor: f64, given: &StoneGiven) -> Mass {
    let wanted = |mass: Mass| mass * factor / (1.0 - waste);
    let over = |mass: Mass| {
        if mass < kilograms(0.0) {
            kilograms(0.0)
        } else {
            mass
        }
    };
    match &given.on_site {
        OnSite::Heap(there) => over(
            by_kind
                .iter()
                .fold(kilograms(0.0), |sum, (_, mass)| sum + wanted(*mass))
                - *there,
        ),
        OnSite::ByKind(there) => by_kind.iter().fold(kilograms(0.0), |sum, (kind, mass)| {
            let here = there
                .iter()
                .filter(|(which, _)| which == kind)
                .fold(kilograms(0.0), |sum, (_, mass)| sum + *mass);
            sum + over(wanted(*mass) - here)
        }),
    }
}

fn heap(to_come: Mass, given: &StoneGiven) -> Mass {
    match &given.on_site {
        OnSite::Heap(there) => to_come + *there,
        // What is known by kind has been sorted already.
        OnSite::ByKind(_) => to_come,
    }
}

fn loads(high: Mass, load: Mass) -> usize {
    if high <= kilograms(0.0) {
        return 0;
    }
    whole_number((high.si() / load.si() - 1e-9).ceil())
}

/// Count: length / spacing to the nearest whole number, at least 1. Length of one: the
/// wall's width at the row and the projection on both faces.
fn through_rows(wall: &WallGiven, standing: &Wall, density: Density) -> Vec<ThroughRow> {
    let (size, length) = (wall.through, standing.length());
    wall.through_rows
        .iter()
        .map(|&height| {
            let long = standing.section.width_at(height) + size.projection * 2.0;
            ThroughRow {
                height,
                length: long,
                count: in_a_row(length, wall.through_spacing),
                mass: long * size.width * size.thickness * density,
            }
        })
        .collect()
}

/// The nearest whole number of spacings; half a spacing more makes one more through, whatever
/// the last binary digit says.
fn in_a_row(length: Length, spacing: Length) -> usize {
    whole_number((length.si() / spacing.si() + 1e-9).round()).max(1)
}

fn copes(wall: &WallGiven, length: Length) -> usize {
    if wall.cope_height.si() <= 0.0 {
        return 0;
    }
    steps_to_cover(length, wall.cope_thickness)
}

/// The mass of stone in one metre of wall, for comparing with what one is used to.
pub fn per_metre(stone: &Stone, length: Length) -> Mass {
    tonnes(in_tonnes(stone.built()) / length.si())
}
