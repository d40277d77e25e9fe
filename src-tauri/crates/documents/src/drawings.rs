//! The drawings of a course, at the size they are shown.

use crate::Course;
use crate::over_time;
use crate::spelling;
use craft::plan::Plan;
use drawing::{Clock, DayRow, Handle, Mark, Room, Scene, Timetable};
use files::course::Language;

/// A drawing as SVG with its description in words.
#[derive(Debug, Clone, Default)]
pub struct Picture {
    /// SVG.
    pub svg: String,
    /// For people who can't see it.
    pub description: String,
    /// What can be taken hold of on a screen.
    pub handles: Vec<Handle>,
    /// Where the bars of each day lie, in a picture of days.
    pub days: Vec<DayRow>,
}

/// All drawings of a course, each made when it is asked for.
#[derive(Debug, Clone, Copy)]
pub struct Drawings<'a> {
    course: &'a Course,
    rooms: Rooms,
}

/// The size each drawing is made for.
#[derive(Debug, Clone, Copy)]
struct Rooms {
    section: Room,
    section_blank: Room,
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

/// As high as a drawing can be that has a page to itself, on the lower of the two papers.
const PAGE_MM: f64 = 225.0;

impl<'a> Drawings<'a> {
    /// Draws a course to fit its paper. In the large-print edition a drawing is made for less
    /// width, and enlarged to the same by the page: its words grow, and it takes more height.
    pub fn on_paper(course: &'a Course) -> Self {
        let enlarged = course.edition.enlarged();
        let room = |width_mm: f64, height_mm: f64| {
            room(width_mm / enlarged, height_mm.min(PAGE_MM / enlarged))
        };
        Self {
            course,
            rooms: Rooms {
                section: room(WIDE_MM, 170.0),
                section_blank: room(125.0, 105.0),
                along: room(WIDE_MM, 125.0),
                line_plan: room(WIDE_MM, 190.0),
                setting_out: room(WIDE_MM, 150.0),
                frame: room(WIDE_MM, 168.0),
                gauge: room(WIDE_MM, 92.0),
                heap_plan: room(WIDE_MM, 190.0),
                timetable: room(WIDE_MM, 225.0),
                over_time: room(WIDE_MM, 110.0),
            },
        }
    }

    /// Draws a course to fit the window, where a drawing stands beside its figures and its
    /// words must be larger against its lines.
    pub fn on_screen(course: &'a Course) -> Self {
        Self {
            course,
            rooms: Rooms {
                section: room(130.0, 130.0),
                section_blank: room(125.0, 105.0),
                along: room(135.0, 78.0),
                line_plan: room(135.0, 105.0),
                setting_out: room(135.0, 78.0),
                frame: room(135.0, 105.0),
                gauge: room(135.0, 78.0),
                heap_plan: room(135.0, 105.0),
                timetable: room(135.0, 200.0),
                over_time: room(135.0, 90.0),
            },
        }
    }

    /// Draws a course to fit a lesson's page, beside what is said of it.
    pub(crate) fn on_card(course: &'a Course) -> Self {
        Self {
            course,
            rooms: Rooms {
                section: room(110.0, 88.0),
                section_blank: room(110.0, 88.0),
                along: room(125.0, 64.0),
                line_plan: room(125.0, 85.0),
                setting_out: room(125.0, 64.0),
                frame: room(125.0, 88.0),
                gauge: room(125.0, 64.0),
                heap_plan: room(125.0, 85.0),
                timetable: room(135.0, 200.0),
                over_time: room(135.0, 90.0),
            },
        }
    }

    /// The wall cut across, with its figures.
    #[must_use]
    pub fn section(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(drawing::section(plan, given, self.rooms.section))
    }

    /// The same without figures, its parts lettered; and the key to stand beside it, letter and
    /// part.
    #[must_use]
    pub fn section_blank(&self) -> (Picture, Vec<(char, &'static str)>) {
        let (plan, given) = self.planned();
        let (blank, parts) = drawing::section_blank(plan, given, self.rooms.section_blank);
        (self.picture(blank), parts)
    }

    /// The wall seen from the side.
    #[must_use]
    pub fn elevation(&self) -> Picture {
        let (plan, given) = self.planned();
        let scene = drawing::elevation(plan, given, self.rooms.along);
        let scene = spelled(scene, self.course);
        Picture {
            svg: scene.svg(),
            description: scene.description,
            handles: scene.handles,
            days: scene.days,
        }
    }

    /// The line on the ground, seen from above.
    #[must_use]
    pub fn line_plan(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(drawing::line_plan(plan, given, self.rooms.line_plan))
    }

    /// The setting-out along a straightened line.
    #[must_use]
    pub fn setting_out(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(drawing::setting_out(plan, given, self.rooms.setting_out))
    }

    /// One frame put together.
    #[must_use]
    pub fn frame(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(drawing::frame(plan, given, self.rooms.frame))
    }

    /// The batter gauge.
    #[must_use]
    pub fn gauge(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(drawing::gauge(plan, given, self.rooms.gauge))
    }

    /// Where the stone lies, seen from above.
    #[must_use]
    pub fn heap_plan(&self) -> Picture {
        let (plan, given) = self.planned();
        let heaps = &plan.heaps;
        self.picture(drawing::heap_plan(plan, given, heaps, self.rooms.heap_plan))
    }

    /// The days as bars, with how sure each stage's time is.
    #[must_use]
    pub fn timetable(&self) -> Picture {
        let (plan, given) = self.planned();
        let tables = &self.course.library.tables;
        let timetable = Timetable::of(plan, given, tables, clock(self.course));
        self.picture(drawing::timetable_bars(&timetable, self.rooms.timetable))
    }

    /// The chance of finishing against the length, where it was asked.
    #[must_use]
    pub fn chance_curve(&self) -> Option<Picture> {
        let (plan, given) = self.planned();
        let curve = over_time::curve(plan, given)?;
        let scene = drawing::chance_curve(&curve, given.units, self.rooms.over_time);
        Some(self.picture(scene))
    }

    /// Progress against the forecast, once something was told.
    #[must_use]
    pub fn progress(&self) -> Option<Picture> {
        let (plan, given) = self.planned();
        let progress = over_time::progress(plan, given)?;
        let (clock, room) = (clock(self.course), self.rooms.over_time);
        Some(self.picture(drawing::progress_against_forecast(&progress, clock, room)))
    }

    fn planned(&self) -> (&'a Plan, &'a craft::course::Course) {
        (&self.course.plan, &self.course.file.course)
    }

    fn picture(&self, scene: Scene) -> Picture {
        let language = self.course.file.language;
        Picture {
            svg: spelling::text(&scene.svg(), language),
            description: spelling::text(&scene.description, language),
            handles: scene.handles,
            days: scene.days,
        }
    }
}

/// The section at the size it has on the site card, beside its figures.
pub(crate) fn section_on_a_card(course: &Course) -> Picture {
    let (plan, given) = (&course.plan, &course.file.course);
    let scene = drawing::section(plan, given, room(100.0, 96.0));
    Picture {
        svg: spelling::text(&scene.svg(), course.file.language),
        description: spelling::text(&scene.description, course.file.language),
        handles: scene.handles,
        days: scene.days,
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
