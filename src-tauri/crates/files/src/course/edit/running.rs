//! What is told on the day, and lessons wished at a time, put into a course file.

use super::tables::{put_in, take_out};
use super::{checked, descend, no_such, parsed, put, text_value};
use crate::Fault;
use crate::course::CourseFile;
use chrono::NaiveTime;
use craft::course::{Course, Report, WallSize};
use craft::quantity::{Length, Units, metres, show_mark};
use craft::wall::all_but_the_last_straight;
use toml_edit::{DocumentMut, InlineTable, Value};

/// The text with a report of progress, in its place by time. It replaces one of the same time,
/// stage and bay.
///
/// A wall that is being built has its length: where the file leaves it to be worked out, the
/// one `planned` is written down, so that rain or an absence entered later does not change the
/// wall that was told of. The report keeps the size the wall is to have now: a share told of it
/// is a share of that, and not of a wall that is made lower or shorter afterwards.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn tell(text: &str, told: &Report, planned: Length) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let length = course.wall.length.unwrap_or(planned);
    if course.wall.length.is_none() {
        fix_length(&mut document, &course, length)?;
    }
    let reports = &course.running.progress;
    let same = |it: &Report| {
        (it.day, it.time, &it.stage, it.bay) == (told.day, told.time, &told.stage, told.bay)
    };
    let old = reports.iter().position(same);
    if let Some(at) = old {
        take_out(&mut document, "progress", at);
    }
    let before = reports.iter().filter(|it| !same(it));
    let at = before
        .filter(|it| (it.day, it.time) <= (told.day, told.time))
        .count();
    let mut keys = vec![
        ("day", whole(told.day + 1)?),
        ("time", time(told.time)?),
        ("stage", text_value(&told.stage)),
    ];
    if let Some(bay) = told.bay {
        keys.push(("bay", whole(bay + 1)?));
    }
    keys.push(("done", told.done.into()));
    keys.push(("wall", size(course.wall.size(length), course.units)));
    put_in(&mut document, "progress", Some(at), &keys)?;
    checked(document, text)
}

/// `{ length = "6.75 m", height = "1.05 m", cope_height = "0.25 m" }`, without a cope where none
/// is set.
fn size(wall: WallSize, units: Units) -> Value {
    let mut table = InlineTable::new();
    let mut put = |key: &str, length: Length| {
        table.insert(key, text_value(&show_mark(length, units)));
    };
    put("length", wall.length);
    put("height", wall.height);
    if metres(0.0) < wall.cope_height {
        put("cope_height", wall.cope_height);
    }
    Value::InlineTable(table)
}

/// Writes the length down in the course's units. A line has the length of its stretches: its
/// last straight is given what it was stretched or shortened to.
fn fix_length(document: &mut DocumentMut, course: &Course, planned: Length) -> Result<(), Fault> {
    let show = |length| show_mark(length, course.units);
    let line = &course.wall.line;
    let wall = descend(document.as_table_mut(), &["wall"]).ok_or_else(|| no_such("wall"))?;
    if line.is_empty() {
        put(wall, "length", &show(planned));
        return Ok(());
    }
    put(wall, "length", "");
    let last = line.iter().rposition(|stretch| stretch.bend.is_none());
    if let (Some(last), Some(others)) = (last, all_but_the_last_straight(line)) {
        let number = last.to_string();
        let path = ["wall", "line", &number];
        let straight = descend(document.as_table_mut(), &path);
        let straight = straight.ok_or_else(|| no_such("wall.line"))?;
        put(straight, "straight", &show(planned - others));
    }
    Ok(())
}

/// The text without one report, counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn untell(text: &str, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    take_out(&mut document, "progress", at);
    checked(document, text)
}

/// The text with a lesson wished on a day, counted from 0, at a time or first thing; it
/// replaces what was wished of that lesson before.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn wish(text: &str, lesson: &str, day: usize, at: Option<NaiveTime>) -> Result<String, Fault> {
    let mut document = document_without(text, lesson)?;
    let mut keys = vec![("lesson", text_value(lesson)), ("day", whole(day + 1)?)];
    if let Some(at) = at {
        keys.push(("at", time(at)?));
    }
    put_in(&mut document, "wish", None, &keys)?;
    checked(document, text)
}

/// The text without a wish for a lesson.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn unwish(text: &str, lesson: &str) -> Result<String, Fault> {
    checked(document_without(text, lesson)?, text)
}

fn document_without(text: &str, lesson: &str) -> Result<DocumentMut, Fault> {
    let wishes = CourseFile::parse(text)?.course.running.wishes;
    let mut document = parsed(text)?;
    for (at, _) in wishes
        .iter()
        .enumerate()
        .rev()
        .filter(|(_, it)| it.lesson == lesson)
    {
        take_out(&mut document, "wish", at);
    }
    Ok(document)
}

fn whole(number: usize) -> Result<Value, Fault> {
    let number = i64::try_from(number).map_err(|_| no_such("day"))?;
    Ok(number.into())
}

