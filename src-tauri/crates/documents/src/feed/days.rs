//! How the days run: the run sheet; and what is written down of them: the progress sheet.

use super::Feed;
use crate::Drawings;
use crate::{Course, Edition};
use craft::course::FrameKind;
use craft::pace::timetable::Of;
use craft::plan::StageWork;
use craft::tables::Stage;
use serde_json::{Value, json};
use shapes::left_safe;
use shapes::written::{Day, Mark, StageTimes};

/// Of all that held simulated courses up, so many are told.
const HOLDUPS: usize = 4;

pub(crate) fn run_sheet(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let running = &written.running;
    let of_this_plan: Vec<_> = written
        .cautions
        .iter()
        .filter(|caution| caution.of_this_plan)
        .collect();
    let days: Vec<Value> = written.days.iter().map(|it| day(course, it)).collect();
    let holdups: Vec<_> = running.holdups.iter().take(HOLDUPS).collect();
    let bars = course.file.course.frames.kind == FrameKind::Bar;
    let safe: Vec<Value> = stages(course)
        .map(|(stage, _)| json!({ "stage": stage.name, "safe": left_safe(&stage.if_left, bars) }))
        .collect();
    let own = json!({
        "days": days,
        "stints": written.stints,
        "chance": written.chance,
        "throughs": running.throughs,
        "holdups": holdups,
        "unmet": running.unmet,
        "rotation": running.rotation,
        "today": running.today,
        "safe": safe,
        "has_cope": has_cope(course),
        "cautions": of_this_plan,
        "wall": written.wall,
    });
    with_timetable(Feed::new(course, own), course)
}

/// The days as pictures, each as `file` and `words` under `timetables`; `at_a_glance` tells whether
/// there are any.
fn with_timetable<'a>(mut feed: Feed<'a>, course: &'a Course) -> Feed<'a> {
    let parts = || Drawings::on_paper(course).timetable_in_parts();
    let any = course.edition == Edition::Usual || !parts().is_empty();
    if let Value::Object(all) = &mut feed.data {
        all.insert("at_a_glance".to_owned(), any.into());
    }
    feed.with_list("timetable-1.svg", "timetables", parts)
}

/// A day with its weather, those away, the stints of its own, and beside the last entry of
/// each stage when that is done.
fn day(course: &Course, day: &Day) -> Value {
    let running = &course.written.running;
    let weather = running.weather.iter().find(|it| it.day == day.number);
    let people = running.people.iter().find(|it| it.day == day.number);
    let timetable = &course.plan.timetable;
    let of_day = timetable
        .iter()
        .enumerate()
        .filter(|(_, entry)| entry.day + 1 == day.number);
    let entries: Vec<Value> = day
        .entries
        .iter()
        .zip(of_day)
        .map(|(shown, (at, entry))| {
            let is_last = timetable[at + 1..].iter().all(|it| it.of != entry.of);
            let done = match entry.of {
                Some(Of::Stage(stage)) if is_last => times(course, stage),
                _ => Value::Null,
            };
            json!({ "entry": shown, "done": done })
        })
        .collect();
    json!({
        "number": day.number,
        "date": day.date,
        "start": day.start,
        "finish": day.finish,
        "sunrise": day.sunrise,
        "sunset": day.sunset,
        "entries": entries,
        "weather": weather,
        "away": people.map_or(&[][..], |it| &it.away),
        "stints": people.map_or(&[][..], |it| &it.stints),
    })
}

/// The stages this course has work for, in order.
fn stages(course: &Course) -> impl Iterator<Item = (&Stage, &StageWork)> {
    let work = course.plan.work.iter();
    work.filter_map(|work| Some((course.library.tables.stages.get(work.stage)?, work)))
}

/// When a stage is done, as it is believed now.
fn times(course: &Course, stage: usize) -> Value {
    let Some(stage) = course.library.tables.stages.get(stage) else {
        return Value::Null;
    };
    let of = |times: &[StageTimes]| -> Option<[Mark; 3]> {
        let it = times.iter().find(|it| it.name == stage.name)?;
        Some([it.early.clone(), it.likely.clone(), it.late.clone()])
    };
    let written = &course.written;
    let today = written.running.today.as_ref();
    let now = today.and_then(|today| of(&today.by_stage));
    let is_done = today.is_some_and(|today| {
        let mut told = today.stages.iter();
        told.any(|it| it.stage == stage.id && it.done)
    });
    let marks = now.or_else(|| of(&written.chance.stages));
    json!({ "marks": marks, "is_done": is_done })
}

