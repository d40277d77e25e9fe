//! What the tables offer the window to choose from, and which lessons this course teaches.

use craft::conditions::Conditions;
use craft::course::{Course, Running};
use craft::plan::Plan;
use craft::quantity::Read;
use craft::tables::{Applies, Bar, Lesson, Per, Rock, Tables};
use craft::worksheet::Kind;
use serde::Serialize;
use ts_rs::TS;

/// What the tables offer, each as the word of the course file and the name a person reads.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct Choices {
    pub rocks: Vec<(String, String)>,
    pub bars: Vec<(String, String)>,
    /// What a kit rule counts by.
    pub pers: Vec<String>,
    pub lessons: Vec<LessonChoice>,
    /// Stages that can be done before the course.
    pub beforehand: Vec<(String, String)>,
    /// Kinds of question on a worksheet, in their order there.
    pub questions: Vec<(String, String)>,
}

/// A lesson, and why this course teaches it or not.
#[derive(Debug, Clone, Serialize, TS)]
pub struct LessonChoice {
    /// The word of the course file.
    pub id: String,
    /// What a person reads.
    pub title: String,
    /// It is taught on a course like this without being asked for.
    pub fits: bool,
    /// This course teaches it.
    pub taught: bool,
    /// Why it is taught, or why not: `on every course`, `only where the line bends`.
    pub why: String,
}

impl Choices {
    /// What the tables hold, for this course.
    pub fn of(plan: &Plan, course: &Course, tables: &Tables) -> Self {
        let rock = |rock: &Rock| (rock.key.clone(), rock.name.clone());
        let bar = |bar: &Bar| {
            let millimetres = bar.diameter.si() * 1000.0;
            (
                bar.key.clone(),
                format!("{} ({millimetres:.0} mm across)", bar.key),
            )
        };
        let beforehand = tables.stages.iter().filter(|stage| stage.beforehand);
        let kind = |it: &Kind| (it.code().to_owned(), it.title().to_owned());
        Self {
            rocks: tables.stone.rocks.iter().map(rock).collect(),
            bars: tables.bars.iter().map(bar).collect(),
            pers: Per::ALL.iter().map(|per| per.word().to_owned()).collect(),
            lessons: LessonChoice::all(plan, course, tables),
            beforehand: beforehand
                .map(|stage| (stage.id.clone(), stage.name.clone()))
                .collect(),
            questions: Kind::ALL.iter().map(kind).collect(),
        }
    }
}

impl LessonChoice {
    fn all(plan: &Plan, course: &Course, tables: &Tables) -> Vec<Self> {
        let conditions = Conditions::of(course, &plan.sun);
        let lessons = tables.lessons.iter().enumerate();
        lessons
            .map(|(at, lesson)| {
                let taught = plan.taught.contains(&at);
                Self {
                    id: lesson.id.clone(),
                    title: lesson.title.clone(),
                    fits: conditions.met_any(&lesson.when),
                    taught,
                    why: why(lesson, &course.running, &conditions, taught),
                }
            })
            .collect()
    }
}

/// Why a lesson is taught, or why not.
fn why(lesson: &Lesson, running: &Running, conditions: &Conditions, taught: bool) -> String {
    if running.left_out.contains(&lesson.id) {
        return "left out of this course".to_owned();
    }
    let met = |when: &&Applies| conditions.met(**when);
    let held: Vec<Applies> = lesson.when.iter().filter(met).copied().collect();
    match (held.is_empty(), taught) {
        (true, _) if running.asks_for(&lesson.id) => "asked for on this course".to_owned(),
        (true, _) if lesson.when.is_empty() => "only when it is asked for".to_owned(),
        (true, _) => format!("only where {}", either(&lesson.when)),
        (false, false) => "the stage it is for is not part of this course".to_owned(),
        (false, true) if held.contains(&Applies::Always) => "on every course".to_owned(),
        (false, true) => format!("because {}", either(&held)),
    }
}

fn either(these: &[Applies]) -> String {
    let words: Vec<&str> = these.iter().map(|it| in_words(*it)).collect();
    words.join(" or ")
}

/// A condition, to be said after `where` or `because`.
pub fn in_words(when: Applies) -> &'static str {
    match when {
        Applies::Always => "a course is held",
        Applies::Bars => "bar frames stand",
        Applies::Footing => "a trench is dug",
        Applies::Cope => "a cope is set",
        Applies::Throughs => "throughs are set",
        Applies::Heads => "an end is built",
        Applies::Retaining => "the wall holds back a bank",
        Applies::Curves => "the line bends",
        Applies::Slopes => "the ground is not level",
        Applies::Timber => "timber frames stand",
        Applies::OldWall => "stone of an old wall is used",
        Applies::Cold => "frost is likely",
        Applies::Hot => "heat is likely",
        Applies::Dark => "the days reach into the dark",
    }
}

#[cfg(test)]
mod tests {
    use super::why;
    use craft::conditions::Conditions;
    use craft::course::Running;
    use craft::tables::{Applies, Before, Lesson};

    fn told(running: &Running, when: &[Applies], taught: bool) -> String {
        let lesson = Lesson {
            id: "it".to_owned(),
            title: String::new(),
            minutes: 15,
            before: Before::Course,
            safety: false,
            when: when.to_vec(),
        };
        let conditions = Conditions::just(&[Applies::Cope, Applies::Curves]);
        why(&lesson, running, &conditions, taught)
    }

    #[test]
    fn a_lesson_says_why_it_is_taught_or_not() {
        use Applies::{Always, Curves, OldWall, Slopes};
        let mut running = Running::default();
        for (when, taught, said) in [
            (&[Always][..], true, "on every course"),
            (&[Curves, Slopes], true, "because the line bends"),
            (
                &[OldWall, Slopes],
                false,
                "only where stone of an old wall is used or the ground is not level",
            ),
            (&[], false, "only when it is asked for"),
            (
                &[Always],
                false,
                "the stage it is for is not part of this course",
            ),
        ] {
            assert_eq!(told(&running, when, taught), said);
        }
        running.asked = vec!["it".to_owned()];
        assert_eq!(told(&running, &[], true), "asked for on this course");
        assert_eq!(told(&running, &[Always], true), "on every course");
        running.left_out = vec!["it".to_owned()];
        assert_eq!(told(&running, &[Always], false), "left out of this course");
    }
}
