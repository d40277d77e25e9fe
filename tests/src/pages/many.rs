//! Many kinds of course: each prints all its documents, and all of them keep the standard.

use super::look::every_document;
use super::words::has_its_words;
use checks::courses::{changed, library, parsed, planned, with};
use craft::kit::{Held, Taken};
use documents::{Course, FromStore};
use files::Library;

/// Prints a course and looks at every page.
fn prints(text: &str) {
    looks_right(&planned(text));
}

fn looks_right(course: &Course) {
    every_document(course, |document, _, paper| {
        has_its_words(course, document, paper);
    });
}

#[test]
fn the_metric_example() {
    prints(Library::example(false));
}

#[test]
fn the_imperial_example() {
    prints(Library::example(true));
}

#[test]
fn one_student() {
    prints(&with(&[("novices = 6\nimprovers = 2", "novices = 1")]));
}

#[test]
fn forty_students() {
    prints(&with(&[
        ("novices = 6\nimprovers = 2", "novices = 40"),
        ("instructors = 1", "instructors = 5"),
        ("\"6 m\"", "\"30 m\""),
    ]));
}

#[test]
fn a_wall_without_footing_cope_or_throughs() {
    prints(&with(&[
        (
            "footing = { depth = \"0.15 m\", outset = \"0.05 m\" }\n",
            "",
        ),
        ("cope_height = \"0.25 m\"\n", ""),
        ("through_rows = [\"0.55 m\"]\n", ""),
        ("start = \"head\"", "start = \"joined\""),
    ]));
}

#[test]
fn a_plumb_wall_with_raked_ends() {
    prints(&with(&[
        ("batter = 6", "batter = \"plumb\""),
        (
            "{ start = \"head\", finish = \"joined\" }",
            "{ start = \"raked\", finish = \"raked\" }",
        ),
    ]));
}

#[test]
fn one_face_plumb_and_three_rows_of_throughs() {
    prints(&with(&[
        ("batter = 6", "batter = { left = \"plumb\", right = 7.5 }"),
        ("[\"0.55 m\"]", "[\"0.3 m\", \"0.6 m\", \"0.9 m\"]"),
    ]));
}

#[test]
fn a_leapfrog_with_three_frames() {
    prints(&with(&[
        ("\"6 m\"", "\"24 m\""),
        ("in_stock = 6", "in_stock = 3"),
        ("leapfrog = false", "leapfrog = true"),
    ]));
}

#[test]
fn a_line_of_three_stretches_and_bars_too_short() {
    let line =
        "line = [ { straight = \"4 m\" }, { straight = \"0.5 m\" }, { straight = \"7 m\" } ]";
    prints(&with(&[
        ("length = \"6 m\"", line),
        ("[\"5 ft\", \"6 ft\", \"8 ft\"]", "[\"4 ft\"]"),
        ("set_size = 3", "set_size = 4"),
    ]));
}

#[test]
fn a_very_high_and_long_wall_on_letter_paper_in_feet() {
    prints(&with(&[
        ("\"metric\"", "\"imperial\""),
        ("\"a4\"", "\"letter\""),
        ("\"en-GB\"", "\"en-US\""),
        ("\"1.07 m\"", "\"9 ft 11 7/8 in\""),
        ("\"0.41 m\"", "\"1'8 5/8\\\"\""),
        ("\"6 m\"", "\"131 ft 3 in\""),
        ("load = \"10 t\"", "load = \"999 lb\""),
    ]));
}

#[test]
fn a_very_small_wall() {
    prints(&with(&[
        ("\"1.07 m\"", "\"0.3 m\""),
        ("\"0.41 m\"", "\"0.2 m\""),
        ("[\"0.55 m\"]", "[\"0.15 m\"]"),
        ("\"6 m\"", "\"0.5 m\""),
        ("on_site = \"4 t\"", "on_site = \"90 t\""),
    ]));
}

#[test]
fn ten_days_far_from_the_sun_with_nothing_else_said() {
    let days: String = (1..=10)
        .map(|day| {
            format!("[[day]]\ndate = 2027-06-{day:02}\nstart = 06:40:00\nfinish = 21:55:00\n")
        })
        .collect();
    let text = with(&[
        ("54.2", "78.2"),
        ("-2.4", "-15.6"),
        ("Europe/London", "Arctic/Longyearbyen"),
        ("name = \"Long Meadow\"\ncountry = \"GB\"\n", ""),
        ("load = \"10 t\"\n", ""),
        ("in_stock = 6\n", ""),
        ("\"6 m\"", "\"auto\""),
    ]);
    let (before, rest) = text.split_once("[[day]]").expect("days");
    let (_, after) = rest.split_once("[group]").expect("a group");
    prints(&format!("{before}{days}[group]{after}"));
}

#[test]
fn a_day_too_short_to_do_anything_in() {
    let second = "[[day]]\ndate = 2027-04-25\nstart = 09:15:00\nfinish = 16:00:00\n\
                  breaks = [ { name = \"Dinner\", start = 12:15:00, minutes = 30 } ]\n";
    prints(&with(&[
        (second, ""),
        ("finish = 16:30:00", "finish = 09:40:00"),
        (
            "breaks = [ { name = \"Lunch\", start = 12:30:00, minutes = 45 } ]\n",
            "",
        ),
    ]));
}

#[test]
fn a_day_of_many_breaks() {
    let breaks: Vec<String> = (0..14)
        .map(|at| {
            let (hour, minute) = (9 + at / 2, 20 + 30 * (at % 2));
            format!("{{ name = \"Pause {at}\", start = {hour:02}:{minute}:00, minutes = 7 }}")
        })
        .collect();
    let text = changed(
        with(&[]),
        &[(
            "{ name = \"Lunch\", start = 12:30:00, minutes = 45 }",
            &breaks.join(", "),
        )],
    );
    prints(&text);
}

