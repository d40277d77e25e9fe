//! Drawings in words, for people who can't see them: the same figures, in sentences.

use crate::turns::{comes_from, lowest};
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::{Length, Read, show_count, show_mark};
use craft::wall::{Batter, Side};

/// Lengths as this course writes them.
pub(crate) fn shown(course: &Course, length: Length) -> String {
    show_mark(length, course.units)
}

/// `1 in 6`, `1 in 6.5`, `plumb`.
pub(crate) fn batter(batter: Batter) -> String {
    batter.n().map_or_else(
        || "plumb".to_owned(),
        |n| format!("1 in {}", (n * 100.0).round() / 100.0),
    )
}

/// `0.55 m`, `0.40 m and 0.80 m`, `a, b and c`.
pub(crate) fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [some @ .., last] => format!("{} and {last}", some.join(", ")),
    }
}

/// Height, widths and batters.
pub(crate) fn body(plan: &Plan, course: &Course) -> String {
    let section = &plan.section;
    let [left, right] = [Side::Left, Side::Right].map(|side| batter(section.batter(side)));
    let faces = if left == right {
        format!("both faces {}", leaning(&left))
    } else {
        format!(
            "the left face {}, the right face {}",
            leaning(&left),
            leaning(&right)
        )
    };
    format!(
        "The wall is {} wide at the ground and {} wide under the cope, {} high from the ground \
         to the underside of the cope; {faces}.",
        shown(course, section.base_width()),
        shown(course, section.top_width()),
        shown(course, section.height()),
    )
}

fn leaning(batter: &str) -> String {
    if batter == "plumb" {
        batter.to_owned()
    } else {
        format!("battered {batter}")
    }
}

/// The cope, or that there is none.
pub(crate) fn cope(plan: &Plan, course: &Course) -> String {
    if course.wall.cope_height.si() <= 0.0 {
        return "There is no cope.".to_owned();
    }
    format!(
        "The cope is {} high: {}, each {} thick along the wall.",
        shown(course, course.wall.cope_height),
        show_count(plan.stone.copes, "stone", "stones"),
        shown(course, course.wall.cope_thickness),
    )
}

/// The trench, or that there is none.
pub(crate) fn footing(plan: &Plan, course: &Course) -> String {
    course.wall.footing.map_or_else(
        || "There is no footing: the wall stands on the ground.".to_owned(),
        |footing| {
            let width = plan.section.base_width() + footing.outset * 2.0;
            format!(
                "The footing lies in a trench {} deep and {} wide, {} beyond each face.",
                shown(course, footing.depth),
                shown(course, width),
                shown(course, footing.outset),
            )
        },
    )
}

/// Every row of throughs with its count, or that there are none.
pub(crate) fn throughs(plan: &Plan, course: &Course) -> String {
    if plan.stone.throughs.is_empty() {
        return "There are no throughs.".to_owned();
    }
    let first = comes_from(plan, course, 0, 0);
    let [one, more] = if first.is_none() {
        ["through", "throughs"]
    } else {
        ["three-quarter through", "three-quarter throughs"]
    };
    let rows: Vec<String> = plan
        .stone
        .throughs
        .iter()
        .map(|row| {
            format!(
                "{} at {}, each {} long",
                show_count(row.count, one, more),
                shown(course, row.height),
                shown(course, row.length)
            )
        })
        .collect();
    let turns = turns(plan, course).unwrap_or_default();
    format!("Through rows above the ground: {}.{turns}", list(&rows))
}

/// That three-quarter throughs come from alternate faces.
fn turns(plan: &Plan, course: &Course) -> Option<String> {
    let rows = &plan.stone.throughs;
    let first = [0, 1].map(|at| comes_from(plan, course, lowest(plan), at));
    let [Some(first), Some(next)] = first else {
        return None;
    };
    if plan.stone.through_count() == 1 {
        return Some(format!(" It comes from the {} face.", first.word()));
    }
    let other_rows = match rows.len() {
        0 | 1 => "",
        2 => " in the lower row, the other way round in the upper one",
        _ => " in the lowest row, the other way round in the next one up, and so on",
    };
    Some(format!(
        " From station 0 on they come from the {} and the {} face in turn{other_rows}.",
        first.word(),
        next.word()
    ))
}

/// Where the strings are tied.
pub(crate) fn strings(plan: &Plan, course: &Course) -> String {
    let heights: Vec<String> = plan
        .frames
        .strings
        .iter()
        .map(|string| shown(course, string.height))
        .collect();
    let at_station_0 = if plan.wall.ground.is_level() {
        ""
    } else {
        " at station 0"
    };
    format!(
        "Strings stand at {} above the ground{at_station_0}.",
        list(&heights)
    )
}

/// The frames and where they stand.
pub(crate) fn frames(plan: &Plan, course: &Course) -> String {
    let stations: Vec<String> = plan
        .frames
        .rows
        .iter()
        .map(|row| shown(course, row.station))
        .collect();
    format!(
        "{} at {} along the centre line.",
        show_count(stations.len(), "frame stands", "frames stand"),
        list(&stations)
    )
}

/// How an end is left.
pub(crate) fn end(end: End) -> &'static str {
    match end {
        End::Head => "built end",
        End::Joined => "joined to standing wall",
        End::Raked => "raked end, left to be carried on",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn batters_and_lists_read_as_people_say_them() {
        let written = |n: f64| batter(Batter::one_in(n).expect("sound"));
        assert_eq!(written(6.0), "1 in 6");
        assert_eq!(written(6.5), "1 in 6.5");
        assert_eq!(batter(Batter::PLUMB), "plumb");
        let items = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(list(&items), "a, b and c");
        assert_eq!(list(&items[..2]), "a and b");
        assert_eq!(list(&items[..1]), "a");
    }
}
