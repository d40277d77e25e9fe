//! Invented days, a curve and a day's progress, for tests.

use crate::over_time::chance_curve::ChanceCurve;
use crate::over_time::clock::Clock;
use crate::over_time::progress::{Band, Progress, ProgressDay};
use crate::over_time::timetable::{Bar, Timetable, TimetableDay, WhenDone};
use craft::pace::{Binding, Bound, EntryKind, Limit};
use craft::quantity::metres;

/// Three days with every kind of entry and stages that go on over night and beyond the course.
pub(crate) fn weekend_days() -> Timetable {
    let weekdays = ["Friday", "Saturday", "Sunday"];
    let finish = [1020.0, 1020.0, 960.0];
    let days = (0..3).map(|day| {
        let midnight = 1440.0 * day as f64;
        let own = ENTRIES.iter().filter(|entry| entry.0 == day);
        TimetableDay {
            name: format!("Day {}", day + 1),
            weekday: weekdays[day].to_owned(),
            starts: midnight + 540.0,
            ends: midnight + finish[day],
            sunrise: Some(midnight + 351.0),
            sunset: Some(midnight + 1227.0),
            bars: own
                .map(|(_, from, to, kind, what)| Bar {
                    from: midnight + f64::from(*from),
                    to: midnight + f64::from(*to),
                    what: (*what).to_owned(),
                    kind: *kind,
                })
                .collect(),
        }
    });
    let stages = DONE.iter().map(|(name, done)| WhenDone {
        name: (*name).to_owned(),
        done: *done,
    });
    Timetable {
        days: days.collect(),
        stages: stages.collect(),
        clock: Clock::TwentyFour,
    }
}

/// A wall of 7 m that finishes four times in five.
pub(crate) fn weekend_curve() -> ChanceCurve {
    let points = [
        (3.0, 0.998),
        (4.0, 0.99),
        (5.0, 0.96),
        (6.0, 0.9),
        (7.0, 0.804),
        (8.0, 0.63),
        (9.0, 0.42),
        (11.0, 0.14),
    ];
    let limit = |limit, bound, length| Limit {
        limit,
        bound,
        length: metres(length),
    };
    ChanceCurve {
        points: points.map(|(at, chance)| (metres(at), chance)).to_vec(),
        wished: 0.8,
        chosen: (metres(7.0), 0.804),
        limits: vec![
            limit(Binding::ElbowRoom, Bound::Least, 6.0),
            limit(Binding::Pace, Bound::Most, 7.033),
            limit(Binding::Frames, Bound::Most, 15.0),
            limit(Binding::Site, Bound::Most, 40.0),
        ],
    }
}

/// Two days of which the first is behind its forecast at half past two.
pub(crate) fn weekend_progress() -> Progress {
    let day = |number: f64| ProgressDay {
        name: format!("Day {}", number + 1.0),
        starts: number * 1440.0 + 540.0,
        ends: number * 1440.0 + 990.0,
        breaks: [(660.0, 675.0), (765.0, 810.0), (915.0, 930.0)]
            .map(|(from, to)| (number * 1440.0 + from, number * 1440.0 + to))
            .to_vec(),
    };
    let band = |times: &[f64], shares: [&[f64]; 3]| {
        let [low, middle, high] = shares.map(|shares| {
            let points = times.iter().copied().zip(shares.iter().copied());
            points.collect()
        });
        Band { low, middle, high }
    };
    let times = [
        540.0, 660.0, 765.0, 870.0, 990.0, 1980.0, 2205.0, 2310.0, 2430.0,
    ];
    Progress {
        days: [0.0, 1.0].map(day).to_vec(),
        before: band(
            &times,
            [
                &[0.0, 0.06, 0.15, 0.23, 0.36, 0.36, 0.6, 0.72, 0.9],
                &[0.0, 0.1, 0.21, 0.32, 0.48, 0.48, 0.77, 0.9, 1.0],
                &[0.0, 0.14, 0.27, 0.41, 0.6, 0.6, 0.93, 1.0, 1.0],
            ],
        ),
        told: vec![(660.0, 0.07), (765.0, 0.15), (870.0, 0.22)],
        after: band(
            &times[3..],
            [
                &[0.22, 0.32, 0.32, 0.58, 0.69, 0.86],
                &[0.22, 0.38, 0.38, 0.68, 0.82, 1.0],
                &[0.22, 0.46, 0.46, 0.81, 0.97, 1.0],
            ],
        ),
        ends: 2430.0,
        chance: 0.71,
    }
}

