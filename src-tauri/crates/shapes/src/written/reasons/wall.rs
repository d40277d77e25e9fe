//! Why the wall is as wide as it is, and how much it holds.

use super::line::leaning_in;
use super::{Of, Reason};
use craft::quantity::{Length, Read, metres};
use craft::wall::Side;

pub(super) fn reasons(of: &Of<'_>) -> Vec<Reason> {
    let mut all = vec![base_width(of), strings(of)];
    all.push(volumes(of));
    all
}

fn measures(reason: Reason) -> Reason {
    reason.with_asked(
        "Height, top width, batter and the rest of the section",
        "Wall",
    )
}

/// How each face leans, as a sentence.
pub(super) fn lean(of: &Of<'_>) -> String {
    let one = |side: Side| match of.plan.section.batter(side).n() {
        None => format!("The {} face is plumb.", side.word()),
        Some(n) => {
            let n = super::line::number(n);
            format!(
                "The {} face goes in by 1 for every {n} it goes up.",
                side.word()
            )
        }
    };
    let [left, right] = Side::BOTH.map(|side| of.plan.section.batter(side));
    match (left == right, left.n()) {
        (true, Some(n)) => format!(
            "Both faces lean 1 in {n}: each goes in by 1 for every {n} it goes up.",
            n = super::line::number(n)
        ),
        _ => Side::BOTH.map(one).join(" "),
    }
}

/// `0.41 m + 2 × (1.07 m - 0.20 m) / 6 = 0.70 m`.
pub(super) fn width_line(of: &Of<'_>, height: Length) -> String {
    let section = &of.plan.section;
    let depth = if height.si().abs() < 1e-9 {
        of.mark(section.height())
    } else if height.si() < 0.0 {
        format!("({} + {})", of.mark(section.height()), of.mark(-height))
    } else {
        format!("({} - {})", of.mark(section.height()), of.mark(height))
    };
    let mut terms = vec![of.mark(section.top_width())];
    if 1e-9 < (section.height() - height).si().abs() {
        terms.extend(leaning_in(section, &depth));
    }
    format!(
        "{} = {}",
        terms.join(" + "),
        of.mark(section.width_at(height))
    )
}

fn base_width(of: &Of<'_>) -> Reason {
    let section = &of.plan.section;
    let wide = of.mark(section.base_width());
    let mut reason = Reason::new("base-width", "Width at the ground", &wide)
        .say(format!(
            "{wide}, because the wall is {} wide under the cope and widens on the way down to the ground, {} lower.",
            of.mark(section.top_width()),
            of.mark(section.height())
        ))
        .say(lean(of))
        .step("Width at the ground", width_line(of, metres(0.0)));
    if let Some(footing) = of.course.wall.footing {
        reason = reason.step(
            "Trench and footing, with what they stand out at each side",
            format!(
                "{wide} + 2 × {} = {}",
                of.mark(footing.outset),
                of.mark(section.base_width() + footing.outset * 2.0)
            ),
        );
    }
    measures(reason)
}

fn strings(of: &Of<'_>) -> Reason {
    let section = &of.plan.section;
    let strings = &of.plan.frames.strings;
    let mut reason = Reason::new("strings", "Width at each string", of.mark(section.base_width()))
        .say(format!(
            "At each string the wall is as wide as under the cope, {}, and what both faces have gained on the way down from there.",
            of.mark(section.top_width())
        ))
        .say(lean(of))
        .say("Heights count from the ground at station 0. Each lift is divided into equal steps of at most a string's move, so that a string always stands at a through row.");
    for string in strings {
        let at = format!("At {} above the ground", of.mark(string.height));
        reason = reason.step(at, width_line(of, string.height));
    }
    measures(reason).source(
        "The string moves up by at most 0.20 m (8 in)",
        "common practice, no source",
    )
}

/// The wall has one height all along and no bend, so that its body is section times length.
pub(super) fn alike_all_along(of: &Of<'_>) -> bool {
    let height = of.plan.section.height().si();
    of.plan.wall.pieces().iter().all(|piece| {
        piece.bend.is_none()
            && piece
                .height
                .iter()
                .all(|it| (it.si() - height).abs() < 1e-9)
    })
}

fn volumes(of: &Of<'_>) -> Reason {
    let (section, volumes) = (&of.plan.section, &of.plan.volumes);
    let length = of.length(of.plan.wall.length());
    let (top, area) = (of.mark(section.top_width()), of.area(section.area()));
    let mut reason = Reason::new("volumes", "Body of the wall", of.volume(volumes.body))
        .say("The body is what stands between the ground and the cope, with the air in it.")
        .step(
            "Section: the middle of the two widths, times the height",
            format!(
                "({} + {top}) / 2 × {} = {area}",
                of.mark(section.base_width()),
                of.mark(section.height())
            ),
        );
    if alike_all_along(of) {
        reason = reason.step(
            "Body: section times length",
            format!("{area} × {length} = {}", of.volume(volumes.body)),
        );
        if let Some(footing) = of.course.wall.footing {
            reason = reason.step(
                "Footing: its width, depth and length",
                format!(
                    "({} + 2 × {}) × {} × {length} = {}",
                    of.mark(section.base_width()),
                    of.mark(footing.outset),
                    of.mark(footing.depth),
                    of.volume(volumes.footing)
                ),
            );
        }
    } else {
        reason = reason.say(format!(
            "The height changes along the line or the line bends, so the section is added up stretch by stretch: {} in all, where section times length would not be right.",
            of.volume(volumes.body)
        ));
    }
    if 0 < of.plan.stone.copes {
        reason = reason.step(
            "Cope: top width, height of the cope, length",
            format!(
                "{top} × {} × {length} = {}",
                of.mark(of.course.wall.cope_height),
                of.volume(volumes.cope)
            ),
        );
    }
    measures(reason)
}
