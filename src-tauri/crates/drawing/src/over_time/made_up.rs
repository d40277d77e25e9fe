//! Checks on pictures of many invented courses: no text over a line, a text or the edge.

use crate::over_time::chance_curve::{ChanceCurve, chance_curve};
use crate::over_time::clock::Clock;
use crate::over_time::progress::{Band, Progress, ProgressDay, progress_against_forecast};
use crate::over_time::sample;
use crate::over_time::timetable::{Bar, Timetable, TimetableDay, WhenDone};
use crate::over_time::timetable_bars::timetable_bars;
use crate::overlap::faults;
use crate::paper::scene::{Room, Scene};
use crate::paper::strewn::{chance, steps};
use crate::written::xml_fault;
use craft::pace::{Binding, Bound, EntryKind, Limit};
use craft::quantity::{Units, metres};

/// A page upright and lying, half a page, a narrow pane, and the window beside its figures.
pub(crate) const ROOMS: [(f64, f64); 5] = [
    (180.0, 240.0),
    (255.0, 160.0),
    (180.0, 110.0),
    (120.0, 150.0),
    (135.0, 78.0),
];

const KINDS: [EntryKind; 5] = [
    EntryKind::Build,
    EntryKind::Lesson,
    EntryKind::Break,
    EntryKind::Safety,
    EntryKind::Tidy,
];
const NAMES: [&str; 9] = [
    "Throughs",
    "First lift: footing to throughs",
    "Keeping the middle full",
    "Sort stone and clear the working strip",
    "Tea",
    "Tidy, count the tools, make the wall and the site safe",
    "Óscar's own lesson about copes that nobody can say in a few words or in one breath",
    "Donaudampfschifffahrtsgesellschaftskapitän",
    "Lay <the> \"footing\" & co",
];

fn clock(key: u64) -> Clock {
    if key.is_multiple_of(3) {
        Clock::Twelve
    } else {
        Clock::TwentyFour
    }
}

/// One to five days of any hours, with 4 to 17 stages.
pub(crate) fn days(key: u64) -> Timetable {
    let dice = |salt: u64| chance(key * 10_000 + salt);
    let count = 1 + key % 5;
    let quarter = |minutes: f64| (minutes / 15.0).round() * 15.0;
    let days: Vec<TimetableDay> = (0..count)
        .map(|number| {
            let salt = 100 * (number + 1);
            // Nights without a course day lie between some of them.
            let midnight = (number + number / 2) as f64 * 1440.0;
            let starts = midnight + quarter(360.0 + 240.0 * dice(salt));
            let ends = starts + quarter(30.0 + 600.0 * dice(salt + 1));
            let mut bars = Vec::new();
            let mut from = starts;
            while from < ends {
                let salt = salt + 2 + bars.len() as u64 * 3;
                let to = (from + 15.0 * (1.0 + (8.0 * dice(salt).powi(2)).floor())).min(ends);
                bars.push(Bar {
                    from,
                    to,
                    what: NAMES[(dice(salt + 1) * 9.0) as usize].to_owned(),
                    kind: KINDS[(dice(salt + 2) * 5.0) as usize],
                });
                from = to;
            }
            TimetableDay {
                name: format!("Day {}", number + 1),
                weekday: "Wednesday".to_owned(),
                starts,
                ends,
                sunrise: (dice(salt + 97) < 0.8)
                    .then(|| midnight + 250.0 + 300.0 * dice(salt + 98)),
                sunset: Some(midnight + 930.0 + 300.0 * dice(salt + 99)),
                bars,
            }
        })
        .collect();
    let course = (days[0].starts, days[days.len() - 1].ends);
    let stages = (0..4 + key % 14).map(|stage| {
        let salt = 5000 + stage * 10;
        let mut shares = [0, 1, 2].map(|at| 1.25 * dice(salt + at));
        shares.sort_by(f64::total_cmp);
        WhenDone {
            name: NAMES[(dice(salt + 3) * 9.0) as usize].to_owned(),
            done: shares.map(|share| {
                let time = course.0 + (course.1 - course.0) * share;
                // Nobody is done at night: such times move to the morning after.
                let day = days.iter().find(|day| time <= day.ends)?;
                Some(time.max(day.starts))
            }),
        }
    });
    let stages = stages.collect();
    Timetable {
        clock: clock(key),
        days,
        stages,
    }
}

