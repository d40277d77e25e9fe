//! A plan as text for people.

mod before;
mod days;
mod setting_out;
mod today;

use shapes::written::{BookRow, ToDo, Written};

pub(crate) use today::told;

/// The whole plan, most important first.
pub(crate) fn plan(plan: &Written) -> String {
    let mut text = Text::default();
    text.line(&format!("{}, {}", plan.title, plan.dates));
    text.line(&plan.group);
    today::today(plan, &mut text);
    setting_out::wall(plan, &mut text);
    setting_out::frames(plan, &mut text);
    setting_out::timber(plan, &mut text);
    setting_out::bank(plan, &mut text);
    before::stone(plan, &mut text);
    before::lifting(plan, &mut text);
    before::kit(plan, &mut text);
    if let Some(loads) = &plan.loads {
        before::loads(loads, &mut text);
    }
    days::people(plan, &mut text);
    days::days(plan, &mut text);
    days::chance(plan, &mut text);
    days::length(plan, &mut text);
    if let Some(money) = &plan.money {
        before::money(money, &mut text);
    }
    see_to(plan, Names::Hidden, &mut text);
    text.heading("Mind");
    for caution in plan.cautions.iter().filter(|caution| caution.of_this_plan) {
        text.line(&format!("! {}", caution.text));
    }
    text.line("The usual cautions are on the safety handout: coursewright print FILE --out DIR --only safety-handout");
    text.text
}

/// The pace book, before and after what was recorded.
pub(crate) fn book(rows: &[BookRow]) -> String {
    let mut text = Text::default();
    text.heading("Hours of one person for a unit of each stage: novice / improver / experienced");
    let head = ["stage", "built in", "with the records", "spread"];
    let head = head.map(str::to_owned).to_vec();
    let rows = rows.iter().map(|row| {
        vec![
            row.stage.clone(),
            row.before.clone(),
            row.after.clone(),
            row.spread.clone(),
        ]
    });
    text.table(std::iter::once(head).chain(rows));
    text.text
}

/// Whether the list shows the names by which its entries are marked done.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Names {
    /// As `[ready] done = [..]` takes them.
    Shown,
    /// Only what a person reads.
    Hidden,
}

/// What is to be seen to, then the general cautions.
pub(crate) fn check(plan: &Written, names: Names) -> String {
    let mut text = Text::default();
    see_to(plan, names, &mut text);
    text.heading("Cautions, which count for nothing here");
    for caution in &plan.cautions {
        text.line(&format!("- {}", caution.text));
    }
    text.text
}

/// The list by date: what counts first, then what is only a reminder.
fn see_to(plan: &Written, names: Names, text: &mut Text) {
    let open = |counts: bool| {
        let all = plan.to_do.iter();
        all.filter(move |it| !it.done && it.counts == counts)
    };
    if open(true).next().is_none() {
        text.line("Nothing to do: everything that is kept track of is ready.");
    } else {
        text.heading("Not ready");
        for it in open(true) {
            entry(it, names, text);
        }
    }
    if open(false).next().is_some() {
        text.heading("To arrange (these count once the course file has a [ready] table)");
        for it in open(false) {
            entry(it, names, text);
        }
    }
    let done = plan.to_do.iter().filter(|it| it.done).count();
    if 0 < done {
        text.line(&format!("Done and marked: {done}"));
    }
}

fn entry(it: &ToDo, names: Names, text: &mut Text) {
    let by = if it.by.is_empty() {
        String::new()
    } else {
        format!("{}: ", it.by)
    };
    let name = match names {
        Names::Shown => format!(" [{}]", it.id),
        Names::Hidden => String::new(),
    };
    text.line(&format!("- {by}{}{name}", it.text));
}

/// A text of one line whose control characters are shown, so that what someone typed gives
/// the terminal no orders.
pub(crate) fn harmless(line: &str) -> String {
    let mut shown = String::new();
    for sign in line.chars() {
        if sign.is_control() {
            shown.extend(sign.escape_default());
        } else {
            shown.push(sign);
        }
    }
    shown
}

#[derive(Default)]
struct Text {
    text: String,
}

impl Text {
    fn line(&mut self, line: &str) {
        self.text.push_str(&harmless(line));
        self.text.push('\n');
    }

    fn heading(&mut self, heading: &str) {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.line(heading);
    }

    /// Rows with their columns lined up, two spaces in from the edge.
    fn table(&mut self, rows: impl Iterator<Item = Vec<String>>) {
        let rows: Vec<Vec<String>> = rows.collect();
        let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
        let width = |column: usize| {
            rows.iter()
                .filter_map(|row| row.get(column))
                .map(|cell| cell.chars().count())
                .max()
        };
        let widths: Vec<usize> = (0..columns)
            .map(|column| width(column).unwrap_or(0))
            .collect();
        for row in &rows {
            let cells: Vec<String> = row
                .iter()
                .zip(&widths)
                .map(|(cell, width)| format!("{cell:width$}", width = *width))
                .collect();
            let line = format!("  {}", cells.join("  "));
            self.line(line.trim_end());
        }
    }
}
