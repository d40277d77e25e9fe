//! A course that teaches one lesson alone: what the page of a lesson is looked at with while the
//! lesson is written.

use crate::{Course, spelling};
use craft::pace::timetable::Of;
use craft::tables::Lesson;
use files::Card;
use std::sync::Arc;

impl Course {
    /// This course, teaching nothing but one lesson: at its time where it is in the timetable already,
    /// at none where it is not. Figures, cautions and drawings stay those of the course.
    pub fn with_lesson_alone(&self, card: Card, lesson: Lesson) -> Self {
        let mut course = self.clone();
        let was = course.library.tables.lessons.iter();
        let was = was.map(|it| it.id == lesson.id).collect::<Vec<_>>();
        for entry in &mut course.plan.timetable {
            if let Some(Of::Lesson(number)) = entry.of {
                let is_this = was.get(number).is_some_and(|it| *it);
                entry.of = is_this.then_some(Of::Lesson(0));
            }
        }
        course.plan.taught = vec![0];
        course.library.cards = Arc::new(vec![card]);
        Arc::make_mut(&mut course.library.tables).lessons = vec![lesson];
        course.library = spelling::library(&course.library, course.file.language);
        course
    }
}

#[cfg(test)]
mod tests {
    use crate::{Course, fed, named};
    use files::Library;
    use files::course::CourseFile;

    #[test]
    fn one_lesson_stands_alone_with_its_time_and_the_courses_figures() {
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(Library::example(false)).expect("a course");
        let course = Course::plan(file, &library).expect("a plan");
        let handouts = named("lesson-handouts").expect("there");
        let all = fed(&course, handouts).data["lessons"].clone();
        let all = all.as_array().expect("lessons");
        let expected = all
            .iter()
            .find(|it| it["title"] == "Throughs")
            .expect("taught");
        let at = library
            .cards
            .iter()
            .position(|it| it.id == "throughs")
            .expect("there");
        let (card, lesson) = (
            library.cards[at].clone(),
            library.tables.lessons[at].clone(),
        );
        let alone = course.with_lesson_alone(card, lesson);
        assert_eq!(
            fed(&alone, handouts).data["lessons"],
            serde_json::json!([expected])
        );

        let at = library
            .cards
            .iter()
            .position(|it| it.id == "curves")
            .expect("there");
        let (card, lesson) = (
            library.cards[at].clone(),
            library.tables.lessons[at].clone(),
        );
        let alone = course.with_lesson_alone(card, lesson);
        let one = &fed(&alone, handouts).data["lessons"];
        assert_eq!(one[0]["title"], "Curves");
        assert_eq!(one[0]["times"], serde_json::json!([]));
    }
}
