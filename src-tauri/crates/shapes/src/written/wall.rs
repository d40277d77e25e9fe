//! The wall in written figures, and why it is as long as it is.

use craft::course::Course;
use craft::pace::{Binding, Bound};
use craft::plan::Plan;
use craft::quantity::{show_area, show_length, show_volume};
use craft::wall::{Batter, Side};
use serde::Serialize;
use ts_rs::TS;

/// The wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenWall")]
#[allow(missing_docs)]
pub struct Wall {
    pub length: String,
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
    /// Empty without a cope.
    pub cope_height: String,
    pub cope_volume: String,
    /// `pace`, `frames` and so on.
    pub binding: String,
    /// A sentence: the length, because of what, and what would change it.
    pub reason: String,
    pub limits: Vec<Limit>,
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
            length: show(plan.sizing.length),
            height: show(section.height()),
            top_width: show(section.top_width()),
            base_width: show(section.base_width()),
            batter: batter(section.batter(Side::Left), section.batter(Side::Right)),
            section_area: show_area(section.area(), units),
            face_area: show_area(plan.volumes.face, units),
            body_volume: show_volume(plan.volumes.body, units),
            footing_volume: footing
                .map(|_| show_volume(plan.volumes.footing, units))
                .unwrap_or_default(),
            footing_depth: footing.map(|it| show(it.depth)).unwrap_or_default(),
            footing_width: footing
                .map(|it| show(section.base_width() + it.outset * 2.0))
                .unwrap_or_default(),
            cope_height: if_cope(show(course.wall.cope_height)),
            cope_volume: if_cope(show_volume(plan.volumes.cope, units)),
            binding: plan.sizing.binding.word().to_owned(),
            reason: reason(plan, course),
            limits: limits(plan, course),
        }
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
