//! How it stands on the day, as lines of text.

use super::{Text, days};
use shapes::written::{Today, Written};

/// The answer to a report: how it stands now.
pub(crate) fn told(plan: &Written) -> String {
    let mut text = Text::default();
    today(plan, &mut text);
    text.text
}

/// Nothing before anything has been built.
pub(super) fn today(plan: &Written, text: &mut Text) {
    let Some(today) = &plan.running.today else {
        return;
    };
    text.heading(&format!("On the day, as told up to {}", today.now));
    text.line(&format!(
        "Chance of finishing from here: {} (before the course: {}; wished for: {})",
        today.chance, today.before, plan.chance.wished
    ));
    text.line(&format!("{} of all the work is done.", today.done));
    for quick in &today.quick {
        text.line(&format!(
            "! {quick} The last one goes with: coursewright told FILE --take-back"
        ));
    }
    cures(today, text);
    if !today.ask_at.is_empty() {
        text.line(&format!("Ask next at {}.", today.ask_at));
    }
    if !today.safe.is_empty() {
        text.line("If work stops, safe for the night:");
        for safe in &today.safe {
            text.line(&format!("- {safe}"));
        }
    }
    if !today.by_stage.is_empty() {
        text.line("Still to come:");
        days::stages(&today.by_stage, text);
    }
}

/// Told also where the chance is good enough: rain may come yet.
fn cures(today: &Today, text: &mut Text) {
    let head = match (today.below, today.cures.is_empty()) {
        (false, true) => return,
        (true, true) => {
            text.line("! Below the wish, and nothing that can still be changed would help.");
            return;
        }
        (true, false) => "! Below the wish. What would help, and the chance with it:",
        (false, false) => "What would help if the wall slips, and the chance with it:",
    };
    days::lines(head, today.cures.iter(), text);
    if !today.assumed.is_empty() {
        text.line(&today.assumed);
    }
}
