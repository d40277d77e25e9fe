//! Handles: what a stop would type is what the file then holds, and the handle comes to lie there.

use super::*;
use shapes::window::{Handle, Handles};

const GROUND: &str = "\n[[wall.ground]]\nstation = \"0 m\"\nlevel = \"0 m\"\n\n[[wall.ground]]\n\
                      station = \"6 ft\"\nlevel = \"-3 in\"\nright = \"-0.11 m\"\n";

/// An example with a surveyed ground and without throughs, which would forbid the lowest heights.
fn surveyed(imperial: bool) -> (tempfile::TempDir, Desk) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("one.walling");
    let example = Library::example(imperial);
    let (wall, rest) = example.split_once("\n[stone]").expect("a table of stone");
    let text = format!("{wall}{GROUND}\n[stone]{rest}");
    let text = files::course::set(&text, "wall.through_rows", "").expect("without throughs");
    std::fs::write(&path, text).expect("writes");
    let desk = Desk::set_up(Some(path), &folder.path().join("store")).expect("opens");
    (folder, desk)
}

/// The handles of a drawing, which are there while it is looked at.
fn handles(desk: &mut Desk, drawing: &str) -> Handles {
    desk.look_at(Some(drawing.to_owned()));
    desk.view().handles
}

fn all(desk: &mut Desk) -> Vec<Handle> {
    let section = handles(desk, "section").section;
    let elevation = handles(desk, "elevation").elevation;
    section.into_iter().chain(elevation).collect()
}

/// Every handle, to its ends and to some stops between, in both systems of units.
#[test]
fn a_stop_typed_is_a_value_of_the_file_and_the_handle_lies_at_it() {
    for imperial in [false, true] {
        let (_folder, mut desk) = surveyed(imperial);
        let handles = all(&mut desk);
        assert_eq!(handles.len(), 5, "height, two faces, two stations");
        for handle in handles {
            let last = handle.stops.len() - 1;
            for at in [0, last / 3, last / 2, last] {
                let stop = &handle.stops[at];
                desk.edit(&handle.key, &stop.typed, false)
                    .unwrap_or_else(|wrong| panic!("{} {}: {wrong:?}", handle.key, stop.typed));
                let view = desk.view();
                assert_eq!(view.values[&handle.key], stop.typed);
                let after = all(&mut desk);
                let after = after.iter().find(|it| it.id == handle.id).expect("there");
                assert_eq!(after.stops[after.now].typed, stop.typed, "{}", handle.id);
                let place = if after.across { after.at.0 } else { after.at.1 };
                let lies = after.stops[after.now].place;
                assert!((place - lies).abs() < 0.011, "{} {place} {lies}", handle.id);
                desk.undo().expect("undoes");
            }
        }
    }
}

/// A face has a key of its own where the file gives both; levels at a face likewise.
#[test]
fn a_handle_sets_the_key_the_file_has() {
    let (_folder, mut desk) = surveyed(false);
    let keys = |desk: &mut Desk| -> Vec<String> {
        let all = all(desk).into_iter();
        all.map(|it| it.key).collect()
    };
    assert_eq!(
        keys(&mut desk),
        [
            "wall.height",
            "wall.batter",
            "wall.batter",
            "wall.ground.0.level",
            "wall.ground.1.right"
        ]
    );
    let text = desk
        .text()
        .replace("batter = 8 ", "batter = { left = 6, right = 8.25 } ");
    desk.change(text).expect("changes");
    assert_eq!(
        keys(&mut desk)[1..3],
        ["wall.batter.left", "wall.batter.right"]
    );
    let right = &handles(&mut desk, "section").section[2];
    assert_eq!(right.stops[right.now].words, "1 in 8.25");
}

/// What a drag can't do says so and changes nothing.
#[test]
fn a_wall_dragged_below_its_throughs_is_refused() {
    let (_folder, _path, mut desk) = desk_with_file();
    let before = desk.text().to_owned();
    let section = handles(&mut desk, "section").section;
    let lowest = &section[0].stops[0];
    let refused = desk.edit("wall.height", &lowest.typed, false);
    assert!(matches!(refused, Err(Error::Fault(fault)) if fault.code == "through-row"));
    assert_eq!(desk.text(), before);
}

/// Lessons and the breaks of the file lie in the row of their day, where a quarter of an hour that
/// is offered is the one they begin at.
#[test]
fn what_moves_in_the_days_lies_where_it_is_drawn() {
    for imperial in [false, true] {
        let (_folder, mut desk) = surveyed(imperial);
        let timetable = handles(&mut desk, "timetable").timetable;
        let view = desk.view();
        assert_eq!(timetable.days.len(), view.written.days.len());
        let (mut breaks, mut lessons) = (0, 0);
        for entry in &timetable.entries {
            let day = &timetable.days[entry.day];
            let quarter = day.times.iter().find(|it| it.typed == entry.typed);
            if let Some(quarter) = quarter {
                assert!((quarter.place - entry.from).abs() < 1e-6, "{entry:?}");
                assert_eq!(quarter.words, entry.words);
            }
            match &entry.key {
                Some(key) => {
                    assert_eq!(view.values[key], entry.typed, "{entry:?}");
                    breaks += 1;
                }
                None => lessons += 1,
            }
        }
        let given = view.values.keys();
        let given = given.filter(|it| it.contains(".breaks.") && it.ends_with(".start"));
        assert_eq!(breaks, given.count(), "every break of the file");
        assert!(3 < lessons);
        let mut ids: Vec<_> = timetable.entries.iter().map(|it| &it.id).collect();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), timetable.entries.len());
    }
}

/// Put down elsewhere, a lesson is a wish of the file, and the entry lies there.
#[test]
fn a_lesson_put_down_elsewhere_is_a_wish_that_sticks() {
    let (_folder, _path, mut desk) = desk_with_file();
    let entries = handles(&mut desk, "timetable").timetable.entries;
    let entry = entries
        .iter()
        .find(|it| it.lesson.as_deref() == Some("throughs"));
    let entry = entry.unwrap_or_else(|| panic!("a lesson: {entries:?}"));
    desk.wish("throughs", Some(0), "14:00").expect("wishes");
    let view = desk.view();
    assert_eq!(view.values["wish.0.lesson"], "throughs");
    let after = view.handles.timetable.entries.iter();
    let after: Vec<_> = after.filter(|it| it.id == entry.id).collect();
    assert_eq!(after.len(), 1);
    assert_eq!((after[0].day, after[0].typed.as_str()), (0, "14:00"));
}
