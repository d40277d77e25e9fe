//! Stone, lifting, tools, loads and money as lines of text: what is seen to before a course.

use super::Text;
use shapes::written::{Loads, Money, Written};

/// The stone, what it rests on, and the order.
pub(super) fn stone(plan: &Written, text: &mut Text) {
    let stone = &plan.stone;
    text.heading("Stone");
    text.line(&format!(
        "{} in the wall ({}), {}",
        stone.built, stone.built_range, stone.per_length
    ));
    text.line(&format!(
        "To deliver: low {}, likely {}, high {}. {}",
        stone.low, stone.mid, stone.high, stone.order
    ));
    if !stone.old_wall.is_empty() {
        text.line(&stone.old_wall);
    }
    text.table(stone.kinds.iter().filter(|kind| !kind.none).map(|kind| {
        let still = if kind.order.is_empty() {
            String::new()
        } else {
            format!("at most {} still to come", kind.order)
        };
        vec![
            kind.kind.clone(),
            format!("{} built in", kind.built),
            format!("({})", kind.built_range),
            format!("{} to have", kind.wanted),
            still,
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
    text.line("Rests on, four in five within:");
    text.table(stone.rests_on.iter().map(|it| {
        vec![
            it.what.clone(),
            it.figure.clone(),
            it.range.clone(),
            it.source.clone(),
        ]
    }));
}

/// What one person may lift.
pub(super) fn lifting(plan: &Written, text: &mut Text) {
    let lifting = &plan.lifting;
    text.heading("Lifting: guidance, never permission");
    text.line(&lifting.held);
    let head = [
        "stage",
        "from and to",
        "NIOSH",
        "UK men",
        "UK women",
        "one person",
        "a flat stone of",
    ];
    let head = head.map(str::to_owned).to_vec();
    let rows = lifting.lifts.iter().map(|it| {
        vec![
            it.stage.clone(),
            it.way.clone(),
            it.niosh.clone(),
            it.men.clone(),
            it.women.clone(),
            it.one_person.clone(),
            it.flat.clone(),
        ]
    });
    text.table(std::iter::once(head).chain(rows));
    for stone in &lifting.stones {
        text.line(&format!(
            "{}, {}: {}",
            stone.stone, stone.mass, stone.answer
        ));
    }
}

/// The tools, and what is short.
pub(super) fn kit(plan: &Written, text: &mut Text) {
    text.heading(&format!("Tools, {} in all", plan.kit.mass));
    text.table(plan.kit.lines.iter().map(|line| {
        let short = if line.short.is_empty() {
            line.state.clone()
        } else {
            format!("{} short. {}", line.short, line.cure)
        };
        vec![line.item.clone(), line.need.clone(), short]
    }));
}

/// What goes in which vehicle, in loading order.
pub(super) fn loads(loads: &Loads, text: &mut Text) {
    text.heading("Loads: what is needed first goes in last");
    text.line(&loads.told);
    if !loads.fits_nowhere.is_empty() {
        text.line(&format!(
            "Too heavy for any of them: {}",
            loads.fits_nowhere
        ));
    }
    for run in &loads.runs {
        for hold in run.holds.iter().filter(|hold| !hold.lines.is_empty()) {
            text.line(&format!(
                "Run {}, {}: {} of {} ({})",
                run.number, hold.name, hold.mass, hold.limit, hold.share
            ));
            text.table(
                hold.lines
                    .iter()
                    .map(|line| vec![line.count.to_string(), line.item.clone(), line.mass.clone()]),
            );
        }
    }
}

/// What it costs and takes.
pub(super) fn money(money: &Money, text: &mut Text) {
    text.heading("Money");
    text.table(
        money
            .lines
            .iter()
            .map(|line| vec![line.cost.clone(), line.amount.clone(), line.how.clone()]),
    );
    text.line(&format!(
        "{} in all, {} a head",
        money.total, money.per_head
    ));
    if !money.income.is_empty() {
        text.line(&format!(
            "Fees {}, left {}. {}",
            money.income, money.left, money.break_even
        ));
    }
}
