//! Where a lorry might tip unsorted stone, how far barrows go from there, and the ground it
//! all takes.

use super::outline::run;
use super::place::Layout;
use super::shape::{cone, frustum, where_it_is};
use super::{Heap, HeapsAsked, loose_volume, sound_mass};
use crate::course::{End, StoneKind};
use crate::quantity::{Length, Mass, Read, Volume, kilograms, metres};
use crate::tables::{HeapTable, Lie};
use crate::wall::{Across, Place, Side};
use std::f64::consts::PI;

/// The tip is tried so much farther off, so often, until it is clear of everything.
const FARTHER_M: f64 = 0.5;
const TRIES: u32 = 60;

/// Where a lorry might tip a load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tip {
    /// In which direction it lies from the wall.
    pub at: TipAt,
    /// Its middle on the ground.
    pub place: Place,
    /// Of the load as it lies: a cone, or flat-topped where that would be too high.
    pub radius: Length,
    /// One load.
    pub load: Mass,
}

/// In which direction a tip lies from the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TipAt {
    /// Beyond station 0.
    Start,
    /// Beyond the far end.
    Finish,
    /// Beyond the rows on one side, which it serves alone where both ends are joined.
    Beside(Side),
}

/// Tips for what has to be sorted. Beyond the end whose ground is higher, so that barrows run
/// downhill, station 0 if they are level, but not where the wall is joined; beside a ring its
/// outside; where both ends are joined, one beyond the rows of each side.
pub(super) fn tips(
    asked: &HeapsAsked<'_>,
    layout: &Layout<'_>,
    heaps: &[Heap],
    outlines: &[Vec<Place>],
    table: &HeapTable,
) -> Vec<Tip> {
    let (load, volume) = one_load(asked, table);
    let radius = radius(volume, table);
    let obstacles = obstacles(layout, outlines);
    // Room to sort round the load, and for a barrow to pass between it and the wall.
    let clear = radius + table.clear.strip + table.clear.way;
    wanted(asked, layout)
        .into_iter()
        .map(|at| Tip {
            at,
            place: free_place(layout, at, heaps, clear.si(), &obstacles),
            radius,
            load,
        })
        .collect()
}

/// One load, and the room it takes as it lies: of face stone, for that is most of it.
fn one_load(asked: &HeapsAsked<'_>, table: &HeapTable) -> (Mass, Volume) {
    let stone = asked.stone.iter();
    let all = stone.fold(kilograms(0.0), |sum, (_, mass)| sum + sound_mass(*mass));
    let given = asked
        .load
        .map(sound_mass)
        .filter(|load| kilograms(0.0) < *load);
    let load = given.unwrap_or(table.tip.load);
    let load = if all < load { all } else { load };
    let voids = table.stone(StoneKind::Face).loose_voids;
    (load, loose_volume(load, asked.density, voids))
}

/// A cone at the slope of face stone, or the frustum as high as a tipped load lies.
fn radius(volume: Volume, table: &HeapTable) -> Length {
    let tan = match table.stone(StoneKind::Face).lie {
        Lie::Heaped { repose_degrees, .. } => repose_degrees.to_radians().tan(),
        Lie::Laid { .. } => 1.0,
    };
    let wanted = volume.si();
    if !wanted.is_finite() || wanted <= 0.0 {
        return metres(0.0);
    }
    let high = table.tip.height;
    let pointed = high / tan;
    if volume <= cone(pointed, high) {
        return metres((3.0 * wanted / (PI * tan)).cbrt());
    }
    let most = pointed.si() + (wanted / (PI * high.si())).sqrt();
    let of = |base: f64| frustum(metres(base), metres(base) - pointed, high).si();
    metres(where_it_is(wanted, pointed.si(), most, of))
}

fn wanted(asked: &HeapsAsked<'_>, layout: &Layout<'_>) -> Vec<TipAt> {
    if layout.field.ring {
        let left_turn = 0.0 < layout.field.place(layout.field.length()).heading;
        let outside = if left_turn { Side::Right } else { Side::Left };
        return vec![TipAt::Beside(outside)];
    }
    let ground = |station| asked.wall.ground.level(Across::Centre, station);
    let higher_at_finish = ground(metres(0.0)) < ground(asked.wall.length());
    match asked.ends.map(|end| end == End::Joined) {
        [true, true] => {
            let sides = layout.strips.iter().map(|strip| strip.side);
            sides.map(TipAt::Beside).collect()
        }
        [true, false] => vec![TipAt::Finish],
        [false, false] if higher_at_finish => vec![TipAt::Finish],
        [false, _] => vec![TipAt::Start],
    }
}

/// The first place in a direction that is clear of the wall and of every heap; if the line
/// winds so that there is none, one beyond all of it.
fn free_place(
    layout: &Layout<'_>,
    at: TipAt,
    heaps: &[Heap],
    clear: f64,
    obstacles: &[Vec<Place>],
) -> Place {
    let field = &layout.field;
    // A bank leaves one side alone to drive and walk on.
    let aside = match layout.strips.as_slice() {
        [only] => Some((only.side, only.face.si() + clear)),
        _ => None,
    };
    let place = |farther: f64| {
        let off = clear + farther;
        match at {
            TipAt::Start | TipAt::Finish => {
                let station = if at == TipAt::Start {
                    field.from - off
                } else {
                    field.to + off
                };
                match aside {
                    Some((side, offset)) => field.beside(side, station, offset),
                    None => field.place(station),
                }
            }
            TipAt::Beside(side) => {
                let middle = if field.ring {
                    0.0
                } else {
                    field.length() / 2.0
                };
                let edge = layout.reaches(side, heaps).unwrap_or_default();
                field.beside(side, middle, edge + off)
            }
        }
    };
    let is_clear = |place: &Place| {
        obstacles
            .iter()
            .all(|outline| clear <= distance(outline, place) + 1e-9)
    };
    (0..TRIES)
        .map(|step| place(f64::from(step) * FARTHER_M))
        .find(is_clear)
        .unwrap_or_else(|| beyond_all(obstacles, clear))
}

