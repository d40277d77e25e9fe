//! What the papers for the wall and the papers on hazards must say, as people read it.

use checks::courses::{planned, with};
use craft::course::FrameKind;
use documents::Course;

/// The figures of the wall, the first frame, and where the rest is if it is not here.
pub fn site_card(course: &Course) -> Vec<String> {
    let (wall, frames) = (&course.written.wall, &course.written.frames);
    let mut words = vec![
        wall.height.clone(),
        wall.base_width.clone(),
        wall.top_width.clone(),
        wall.length.clone(),
        wall.footing_width.clone(),
        wall.footing_depth.clone(),
        frames.bay.clone(),
    ];
    let first = frames.rows.iter().take(3);
    words.extend(
        first.flat_map(|row| [&row.station, &row.left_offset, &row.right_rise].map(Clone::clone)),
    );
    let top = frames.strings.iter().find(|one| one.top);
    words.extend(top.map(|one| one.width.clone()));
    let bay = frames.bays.first();
    words.extend(bay.map(|bay| bay.left_to_right.clone()));
    words
}

/// The parts, the first frame's figures, and what guards the bars.
pub fn frame_card(course: &Course) -> Vec<String> {
    let frames = &course.written.frames;
    let mut words = vec![frames.count.to_string()];
    words.extend(frames.rows.first().map(|row| row.base_width.clone()));
    if let Some(bars) = &frames.bars {
        words.extend([bars.embedment.clone(), bars.board_length.clone()]);
        words.push("a plain plastic cap stops a scratch and nothing more".into());
    }
    if let Some(timber) = &course.written.timber {
        let list = timber.cut_list.iter();
        words.extend(list.map(|row| row.length.clone()));
    }
    let told = course.written.cautions.iter();
    let told = told.filter(|it| it.id == "driving-bars" || it.id == "timber-frames");
    words.extend(told.map(|it| it.text.clone()));
    words
}

/// Every bay with its ends, and that nobody has certified the wall.
pub fn inspection_sheet(course: &Course) -> Vec<String> {
    let frames = &course.written.frames;
    let bays = frames.bays.len();
    let mut words: Vec<String> = (1..=bays).map(|bay| format!("Bay {bay}")).collect();
    words.extend(frames.rows.iter().map(|row| row.station.clone()));
    words.push("Certified by nobody: keep people off.".into());
    let joints = course.written.stints.iter().skip(1);
    words.extend(joints.map(|stint| stint.from.clone()));
    words
}

/// Every student, and every stint's ends.
pub fn stints_poster(course: &Course) -> Vec<String> {
    let students = course.file.course.group.students.iter();
    let mut words: Vec<String> = students.map(|it| it.name.clone()).collect();
    for stint in &course.written.stints {
        words.extend([stint.from.clone(), stint.to.clone()]);
    }
    words
}

/// Every hazard whole, with its reason, its question and all its controls.
pub fn risk_assessment(course: &Course) -> Vec<String> {
    let mut words = vec!["An aid to your own assessment, not a substitute".to_owned()];
    for it in &course.plan.hazards {
        words.extend([&it.name, &it.harm, &it.who, &it.because, &it.source].map(Clone::clone));
        words.extend(it.ask.iter().chain(&it.controls).cloned());
    }
    words
}

/// The number to ring, and the stones that nobody lifts alone.
pub fn safety_briefing(course: &Course) -> Vec<String> {
    let country = course.file.course.venue.country.as_deref();
    let number = course.library.emergency(country);
    let mut words: Vec<String> = number.map(str::to_owned).into_iter().collect();
    let stones = course.written.lifting.stones.iter();
    words.extend(stones.map(|stone| stone.mass.clone()));
    if course.file.course.frames.kind == FrameKind::Bar {
        words.push("Nobody holds a bar that is being driven".into());
    }
    words
}

/// The hazards follow the course: none of bars where the frames are of timber, none of a cope
/// where there is none.
#[test]
fn the_hazards_are_those_of_the_course() {
    let ids = |text: &str| -> Vec<String> {
        let hazards = planned(text).plan.hazards;
        hazards.into_iter().map(|it| it.id).collect()
    };
    let usual = ids(&with(&[]));
    let other = ids(&with(&[
        ("kind = \"bar\"", "kind = \"timber\""),
        ("cope_height = \"0.25 m\"\n", ""),
    ]));
    for (id, in_usual, in_other) in [
        ("bar-impalement", true, false),
        ("driving-bars", true, false),
        ("timber-frames", false, true),
        ("copes", true, false),
        ("crushed-fingers", true, true),
        ("the-bank", false, false),
    ] {
        assert_eq!(usual.iter().any(|it| it == id), in_usual, "{id}");
        assert_eq!(other.iter().any(|it| it == id), in_other, "{id}, timber");
    }
}
