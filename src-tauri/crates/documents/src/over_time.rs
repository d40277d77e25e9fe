//! What the pictures over time are made of: the curve of chance, and progress against forecast.

use craft::course::{Course, Day};
use craft::pace::calendar::minutes_to;
use craft::pace::fixed::What;
use craft::pace::forecast::Forecast;
use craft::plan::{Plan, Today};
use drawing::{Band, ChanceCurve, Progress, ProgressDay};

/// The chance of finishing against length; nothing where only one length was asked.
pub(crate) fn curve(plan: &Plan, course: &Course) -> Option<ChanceCurve> {
    let points = &plan.advice.curve;
    (1 < points.len()).then(|| ChanceCurve {
        points: points.clone(),
        wished: course.chance,
        chosen: (plan.sizing.length, plan.forecast.chance),
        limits: plan.sizing.limits.clone(),
    })
}

/// Progress against the forecast; nothing before anything was told.
pub(crate) fn progress(plan: &Plan, course: &Course) -> Option<Progress> {
    let today = plan.today.as_ref()?;
    let days: Vec<ProgressDay> = course
        .days
        .iter()
        .enumerate()
        .map(|(number, day)| one_day(plan, course, number, day))
        .collect();
    let begins = days.first().map_or(0.0, |day| day.starts);
    let now = today.told.last().copied().unwrap_or((begins, 0.0));
    Some(Progress {
        before: band(&plan.forecast, (begins, 0.0), |stage| weight(today, stage)),
        after: band(&today.forecast, now, |stage| left(today, stage)),
        told: today.told.clone(),
        ends: days.last().map_or(0.0, |day| day.ends),
        chance: today.forecast.chance,
        days,
    })
}

fn one_day(plan: &Plan, course: &Course, number: usize, day: &Day) -> ProgressDay {
    let at = |time| minutes_to(&course.days, day.date, time);
    let (starts, ends) = (at(day.start), at(day.finish));
    let fixed = plan.days.timed.fixed.iter();
    let breaks = fixed.filter(|it| matches!(it.what, What::Break { .. }));
    let breaks = breaks.map(|it| (it.span.from, it.span.to));
    ProgressDay {
        name: format!("Day {}", number + 1),
        starts,
        ends,
        breaks: breaks
            .filter(|(from, to)| starts <= *from && *to <= ends)
            .collect(),
    }
}

/// A stage's share of the whole work.
fn weight(today: &Today, stage: usize) -> f64 {
    let of_stage = today.done.iter().filter(|it| it.stage == stage);
    of_stage.map(|it| it.weight).sum()
}

/// The share of the whole work that is left of a stage.
fn left(today: &Today, stage: usize) -> f64 {
    let of_stage = today.done.iter().filter(|it| it.stage == stage);
    of_stage
        .map(|it| {
            let done = it.bays.iter().sum::<f64>() / it.bays.len().max(1) as f64;
            it.weight * (1.0 - done)
        })
        .sum()
}

/// The share done by the times at which the stages of a forecast are done, from a time and a
/// share on.
fn band(forecast: &Forecast, from: (f64, f64), share: impl Fn(usize) -> f64) -> Band {
    let line = |percentile: usize| {
        let mut points = vec![from];
        let mut done = from.1;
        for times in &forecast.by_stage {
            done += share(times.stage);
            let Some(time) = times.done[percentile] else {
                break;
            };
            points.push((time, done.min(1.0)));
        }
        points
    };
    // The slow courses have done less by any time.
    Band {
        low: line(2),
        middle: line(1),
        high: line(0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    fn planned(more: &str) -> (Plan, Course) {
        let library = Library::built_in().expect("the library");
        let text = format!("{}\n{more}", Library::example(false));
        let file = CourseFile::parse(&text).expect("sound");
        (file.plan(&library).expect("planned"), file.course)
    }

    const TOLD: &str = "[[progress]]\nday = 1\ntime = 14:45:00\nstage = \"footing\"\n";

    #[test]
    fn what_is_done_grows_from_nothing_to_all() {
        let (plan, course) = planned(TOLD);
        let progress = progress(&plan, &course).expect("something was told");
        assert_eq!(progress.told.len(), 1);
        for band in [&progress.before, &progress.after] {
            for line in [&band.low, &band.middle, &band.high] {
                let grows = |pair: &[(f64, f64)]| pair[0].0 <= pair[1].0 && pair[0].1 <= pair[1].1;
                assert!(line.windows(2).all(grows), "{line:?}");
            }
        }
        let (_, all) = progress.before.high.last().expect("a line");
        assert!((all - 1.0).abs() < 1e-9);
        assert_eq!(progress.after.middle[0], progress.told[0]);
    }

    #[test]
    fn nothing_told_is_no_picture_of_progress() {
        let (plan, course) = planned("");
        assert_eq!(progress(&plan, &course), None);
        let curve = curve(&plan, &course).expect("a curve");
        assert!(
            curve
                .points
                .iter()
                .any(|(length, _)| *length < curve.chosen.0)
        );
        assert!(
            curve
                .points
                .iter()
                .any(|(length, _)| curve.chosen.0 < *length)
        );
    }
}
