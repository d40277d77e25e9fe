//! The days one below another: bars on an axis of hours, and how sure each stage's end is.

use crate::over_time::bars::{BAR_MM, KINDS, bar, frame};
use crate::over_time::flags::{Flag, raise};
use crate::over_time::hours::{FIGURES_MM, Hours};
use crate::over_time::key::{SAMPLE_MM, Sample, key};
use crate::over_time::lanes::{ARROW_MM, Packing, lanes, whisker};
use crate::over_time::timetable::{Timetable, TimetableDay};
use crate::over_time::timetable_words::description;
use crate::over_time::whiskers::{Leaves, Line, pieces};
use crate::paper::day_row::DayRow;
use crate::paper::fitting::fitted_chart;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM};
use crate::paper::text_box::width;
use std::ops::Range;

/// Between two days.
const DAYS_APART_MM: f64 = 5.0;
/// Between the names of the days and the axis.
const BESIDE_MM: f64 = 3.0;
/// From the figures of the hours to the first lane.
const LANES_MM: f64 = 2.2;

/// The ribbon over what is dark, and how far over the bars it lies.
const DARK_MM: f64 = 1.3;
const DARK_OVER_MM: f64 = 0.8;

/// The timetable of all days, best in an upright room: each day an axis of hours with its bars,
/// daylight where it begins or ends within the axis, and under the bars a whisker for each stage
/// from the 10th to the 90th percentile of when it is done, the middle marked.
pub fn timetable_bars(timetable: &Timetable, room: Room) -> Scene {
    let all = 0..timetable.days.len();
    scene_of(timetable, all, room, description(timetable))
}

/// The same in as many pictures as it takes, each of as many days as fit the room with letters
/// of their full size. The first tells all days in words.
pub fn timetable_in_parts(timetable: &Timetable, room: Room) -> Vec<Scene> {
    let last = timetable.days.len();
    let mut parts = Vec::new();
    let mut from = 0;
    while from < last || parts.is_empty() {
        let fits = |to: &usize| close(timetable, from..*to, room).fits(room);
        let to = (from + 1..=last)
            .rev()
            .find(fits)
            .unwrap_or(last.min(from + 1));
        let words = match timetable.days.get(from) {
            Some(day) if 0 < from => {
                format!(
                    "The same from {} on, told in words with the first days.",
                    day.name
                )
            }
            _ => description(timetable),
        };
        parts.push(scene_of(timetable, from..to, room, words));
        from = to.max(from + 1);
    }
    parts
}

fn scene_of(timetable: &Timetable, days: Range<usize>, room: Room, description: String) -> Scene {
    let (sheet, room) = fitted_chart(room, |room| {
        let falling = some_days(timetable, days.clone(), room, Packing::Falling);
        if falling.fits(room) {
            return falling;
        }
        close(timetable, days.clone(), room)
    });
    let heading = Heading {
        name: "timetable",
        title: "Timetable, and how sure it is when each stage is done".to_owned(),
        description,
    };
    sheet.into_scene(heading, None, room)
}

fn close(timetable: &Timetable, days: Range<usize>, room: Room) -> Sheet {
    some_days(timetable, days, room, Packing::Close)
}

fn some_days(timetable: &Timetable, days: Range<usize>, room: Room, packing: Packing) -> Sheet {
    let names = timetable.days.iter().map(|day| {
        let name = width(&day.name, FIGURE_MM, true);
        name.max(width(&day.weekday, WORD_MM, false))
    });
    let left = names.fold(0.0, f64::max) + BESIDE_MM;
    let mut right = room.width_mm - 4.0 - ARROW_MM;
    let samples = samples(timetable);
    let draw = |right: f64| {
        let hours = Hours::of(&timetable.days, left, right);
        let mut sheet = Sheet::default();
        if timetable.days.is_empty() {
            sheet.word(Point::new(0.0, 0.0), "There are no days.", Anchor::Start);
        }
        for at in days.clone() {
            sheet.stack(one_day(timetable, at, &hours, packing), DAYS_APART_MM);
        }
        key(&mut sheet, 0.0, room.width_mm - 6.0, &samples, &[]);
        sheet
    };
    let mut sheet = draw(right);
    // Names on flags near the end of a day may stand out: the axis makes room for them.
    while room.width_mm - 4.0 < sheet.extent().right && left + 40.0 < right {
        right -= (sheet.extent().right - room.width_mm + 4.0).max(0.5);
        sheet = draw(right);
    }
    sheet
}

