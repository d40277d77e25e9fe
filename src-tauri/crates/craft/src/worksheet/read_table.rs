//! Questions read off the setting-out table of the course's own frames.

use super::draw::Draw;
use super::scale::Scale;
use super::{Kind, Level, Question, Table};
use crate::frames::{FrameRow, Frames};
use crate::quantity::{Length, Read, round_to_mark, show_mark};
use crate::wall::Side;

/// So many frames stand in the table of a question.
const ROWS: usize = 5;

/// A column of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Station,
    Offset(Side),
    Rise(Side),
}

impl Column {
    const ALL: [Self; 5] = [
        Self::Station,
        Self::Offset(Side::Left),
        Self::Rise(Side::Left),
        Self::Offset(Side::Right),
        Self::Rise(Side::Right),
    ];

    fn head(self) -> String {
        match self {
            Self::Station => "Station".to_owned(),
            Self::Offset(side) => format!("Offset {}", side.word()),
            Self::Rise(side) => format!("Rise {}", side.word()),
        }
    }

    /// What a person wants to know who looks there.
    fn question(self) -> String {
        match self {
            Self::Station => "how far is it from station 0".to_owned(),
            Self::Offset(side) => format!(
                "how far is the {} bar from the centre line at the ground",
                side.word()
            ),
            Self::Rise(side) => format!(
                "how high is the board above the ground at the {} bar",
                side.word()
            ),
        }
    }

    fn of(self, row: &FrameRow) -> Length {
        match self {
            Self::Station => row.station,
            Self::Offset(side) => row.offset(side),
            Self::Rise(side) => row.rise(side),
        }
    }
}

/// Level 1 asks for one figure, level 2 for three of one frame, level 3 for two sums with them.
/// Neighbours are asked about other frames, or other columns.
pub(super) fn read(
    draw: &mut Draw,
    scale: Scale,
    frames: &Frames,
    level: Level,
) -> Option<Question> {
    let rows = &frames.rows;
    let show = |length| show_mark(length, scale.units);
    let (at, (ask, working, answer, value)) = match level {
        Level::Hard => {
            let (from, to, wide) = draw.pick_unlike_neighbours(&pairs(rows, scale))?;
            (to, sums(rows, [from, to], wide, scale)?)
        }
        _ => {
            let (at, column) = draw.pick_unlike_neighbours(&figures(rows))?;
            let row = rows.get(at)?;
            let parts = match level {
                Level::Easy => one(row, at + 1, column, &show),
                _ => three(row, at + 1, column, &show),
            };
            (at, parts)
        }
    };
    Some(Question {
        ask: format!("This is part of the setting-out table of our wall. {ask}"),
        working,
        answer,
        tolerance: level.pick("exact", "exact", &scale.tolerance()).to_owned(),
        value: value.si(),
        table: Some(table(rows, at, scale)),
        ..Question::of(Kind::ReadTheTable)
    })
}

/// What is asked, how it is read, the answer, and its first figure.
type Parts = (String, String, String, Length);

/// The figures that can be asked for. The first frame stands at nothing, which is none.
fn figures(rows: &[FrameRow]) -> Vec<(usize, Column)> {
    let columns = [
        Column::Station,
        Column::Rise(Side::Left),
        Column::Offset(Side::Right),
    ];
    (1..rows.len())
        .flat_map(|at| columns.map(|column| (at, column)))
        .collect()
}

/// Two frames that stand in one table, and of which of them the width is asked. Long tapes are
/// read to the eighth of an inch and short ones to the sixteenth: frames between which that
/// leaves a sixteenth over are not asked about.
fn pairs(rows: &[FrameRow], scale: Scale) -> Vec<(usize, usize, usize)> {
    let comes_out = |(from, to): &(usize, usize)| {
        rows.get(*from)
            .zip(rows.get(*to))
            .is_some_and(|(from, to)| {
                let apart = apart([from, to], scale);
                (apart - round_to_mark(apart, scale.units)).si().abs() < 1e-9
            })
    };
    (1..rows.len())
        .flat_map(|to| (first_shown(rows, to)..to).map(move |from| (from, to)))
        .filter(comes_out)
        .flat_map(|(from, to)| [(from, to, from), (from, to, to)])
        .collect()
}

