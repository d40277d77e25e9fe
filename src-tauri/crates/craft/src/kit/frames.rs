//! How many frames the tools make that are held: the scarcest part decides.

use super::Held;
use super::named::HeldByName;
use crate::conditions::Conditions;
use crate::course::FrameKind;
use crate::quantity::whole_number;
use crate::tables::{Applies, Each, KitRule, Per};

/// Frames as the parts that have been counted make them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FramesFree {
    /// That could stand, were nothing booked: the least, over the parts, of usable ones
    /// divided by how many one frame takes.
    pub usable: u32,
    /// That other courses have on the day on which they have most: the greatest, over the
    /// parts, of booked ones divided by how many one frame takes, rounded up.
    pub taken: u32,
}

impl FramesFree {
    /// What is left for this course.
    pub fn free(self) -> u32 {
        self.usable.saturating_sub(self.taken)
    }
}

/// How many frames of a kind there are; `None` if no part of them has been counted.
///
/// A store may hold bar and timber frames: only parts of the kind asked for count.
pub fn frames_free(rules: &[KitRule], held: &[Held], kind: FrameKind) -> Option<FramesFree> {
    let conditions = Conditions::just(&[match kind {
        FrameKind::Bar => Applies::Bars,
        FrameKind::Timber => Applies::Timber,
    }]);
    let held = HeldByName::new(held);
    let parts = rules
        .iter()
        .filter(|rule| rule.limits_frames && !rule.off && conditions.met(rule.applies))
        .filter_map(|rule| of_part(to_a_frame(rule)?, held.get(&rule.item)?));
    parts.reduce(|one, other| FramesFree {
        usable: one.usable.min(other.usable),
        taken: one.taken.max(other.taken),
    })
}

/// How many of a part one frame takes, if that is a part of frames at all.
fn to_a_frame(rule: &KitRule) -> Option<f64> {
    match (rule.per, rule.each) {
        (Per::Frame, Each::Same(each)) if 0.0 < each => Some(each),
        _ => None,
    }
}

fn of_part(each: f64, held: &Held) -> Option<FramesFree> {
    let frames = |parts: u32, rounded: fn(f64) -> f64| {
        u32::try_from(whole_number(rounded(f64::from(parts) / each))).ok()
    };
    Some(FramesFree {
        usable: frames(held.usable(), |exact| (exact + 1e-9).floor())?,
        taken: frames(held.most_taken(), |exact| (exact - 1e-9).ceil())?,
    })
}
