//! A course and tables for the tests of the worksheets. All invented, or as marked.

use crate::course::{
    Course, CurveSpacing, Day, End, Experience, FrameKind, FramesGiven, Group, KitGiven, OnSite,
    Pairing, Running, StoneGiven, Student, ThroughReach, ThroughSize, Venue, WallGiven, WallKind,
    WeatherGiven,
};
use crate::frames::Frames;
use crate::pace::Fatigue;
use crate::quantity::{Units, kg_per_m, kg_per_m3, kilograms, metres, millimetres, newtons};
use crate::retaining::{Bank, Limits};
use crate::tables::{
    Along, Bar, BoardTable, Crew, FrameTable, HazardAsked, HazardTable, PaceSpread, PaceTable,
    Places, ReadyTable, Rests, RetainingTable, Spread, Stage, StoneTable, StringTable, Tables,
    WeatherTable, Work,
};
use crate::timber::{Lumber, Timber};
use crate::wall::{Batter, Stretch, Top, Wall};
use crate::worksheet::WorksheetsGiven;
use chrono::{NaiveDate, NaiveTime};
use chrono_tz::Tz;

const SOURCE: &str = "common practice, no source";

/// A small course in these units, with this seed.
pub(crate) fn course(units: Units, seed: u64) -> Course {
    Course {
        title: "A weekend".to_owned(),
        units,
        venue: Venue {
            name: "An invented farm".to_owned(),
            country: None,
            latitude: 54.2,
            longitude: -2.4,
            time_zone: Tz::UTC,
            longest_wall: None,
        },
        days: vec![Day {
            date: NaiveDate::default(),
            start: NaiveTime::default(),
            finish: NaiveTime::default(),
            breaks: Vec::new(),
            weather: WeatherGiven::default(),
        }],
        group: Group {
            instructors: 1,
            assistants: 0,
            students: vec![Student::new("Student 1", Experience::Novice)],
            pairing: Pairing::default(),
        },
        absences: Vec::new(),
        wall: wall(),
        stone: StoneGiven {
            kind: None,
            density: None,
            voids: None,
            hearting_share: None,
            waste: None,
            on_site: OnSite::Heap(kilograms(0.0)),
            load: None,
            most: None,
            lead_days: None,
            closed: Vec::new(),
            old_wall: None,
            practice_pitch: false,
        },
        frames: FramesGiven {
            kind: FrameKind::Bar,
            in_stock: Some(6),
            set_size: 3,
            leapfrog: false,
            spacing: metres(3.0),
            curve: CurveSpacing::AtMost(metres(1.5)),
            tolerance: metres(0.025),
            lumber_lengths: Vec::new(),
            bar: "No. 5".to_owned(),
            stock_lengths: vec![metres(1.8)],
            embedment: metres(0.45),
            projection: metres(0.14),
        },
        kit: KitGiven::default(),
        vehicles: Vec::new(),
        money: None,
        ready: None,
        rates: Vec::new(),
        running: Running::default(),
        recorded: Vec::new(),
        chance: 0.8,
        seed,
        worksheets: WorksheetsGiven::default(),
    }
}

fn wall() -> WallGiven {
    WallGiven {
        kind: WallKind::Freestanding,
        height: metres(1.07),
        top_width: metres(0.41),
        left: Batter::PLUMB,
        right: Batter::PLUMB,
        cope_height: metres(0.25),
        cope_thickness: metres(0.1),
        length: None,
        line: vec![straight(4.0), straight(2.0)],
        ground: Vec::new(),
        top: Top::Level,
        through_rows: vec![metres(0.55)],
        through_spacing: metres(0.9),
        through: ThroughSize {
            width: metres(0.3),
            thickness: metres(0.12),
            projection: metres(0.0),
        },
        trench_dug: false,
        through_reach: ThroughReach::Across,
        footing: None,
        ends: [End::Head, End::Joined],
        head_batter: [Batter::PLUMB; 2],
    }
}

fn straight(length: f64) -> Stretch {
    Stretch {
        length: metres(length),
        bend: None,
    }
}

/// The setting-out of a course whose length is given by its line.
pub(crate) fn set_out(course: &Course) -> Frames {
    let section = course.wall.section().expect("a sound wall");
    let wall = Wall::plain(section, metres(6.0));
    Frames::set_out(&course.wall, &wall, &course.frames, &tables().bars).expect("a known bar")
}

fn hazards_asked() -> Vec<HazardAsked> {
    (1..=16)
        .map(|at| HazardAsked {
            hazard: format!("Hazard {at}"),
            control: format!("Control {at}"),
            source: SOURCE.to_owned(),
        })
        .collect()
}