fn time(time: NaiveTime) -> Result<Value, Fault> {
    let text = time.format("%H:%M:%S").to_string();
    text.parse().map_err(|_| no_such("time"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::set;
    use craft::quantity::metres;

    fn at(hour: u32, minute: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, minute, 0).expect("a time")
    }

    fn report(stage: &str, hour: u32, bay: Option<usize>, done: f64) -> Report {
        Report {
            day: 0,
            time: at(hour, 40),
            stage: stage.to_owned(),
            bay,
            done,
            wall: None,
        }
    }

    fn with(text: &str, told: &Report) -> String {
        tell(text, told, metres(6.75)).expect("told")
    }

    fn told(text: &str) -> Vec<Report> {
        CourseFile::parse(text)
            .expect("sound")
            .course
            .running
            .progress
    }

    /// The same, of the wall of 6 m.
    fn sized(report: &Report) -> Report {
        Report {
            wall: Some(WallSize {
                length: metres(6.0),
                height: metres(1.05),
                cope_height: metres(0.25),
            }),
            ..report.clone()
        }
    }

    #[test]
    fn progress_is_kept_in_order_of_time() {
        let text = &Library::example(false).replace("\"auto\" ", "\"6 m\"  ");
        let late = report("footing", 14, None, 1.0);
        let early = report("dig", 11, Some(1), 0.5);
        let one = with(text, &late);
        let two = with(&one, &early);
        assert_eq!(told(&two), [sized(&early), sized(&late)]);
        let corrected = report("dig", 11, Some(1), 0.75);
        let again = with(&two, &corrected);
        assert_eq!(told(&again), [sized(&corrected), sized(&late)]);
        let less = untell(&again, 0).expect("one less");
        assert_eq!(told(&less), [sized(&late)]);
        assert_eq!(untell(&less, 0).expect("none"), *text);
    }

    #[test]
    fn lessons_to_teach_are_a_list_from_the_first_name_on() {
        let text = Library::example(false);
        let set = |text: &str, typed: &str| crate::course::set(text, "timetable.teach", typed);
        let asked = |text: &str| CourseFile::parse(text).expect("sound").course.running.asked;
        let one = set(text, "lifting").expect("one");
        assert_eq!(asked(&one), ["lifting"]);
        let two = set(&one, "lifting, hearting").expect("two");
        assert_eq!(asked(&two), ["lifting", "hearting"]);
        let wished = wish(&two, "lifting", 1, None).expect("moved");
        assert_eq!(asked(&wished), ["lifting", "hearting"]);
        assert_eq!(asked(&set(&wished, "").expect("none")), [""; 0]);
    }

    #[test]
    fn a_lesson_has_one_wish_at_most() {
        let text = Library::example(false);
        let wishes = |text: &str| {
            CourseFile::parse(text)
                .expect("sound")
                .course
                .running
                .wishes
        };
        let first = wish(text, "copes", 1, None).expect("first thing");
        assert_eq!(wishes(&first)[0].at, None);
        let later = wish(&first, "copes", 2, Some(at(9, 30))).expect("at a time");
        assert_eq!(wishes(&later).len(), 1);
        assert_eq!(
            (wishes(&later)[0].day, wishes(&later)[0].at),
            (2, Some(at(9, 30)))
        );
        assert_eq!(unwish(&later, "copes").expect("none"), text);
        let nowhere =
            tell(text, &report("footing", 3, None, 1.0), metres(6.0)).expect_err("at night");
        assert_eq!(nowhere.code, "outside-the-day");
    }

    /// The wall that was told of keeps its length whatever is entered afterwards.
    #[test]
    fn the_first_report_writes_the_length_down() {
        let footing = report("footing", 14, None, 1.0);
        for (imperial, was) in [(false, 6.75), (true, 21.0 * 0.3048)] {
            let text = Library::example(imperial);
            let text = set(text, "wall.length", "auto").expect("auto");
            let after = tell(&text, &footing, metres(was)).expect("told");
            let wall = CourseFile::parse(&after).expect("sound").course.wall;
            let length = wall.length.expect("a length");
            assert!((length - metres(was)).abs() < metres(1e-9), "{length:?}");
            // Told again it stays.
            let again = report("first-lift", 15, None, 0.1);
            let again = tell(&after, &again, metres(3.0)).expect("told again");
            let wall = CourseFile::parse(&again).expect("sound").course.wall;
            assert_eq!(wall.length, Some(length));
        }
    }

    #[test]
    fn the_last_straight_of_a_line_is_written_down() {
        let line = "line = [ { straight = \"4 m\" }, { arc = \"3 m\", radius = \"6 m\", turn = \"left\" } ]";
        let text = Library::example(false).replacen("[wall]\n", &format!("[wall]\n{line}\n"), 1);
        let text = set(&text, "wall.length", "auto").expect("auto");
        let after = tell(&text, &report("footing", 14, None, 1.0), metres(8.5)).expect("told");
        let wall = CourseFile::parse(&after).expect("sound").course.wall;
        assert_eq!(wall.line[0].length, metres(5.5));
        assert!(after.contains("straight = \"5.50 m\""), "{after}");
        assert!(wall.length.is_some());
    }

    /// Nothing but what was told changes, not the line ends either.
    #[test]
    fn line_ends_stay_as_they_were() {
        let text = Library::example(false).replace("\"auto\" ", "\"6 m\"  ");
        let ends = text.replace('\n', "\r\n");
        let after = with(&ends, &report("footing", 14, None, 1.0));
        assert!(after.starts_with(&ends));
        assert_eq!(after.matches('\n').count(), after.matches("\r\n").count());
        assert_eq!(untell(&after, 0).expect("none"), ends);
        let plain = with(&text, &report("footing", 14, None, 1.0));
        assert!(!plain.contains('\r'));
    }
}
