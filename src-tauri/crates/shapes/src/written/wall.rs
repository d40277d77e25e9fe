//! The wall in written figures, and why it is as long as it is.

use craft::course::{Course, End, WallKind};
use craft::pace::{Binding, Bound};
use craft::plan::Plan;
use craft::quantity::{Units, show_area, show_length, show_mark, show_volume};
use craft::wall::{Batter, Side, Top, WallEnd};
use serde::Serialize;
use ts_rs::TS;

/// The wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenWall")]
#[allow(missing_docs)]
pub struct Wall {
    /// `freestanding`, or `holds a bank on the right`.
    pub kind: String,
    pub length: String,
    /// `straight, level`, `bent, uneven`.
    pub lie: String,
    /// The line in words; empty for one straight.
    pub line: String,
    /// How the top runs; empty for a level one on level ground.
    pub top: String,
    pub ends: Vec<EndRow>,
    pub height: String,
    pub top_width: String,
    pub base_width: String,
    /// `1 in 8, both faces`.
    pub batter: String,
    pub section_area: String,
    pub face_area: String,
    pub body_volume: String,
    /// Empty without a footing.
    pub footing_volume: String,
    pub footing_depth: String,
    pub footing_width: String,
    pub footing_outset: String,
    /// Empty without a cope.
    pub cope_height: String,
    pub cope_volume: String,
    /// `pace`, `frames` and so on.
    pub binding: String,
    /// A sentence: the length, because of what, and what would change it.
    pub reason: String,
    pub limits: Vec<Limit>,
}

/// One end of the wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenEnd")]
#[allow(missing_docs)]
pub struct EndRow {
    /// `station 0` or `far end`.
    pub at: String,
    /// What to do there, in a sentence.
    pub what: String,
}

/// One limit on the length.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLimit")]
pub struct Limit {
    /// The reason.
    pub limit: String,
    /// `at least` or `at most`.
    pub bound: String,
    /// Where it bites.
    pub length: String,
    /// It decided the length.
    pub binds: bool,
}

impl Wall {
    pub(super) fn of(plan: &Plan, course: &Course) -> Self {
        let units = course.units;
        let show = |length| show_length(length, units);
        let mark = |length| show_mark(length, units);
        let section = &plan.section;
        let footing = course.wall.footing;
        let if_cope = |figure: String| {
            if 0 < plan.stone.copes {
                figure
            } else {
                String::new()
            }
        };
        Self {
            kind: match &course.wall.kind {
                WallKind::Freestanding => "freestanding".to_owned(),
                WallKind::Retaining(bank) => format!("holds a bank on the {}", bank.side.word()),
            },
            length: show(plan.sizing.length),
            lie: lie(plan),
            line: line(plan, units),
            top: top(plan, units),
            ends: ends(plan, units),
            height: mark(section.height()),
            top_width: mark(section.top_width()),
            base_width: mark(section.base_width()),
            batter: batter(section.batter(Side::Left), section.batter(Side::Right)),
            section_area: show_area(section.area(), units),
            face_area: show_area(plan.volumes.face, units),
            body_volume: show_volume(plan.volumes.body, units),
            footing_volume: footing
                .map(|_| show_volume(plan.volumes.footing, units))
                .unwrap_or_default(),
            footing_depth: footing.map(|it| mark(it.depth)).unwrap_or_default(),
            footing_outset: footing.map(|it| mark(it.outset)).unwrap_or_default(),
            footing_width: footing
                .map(|it| mark(section.base_width() + it.outset * 2.0))
                .unwrap_or_default(),
            cope_height: if_cope(mark(course.wall.cope_height)),
            cope_volume: if_cope(show_volume(plan.volumes.cope, units)),
            binding: plan.sizing.binding.word().to_owned(),
            reason: reason(plan, course),
            limits: limits(plan, course),
        }
    }
}

fn lie(plan: &Plan) -> String {
    let bent = plan
        .wall
        .line
        .stretches()
        .iter()
        .any(|it| it.bend.is_some());
    let line = if plan.wall.is_ring() {
        "a ring"
    } else if bent {
        "bent"
    } else {
        "straight"
    };
    let ground = if plan.wall.ground.is_level() {
        "level"
    } else {
        "uneven"
    };
    format!("{line}, {ground}")
}

/// `4.00 m straight, 3.00 m round to the left on a radius of 6.00 m, 2.00 m straight.`
fn line(plan: &Plan, units: Units) -> String {
    let show = |length| show_mark(length, units);
    let mut stretches: Vec<String> = plan
        .wall
        .line
        .spans()
        .map(|(from, to, bend)| match bend {
            None => format!("{} straight", show(to - from)),
            Some(bend) => format!(
                "{} round to the {} on a radius of {}",
                show(to - from),
                bend.turn.word(),
                show(bend.radius)
            ),
        })
        .collect();
    if stretches.len() < 2
        && plan
            .wall
            .line
            .stretches()
            .iter()
            .all(|it| it.bend.is_none())
    {
        return String::new();
    }
    if plan.wall.is_ring() {
        stretches.push("and so back to station 0".to_owned());
    }
    format!("{}.", stretches.join(", "))
}