/// Tables with what questions need.
pub(crate) fn tables() -> Tables {
    Tables {
        stone: StoneTable {
            rocks: Vec::new(),
            voids: spread(0.25),
            hearting_share: spread(0.2),
            waste: spread(0.2),
            cope_fill: spread(0.7),
            reused: spread(0.8),
            lead_days: 10,
            lead_source: SOURCE.to_owned(),
        },
        bars: vec![Bar {
            key: "No. 5".to_owned(),
            diameter: millimetres(15.875),
            mass: kg_per_m(1.5522),
            source: "ASTM A615/A615M, Table 1".to_owned(),
        }],
        frames: frames(),
        retaining: retaining(),
        pace: pace(),
        stages: stages(),
        kit: Vec::new(),
        lessons: Vec::new(),
        heaps: crate::heaps::tests::table(),
        lifting: crate::lifting::sample::table(),
        ready: ReadyTable::default(),
        weather: WeatherTable::default(),
        cautions: Vec::new(),
        hazards: HazardTable::default(),
        hazards_asked: hazards_asked(),
    }
}

fn spread(centre: f64) -> Spread {
    Spread {
        centre,
        low: centre - 0.05,
        high: centre + 0.05,
        source: SOURCE.to_owned(),
    }
}

fn frames() -> FrameTable {
    FrameTable {
        board: BoardTable {
            width: millimetres(100.0),
            thickness: millimetres(30.0),
            overhang: millimetres(75.0),
            play: millimetres(2.0),
            source: SOURCE.to_owned(),
        },
        string: StringTable {
            mass: kg_per_m(0.0012),
            pull: newtons(35.0),
            tail: metres(0.3),
            source: SOURCE.to_owned(),
        },
        timber: Timber {
            width: metres(0.05),
            thickness: metres(0.025),
            projection: metres(0.1),
            below_ground: metres(0.0),
            overhang: metres(0.05),
            lower_rail: metres(0.2),
            lumber: Lumber {
                stock_lengths: [1.8, 2.4, 3.0, 3.6].map(metres).to_vec(),
                kerf: metres(0.003),
                end_waste: metres(0.01),
            },
        },
        timber_source: SOURCE.to_owned(),
        gap_play: millimetres(25.0),
        least_grip: metres(0.25),
        footing_source: SOURCE.to_owned(),
        end_course: metres(0.15),
        end_source: SOURCE.to_owned(),
    }
}

fn retaining() -> RetainingTable {
    RetainingTable {
        limits: Limits {
            overturning: 1.5,
            sliding: 1.5,
            base_share: 0.5,
            permit_height: metres(1.2),
        },
        bank: Bank {
            retained: metres(0.0),
            fill: kg_per_m3(1800.0),
            friction_degrees: 30.0,
            wall_friction_degrees: 20.0,
            slope_degrees: 0.0,
            load_kpa: 0.0,
            base_friction_degrees: 30.0,
        },
        drainage: metres(0.3),
        drainage_density: kg_per_m3(1600.0),
        ask: String::new(),
        ask_source: SOURCE.to_owned(),
        assumptions: Vec::new(),
    }
}

fn pace() -> PaceTable {
    PaceTable {
        rates: Vec::new(),
        spread: PaceSpread {
            course: 0.2,
            stage: 0.2,
            instructor: 0.1,
            instructor_stage: 0.1,
            pair: 0.2,
            reading: 0.05,
            clock_minutes: 5.0,
            source: SOURCE.to_owned(),
        },
        places: Places {
            hands_on: 0.67,
            learning_hours: 2.0,
            learning_factor: 1.5,
            facing_pair: metres(1.5),
            diggers: metres(2.0),
            coping_crew: metres(3.0),
            students_per_instructor: 6.0,
            too_many_students: 10.0,
            one_wall: 12,
            source: SOURCE.to_owned(),
        },
        rests: Rests {
            name: "Rest".to_owned(),
            longest: 120.0,
            grace: 15.0,
            minutes: 15.0,
            source: SOURCE.to_owned(),
        },
        fatigue: Fatigue {
            from_hours: 4.0,
            per_hour: 0.05,
            least: 0.75,
            source: SOURCE.to_owned(),
        },
    }
}

fn stages() -> Vec<Stage> {
    [
        ("Sort the heap", Work::HeapTonnes),
        ("Peg and line", Work::Minutes(15)),
        ("Dig the trench", Work::TrenchCubicMetres),
        ("Set the frames", Work::Frames),
        ("Lay the footing", Work::FootingTonnes),
        ("First lift", Work::FirstLiftTonnes),
        ("Set the throughs", Work::Throughs),
        ("Second lift", Work::SecondLiftTonnes),
        ("Finish the built ends", Work::Heads),
        ("Level up", Work::Metres),
        ("Set and pin the copes", Work::CopeMetres),
    ]
    .into_iter()
    .map(|(name, work)| Stage {
        id: name.to_lowercase().replace(' ', "-"),
        name: name.to_owned(),
        work,
        crew: Crew::Everyone,
        string: false,
        along: Along::BayByBay,
        beforehand: false,
        note: String::new(),
        if_left: String::new(),
    })
    .collect()
}