fn one_day(timetable: &Timetable, at: usize, hours: &Hours, packing: Packing) -> Sheet {
    let mut sheet = Sheet::default();
    let Some(day) = timetable.days.get(at) else {
        return sheet;
    };
    sheet.day_row(DayRow {
        day: at,
        from: Point::new(hours.left, 0.0),
        to: Point::new(hours.right, BAR_MM),
        minutes: (hours.from, hours.to),
    });
    let midnight = day.midnight();
    let x = |time: f64| hours.x(time - midnight);
    let base = Point::new(0.0, 0.44 * BAR_MM);
    sheet.figure(base, &day.name, Anchor::Start);
    let under = Point::new(0.0, base.y + 1.35 * WORD_MM);
    sheet.word(under, &day.weekday, Anchor::Start);
    let mut flags = daylight(&mut sheet, timetable, day, hours);
    for one in &day.bars {
        flags.extend(bar(&mut sheet, one, (x(one.from), x(one.to))));
    }
    raise(&mut sheet, -DARK_OVER_MM - DARK_MM, flags);
    let ends = [x(day.starts), x(day.ends)].map(|x| Point::new(x, BAR_MM + 0.6));
    sheet.line(Pen::Ground, ends[0], ends[1]);
    hours.figures(&mut sheet, timetable.clock, BAR_MM + 0.6);
    let top = BAR_MM + FIGURES_MM + LANES_MM;
    let mut under = Sheet::default();
    let edges = (hours.left, hours.right, x(day.ends));
    let bottom = lanes(
        &mut under,
        &pieces(timetable, at),
        &x,
        edges,
        (top, packing),
    );
    hours.lines(&mut sheet, &under, (top, bottom));
    sheet.append(under);
    sheet
}

/// A black ribbon over what is dark of the axis. Gives flags for sunrise and sunset.
fn daylight(
    sheet: &mut Sheet,
    timetable: &Timetable,
    day: &TimetableDay,
    hours: &Hours,
) -> Vec<Flag> {
    let mut dark = |from: f64, to: f64| {
        let down = [-DARK_OVER_MM - DARK_MM, -DARK_OVER_MM];
        let corners = [Point::new(from, down[0]), Point::new(to, down[1])];
        sheet.rectangle(Pen::Solid, corners[0], corners[1]);
    };
    let flag = |x: f64, what: &str, time: f64| {
        let words = format!("{what} {}", timetable.clock.time(time));
        Flag::new(x, -DARK_OVER_MM, Pen::Leader, &words)
    };
    let mut flags = Vec::new();
    for (what, time) in [("sunrise", day.sunrise), ("sunset", day.sunset)] {
        let Some(time) = time else {
            continue;
        };
        let minute = time - day.midnight();
        let x = hours.x(minute);
        let (from, to) = if what == "sunrise" {
            (hours.left, x)
        } else {
            (x, hours.right)
        };
        if from < to {
            dark(from, to);
        }
        if hours.holds(minute) {
            flags.push(flag(x, what, time));
        }
    }
    flags
}

