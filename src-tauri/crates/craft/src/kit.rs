//! The tools a course needs: counted by rule from people, pairs, stints, frames and wall.

use crate::course::{FrameKind, Group};
use crate::frames::Frames;
use crate::people::pair_count;
use crate::quantity::{Length, Mass, Read, whole_number};
use crate::tables::{KitRule, Per};

/// One line of the tool list.
#[derive(Debug, Clone, PartialEq)]
pub struct KitLine {
    /// The tool.
    pub item: String,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// How many the course needs, spares included.
    pub need: usize,
    /// How many are there; `None` if nobody has counted.
    pub have: Option<usize>,
    /// How many are missing; `None` if nobody has counted.
    pub short: Option<usize>,
    /// How the need comes about.
    pub why: String,
    /// Mass of all that are needed.
    pub mass: Mass,
    /// Where it is used.
    pub place: String,
    /// Without it the work must not begin.
    pub safety_critical: bool,
    /// Used up by the course.
    pub consumable: bool,
}

/// What the rules count.
#[derive(Debug, Clone, Copy)]
pub struct Counted<'a> {
    /// The group.
    pub group: &'a Group,
    /// The setting-out.
    pub frames: &'a Frames,
    /// Frames that stand at once.
    pub frames_standing: usize,
    /// The wall.
    pub length: Length,
}

/// The tool list: `ceil(each · count · (1 + spare))`, at least the rule's least.
pub fn kit(rules: &[KitRule], counted: &Counted<'_>, on_hand: &[(String, u32)]) -> Vec<KitLine> {
    let kind = match counted.frames.bars {
        Some(_) => FrameKind::Bar,
        None => FrameKind::Timber,
    };
    rules
        .iter()
        .filter(|rule| rule.only_for.is_none_or(|only| only == kind))
        .map(|rule| {
            let (count, of) = counted.by(rule.per);
            let exact = rule.each * count * (1.0 + rule.spare);
            let need = whole_number((exact - 1e-9).ceil().max(0.0)).max(rule.least as usize);
            let have = on_hand
                .iter()
                .find(|(item, _)| item.eq_ignore_ascii_case(&rule.item))
                .map(|(_, have)| *have as usize);
            KitLine {
                item: rule.item.clone(),
                unit: rule.unit.clone(),
                need,
                have,
                short: have.map(|have| need.saturating_sub(have)),
                why: why(rule, count, of),
                mass: mass_of_one(rule, counted) * need as f64,
                place: rule.place.clone(),
                safety_critical: rule.safety_critical,
                consumable: rule.consumable,
            }
        })
        .collect()
}

impl Counted<'_> {
    fn by(&self, per: Per) -> (f64, &'static str) {
        let students = self.group.students.len();
        let staff = (self.group.instructors + self.group.assistants) as usize;
        match per {
            Per::Student => (students as f64, "student"),
            Per::Pair => (pair_count(students) as f64, "pair"),
            // Every pair builds one stint; an own word because a rule may mean the stretch.
            Per::Stint => (pair_count(students) as f64, "stint"),
            Per::Frame => (self.frames_standing as f64, "frame"),
            Per::Instructor => (staff as f64, "instructor"),
            Per::Person => ((students + staff) as f64, "person"),
            Per::Group => (1.0, "group"),
            Per::Metre => (self.length.si(), "metre of wall"),
        }
    }
}

/// Bars weigh what the bar table says; everything else what its rule says.
fn mass_of_one(rule: &KitRule, counted: &Counted<'_>) -> Mass {
    let bars = counted.frames.bars.as_ref();
    match bars.and_then(|bars| Some((bars.mass?, bars.count))) {
        Some((mass, count)) if rule.item == BAR_ITEM && 0 < count => mass / count as f64,
        _ => rule.mass,
    }
}

/// The item of the kit table that stands for the bars of the frames.
pub const BAR_ITEM: &str = "Steel bar";

fn why(rule: &KitRule, count: f64, of: &str) -> String {
    let spare = if 0.0 < rule.spare {
        format!(", {:.0} % spare", rule.spare * 100.0)
    } else {
        String::new()
    };
    if rule.per == Per::Group {
        return format!("{} for the group{spare}: {}", plain(rule.each), rule.why);
    }
    let count = if rule.per == Per::Metre {
        format!("{count:.2}")
    } else {
        plain(count)
    };
    format!(
        "{} per {of}, {count} of them{spare}: {}",
        plain(rule.each),
        rule.why
    )
}

/// `2`, `0.5`: a number without needless decimals.
fn plain(number: f64) -> String {
    format!("{}", (number * 100.0).round() / 100.0)
}

/// The mass of the whole list.
pub fn total_mass(lines: &[KitLine]) -> Mass {
    lines
        .iter()
        .fold(crate::quantity::kilograms(0.0), |sum, line| sum + line.mass)
}

/// How many frames stand at once: all stations, or what is in stock when they leapfrog.
pub fn frames_standing(frames: &Frames, leapfrog: bool, in_stock: Option<u32>) -> usize {
    let stations = frames.rows.len();
    match in_stock {
        Some(have) if leapfrog => stations.min((have as usize).max(crate::frames::LEAST_IN_USE)),
        _ => stations,
    }
}
