//! Why so many frames, why bars so long, and where their marks come from.

use super::line::{hundredths, number, rounded};
use super::wall::alike_all_along;
use super::{Of, Reason};
use craft::frames::{Bars, FrameRow};
use craft::quantity::{Length, Read, show_small};
use craft::wall::{Batter, Side};

pub(super) fn reasons(of: &Of<'_>) -> Vec<Reason> {
    let frames = &of.plan.frames;
    let mut all = vec![count(of)];
    all.extend(frames.rows.first().map(|row| offsets(of, row)));
    if let Some(bars) = &frames.bars {
        all.push(bars_length(of, bars));
    }
    all.extend(trench(of));
    all
}

fn asked(reason: Reason) -> Reason {
    reason.with_asked(
        "Spacing, sets, stock, embedment and what stands above the board",
        "Frames",
    )
}

fn count(of: &Of<'_>) -> Reason {
    let (plan, given) = (of.plan, &of.course.frames);
    let (count, bays) = (plan.frames.rows.len(), plan.frames.bays.len());
    let mut reason = Reason::new("frames", "Frames", count.to_string()).say(format!(
        "{count}: one at each end, one at every joint of the line and step of the top, and between them so many that none stand more than {} apart on a straight.",
        of.length(given.spacing)
    ));
    if of.course.wall.line.is_empty() && plan.wall.steps().is_empty() {
        let length = plan.wall.length();
        let sum = format!("{} / {}", of.length(length), of.length(given.spacing));
        let exact = length.si() / given.spacing.si();
        reason = reason.step(
            "Bays between frames",
            rounded(&sum, exact, "rounded up", bays),
        );
    }
    if plan.wall.is_ring() {
        reason = reason.say(format!(
            "The wall is a ring: its {bays} bays take as many frames, because it ends where it began."
        ));
    } else {
        reason = reason.step(
            "Frames: one more than there are bays",
            format!("{bays} + 1 = {count}"),
        );
    }
    let sum = format!("{count} / {}", given.set_size);
    let exact = count as f64 / f64::from(given.set_size.max(1));
    reason = reason.step(
        "Sets to bring",
        rounded(&sum, exact, "rounded up", plan.frames.sets),
    );
    if let (Some(have), Some(short)) = (given.in_stock, plan.frames.short)
        && 0 < short
    {
        reason = reason.step("Short of them", format!("{count} - {have} = {short}"));
    }
    asked(reason)
}

fn side(of: &Of<'_>, row: &FrameRow, side: Side) -> String {
    let half = format!("{} / 2", of.mark(of.plan.section.top_width()));
    let offset = of.mark(row.offset(side));
    match of.plan.section.batter(side).n() {
        None => format!("{half} = {offset}"),
        Some(n) => format!(
            "{half} + {} / {} = {offset}",
            of.mark(row.rise(side)),
            number(n)
        ),
    }
}

fn offsets(of: &Of<'_>, row: &FrameRow) -> Reason {
    let mut reason = Reason::new(
        "offsets",
        "Where the bars stand",
        format!("{} and {}", of.mark(row.left_offset), of.mark(row.right_offset)),
    )
    .say("Each bar stands half the top width from the centre line, and farther out by what its face leans between the board and the ground.")
    .say("This is frame 1; on uneven ground each frame has its own heights, and the sum is the same.");
    for which in Side::BOTH {
        reason = reason.step(
            format!("Frame 1, {} of the centre line", which.word()),
            side(of, row, which),
        );
    }
    reason.with_asked("Top width and batter", "Wall")
}

/// The bar that reaches farthest: its rise and batter.
fn farthest(of: &Of<'_>) -> Option<(Length, Batter)> {
    let section = &of.plan.section;
    let rows = of.plan.frames.rows.iter();
    rows.flat_map(|row| Side::BOTH.map(|side| (row.rise(side), section.batter(side))))
        .max_by(|one, other| {
            let along = |it: &(Length, Batter)| it.0.si() * it.1.slope_factor();
            along(one).total_cmp(&along(other))
        })
}

/// How much longer a leaning bar is than it is high: `√(1 + 1 / (6 × 6)) = 1.0138`.
fn slope_line(n: f64, factor: f64) -> String {
    format!("√(1 + 1 / ({n} × {n})) = {}", number(factor), n = number(n))
}

