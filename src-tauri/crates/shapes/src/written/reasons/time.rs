//! Why the wall is so long, how likely it is to be finished, and the hours of each stage.

mod hours;

use super::line::{number, rounded};
use super::{Of, Reason};
use craft::pace::sizing::{rounded_down, step};
use craft::pace::{Binding, Bound, Limit};
use craft::people::facing_places;
use craft::quantity::{Length, Read, show_share, whole_number};

pub(super) fn reasons(of: &Of<'_>) -> Vec<Reason> {
    vec![length(of), chance(of), hours::hours(of)]
}

fn limit(of: &Of<'_>, which: Binding) -> Option<Limit> {
    let limits = of.plan.sizing.limits.iter().copied();
    limits.into_iter().find(|it| it.limit == which)
}

/// What a limit says, and whether it is the one that set the length.
fn said(of: &Of<'_>, limit: &Limit) -> String {
    let length = of.length(limit.length);
    let wished = show_share(of.course.chance);
    let words = match limit.limit {
        Binding::ElbowRoom => {
            format!("Elbow room asks for at least {length}, a place for every pair")
        }
        Binding::Pace => format!(
            "The time allows at most {length}: the longest wall that is finished in {wished} of the simulated courses"
        ),
        Binding::Stone => {
            format!("The stone that can be had allows at most {length}, ordered at its high figure")
        }
        Binding::Frames => {
            format!("The frames in stock allow at most {length} when all of them stand at once")
        }
        Binding::Site => format!("The site has room for at most {length}"),
        Binding::Given => format!("The length is given as {length}"),
    };
    let sets = if limit.limit == of.plan.sizing.binding && limit.bound == Bound::Most {
        ". This is the least of them, and sets the length."
    } else {
        "."
    };
    format!("{words}{sets}")
}

fn length(of: &Of<'_>) -> Reason {
    let sizing = &of.plan.sizing;
    let mut reason =
        Reason::new("length", "Length", of.length(sizing.length)).say(&of.written.wall.reason);
    for limit in &sizing.limits {
        reason = reason.say(said(of, limit));
    }
    if let Some(short) = sizing.falls_short_of() {
        reason = reason.say(format!(
            "The group would need {}: with less, some wait for a place. What would cure it is said under Ready?.",
            of.length(short.length)
        ));
    }
    reason = steps(of, reason);
    let chance = format!(
        "Chance of finishing that the length must keep: {}",
        show_share(of.course.chance)
    );
    let places = &of.tables.pace.places;
    reason
        .with_asked(&chance, "Wall")
        .source(
            format!("Wall for a facing pair: {}", of.length(places.facing_pair)),
            &places.source,
        )
        .source(
            "How the time is reckoned: see the hours of the stages, and the chance",
            "the pace table of lessons, sharpened by your own pace book",
        )
}

fn steps(of: &Of<'_>, mut reason: Reason) -> Reason {
    let places = facing_places(of.course.group.students.len());
    let pair = of.tables.pace.places.facing_pair;
    if let Some(room) = limit(of, Binding::ElbowRoom) {
        reason = reason.step(
            "Elbow room: facing pairs, times the wall each needs",
            format!(
                "{places} × {} = {}",
                of.length(pair),
                of.length(room.length)
            ),
        );
    }
    let frames = &of.course.frames;
    if let (Some(it), Some(have)) = (limit(of, Binding::Frames), frames.in_stock)
        && of.course.wall.line.is_empty()
        && (it.length - frames.spacing * (f64::from(have) - 1.0))
            .si()
            .abs()
            < 1e-9
    {
        reason = reason.step(
            "Frames in stock: the bays between them, times their spacing",
            format!(
                "({have} - 1) × {} = {}",
                of.length(frames.spacing),
                of.length(it.length)
            ),
        );
    }
    match limit(of, of.plan.sizing.binding) {
        Some(binding) if of.plan.sizing.kept.is_none() => down(of, reason, binding.length),
        _ => reason,
    }
}

/// From what the limit allows down to a whole number of steps.
fn down(of: &Of<'_>, reason: Reason, allowed: Length) -> Reason {
    let (units, length) = (of.units(), of.plan.sizing.length);
    let step = step(units);
    let count = |length: Length| whole_number((length.si() / step.si()).round());
    let (first, last) = (count(rounded_down(allowed, units)), count(length));
    let exact = allowed.si() / step.si();
    if exact < 1.0 {
        return reason.say(format!(
            "It is never less than one step of {}.",
            of.length(step)
        ));
    }
    let sum = format!("{} / {}", of.length(allowed), of.length(step));
    let mut reason = reason.step(
        format!("Whole steps of {} in that", of.length(step)),
        rounded(&sum, exact, "rounded down", first),
    );
    if last < first {
        reason = reason.step(
            "Fewer, because at that length too few courses finish",
            format!("{first} - {} = {last}", first - last),
        );
    }
    reason.step(
        "The length",
        format!("{last} × {} = {}", of.length(step), of.length(length)),
    )
}

fn chance(of: &Of<'_>) -> Reason {
    let (forecast, written) = (&of.plan.forecast, &of.written.chance);
    let finished = (forecast.chance * forecast.samples as f64).round();
    let now = of.plan.today.as_ref().map(|today| &today.forecast);
    let shown = now.map_or(written.chance.clone(), |now| show_share(now.chance));
    let mut reason = Reason::new("chance", "Chance of finishing", shown);
    if let Some(now) = now {
        let done = (now.chance * now.samples as f64).round();
        reason = reason
            .say(format!(
                "{}, from what has been told of the days so far: so many of the courses simulated from here on are finished in time.",
                show_share(now.chance)
            ))
            .step("From here on", share_line(done, now.samples));
    } else {
        reason = reason.say(format!(
            "{}, because so many of the simulated courses are finished in time.",
            written.chance
        ));
    }
    reason = reason
        .say("Each is this course, followed bay by bay through its days with the breaks, the lessons and the weather where they fall. How fast the group is, how fast at each stage, and how much pairs differ is drawn anew each time, as far as it is not known.")
        .say("A string ties each bay to its slowest pair, and throughs wait until every bay is level.");
    let most = forecast
        .holdups
        .first()
        .map(|it| crate::words::cause(it.cause, of.tables));
    if let Some(cause) = most {
        reason = reason.say(format!("What held most of them up: {cause}."));
    }
    let spread = &of.tables.pace.spread;
    reason
        .step(
            if now.is_some() { "Before the course" } else { "Finished, of all that were simulated" },
            share_line(finished, forecast.samples),
        )
        .source(
            format!(
                "How much pace differs (standard deviations of its logarithm): between courses {}, stages {}, pairs {}",
                spread.course, spread.stage, spread.pair
            ),
            &spread.source,
        )
        .source("How fast people work: see the hours of the stages", "the pace table of lessons, sharpened by your own pace book")
}

fn share_line(finished: f64, of: usize) -> String {
    let samples = of as f64;
    format!(
        "{} / {} = {}",
        number(finished),
        number(samples),
        super::line::percent(finished / samples)
    )
}