fn beyond_all(obstacles: &[Vec<Place>], clear: f64) -> Place {
    let [x, y] = bounds(obstacles.iter().flatten()).unwrap_or([(0.0, 0.0); 2]);
    Place {
        x_m: x.1 + clear,
        y_m: (y.0 + y.1) / 2.0,
        heading: 0.0,
    }
}

/// The wall, with its trench, and every heap.
fn obstacles(layout: &Layout<'_>, outlines: &[Vec<Place>]) -> Vec<Vec<Place>> {
    let wall = round_the_wall(layout, layout.edges);
    [wall].into_iter().chain(outlines.iter().cloned()).collect()
}

/// Offsets left and right, all along the wall and back.
fn round_the_wall(layout: &Layout<'_>, [left, right]: [f64; 2]) -> Vec<Place> {
    let length = layout.field.length();
    let edge = |side, from, to, offset: f64| {
        run(layout.line, from, to).map(move |station| layout.field.beside(side, station, offset))
    };
    edge(Side::Left, 0.0, length, left)
        .chain(edge(Side::Right, length, 0.0, right))
        .collect()
}

/// From a place to the nearest point of a closed outline; nothing within it.
fn distance(outline: &[Place], place: &Place) -> f64 {
    let mut within = false;
    let mut least = f64::INFINITY;
    let last = outline.last().into_iter();
    for (from, to) in last.chain(outline).zip(outline) {
        let (x, y) = (place.x_m - from.x_m, place.y_m - from.y_m);
        let (dx, dy) = (to.x_m - from.x_m, to.y_m - from.y_m);
        let square = dx * dx + dy * dy;
        let share = if square <= 0.0 {
            0.0
        } else {
            ((x * dx + y * dy) / square).clamp(0.0, 1.0)
        };
        least = least.min((x - share * dx).hypot(y - share * dy));
        let across = (from.y_m <= place.y_m) != (to.y_m <= place.y_m);
        if across && x < dx * (y / dy) {
            within = !within;
        }
    }
    if within { 0.0 } else { least }
}

fn bounds<'p>(places: impl Iterator<Item = &'p Place>) -> Option<[(f64, f64); 2]> {
    let mut found: Option<[(f64, f64); 2]> = None;
    for place in places {
        let [x, y] = found.unwrap_or([(place.x_m, place.x_m), (place.y_m, place.y_m)]);
        found = Some([
            (x.0.min(place.x_m), x.1.max(place.x_m)),
            (y.0.min(place.y_m), y.1.max(place.y_m)),
        ]);
    }
    found
}

/// The longest way from the nearest tip to the near edge of a heap: past the wall's end and
/// along the wall, or along the rows from a tip beside them.
pub(super) fn longest_run(layout: &Layout<'_>, heaps: &[Heap], tips: &[Tip]) -> Option<Length> {
    let of_heap = |heap: &Heap| {
        let runs = tips.iter().filter_map(|tip| run_to(layout, tip, heap));
        runs.reduce(f64::min)
    };
    heaps
        .iter()
        .filter_map(of_heap)
        .reduce(f64::max)
        .map(metres)
}

fn run_to(layout: &Layout<'_>, tip: &Tip, heap: &Heap) -> Option<f64> {
    let field = &layout.field;
    let station = ((heap.from + heap.to) / 2.0).si();
    let apart = |place: Place| (place.x_m - tip.place.x_m).hypot(place.y_m - tip.place.y_m);
    match tip.at {
        TipAt::Start => Some(apart(field.place(0.0)) + station.abs() + heap.near.si()),
        TipAt::Finish => {
            let end = field.length();
            Some(apart(field.place(end)) + (end - station).abs() + heap.near.si())
        }
        TipAt::Beside(side) => {
            if side != heap.side && !field.ring {
                return None;
            }
            let begins = if field.ring {
                0.0
            } else {
                field.length() / 2.0
            };
            let along = field.apart(station, begins);
            let offset = apart(field.place(begins));
            let out = if side == heap.side {
                (offset - heap.near.si()).abs()
            } else {
                offset + heap.near.si()
            };
            Some(along + out)
        }
    }
}

/// The ground taken along the first direction and across it: wall, clear strips and heaps.
pub(super) fn ground(layout: &Layout<'_>, outlines: &[Vec<Place>]) -> [Length; 2] {
    let mut clear = layout.edges;
    for strip in &layout.strips {
        clear[usize::from(strip.side == Side::Right)] = strip.near.si();
    }
    let wall = round_the_wall(layout, clear);
    bounds(wall.iter().chain(outlines.iter().flatten())).map_or([metres(0.0); 2], |both| {
        both.map(|(least, most)| metres(most - least))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place(x_m: f64, y_m: f64) -> Place {
        Place {
            x_m,
            y_m,
            heading: 0.0,
        }
    }

    /// By hand: from (3, 1) to the square of side 2 at the origin it is 1; from its middle
    /// nothing.
    #[test]
    fn a_place_within_an_outline_is_no_distance_off() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)];
        let square: Vec<Place> = square.iter().map(|(x, y)| place(*x, *y)).collect();
        assert!((distance(&square, &place(3.0, 1.0)) - 1.0).abs() < 1e-12);
        assert!((distance(&square, &place(5.0, 6.0)) - 5.0).abs() < 1e-12);
        assert!(distance(&square, &place(1.0, 1.0)).abs() < 1e-12);
    }
}
