//! The stone a wall takes: by kind, as built and as delivered, with its spread.

mod kinds;
mod makeup;
mod old_wall;
mod range;
#[cfg(test)]
mod sampling;
mod throughs;

pub use kinds::Kinds;
pub use makeup::{Makeup, Resting};
pub use range::{Figure, Range};
pub use throughs::ThroughRow;

use crate::Error;
use crate::course::{OnSite, StoneGiven, StoneKind, WallGiven};
use crate::quantity::{
    Density, Length, Mass, Read, Volume, in_tonnes, kilograms, tonnes, whole_number,
};
use crate::tables::StoneTable;
use crate::wall::{Volumes, Wall};
use kinds::There;
use makeup::{FIGURES, Outcome};

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
    /// The uncertain figures all of it rests on.
    pub makeup: Makeup,
    /// In the finished wall, by kind.
    pub by_kind: Kinds,
    /// In the finished wall, with its range.
    pub built_range: Range,
    /// The same, and what it means for the order, kind by kind.
    pub kinds: Vec<KindRange>,
    /// Still to be delivered.
    pub to_deliver: Range,
    /// What an old wall that is stripped out gives, if there is one.
    pub old_wall: Option<Range>,
    /// A practice pitch that stood before: its stone lies there.
    pub practice_pitch: bool,
    /// Whole deliveries for the high figure, if the size of one is known.
    pub loads: Option<usize>,
    /// The throughs, row by row.
    pub throughs: Vec<ThroughRow>,
    /// Stones on top.
    pub copes: usize,
    /// Unsorted stone to pick over: what lies there and what comes.
    pub heap: Mass,
    /// Of an old wall, all that is taken down; it is sorted as it comes.
    pub stripped: Mass,
}

/// One kind of stone with its ranges. The ranges of the kinds do not add up to that of the
/// whole: not all kinds come out high at once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KindRange {
    /// The kind.
    pub kind: StoneKind,
    /// In the finished wall.
    pub built: Range,
    /// Still to be delivered.
    pub to_deliver: Range,
}

impl Stone {
    /// In the finished wall.
    pub fn built(&self) -> Mass {
        kinds::total(&self.by_kind)
    }

    /// In the finished wall, of one kind.
    pub fn kind(&self, kind: StoneKind) -> Mass {
        kinds::one(&self.by_kind, kind)
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
        let makeup = Makeup::of(given, table)?;
        let centre = makeup.centre();
        let throughs = throughs::rows(wall, standing, centre.density);
        let sums = Sums {
            makeup: &makeup,
            volumes,
            throughs: through_volume(&throughs, centre.density),
            given,
        };
        sums.fits(&centre)?;
        let to_deliver = sums.to_deliver();
        let [density, ..] = &makeup.rests_on;
        Ok(Self {
            density: centre.density,
            density_source: density.source.clone(),
            voids: centre.voids,
            waste: centre.waste,
            by_kind: sums.built(&centre),
            built_range: sums.range(|at| kinds::total(&sums.built(at))),
            kinds: StoneKind::ALL.map(|kind| sums.kind(kind)).to_vec(),
            old_wall: sums.old_wall(),
            practice_pitch: given.practice_pitch,
            loads: given.load.map(|load| loads(to_deliver.high, load)),
            heap: heap(to_deliver.mid, given),
            stripped: stripped(given, &centre),
            to_deliver,
            throughs,
            copes: throughs::copes(wall, standing.length()),
            makeup,
        })
    }
}

/// What every sum over the stone of one wall takes.
struct Sums<'a> {
    makeup: &'a Makeup,
    volumes: &'a Volumes,
    /// The solid stone of all throughs.
    throughs: Volume,
    given: &'a StoneGiven,
}

impl Sums<'_> {
    fn built(&self, at: &Outcome) -> Kinds {
        kinds::built(self.volumes, self.throughs * at.density, at)
    }

    fn wanted(&self, at: &Outcome) -> Kinds {
        self.built(at)
            .map(|(kind, mass)| (kind, mass / (1.0 - at.waste)))
    }

    /// The throughs must leave room in the body for other stone.
    fn fits(&self, at: &Outcome) -> Result<(), Error> {
        let body = self.volumes.body * at.density * (1.0 - at.voids);
        let throughs = self.throughs * at.density;
        if body < throughs {
            return Err(Error::TooManyThroughs {
                throughs_t: in_tonnes(throughs),
                body_t: in_tonnes(body),
            });
        }
        Ok(())
    }

    /// The range of a mass that is never cut off.
    fn range(&self, mass: impl Fn(&Outcome) -> Mass) -> Range {
        let at = |z: &[f64; FIGURES]| mass(&self.makeup.at(z));
        Range::of(|z| at(z).si(), at)
    }

    /// Built over (1 - waste) less what is there, never below nothing; nothing at all where
    /// the pitch stood before.
    fn to_deliver(&self) -> Range {
        if self.given.practice_pitch {
            return Range::nothing();
        }
        let short = |at: &Outcome| {
            let there = There::of(self.given, at).total();
            (kinds::total(&self.wanted(at)) - there).si()
        };
        Range::of(
            |z| short(&self.makeup.at(z)),
            |z| {
                let at = self.makeup.at(z);
                There::of(self.given, &at).lacking(&self.wanted(&at))
            },
        )
    }

    fn kind(&self, kind: StoneKind) -> KindRange {
        let lacking = |at: &Outcome| {
            let there = There::of(self.given, at);
            kinds::one(&there.lacking_by_kind(&self.wanted(at)), kind)
        };
        let to_deliver = if self.given.practice_pitch {
            Range::nothing()
        } else {
            let wanted = |at: &Outcome| kinds::one(&self.wanted(at), kind).si();
            Range::of(
                |z| wanted(&self.makeup.at(z)),
                |z| lacking(&self.makeup.at(z)),
            )
        };
        KindRange {
            kind,
            built: self.range(|at| kinds::one(&self.built(at), kind)),
            to_deliver,
        }
    }

    fn old_wall(&self) -> Option<Range> {
        let old = self.given.old_wall.as_ref()?;
        Some(self.range(|at| kinds::total(&old.stone(at))))
    }
}

fn through_volume(rows: &[ThroughRow], density: Density) -> Volume {
    let mass = rows
        .iter()
        .fold(kilograms(0.0), |sum, row| sum + row.mass * row.count as f64);
    mass / density
}

/// What is to be picked over. What is known by kind has been sorted already, and so has a
/// pitch that was taken down.
fn heap(to_come: Mass, given: &StoneGiven) -> Mass {
    if given.practice_pitch {
        return kilograms(0.0);
    }
    match &given.on_site {
        OnSite::Heap(heap) => to_come + *heap,
        OnSite::ByKind(_) => to_come,
    }
}

/// All of an old wall, what can be built in again and what can't.
fn stripped(given: &StoneGiven, centre: &Outcome) -> Mass {
    let old = given.old_wall.as_ref().filter(|_| 0.0 < centre.reused);
    old.map_or(kilograms(0.0), |old| {
        kinds::total(&old.stone(centre)) / centre.reused
    })
}

fn loads(high: Mass, load: Mass) -> usize {
    if high <= kilograms(0.0) {
        return 0;
    }
    whole_number((high.si() / load.si() - 1e-9).ceil())
}

/// The mass of stone in one metre of wall, for comparing with what one is used to.
pub fn per_metre(stone: &Stone, length: Length) -> Mass {
    tonnes(in_tonnes(stone.built()) / length.si())
}
