//! What is carried to the wall: the site card, the frame card, the inspection before coping
//! and the poster of stints.

use super::Feed;
use crate::Course;
use crate::drawings::{Drawings, section_on_a_card};
use craft::people::Stint;
use craft::quantity::{Length, Units, show_length};
use serde_json::{Value, json};

/// The whole setting-out on one page.
pub(crate) fn site_card(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let throughs: Vec<Value> = written
        .stone
        .throughs
        .iter()
        .map(|row| json!({ "height": row.height, "length": row.length, "count": row.count }))
        .collect();
    let own = json!({
        "wall": written.wall,
        "frames": written.frames,
        "timber": written.timber.is_some(),
        "front": written.retaining.as_ref().map(|bank| &bank.front),
        "throughs": throughs,
    });
    let section = || section_on_a_card(course);
    Feed::new(course, own).with("section.svg", "section_words", section)
}

/// One frame put together.
pub(crate) fn frame_card(course: &Course) -> Feed<'_> {
    let drawings = Drawings::on_paper(course);
    let written = &course.written;
    let own = json!({
        "wall": written.wall,
        "frames": written.frames,
        "timber": written.timber,
        "front": written.retaining.as_ref().map(|bank| &bank.front),
        "caps": course.plan.frames.bars.as_ref().map(|bars| bars.count),
        "cautions": cautions(course, &["bar-ends", "driving-bars", "bar-noise", "bars-off", "timber-frames", "buried-services"]),
    });
    Feed::new(course, own)
        .with("frame.svg", "frame_words", move || drawings.frame())
        .with("gauge.svg", "gauge_words", move || drawings.gauge())
}

/// What to look for before coping, bay by bay.
pub(crate) fn inspection_sheet(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let stations = &written.frames.rows;
    let at = |frame: usize| {
        let row = stations.iter().find(|row| row.number == frame);
        row.map_or("", |row| row.station.as_str())
    };
    let bays: Vec<Value> = written
        .frames
        .bays
        .iter()
        .zip(&course.plan.frames.bays)
        .zip(&course.plan.frames.rows)
        .map(|((bay, planned), row)| {
            let to = row.station + planned.length;
            json!({ "from": at(bay.from), "to": at(bay.to), "joints": joints(course, row.station, to) })
        })
        .collect();
    let own = json!({
        "bays": bays,
        "wall": written.wall,
        "strings": written.frames.strings,
        "throughs": written.stone.throughs,
        "has_cope": 0 < course.plan.stone.copes,
        "bars": course.plan.frames.bars.is_some(),
        "ends": written.wall.ends,
        "cautions": cautions(course, &["not-certified", "built-ends", "stripping"]),
    });
    Feed::new(course, own)
}

/// Where two stints meet on a stretch of the line.
fn joints(course: &Course, from: Length, to: Length) -> Vec<String> {
    let joints = course.plan.stints.iter().skip(1).map(|stint| stint.from);
    let here = joints.filter(|joint| from <= *joint && *joint < to);
    here.map(|joint| show_length(joint, course.file.course.units))
        .collect()
}

/// Who builds where, day by day.
pub(crate) fn stints_poster(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let people = &written.running.people;
    let days: Vec<Value> = written
        .days
        .iter()
        .map(|day| {
            let own = people.iter().find(|it| it.day == day.number);
            json!({
                "number": day.number,
                "date": day.date,
                "start": day.start,
                "away": own.map_or(&[][..], |it| &it.away),
                "stints": stints_of_their_own(course, day.number),
            })
        })
        .collect();
    // Names alone: how much a person has built before is nobody's business on a wall.
    let own = json!({
        "stints": stints(&course.plan.stints, course.file.course.units),
        "days": days,
        "wall": written.wall,
    });
    let elevation = || Drawings::on_paper(course).elevation_in_parts();
    Feed::new(course, own).with_parts(
        "elevation.svg",
        "elevation_words",
        "elevation_more",
        elevation,
    )
}

/// The stints of a day on which they are not those of the first.
fn stints_of_their_own(course: &Course, number: usize) -> Vec<Value> {
    let mut days = course.plan.days.people.iter();
    let day = days.find(|it| it.day + 1 == number && !it.same_as_first);
    day.map_or_else(Vec::new, |day| {
        stints(&day.stints, course.file.course.units)
    })
}

fn stints(stints: &[Stint], units: Units) -> Vec<Value> {
    let stint = |(at, stint): (usize, &Stint)| {
        let names: Vec<&String> = stint.members.iter().map(|it| &it.name).collect();
        json!({
            "number": at + 1,
            "from": show_length(stint.from, units),
            "to": show_length(stint.to, units),
            "names": names,
        })
    };
    stints.iter().enumerate().map(stint).collect()
}

/// The cautions of these ids that hold on this course, in this order.
pub(super) fn cautions<'a>(course: &'a Course, ids: &[&str]) -> Vec<&'a shapes::written::Caution> {
    let all = &course.written.cautions;
    let of = |id: &&str| all.iter().find(|it| it.id == **id);
    ids.iter().filter_map(of).collect()
}