const ENTRIES: [(usize, u32, u32, EntryKind, &str); 49] = [
    (0, 540, 570, EntryKind::Safety, "Welcome and safety"),
    (0, 570, 585, EntryKind::Lesson, "Reading and sorting stone"),
    (0, 585, 630, EntryKind::Build, "Sort the heap"),
    (0, 630, 645, EntryKind::Build, "Peg and line"),
    (0, 645, 660, EntryKind::Build, "Dig the trench"),
    (0, 660, 675, EntryKind::Break, "Tea"),
    (0, 675, 705, EntryKind::Build, "Dig the trench"),
    (0, 705, 735, EntryKind::Lesson, "Setting out and frames"),
    (0, 735, 750, EntryKind::Build, "Set the frames"),
    (
        0,
        750,
        765,
        EntryKind::Build,
        "Sort stone and clear the working strip",
    ),
    (0, 765, 810, EntryKind::Break, "Lunch"),
    (0, 810, 825, EntryKind::Lesson, "The footing"),
    (0, 825, 870, EntryKind::Build, "Lay the footing"),
    (0, 870, 900, EntryKind::Lesson, "The rules of laying"),
    (
        0,
        900,
        915,
        EntryKind::Build,
        "First lift: footing to throughs",
    ),
    (0, 915, 930, EntryKind::Break, "Tea"),
    (
        0,
        930,
        990,
        EntryKind::Build,
        "First lift: footing to throughs",
    ),
    (
        0,
        990,
        1020,
        EntryKind::Tidy,
        "Tidy, count the tools, make the wall and the site safe",
    ),
    (1, 540, 555, EntryKind::Safety, "Briefing for the day"),
    (
        1,
        555,
        645,
        EntryKind::Build,
        "First lift: footing to throughs",
    ),
    (
        1,
        645,
        660,
        EntryKind::Build,
        "Sort stone and clear the working strip",
    ),
    (1, 660, 675, EntryKind::Break, "Tea"),
    (1, 675, 690, EntryKind::Lesson, "Throughs"),
    (1, 690, 720, EntryKind::Build, "Set the throughs"),
    (1, 720, 735, EntryKind::Lesson, "Keeping the middle full"),
    (
        1,
        735,
        765,
        EntryKind::Build,
        "Second lift: throughs to cope",
    ),
    (1, 765, 810, EntryKind::Break, "Lunch"),
    (
        1,
        810,
        885,
        EntryKind::Build,
        "Second lift: throughs to cope",
    ),
    (1, 885, 900, EntryKind::Lesson, "Built ends"),
    (1, 900, 915, EntryKind::Build, "Finish the built ends"),
    (1, 915, 930, EntryKind::Break, "Tea"),
    (1, 930, 975, EntryKind::Build, "Finish the built ends"),
    (1, 975, 990, EntryKind::Build, "Level up"),
    (
        1,
        990,
        1020,
        EntryKind::Tidy,
        "Tidy, count the tools, make the wall and the site safe",
    ),
    (2, 540, 555, EntryKind::Safety, "Briefing for the day"),
    (2, 555, 570, EntryKind::Build, "Inspect together"),
    (2, 570, 585, EntryKind::Build, "Frames and bars off"),
    (2, 585, 600, EntryKind::Build, "Set the end copes"),
    (2, 600, 615, EntryKind::Lesson, "Copes"),
    (2, 615, 660, EntryKind::Build, "Set the copes"),
    (2, 660, 675, EntryKind::Break, "Tea"),
    (2, 675, 690, EntryKind::Build, "Set the copes"),
    (2, 690, 720, EntryKind::Build, "Pin the copes"),
    (
        2,
        720,
        765,
        EntryKind::Build,
        "Time in hand: mend faults, lay a stretch again, look back along the wall",
    ),
    (2, 765, 810, EntryKind::Break, "Lunch"),
    (
        2,
        810,
        885,
        EntryKind::Build,
        "Time in hand: mend faults, lay a stretch again, look back along the wall",
    ),
    (2, 885, 900, EntryKind::Break, "Short break"),
    (
        2,
        900,
        930,
        EntryKind::Build,
        "Time in hand: mend faults, lay a stretch again, look back along the wall",
    ),
    (
        2,
        930,
        960,
        EntryKind::Tidy,
        "Tidy, count the tools, make the wall and the site safe",
    ),
];
const DONE: [(&str, [Option<f64>; 3]); 15] = [
    ("Sort the heap", [Some(615.2), Some(628.2), Some(646.4)]),
    ("Peg and line", [Some(630.2), Some(643.2), Some(676.4)]),
    ("Dig the trench", [Some(675.7), Some(698.7), Some(730.2)]),
    ("Set the frames", [Some(729.1), Some(757.9), Some(844.3)]),
    ("Lay the footing", [Some(824.5), Some(870.0), Some(939.1)]),
    (
        "First lift: footing to throughs",
        [Some(2011.8), Some(2095.2), Some(2278.8)],
    ),
    (
        "Set the throughs",
        [Some(2051.9), Some(2157.9), Some(2335.1)],
    ),
    (
        "Second lift: throughs to cope",
        [Some(2166.7), Some(2330.9), Some(3523.3)],
    ),
    (
        "Finish the built ends",
        [Some(2271.9), Some(2420.3), Some(3630.7)],
    ),
    ("Level up", [Some(2285.2), Some(3442.5), Some(3698.7)]),
    (
        "Inspect together",
        [Some(2300.2), Some(3457.5), Some(3713.7)],
    ),
    (
        "Frames and bars off",
        [Some(2315.2), Some(3472.5), Some(3728.7)],
    ),
    (
        "Set the end copes",
        [Some(2323.2), Some(3482.5), Some(3741.9)],
    ),
    ("Set the copes", [Some(2401.4), Some(3576.9), None]),
    ("Pin the copes", [Some(2420.0), Some(3601.4), None]),
];
