//! Cautions that follow from the stone of this plan.

use super::{COMMON, Shown};
use crate::course::{Course, OnSite, ThroughReach};
use crate::quantity::{kilograms, show_mass};
use crate::stone::Stone;

/// What to mind about the stone.
pub fn of_the_stone(course: &Course, stone: &Stone) -> Vec<Shown> {
    let texts = [
        uncounted_heap(course, stone),
        pitch_again(stone),
        three_quarter_throughs(course, stone),
        more_than_can_be_had(course, stone),
    ];
    texts
        .into_iter()
        .flatten()
        .map(|(id, text)| Shown {
            id: id.to_owned(),
            text,
            source: COMMON.to_owned(),
            for_students: false,
        })
        .collect()
}

fn uncounted_heap(course: &Course, stone: &Stone) -> Option<(&'static str, String)> {
    let heap = match &course.stone.on_site {
        OnSite::Heap(heap) => *heap,
        OnSite::ByKind(_) => kilograms(0.0),
    };
    let old = stone.old_wall.map_or(kilograms(0.0), |old| old.mid);
    let there = heap + old;
    if stone.practice_pitch || there <= kilograms(0.0) {
        return None;
    }
    let is_counted = matches!(course.stone.on_site, OnSite::ByKind(_));
    let text = if is_counted {
        "Throughs of the old wall count as face stone until it is down, and its copes may be gone: count both before you order less.".to_owned()
    } else {
        format!(
            "Count {} in the {} that lie there before you order less: of this the stone runs short first, and a heap of face stone replaces none of it.",
            short_first(stone),
            show_mass(there, course.units)
        )
    };
    Some(("count-by-kind", text))
}

fn pitch_again(stone: &Stone) -> Option<(&'static str, String)> {
    let text = format!(
        "Look over {} of the pitch before the course: each time it is taken down some stone breaks, and hearting sinks into the ground.",
        short_first(stone)
    );
    stone.practice_pitch.then_some(("pitch-again", text))
}

/// What runs short first, of the kinds this wall has.
fn short_first(stone: &Stone) -> &'static str {
    match (0 < stone.copes, !stone.throughs.is_empty()) {
        (true, true) => "the copes, throughs and hearting",
        (true, false) => "the copes and hearting",
        (false, true) => "the throughs and hearting",
        (false, false) => "the hearting",
    }
}

fn three_quarter_throughs(course: &Course, stone: &Stone) -> Option<(&'static str, String)> {
    let shorter = course.wall.through_reach == ThroughReach::ThreeQuarters;
    let text = "Three-quarter throughs tie only if they come from one face and the other in turn, each with hearting packed tight behind its tail.";
    (shorter && !stone.throughs.is_empty()).then(|| ("three-quarter-throughs", text.to_owned()))
}

/// A given length is not sized to what can be had, so that it must be said.
fn more_than_can_be_had(course: &Course, stone: &Stone) -> Option<(&'static str, String)> {
    let most = course
        .stone
        .most
        .filter(|most| *most < stone.to_deliver.high)?;
    let show = |mass| show_mass(mass, course.units);
    Some((
        "stone-most",
        format!(
            "No more than {} of stone can be had, and this wall may take {}: shorten it, lower it, or find more.",
            show(most),
            show(stone.to_deliver.high)
        ),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::StoneKind;
    use crate::quantity::{Units, tonnes};
    use crate::wall::{Ground, Line, Top, Volumes, Wall};
    use crate::worksheet::sample;

    fn ids(change: impl Fn(&mut Course)) -> Vec<String> {
        let mut course = sample::course(Units::Metric, 1);
        change(&mut course);
        let standing = Wall {
            section: course.wall.section().expect("a section"),
            line: Line::of_length(&[], crate::quantity::metres(6.0)),
            ground: Ground::new(Vec::new()),
            top: Top::Level,
        };
        let volumes = Volumes::of(&standing, None, course.wall.cope_height);
        let table = sample::tables().stone;
        let stone = Stone::of(&course.wall, &standing, &volumes, &course.stone, &table);
        of_the_stone(&course, &stone.expect("stone"))
            .into_iter()
            .map(|it| it.id)
            .collect()
    }

    #[test]
    fn each_is_said_where_it_holds_and_only_there() {
        assert_eq!(ids(|_| {}), [""; 0]);
        assert_eq!(
            ids(|course| course.stone.on_site = OnSite::Heap(tonnes(2.0))),
            ["count-by-kind"]
        );
        let face = vec![(StoneKind::Face, tonnes(2.0))];
        assert_eq!(
            ids(|course| course.stone.on_site = OnSite::ByKind(face.clone())),
            [""; 0]
        );
        assert_eq!(
            ids(|course| course.stone.practice_pitch = true),
            ["pitch-again"]
        );
        assert_eq!(
            ids(|course| course.wall.through_reach = ThroughReach::ThreeQuarters),
            ["three-quarter-throughs"]
        );
    }
}
