//! What is not ready: short tools and frames, stone to order, a chance below the wish.

use crate::course::{Course, Day};
use crate::frames::Frames;
use crate::kit::KitLine;
use crate::pace::Forecast;
use crate::quantity::{
    kilograms, show_count, show_length, show_mark, show_mass, show_share, show_volume,
};
use crate::retaining::Retaining;
use crate::stone::Stone;
use crate::tables::StoneTable;
use crate::timber::TimberPlan;
use chrono::{Datelike, Days, NaiveDate, Weekday};

/// One thing still to do.
#[derive(Debug, Clone, PartialEq)]
pub struct ToDo {
    /// A fixed word for programs.
    pub id: &'static str,
    /// What, with the numbers.
    pub text: String,
    /// By when, where that matters.
    pub by: Option<NaiveDate>,
}

/// What of a plan there is something to do about.
#[derive(Debug, Clone, Copy)]
pub struct Planned<'a> {
    /// The stone of the wall.
    pub stone: &'a Stone,
    /// The bank behind it.
    pub retaining: Option<&'a Retaining>,
    /// The frames.
    pub frames: &'a Frames,
    /// The timber ones among them.
    pub timber: Option<&'a TimberPlan>,
    /// The tools.
    pub kit: &'a [KitLine],
    /// The chance of finishing.
    pub forecast: &'a Forecast,
}

/// Everything still to do, stone first because it takes longest.
pub fn to_do(course: &Course, planned: Planned<'_>, table: &StoneTable) -> Vec<ToDo> {
    let Planned {
        frames, forecast, ..
    } = planned;
    let mut list = Vec::new();
    list.extend(stone_to_order(course, planned.stone, table));
    list.extend(drainage_to_order(course, planned.retaining, table));
    list.extend(frames_to_find(course, frames));
    list.extend(bars_to_find(course, frames));
    list.extend(lumber_to_find(course, planned.timber));
    list.extend(planned.kit.iter().filter_map(tool_to_find));
    if forecast.chance < course.chance {
        list.push(ToDo {
            id: "chance",
            text: format!(
                "The chance of finishing is {}, below the {} wished for. A shorter or lower wall, the footing dug beforehand or more hours would raise it.",
                show_share(forecast.chance),
                show_share(course.chance)
            ),
            by: None,
        });
    }
    list
}

fn stone_to_order(course: &Course, stone: &Stone, table: &StoneTable) -> Option<ToDo> {
    let range = stone.to_deliver;
    if range.high <= kilograms(0.0) {
        return None;
    }
    let show = |mass| show_mass(mass, course.units);
    let loads = stone.loads.map_or_else(String::new, |loads| {
        format!(", {}", show_count(loads, "load", "loads"))
    });
    let lead = course.stone.lead_days.unwrap_or(table.lead_days);
    Some(ToDo {
        id: "stone",
        text: format!(
            "Order stone: likely {}, high {}{loads}.",
            show(range.mid),
            show(range.high)
        ),
        by: course.days.first().map(|day| order_by(day, lead)),
    })
}

/// So many working days (Monday to Friday) before the first course day.
fn order_by(first: &Day, working_days: u32) -> NaiveDate {
    let mut date = first.date;
    let mut left = working_days;
    while 0 < left {
        let Some(before) = date.checked_sub_days(Days::new(1)) else {
            return date;
        };
        date = before;
        if !matches!(date.weekday(), Weekday::Sat | Weekday::Sun) {
            left -= 1;
        }
    }
    date
}

/// Clean stone behind a wall that holds back a bank comes apart from the wall's own.
fn drainage_to_order(
    course: &Course,
    retaining: Option<&Retaining>,
    table: &StoneTable,
) -> Option<ToDo> {
    let it = retaining.filter(|it| kilograms(0.0) < it.backfill_mass)?;
    let lead = course.stone.lead_days.unwrap_or(table.lead_days);
    Some(ToDo {
        id: "drainage",
        text: format!(
            "Order drainage stone for behind the wall: {}, {}, clean and all of one size.",
            show_volume(it.backfill, course.units),
            show_mass(it.backfill_mass, course.units)
        ),
        by: course.days.first().map(|day| order_by(day, lead)),
    })
}

fn frames_to_find(course: &Course, frames: &Frames) -> Option<ToDo> {
    let short = frames.short.filter(|short| 0 < *short)?;
    let have = frames.rows.len() - short;
    let enough_to_leapfrog = course.frames.leapfrog && crate::frames::LEAST_IN_USE <= have;
    if enough_to_leapfrog {
        return None;
    }
    let way_out = if crate::frames::LEAST_IN_USE <= have {
        " Or build in bays and move the frames along (leapfrog = true)."
    } else {
        " Moving frames along takes at least 3."
    };
    Some(ToDo {
        id: "frames",
        text: format!(
            "Borrow {}: the wall takes {}, there are {have}.{way_out}",
            show_count(short, "frame", "frames"),
            frames.rows.len()
        ),
        by: None,
    })
}

fn bars_to_find(course: &Course, frames: &Frames) -> Option<ToDo> {
    let bars = frames.bars.as_ref().filter(|bars| bars.chosen.is_none())?;
    Some(ToDo {
        id: "bars",
        text: format!(
            "No bar in stock is long enough: {} bars of at least {} are needed.",
            bars.count,
            show_length(bars.needed, course.units)
        ),
        by: None,
    })
}

/// Lumber that no stock length allows; lumber to buy is on the cut list.
fn lumber_to_find(course: &Course, timber: Option<&TimberPlan>) -> Option<ToDo> {
    let it = timber.filter(|it| !it.cutting.too_long.is_empty())?;
    let rows = it.cutting.too_long.iter();
    let longest = rows
        .filter_map(|row| it.list.get(*row))
        .map(|row| row.length)
        .max_by(|a, b| a.value.total_cmp(&b.value))?;
    Some(ToDo {
        id: "lumber",
        text: format!(
            "No lumber is long enough for the timber frames: a piece of {} is needed.",
            show_mark(longest, course.units)
        ),
        by: None,
    })
}

fn tool_to_find(line: &KitLine) -> Option<ToDo> {
    let short = line.short.filter(|short| 0 < *short)?;
    let must = if line.safety_critical {
        " Work must not begin without it."
    } else {
        ""
    };
    Some(ToDo {
        id: "kit",
        text: format!(
            "{}: {short} short (need {}, have {}).{must}",
            line.item,
            line.need,
            line.need - short
        ),
        by: None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveTime;

    #[test]
    fn working_days_leave_weekends_out() {
        let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).expect("a date");
        let first = Day {
            date: day(2027, 4, 24), // a Saturday
            start: NaiveTime::MIN,
            finish: NaiveTime::MIN,
            breaks: Vec::new(),
        };
        assert_eq!(order_by(&first, 0), day(2027, 4, 24));
        assert_eq!(order_by(&first, 1), day(2027, 4, 23));
        assert_eq!(order_by(&first, 5), day(2027, 4, 19));
        assert_eq!(order_by(&first, 10), day(2027, 4, 12));
    }
}
