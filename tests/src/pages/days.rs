//! The run sheet and the progress sheet where there is most to say of the days.

use super::look::every_document;
use super::words::has_its_words;
use checks::courses::{changed, planned, with};

fn prints(text: &str) {
    let course = planned(text);
    every_document(&course, |document, _, paper| {
        has_its_words(&course, document, paper);
    });
}

/// Weather, wishes, absences and progress on five days: everything that a run sheet can say.
#[test]
fn five_days_of_twenty_with_weather_absences_and_progress() {
    let day = |number: u32, more: &str| {
        format!(
            "[[day]]\ndate = 2027-07-{:02}\nstart = 09:00:00\nfinish = 17:00:00\n{more}\
             breaks = [ {{ name = \"Lunch\", start = 12:30:00, minutes = 45 }} ]\n",
            4 + number
        )
    };
    let hot = "weather = { high = \"33 C\", low = \"16 C\", humidity = 0.7, wind = \"10 km/h\", full_sun = true }\n";
    let cold = "weather = { high = \"8 C\", low = \"1 C\", humidity = 0.9, wind = \"45 km/h\" }\n\
                rain = [ { start = 10:00:00, minutes = 90 } ]\n";
    let days = [
        day(1, ""),
        day(2, hot),
        day(3, cold),
        day(4, ""),
        day(5, ""),
    ]
    .concat();
    let text = with(&[
        ("novices = 6\nimprovers = 2", "novices = 14\nimprovers = 6"),
        ("instructors = 1", "instructors = 3"),
        ("length = \"6 m\"", "length = \"30 m\""),
        ("in_stock = 6", "in_stock = 14"),
    ]);
    let (before, rest) = text.split_once("[[day]]").expect("days");
    let (_, after) = rest.split_once("[group]").expect("a group");
    let text = format!("{before}{days}[group]{after}{FULL}");
    let written = planned(&text).written.running;
    assert!(!written.unmet.is_empty() && written.today.is_some());
    assert_eq!((written.weather.len(), written.people.len()), (2, 2));
    prints(&text);
    // The day before the first report, in the words of another country and on its paper.
    let (untold, _) = text.split_once("[[progress]]").expect("reports");
    prints(&changed(
        untold.to_owned(),
        &[
            ("units = \"metric\"", "units = \"imperial\""),
            ("\"a4\"", "\"letter\""),
            ("\"en-GB\"", "\"en-US\""),
        ],
    ));
}

const FULL: &str = r#"
[[wish]]
lesson = "copes"
day = 1
at = 12:20:00
[[absence]]
who = "Student 3"
day = 2
[[absence]]
who = "Student 9"
day = 3
from = 13:00:00
[[progress]]
day = 1
time = 11:00:00
stage = "line"
[[progress]]
day = 1
time = 15:15:00
stage = "dig"
[[progress]]
day = 1
time = 16:30:00
stage = "footing"
bay = 1
done = 0.6
"#;