/// A falling curve with limits anywhere.
fn curve(key: u64) -> ChanceCurve {
    let dice = |salt: u64| chance(key * 1000 + 77 + salt);
    let longest = 1.0 + 40.0 * dice(0).powi(2);
    let middle = dice(1);
    let fall = |share: f64| 1.0 / (1.0 + ((share - middle) * 12.0).exp());
    let points = steps(20.0).map(|at| at / 19.0);
    let chosen = dice(2);
    let all = [
        Binding::ElbowRoom,
        Binding::Pace,
        Binding::Stone,
        Binding::Frames,
        Binding::Site,
        Binding::Given,
    ];
    let limits = all.iter().zip(10..).filter(|(_, salt)| dice(*salt) < 0.7);
    ChanceCurve {
        points: points
            .map(|share| (metres(longest * share), fall(share)))
            .collect(),
        wished: dice(3),
        chosen: (metres(longest * chosen), fall(chosen)),
        limits: limits
            .map(|(limit, salt)| Limit {
                limit: *limit,
                bound: if dice(salt + 20) < 0.3 {
                    Bound::Least
                } else {
                    Bound::Most
                },
                // Some close together, some far off.
                length: metres(longest * (chosen + 3.0 * dice(salt + 40).powi(4))),
            })
            .collect(),
    }
}

/// A forecast over the days of [`days`], with reports up to any time.
fn progress(key: u64) -> Progress {
    let dice = |salt: u64| chance(key * 1000 + 333 + salt);
    let timetable = days(key);
    let of_day = |day: &TimetableDay| ProgressDay {
        name: day.name.clone(),
        starts: day.starts,
        ends: day.ends,
        breaks: day
            .bars
            .iter()
            .filter(|bar| bar.kind == EntryKind::Break)
            .map(|bar| (bar.from, bar.to))
            .collect(),
    };
    let days: Vec<ProgressDay> = timetable.days.iter().map(of_day).collect();
    let ends = days[days.len() - 1].ends;
    let times: Vec<f64> = days.iter().flat_map(|day| [day.starts, day.ends]).collect();
    let band = |from: usize, share: f64| {
        let line = |pace: f64| {
            let points = times.iter().skip(from).zip(0..);
            let risen = |(time, at): (&f64, u32)| {
                let done = share + pace * f64::from(at.div_ceil(2)) / 5.0;
                (*time, done.min(1.0))
            };
            points.map(risen).collect::<Vec<_>>()
        };
        Band {
            low: line(0.6),
            middle: line(1.0),
            high: line(1.5),
        }
    };
    let reports = (dice(1) * times.len() as f64) as usize;
    let told: Vec<(f64, f64)> = times
        .iter()
        .take(reports)
        .map(|time| (*time, dice(2) * (time - times[0]) / (ends - times[0])))
        .collect();
    let share = told.last().map_or(0.0, |(_, share)| *share);
    Progress {
        before: band(0, 0.0),
        after: if reports == 0 {
            Band::default()
        } else {
            band(reports - 1, share)
        },
        told,
        days,
        ends,
        chance: dice(3),
    }
}

fn room(key: u64) -> Room {
    let (width_mm, height_mm) = ROOMS[(key / 2) as usize % ROOMS.len()];
    Room {
        width_mm,
        height_mm,
    }
}

fn report(all: &mut Vec<String>, key: u64, scene: &Scene) {
    let (w, h) = (scene.width_mm, scene.height_mm);
    let found = faults(scene).into_iter();
    all.extend(found.map(|it| format!("{key}, {} {w:.0} x {h:.0}: {it}", scene.name)));
    for mark in &scene.marks {
        let extent = mark.extent();
        let inside =
            0.0 <= extent.left && 0.0 <= extent.top && extent.right <= w && extent.bottom <= h;
        if !inside {
            all.push(format!("{key}, {}: {mark:?} leaves the sheet", scene.name));
        }
    }
}

