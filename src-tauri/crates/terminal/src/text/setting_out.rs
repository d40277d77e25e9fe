//! Wall, frames, lumber and bank as lines of text.

use super::Text;
use shapes::written::Written;

/// The wall, its line, top and ends, and why it is as long as it is.
pub(super) fn wall(plan: &Written, text: &mut Text) {
    let wall = &plan.wall;
    text.heading("Wall");
    text.line(&wall.reason);
    for said in [&wall.line, &wall.top] {
        if !said.is_empty() {
            text.line(said);
        }
    }
    for end in &wall.ends {
        text.line(&format!("At {}: {}", end.at, end.what));
    }
    text.table(
        [
            ("height to the cope", wall.height.clone()),
            ("width at the top", wall.top_width.clone()),
            ("width at the ground", wall.base_width.clone()),
            ("batter", wall.batter.clone()),
            ("section", wall.section_area.clone()),
            ("body", wall.body_volume.clone()),
            ("footing", wall.footing_volume.clone()),
            ("cope", wall.cope_volume.clone()),
        ]
        .into_iter()
        .filter(|(_, figure)| !figure.is_empty())
        .map(|(name, figure)| vec![name.to_owned(), figure]),
    );
    text.table(wall.limits.iter().map(|limit| {
        let binds = if limit.binds { "<- decides" } else { "" };
        vec![
            limit.limit.clone(),
            format!("{} {}", limit.bound, limit.length),
            binds.to_owned(),
        ]
    }));
}

/// Frames, marks, strings and moves.
pub(super) fn frames(plan: &Written, text: &mut Text) {
    let frames = &plan.frames;
    text.heading("Frames");
    let counted = |count: usize, one: &str| match count {
        1 => format!("1 {one}"),
        many => format!("{many} {one}s"),
    };
    let mut words = format!(
        "{}, {}",
        counted(frames.count, "frame"),
        counted(frames.sets, "set")
    );
    if 0 < frames.end_profiles {
        words.push_str(&format!(
            ", {}",
            counted(frames.end_profiles, "end profile")
        ));
    }
    if let Some(short) = frames.short.filter(|short| 0 < *short) {
        words.push_str(&format!("; {short} short"));
    }
    text.line(&words);
    if let Some(bars) = &frames.bars {
        let length = if bars.length.is_empty() {
            "none in stock is long enough"
        } else {
            &bars.length
        };
        text.line(&format!(
            "{} bars {}, {length} (needed: {})",
            bars.count, bars.size, bars.needed
        ));
    }
    let head = [
        "frame", "station", "ground", "left", "right", "width", "up left", "up right",
    ]
    .map(str::to_owned)
    .to_vec();
    text.table(std::iter::once(head).chain(frames.rows.iter().map(|row| {
        vec![
            row.number.to_string(),
            row.station.clone(),
            row.ground.clone(),
            row.left_offset.clone(),
            row.right_offset.clone(),
            row.base_width.clone(),
            row.left_rise.clone(),
            row.right_rise.clone(),
        ]
    })));
    let head = ["string at", "width there", ""].map(str::to_owned).to_vec();
    text.table(
        std::iter::once(head).chain(frames.strings.iter().map(|string| {
            let remark = match (string.throughs, string.top) {
                (true, _) => "throughs",
                (_, true) => "top",
                _ => "",
            };
            vec![
                string.height.clone(),
                string.width.clone(),
                remark.to_owned(),
            ]
        })),
    );
    text.line(&format!(
        "String to bring: {}, {} at each end to tie",
        frames.string.total, frames.string.tail
    ));
    for curve in &frames.curves {
        text.line(&format!(
            "Arc {} to {}: string off the left face {}, off the right {}; {} apart keeps it within {}",
            curve.from,
            curve.to,
            curve.left_bow,
            curve.right_bow,
            curve.spacing_for_tolerance,
            curve.tolerance
        ));
    }
    let head = ["bay", "left", "right", "left to right", "right to left"];
    let head = head.map(str::to_owned).to_vec();
    text.table(std::iter::once(head).chain(frames.bays.iter().map(|bay| {
        vec![
            format!("{} to {}", bay.from, bay.to),
            bay.left_taped.clone(),
            bay.right_taped.clone(),
            bay.left_to_right.clone(),
            bay.right_to_left.clone(),
        ]
    })));
    text.table(frames.moves.iter().map(|one| {
        vec![
            format!("frame {}", one.frame),
            format!("{} to {}", one.from, one.to),
            format!("when built to {}", one.built_to),
        ]
    }));
}

/// The cut list of timber frames and the battens to buy.
pub(super) fn timber(plan: &Written, text: &mut Text) {
    let Some(timber) = &plan.timber else {
        return;
    };
    text.heading(&format!("Cut list, battens {}", timber.batten));
    if !timber.too_long.is_empty() {
        text.line(&timber.too_long);
    }
    text.table(timber.cut_list.iter().map(|row| {
        vec![
            row.mark.clone(),
            format!("{} {}", row.count, row.what),
            row.length.clone(),
            row.ends.clone(),
            format!("frames {}", row.frames),
        ]
    }));
    if !timber.buy.is_empty() {
        text.line(&format!(
            "Buy {}: {}, {} of it waste. {}",
            timber.buy.join(", "),
            timber.bought,
            timber.waste,
            timber.least
        ));
    }
    text.table(timber.patterns.iter().map(|row| {
        vec![
            format!("{} of {}", row.times, row.stock),
            row.pieces.clone(),
            format!("{} left", row.offcut),
        ]
    }));
}

/// The bank behind a retaining wall, with the check and what it takes for granted.
pub(super) fn bank(plan: &Written, text: &mut Text) {
    let Some(bank) = &plan.retaining else {
        return;
    };
    text.heading("A bank behind it: for teaching only, no approval");
    text.line(&bank.ask);
    text.line(&format!(
        "Set out from the {} face. Drainage stone {} thick: {}, {}",
        bank.front, bank.drainage, bank.backfill, bank.backfill_mass
    ));
    text.line(&format!(
        "Safety against tipping {}, against sliding {} (usual limit {}); base {} of the height. {}",
        bank.overturning, bank.sliding, bank.limit, bank.base_share, bank.resultant
    ));
    text.table(
        bank.reckoned
            .iter()
            .map(|(name, figure)| vec![name.clone(), figure.clone()]),
    );
    text.line(&format!(
        "Taken for granted: {}",
        bank.assumptions.join(" ")
    ));
}
