//! Why so many students to an instructor, so light a stone, so much water, so much money.

use super::line::{hundredths, number, rounded};
use super::{Of, Reason};
use craft::conditions::Conditions;
use craft::kit::{Standing, Weather, changed};
use craft::lifting::{Grip, GuideLift, Hands, Lift, Multipliers, Session, System, WorkTime};
use craft::money::BreakEven;
use craft::quantity::{Read, kilograms, whole_number};
use craft::tables::{Per, StageLift};
use std::time::Duration;

pub(super) fn reasons(of: &Of<'_>) -> Vec<Reason> {
    let mut all = vec![students(of)];
    all.extend(lift(of));
    all.extend(water(of));
    all.extend(money(of));
    all
}

fn students(of: &Of<'_>) -> Reason {
    let (group, places) = (&of.course.group, &of.tables.pace.places);
    let ratio = of.plan.students_per_instructor;
    let shown = if ratio.is_finite() {
        hundredths(ratio)
    } else {
        "nobody teaches".to_owned()
    };
    let mut reason = Reason::new(
        "students-per-instructor",
        "Students to an instructor",
        &shown,
    )
    .say(format!(
        "{shown}: up to {} nobody waits long for help; above {} it is too many for beginners.",
        number(places.students_per_instructor),
        number(places.too_many_students)
    ));
    if ratio.is_finite() {
        reason = reason.step(
            "Students over those who teach; an assistant counts half",
            format!(
                "{} / ({} + {} / 2) = {shown}",
                group.students.len(),
                group.instructors,
                group.assistants
            ),
        );
    }
    reason.source("The good number and the limit", &places.source)
}

/// The end of a lift at which NIOSH allows less.
fn harder(of: &Of<'_>, row: &StageLift, lift: &GuideLift) -> Option<(Multipliers, &'static str)> {
    let held = &of.tables.lifting.hands;
    let work = WorkTime::of(&[Session {
        work: Duration::try_from_secs_f64(held.hours * 3600.0).ok()?,
        rest: Duration::ZERO,
    }])?;
    let hands = |height| Hands {
        reach: held.reach,
        height,
        twist_degrees: held.twist_degrees,
    };
    let (from, to) = (hands(lift.from_height), hands(lift.to_height));
    let whole = Lift {
        from,
        to,
        control: true,
        rate: row.rate,
        work,
        grip: held.grip,
    };
    let [up, down] = [from, to].map(|at| whole.multipliers(at, System::Metric));
    let limit = |it: &Multipliers| it.limit(System::Metric);
    Some(if limit(&down) < limit(&up) {
        (down, "setting down")
    } else {
        (up, "taking up")
    })
}

fn lift(of: &Of<'_>) -> Option<Reason> {
    let (table, guide) = (&of.tables.lifting, &of.plan.lifting);
    let least = guide
        .lifts
        .iter()
        .map(|it| it.one_person)
        .min_by(|one, other| one.si().total_cmp(&other.si()))?;
    let mut reason = Reason::new("lift", "What one person may lift", of.mass(least))
        .say("The least of three figures: the NIOSH equation, and the UK guideline filter for men and for women. It is guidance, never permission.")
        .say("NIOSH multiplies its load of 23 kg (51 lb) by shares for how far away the hands are, how high, how far the stone is moved up or down, how far to the side, how often, and how well it is held, in this order.");
    for (row, lift) in table.lifts.iter().zip(&guide.lifts) {
        let stage = of.tables.stages.iter().find(|it| it.id == lift.stage);
        let stage = stage.map_or(lift.stage.as_str(), |it| it.name.as_str());
        let what = format!("{stage}, {} to {}", lift.from, lift.to);
        let (men, women) = (of.mass(lift.men), of.mass(lift.women));
        match harder(of, row, lift).filter(|_| 0.0 < lift.niosh.si()) {
            Some((share, end)) => {
                let shares = [
                    share.reach,
                    share.height,
                    share.travel,
                    share.twist,
                    share.frequency,
                    share.grip,
                ];
                let shares = shares.map(number).join(" × ");
                reason = reason.step(
                    format!(
                        "{what}: NIOSH, {end}. UK: men {men}, women {women}. One person: {}",
                        of.mass(lift.one_person)
                    ),
                    format!(
                        "{} × {shares} = {}",
                        of.mass(kilograms(23.0)),
                        of.mass(lift.niosh)
                    ),
                );
            }
            None => {
                reason = reason.say(format!(
                    "{what}: outside what NIOSH covers, so nothing is allowed."
                ))
            }
        }
        reason = reason.source(
            format!("{what}: how often, and where the hands are"),
            &row.source,
        );
    }
    Some(
        reason
            .source(
                "The equation",
                "Applications Manual for the Revised NIOSH Lifting Equation, NIOSH 94-110",
            )
            .source(held(of), &table.hands.source)
            .source("The filter's body heights", &table.body_source),
    )
}

