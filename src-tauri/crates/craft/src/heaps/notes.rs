//! What has to be said about where the stone lies.

use super::place::Layout;
use super::{Heap, HeapKind, HeapsAsked, Waiting};
use crate::course::End;
use crate::quantity::{Length, Mass, Read, Units, kilograms, metres, show_length, show_mass};
use crate::tables::HeapTable;
use crate::wall::{Across, Side};

/// Ground that falls across the wall by more than one in so many puts one side above it.
const STEEP: f64 = 10.0;
/// A shorter stretch without heaps is not worth a word.
const LEAST_M: f64 = 1.0;

/// Something that has to be said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Note {
    /// Within a bend so tight that heaps would meet nothing stands.
    TightBend {
        /// The inside of the bend.
        side: Side,
        /// The other side is open, and has what belongs there.
        other_side: bool,
        /// Station.
        from: Length,
        /// Station.
        to: Length,
    },
    /// There is no room within reach for all.
    Waits {
        /// Of what.
        kind: HeapKind,
        /// How much.
        mass: Mass,
    },
    /// For want of room beside the wall, rows run on past its ends.
    PastTheEnds {
        /// Past station 0.
        start: Length,
        /// Past the far end.
        finish: Length,
        /// Standing wall is built up against there.
        standing: bool,
    },
    /// Standing wall at both ends: nobody walks round from one side to the other.
    NoWayRound,
    /// What lies within a ring has to be there before it closes.
    WithinTheRing,
    /// The ground falls across the wall, so that stone on one side lies above the trench.
    AboveTheWall {
        /// The higher side.
        side: Side,
    },
    /// Nobody said how large a load is.
    LoadTaken {
        /// What was taken.
        load: Mass,
    },
}

impl Note {
    /// The note in a sentence or two.
    pub fn words(&self, units: Units) -> String {
        match *self {
            Self::TightBend {
                side,
                other_side,
                from,
                to,
            } => format!(
                "No heaps on the {} from {} to {}: inside the bend they would meet. What belongs \
                 there lies {}.",
                side.word(),
                show_length(from, units),
                show_length(to, units),
                if other_side {
                    "on the other side"
                } else {
                    "farther along"
                }
            ),
            Self::Waits { kind, mass } => format!(
                "There is no room within reach of the wall for {} of {}: leave that where it is \
                 tipped and bring it as heaps are used up.",
                show_mass(mass, units),
                what(kind)
            ),
            Self::PastTheEnds {
                start,
                finish,
                standing,
            } => past_the_ends([start, finish], standing, units),
            Self::NoWayRound => "The wall is joined at both ends, so barrows can't go round it: \
                 have each side's share tipped on its own side, or lay boards across the trench \
                 before the footing goes in."
                .to_owned(),
            Self::WithinTheRing => "Carry in what lies within the ring before the wall is too \
                 high to reach over, or build one stretch last."
                .to_owned(),
            Self::AboveTheWall { side } => format!(
                "The ground falls across the wall: stone on the {} lies above the trench and the \
                 people in it. Lay it flat, chock the lowest stones, and keep round stones on \
                 the {}.",
                side.word(),
                side.other().word()
            ),
            Self::LoadTaken { load } => format!(
                "The tip has room for a load of {}: say how large a load is if yours differ.",
                show_mass(load, units)
            ),
        }
    }
}

/// `face stone`, `copes`: what a sentence calls it.
fn what(kind: HeapKind) -> String {
    use crate::course::StoneKind::{Face, Footing};
    match kind {
        HeapKind::Stone(Footing | Face) => format!("{} stone", kind.word()),
        other => other.word().to_owned(),
    }
}

fn past_the_ends(past: [Length; 2], standing: bool, units: Units) -> String {
    let beside = if standing {
        ", beside the standing wall: ask whose ground that is"
    } else {
        ""
    };
    let [start, finish] = past.map(|length| show_length(length, units));
    let [at_start, at_finish] = past.map(|length| metres(0.0) < length);
    let far = match (at_start, at_finish) {
        (true, true) if start == finish => format!("{start} past either end"),
        (true, true) => format!("{start} past station 0 and {finish} past the far end"),
        (true, false) => format!("{start} past station 0"),
        _ => format!("{finish} past the far end"),
    };
    format!("For want of room beside the wall, heaps stand up to {far}{beside}.")
}

/// Everything there is to say, what changes the layout first.
pub(super) fn notes(
    asked: &HeapsAsked<'_>,
    layout: &Layout<'_>,
    heaps: &[Heap],
    waiting: &[Waiting],
    table: &HeapTable,
) -> Vec<Note> {
    let mut notes: Vec<Note> = waiting
        .iter()
        .map(|it| Note::Waits {
            kind: it.kind,
            mass: it.mass,
        })
        .collect();
    notes.extend(tight_bends(layout, table));
    notes.extend(past_an_end(asked, layout, heaps));
    let both_joined = asked.ends.iter().all(|end| *end == End::Joined);
    if !layout.field.ring && both_joined && asked.bank.is_none() {
        notes.push(Note::NoWayRound);
    }
    notes.extend(within_the_ring(layout, heaps));
    notes.extend(above_the_wall(asked));
    if asked.load.is_none() {
        let stone = asked.stone.iter();
        let all = stone.fold(kilograms(0.0), |sum, (_, mass)| {
            sum + super::sound_mass(*mass)
        });
        if table.tip.load < all {
            notes.push(Note::LoadTaken {
                load: table.tip.load,
            });
        }
    }
    notes
}

