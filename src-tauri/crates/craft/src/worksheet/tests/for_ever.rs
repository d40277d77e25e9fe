//! The same seed, the same sheet, for ever.
//!
//! A key printed months after the sheets must still answer them, and so must a key printed by
//! the next version of the program. The numbers hang on the order of the draws and on every list
//! drawn from: when one changes, nothing else would notice. **The recorded texts may only grow**,
//! and only when a new kind is added at the end of [`Kind`]: a text that has to be changed means
//! that sheets already handed out no longer have a key. What a text is now is written to the
//! folder for temporary files when it differs.

use super::*;

/// The kinds there were when the first text was recorded, as they stood on a sheet then.
const FIRST: [Kind; 8] = [
    Kind::OrderOfWork,
    Kind::GaugeOffset,
    Kind::BaseWidth,
    Kind::WidthAtString,
    Kind::FramesAndBars,
    Kind::ThroughsAndCopes,
    Kind::BarLength,
    Kind::Tonnes,
];

/// All kinds in the order in which they were added.
const ADDED: [Kind; 17] = [
    Kind::BaseWidth,
    Kind::WidthAtString,
    Kind::GaugeOffset,
    Kind::FramesAndBars,
    Kind::BarLength,
    Kind::Tonnes,
    Kind::ThroughsAndCopes,
    Kind::OrderOfWork,
    Kind::Batter,
    Kind::Leapfrog,
    Kind::UnevenGround,
    Kind::Squareness,
    Kind::NameTheParts,
    Kind::HazardAndControl,
    Kind::FindTheFault,
    Kind::OnePersonLift,
    Kind::ReadTheTable,
];

const SEED: u64 = 20_270_424;

/// Questions as text: title, question, what is chosen from and read from, answer.
fn as_text(kinds: &[Kind], world: &World, student: usize) -> String {
    let mut text = String::new();
    for kind in kinds {
        let question = question(*kind, &world.asked(), student).expect("a question of each kind");
        text += &format!("{}: {}\n", kind.title(), question.ask);
        for prompt in &question.prompts {
            text += &format!("* {prompt}\n");
        }
        for choice in &question.choices {
            text += &format!("- {choice}\n");
        }
        if let Some(table) = &question.table {
            for row in std::iter::once(&table.head).chain(&table.rows) {
                text += &format!("| {}\n", row.join(" | "));
            }
        }
        text += &format!("= {}\n\n", question.answer);
    }
    text
}

#[test]
fn the_first_sheets_are_as_they_were() {
    let metric = as_text(&FIRST, &World::new(Units::Metric, SEED, Level::Usual), 3);
    let imperial = as_text(&FIRST, &World::new(Units::Imperial, SEED, Level::Usual), 4);
    assert_eq!(
        format!("{metric}{imperial}"),
        include_str!("../pinned/level-2.txt")
    );
}

#[test]
fn a_sheet_is_the_same_for_ever() {
    let mut changed = Vec::new();
    for (units, level, recorded) in [
        (
            Units::Metric,
            Level::Easy,
            include_str!("../pinned/metric-1.txt"),
        ),
        (
            Units::Metric,
            Level::Usual,
            include_str!("../pinned/metric-2.txt"),
        ),
        (
            Units::Metric,
            Level::Hard,
            include_str!("../pinned/metric-3.txt"),
        ),
        (
            Units::Imperial,
            Level::Easy,
            include_str!("../pinned/imperial-1.txt"),
        ),
        (
            Units::Imperial,
            Level::Usual,
            include_str!("../pinned/imperial-2.txt"),
        ),
        (
            Units::Imperial,
            Level::Hard,
            include_str!("../pinned/imperial-3.txt"),
        ),
    ] {
        let world = World::new(units, SEED, level);
        let text = as_text(&ADDED, &world, 5) + &as_text(&ADDED, &world, 6);
        if text != recorded {
            let name = format!("worksheets-{units:?}-{}.txt", level.number());
            let now = std::env::temp_dir().join(name.to_lowercase());
            std::fs::write(&now, &text).expect("room for a text");
            changed.push(now);
        }
    }
    assert!(changed.is_empty(), "not as recorded, now {changed:?}");
}
