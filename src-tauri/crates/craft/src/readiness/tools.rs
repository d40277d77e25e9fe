//! Tools: what is short and how to come by it, what wants care, what is prepared beforehand.

use super::{Dates, Part, Planned, ToDo, hyphened};
use crate::course::Course;
use crate::kit::{Held, KitLine, Taken};
use crate::tables::{ReadyTable, Way};
use chrono::NaiveDate;

/// The beginnings of ids of a tool that is short, of one that wants care, and of something
/// done to tools beforehand.
pub(super) const SHORT: &str = "kit:";
pub(super) const CARE: &str = "care:";
pub(super) const PREPARE: &str = "prepare:";

/// Calendar days before the course by which tools are prepared: the evening before.
const EVENING_BEFORE: u32 = 1;

pub(super) fn tools(course: &Course, planned: Planned<'_>, dates: &Dates) -> Vec<ToDo> {
    let lines = || planned.kit.iter();
    let short = lines().filter_map(|line| short(line, planned.ready, dates));
    let care = lines().filter_map(|line| in_need_of_care(line, dates));
    short
        .chain(care)
        .chain(prepared(course, planned.kit, dates))
        .collect()
}

/// `kit:walling-hammer`.
pub(super) fn id(beginning: &str, name: &str) -> String {
    format!("{beginning}{}", hyphened(name))
}

fn short(line: &KitLine, ready: &ReadyTable, dates: &Dates) -> Option<ToDo> {
    let short = line.short.filter(|short| 0 < *short)?;
    let (way, days) = match line.way {
        Way::Borrow => ("borrow", ready.times.borrow_days),
        Way::Hire => ("hire", ready.times.hire_days),
        Way::Buy => ("buy", ready.times.buy_days),
    };
    let them = if short == 1 { "one" } else { "them" };
    let held = line.held.as_ref();
    let must = if line.safety_critical {
        " Work must not begin without it."
    } else {
        ""
    };
    let text = format!(
        "{}: {short} short (need {}, have {}{}), {way} {them}.{}{must}",
        line.item,
        line.need,
        line.need.saturating_sub(short),
        held.map(broken).unwrap_or_default(),
        held.map(|held| clash(&held.taken)).unwrap_or_default(),
    );
    Some(ToDo::found(id(SHORT, &line.item), Part::Kit, text).by(dates.before(days)))
}

fn broken(held: &Held) -> String {
    match held.broken {
        0 => String::new(),
        count => format!(", {count} more broken"),
    }
}

/// Which other course has booked how many, and for when.
fn clash(taken: &[Taken]) -> String {
    let mut courses: Vec<&str> = Vec::new();
    for it in taken.iter().filter(|it| 0 < it.count) {
        if !courses.contains(&it.course.as_str()) {
            courses.push(&it.course);
        }
    }
    let of_one = |course: &&str| {
        let booked = || {
            taken
                .iter()
                .filter(|it| it.course == **course && 0 < it.count)
        };
        let most = booked().map(|it| it.count).max().unwrap_or_default();
        let mut dates: Vec<NaiveDate> = booked().map(|it| it.date).collect();
        dates.sort_unstable();
        dates.dedup();
        format!(" \"{course}\" has booked {most} for {}.", listed(&dates))
    };
    courses.iter().map(of_one).collect()
}

/// `24 April 2027 and 25 April 2027`.
fn listed(dates: &[NaiveDate]) -> String {
    let written = |date: &NaiveDate| date.format("%-d %B %Y").to_string();
    match dates {
        [] => String::new(),
        [one] => written(one),
        [before @ .., last] => {
            let before: Vec<String> = before.iter().map(written).collect();
            format!("{} and {}", before.join(", "), written(last))
        }
    }
}

/// Tools that are usable but marked as in need of care, where the good ones are too few.
fn in_need_of_care(line: &KitLine, dates: &Dates) -> Option<ToDo> {
    let held = line.held.as_ref().filter(|held| 0 < held.care)?;
    let lacking = line.need.saturating_sub(held.good as usize);
    let count = lacking.min(held.care as usize);
    if count == 0 {
        return None;
    }
    let text = format!(
        "{}: {} care before the course, for {} good of the {} needed.",
        line.item,
        if count == 1 {
            "1 wants".to_owned()
        } else {
            format!("{count} want")
        },
        match held.good {
            0 => "none is".to_owned(),
            1 => "only 1 is".to_owned(),
            good => format!("only {good} are"),
        },
        line.need
    );
    let by = dates.before(EVENING_BEFORE);
    Some(ToDo::found(id(CARE, &line.item), Part::Kit, text).by(by))
}

/// What is done to tools beforehand. Charging and sharpening take time, so they stand by
/// themselves; the rest is looked over while packing, as the load list says line by line.
fn prepared(course: &Course, kit: &[KitLine], dates: &Dates) -> Vec<ToDo> {
    let kinds = PREPARATIONS.into_iter().map(|(word, text)| {
        let lines = kit.iter().filter(|line| 0 < line.need);
        let of_kind = lines.filter(|line| preparation(&line.prepare) == Some(word));
        let names: Vec<String> = of_kind.map(|line| line.item.to_lowercase()).collect();
        (word, text, names)
    });
    kinds
        .filter(|(_, _, names)| !names.is_empty())
        .map(|(word, text, names)| {
            let text = if word == LOOK_OVER {
                format!("{text}: {} kinds.", names.len())
            } else {
                format!("{text}: {}.", names.join(", "))
            };
            ToDo::reminder(id(PREPARE, word), Part::Kit, text, course)
                .by(dates.before(EVENING_BEFORE))
        })
        .collect()
}

/// The word and the text of each kind of preparation.
pub(super) const PREPARATIONS: [(&str, &str); 3] = [
    ("charge", "Charge, and see that it holds"),
    ("sharpen", "Sharpen"),
    (
        LOOK_OVER,
        "Look over the other tools while packing, as the load list says under each",
    ),
];

const LOOK_OVER: &str = "look-over";

/// The kind of what a rule says is to be done; nothing for a tool that needs nothing.
fn preparation(prepare: &str) -> Option<&'static str> {
    let prepare = prepare.trim().to_lowercase();
    let kinds = PREPARATIONS.map(|(word, _)| word);
    let named = kinds.into_iter().find(|word| prepare.starts_with(word));
    (!prepare.is_empty()).then(|| named.unwrap_or(LOOK_OVER))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clash_names_the_course_and_its_days() {
        let day = |day| NaiveDate::from_ymd_opt(2027, 4, day).expect("a date");
        let taken = |course: &str, date, count| Taken {
            course: course.to_owned(),
            date,
            count,
        };
        let both = [
            taken("Spring weekend", day(25), 2),
            taken("Spring weekend", day(24), 3),
            taken("Field day", day(24), 1),
            taken("Nothing booked", day(24), 0),
        ];
        assert_eq!(
            clash(&both),
            " \"Spring weekend\" has booked 3 for 24 April 2027 and 25 April 2027. \"Field day\" has booked 1 for 24 April 2027."
        );
        assert_eq!(clash(&[]), "");
    }
}