fn has_cope(course: &Course) -> bool {
    stages(course).any(|(stage, _)| stage.id == "cope")
}

/// A grid of stages and bays, with the times they are likely done, and the times to ask.
pub(crate) fn progress_sheet(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let bays = &written.frames.bays;
    let today = written.running.today.as_ref();
    let rows: Vec<Value> = stages(course)
        .filter(|(stage, _)| times(course, place(course, stage))["marks"].is_array())
        .map(|(stage, _)| {
            let told = today.and_then(|it| it.stages.iter().find(|told| told.stage == stage.id));
            json!({
                "stage": stage.name,
                "together": stage.work.is_fixed(),
                "times": times(course, place(course, stage)),
                "told": told.map(|it| it.bays.clone()),
            })
        })
        .collect();
    let asked: Vec<Value> = written.days.iter().map(rounds).collect();
    let stations = &written.frames.rows;
    let at = |frame: usize| {
        let row = stations.iter().find(|row| row.number == frame);
        row.map_or("", |row| row.station.as_str())
    };
    let bays: Vec<Value> = bays
        .iter()
        .map(|bay| json!({ "from": at(bay.from), "to": at(bay.to) }))
        .collect();
    let own = json!({
        "stages": rows,
        "bays": bays,
        "days": asked,
        "chance": written.chance,
        "today": today,
    });
    Feed::new(course, own)
}

fn place(course: &Course, stage: &Stage) -> usize {
    let mut stages = course.library.tables.stages.iter();
    stages
        .position(|it| it.id == stage.id)
        .unwrap_or(usize::MAX)
}

/// When to go round on a day: as each break begins, and before tidying.
fn rounds(day: &Day) -> Value {
    let entries = day.entries.iter();
    let asked: Vec<Value> = entries
        .filter(|entry| entry.kind == "break" || entry.kind == "tidy")
        .map(|entry| {
            let name = if entry.kind == "tidy" {
                "End of the day"
            } else {
                &entry.what
            };
            json!({ "at": entry.start, "name": name })
        })
        .collect();
    json!({ "number": day.number, "date": day.date, "asked": asked })
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    fn course(more: &str) -> Course {
        let text = Library::example(false).to_owned() + more;
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        Course::plan(file, &library).expect("a plan")
    }

    const TOLD: &str = "[[progress]]\nday = 1\ntime = 12:45:00\nstage = \"dig\"\n\
        [[progress]]\nday = 1\ntime = 16:30:00\nstage = \"frames\"\nbay = 1\ndone = 0.5\n";

    fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
        let list = value[key].as_array();
        list.unwrap_or_else(|| panic!("no list {key} in {value}"))
    }

    #[test]
    fn when_a_stage_is_done_stands_once_beside_its_last_entry() {
        let course = course("");
        let data = run_sheet(&course).data;
        let entries: Vec<&Value> = list(&data, "days")
            .iter()
            .flat_map(|day| list(day, "entries"))
            .collect();
        for stage in &course.written.chance.stages {
            let own = |it: &&&Value| it["entry"]["what"] == stage.name.as_str();
            let of_stage: Vec<&&Value> = entries.iter().filter(own).collect();
            let Some((last, before)) = of_stage.split_last() else {
                continue;
            };
            assert!(
                before.iter().all(|it| it["done"].is_null()),
                "{}",
                stage.name
            );
            let likely = &last["done"]["marks"][1]["text"];
            assert_eq!(likely, stage.likely.text.as_str(), "{}", stage.name);
        }
        let all = entries.iter().filter(|it| !it["done"].is_null()).count();
        assert!(
            5 < all && all <= course.written.chance.stages.len(),
            "{all}"
        );
    }

    #[test]
    fn the_progress_sheet_knows_what_has_been_told() {
        let data = progress_sheet(&course(TOLD)).data;
        let stage = |name: &str| {
            let found = list(&data, "stages").iter().find(|it| it["stage"] == name);
            found.unwrap_or_else(|| panic!("no {name}"))
        };
        assert_eq!(stage("Dig the trench")["times"]["is_done"], true);
        assert_eq!(stage("Set the frames")["told"][0], 0.5);
        assert_eq!(stage("Set the frames")["times"]["is_done"], false);
        // What the whole group does at once has one time.
        assert_eq!(stage("Inspect together")["together"], true);
        assert_eq!(stage("Lay the footing")["together"], false);
        let asked = list(&list(&data, "days")[0], "asked");
        let at: Vec<&str> = asked.iter().filter_map(|it| it["at"].as_str()).collect();
        assert_eq!(at, ["11:00", "12:45", "15:15", "16:30"]);
    }
}