/// What stands in the days, and how to read the whiskers.
fn samples(timetable: &Timetable) -> Vec<Sample> {
    let bars = || timetable.days.iter().flat_map(|day| &day.bars);
    let there = |kind| bars().any(|bar| bar.kind == kind);
    let kinds = KINDS.into_iter().filter(|(kind, _)| there(*kind));
    let mut samples: Vec<Sample> = kinds
        .map(|(kind, word)| {
            Sample::new(word, move |sheet, at| {
                let across = (at.x, at.x + SAMPLE_MM.0);
                frame(sheet, kind, across, (at.y, at.y + SAMPLE_MM.1));
            })
        })
        .collect();
    let hours = Hours::of(&timetable.days, 0.0, 1.0);
    let dark = |day: &TimetableDay| {
        let later = |time: f64, minute: f64| minute < time - day.midnight();
        day.sunrise.is_some_and(|rise| later(rise, hours.from))
            || day
                .sunset
                .is_some_and(|set| later(hours.to + day.midnight(), set - day.midnight()))
    };
    if timetable.days.iter().any(dark) {
        samples.push(Sample::new("dark", |sheet, at| {
            let top = at.y + (SAMPLE_MM.1 - DARK_MM) / 2.0;
            let corners = [(at.x, top), (at.x + SAMPLE_MM.0, top + DARK_MM)];
            let [one, other] = corners.map(|(x, y)| Point::new(x, y));
            sheet.rectangle(Pen::Solid, one, other);
        }));
    }
    let of_days = (0..timetable.days.len()).flat_map(|day| pieces(timetable, day));
    let lines: Vec<Line> = of_days.filter_map(|piece| piece.line).collect();
    let sample = |words: &str, leaves, middle: bool| {
        Sample::new(words, move |sheet, at| {
            let (from, to) = (at.x + 1.2, at.x + SAMPLE_MM.0 - 0.4);
            let line = Line {
                from,
                to,
                middle: None,
                enters: !middle,
                leaves,
            };
            let middle = middle.then_some(at.x + 0.45 * SAMPLE_MM.0);
            whisker(sheet, &line, (from, to), middle, at.y + SAMPLE_MM.1 / 2.0);
        })
    };
    if !lines.is_empty() {
        let words = "stage done: by the first stroke in 1 course of 10, by the diamond in 5, by \
                     the last stroke in 9";
        samples.push(sample(words, Leaves::No, true));
    }
    for (leaves, words) in [
        (Leaves::NextDay, "goes on the next day"),
        (Leaves::Beyond, "goes on beyond the course"),
    ] {
        if lines.iter().any(|line| line.leaves == leaves) {
            samples.push(sample(words, leaves, false));
        }
    }
    samples
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;
    use crate::overlap::words;
    use crate::paper::scene::Mark;
    use crate::paper::text_box::TextBox;
    use craft::pace::EntryKind;

    const PAGE: Room = Room {
        width_mm: 180.0,
        height_mm: 240.0,
    };

    fn scene(timetable: &Timetable) -> Scene {
        timetable_bars(timetable, PAGE)
    }

    /// Closed shapes of a pen, each with its box.
    fn shapes(scene: &Scene, pen: Pen) -> Vec<TextBox> {
        let own = scene.marks.iter().filter_map(|mark| match mark {
            Mark::Polygon { pen: its, .. } if *its == pen => Some(mark.extent()),
            _ => None,
        });
        own.collect()
    }

    /// By hand: the sample's stages have 15 middles, all within the course, and two of them go
    /// on beyond it; the key has one diamond and one arrow more.
    #[test]
    fn every_middle_has_its_diamond_and_every_stage_beyond_its_arrow() {
        let scene = scene(&sample::weekend_days());
        assert_eq!(shapes(&scene, Pen::Solid).len(), 15 + 2 + 1 + 1);
        let said = words(&scene);
        let beyond = said.iter().filter(|it| it.contains("late: not within"));
        assert_eq!(beyond.count(), 2);
        assert!(said.contains(&"Day 3") && said.contains(&"Sunday"));
    }

    #[test]
    fn days_that_do_not_fit_go_on_in_a_picture_of_their_own() {
        let days = sample::weekend_days();
        let low = Room {
            width_mm: 180.0,
            height_mm: 150.0,
        };
        for room in [PAGE, low] {
            let parts = timetable_in_parts(&days, room);
            let of = |part: &Scene| -> Vec<String> {
                let said = words(part).into_iter().filter(|it| it.starts_with("Day "));
                said.map(str::to_owned).collect()
            };
            let named: Vec<String> = parts.iter().flat_map(of).collect();
            assert_eq!(named, ["Day 1", "Day 2", "Day 3"], "each once, in order");
            for part in &parts {
                assert!(part.width_mm <= room.width_mm, "{}", part.width_mm);
                assert!(crate::overlap::faults(part).is_empty());
            }
        }
        assert!(1 < timetable_in_parts(&days, low).len());
    }

    /// By hand: lunch lasts 45 min and tea 15, so one is three times as wide as the other, but
    /// for the gaps of 0.25 mm at both ends.
    #[test]
    fn bars_are_as_wide_as_their_time_is_long() {
        let scene = scene(&sample::weekend_days());
        let rests = shapes(&scene, Pen::Rest);
        let [tea, lunch] = [rests[0], rests[1]].map(|one| one.width() + 0.5);
        assert!((lunch - 3.0 * tea).abs() < 1e-6, "{lunch} {tea}");
    }

    /// The row of a day, asked for the times of its bars, says where they are drawn.
    #[test]
    fn bars_lie_in_the_row_of_their_day() {
        let days = sample::weekend_days();
        let scene = scene(&days);
        assert_eq!(scene.days.len(), days.days.len());
        let rests = shapes(&scene, Pen::Rest);
        let mut found = 0;
        for (row, day) in scene.days.iter().zip(&days.days) {
            for bar in day.bars.iter().filter(|it| it.kind == EntryKind::Break) {
                let [from, to] = [bar.from, bar.to].map(|it| row.x(it - day.midnight()));
                let drawn = rests.iter().any(|it| {
                    let ends = (it.left - from).abs() < 0.3 && (it.right - to).abs() < 0.3;
                    ends && (it.top - row.from.y).abs() < 1e-6 && it.bottom < row.to.y + 1e-6
                });
                assert!(drawn, "{} {}", day.name, bar.what);
                found += 1;
            }
        }
        assert!(1 < found);
    }

    #[test]
    fn the_sun_is_told_of_where_it_rises_or_sets_within_the_hours() {
        let mut days = sample::weekend_days();
        let sunset = |days: &Timetable| {
            let scene = scene(days);
            words(&scene).iter().any(|it| it.starts_with("sunset"))
        };
        assert!(!sunset(&days), "20:27");
        days.days[2].sunset = Some(2880.0 + 925.0);
        assert!(sunset(&days));
        assert!(words(&scene(&days)).contains(&"sunset 15:25"));
        assert!(words(&scene(&days)).contains(&"dark"));
    }
}
