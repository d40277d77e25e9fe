//! What the plan itself shows to be missing: stone, frames, bars, lumber, chance, room, money.

use super::tools::id;
use super::{Dates, Part, Planned, ToDo};
use crate::course::Course;
use crate::deliveries::{Delivery, Ordered};
use crate::frames::{Frames, LEAST_IN_USE};
use crate::loads::Loads;
use crate::money::{BreakEven, Money};
use crate::pace::timetable::{Entry, EntryKind};
use crate::people;
use crate::quantity::{show_count, show_length, show_mark, show_mass, show_share, show_volume};
use crate::tables::ReadyTable;
use crate::timber::TimberPlan;

/// The ids of what a plan itself can show to be missing; no task of the table may have one.
pub const WORKED_OUT: [&str; 10] = [
    "stone",
    "drainage",
    "frames",
    "bars",
    "lumber",
    "chance",
    "no-time",
    "apart",
    "too-heavy",
    "money",
];

/// The word before a lesson that can't be given when it is wished: `wish:copes`.
pub(super) const WISH: &str = "wish:";

/// Stone first, because it takes longest.
pub(super) fn worked_out(course: &Course, planned: Planned<'_>, dates: &Dates) -> Vec<ToDo> {
    let ready = planned.ready;
    let found = [
        stone_to_order(course, planned),
        drainage_to_order(course, planned),
        frames_to_find(course, planned.frames, ready, dates),
        bars_to_find(course, planned.frames, ready, dates),
        lumber_to_find(course, planned.timber, ready, dates),
        too_heavy(course, planned.loads, ready, dates),
        chance_too_small(course, planned),
        no_time_to_build(course, planned.timetable),
        not_kept_apart(planned.pairs),
        money_short(course, planned.money),
    ];
    let wishes = wishes_unmet(course, planned);
    found.into_iter().flatten().chain(wishes).collect()
}

fn stone_to_order(course: &Course, planned: Planned<'_>) -> Option<ToDo> {
    let delivery = of(planned.deliveries, Ordered::WallStone)?;
    let show = |mass| show_mass(mass, course.units);
    let range = planned.stone.to_deliver;
    let loads = delivery.loads.map_or_else(String::new, |loads| {
        format!(", {}", show_count(loads.count, "load", "loads"))
    });
    let text = format!(
        "Order stone: likely {}, high {}{loads}.",
        show(range.mid),
        show(range.high)
    );
    Some(ToDo::found("stone", Part::Stone, text).by(Some(delivery.order_by)))
}

/// Clean stone behind a wall that holds back a bank comes apart from the wall's own.
fn drainage_to_order(course: &Course, planned: Planned<'_>) -> Option<ToDo> {
    let delivery = of(planned.deliveries, Ordered::DrainageStone)?;
    let it = planned.retaining?;
    let text = format!(
        "Order drainage stone for behind the wall: {}, {}, clean and all of one size.",
        show_volume(it.backfill, course.units),
        show_mass(it.backfill_mass, course.units)
    );
    Some(ToDo::found("drainage", Part::Stone, text).by(Some(delivery.order_by)))
}

fn of(deliveries: &[Delivery], what: Ordered) -> Option<&Delivery> {
    deliveries.iter().find(|it| it.what == what)
}

fn frames_to_find(
    course: &Course,
    frames: &Frames,
    ready: &ReadyTable,
    dates: &Dates,
) -> Option<ToDo> {
    let short = frames.short.filter(|short| 0 < *short)?;
    let have = frames.rows.len().saturating_sub(short);
    let enough_to_leapfrog = course.frames.leapfrog && LEAST_IN_USE <= have;
    if enough_to_leapfrog {
        return None;
    }
    let way_out = if LEAST_IN_USE <= have {
        " Or build in bays and move the frames along (leapfrog = true)."
    } else {
        " Moving frames along takes at least 3."
    };
    let text = format!(
        "Borrow {}: the wall takes {}, there are {have}.{way_out}",
        show_count(short, "frame", "frames"),
        frames.rows.len()
    );
    let by = dates.before(ready.times.borrow_days);
    Some(ToDo::found("frames", Part::Frames, text).by(by))
}

fn bars_to_find(
    course: &Course,
    frames: &Frames,
    ready: &ReadyTable,
    dates: &Dates,
) -> Option<ToDo> {
    let bars = frames.bars.as_ref().filter(|bars| bars.chosen.is_none())?;
    let text = format!(
        "No bar in stock is long enough: {} bars of at least {} are needed.",
        bars.count,
        show_length(bars.needed, course.units)
    );
    let by = dates.before(ready.times.buy_days);
    Some(ToDo::found("bars", Part::Frames, text).by(by))
}

/// Lumber that no stock length allows; lumber to buy is on the cut list.
fn lumber_to_find(
    course: &Course,
    timber: Option<&TimberPlan>,
    ready: &ReadyTable,
    dates: &Dates,
) -> Option<ToDo> {
    let it = timber.filter(|it| !it.cutting.too_long.is_empty())?;
    let rows = it.cutting.too_long.iter();
    let longest = rows
        .filter_map(|row| it.list.get(*row))
        .map(|row| row.length)
        .max_by(|a, b| a.value.total_cmp(&b.value))?;
    let text = format!(
        "No lumber is long enough for the timber frames: a piece of {} is needed.",
        show_mark(longest, course.units)
    );
    let by = dates.before(ready.times.buy_days);
    Some(ToDo::found("lumber", Part::Frames, text).by(by))
}

