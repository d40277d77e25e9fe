//! Why so much is ordered, and by when.

use super::super::line::{number, rounded};
use super::super::{Of, Reason};
use super::{less, resting};
use craft::course::{OnSite, StoneKind};
use craft::quantity::{Mass, Read, kilograms, show_count};

pub(super) fn order(of: &Of<'_>) -> Reason {
    let (stone, written) = (&of.plan.stone, &of.written.stone);
    let reason = Reason::new("order", "Stone to order", &written.high);
    if stone.practice_pitch {
        return reason.say("Nothing: the pitch stood before, and its stone lies there, sorted.");
    }
    let reason = reason
        .say(format!(
            "{}: the high figure, so that nine courses in ten have enough. Low is {}, likely {}.",
            written.high, written.low, written.mid
        ))
        .say("More is ordered than is built in, because people choose: some stones never fit. What lies there already is taken off.");
    let mut reason = likely(of, reason).say("Low and high come from the same sum, with the uncertain figures moved together to where one course in ten needs less, and one in ten more.");
    if let (Some(load), Some(loads)) = (of.course.stone.load, stone.loads)
        && 0 < loads
    {
        let sum = format!("{} / {}", written.high, of.mass(load));
        let exact = stone.to_deliver.high.si() / load.si();
        reason = reason.step(
            "Whole loads of the high figure",
            rounded(&sum, exact, "rounded up", loads),
        );
    }
    resting(
        of,
        reason,
        &["density", "voids", "waste", "cope-fill", "reused"],
    )
}

/// The likely figure: built over what is left of a delivery, less what is there.
fn likely(of: &Of<'_>, reason: Reason) -> Reason {
    let stone = &of.plan.stone;
    let (share, built) = (less(stone.waste), stone.built());
    let (wanted, mid) = (stone.wanted(built), stone.to_deliver.mid);
    if of.course.stone.old_wall.is_some() {
        let reason = reason.step(
            "To have at hand, likely",
            format!("{} / {share} = {}", of.mass(built), of.mass(wanted)),
        );
        return reason.say(format!(
            "What the old wall gives is taken off kind by kind: {}.",
            of.written.stone.old_wall
        ));
    }
    match &of.course.stone.on_site {
        OnSite::Heap(heap) => {
            let reason = reason.step(
                "To have at hand, likely",
                format!("{} / {share} = {}", of.mass(built), of.mass(wanted)),
            );
            match (0.0 < heap.si(), 0.0 < mid.si()) {
                (true, true) => reason.step(
                    "Less what lies there",
                    format!(
                        "{} - {} = {}",
                        of.mass(wanted),
                        of.mass(*heap),
                        of.mass(mid)
                    ),
                ),
                (true, false) => reason.say(format!(
                    "The {} that lie there are likely enough.",
                    of.mass(*heap)
                )),
                (false, _) => reason,
            }
        }
        OnSite::ByKind(there) => by_kind(of, reason, there),
    }
}

/// What lies there by kind makes up for its own kind alone.
fn by_kind(of: &Of<'_>, mut reason: Reason, there: &[(StoneKind, Mass)]) -> Reason {
    let stone = &of.plan.stone;
    let share = less(stone.waste);
    let mut parts = Vec::new();
    for it in &stone.kinds {
        let built = stone.kind(it.kind);
        if built.si() <= 0.0 {
            continue;
        }
        let here = there.iter().filter(|(kind, _)| *kind == it.kind);
        let here = here.fold(kilograms(0.0), |sum, (_, mass)| sum + *mass);
        let (word, mid) = (it.kind.word(), it.to_deliver.mid);
        if mid.si() <= 0.0 {
            reason = reason.say(format!(
                "Of {word} {} lie there, which is likely enough.",
                of.mass(here)
            ));
            continue;
        }
        let less_there = if 0.0 < here.si() {
            format!(" - {}", of.mass(here))
        } else {
            String::new()
        };
        reason = reason.step(
            format!("Likely still to come of {word}"),
            format!(
                "{} / {share}{less_there} = {}",
                of.mass(built),
                of.mass(mid)
            ),
        );
        parts.push(of.mass(mid));
    }
    if 1 < parts.len() {
        let all = of.mass(stone.to_deliver.mid);
        reason = reason.step("Together", format!("{} = {all}", parts.join(" + ")));
    }
    reason
}

/// The day to order by, for what is ordered first.
pub(super) fn by(of: &Of<'_>) -> Option<Reason> {
    let first = of.plan.deliveries.first()?;
    let days = of
        .course
        .stone
        .lead_days
        .unwrap_or(of.tables.stone.lead_days);
    let working = show_count(days as usize, "working day", "working days");
    let reason = Reason::new("order-by", "Order by", of.clock.date(first.order_by))
        .say(format!(
            "{}, because the quarry takes {working} and the stone must be there by {}, the last working day before the course.",
            of.clock.date(first.order_by),
            of.clock.date(first.there_by)
        ))
        .say("Saturdays, Sundays and the closed days you gave are not counted.");
    let lead = format!(
        "{} working days from order to delivery",
        number(f64::from(days))
    );
    Some(match of.course.stone.lead_days {
        Some(_) => reason.source(lead, "given in the course file"),
        None => reason.source(lead, &of.tables.stone.lead_source),
    })
}
