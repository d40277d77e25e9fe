//! Which lessons a course teaches: those that fit it, and those it asks for.

use super::Planner;
use crate::conditions::Conditions;
use crate::course::Course;
use crate::pace::fixed::What;
use crate::pace::programme::Programme;
use crate::sun::Suns;
use crate::tables::Tables;
use std::borrow::Cow;

/// The course with the lessons left out that neither fit it nor are asked for, so that
/// timetable and simulation know the others only.
pub(super) fn with_the_taught<'c>(
    course: Cow<'c, Course>,
    tables: &Tables,
    suns: &Suns,
) -> Cow<'c, Course> {
    let conditions = Conditions::of(&course, &suns.of(&course));
    let running = &course.running;
    let untaught: Vec<String> = tables
        .lessons
        .iter()
        .filter(|lesson| !conditions.met_any(&lesson.when) && !running.asks_for(&lesson.id))
        .map(|lesson| lesson.id.clone())
        .collect();
    if untaught.is_empty() {
        return course;
    }
    let mut course = course.into_owned();
    course.running.left_out.extend(untaught);
    Cow::Owned(course)
}

impl Planner<'_> {
    /// The lessons that are given: those at fixed times, then those before the stages there is
    /// work for.
    pub(super) fn taught(&self, programme: &Programme) -> Vec<usize> {
        let fixed = self.time.timed.fixed.iter();
        let fixed = fixed.filter_map(|it| match it.what {
            What::Lesson { lesson, .. } => Some(lesson),
            What::Break { .. } | What::Tidy => None,
        });
        let due = programme.steps.iter().flat_map(|step| &step.lessons);
        let mut taught = Vec::new();
        for lesson in fixed.chain(due.copied()) {
            if !taught.contains(&lesson) {
                taught.push(lesson);
            }
        }
        taught
    }
}

#[cfg(test)]
mod tests {
    use crate::Error;
    use crate::course::{Course, Wish};
    use crate::pace::timetable::Of;
    use crate::plan::sample::{SAMPLE, course};
    use crate::plan::{Plan, plan};
    use crate::tables::{Applies, Before, Lesson, Tables};

    /// The sample's tables with a lesson for every course, one for bends and one to be asked for.
    fn tables() -> Tables {
        let mut tables = SAMPLE.1.clone();
        let lesson = |id: &str, stage: &str, when: &[Applies]| Lesson {
            id: id.to_owned(),
            title: id.to_owned(),
            minutes: 15,
            before: Before::Stage(stage.to_owned()),
            safety: false,
            when: when.to_vec(),
        };
        tables.lessons = vec![
            lesson("laying", "first-lift", &[Applies::Always]),
            lesson("curves", "first-lift", &[Applies::Curves, Applies::OldWall]),
            lesson("lifting", "first-lift", &[]),
            lesson("trench", "dig-the-trench", &[Applies::Footing]),
        ];
        tables
    }

    fn taught(course: &Course) -> Vec<String> {
        let tables = tables();
        let plan = plan(course, &tables).expect("a plan");
        let ids = |lessons: &[usize]| -> Vec<String> {
            let ids = lessons.iter().map(|it| tables.lessons[*it].id.clone());
            ids.collect()
        };
        let mut taught = ids(&plan.taught);
        let mut timed = ids(&in_the_timetable(&plan));
        taught.sort();
        timed.sort();
        // The sample has time for all of it.
        assert_eq!(taught, timed);
        taught
    }

    fn in_the_timetable(plan: &Plan) -> Vec<usize> {
        let entries = plan.timetable.iter();
        let lessons = entries.filter_map(|entry| match entry.of {
            Some(Of::Lesson(lesson)) => Some(lesson),
            _ => None,
        });
        lessons.collect()
    }

    fn asking(ids: &[&str]) -> Course {
        let mut course = course();
        course.running.asked = ids.iter().map(|&id| id.to_owned()).collect();
        course
    }

    #[test]
    fn a_lesson_is_taught_where_it_fits_or_is_asked_for() {
        assert_eq!(taught(&course()), ["laying"]);
        assert_eq!(taught(&asking(&["lifting"])), ["laying", "lifting"]);
        let both = asking(&["curves", "lifting"]);
        assert_eq!(taught(&both), ["curves", "laying", "lifting"]);
        let mut left_out = both;
        left_out.running.left_out = vec!["lifting".to_owned(), "laying".to_owned()];
        assert_eq!(taught(&left_out), ["curves"]);
    }

    #[test]
    fn a_wish_for_a_time_asks_for_the_lesson() {
        let mut course = course();
        course.running.wishes = vec![Wish {
            lesson: "lifting".to_owned(),
            day: 1,
            at: None,
        }];
        assert_eq!(taught(&course), ["laying", "lifting"]);
    }

    /// The sample digs no trench: what is asked for all the same comes before the next stage.
    #[test]
    fn a_lesson_asked_for_is_given_though_its_stage_is_not_there() {
        assert_eq!(taught(&asking(&["trench"])), ["laying", "trench"]);
    }

    #[test]
    fn what_is_asked_for_must_be_there() {
        let refused = plan(&asking(&["lifting", "liftin"]), &tables()).expect_err("no such");
        let Error::UnknownStage { key, given, .. } = refused else {
            panic!("another refusal: {refused}");
        };
        assert_eq!(
            (key.as_str(), given.as_str()),
            ("timetable.teach.1", "liftin")
        );
    }
}
