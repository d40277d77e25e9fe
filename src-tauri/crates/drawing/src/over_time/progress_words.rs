//! The day's progress in words: where the work stands against what was forecast.

use crate::over_time::clock::Clock;
use crate::over_time::plot::written_share;
use crate::over_time::progress::{Band, Progress};
use crate::paper::words::list;

/// The progress with its key figures, in sentences.
pub(crate) fn description(progress: &Progress, clock: Clock) -> String {
    let end = when(progress, clock, progress.ends);
    let mut said = vec![format!(
        "The chance of finishing by the end of the course, {end}, is {}.",
        written_share(progress.chance)
    )];
    if let Some(sentence) = by_day(progress, clock) {
        said.push(sentence);
    }
    if progress.told.is_empty() {
        said.push("Nothing is reported yet.".to_owned());
    } else {
        let all: Vec<String> = progress
            .told
            .iter()
            .map(|one| against(progress, clock, *one))
            .collect();
        said.push(format!("Reported: {}.", all.join("; ")));
    }
    if let Some(shares) = shares_at(&progress.after, progress.ends) {
        said.push(format!("Now forecast for the end: {}.", spread(shares)));
    }
    said.join(" ")
}

/// `Day 1, 14:30` and `46 % done`.
pub(crate) fn reported(
    progress: &Progress,
    clock: Clock,
    (time, share): (f64, f64),
) -> [String; 2] {
    let share = written_share(share);
    [when(progress, clock, time), format!("{share} done")]
}

/// `Day 1, 14:30`.
fn when(progress: &Progress, clock: Clock, time: f64) -> String {
    let day = progress.days.iter().rev().find(|day| day.starts <= time);
    let day = day.or_else(|| progress.days.first());
    let time = clock.time(time);
    day.map_or(time.clone(), |day| format!("{}, {time}", day.name))
}

fn against(progress: &Progress, clock: Clock, one: (f64, f64)) -> String {
    let said = reported(progress, clock, one).join(": ");
    match share_at(&progress.before.middle, one.0) {
        Some(share) => format!("{said}, {} was forecast", written_share(share)),
        None => said,
    }
}

fn by_day(progress: &Progress, clock: Clock) -> Option<String> {
    let ends = progress.days.iter().filter_map(|day| {
        let shares = shares_at(&progress.before, day.ends)?;
        let when = when(progress, clock, day.ends);
        Some(format!("by {when} {}", spread(shares)))
    });
    let ends: Vec<String> = ends.collect();
    (!ends.is_empty()).then(|| format!("Forecast before the course: {}.", list(&ends)))
}

fn spread([low, middle, high]: [f64; 3]) -> String {
    let [low, middle, high] = [low, middle, high].map(written_share);
    format!("{middle} of the work, 8 times in 10 between {low} and {high}")
}

fn shares_at(band: &Band, time: f64) -> Option<[f64; 3]> {
    let at = |line: &[(f64, f64)]| share_at(line, time);
    Some([at(&band.low)?, at(&band.middle)?, at(&band.high)?])
}

/// The share a line holds at a time: that of its end from there on.
fn share_at(line: &[(f64, f64)], time: f64) -> Option<f64> {
    let after = line.iter().position(|(at, _)| time <= *at);
    let share = match after {
        Some(0) => line.first().filter(|(at, _)| *at <= time)?.1,
        Some(next) => {
            let ((from, low), (to, high)) = (line.get(next - 1)?, line.get(next)?);
            if to <= from {
                *high
            } else {
                low + (high - low) * (time - from) / (to - from)
            }
        }
        None => line.last()?.1,
    };
    share.is_finite().then(|| share.clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;

    #[test]
    fn the_words_hold_the_figures() {
        let said = description(&sample::weekend_progress(), Clock::TwentyFour);
        for figure in [
            "by the end of the course, Day 2, 16:30, is 71 %.",
            "by Day 1, 16:30 48 % of the work, 8 times in 10 between 36 % and 60 %",
            "Day 1, 14:30: 22 % done, 32 % was forecast",
            "Now forecast for the end: 100 % of the work, 8 times in 10 between 86 % and 100 %.",
        ] {
            assert!(said.contains(figure), "{figure}\n{said}");
        }
    }

    #[test]
    fn before_the_first_report_that_is_said() {
        let mut progress = sample::weekend_progress();
        progress.told.clear();
        let said = description(&progress, Clock::Twelve);
        assert!(said.contains("Nothing is reported yet."));
        assert!(said.contains("Day 2, 4:30 pm"));
    }

    #[test]
    fn a_share_is_read_between_points_and_not_before_the_first() {
        let line = [(100.0, 0.2), (200.0, 0.4)];
        for (time, share) in [
            (50.0, None),
            (100.0, Some(0.2)),
            (150.0, Some(0.3)),
            (900.0, Some(0.4)),
        ] {
            let found = share_at(&line, time);
            let near = |share: f64| found.is_some_and(|it| (it - share).abs() < 1e-9);
            assert!(share.map_or(found.is_none(), near), "{time}: {found:?}");
        }
    }
}