/// Stretches beside which not even the lowest heap has room.
fn tight_bends(layout: &Layout<'_>, table: &HeapTable) -> Vec<Note> {
    let (rows, field) = (&table.rows, &layout.field);
    let mut notes = Vec::new();
    for strip in &layout.strips {
        let far = (strip.near + rows.low * 2.0 + rows.foot_room / 2.0).si();
        let open = field.open(strip.side, field.from, field.to, far);
        let mut from = field.from;
        let ends = [(field.to, field.to)];
        for (begins, ends) in open.into_iter().chain(ends) {
            if LEAST_M <= begins - from {
                notes.push(Note::TightBend {
                    side: strip.side,
                    other_side: 1 < layout.strips.len(),
                    from: metres(from.max(0.0)),
                    to: metres(begins.min(field.length())),
                });
            }
            from = ends;
        }
    }
    notes
}

fn past_an_end(asked: &HeapsAsked<'_>, layout: &Layout<'_>, heaps: &[Heap]) -> Option<Note> {
    let least = heaps.iter().map(|heap| heap.from.si()).reduce(f64::min)?;
    let most = heaps.iter().map(|heap| heap.to.si()).reduce(f64::max)?;
    let start = (-least).max(0.0);
    let finish = (most - layout.field.length()).max(0.0);
    // A few centimetres more or less are no matter.
    let worth = |past: f64| metres(if past < 0.05 { 0.0 } else { past });
    let [start, finish] = [start, finish].map(worth);
    let past = [metres(0.0) < start, metres(0.0) < finish];
    let standing = past
        .iter()
        .zip(asked.ends)
        .any(|(past, end)| *past && end == End::Joined);
    past.contains(&true).then_some(Note::PastTheEnds {
        start,
        finish,
        standing,
    })
}

fn within_the_ring(layout: &Layout<'_>, heaps: &[Heap]) -> Option<Note> {
    if !layout.field.ring {
        return None;
    }
    let turned = layout.field.turned(Side::Left, 0.0, layout.field.length());
    let inside = if 0.0 < turned {
        Side::Left
    } else {
        Side::Right
    };
    let any = heaps.iter().any(|heap| heap.side == inside);
    any.then_some(Note::WithinTheRing)
}

/// Where the surveyed faces differ most, the higher side, if that is steep.
fn above_the_wall(asked: &HeapsAsked<'_>) -> Option<Note> {
    if asked.bank.is_some() {
        return None;
    }
    let wall = asked.wall;
    let falls = wall.ground.surveyed().iter().map(|survey| {
        let level = |side| wall.ground.level(Across::Face(side), survey.station);
        (level(Side::Left) - level(Side::Right)).si()
    });
    let most = falls.reduce(|most, it| if most.abs() < it.abs() { it } else { most })?;
    if most.abs() * STEEP <= wall.section.base_width().si() {
        return None;
    }
    let side = if 0.0 < most { Side::Left } else { Side::Right };
    Some(Note::AboveTheWall { side })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::StoneKind;
    use crate::quantity::tonnes;

    #[test]
    fn notes_read_as_a_person_says_them() {
        let past = |start, finish, standing| Note::PastTheEnds {
            start: metres(start),
            finish: metres(finish),
            standing,
        };
        for (note, begins) in [
            (
                Note::TightBend {
                    side: Side::Left,
                    other_side: true,
                    from: metres(4.0),
                    to: metres(7.0),
                },
                "No heaps on the left from 4.00 m to 7.00 m: inside the bend they would meet. \
                 What belongs there lies on the other side.",
            ),
            (
                Note::Waits {
                    kind: HeapKind::Stone(StoneKind::Face),
                    mass: tonnes(2.5),
                },
                "There is no room within reach of the wall for 2.5 t of face stone: leave that",
            ),
            (
                past(1.5, 1.5, false),
                "For want of room beside the wall, heaps stand up to 1.50 m past either end.",
            ),
            (
                past(0.0, 2.0, true),
                "For want of room beside the wall, heaps stand up to 2.00 m past the far end, beside the \
                 standing wall: ask whose ground that is.",
            ),
            (Note::NoWayRound, "The wall is joined at both ends"),
            (Note::WithinTheRing, "Carry in what lies within the ring"),
            (
                Note::AboveTheWall { side: Side::Right },
                "The ground falls across the wall: stone on the right lies above the trench",
            ),
            (
                Note::LoadTaken { load: tonnes(10.0) },
                "The tip has room for a load of 10.0 t",
            ),
        ] {
            let words = note.words(Units::Metric);
            assert!(words.starts_with(begins), "{words}");
            assert!(words.ends_with('.') && !words.contains("  "), "{words}");
        }
    }
}