fn bars_length(of: &Of<'_>, bars: &Bars) -> Reason {
    let (given, frames) = (&of.course.frames, of.plan.frames.rows.len());
    let shown = bars.chosen.map_or_else(
        || format!("none reaches {}", of.mark(bars.needed)),
        |length| of.length(length),
    );
    let mut reason = Reason::new("bars", "Bars", format!("{}, {shown}", bars.count));
    reason = reason.say(match bars.chosen {
        Some(length) => format!(
            "{}, because {} is needed and it is the shortest length you buy that reaches.",
            of.length(length),
            of.mark(bars.needed)
        ),
        None => format!(
            "No length you buy reaches the {} that are needed: borrow longer bars, lower the wall, or drive them less deep where the ground allows.",
            of.mark(bars.needed)
        ),
    });
    if let Some((rise, batter)) = farthest(of) {
        let factor = batter.slope_factor();
        let along = rise * factor;
        if let Some(n) = batter.n() {
            reason = reason
                .step(
                    "A leaning bar is longer than it is high, by",
                    slope_line(n, factor),
                )
                .step(
                    "From the ground to the board, along the bar",
                    format!(
                        "{} × {} = {}",
                        of.mark(rise),
                        number(factor),
                        of.mark(along)
                    ),
                );
        }
        reason = reason.step(
            "With what is in the ground and what stands above the board",
            format!(
                "{} + {} + {} = {}",
                of.mark(along),
                of.mark(given.embedment),
                of.mark(given.projection),
                of.mark(bars.needed)
            ),
        );
    }
    reason = reason.step(
        "Two bars to a frame",
        format!("2 × {frames} = {}", bars.count),
    );
    if !alike_all_along(of) {
        reason = reason.say("The wall is not of one height all along: the highest frame decides.");
    }
    let bar = of.tables.bars.iter().find(|bar| bar.key == given.bar);
    let reason = asked(reason);
    match bar {
        Some(bar) => reason.source(format!("{} bars", bar.key), &bar.source),
        None => reason,
    }
}

fn trench(of: &Of<'_>) -> Option<Reason> {
    let footing = of.course.wall.footing?;
    let section = &of.plan.section;
    let wide = of.mark(section.base_width() + footing.outset * 2.0);
    let mut reason = Reason::new(
        "trench",
        "Trench",
        format!("{wide} wide, {} deep", of.mark(footing.depth)),
    )
    .say(format!(
        "{wide} wide: as wide as the wall at the ground, and {} farther out at each side.",
        of.mark(footing.outset)
    ))
    .step(
        "Width of the trench",
        format!(
            "{} + 2 × {} = {wide}",
            of.mark(section.base_width()),
            of.mark(footing.outset)
        ),
    );
    if let (Some(trench), Some(bars)) = (of.plan.fittings.trench, &of.plan.frames.bars) {
        let slope = Side::BOTH
            .map(|side| section.batter(side).slope_factor())
            .into_iter()
            .fold(1.0, f64::max);
        let table = &of.tables.frames;
        if 0.0 < trench.grip.si() {
            reason = reason.step(
                "A bar grips only below the trench",
                format!(
                    "{} - {} × {} = {}",
                    of.mark(of.course.frames.embedment),
                    of.mark(footing.depth),
                    number(slope),
                    of.mark(trench.grip)
                ),
            );
        }
        if 0 < trench.gaps {
            let small = |length| show_small(length, of.units());
            reason = reason.step(
                "Gap left in the footing for a bar",
                format!(
                    "{} + 2 × {} = {}",
                    small(bars.diameter),
                    small(table.gap_play),
                    small(trench.gap)
                ),
            );
        }
        reason = reason.source(
            format!(
                "At least {} must grip; room round a bar",
                of.mark(table.least_grip)
            ),
            &table.footing_source,
        );
    }
    if alike_all_along(of) && 0.0 < of.plan.volumes.footing.si() {
        reason = reason.step(
            "Dug out",
            format!(
                "{wide} × {} × {} = {}",
                of.mark(footing.depth),
                of.length(of.plan.wall.length()),
                of.volume(of.plan.volumes.footing)
            ),
        );
    }
    Some(reason.with_asked("Depth and outset of the footing", "Wall"))
}

/// A number of people or places that need not be whole.
pub(super) fn some(count: f64) -> String {
    hundredths(count)
}
