//! The uncertain figures a tonnage rests on: density, voids, waste and the other shares.

use super::range::Figure;
use crate::Error;
use crate::course::StoneGiven;
use crate::quantity::{Density, Read, kg_per_m3};
use crate::tables::{Rock, Spread, StoneTable};

/// How many uncertain figures there are.
pub(super) const FIGURES: usize = 6;

/// No share is taken to be more than this, or than is given: what is left must be something.
const MOST: f64 = 0.95;

/// One figure of a tonnage with its range and where it comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct Resting {
    /// A fixed word for programs.
    pub id: &'static str,
    /// What a person reads.
    pub name: &'static str,
    /// kg/m3 for the density, else a share.
    pub figure: Figure,
    /// Who says so.
    pub source: String,
}

/// All uncertain figures of a wall's stone.
#[derive(Debug, Clone, PartialEq)]
pub struct Makeup {
    /// Density, voids, hearting share, waste, cope fill, and the share of an old wall's
    /// stone that is used again: in this order.
    pub rests_on: [Resting; FIGURES],
}

/// One way the figures can turn out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Outcome {
    pub(super) density: Density,
    pub(super) voids: f64,
    pub(super) hearting_share: f64,
    pub(super) waste: f64,
    pub(super) cope_fill: f64,
    pub(super) reused: f64,
}

impl Makeup {
    /// The figures of the table, with those of the course as their centres: the spread
    /// round a given centre stays that of the table.
    ///
    /// # Errors
    /// [`Error::UnknownStone`] for a rock not in the table.
    pub(super) fn of(given: &StoneGiven, table: &StoneTable) -> Result<Self, Error> {
        let share = |id, name, given: Option<f64>, spread: &Spread| {
            let centre = given.unwrap_or(spread.centre);
            let most = MOST.max(centre);
            Resting {
                id,
                name,
                figure: Figure {
                    centre,
                    low: (centre - spread.centre + spread.low).clamp(0.0, most),
                    high: (centre - spread.centre + spread.high).clamp(0.0, most),
                },
                source: said(given.is_some(), &spread.source),
            }
        };
        let reused = given.old_wall.as_ref().and_then(|old| old.reused);
        Ok(Self {
            rests_on: [
                density(given, table)?,
                share("voids", "Air in the wall", given.voids, &table.voids),
                share(
                    "hearting",
                    "Hearting in the body",
                    given.hearting_share,
                    &table.hearting_share,
                ),
                share("waste", "Left over or unfit", given.waste, &table.waste),
                share("cope-fill", "Stone in the cope", None, &table.cope_fill),
                share("reused", "Used again of an old wall", reused, &table.reused),
            ],
        })
    }

    /// The figures so many standard deviations from their centres.
    pub(super) fn at(&self, z: &[f64; FIGURES]) -> Outcome {
        let [density, voids, hearting, waste, cope_fill, reused] = &self.rests_on;
        Outcome {
            density: kg_per_m3(density.figure.at(z[0])),
            voids: voids.figure.at(z[1]),
            hearting_share: hearting.figure.at(z[2]),
            waste: waste.figure.at(z[3]),
            cope_fill: cope_fill.figure.at(z[4]),
            reused: reused.figure.at(z[5]),
        }
    }

    /// All figures at their centres.
    pub(super) fn centre(&self) -> Outcome {
        self.at(&[0.0; FIGURES])
    }
}

fn said(given: bool, table: &str) -> String {
    if given {
        format!("given in the course file; the range round it: {table}")
    } else {
        table.to_owned()
    }
}

/// A given density is a centre that keeps the spread of its rock; without a rock, that of
/// the widest rock in the table.
fn density(given: &StoneGiven, table: &StoneTable) -> Result<Resting, Error> {
    let named = given
        .kind
        .as_ref()
        .map(|key| named(key, table))
        .transpose()?;
    let of = |centre: Density, low: f64, high: f64, source: String| Resting {
        id: "density",
        name: "Solid stone",
        figure: Figure {
            centre: centre.si(),
            low: centre.si() * low,
            high: centre.si() * high,
        },
        source,
    };
    let low = |rock: &Rock| rock.low.si() / rock.density.si();
    let high = |rock: &Rock| rock.high.si() / rock.density.si();
    let widest = || {
        let rocks = table.rocks.iter();
        rocks.fold((1.0_f64, 1.0_f64), |(least, most), rock| {
            (least.min(low(rock)), most.max(high(rock)))
        })
    };
    Ok(match (named, given.density) {
        (Some(rock), None) => of(rock.density, low(rock), high(rock), rock.source.clone()),
        (Some(rock), Some(density)) => of(density, low(rock), high(rock), said(true, &rock.source)),
        (None, Some(density)) => {
            let (low, high) = widest();
            of(density, low, high, "given in the course file".to_owned())
        }
        (None, None) => {
            let (low, high) = widest();
            let source = "no stone given: a middling rock, common practice, no source";
            of(kg_per_m3(MIDDLING_KG_M3), low, high, source.to_owned())
        }
    })
}

/// The density of a rock nobody has named.
const MIDDLING_KG_M3: f64 = 2600.0;

fn named<'t>(key: &str, table: &'t StoneTable) -> Result<&'t Rock, Error> {
    let rock = table.rocks.iter().find(|rock| rock.key == key);
    rock.ok_or_else(|| Error::UnknownStone {
        given: key.to_owned(),
        known: table.rocks.iter().map(|rock| rock.key.clone()).collect(),
    })
}
