//! What can be taken hold of in the drawings, with the keys of the open course it sets.

mod days;

pub(crate) use days::shown as of_days;

use crate::history::Values;
use documents::{Axis, Handle, Moves};
use shapes::window::{self, HandleStop};

/// A drawing's handles as the window takes hold of them.
pub(crate) fn shown(handles: &[Handle], values: &Values) -> Vec<window::Handle> {
    handles.iter().map(|it| one(it, values)).collect()
}

fn one(handle: &Handle, values: &Values) -> window::Handle {
    let (id, key, name) = named(handle.moves, values);
    let stop = |it: &documents::Stop| HandleStop {
        typed: it.typed.clone(),
        words: it.words.clone(),
        place: hundredths(it.place_mm),
    };
    let place = |it: documents::Point| (hundredths(it.x), hundredths(it.y));
    window::Handle {
        id,
        key,
        name,
        across: handle.axis == Axis::Across,
        at: place(handle.at),
        fixed: place(handle.fixed),
        mm_per_m: handle.mm_per_m,
        stops: handle.stops.iter().map(stop).collect(),
        now: handle.now,
    }
}

/// What tells a handle from others, the key it sets, and what it is called.
///
/// A file may give one batter for both faces, and levels at the centre line alone: then that is
/// what moves.
fn named(moves: Moves, values: &Values) -> (String, String, String) {
    match moves {
        Moves::Height => (
            "height".to_owned(),
            "wall.height".to_owned(),
            "Height of the wall".to_owned(),
        ),
        Moves::Face(side) => {
            let side = side.word();
            let own = format!("wall.batter.{side}");
            let id = format!("face-{side}");
            if values.contains_key(&own) {
                (id, own, format!("Batter of the {side} face, at its foot"))
            } else {
                let name = format!("Batter of both faces, at the {side} foot");
                (id, "wall.batter".to_owned(), name)
            }
        }
        Moves::Ground(at, side) => {
            let row = format!("wall.ground.{at}");
            let station = values.get(&format!("{row}.station"));
            let station = station.map_or("", String::as_str);
            let own = format!("{row}.{}", side.word());
            let id = format!("ground-{at}");
            if values.contains_key(&own) {
                let name = format!("Ground at {station}, {} face", side.word());
                (id, own, name)
            } else {
                (id, format!("{row}.level"), format!("Ground at {station}"))
            }
        }
    }
}

/// To a hundredth of a millimetre, which nobody sees.
fn hundredths(mm: f64) -> f64 {
    (mm * 100.0).round() / 100.0
}
