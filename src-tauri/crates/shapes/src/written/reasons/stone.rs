//! Why so much stone: built in, ordered, and by kind.

mod counted;
mod order;

use super::line::{density, percent};
use super::{Of, Reason};
use craft::course::StoneKind;
use craft::quantity::Mass;

pub(super) fn reasons(of: &Of<'_>) -> Vec<Reason> {
    let mut all = vec![built(of), order::order(of)];
    all.extend(order::by(of));
    all.extend(counted::throughs(of));
    all.extend(counted::copes(of));
    all.push(hearting(of));
    all
}

/// The uncertain figures that went in, by their words, each with its range and source.
fn resting(of: &Of<'_>, mut reason: Reason, ids: &[&str]) -> Reason {
    for it in &of.written.stone.rests_on {
        if ids.contains(&it.id.as_str()) {
            let what = format!(
                "{}: {}, four in five within {}",
                it.what, it.figure, it.range
            );
            reason = reason.source(what, &it.source);
        }
    }
    reason
}

/// `(1 - 25 %)`.
fn less(share: f64) -> String {
    format!("(1 - {})", percent(share))
}

/// The stone of what is walled, air taken off: body and footing.
fn walled(of: &Of<'_>) -> Mass {
    let kind = |kind| of.plan.stone.kind(kind);
    kind(StoneKind::Face)
        + kind(StoneKind::Hearting)
        + kind(StoneKind::Throughs)
        + kind(StoneKind::Footing)
}

fn built(of: &Of<'_>) -> Reason {
    let (stone, volumes) = (&of.plan.stone, &of.plan.volumes);
    let (solid, air) = (density(stone.density, of.units()), less(stone.voids));
    let mut reason = Reason::new("built", "Stone built in", of.mass(stone.built())).say(format!(
        "{}, because a cubic measure of wall is not all stone: some of it is air.",
        of.mass(stone.built())
    ));
    reason = if of.course.wall.footing.is_some() {
        reason.step(
            "Body and footing, the air taken off",
            format!(
                "({} + {}) × {solid} × {air} = {}",
                of.volume(volumes.body),
                of.volume(volumes.footing),
                of.mass(walled(of))
            ),
        )
    } else {
        reason.step(
            "Body, the air taken off",
            format!(
                "{} × {solid} × {air} = {}",
                of.volume(volumes.body),
                of.mass(walled(of))
            ),
        )
    };
    let fill = stone.makeup.rests_on.iter().find(|it| it.id == "cope-fill");
    if let (Some(fill), true) = (fill, 0 < stone.copes) {
        let copes = stone.kind(StoneKind::Copes);
        reason = reason
            .step(
                "Cope, by the share of it that is stone",
                format!(
                    "{} × {solid} × {} = {}",
                    of.volume(volumes.cope),
                    percent(fill.figure.centre),
                    of.mass(copes)
                ),
            )
            .step(
                "Together",
                format!(
                    "{} + {} = {}",
                    of.mass(walled(of)),
                    of.mass(copes),
                    of.mass(stone.built())
                ),
            );
    }
    let reason = reason.say(format!(
        "Four walls in five like this one hold {}: the figures below are ranges, and the sum takes the middle of each.",
        of.written.stone.built_range
    ));
    resting(of, reason, &["density", "voids", "cope-fill"])
}

fn hearting(of: &Of<'_>) -> Reason {
    let stone = &of.plan.stone;
    let [face, hearting, throughs] =
        [StoneKind::Face, StoneKind::Hearting, StoneKind::Throughs].map(|kind| stone.kind(kind));
    let body = face + hearting + throughs;
    let share = stone.makeup.rests_on.iter().find(|it| it.id == "hearting");
    let share = share.map_or(0.0, |it| it.figure.centre);
    let mut reason = Reason::new("hearting", "Hearting", of.mass(hearting))
        .say(format!(
            "{}: the share of the body's stone that fills the middle, throughs taken off.",
            of.mass(hearting)
        ))
        .step(
            "Stone of the body",
            format!(
                "{} × {} × {} = {}",
                of.volume(of.plan.volumes.body),
                density(stone.density, of.units()),
                less(stone.voids),
                of.mass(body)
            ),
        );
    reason = if stone.through_count() == 0 {
        reason.step(
            "Hearting",
            format!(
                "{} × {} = {}",
                of.mass(body),
                percent(share),
                of.mass(hearting)
            ),
        )
    } else {
        reason.step(
            "Hearting, throughs taken off",
            format!(
                "({} - {}) × {} = {}",
                of.mass(body),
                of.mass(throughs),
                percent(share),
                of.mass(hearting)
            ),
        )
    };
    resting(of, reason, &["density", "voids", "hearting"])
}