fn top(plan: &Plan, units: Units) -> String {
    let show = |length| show_mark(length, units);
    let level_ground = plan.wall.ground.is_level();
    match plan.wall.top {
        Top::Level if level_ground => String::new(),
        Top::Level => "Level: the board is set from one level all along.".to_owned(),
        Top::FollowsGround => {
            "It follows the ground: the same height over the centre line all along.".to_owned()
        }
        Top::Stepped { length, height } => format!(
            "Level for {}, then up or down by {} as the ground does.",
            show(length),
            show(height)
        ),
    }
}

fn ends(plan: &Plan, units: Units) -> Vec<EndRow> {
    ["station 0", "far end"]
        .into_iter()
        .zip(&plan.ends)
        .map(|(at, end)| EndRow {
            at: at.to_owned(),
            what: end_words(end, units),
        })
        .collect()
}

fn end_words(end: &WallEnd, units: Units) -> String {
    let left_out = || show_volume(end.left_out, units);
    match end.kind {
        End::Head => {
            let lean = end.batter.n().map_or_else(
                || "plumb".to_owned(),
                |n| {
                    format!(
                        "leaning back 1 in {}, which leaves out {}",
                        rounded(n),
                        left_out()
                    )
                },
            );
            format!(
                "Built end, {lean}: an end profile beside the frames, {} long and {} short end stones in turn.",
                end.stones.long, end.stones.short
            )
        }
        End::Joined => {
            "Joined: no profile; pin the strings to the standing wall and tooth into it.".to_owned()
        }
        End::Raked => format!(
            "Raked back one along for one up, {} at the top, which leaves out {}.",
            show_mark(end.height, units),
            left_out()
        ),
    }
}

fn batter(left: Batter, right: Batter) -> String {
    let one = |batter: Batter| {
        batter
            .n()
            .map_or_else(|| "plumb".to_owned(), |n| format!("1 in {}", rounded(n)))
    };
    if left == right {
        return format!("{}, both faces", one(left));
    }
    format!("{} left, {} right", one(left), one(right))
}

/// `6`, `7.5`: an n without needless decimals.
fn rounded(n: f64) -> f64 {
    (n * 100.0).round() / 100.0
}

fn limits(plan: &Plan, course: &Course) -> Vec<Limit> {
    plan.sizing
        .limits
        .iter()
        .map(|limit| Limit {
            limit: limit.limit.word().to_owned(),
            bound: match limit.bound {
                Bound::Least => "at least",
                Bound::Most => "at most",
            }
            .to_owned(),
            length: show_length(limit.length, course.units),
            binds: limit.limit == plan.sizing.binding,
        })
        .collect()
}

/// `9.00 m, because frames allow 9.00 m; pace would allow 9.32 m.`
fn reason(plan: &Plan, course: &Course) -> String {
    let show = |length| show_length(length, course.units);
    let sizing = &plan.sizing;
    let allows = |binding: Binding| match binding {
        Binding::Pace => "the time allows",
        Binding::Stone => "the stone that can be had allows",
        Binding::Frames => "the frames in stock allow",
        Binding::Site => "the site allows",
        Binding::ElbowRoom => "the group needs at least",
        Binding::Given => "it is given as",
    };
    let most = |binding| {
        sizing
            .limits
            .iter()
            .find(|limit| limit.limit == binding && limit.bound == Bound::Most)
    };
    if sizing.binding == Binding::Given {
        let time = most(Binding::Pace).map(|limit| {
            format!(
                " With the chance wished for, the time allows {}.",
                show(limit.length)
            )
        });
        return format!(
            "{}, as given.{}",
            show(sizing.length),
            time.unwrap_or_default()
        );
    }
    if sizing.kept.is_some() {
        return format!(
            "{}, the line as given: {}.",
            show(sizing.length),
            most(sizing.binding).map_or_else(String::new, |limit| format!(
                "{} {}",
                allows(sizing.binding),
                show(limit.length)
            ))
        );
    }
    let because = most(sizing.binding).map_or_else(String::new, |limit| {
        format!(
            ", because {} {}",
            allows(sizing.binding),
            show(limit.length)
        )
    });
    let next = sizing
        .limits
        .iter()
        .filter(|limit| limit.bound == Bound::Most && limit.limit != sizing.binding)
        .min_by(|a, b| a.length.value.total_cmp(&b.length.value))
        .map_or_else(String::new, |limit| {
            format!(
                "; without that, {} {}",
                allows(limit.limit),
                show(limit.length)
            )
        });
    format!("{}{because}{next}.", show(sizing.length))
}