fn held(of: &Of<'_>) -> String {
    let hands = &of.tables.lifting.hands;
    let grip = match hands.grip {
        Grip::Good => "good",
        Grip::Fair => "fair",
        Grip::Poor => "poor",
    };
    format!(
        "Hands {} away, turned {} degrees, a {grip} grip, {} hours a day",
        of.mark(hands.reach),
        number(hands.twist_degrees),
        number(hands.hours)
    )
}

fn water(of: &Of<'_>) -> Option<Reason> {
    let (plan, course, tables) = (of.plan, of.course, of.tables);
    let rules = changed(
        &tables.kit,
        &course.kit.changes,
        Standing::ThisCourse,
        &tables.stages,
    )
    .ok()?;
    let rule = rules
        .iter()
        .find(|it| it.per == Per::PersonHour && !it.off)?;
    let line = plan.kit.iter().find(|it| it.rule == rule.item)?;
    let weather = Weather::of(
        course.kit.heat,
        &course.days,
        &Conditions::of(course, &plan.sun),
    );
    let each = rule.each.at(weather.heat);
    let group = &course.group;
    let people = group.students.len() + (group.instructors + group.assistants) as usize;
    let hours = course
        .days
        .iter()
        .map(|day| (day.finish - day.start).as_seconds_f64() / 3600.0);
    let hours = hours.fold(0.0, f64::max);
    let exact = each * people as f64 * hours * (1.0 + rule.spare);
    let asked = whole_number((exact - 1e-9).ceil().max(0.0));
    let sum = format!(
        "{people} × {} × {} × (1 + {})",
        number(hours),
        number(each),
        super::line::percent(rule.spare)
    );
    let figure = crate::written::kit::counted(line.need, &rule.unit);
    let mut reason = Reason::new("water", &rule.item, &figure)
        .say(format!("{figure}: {}.", line.why))
        .step(
            format!(
                "People, hours of the longest day, {} an hour, with the spare",
                rule.unit
            ),
            rounded(&sum, exact, "rounded up", asked),
        );
    if asked < line.need {
        reason = reason.say(format!("Never fewer than {} are carried.", line.need));
    }
    Some(reason.source(
        format!("{} {} a person an hour", number(each), rule.unit),
        &rule.source,
    ))
}

fn money(of: &Of<'_>) -> Option<Reason> {
    let money = of.plan.money.as_ref().filter(|it| !it.lines.is_empty())?;
    let students = of.course.group.students.len();
    let show = |amount| money.show(amount);
    let mut reason = Reason::new("per-head", "Cost per head", show(money.per_head)).say(format!(
        "{}, because all costs are shared by {students}.",
        show(money.per_head)
    ));
    for line in &money.lines {
        reason = reason.say(format!(
            "For {}: {}, {}.",
            line.cost.word(),
            show(line.amount),
            line.how
        ));
    }
    let amounts: Vec<String> = money.lines.iter().map(|line| show(line.amount)).collect();
    reason = reason
        .step(
            "All costs",
            format!("{} = {}", amounts.join(" + "), show(money.total)),
        )
        .step(
            "A head",
            format!(
                "{} / {students} = {}",
                show(money.total),
                show(money.per_head)
            ),
        );
    if let (Some(income), Some(left)) = (money.income, money.left) {
        reason = reason.step(
            "Fees less costs",
            format!("{} - {} = {}", show(income), show(money.total), show(left)),
        );
    }
    if let (Some(BreakEven::From { least, .. }), Some(fee)) = (
        &money.break_even,
        of.course.money.as_ref().and_then(|it| it.fee),
    ) {
        reason = reason.say(
            &*of.written
                .money
                .as_ref()
                .map(|it| it.break_even.clone())
                .unwrap_or_default(),
        );
        if let Some(row) = money.by_size.iter().find(|row| row.students == *least)
            && let Some(left) = row.left
        {
            reason = reason.step(
                format!("With {least}, the fewest that cover the costs"),
                format!(
                    "{least} × {} - {} = {}",
                    show(fee),
                    show(row.total),
                    show(left)
                ),
            );
        }
    }
    Some(reason.with_asked("Prices and the fee", "Money"))
}