/// One figure of one frame.
fn one(row: &FrameRow, name: usize, column: Column, show: &dyn Fn(Length) -> String) -> Parts {
    let value = column.of(row);
    (
        format!("Frame {name}: {}?", column.question()),
        format!("Row {name}, column {}: {}", column.head(), show(value)),
        show(value),
        value,
    )
}

/// Three figures of one frame: where it stands, and two of its marks.
fn three(row: &FrameRow, name: usize, first: Column, show: &dyn Fn(Length) -> String) -> Parts {
    let columns = match first {
        Column::Station => [
            Column::Station,
            Column::Offset(Side::Left),
            Column::Rise(Side::Right),
        ],
        Column::Offset(_) => [
            Column::Offset(Side::Right),
            Column::Rise(Side::Right),
            Column::Station,
        ],
        Column::Rise(_) => [
            Column::Rise(Side::Left),
            Column::Station,
            Column::Offset(Side::Left),
        ],
    };
    let [one, two, last] = columns.map(Column::question);
    let told =
        columns.map(|column| format!("{} {}", column.head().to_lowercase(), show(column.of(row))));
    (
        format!("Frame {name}: {one}, {two}, and {last}?"),
        format!("Row {name}: {}", told.join(", ")),
        told.join("; "),
        columns[0].of(row),
    )
}

/// From one frame to another, and how wide the wall is at the ground at one of them: sums of the
/// figures as the table prints them.
fn sums(rows: &[FrameRow], [from, to]: [usize; 2], wide: usize, scale: Scale) -> Option<Parts> {
    let (first, second, widest) = (rows.get(from)?, rows.get(to)?, rows.get(wide)?);
    let show = |length| show_mark(length, scale.units);
    let printed = |length| round_to_mark(length, scale.units);
    let apart = apart([first, second], scale);
    let width = printed(widest.left_offset) + printed(widest.right_offset);
    let [from, to, wide] = [from, to, wide].map(|at| at + 1);
    Some((
        format!(
            "How far is it from frame {from} to frame {to} along the centre line, and how wide is \
             the wall at the ground at frame {wide}?"
        ),
        format!(
            "Apart = station {to} − station {from} = {} − {} = {}\n\
             Width = left offset + right offset = {} + {} = {}",
            show(second.station),
            show(first.station),
            show(apart),
            show(widest.left_offset),
            show(widest.right_offset),
            show(width)
        ),
        format!("{} apart; {} wide", show(apart), show(width)),
        apart,
    ))
}

/// From one frame to another by the stations the table prints.
fn apart([from, to]: [&FrameRow; 2], scale: Scale) -> Length {
    let [from, to] = [from, to].map(|row| round_to_mark(row.station, scale.units));
    to - from
}

/// The first row of the table in which a frame stands: never that frame itself, so that one
/// before it can be seen.
fn first_shown(rows: &[FrameRow], at: usize) -> usize {
    at.saturating_sub(ROWS - 2)
        .min(rows.len().saturating_sub(ROWS))
}

