//! Invented courses for tests: metric and imperial, tall and thin, short and long.

pub(crate) mod heaps;
pub(crate) mod lie;
pub(crate) mod tables;
mod throughs;

use craft::course::{
    Course, CurveSpacing, End, Experience, FrameKind, FramesGiven, Group, KitGiven, OnSite,
    Pairing, StoneGiven, Student, ThroughReach, ThroughSize, Venue, WallGiven, WallKind,
};
use craft::plan::Plan;
use craft::quantity::{FOOT_M, INCH_M, Length, Units, kg_per_m3, metres};
use craft::wall::{Batter, Footing, Top};

/// The plan of a course.
pub(crate) fn plan(course: &Course) -> Plan {
    craft::plan::plan(course, &tables::tables()).expect("the test courses are sound")
}

/// The plan of a course that may be one that can't be built.
pub(crate) fn sound_plan(course: &Course) -> Option<Plan> {
    craft::plan::plan(course, &tables::tables()).ok()
}

/// Every kind of course a drawing must cope with, by name.
pub(crate) fn courses() -> Vec<(&'static str, Course)> {
    let with = |change: &dyn Fn(&mut Course)| {
        let mut course = weekend();
        change(&mut course);
        course
    };
    let inches = |n: f64| metres(n * INCH_M);
    vec![
        ("weekend", weekend()),
        ("imperial", imperial()),
        (
            "plumb",
            with(&|c| {
                c.wall.left = Batter::PLUMB;
                c.wall.right = Batter::PLUMB;
            }),
        ),
        ("one face plumb", with(&|c| c.wall.left = Batter::PLUMB)),
        ("no cope", with(&|c| c.wall.cope_height = metres(0.0))),
        ("no footing", with(&|c| c.wall.footing = None)),
        (
            "bare",
            with(&|c| {
                c.wall.footing = None;
                c.wall.cope_height = metres(0.0);
                c.wall.through_rows = Vec::new();
            }),
        ),
        (
            "many rows",
            with(&|c| {
                c.wall.height = metres(1.4);
                c.wall.through_rows = (1..=8).map(|at| metres(0.16 * f64::from(at))).collect();
            }),
        ),
        (
            "many rows imperial",
            with(&|c| {
                c.units = Units::Imperial;
                c.wall.height = inches(60.0);
                c.wall.through_rows = (1..=6).map(|at| inches(9.0 * f64::from(at))).collect();
            }),
        ),
        (
            "tall and thin",
            with(&|c| {
                c.wall.height = metres(2.6);
                c.wall.top_width = metres(0.3);
                c.wall.left = Batter::one_in(20.0).expect("sound");
                c.wall.right = Batter::one_in(20.0).expect("sound");
            }),
        ),
        (
            "low and wide",
            with(&|c| {
                c.wall.height = metres(0.45);
                c.wall.top_width = metres(1.6);
                c.wall.through_rows = vec![metres(0.2)];
            }),
        ),
        (
            "steep and shallow",
            with(&|c| {
                c.wall.left = Batter::one_in(3.0).expect("sound");
                c.wall.right = Batter::one_in(12.5).expect("sound");
            }),
        ),
        (
            "deep footing",
            with(&|c| {
                c.wall.footing = Some(Footing {
                    depth: metres(0.6),
                    outset: metres(0.3),
                });
                c.frames.embedment = metres(1.05);
            }),
        ),
        (
            "projecting throughs",
            with(&|c| c.wall.through.projection = metres(0.075)),
        ),
        ("one metre", with(&|c| c.wall.length = Some(metres(1.0)))),
        (
            "one metre, forty students",
            with(&|c| {
                c.wall.length = Some(metres(1.0));
                c.group.students = students(40);
            }),
        ),
        (
            "sixty metres, forty students",
            with(&|c| {
                c.wall.length = Some(metres(60.0));
                c.group.students = students(40);
            }),
        ),
        (
            "twenty-four metres, fourteen students",
            with(&|c| {
                c.wall.length = Some(metres(24.0));
                c.wall.ends = [End::Raked, End::Head];
                c.group.students = students(14);
            }),
        ),
        (
            "sixty metres imperial",
            with(&|c| {
                c.units = Units::Imperial;
                c.wall.length = Some(metres(200.0 * FOOT_M));
                c.group.students = students(12);
                c.frames.spacing = metres(4.0 * FOOT_M);
            }),
        ),
        (
            "raked both ends",
            with(&|c| c.wall.ends = [End::Raked, End::Raked]),
        ),
        (
            "raked and too short to rise",
            with(&|c| {
                c.wall.ends = [End::Raked, End::Raked];
                c.wall.length = Some(metres(1.5));
            }),
        ),
        (
            "joined both ends",
            with(&|c| c.wall.ends = [End::Joined, End::Joined]),
        ),
        (
            "two stretches",
            with(&|c| {
                c.wall.length = Some(metres(9.1));
                c.wall.line = vec![lie::straight(4.0), lie::straight(5.1)];
            }),
        ),
        (
            "long names",
            with(&|c| {
                c.group.students = named(&[
                    "Wilhelmina Featherstonehaugh",
                    "Bartholomew Ó Súilleabháin",
                    "Anna Ash",
                    "Anna Birch",
                    "Tom <b>&\"Oak\"</b>",
                    "李小龍",
                    "One Alone Makes Three",
                ])
            }),
        ),
        ("one student", with(&|c| c.group.students = students(1))),
    ]
    .into_iter()
    .chain(lie::courses())
    .chain(throughs::courses())
    .collect()
}

