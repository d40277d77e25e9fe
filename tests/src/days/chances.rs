//! Chance and percentiles of ten thousand courses against twenty times as many of another model.

use super::case::{Case, told};
use checks::{Found, Row, rows};
use craft::pace::forecast::{self, Forecast};

/// Rounding, in minutes; the table has three places.
const OFF: f64 = 0.001;

/// Bounds in the table are for so many courses of ours.
const SAMPLES: usize = 10_000;

fn forecast(case: &Case, seed: u64) -> Forecast {
    let programme = case.programme();
    let middling = vec![1.0; programme.steps.len()];
    Forecast::of(&forecast::Asked {
        programme: &programme,
        calendar: &case.calendar(),
        luck: &case.luck(seed, SAMPLES),
        middling: &middling,
        day_one_ends: f64::INFINITY,
        seed,
    })
}

/// A time of the table; `never` is later than any.
fn time(row: &Row, column: &str) -> f64 {
    match row.text(column) {
        "never" => f64::INFINITY,
        _ => row.number(column),
    }
}

/// Each percentile lies where that of another sample of the same courses must.
fn agrees(row: &Row, forecast: &Forecast) -> Found {
    let step = row.number("step") as usize - 1;
    let done = forecast.by_stage[step].done;
    for (name, ours) in ["p10", "p50", "p90"].into_iter().zip(done) {
        let [low, high] = ["low", "high"].map(|end| time(row, &format!("{name}_{end}")));
        let ours = ours.unwrap_or(f64::INFINITY);
        row.between(name, ours, low - OFF, high + OFF)?;
    }
    match row.given("chance") {
        None => Ok(()),
        Some(_) => {
            let (theirs, off) = (row.number("chance"), row.number("chance_off"));
            row.near("the chance", forecast.chance, theirs, off + 1e-9)
        }
    }
}

#[test]
fn ten_thousand_courses_go_as_two_hundred_thousand_of_another_model_do() {
    let rows = rows("days.csv");
    let cases = told("days.toml");
    let steps = cases.iter().map(|case| case.programme().steps.len());
    assert_eq!(
        rows.len(),
        steps.sum::<usize>(),
        "run models/days.py: the table has other courses than days.toml"
    );
    let mut faults = Vec::new();
    for case in &cases {
        let forecast = forecast(case, 1);
        let of_case = rows.iter().filter(|row| row.text("course") == case.name);
        faults.extend(of_case.filter_map(|row| agrees(row, &forecast).err()));
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn courses_without_luck_go_as_worked_by_hand() {
    let cases = told("days.toml");
    let mut tried = 0;
    for case in &cases {
        let Some(by_hand) = case.by_hand() else {
            continue;
        };
        let ours = forecast(case, 1).by_stage;
        assert_eq!(ours.len(), by_hand.len(), "{}", case.name);
        for (stage, due) in ours.iter().zip(by_hand) {
            for time in stage.done {
                let time = time.unwrap_or(f64::INFINITY);
                let same = (time - due).abs() < 1e-6 || (time.is_infinite() && due.is_infinite());
                assert!(same, "{}: {time}, by hand {due}", case.name);
            }
        }
        tried += 1;
    }
    assert_eq!(tried, 4, "courses worked by hand");
}