#[test]
fn no_text_touches_anything_in_two_hundred_invented_courses() {
    let mut all = Vec::new();
    for key in 0..200 {
        let room = room(key);
        report(&mut all, key, &timetable_bars(&days(key), room));
        for units in [Units::Metric, Units::Imperial] {
            report(&mut all, key, &chance_curve(&curve(key), units, room));
        }
        let progress = progress(key);
        report(
            &mut all,
            key,
            &progress_against_forecast(&progress, clock(key), room),
        );
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

#[test]
fn nor_in_the_sample_in_any_room() {
    let mut all = Vec::new();
    for key in 0..10 {
        let room = room(key);
        report(
            &mut all,
            key,
            &timetable_bars(&sample::weekend_days(), room),
        );
        let curve = chance_curve(&sample::weekend_curve(), Units::Metric, room);
        report(&mut all, key, &curve);
        let progress = sample::weekend_progress();
        report(
            &mut all,
            key,
            &progress_against_forecast(&progress, clock(key), room),
        );
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// Titles people typed may hold anything.
#[test]
fn every_picture_is_sound_xml_and_the_same_every_time() {
    for key in 0..10 {
        let room = room(key);
        let drawn = || {
            [
                timetable_bars(&days(key), room),
                chance_curve(&curve(key), Units::Metric, room),
                progress_against_forecast(&progress(key), clock(key), room),
            ]
        };
        let all: String = drawn().iter().map(Scene::svg).collect();
        assert_eq!(xml_fault(&format!("<div>{all}</div>")), None, "{key}");
        let again: String = drawn().iter().map(Scene::svg).collect();
        assert_eq!(all, again, "{key}");
        assert!(!all.contains("NaN") && !all.contains("style="), "{key}");
    }
}

/// A file full of nothing must not stop the window.
#[test]
fn nothing_at_all_is_still_a_picture() {
    let room = room(0);
    let empty = Timetable {
        days: Vec::new(),
        stages: sample::weekend_days().stages,
        clock: Clock::TwentyFour,
    };
    let no_curve = ChanceCurve {
        points: Vec::new(),
        wished: f64::NAN,
        chosen: (metres(f64::NAN), f64::NAN),
        limits: Vec::new(),
    };
    let no_progress = Progress {
        days: Vec::new(),
        before: Band::default(),
        told: Vec::new(),
        after: Band::default(),
        ends: 0.0,
        chance: f64::NAN,
    };
    for scene in [
        timetable_bars(&empty, room),
        chance_curve(&no_curve, Units::Metric, room),
        progress_against_forecast(&no_progress, Clock::Twelve, room),
    ] {
        let svg = scene.svg();
        assert!(scene.height_mm.is_finite() && !scene.description.is_empty());
        assert!(!svg.contains("inf") && !svg.contains("\"NaN"), "{svg}");
    }
}

/// On paper the two charts need no larger sheet than they are given, and a day of the usual
/// kind neither.
#[test]
fn usual_pictures_fit_the_page() {
    let half = Room {
        width_mm: 180.0,
        height_mm: 125.0,
    };
    let mut one_day = sample::weekend_days();
    one_day.days.truncate(1);
    one_day.stages.truncate(5);
    for scene in [
        chance_curve(&sample::weekend_curve(), Units::Imperial, half),
        progress_against_forecast(&sample::weekend_progress(), Clock::Twelve, half),
        timetable_bars(&one_day, half),
    ] {
        let fits = scene.width_mm <= half.width_mm && scene.height_mm <= half.height_mm;
        assert!(
            fits,
            "{} {} x {}",
            scene.name, scene.width_mm, scene.height_mm
        );
        assert_eq!(scene.scale, None);
    }
}
