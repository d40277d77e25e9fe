//! Why a hazard is met on this course, in a few words with its figures.

use super::circumstance::{Circumstance, Met, heavy_stones};
use crate::conditions::{Season, season};
use crate::course::{FrameKind, WallKind};
use crate::quantity::{Length, metres, show_count, show_length, show_mark, show_mass};
use crate::tables::Applies;

/// The reason; empty for what needs no saying.
pub(super) fn because(it: Circumstance, met: &Met) -> String {
    let course = met.course;
    match it {
        Circumstance::Course(applies) => of_the_course(applies, met),
        Circumstance::OverKnee | Circumstance::OverWaist => {
            let with = if 0 < met.stone.copes {
                " with its cope"
            } else {
                ""
            };
            let high = show_length(highest(met), course.units);
            format!("the wall is {high} high{with}")
        }
        Circumstance::HeavyStones => heaviest(met),
        Circumstance::ManyStudents => {
            format!("{:.0} students to an instructor", met.ratio)
        }
        Circumstance::Rain => {
            let rainy = |(at, day): (usize, &crate::course::Day)| {
                (!day.weather.rain.is_empty()).then(|| (at + 1).to_string())
            };
            let days: Vec<String> = course.days.iter().enumerate().filter_map(rainy).collect();
            format!("rain is forecast for day {}", days.join(", "))
        }
    }
}

fn of_the_course(applies: Applies, met: &Met) -> String {
    let units = met.course.units;
    match applies {
        Applies::Always => String::new(),
        Applies::Bars => {
            let bars = met.frames.bars.as_ref().map_or(0, |bars| bars.count);
            format!(
                "{} of steel stand at the frames",
                show_count(bars, "bar", "bars")
            )
        }
        Applies::Timber => frames(FrameKind::Timber, met.frames.rows.len()),
        Applies::Footing => met.course.wall.footing.map_or_else(String::new, |footing| {
            format!("the trench is {} deep", show_mark(footing.depth, units))
        }),
        Applies::Cope => show_count(met.stone.copes, "cope is set", "copes are set"),
        Applies::Throughs => {
            let count = met.stone.throughs.iter().map(|row| row.count).sum();
            show_count(count, "through is set", "throughs are set")
        }
        Applies::Heads => "an end is built".to_owned(),
        Applies::Retaining => match &met.course.wall.kind {
            WallKind::Retaining(bank) => {
                format!("a bank is held on the {}", bank.side.word())
            }
            WallKind::Freestanding => String::new(),
        },
        Applies::Curves => "the line bends".to_owned(),
        Applies::Slopes => "the ground is not level".to_owned(),
        Applies::OldWall => met
            .stone
            .old_wall
            .as_ref()
            .map_or_else(String::new, |_| "an old wall is taken down".to_owned()),
        Applies::Cold => in_months(met, Season::Cold, "cold"),
        Applies::Hot => in_months(met, Season::Hot, "hot"),
        Applies::Dark => "a day's hours reach past daylight".to_owned(),
    }
}

fn frames(kind: FrameKind, count: usize) -> String {
    match kind {
        FrameKind::Timber => show_count(count, "timber frame stands", "timber frames stand"),
        FrameKind::Bar => show_count(count, "frame of bars stands", "frames of bars stand"),
    }
}

/// By the months where they say so; else somebody has said so.
fn in_months(met: &Met, wanted: Season, word: &str) -> String {
    let mut days = met.course.days.iter();
    if days.any(|day| season(&met.course.venue, day) == wanted) {
        format!("it falls in the {word} months of the place")
    } else {
        format!("{word} weather was typed in")
    }
}

/// The stones beyond one person, each with its mass.
fn heaviest(met: &Met) -> String {
    let named: Vec<String> = heavy_stones(met.lifting)
        .map(|stone| {
            let name = match stone.name.as_str() {
                "footing" => "a footing stone",
                "throughs" => "a through",
                "cope" => "a cope",
                other => other,
            };
            format!(
                "{name} weighs about {}",
                show_mass(stone.mass, met.course.units)
            )
        })
        .collect();
    named.join(", ")
}

/// The greatest height along the wall, from the ground on its centre line to the top of its
/// cope.
pub(super) fn highest(met: &Met) -> Length {
    let heights = met.frames.rows.iter().map(|row| row.height);
    let body = heights.fold(
        met.wall.section.height(),
        |most, it| {
            if most < it { it } else { most }
        },
    );
    let cope = if 0 < met.stone.copes {
        met.course.wall.cope_height
    } else {
        metres(0.0)
    };
    body + cope
}