#[test]
fn timber_frames_round_a_bend_on_a_slope() {
    prints(include_str!("../../../lessons/examples/thorn-beck.walling"));
}

#[test]
fn a_ring_of_wall_in_feet() {
    prints(&with(&[
        ("units = \"metric\"", "units = \"imperial\""),
        ("paper = \"a4\"", "paper = \"letter\""),
        (
            "length = \"6 m\"",
            "line = [ { arc = \"18.85 m\", radius = \"3 m\", turn = \"right\" } ]",
        ),
    ]));
}

/// Three vehicles, too small for one run, and something that none of them may carry.
const VEHICLES: &str = r#"
[[vehicle]]
name = "Van"
payload = "250 kg"
people = 2
trailer = "90 kg"
[[vehicle]]
name = "The pick-up truck of the farm next door but one"
payload = "60 kg"
[[vehicle]]
name = "Estate car"
payload = "120 kg"
people = 1
[[kit.rule]]
item = "Generator"
per = "group"
each = 1
mass = "310 kg"
[[kit.rule]]
item = "Folding canvas field chair for tired older students"
per = "student"
each = 1
mass = "3.2 kg"
"#;

const MONEY: &str = r#"
[money]
currency = "GBP"
stone = "42 / t"
delivery = 90
hire = 120
consumables = 8
instructor = 180
assistant = 90
venue = 100
travel = 60
other = 12.5
fee = 150
[ready]
done = ["permission", "insurance"]
"#;

/// The plain course with these changes and more tables at its end.
fn with_more(changes: &[(&str, &str)], more: &[&str]) -> String {
    with(changes) + &more.concat()
}

#[test]
fn two_runs_of_three_vehicles_an_old_wall_and_prices() {
    let old = "on_site = \"4 t\"\nold_wall = { length = \"3 m\", height = \"0.9 m\", base_width = \"0.6 m\", top_width = \"0.35 m\", cope_height = \"0.2 m\" }";
    let text = with_more(&[("on_site = \"4 t\"", old)], &[VEHICLES, MONEY]);
    let course = planned(&text);
    let loads = course.written.loads.as_ref().expect("vehicles are given");
    assert!(1 < loads.runs.len() && !loads.too_heavy.is_empty());
    assert!(!course.written.stone.old_wall.is_empty() && course.written.money.is_some());
    prints(&text);
}

#[test]
fn forty_students_with_vehicles_and_prices_in_feet() {
    prints(&with_more(
        &[
            ("units = \"metric\"", "units = \"imperial\""),
            ("\"a4\"", "\"letter\""),
            ("\"en-GB\"", "\"en-US\""),
            ("novices = 6\nimprovers = 2", "novices = 40"),
            ("instructors = 1", "instructors = 5"),
            ("\"6 m\"", "\"auto\""),
            (
                "through_spacing",
                "throughs = \"three-quarter\"\nthrough_spacing",
            ),
        ],
        &[VEHICLES, MONEY],
    ));
}

#[test]
fn a_practice_pitch_with_prices_but_no_fee() {
    let money = MONEY.replace("fee = 150\n", "");
    let pitch = (
        "on_site = \"4 t\"",
        "on_site = \"4 t\"\npractice_pitch = true",
    );
    prints(&with_more(&[pitch], &[&money]));
}

/// Whose each thing is, what wants care, and who else has booked it.
#[test]
fn borrowed_tools_and_tools_in_need_of_care() {
    let held = |item: &str, good, care, owners: &[&str]| Held {
        care,
        broken: 1,
        owners: owners.iter().map(|it| (*it).to_owned()).collect(),
        taken: vec![Taken {
            course: "Upper Dale day".to_owned(),
            date: "2027-04-24".parse().expect("a date"),
            count: 1,
        }],
        ..Held::counted(item, good)
    };
    let held = [
        held("Spade", 2, 1, &["The walling guild's store at Upper Dale"]),
        held("Barrow", 1, 0, &["Farm", "Neighbour"]),
        held("String line", 0, 2, &["Farm"]),
        held("Tape", 0, 3, &[]),
    ];
    for more in ["", VEHICLES] {
        let file = parsed(&with_more(&[], &[more]));
        let store = FromStore {
            held: held.to_vec(),
            ..FromStore::default()
        };
        let course = Course::plan_with(file, library(), store).expect("a plan");
        let owned = course.written.kit.lines.iter();
        assert_eq!(owned.filter(|line| !line.owners.is_empty()).count(), 3);
        looks_right(&course);
    }
}

#[test]
fn a_bank_held_back_on_falling_ground_with_frames_moved_along() {
    prints(&with(&[
        (
            "kind = \"freestanding\"",
            "kind = \"retaining\"\nretained = \"left\"\nbank = { slope_degrees = 15, near_building = true }",
        ),
        ("batter = 6", "batter = { left = \"plumb\", right = 5 }"),
        (
            "length = \"6 m\"",
            "length = \"16 m\"\nground = [ { station = \"0 m\", level = \"184.2 m\" }, { station = \"16 m\", level = \"183.1 m\", left = \"183.3 m\" } ]",
        ),
        (
            "top = \"level\"",
            "steps = { length = \"4 m\", height = \"0.2 m\" }",
        ),
        ("in_stock = 6", "in_stock = 3"),
        ("leapfrog = false", "leapfrog = true"),
    ]));
}
