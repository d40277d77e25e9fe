//! Keys that only make sense with others: one change in the window, several in the file.

use super::put;
use craft::quantity::Units;
use toml_edit::{DocumentMut, Item, TableLike};

/// A usual step of a stepped top, put in where only its length or only its height is typed
/// (common practice, no source).
const STEP: [(&str, &str, &str); 2] = [("length", "3 m", "10 ft"), ("height", "0.15 m", "6 in")];

/// What else changes with a key: a bank's side makes a retaining wall, steps belong to a level
/// top and have both measurements.
pub(super) fn follow(
    document: &mut DocumentMut,
    key: &str,
    typed: &str,
    units: impl FnOnce() -> Units,
) {
    let Some(wall) = document.get_mut("wall").and_then(Item::as_table_like_mut) else {
        return;
    };
    match key {
        "wall.retained" => bank(wall, typed),
        "wall.top" if typed == "follows ground" => {
            wall.remove("steps");
        }
        "wall.steps.length" | "wall.steps.height" => steps(wall, typed, units()),
        _ => {}
    }
}

fn bank(wall: &mut dyn TableLike, typed: &str) {
    if typed.is_empty() {
        put(wall, "kind", "freestanding");
        wall.remove("bank");
    } else {
        put(wall, "kind", "retaining");
    }
}

fn steps(wall: &mut dyn TableLike, typed: &str, units: Units) {
    if typed.is_empty() {
        wall.remove("steps");
        return;
    }
    let Some(steps) = wall.get_mut("steps").and_then(Item::as_table_like_mut) else {
        return;
    };
    for (key, metric, imperial) in STEP {
        if !steps.contains_key(key) {
            let usual = match units {
                Units::Metric => metric,
                Units::Imperial => imperial,
            };
            put(steps, key, usual);
        }
    }
    if wall.contains_key("top") {
        put(wall, "top", "level");
    }
}

#[cfg(test)]
mod tests {
    use super::super::set;
    use crate::Library;
    use crate::course::CourseFile;
    use craft::course::{WallGiven, WallKind};
    use craft::wall::Top;

    fn wall(text: &str) -> WallGiven {
        CourseFile::parse(text).expect("sound").course.wall
    }

    #[test]
    fn a_side_makes_a_bank_and_no_side_takes_it_away() {
        let text = Library::example(false);
        let bank = set(text, "wall.retained", "right").expect("a bank");
        assert!(matches!(wall(&bank).kind, WallKind::Retaining(_)));
        let sloping = set(&bank, "wall.bank.slope_degrees", "10").expect("a slope");
        let free = set(&sloping, "wall.retained", "").expect("no bank");
        assert_eq!(wall(&free).kind, WallKind::Freestanding);
    }

    #[test]
    fn a_step_has_length_and_height_and_a_top_that_follows_has_none() {
        let text = Library::example(true);
        let stepped = set(text, "wall.steps.height", "8 in").expect("steps");
        assert!(matches!(wall(&stepped).top, Top::Stepped { .. }));
        let follows = set(&stepped, "wall.top", "follows ground").expect("no steps");
        assert_eq!(wall(&follows).top, Top::FollowsGround);
        let again = set(&follows, "wall.steps.length", "6 ft").expect("steps again");
        assert!(matches!(wall(&again).top, Top::Stepped { .. }));
        let level = set(&again, "wall.steps.length", "").expect("level");
        assert_eq!(wall(&level).top, Top::Level);
    }
}
