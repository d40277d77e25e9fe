//! More of one thing never makes less of another: hours, lessons, students, frames, stone.

use super::days::{Day, day, on};
use checks::courses::{changed, library, list, number, numbers, parsed, plain, with};
use craft::pace::crew::Gang;
use craft::quantity::metres;
use craft::tables::{Applies, Before, Lesson, Stage, Tables};
use proptest::prelude::*;
use serde_json::Value;

fn chance(text: &str) -> f64 {
    number(&numbers(text), "/finish/chance")
}

/// As much as a chance may fall because a short break moves by a quarter of an hour: breaks are
/// spread over the day, and a stage that is nearly done may then have to go on after one. Chosen
/// here: in 300 draws one fell, by 0.016.
const BREAK_MOVES: f64 = 0.05;

/// Tells where more time lowers the chance. A longer day may owe one more short break, and that
/// may take more of it than was added: such days say nothing.
fn is_lowered(days: &[Day], more: &[Day], length: u32) -> Option<String> {
    let [before, after] = [days, more].map(|days| numbers(&of_length(&on(days), length)));
    let short_breaks = |plan: &Value| {
        let entries = list(plan, "/timetable").iter();
        let short = entries.filter(|it| it["what"] == "Short break");
        short.map(|it| it["start"].clone()).collect::<Vec<_>>()
    };
    let breaks = [&before, &after].map(short_breaks);
    if breaks[0].len() < breaks[1].len() {
        return None;
    }
    let less = if breaks[0] == breaks[1] {
        0.0
    } else {
        BREAK_MOVES
    };
    let [before, after] = [before, after].map(|plan| number(&plan, "/finish/chance"));
    (after < before - less).then(|| format!("{before} became {after}"))
}

/// The limit of one reason, in metres.
fn limit(plan: &Value, reason: &str) -> f64 {
    let limits = list(plan, "/wall/sizing/limits");
    let found = limits.iter().find(|limit| limit["limit"] == reason);
    number(
        found.unwrap_or_else(|| panic!("no limit: {reason}")),
        "/length_m",
    )
}

/// The length in tenths of a metre.
fn of_length(text: &str, tenths: u32) -> String {
    let length = format!("\"{} cm\"", 10 * tenths);
    changed(text.to_owned(), &[("\"6 m\"", &length)])
}

/// The plain course with so many students of each experience.
fn students(counts: [u32; 3]) -> String {
    with(&[
        ("novices = 6", &format!("novices = {}", counts[0])),
        ("improvers = 2", &format!("improvers = {}", counts[1])),
        (
            "experienced = 0\n\n",
            &format!("experienced = {}\n\n", counts[2]),
        ),
        ("\"6 m\"", "\"auto\""),
        ("longest_wall = \"40 m\"\n", ""),
    ])
}

/// Adds one person to a group and says so where the group's total falls for it.
fn total_falls(counts: [u32; 3], experience: usize, staff: [u32; 2], room: f64) -> Vec<String> {
    let mut another = counts;
    another[experience] += 1;
    let library = library();
    let hours = |counts: [u32; 3], stage: &Stage| {
        let mut group = parsed(&students(counts)).course.group;
        [group.instructors, group.assistants] = staff;
        let gang = Gang {
            group: &group,
            pace: &library.tables.pace,
            room: metres(room),
            waits_for_help: true,
        };
        gang.clock_hours(stage, 1.0)
    };
    let stages = library.tables.stages.iter();
    stages
        .filter_map(|stage| {
            let [before, after] = [counts, another].map(|counts| hours(counts, stage));
            let slower = before * (1.0 + 1e-12) < after;
            slower.then(|| format!("{}: {before} h became {after} h", stage.id))
        })
        .collect()
}

proptest! {
    #![proptest_config(checks::cases(200))]

    /// More students to an instructor lower each one's rate, never the group's total.
    #[test]
    fn one_more_of_any_never_lowers_the_group_s_total(
        counts in [0..14_u32, 0..8, 0..5].prop_filter("nobody", |all| 0 < all.iter().sum::<u32>()),
        experience in 0..3_usize,
        staff in [0..4_u32, 0..3],
        room in 0.5..40.0_f64,
    ) {
        let faults = total_falls(counts, experience, staff, room);
        prop_assert!(faults.is_empty(), "{}", faults.join("; "));
    }
}

