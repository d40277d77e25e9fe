//! The drawings that are sent to the window: the one that is looked at, and of the others only
//! whether there is one.
//!
//! All ten are some 220 kB, half of what would be made and sent for each key press.

use crate::handles;
use crate::history::Values;
use documents::{Course, Drawings, Picture};
use shapes::window;

/// The drawing the window opens with.
pub(crate) const AT_FIRST: &str = "elevation";

/// What the window is sent of the drawings.
pub(crate) struct Drawn {
    /// The one that is looked at; the others are empty.
    pub(crate) drawings: window::Drawings,
    /// What can be taken hold of in it.
    pub(crate) handles: window::Handles,
}

/// The drawing of this name (a field of [`window::Drawings`]), if one is looked at, with what can be
/// taken hold of in it by the `values` of the course file.
pub(crate) fn shown(course: &Course, looked_at: Option<&str>, values: &Values) -> Drawn {
    let all = Drawings::on_screen(course);
    let is_looked_at = |name: &str| looked_at == Some(name);
    let made =
        |name: &str, make: &dyn Fn() -> Picture| is_looked_at(name).then(make).unwrap_or_default();
    // Only by making them is it known whether there are these two; both are quickly made.
    let kept = |name: &str, picture: Picture| {
        if is_looked_at(name) {
            picture.svg
        } else {
            String::new()
        }
    };
    let section = made("section", &|| all.section());
    let elevation = made("elevation", &|| all.elevation());
    let timetable = made("timetable", &|| all.timetable());
    Drawn {
        handles: window::Handles {
            section: handles::shown(&section.handles, values),
            elevation: handles::shown(&elevation.handles, values),
            timetable: handles::of_days(course, &timetable.days),
        },
        drawings: window::Drawings {
            section: section.svg,
            elevation: elevation.svg,
            line_plan: made("line_plan", &|| all.line_plan()).svg,
            setting_out: made("setting_out", &|| all.setting_out()).svg,
            frame: made("frame", &|| all.frame()).svg,
            gauge: made("gauge", &|| all.gauge()).svg,
            heap_plan: made("heap_plan", &|| all.heap_plan()).svg,
            timetable: timetable.svg,
            chance_curve: all.chance_curve().map(|it| kept("chance_curve", it)),
            progress: all.progress().map(|it| kept("progress", it)),
        },
    }
}

/// A drawing of the course by the name that lessons have for it.
pub(crate) fn named(course: &Course, name: &str) -> Option<Picture> {
    let all = Drawings::on_screen(course);
    Some(match name {
        "section" => all.section(),
        "elevation" => all.elevation(),
        "line-plan" => all.line_plan(),
        "setting-out" => all.setting_out(),
        "frame" => all.frame(),
        "gauge" => all.gauge(),
        "heap-plan" => all.heap_plan(),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    #[test]
    fn every_drawing_that_lessons_name_is_there() {
        let library = Library::built_in().expect("the library");
        let file = CourseFile::parse(Library::example(false)).expect("a course");
        let course = Course::plan(file, &library).expect("a plan");
        for name in files::COURSE_DRAWINGS {
            assert!(named(&course, name).is_some(), "{name}");
        }
        assert!(named(&course, "no-such").is_none());
    }

    #[test]
    fn only_what_is_looked_at_is_made_and_what_there_is_not_stays_none() {
        let library = Library::built_in().expect("the library");
        let file = CourseFile::parse(Library::example(false)).expect("a course");
        let course = Course::plan(file, &library).expect("a plan");
        let opened = shown(&course, Some(AT_FIRST), &Values::new()).drawings;
        assert!(opened.elevation.starts_with("<svg"));
        assert_eq!(opened.section, "");
        assert_eq!(opened.chance_curve.as_deref(), Some(""), "there is one");
        assert_eq!(opened.progress, None, "nothing has been told");
        let curve = shown(&course, Some("chance_curve"), &Values::new()).drawings;
        assert!(curve.chance_curve.is_some_and(|it| it.starts_with("<svg")));
        assert_eq!(curve.elevation, "");
        let none = shown(&course, None, &Values::new()).drawings;
        assert_eq!(none.elevation, "");
        assert_eq!(none.chance_curve.as_deref(), Some(""), "there is one");
    }
}
