//! The drawings of a course, at the size they are shown.

use crate::Course;
use crate::over_time;
use crate::spelling;
use drawing::{Clock, Mark, Room, Scene, Timetable};
use files::course::Language;

/// A drawing as SVG with its description in words.
#[derive(Debug, Clone)]
pub struct Picture {
    /// SVG.
    pub svg: String,
    /// For people who can't see it.
    pub description: String,
}

/// All drawings of a course.
#[derive(Debug, Clone)]
pub struct Drawings {
    /// The wall cut across, with its figures.
    pub section: Picture,
    /// The same without figures, its parts lettered; the key stands beside it.
    pub section_blank: Picture,
    /// Letter and part.
    pub parts: Vec<(char, &'static str)>,
    /// The wall seen from the side.
    pub elevation: Picture,
    /// The line on the ground, seen from above.
    pub line_plan: Picture,
    /// The setting-out along a straightened line.
    pub setting_out: Picture,
    /// One frame put together.
    pub frame: Picture,
    /// The batter gauge.
    pub gauge: Picture,
    /// Where the stone lies, seen from above.
    pub heap_plan: Picture,
    /// The days as bars, with how sure each stage's time is.
    pub timetable: Picture,
    /// The chance of finishing against the length, where it was asked.
    pub chance_curve: Option<Picture>,
    /// Progress against the forecast, once something was told.
    pub progress: Option<Picture>,
}

/// The size each drawing is made for.
struct Rooms {
    section: Room,
    along: Room,
    line_plan: Room,
    setting_out: Room,
    frame: Room,
    gauge: Room,
    heap_plan: Room,
    timetable: Room,
    over_time: Room,
}

/// The width between the margins, on the narrower of the two papers.
const WIDE_MM: f64 = 180.0;

impl Drawings {
    /// Draws a course to fit its paper.
    pub fn on_paper(course: &Course) -> Self {
        Self::of(
            course,
            &Rooms {
                section: room(WIDE_MM, 170.0),
                along: room(WIDE_MM, 125.0),
                line_plan: room(WIDE_MM, 190.0),
                setting_out: room(WIDE_MM, 150.0),
                frame: room(WIDE_MM, 168.0),
                gauge: room(WIDE_MM, 92.0),
                heap_plan: room(WIDE_MM, 190.0),
                timetable: room(WIDE_MM, 225.0),
                over_time: room(WIDE_MM, 110.0),
            },
        )
    }

    /// Draws a course to fit the window, where a drawing stands beside its figures and its
    /// words must be larger against its lines.
    pub fn on_screen(course: &Course) -> Self {
        Self::of(
            course,
            &Rooms {
                section: room(130.0, 130.0),
                along: room(135.0, 78.0),
                line_plan: room(135.0, 105.0),
                setting_out: room(135.0, 78.0),
                frame: room(135.0, 105.0),
                gauge: room(135.0, 78.0),
                heap_plan: room(135.0, 105.0),
                timetable: room(135.0, 200.0),
                over_time: room(135.0, 90.0),
            },
        )
    }

    fn of(course: &Course, rooms: &Rooms) -> Self {
        let (plan, given) = (&course.plan, &course.file.course);
        let picture = |scene: Scene| Picture {
            svg: spelling::text(&scene.svg(), course.file.language),
            description: spelling::text(&scene.description, course.file.language),
        };
        let (clock, tables) = (clock(course), &course.library.tables);
        let timetable = Timetable::of(plan, given, tables, clock);
        let curve = over_time::curve(plan, given);
        let progress = over_time::progress(plan, given);
        let (blank, parts) = drawing::section_blank(plan, given, room(125.0, 105.0));
        let elevation = spelled(drawing::elevation(plan, given, rooms.along), course);
        Self {
            section: picture(drawing::section(plan, given, rooms.section)),
            section_blank: picture(blank),
            parts,
            elevation: Picture {
                svg: elevation.svg(),
                description: elevation.description,
            },
            line_plan: picture(drawing::line_plan(plan, given, rooms.line_plan)),
            frame: picture(drawing::frame(plan, given, rooms.frame)),
            setting_out: picture(drawing::setting_out(plan, given, rooms.setting_out)),
            gauge: picture(drawing::gauge(plan, given, rooms.gauge)),
            heap_plan: picture(drawing::heap_plan(
                plan,
                given,
                &plan.heaps,
                rooms.heap_plan,
            )),
            timetable: picture(drawing::timetable_bars(&timetable, rooms.timetable)),
            chance_curve: curve
                .map(|curve| drawing::chance_curve(&curve, given.units, rooms.over_time))
                .map(picture),
            progress: progress
                .map(|it| drawing::progress_against_forecast(&it, clock, rooms.over_time))
                .map(picture),
        }
    }
}

/// The scene's own words in the language of the course. Names stand on the elevation, and a
/// name is spelled as its owner spells it.
fn spelled(mut scene: Scene, course: &Course) -> Scene {
    let students = &course.file.course.group.students;
    // A long name stands on several lines: any word of it will do to leave a line alone.
    let parts: Vec<&str> = students
        .iter()
        .flat_map(|it| it.name.split_whitespace())
        .collect();
    let names = |words: &str| parts.iter().any(|part| words.contains(part));
    for mark in &mut scene.marks {
        if let Mark::Text(text) = mark
            && !names(&text.words)
        {
            text.words = spelling::text(&text.words, course.file.language);
        }
    }
    scene
}

/// Hours are written as the course's language does.
fn clock(course: &Course) -> Clock {
    match course.file.language {
        Language::EnGb => Clock::TwentyFour,
        Language::EnUs => Clock::Twelve,
    }
}

fn room(width_mm: f64, height_mm: f64) -> Room {
    Room {
        width_mm,
        height_mm,
    }
}
