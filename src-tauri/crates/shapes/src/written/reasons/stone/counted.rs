//! Why so many throughs and copes, and what one of them weighs.

use super::super::line::{density, rounded};
use super::super::wall::width_line;
use super::super::{Of, Reason};
use super::resting;
use craft::course::ThroughReach;
use craft::quantity::Read;

pub(super) fn throughs(of: &Of<'_>) -> Option<Reason> {
    let (stone, given) = (&of.plan.stone, &of.course.wall);
    if stone.throughs.is_empty() {
        return None;
    }
    let length = of.plan.wall.length();
    let mut reason = Reason::new("throughs", "Throughs", stone.through_count().to_string()).say(format!(
        "{}: in each row one for every {} of wall, to the nearest whole number and at least one.",
        stone.through_count(),
        of.length(given.through_spacing)
    ));
    let sum = format!(
        "{} / {}",
        of.length(length),
        of.length(given.through_spacing)
    );
    for row in &stone.throughs {
        let at = format!("Row at {}", of.mark(row.height));
        let exact = length.si() / given.through_spacing.si();
        if 0.5 <= exact {
            reason = reason.step(
                format!("{at}: how many"),
                rounded(&sum, exact, "to the nearest", row.count),
            );
        }
        reason = reason.step(
            format!("{at}: width of the wall"),
            width_line(of, row.height),
        );
        let width = of.mark(of.plan.section.width_at(row.height));
        let beyond = of.mark(given.through.projection);
        let long = match given.through_reach {
            ThroughReach::Across => format!("{width} + 2 × {beyond}"),
            ThroughReach::ThreeQuarters => format!("0.75 × {width} + {beyond}"),
        };
        reason = reason
            .step(
                format!("{at}: length of one, with what stands out of the face"),
                format!("{long} = {}", of.mark(row.length)),
            )
            .step(
                format!("{at}: what one weighs"),
                format!(
                    "{} × {} × {} × {} = {}",
                    of.mark(row.length),
                    of.mark(given.through.width),
                    of.mark(given.through.thickness),
                    density(stone.density, of.units()),
                    of.mass(row.mass)
                ),
            );
    }
    if 1 < stone.throughs.len() {
        let counts: Vec<String> = stone
            .throughs
            .iter()
            .map(|row| row.count.to_string())
            .collect();
        reason = reason.step(
            "In all rows",
            format!("{} = {}", counts.join(" + "), stone.through_count()),
        );
    }
    let reason = reason.with_asked("Rows, spacing and size of a through", "Wall");
    Some(resting(of, reason, &["density"]))
}

pub(super) fn copes(of: &Of<'_>) -> Option<Reason> {
    let copes = of.plan.stone.copes;
    if copes == 0 {
        return None;
    }
    let (length, thick) = (of.plan.wall.length(), of.course.wall.cope_thickness);
    let sum = format!("{} / {}", of.length(length), of.mark(thick));
    Some(
        Reason::new("copes", "Copes", copes.to_string())
            .say(format!(
                "{copes}: set on edge, one takes {} of the wall's length, and a part of one is one.",
                of.mark(thick)
            ))
            .step("Copes", rounded(&sum, length.si() / thick.si(), "rounded up", copes))
            .with_asked("Thickness of a cope along the wall", "Wall"),
    )
}
