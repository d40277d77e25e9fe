//! A plan as text for people.

mod setting_out;

use shapes::written::{Day, Written};

/// The whole plan, most important first.
pub(crate) fn plan(plan: &Written) -> String {
    let mut text = Text::default();
    text.line(&format!("{}, {}", plan.title, plan.dates));
    text.line(&plan.group);
    setting_out::wall(plan, &mut text);
    setting_out::frames(plan, &mut text);
    setting_out::timber(plan, &mut text);
    setting_out::bank(plan, &mut text);
    stone(plan, &mut text);
    kit(plan, &mut text);
    text.heading("Stints");
    text.table(plan.stints.iter().map(|stint| {
        vec![
            format!("{}", stint.number),
            format!("{} to {}", stint.from, stint.to),
            stint.members.join(", "),
        ]
    }));
    for day in &plan.days {
        timetable(day, &mut text);
    }
    chance(plan, &mut text);
    not_ready(plan, &mut text);
    text.heading("Mind");
    for caution in plan.cautions.iter().filter(|caution| caution.of_this_plan) {
        text.line(&format!("! {}", caution.text));
    }
    text.line("The usual cautions are on the safety handout: coursewright print FILE --out DIR --only safety-handout");
    text.text
}

/// What is not ready, then the general cautions.
pub(crate) fn check(plan: &Written) -> String {
    let mut text = Text::default();
    if plan.to_do.is_empty() {
        text.line("Nothing to do: everything is ready.");
    } else {
        not_ready(plan, &mut text);
    }
    text.heading("Cautions, which count for nothing here");
    for caution in &plan.cautions {
        text.line(&format!("- {}", caution.text));
    }
    text.text
}

fn stone(plan: &Written, text: &mut Text) {
    let stone = &plan.stone;
    text.heading("Stone");
    text.line(&format!(
        "{} in the wall, {}",
        stone.built, stone.per_length
    ));
    text.line(&format!(
        "To deliver: low {}, likely {}, high {}. {}",
        stone.low, stone.mid, stone.high, stone.order
    ));
    text.table(stone.kinds.iter().map(|kind| {
        vec![
            kind.kind.clone(),
            format!("{} built in", kind.built),
            format!("{} to have", kind.wanted),
        ]
    }));
    text.table(stone.throughs.iter().map(|row| {
        vec![
            format!("throughs at {}", row.height),
            format!("{} of {}", row.count, row.length),
            format!("about {} each", row.mass),
        ]
    }));
    if 0 < stone.copes {
        text.line(&format!(
            "{} copes, {} thick",
            stone.copes, stone.cope_thickness
        ));
    }
}

fn kit(plan: &Written, text: &mut Text) {
    text.heading(&format!("Tools, {} in all", plan.kit.mass));
    text.table(plan.kit.lines.iter().map(|line| {
        let short = if line.short.is_empty() {
            String::new()
        } else {
            format!("{} short", line.short)
        };
        vec![line.item.clone(), line.need.clone(), short]
    }));
}

fn timetable(day: &Day, text: &mut Text) {
    text.heading(&format!(
        "Day {}, {}, sun {} to {}",
        day.number, day.date, day.sunrise, day.sunset
    ));
    text.table(day.entries.iter().map(|entry| {
        vec![
            format!("{} - {}", entry.start, entry.finish),
            entry.kind.clone(),
            entry.what.clone(),
        ]
    }));
}

fn chance(plan: &Written, text: &mut Text) {
    let chance = &plan.chance;
    text.heading(&format!(
        "Chance of finishing: {} (wished for: {}; from {})",
        chance.chance, chance.wished, chance.from
    ));
    let head = ["done", "work", "early", "likely", "late"]
        .map(str::to_owned)
        .to_vec();
    text.table(
        std::iter::once(head).chain(chance.stages.iter().map(|stage| {
            vec![
                stage.name.clone(),
                stage.amount.clone(),
                stage.early.text.clone(),
                stage.likely.text.clone(),
                stage.late.text.clone(),
            ]
        })),
    );
}

fn not_ready(plan: &Written, text: &mut Text) {
    if plan.to_do.is_empty() {
        return;
    }
    text.heading("Not ready");
    for it in &plan.to_do {
        let by = if it.by.is_empty() {
            String::new()
        } else {
            format!(" By {}.", it.by)
        };
        text.line(&format!("- {}{by}", it.text));
    }
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