/// Tools that no vehicle and no trailer may carry.
fn too_heavy(
    course: &Course,
    loads: Option<&Loads>,
    ready: &ReadyTable,
    dates: &Dates,
) -> Option<ToDo> {
    let lines = &loads?.fits_nowhere;
    if lines.is_empty() {
        return None;
    }
    let named = lines.iter().map(|line| {
        let each = show_mass(line.each, course.units);
        format!("{} ({each} each)", line.name)
    });
    let text = format!(
        "Heavier than any vehicle or trailer of this course may carry: {}. Hire one that may, or have them brought.",
        named.collect::<Vec<_>>().join(", ")
    );
    let by = dates.before(ready.times.hire_days);
    Some(ToDo::found("too-heavy", Part::Kit, text).by(by))
}

/// Before the course by the plan; once something has been built, from where the wall stands.
fn chance_too_small(course: &Course, planned: Planned<'_>) -> Option<ToDo> {
    let forecast = planned.from_here.unwrap_or(planned.forecast);
    if course.chance <= forecast.chance {
        return None;
    }
    let (chance, wished) = (show_share(forecast.chance), show_share(course.chance));
    let text = match planned.from_here {
        None => format!(
            "The chance of finishing is {chance}, below the {wished} wished for. A shorter or lower wall, the footing dug beforehand or more hours would raise it."
        ),
        Some(_) => format!(
            "From here the chance of finishing is {chance}, below the {wished} wished for. What would raise it stands in the plan, under \"On the day\"."
        ),
    };
    Some(ToDo::found("chance", Part::Wall, text))
}

/// Days on which nobody lays a stone.
fn no_time_to_build(course: &Course, timetable: &[Entry]) -> Option<ToDo> {
    let builds = |day: usize| {
        let mut entries = timetable.iter();
        entries.any(|entry| entry.day == day && entry.kind == EntryKind::Build)
    };
    let idle: Vec<String> = (0..course.days.len())
        .filter(|day| !builds(*day))
        .map(|day| (day + 1).to_string())
        .collect();
    if idle.is_empty() {
        return None;
    }
    let days = if idle.len() == 1 {
        format!("Day {} has", idle.join(""))
    } else {
        format!("Days {} have", idle.join(", "))
    };
    let text = format!(
        "{days} no time to build: lessons, breaks and tidying take all of it. Longer hours or fewer lessons would give some."
    );
    Some(ToDo::found("no-time", Part::Days, text))
}

/// Lessons that can't be given when they are wished; why not is told beside the days.
fn wishes_unmet(course: &Course, planned: Planned<'_>) -> Vec<ToDo> {
    let unmet = planned.wishes.iter();
    let wishes = unmet.filter_map(|unmet| course.running.wishes.get(unmet.wish));
    wishes
        .map(|wish| {
            let lesson = planned.lessons.iter().find(|it| it.id == wish.lesson);
            let title = lesson.map_or(wish.lesson.as_str(), |it| it.title.as_str());
            let text = format!(
                "The lesson \"{title}\" can't be given on day {} when it is wished: wish for another time, or take the wish back.",
                wish.day + 1
            );
            ToDo::found(id(WISH, &wish.lesson), Part::Days, text)
        })
        .collect()
}

/// Two who are not to be put together, and are. Who would only have liked to build with someone
/// is told beside the people: that is no fault of a plan.
fn not_kept_apart(pairs: &[people::Unmet]) -> Option<ToDo> {
    let together: Vec<String> = pairs
        .iter()
        .filter_map(|unmet| match unmet {
            people::Unmet::Together(one, other) => Some(format!("{one} and {other}")),
            people::Unmet::Wish(..) => None,
        })
        .collect();
    if together.is_empty() {
        return None;
    }
    let text = format!(
        "To be kept apart, yet a pair, because there was no other way: {}. Change the group or what stands under apart.",
        together.join("; ")
    );
    Some(ToDo::found("apart", Part::Days, text))
}

/// Fees that do not cover the costs. Who means to bear the loss marks it done.
fn money_short(course: &Course, money: Option<&Money>) -> Option<ToDo> {
    let money = money?;
    let loss = money.left.filter(|left| *left < -0.005)?;
    let way_out = match &money.break_even {
        Some(BreakEven::From { least, .. }) => {
            format!(
                "It breaks even with {}.",
                show_count(*least, "student", "students")
            )
        }
        _ => "It breaks even with no number of students: raise the fee or spend less.".to_owned(),
    };
    let text = format!(
        "The fees of {} leave {} of the costs uncovered. {way_out}",
        show_count(course.group.students.len(), "student", "students"),
        money.show(-loss)
    );
    Some(ToDo::found("money", Part::Money, text))
}