/// The rows round a frame, or all of them where they are few.
fn table(rows: &[FrameRow], at: usize, scale: Scale) -> Table {
    let start = first_shown(rows, at);
    let head = std::iter::once("Frame".to_owned()).chain(Column::ALL.map(Column::head));
    Table {
        head: head.collect(),
        rows: rows
            .iter()
            .enumerate()
            .skip(start)
            .take(ROWS)
            .map(|(at, row)| {
                let figures = Column::ALL.map(|column| show_mark(column.of(row), scale.units));
                std::iter::once((at + 1).to_string())
                    .chain(figures)
                    .collect()
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Units, metres};
    use crate::worksheet::sample;

    fn three_frames() -> Frames {
        let course = sample::course(Units::Metric, 1);
        sample::set_out(&course)
    }

    fn asked(student: usize, level: Level) -> Question {
        let mut draw = Draw::new(4, student, Kind::ReadTheTable);
        let scale = Scale::of(Units::Metric);
        read(&mut draw, scale, &three_frames(), level).expect("frames to read")
    }

    /// What the table shows is what the answer says, found by its row and column.
    #[test]
    fn a_figure_is_where_the_working_says() {
        for student in 0..60 {
            let question = asked(student, Level::Easy);
            let table = question.table.expect("a table");
            let (place, figure) = question.working.split_once(": ").expect("a place");
            let (row, column) = place.split_once(", column ").expect("row and column");
            let row = row.trim_start_matches("Row ");
            let row = table.rows.iter().find(|one| one[0] == row).expect("a row");
            let column = table.head.iter().position(|one| one == column);
            assert_eq!(row[column.expect("a column")], figure);
            assert_eq!(question.answer, figure);
        }
    }

    /// By hand: a wall of 6 m with frames every 3 m: 3.00 or 6.00 m apart; plumb faces 0.41 m
    /// apart.
    #[test]
    fn sums_are_of_stations_and_offsets() {
        for student in 0..60 {
            let question = asked(student, Level::Hard);
            assert!(
                ["3.00 m apart; 0.41 m wide", "6.00 m apart; 0.41 m wide"]
                    .contains(&question.answer.as_str()),
                "{}",
                question.answer
            );
        }
    }

    /// By hand: 0.3114 m is printed as 0.311 m or 1 ft 1/4 in, twice that as 0.622 m or 2 ft
    /// 1/2 in and not as 0.623 m.
    #[test]
    fn a_width_is_the_sum_of_the_offsets_printed() {
        for (units, width) in [(Units::Metric, "0.622 m"), (Units::Imperial, "2 ft 1/2 in")] {
            let mut frames = three_frames();
            for row in &mut frames.rows {
                (row.left_offset, row.right_offset) = (metres(0.3114), metres(0.3114));
            }
            let mut draw = Draw::new(4, 0, Kind::ReadTheTable);
            let question = read(&mut draw, Scale { units }, &frames, Level::Hard).expect("frames");
            let printed = question.answer.split("; ").nth(1);
            assert_eq!(printed, Some(format!("{width} wide").as_str()));
        }
    }

    /// By hand: 9 ft 1/16 in and 19 ft 1/4 in are 10 ft 3/16 in apart, on a long tape 10 ft 1/4
    /// in: not asked. 0 and 9 ft 1/16 in, and 0 and 19 ft 1/4 in, come out.
    #[test]
    fn stations_that_leave_a_sixteenth_over_are_not_asked_about() {
        let mut frames = three_frames();
        for (row, inches) in frames.rows.iter_mut().zip([0.0, 108.0625, 228.25]) {
            row.station = metres(inches * crate::quantity::INCH_M);
        }
        let asked = pairs(&frames.rows, Scale::of(Units::Imperial));
        assert_eq!(asked, [(0, 1, 0), (0, 1, 1), (0, 2, 0), (0, 2, 2)]);
    }

    #[test]
    fn the_table_shows_the_frames_asked_about() {
        let mut frames = three_frames();
        let row = frames.rows[0];
        frames.rows = (0..12)
            .map(|at| FrameRow {
                station: metres(f64::from(at)),
                ..row
            })
            .collect();
        for student in 0..60 {
            let mut draw = Draw::new(4, student, Kind::ReadTheTable);
            let scale = Scale::of(Units::Imperial);
            let question = read(&mut draw, scale, &frames, Level::Hard).expect("frames");
            let table = question.table.expect("a table");
            assert_eq!(table.rows.len(), ROWS);
            for name in ["first", "second"]
                .iter()
                .zip(question.ask.split("frame ").skip(1))
            {
                let number: String = name.1.chars().take_while(char::is_ascii_digit).collect();
                assert!(
                    table.rows.iter().any(|row| row[0] == number),
                    "{}",
                    question.ask
                );
            }
        }
    }

    #[test]
    fn one_frame_is_no_table_to_read() {
        let mut frames = three_frames();
        frames.rows.truncate(1);
        let mut draw = Draw::new(4, 0, Kind::ReadTheTable);
        let scale = Scale::of(Units::Metric);
        assert_eq!(read(&mut draw, scale, &frames, Level::Easy), None);
    }
}
