//! One row of heaps beside the wall: how high its heaps are and what each of them holds.

use super::field::Field;
use super::parts::{Part, half_of_cone, length_for, slope};
use super::shape::where_it_is;
use super::ways::Way;
use super::{Heap, HeapKind};
use crate::quantity::{Read, cubic_metres, kilograms, metres, whole_number};
use crate::tables::{Lie, RowTable};

/// Heights tried for a row, from low to the highest.
const HEIGHTS: u32 = 20;

/// Stones laid side by side take at least so much of a row.
const LEAST_LAID_M: f64 = 0.5;

/// What is to be laid of one kind.
#[derive(Debug, Clone)]
pub(super) struct Amount {
    pub(super) kind: HeapKind,
    pub(super) lie: Lie,
    /// Still to be laid, in m3.
    pub(super) left: f64,
    /// Of the heap, air included, in kg/m3.
    pub(super) bulk: f64,
}

/// One row beside a wall.
pub(super) struct Row<'a> {
    pub(super) field: &'a Field<'a>,
    pub(super) ways: &'a [Way],
    pub(super) table: &'a RowTable,
    /// Counted from the wall, the first being 1.
    pub(super) number: usize,
    /// Where it begins on each side and how far out it may reach; nothing where none may be.
    pub(super) sides: [Option<(f64, f64)>; 2],
}

impl Row<'_> {
    /// Lays as much of the amounts as the row holds: as low as it can be and still hold all;
    /// where no height holds all, what the height that holds most does.
    pub(super) fn fill(&self, amounts: &mut [Amount]) -> Vec<Heap> {
        let Some((height, parts)) = self.best(amounts) else {
            return Vec::new();
        };
        let mut heaps = Vec::new();
        for (of, amount) in amounts.iter_mut().enumerate() {
            let own: Vec<Part> = parts.iter().filter(|part| part.of == of).copied().collect();
            heaps.extend(self.lay(amount, &own, height));
        }
        heaps
    }

    /// The height and the parts that serve best. Where two kinds share the row, the second in
    /// fewer heaps leaves the first more of its length.
    fn best(&self, amounts: &[Amount]) -> Option<(f64, Vec<Part>)> {
        let mut best: Option<(f64, Vec<Part>)> = None;
        let mut most = 0.0;
        let two = 1 < amounts.len();
        for sparse in [false, true].into_iter().take(1 + usize::from(two)) {
            for height in self.heights(amounts) {
                let parts = self.parts(amounts, height, sparse);
                let (held, all) = holds(amounts, &parts, height);
                if most < held {
                    most = held;
                    best = Some((height, parts));
                }
                if all {
                    return best;
                }
            }
        }
        best
    }

    /// From low to as high as any of the kinds may lie.
    fn heights(&self, amounts: &[Amount]) -> impl Iterator<Item = f64> + use<> {
        let most = amounts.iter().map(|amount| match amount.lie {
            Lie::Heaped { height, .. } | Lie::Laid { height, .. } => height.si(),
        });
        let most = most.fold(0.0, f64::max);
        let low = self.table.low.si().min(most);
        (0..=HEIGHTS).map(move |at| low + (most - low) * f64::from(at) / f64::from(HEIGHTS))
    }

    /// Shares what is left of an amount between its parts, each by the room it has.
    fn lay(&self, amount: &mut Amount, parts: &[Part], height: f64) -> Vec<Heap> {
        let room = |part: &Part| room(part, amount.lie, height);
        let placed = amount.left.min(parts.iter().map(room).sum());
        let used = few_enough(parts, placed, self.least(amount.lie), room);
        let of_used: f64 = used.iter().map(room).sum();
        if placed <= 0.0 || of_used <= 0.0 {
            return Vec::new();
        }
        let heaps = used
            .iter()
            .map(|part| (part, room(part) / of_used * placed))
            .filter(|(_, volume)| 0.0 < *volume)
            .map(|(part, volume)| self.heap(part, amount, volume, height))
            .collect();
        amount.left -= placed;
        heaps
    }

    /// What is worth a heap of its own, in m3; of stones laid side by side one or two are.
    fn least(&self, lie: Lie) -> f64 {
        match lie {
            Lie::Heaped { .. } => self.table.least.si(),
            Lie::Laid { width, height } => (width * height).si() * LEAST_LAID_M,
        }
    }

    fn heap(&self, part: &Part, amount: &Amount, volume: f64, height: f64) -> Heap {
        let (half, high, long) = match amount.lie {
            Lie::Heaped { .. } => self.ridge(part, amount.lie, volume, height),
            Lie::Laid { width, height } => {
                let long = volume / (width * height).si();
                (width.si() / 2.0, height.si(), long)
            }
        };
        let whole = (part.from, part.to);
        let middle = part.near + half;
        let (from, to) = self.field.about_the_middle(part.side, whole, middle, long);
        Heap {
            kind: amount.kind,
            side: part.side,
            row: self.number,
            from: metres(from),
            to: metres(to),
            near: metres(part.near),
            far: metres(part.near + 2.0 * half),
            height: metres(high),
            length: metres(long),
            laid: matches!(amount.lie, Lie::Laid { .. }),
            volume: cubic_metres(volume),
            mass: kilograms(volume * amount.bulk),
        }
    }

    /// Half the width, the height and the length of a ridge that holds so much: as long as its
    /// part, or shorter where it would lie lower than is worth it.
    fn ridge(&self, part: &Part, lie: Lie, volume: f64, height: f64) -> (f64, f64, f64) {
        let tan = slope(lie);
        let most = part.reach(lie, height);
        let half = where_it_is(volume, 0.0, most, |half| part.ridge(half, tan));
        let low = part.reach(lie, self.table.low.si()).min(most);
        if low <= half {
            return (half, half * tan, part.path(half));
        }
        // As low as it may be and shorter, or a cone.
        let half = low.min(half_of_cone(volume, tan));
        (half, half * tan, length_for(volume, half, tan))
    }
}

/// What the parts hold of the amounts, and whether that is all.
fn holds(amounts: &[Amount], parts: &[Part], height: f64) -> (f64, bool) {
    let (mut held, mut all) = (0.0, true);
    for (of, amount) in amounts.iter().enumerate() {
        let own = parts.iter().filter(|part| part.of == of);
        let room: f64 = own.map(|part| room(part, amount.lie, height)).sum();
        held += room.min(amount.left);
        all &= amount.left <= room;
    }
    (held, all)
}

/// What a part holds at most, in m3.
fn room(part: &Part, lie: Lie, height: f64) -> f64 {
    match lie {
        Lie::Heaped { .. } => part.ridge(part.reach(lie, height), slope(lie)),
        Lie::Laid { width, height } => (width * height).si() * part.path(width.si() / 2.0).max(0.0),
    }
}

/// As many parts, evenly chosen, as make heaps worth having, if they hold it all.
fn few_enough(parts: &[Part], volume: f64, least: f64, room: impl Fn(&Part) -> f64) -> Vec<Part> {
    let count = parts.len();
    let worth = whole_number(volume / least.max(1e-9)).max(1);
    if count <= worth {
        return parts.to_vec();
    }
    let chosen: Vec<Part> = (0..worth)
        .filter_map(|at| parts.get((2 * at + 1) * count / (2 * worth)))
        .copied()
        .collect();
    let held: f64 = chosen.iter().map(room).sum();
    if volume <= held {
        chosen
    } else {
        parts.to_vec()
    }
}
