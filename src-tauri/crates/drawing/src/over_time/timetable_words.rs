//! The timetable in words: every entry, and when each stage is done early, likely and late.

use crate::over_time::clock::lasting;
use crate::over_time::timetable::{Timetable, TimetableDay, WhenDone};
use crate::paper::words::list;

/// The days with their entries, then the stages, in sentences.
pub(crate) fn description(timetable: &Timetable) -> String {
    let days = timetable.days.iter().map(|day| one_day(timetable, day));
    let mut said: Vec<String> = days.collect();
    if said.is_empty() {
        said.push("There are no days.".to_owned());
    }
    if !timetable.stages.is_empty() {
        let stages = timetable.stages.iter().map(|stage| done(timetable, stage));
        let stages: Vec<String> = stages.collect();
        said.push(format!(
            "When each stage is done, in 1 course of 10, in 5 and in 9: {}.",
            stages.join("; ")
        ));
    }
    said.join(" ")
}

fn one_day(timetable: &Timetable, day: &TimetableDay) -> String {
    let time = |minutes| timetable.clock.time(minutes);
    let sun = [("sunrise", day.sunrise), ("sunset", day.sunset)];
    let sun = sun.map(|(what, at)| at.map(|at| format!("{what} {}", time(at))));
    let sun: Vec<String> = sun.into_iter().flatten().collect();
    let sun = if sun.is_empty() {
        String::new()
    } else {
        format!(" ({})", list(&sun))
    };
    let entries = day.bars.iter().map(|bar| {
        let lasts = lasting(bar.to - bar.from);
        let kind = bar.kind.word();
        format!("{} {} ({kind}, {lasts})", time(bar.from), bar.what)
    });
    let entries: Vec<String> = entries.collect();
    let entries = if entries.is_empty() {
        "nothing stands in it".to_owned()
    } else {
        entries.join("; ")
    };
    format!(
        "{}, {}, {} to {}{sun}: {entries}.",
        day.name,
        day.weekday,
        time(day.starts),
        time(day.ends)
    )
}

fn done(timetable: &Timetable, stage: &WhenDone) -> String {
    let name = &stage.name;
    if stage.done.iter().all(Option::is_none) {
        return format!("{name}, not within the course");
    }
    let mut told = None;
    let times = stage.done.map(|time| {
        let Some(time) = time else {
            return "not within the course".to_owned();
        };
        let clock = timetable.clock.time(time);
        let day = timetable.days.iter().find(|day| time <= day.ends);
        let day = day.map(|day| day.name.as_str()).unwrap_or_default();
        // The day is told where it changes.
        if told == Some(day) {
            return clock;
        }
        told = Some(day);
        format!("{day} {clock}")
    });
    format!("{name}, {}", times.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::clock::Clock;
    use crate::over_time::sample;

    #[test]
    fn the_words_hold_every_entry_and_every_time() {
        let said = description(&sample::weekend_days());
        for figure in [
            "Day 1, Friday, 09:00 to 17:00 (sunrise 05:51 and sunset 20:27): 09:00 Welcome and \
             safety (safety, 30 min); ",
            "13:45 Lay the footing (build, 45 min)",
            "Lay the footing, Day 1 13:45, 14:30, 15:39",
            "Second lift: throughs to cope, Day 2 12:07, 14:51, Day 3 10:43",
            "Pin the copes, Day 2 16:20, Day 3 12:01, not within the course.",
        ] {
            assert!(said.contains(figure), "{figure}\n{said}");
        }
    }

    #[test]
    fn a_stage_that_is_never_done_is_said_to_be_so_once() {
        let mut timetable = sample::weekend_days();
        timetable.clock = Clock::Twelve;
        timetable.stages.truncate(1);
        timetable.stages[0].done = [None; 3];
        let said = description(&timetable);
        assert!(said.ends_with("in 5 and in 9: Sort the heap, not within the course."));
        assert!(said.contains("9:00 am Welcome"));
    }
}
