//! Setting out the wall.

use super::Feed;
use crate::Course;
use crate::drawings::Drawings;
use serde_json::json;

pub(crate) fn setting_out(course: &Course) -> Feed {
    let drawings = Drawings::on_paper(course);
    let written = &course.written;
    let own = json!({
        "wall": written.wall,
        "frames": written.frames,
        "timber": written.timber,
        "retaining": written.retaining,
    });
    Feed::new(course, own)
        .with("section.svg", "section_words", drawings.section())
        .with("line-plan.svg", "line_plan_words", drawings.line_plan())
        .with("frame.svg", "frame_words", drawings.frame())
        .with_parts(
            "setting-out.svg",
            ("setting_out_words", "setting_out_more"),
            drawings.setting_out_in_parts(),
        )
        .with_parts(
            "elevation.svg",
            ("elevation_words", "elevation_more"),
            drawings.elevation_in_parts(),
        )
        .with("gauge.svg", "gauge_words", drawings.gauge())
}
