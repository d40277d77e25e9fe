//! How the days are run: wishes, what is left out, what is done already, what has been built.

use super::{line, wall};
use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::{Day, Effect, Report, Running, WallSize, Wish};

/// The first number of a bay or a day in a course file.
const FIRST: u32 = 1;
/// More bays than any wall has.
const MOST_BAYS: u32 = 1000;

/// How the days are run. Whether lessons, stages and bays of these names are there shows when
/// the course is planned.
pub(super) fn running(root: &Section<'_>, days: &[Day]) -> Result<Running, Fault> {
    let pace = root.section("pace")?;
    let timetable = root.section("timetable")?;
    timetable.only(&["short_breaks", "lamplight", "leave_out", "teach"])?;
    let effects = Effect::ALL.map(|effect| (effect.word(), effect));
    Ok(Running {
        short_breaks: timetable
            .get("short_breaks")
            .map_or(Ok(true), |it| it.truth())?,
        lamplight: timetable
            .get("lamplight")
            .map_or(Ok(false), |it| it.truth())?,
        left_out: names(timetable.get("leave_out"))?,
        asked: names(timetable.get("teach"))?,
        wishes: root
            .tables("wish")?
            .iter()
            .map(|section| wish(section, days))
            .collect::<Result<_, _>>()?,
        beforehand: names(pace.get("beforehand"))?,
        without: pace
            .get("without")
            .map_or(Ok(Vec::new()), |it| it.list())?
            .iter()
            .map(|entry| entry.word(&effects))
            .collect::<Result<_, _>>()?,
        progress: progress(root, days)?,
    })
}

/// A list of names, each once.
fn names(entry: Option<Entry<'_>>) -> Result<Vec<String>, Fault> {
    let mut names: Vec<String> = Vec::new();
    for entry in entry.map_or(Ok(Vec::new()), |it| it.list())? {
        let name = entry.text()?;
        if names.iter().any(|it| it == name) {
            return Err(entry.fault(
                "named-twice",
                &format!("\"{name}\" is there twice"),
                "name each once",
            ));
        }
        names.push(name.to_owned());
    }
    Ok(names)
}

/// A day by its number, counted from 0.
fn day(section: &Section<'_>, days: &[Day]) -> Result<usize, Fault> {
    let entry = section.need("day", "say which course day, counted from 1")?;
    let most = u32::try_from(days.len()).unwrap_or(u32::MAX);
    let number = entry.whole(0, u32::MAX)?;
    if number < FIRST || most < number {
        return Err(entry.fault(
            "no-such-day",
            &format!("there is no day {number}; the course has {most}"),
            "count the course days from 1",
        ));
    }
    Ok((number - FIRST) as usize)
}

fn wish(section: &Section<'_>, days: &[Day]) -> Result<Wish, Fault> {
    section.only(&["lesson", "day", "at"])?;
    Ok(Wish {
        lesson: section
            .need("lesson", "say which lesson, by its id")?
            .text()?
            .to_owned(),
        day: day(section, days)?,
        at: section.get("at").map(|it| it.time()).transpose()?,
    })
}

fn progress(root: &Section<'_>, days: &[Day]) -> Result<Vec<Report>, Fault> {
    let mut reports: Vec<Report> = Vec::new();
    for section in &root.tables("progress")? {
        let report = report(section, days, reports.last())?;
        reports.push(report);
    }
    Ok(reports)
}

fn report(section: &Section<'_>, days: &[Day], before: Option<&Report>) -> Result<Report, Fault> {
    section.only(&["day", "time", "stage", "bay", "done", "wall"])?;
    let day = day(section, days)?;
    let entry = section.need("time", "say when you looked, such as 11:40:00")?;
    let time = entry.time()?;
    let hours = &days[day];
    if time < hours.start || hours.finish < time {
        return Err(entry.fault(
            "outside-the-day",
            &format!(
                "{time} is outside day {}, {} to {}",
                day + 1,
                hours.start,
                hours.finish
            ),
            "give a time of that day",
        ));
    }
    if before.is_some_and(|it| (day, time) < (it.day, it.time)) {
        return Err(entry.fault(
            "progress-order",
            "it stands after a later one",
            "give what was built in order of time",
        ));
    }
    let bay = section
        .get("bay")
        .map(|it| it.whole(FIRST, MOST_BAYS))
        .transpose()?;
    Ok(Report {
        day,
        time,
        stage: section
            .need("stage", "say which stage, by its id")?
            .text()?
            .to_owned(),
        bay: bay.map(|bay| (bay - FIRST) as usize),
        done: section
            .get("done")
            .map_or(Ok(1.0), |it| it.number(0.0, 1.0))?,
        wall: section
            .get("wall")
            .map(|it| wall_size(&it.table()?))
            .transpose()?,
    })
}

/// The size a wall had when it was told of.
fn wall_size(section: &Section<'_>) -> Result<WallSize, Fault> {
    section.only(&["length", "height", "cope_height"])?;
    let length = section.need("length", "give the length it was to have then")?;
    let height = section.need("height", "give the height to the cope it was to have then")?;
    Ok(WallSize {
        length: line::stated(&length)?,
        height: wall::height(&height)?,
        cope_height: wall::cope_height(section)?,
    })
}
