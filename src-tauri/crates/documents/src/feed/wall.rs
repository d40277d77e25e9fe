//! Setting out the wall.

use super::Feed;
use crate::Course;
use crate::drawings::Drawings;
use serde_json::json;

pub(crate) fn setting_out(course: &Course) -> Feed<'_> {
    let drawings = Drawings::on_paper(course);
    let written = &course.written;
    let own = json!({
        "wall": written.wall,
        "frames": written.frames,
        "timber": written.timber,
        "retaining": written.retaining,
    });
    Feed::new(course, own)
        .with("section.svg", "section_words", move || drawings.section())
        .with("line-plan.svg", "line_plan_words", move || {
            drawings.line_plan()
        })
        .with("frame.svg", "frame_words", move || drawings.frame())
        .with_parts(
            "setting-out.svg",
            "setting_out_words",
            "setting_out_more",
            move || drawings.setting_out_in_parts(),
        )
        .with_parts(
            "elevation.svg",
            "elevation_words",
            "elevation_more",
            move || drawings.elevation_in_parts(),
        )
        .with("gauge.svg", "gauge_words", move || drawings.gauge())
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    #[test]
    fn what_is_not_wanted_is_neither_drawn_nor_described() {
        let library = Library::built_in().expect("the library");
        let file = CourseFile::parse(Library::example(false)).expect("a course");
        let course = Course::plan(file, &library).expect("a plan");
        let fed = setting_out(&course).drawn(|file| file == "gauge.svg");
        let names: Vec<_> = fed.drawings.iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["gauge.svg"]);
        assert!(fed.data["gauge_words"].is_string());
        assert!(fed.data["frame_words"].is_null());
        let all = setting_out(&course).drawn(|_| true);
        assert!(5 < all.drawings.len());
        assert!(all.data["frame_words"].is_string());
    }
}
