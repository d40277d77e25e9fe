//! The drawings that are sent to the window: the one that is looked at, and of the others only
//! whether there is one.
//!
//! All ten are some 220 kB, half of what would be made and sent for each key press.

use crate::handles;
use documents::{Course, Drawings, Picture};
use shapes::window;
use std::collections::BTreeMap;

/// The drawing the window opens with.
pub(crate) const AT_FIRST: &str = "elevation";

/// What the window is sent of the drawings.
pub(crate) struct Drawn {
    /// The one that is looked at; the others are empty.
    pub(crate) drawings: window::Drawings,
    /// What can be taken hold of in it.
    pub(crate) handles: window::Handles,
}

/// The drawing of this name (a field of [`window::Drawings`]), with what can be taken hold of in it
/// by the `values` of the course file.
pub(crate) fn shown(course: &Course, looked_at: &str, values: &BTreeMap<String, String>) -> Drawn {
    let all = Drawings::on_screen(course);
    let made = |name: &str, make: fn(&Drawings<'_>) -> Picture| {
        (name == looked_at).then(|| make(&all)).unwrap_or_default()
    };
    // Only by making them is it known whether there are these two; both are quickly made.
    let kept = |name: &str, picture: Picture| {
        if name == looked_at {
            picture.svg
        } else {
            String::new()
        }
    };
    let section = made("section", Drawings::section);
    let elevation = made("elevation", Drawings::elevation);
    let timetable = made("timetable", Drawings::timetable);
    Drawn {
        handles: window::Handles {
            section: handles::shown(&section.handles, values),
            elevation: handles::shown(&elevation.handles, values),
            timetable: handles::of_days(course, &timetable.days),
        },
        drawings: window::Drawings {
            section: section.svg,
            elevation: elevation.svg,
            line_plan: made("line_plan", Drawings::line_plan).svg,
            setting_out: made("setting_out", Drawings::setting_out).svg,
            frame: made("frame", Drawings::frame).svg,
            gauge: made("gauge", Drawings::gauge).svg,
            heap_plan: made("heap_plan", Drawings::heap_plan).svg,
            timetable: timetable.svg,
            chance_curve: all.chance_curve().map(|it| kept("chance_curve", it)),
            progress: all.progress().map(|it| kept("progress", it)),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    #[test]
    fn only_what_is_looked_at_is_made_and_what_there_is_not_stays_none() {
        let library = Library::built_in().expect("the library");
        let file = CourseFile::parse(Library::example(false)).expect("a course");
        let course = Course::plan(file, &library).expect("a plan");
        let opened = shown(&course, AT_FIRST, &BTreeMap::new()).drawings;
        assert!(opened.elevation.starts_with("<svg"));
        assert_eq!(opened.section, "");
        assert_eq!(opened.chance_curve.as_deref(), Some(""), "there is one");
        assert_eq!(opened.progress, None, "nothing has been told");
        let curve = shown(&course, "chance_curve", &BTreeMap::new()).drawings;
        assert!(curve.chance_curve.is_some_and(|it| it.starts_with("<svg")));
        assert_eq!(curve.elevation, "");
    }
}
