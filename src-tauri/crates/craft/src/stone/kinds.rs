//! Stone by kind: what a wall holds, what must be at hand, what must still come.

use super::makeup::Outcome;
use crate::course::{OnSite, StoneGiven, StoneKind};
use crate::quantity::{Mass, kilograms};
use crate::wall::Volumes;

/// A mass of every kind, in the order they are laid.
pub type Kinds = [(StoneKind, Mass); 5];

/// The mass of each kind.
pub(super) fn sorted(mass: impl Fn(StoneKind) -> Mass) -> Kinds {
    StoneKind::ALL.map(|kind| (kind, mass(kind)))
}

/// All kinds together.
pub(super) fn total(kinds: &Kinds) -> Mass {
    kinds
        .iter()
        .fold(kilograms(0.0), |sum, (_, mass)| sum + *mass)
}

/// The mass of one kind.
pub(super) fn one(kinds: &Kinds, kind: StoneKind) -> Mass {
    kinds
        .iter()
        .find(|(which, _)| *which == kind)
        .map_or(kilograms(0.0), |(_, mass)| *mass)
}

/// Built: (body + footing) · density · (1 - voids), and the cope at its own fill; throughs by
/// count and size, the rest of the body shared between face and hearting.
pub(super) fn built(volumes: &Volumes, throughs: Mass, at: &Outcome) -> Kinds {
    let solid = at.density * (1.0 - at.voids);
    let rest = over(volumes.body * solid - throughs);
    sorted(|kind| match kind {
        StoneKind::Footing => volumes.footing * solid,
        StoneKind::Face => rest * (1.0 - at.hearting_share),
        StoneKind::Hearting => rest * at.hearting_share,
        StoneKind::Throughs => throughs,
        StoneKind::Copes => volumes.cope * at.density * at.cope_fill,
    })
}

/// What lies there already, or will once an old wall is down.
pub(super) struct There {
    /// Known by kind; else one heap, of whatever it is.
    sorted: bool,
    kinds: Kinds,
}

impl There {
    pub(super) fn of(given: &StoneGiven, at: &Outcome) -> Self {
        let old = given.old_wall.as_ref().map(|old| old.stone(at));
        let old = |kind| old.as_ref().map_or(kilograms(0.0), |old| one(old, kind));
        match &given.on_site {
            OnSite::Heap(heap) => Self {
                // An old wall alone is known by its measurements: one without a cope has none.
                sorted: given.old_wall.is_some() && *heap <= kilograms(0.0),
                // A heap is counted with the first kind: only the sum of all is ever used.
                kinds: sorted(|kind| match kind {
                    StoneKind::Footing => *heap + old(kind),
                    _ => old(kind),
                }),
            },
            OnSite::ByKind(there) => Self {
                sorted: true,
                kinds: sorted(|kind| {
                    let here = there.iter().filter(|(which, _)| *which == kind);
                    here.fold(old(kind), |sum, (_, mass)| sum + *mass)
                }),
            },
        }
    }

    /// All of it.
    pub(super) fn total(&self) -> Mass {
        total(&self.kinds)
    }

    /// What must still come: what must be at hand less what is there, kind by kind where
    /// that is known, never below nothing.
    pub(super) fn lacking(&self, wanted: &Kinds) -> Mass {
        if self.sorted {
            return total(&self.lacking_by_kind(wanted));
        }
        over(total(wanted) - self.total())
    }

    /// The same of each kind. Of an unsorted heap every kind is taken to hold its share.
    pub(super) fn lacking_by_kind(&self, wanted: &Kinds) -> Kinds {
        if self.sorted {
            return sorted(|kind| over(one(wanted, kind) - one(&self.kinds, kind)));
        }
        let all = total(wanted);
        if all <= kilograms(0.0) {
            return *wanted;
        }
        let lacking = self.lacking(wanted);
        sorted(|kind| one(wanted, kind) * (lacking / all).get::<uom::si::ratio::ratio>())
    }
}

/// Never less than nothing.
pub(super) fn over(mass: Mass) -> Mass {
    if mass < kilograms(0.0) {
        kilograms(0.0)
    } else {
        mass
    }
}