/// A course whose every measurement hangs on the key, within what is ever built.
pub(crate) fn made_up(key: u64) -> Course {
    let dice = |salt: u64| crate::paper::strewn::chance(key * 100 + salt);
    let between = |salt: u64, low: f64, high: f64| metres(low + (high - low) * dice(salt));
    let batter = |salt: u64| match dice(salt) {
        low if low < 0.2 => Batter::PLUMB,
        other => Batter::one_in(3.0 + 20.0 * other).expect("sound"),
    };
    let end = |salt: u64| match dice(salt) {
        low if low < 0.3 => End::Raked,
        high if 0.6 < high => End::Head,
        _ => End::Joined,
    };
    let mut course = weekend();
    if dice(0) < 0.5 {
        course.units = Units::Imperial;
    }
    let wall = &mut course.wall;
    wall.height = between(1, 0.3, 2.8);
    wall.top_width = between(2, 0.25, 1.2);
    (wall.left, wall.right) = (batter(3), batter(4));
    wall.cope_height = between(5, -0.1, 0.4);
    if wall.cope_height < metres(0.0) {
        wall.cope_height = metres(0.0);
    }
    wall.cope_thickness = between(6, 0.05, 0.3);
    wall.length = Some(between(7, 0.6, 6.0) * (1.0 + 9.0 * dice(8).powi(3)));
    let rows = (dice(9) * 4.0).floor();
    wall.through_rows = (1..=3)
        .map(f64::from)
        .filter(|row| *row <= rows)
        .map(|row| wall.height * (row * (0.2 + 0.1 * dice(10))))
        .collect();
    wall.through.projection = between(11, 0.0, 0.08);
    wall.footing = (dice(12) < 0.7).then_some(Footing {
        depth: between(13, 0.05, 0.5),
        outset: between(14, 0.0, 0.3),
    });
    wall.ends = [end(15), end(16)];
    course.frames.spacing = between(17, 1.0, 4.0);
    course.frames.embedment = between(18, 0.3, 1.0);
    course.frames.projection = between(19, 0.05, 0.5);
    course.group.students = students(1 + (dice(20) * 30.0) as usize);
    course
}

/// A small metric course of the usual kind.
pub(crate) fn weekend() -> Course {
    let six = Batter::one_in(6.0).expect("sound");
    Course {
        title: "Hollin Bank weekend".to_owned(),
        units: Units::Metric,
        venue: venue(),
        days: Vec::new(),
        group: Group {
            instructors: 1,
            assistants: 1,
            students: named(&[
                "Alice Ash",
                "Ben Birch",
                "Carol Cherry",
                "Dev Damson",
                "Ellen Elder",
                "Frank Fir",
                "Grace Gorse",
                "Harry Hazel",
            ]),
            pairing: Pairing::default(),
        },
        absences: Vec::new(),
        running: craft::course::Running::default(),
        recorded: Vec::new(),
        wall: WallGiven {
            kind: WallKind::Freestanding,
            height: metres(1.07),
            top_width: metres(0.41),
            left: six,
            right: six,
            cope_height: metres(0.25),
            cope_thickness: metres(0.1),
            length: Some(metres(9.0)),
            line: Vec::new(),
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
            footing: Some(Footing {
                depth: metres(0.15),
                outset: metres(0.05),
            }),
            ends: [End::Head, End::Joined],
            head_batter: [Batter::PLUMB; 2],
        },
        stone: StoneGiven {
            kind: None,
            density: Some(kg_per_m3(2600.0)),
            voids: None,
            hearting_share: None,
            waste: None,
            on_site: OnSite::ByKind(Vec::new()),
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
            bar: "16 mm".to_owned(),
            stock_lengths: vec![metres(1.83), metres(2.44)],
            embedment: metres(0.6),
            projection: metres(0.14),
        },
        kit: KitGiven::default(),
        vehicles: Vec::new(),
        money: None,
        ready: None,
        rates: Vec::new(),
        chance: 0.8,
        seed: 1,
        worksheets: craft::worksheet::WorksheetsGiven::default(),
    }
}

/// The same kind of course in feet and inches.
pub(crate) fn imperial() -> Course {
    let inches = |n: f64| metres(n * INCH_M);
    let mut course = weekend();
    course.units = Units::Imperial;
    course.wall.height = inches(42.0);
    course.wall.top_width = inches(16.0);
    course.wall.cope_height = inches(10.0);
    course.wall.cope_thickness = inches(4.0);
    course.wall.length = Some(feet(30.0));
    course.wall.through_rows = vec![inches(21.625)];
    course.wall.footing = Some(Footing {
        depth: inches(6.0),
        outset: inches(2.0),
    });
    course.frames.spacing = feet(10.0);
    course.frames.embedment = inches(24.0);
    course.frames.projection = inches(5.5);
    course
}

fn feet(n: f64) -> Length {
    metres(n * FOOT_M)
}

fn named(names: &[&str]) -> Vec<Student> {
    names
        .iter()
        .enumerate()
        .map(|(at, name)| {
            let experience = match at % 3 {
                0 => Experience::Novice,
                1 => Experience::Improver,
                _ => Experience::Experienced,
            };
            Student::new(*name, experience)
        })
        .collect()
}

/// Students as a course without names has them.
fn students(count: usize) -> Vec<Student> {
    let names: Vec<String> = (1..=count).map(|at| format!("Student {at}")).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    named(&names)
}

fn venue() -> Venue {
    Venue {
        name: "Hollin Bank Farm".to_owned(),
        country: None,
        latitude: 54.2,
        longitude: -2.4,
        time_zone: "Europe/London".parse().expect("a zone that exists"),
        longest_wall: None,
    }
}