proptest! {
    #![proptest_config(checks::cases(20))]

    #[test]
    fn a_later_finish_never_lowers_the_chance(
        days in prop::collection::vec(day(), 1..4),
        length in 10..120_u32,
        which in 0..4_usize,
        more in 1..120_u32,
    ) {
        let which = which % days.len();
        let mut longer: Vec<Day> = days.clone();
        longer[which].finish = (longer[which].finish + more).min(24 * 60 - 1);
        prop_assert_eq!(is_lowered(&days, &longer, length), None);
    }

    #[test]
    fn an_earlier_start_never_lowers_the_chance(
        days in prop::collection::vec(day(), 1..4),
        length in 10..120_u32,
        which in 0..4_usize,
        more in 1..120_u32,
    ) {
        let which = which % days.len();
        let mut longer: Vec<Day> = days.clone();
        longer[which].start -= more;
        prop_assert_eq!(is_lowered(&days, &longer, length), None);
    }

    #[test]
    fn a_further_day_never_lowers_the_chance(
        days in prop::collection::vec(day(), 2..5),
        length in 10..120_u32,
    ) {
        let fewer = &days[..days.len() - 1];
        let [before, after] = [fewer, &days].map(|days| chance(&of_length(&on(days), length)));
        prop_assert!(before <= after, "{before} became {after}");
    }

    #[test]
    fn a_further_lesson_never_raises_the_chance(
        minutes in (1..5_u32).prop_map(|quarters| quarters * 15),
        before in 0..13_usize,
        length in 40..90_u32,
    ) {
        let course = parsed(&of_length(&plain(), length)).course;
        let mut tables = Tables::clone(&library().tables);
        let chance = |tables: &Tables| craft::plan::plan(&course, tables).expect("a plan").forecast.chance;
        let without = chance(&tables);
        let stage = tables.stages.get(before).map(|stage| stage.id.clone());
        tables.lessons.push(Lesson {
            id: "one-more".to_owned(),
            title: "One more".to_owned(),
            minutes,
            before: stage.map_or(Before::EachDay, Before::Stage),
            safety: false,
            when: vec![Applies::Always],
        });
        let with = chance(&tables);
        prop_assert!(with <= without, "{without} became {with}");
    }

    #[test]
    fn a_longer_wall_never_raises_the_chance(length in 10..200_u32, more in 1..50_u32) {
        let [short, long] =
            [length, length + more].map(|length| chance(&of_length(&plain(), length)));
        prop_assert!(long <= short, "{short} became {long}");
    }

    #[test]
    fn one_more_of_the_same_never_shortens_what_pace_allows(
        count in 1..40_u32,
        experience in 0..3_usize,
    ) {
        let [fewer, more] = [count, count + 1].map(|count| {
            let mut counts = [0; 3];
            counts[experience] = count;
            limit(&numbers(&students(counts)), "pace")
        });
        // Lengths are found to the centimetre, and long ones to a thousandth of the chance.
        prop_assert!(fewer <= more * 1.002 + 0.01, "{count}: {fewer} m became {more} m");
    }

    /// Within one in a hundred: a novice among people who can build is taught at their expense.
    #[test]
    fn one_more_of_any_hardly_shortens_what_pace_allows(
        counts in [0..14_u32, 0..8, 0..5].prop_filter("nobody", |all| 0 < all.iter().sum::<u32>()),
        experience in 0..3_usize,
    ) {
        let mut another = counts;
        another[experience] += 1;
        let [fewer, more] =
            [counts, another].map(|counts| limit(&numbers(&students(counts)), "pace"));
        prop_assert!(
            fewer <= more * 1.01 + 0.001,
            "{counts:?} and one of {experience}: {fewer} m became {more} m"
        );
    }

    #[test]
    fn what_pace_allows_is_finished_with_the_chance_wished_for(
        counts in [1..14_u32, 0..8, 0..5],
        wish in 5..95_u32,
    ) {
        let text = changed(
            students(counts),
            &[("chance = 0.8", &format!("chance = {}", f64::from(wish) / 100.0))],
        );
        let plan = numbers(&text);
        let sizing = &plan["wall"]["sizing"];
        prop_assume!(sizing["binding"] == "pace" && 0.5 < number(&plan, "/wall/length_m"));
        let ours = number(&plan, "/finish/chance");
        prop_assert!(f64::from(wish) / 100.0 <= ours, "wished {wish} %, got {ours}");
    }

    #[test]
    fn more_stone_or_frames_never_shorten_the_wall(
        tonnes in 5..60_u32,
        frames in 2..12_u32,
    ) {
        let plan = |tonnes: u32, frames: u32| {
            numbers(&with(&[
                ("\"6 m\"", "\"auto\""),
                ("most = \"60 t\"", &format!("most = \"{tonnes} t\"")),
                ("in_stock = 6", &format!("in_stock = {frames}")),
            ]))
        };
        let [fewer, stone, frame] =
            [plan(tonnes, frames), plan(tonnes + 1, frames), plan(tonnes, frames + 1)];
        prop_assert!(limit(&fewer, "stone") <= limit(&stone, "stone"));
        prop_assert!(limit(&fewer, "frames") <= limit(&frame, "frames"));
        for more in [&stone, &frame] {
            let [ours, theirs] = [&fewer, more].map(|plan| number(plan, "/wall/length_m"));
            prop_assert!(ours <= theirs, "{ours} m became {theirs} m");
        }
    }
}

/// Frames moved along leave fewer places at the wall, and the forecast knows it.
#[test]
fn fewer_frames_to_move_along_never_finish_sooner() {
    let plan = |in_stock: u32| {
        numbers(&with(&[
            ("\"6 m\"", "\"15 m\""),
            ("in_stock = 6", &format!("in_stock = {in_stock}")),
            ("leapfrog = false", "leapfrog = true"),
            // A group that needs all the room there is, and hours enough to see it.
            ("novices = 6", "novices = 0"),
            ("experienced = 0\n\n", "experienced = 8\n\n"),
            ("height = \"1.07 m\"", "height = \"0.65 m\""),
            ("chance = 0.8", "chance = 0.1"),
        ]))
    };
    let chances: Vec<f64> = [6, 4, 3]
        .map(|in_stock| number(&plan(in_stock), "/finish/chance"))
        .to_vec();
    assert!(
        chances[1] <= chances[0] && chances[2] < chances[0] && chances[2] <= chances[1],
        "{chances:?}"
    );
    let few = plan(3);
    assert!((number(&few, "/frames/leapfrog/room_m") - 6.0).abs() < 1e-9);
    assert!(number(&few, "/frames/leapfrog/pairs") <= 4.0);
    assert!(plan(6)["frames"]["leapfrog"].is_null());
}
