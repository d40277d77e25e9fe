//! Cautions about the days: a day without building, building without anybody there.

use super::{COMMON, Shown};
use crate::course::Course;
use crate::quantity::{Length, show_count, show_length};

/// Less than so many working minutes is no building at all.
const NO_BUILDING: f64 = 1.0;

/// The cautions that follow from the working minutes of each day.
pub fn of_the_days(course: &Course, length: Length, working: &[f64]) -> Vec<Shown> {
    without_building(course, working)
        .chain(still_open(course, length))
        .collect()
}

/// A wall that is being built has its length: worked out anew with every change, its bays would
/// no longer be those that were told of. Rain and absences that came in since have moved it; what
/// it was before them the file does not say.
fn still_open(course: &Course, length: Length) -> Option<Shown> {
    let told = !course.running.progress.is_empty();
    let rain = course.days.iter().any(|day| !day.weather.rain.is_empty());
    let moved = rain || !course.absences.is_empty();
    let now = show_length(length, course.units);
    let which = if moved {
        format!(
            "With the rain and the absences in the file it comes out at {now} now, and so does every figure here. Write down the length that was set out, from the first frame to the last, such as length = \"{now}\" if it is that."
        )
    } else {
        format!("Write down the one it has: length = \"{now}\".")
    };
    (told && course.wall.length.is_none()).then(|| Shown {
        id: "length-open".to_owned(),
        text: format!(
            "The wall is being built, but its length is still worked out anew with every change. {which}"
        ),
        source: COMMON.to_owned(),
        for_students: false,
    })
}

fn without_building<'a>(
    course: &'a Course,
    working: &'a [f64],
) -> impl Iterator<Item = Shown> + 'a {
    let days = course.days.iter().zip(working).enumerate();
    days.filter(|(_, (_, minutes))| **minutes < NO_BUILDING)
        .map(|(number, (day, _))| {
            let breaks = show_count(day.breaks.len(), "break", "breaks");
            Shown {
                id: "no-building".to_owned(),
                text: format!(
                    "Day {} has no time to build in: from {} to {} there are {breaks}, the talks and the tidying, and nothing is left. Give it longer hours or fewer talks, or take the day out.",
                    number + 1,
                    day.start.format("%H:%M"),
                    day.finish.format("%H:%M"),
                ),
                source: COMMON.to_owned(),
                for_students: false,
            }
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::{Report, Spell};
    use crate::plan::sample::SAMPLE;
    use crate::quantity::metres;

    #[test]
    fn a_day_without_building_is_told() {
        let (course, _, plan) = &*SAMPLE;
        let length = plan.sizing.length;
        assert!(of_the_days(course, length, &plan.days.working).is_empty());
        let told = of_the_days(course, length, &[300.0, 0.0, 300.0]);
        assert_eq!(told.len(), 1);
        assert!(
            told[0]
                .text
                .starts_with("Day 2 has no time to build in: from 09:00 to 17:00")
        );
    }

    /// Without rain it is the length the wall was set out at; after it nobody knows.
    #[test]
    fn an_open_length_is_named_only_where_it_is_known() {
        let (course, _, plan) = &*SAMPLE;
        let mut course = course.clone();
        course.wall.length = None;
        let length = metres(6.75);
        assert_eq!(still_open(&course, length), None);
        course.running.progress.push(Report {
            day: 0,
            time: course.days[0].finish,
            stage: "line".to_owned(),
            bay: None,
            done: 1.0,
            wall: None,
        });
        let text = |course: &Course| still_open(course, length).expect("open").text;
        assert!(text(&course).ends_with("Write down the one it has: length = \"6.75 m\"."));
        let start = course.days[1].start;
        course.days[1]
            .weather
            .rain
            .push(Spell { start, minutes: 60 });
        assert!(text(&course).contains("Write down the length that was set out"));
        course.wall.length = Some(plan.sizing.length);
        assert_eq!(still_open(&course, length), None);
    }
}
