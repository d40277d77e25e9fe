//! The drawings of a course, at the size they are shown.

mod parts;

use crate::over_time;
use crate::spelling;
use crate::{Course, Edition};
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
    /// Rooms tried where the words of a drawing need more than its own: none on the screen.
    larger: [Option<Room>; 2],
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

/// As long as a drawing can be that lies sideways under the head of a page.
const SIDEWAYS_MM: f64 = 210.0;

/// A wall of no more frames has its figures side by side under a drawing as wide as the window's.
const SHORT_WALL_FRAMES: usize = 8;

impl<'a> Drawings<'a> {
    /// Draws a course to fit its paper. In the large-print edition a drawing is made for less
    /// width, and enlarged to the same by the page: its words grow, and it takes more height.
    /// Where that leaves its words no room it is made to lie sideways, along the paper.
    pub fn on_paper(course: &'a Course) -> Self {
        let enlarged = course.edition.enlarged();
        let room = |width_mm: f64, height_mm: f64| {
            room(width_mm / enlarged, height_mm.min(PAGE_MM / enlarged))
        };
        // A frame shares its page with the title, which is larger in large print.
        let frame_mm = match course.edition {
            Edition::Usual => 168.0,
            Edition::LargePrint => 118.0,
        };
        Self {
            course,
            rooms: Rooms {
                section: room(WIDE_MM, 170.0),
                section_blank: room(125.0, 105.0),
                along: room(WIDE_MM, 125.0),
                line_plan: room(WIDE_MM, 190.0),
                setting_out: room(WIDE_MM, 150.0),
                frame: room(WIDE_MM, frame_mm),
                gauge: room(WIDE_MM, 92.0),
                heap_plan: room(WIDE_MM, 190.0),
                timetable: room(WIDE_MM, 200.0),
                over_time: room(WIDE_MM, 110.0),
            },
            larger: [None, sideways(course)],
        }
    }

    /// Draws a course to fit the window, where a drawing stands beside its figures and its
    /// words must be larger against its lines. Its place there is half as wide again as high.
    pub fn on_screen(course: &'a Course) -> Self {
        // Under the many frames of a long wall figures stand upright, and take the height.
        let along = if course.plan.frames.rows.len() <= SHORT_WALL_FRAMES {
            room(150.0, 100.0)
        } else {
            room(135.0, 78.0)
        };
        Self {
            course,
            rooms: Rooms {
                section: room(130.0, 130.0),
                section_blank: room(125.0, 105.0),
                along,
                line_plan: room(135.0, 105.0),
                setting_out: room(135.0, 90.0),
                frame: room(135.0, 105.0),
                gauge: room(135.0, 90.0),
                heap_plan: room(135.0, 105.0),
                timetable: room(135.0, 200.0),
                over_time: room(135.0, 90.0),
            },
            larger: [None, None],
        }
    }

    /// Draws a course to fit a lesson's page, beside what is said of it.
    pub(crate) fn on_card(course: &'a Course) -> Self {
        let wide = WIDE_MM / course.edition.enlarged();
        let room = |width_mm: f64, height_mm: f64| room(width_mm.min(wide), height_mm);
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
            larger: [Some(room(wide, 150.0)), sideways(course)],
        }
    }

    /// The wall cut across, with its figures.
    #[must_use]
    pub fn section(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(self.drawn(self.rooms.section, |room| {
            drawing::section(plan, given, room)
        }))
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
        self.picture_with_names(self.elevation_scene())
    }

    fn elevation_scene(&self) -> Scene {
        let (plan, given) = self.planned();
        self.drawn(self.rooms.along, |room| {
            drawing::elevation(plan, given, room)
        })
    }

    /// The line on the ground, seen from above.
    #[must_use]
    pub fn line_plan(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(self.drawn(self.rooms.line_plan, |room| {
            drawing::line_plan(plan, given, room)
        }))
    }

    /// The setting-out along a straightened line.
    #[must_use]
    pub fn setting_out(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(self.drawn(self.rooms.setting_out, |room| {
            drawing::setting_out(plan, given, room)
        }))
    }

    /// One frame put together.
    #[must_use]
    pub fn frame(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(self.drawn(self.rooms.frame, |room| drawing::frame(plan, given, room)))
    }

    /// The batter gauge.
    #[must_use]
    pub fn gauge(&self) -> Picture {
        let (plan, given) = self.planned();
        self.picture(self.drawn(self.rooms.gauge, |room| drawing::gauge(plan, given, room)))
    }

    /// Where the stone lies, seen from above.
    #[must_use]
    pub fn heap_plan(&self) -> Picture {
        self.picture(self.heap_plan_scene())
    }

    fn heap_plan_scene(&self) -> Scene {
        let (plan, given) = self.planned();
        let heaps = &plan.heaps;
        let draw = |room| drawing::heap_plan(plan, given, heaps, room);
        self.drawn(self.rooms.heap_plan, draw)
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

    /// A drawing in its own room; or, where its words need more, in the larger room in which
    /// its letters come out largest.
    fn drawn(&self, room: Room, draw: impl Fn(Room) -> Scene) -> Scene {
        let wanted = self.course.edition.enlarged();
        let mut best = draw(room);
        for room in self.larger.into_iter().flatten() {
            if wanted <= self.printed(&best) {
                break;
            }
            let other = draw(room);
            if self.printed(&best) < self.printed(&other) {
                best = other;
            }
        }
        best
    }

    /// How much larger than drawn a drawing is printed at most, upright or, in large print,
    /// sideways: as `picture` of `look.typ` does.
    fn printed(&self, scene: &Scene) -> f64 {
        let (wide, high) = (scene.width_mm, scene.height_mm);
        let upright = (WIDE_MM / wide).min(PAGE_MM / high);
        let part = match self.course.edition {
            Edition::Usual => upright,
            Edition::LargePrint => upright.max((SIDEWAYS_MM / wide).min(WIDE_MM / high)),
        };
        // A little for rounding in the scene's own margins.
        part + 1e-9
    }

    /// One on which students' names stand.
    fn picture_with_names(&self, scene: Scene) -> Picture {
        let scene = spelled(scene, self.course);
        Picture {
            svg: scene.svg(),
            description: scene.description,
            handles: scene.handles,
            days: scene.days,
        }
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

/// The height that the site card's section has on a page of large print, before it is enlarged:
/// as a rule, so that figures stand below it, and at most.
const ABOVE_FIGURES_MM: f64 = 122.0;
const HIGHEST_MM: f64 = 144.0;

/// The section at the size it has on the site card, beside its figures.
pub(crate) fn section_on_a_card(course: &Course) -> Picture {
    let (plan, given) = (&course.plan, &course.file.course);
    let drawn = |wide, high| drawing::section(plan, given, room(wide, high));
    // In large print its figures stand below it, so that it has the whole width; where its words
    // ask for more height, as those of a bank do, it gets that rather than smaller words.
    let scene = match course.edition {
        Edition::Usual => drawn(100.0, 96.0),
        Edition::LargePrint => {
            let wide = WIDE_MM / course.edition.enlarged();
            let scene = drawn(wide, ABOVE_FIGURES_MM);
            if scene.height_mm <= ABOVE_FIGURES_MM {
                scene
            } else {
                drawn(wide, HIGHEST_MM)
            }
        }
    };
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

/// The room of a drawing that lies sideways in large print.
fn sideways(course: &Course) -> Option<Room> {
    let enlarged = course.edition.enlarged();
    let lying = room(SIDEWAYS_MM / enlarged, WIDE_MM / enlarged);
    (course.edition == Edition::LargePrint).then_some(lying)
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
