//! The heap plan in words.

use crate::above::heap_key::{lots, off_the_face};
use crate::above::heap_view::reached;
use crate::above::line_words::{is_straight, line};
use crate::paper::scale::Scale;
use crate::paper::words::{self, list, shown};
use craft::course::Course;
use craft::heaps::{ClearedBy, Heap, HeapKind, Heaps, TipAt};
use craft::plan::Plan;
use craft::quantity::{INCH_M, Length, Read, Units, metres, show_mass, show_volume};
use craft::wall::Side;

/// The plan with its real figures, for people who can't see it.
pub(crate) fn description(plan: &Plan, course: &Course, heaps: &Heaps, scale: Scale) -> String {
    let mut said = vec![format!(
        "Ground plan at 1:{} in both directions, seen from above, with the heaps of stone beside \
         the wall; left and right as seen looking along the wall from station 0.",
        scale.n()
    )];
    said.push(format!("The centre line: {}.", line(plan, course)));
    let ends = plan.ends.iter().zip(["At station 0", "At the far end"]);
    said.extend(ends.map(|(end, at)| format!("{at}: {}.", words::end(end.kind))));
    if heaps.heaps.is_empty() {
        said.push("There is nothing to lay out.".to_owned());
        return said.join(" ");
    }
    said.extend(clear(course, heaps));
    for side in Side::BOTH {
        said.extend(rows(course, heaps, side));
    }
    said.extend(ways(course, heaps));
    said.extend(tips(course, heaps));
    let [along, across] = heaps.ground.map(|it| rough(course, it));
    said.push(format!(
        "{}, with its clear strips.",
        taken(plan, &along, &across)
    ));
    said.extend(heaps.notes.iter().map(|note| note.words(course.units)));
    said.join(" ")
}

/// The ground it all takes, in a few words.
pub(crate) fn taken(plan: &Plan, along: &str, across: &str) -> String {
    if is_straight(plan) {
        format!("It all takes {along} along the wall and {across} across it")
    } else {
        format!("It all takes {along} along the first direction and {across} across it")
    }
}

/// A measurement as heaps are marked out: to the centimetre, or to the inch.
pub(crate) fn rough(course: &Course, length: Length) -> String {
    let step = match course.units {
        Units::Metric => 0.01,
        Units::Imperial => INCH_M,
    };
    shown(course, metres((length.si() / step).round() * step))
}

/// The same for a station, whose nothing has no unit.
fn station(course: &Course, at: Length) -> String {
    if at.si().abs() < 0.005 {
        "0".to_owned()
    } else {
        rough(course, at)
    }
}

fn clear(course: &Course, heaps: &Heaps) -> Vec<String> {
    let strips = heaps.strips.iter().map(|strip| {
        let why = match strip.by {
            ClearedBy::Working => "to work in",
            ClearedBy::Trench => "because of the trench",
        };
        format!(
            "On the {} {} from the face stay clear, {why}.",
            strip.side.word(),
            rough(course, strip.near - strip.face)
        )
    });
    strips.collect()
}

/// Kind by kind from the wall outwards.
fn rows(course: &Course, heaps: &Heaps, side: Side) -> Option<String> {
    let (from, to) = reached(heaps, side)?;
    let kinds: Vec<String> = heaps
        .kinds()
        .into_iter()
        .filter_map(|kind| of_kind(course, heaps, side, kind))
        .collect();
    Some(format!(
        "On the {}, from station {} to {}, outwards: {}.",
        side.word(),
        station(course, from),
        station(course, to),
        kinds.join("; ")
    ))
}

fn of_kind(course: &Course, heaps: &Heaps, side: Side, kind: HeapKind) -> Option<String> {
    let own = |heap: &&Heap| heap.kind == kind && heap.side == side;
    let own: Vec<Heap> = heaps.heaps.iter().filter(own).copied().collect();
    let first = own.first()?;
    let mass = own
        .iter()
        .skip(1)
        .fold(first.mass, |sum, heap| sum + heap.mass);
    let volume = own
        .iter()
        .skip(1)
        .fold(first.volume, |sum, heap| sum + heap.volume);
    let mut offs: Vec<Length> = own
        .iter()
        .filter_map(|heap| off_the_face(heaps, heap))
        .collect();
    offs.sort_by(|a, b| a.si().total_cmp(&b.si()));
    let mut offs: Vec<String> = offs.into_iter().map(|off| rough(course, off)).collect();
    offs.dedup();
    Some(format!(
        "{} {}, {} loose, in {}, {} from the face",
        kind.word(),
        show_mass(mass, course.units),
        show_volume(volume, course.units),
        lots(&own, course),
        list(&offs)
    ))
}

fn ways(course: &Course, heaps: &Heaps) -> Option<String> {
    let width = heaps.ways.first()?.width;
    let stations = heaps.ways.iter().map(|way| station(course, way.station));
    Some(format!(
        "Barrow ways {} wide run through the rows at station {}.",
        rough(course, width),
        list(&stations.collect::<Vec<_>>())
    ))
}

fn tips(course: &Course, heaps: &Heaps) -> Vec<String> {
    let tips = heaps.tips.iter().map(|tip| {
        let at = match tip.at {
            TipAt::Start => "beyond station 0".to_owned(),
            TipAt::Finish => "beyond the far end".to_owned(),
            TipAt::Beside(side) => format!("beyond the rows on the {}", side.word()),
        };
        format!(
            "The lorry may tip {at}: a load of {} lies {} across there.",
            show_mass(tip.load, course.units),
            rough(course, tip.radius * 2.0)
        )
    });
    let run = heaps.longest_run.map(|run| {
        let run = rough(course, run);
        format!("The longest way with a barrow is {run}.")
    });
    tips.chain(run).collect()
}
