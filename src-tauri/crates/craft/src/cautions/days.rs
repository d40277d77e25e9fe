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
/// no longer be those that were told of.
fn still_open(course: &Course, length: Length) -> Option<Shown> {
    let told = !course.running.progress.is_empty();
    (told && course.wall.length.is_none()).then(|| Shown {
        id: "length-open".to_owned(),
        text: format!(
            "The wall is being built, but its length is still worked out anew with every change. Write down the one it has: length = \"{}\".",
            show_length(length, course.units)
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
                    "Day {} has no time to build in: from {} to {} there are {breaks}, the talks, the tidying, and nobody left to work. Give it longer hours or fewer talks, or take the day out.",
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
    use crate::plan::sample::SAMPLE;

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
}
