//! What is written under the elevation: frames, stations, levels, steps, the line, the length.

use crate::along::face::Face;
use crate::along::lie::level_shown;
use crate::along::line_row::{LineWriting, line_row};
use crate::paper::dimension::{
    Across, Outside, every_so_many, figure_row, lie_apart, shown as shown_places,
};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, SMALL_MM, Sheet, WORD_MM, line_of};
use crate::paper::words::{self, shown};
use craft::course::End;
use craft::quantity::Read;
use craft::wall::WallEnd;

/// The ring round a frame's number.
const RING_MM: f64 = 3.7;
/// From one row of figures to the next.
const ROW_GAP_MM: f64 = 1.8;

/// All rows under a stretch. Gives how many stations go to one figure.
pub(crate) fn underneath(sheet: &mut Sheet, face: &Face<'_>, writing: LineWriting) -> usize {
    let every = stations(sheet, face);
    line_row(sheet, face, writing);
    // A single arc has its length written beside it.
    let is_one_arc = matches!(face.plan.wall.line.stretches(), [one] if one.bend.is_some());
    if face.stretch.first && face.stretch.last && !is_one_arc {
        length(sheet, face);
    }
    every
}

/// A row of figures with its name.
struct Row {
    name: &'static str,
    figures: Vec<(f64, String)>,
}

/// Numbers of the frames and, below them, their stations and whatever levels change. Gives
/// how many stations go to one figure.
fn stations(sheet: &mut Sheet, face: &Face<'_>) -> usize {
    let y = sheet.extent().bottom + 1.5 + RING_MM;
    numbers(sheet, y, &ordered(face, numbered(face)));
    let mut top = y + RING_MM + 1.8;
    let mut every = 1;
    let mut drawn = Sheet::default();
    let mut names = Vec::new();
    let rows = rows(face);
    let large = |row: &Row| lie_apart(&row.figures, FIGURE_MM, true);
    let all_large = rows.iter().all(large);
    for row in rows {
        let mut own = Sheet::default();
        // All rows in letters of one size, as far as they lie.
        if !all_large && large(&row) {
            small_row(&mut own, top, &row.figures);
        } else {
            every = every.max(figure_row(&mut own, top, &row.figures));
        }
        let extent = own.extent();
        names.push(((extent.top + extent.bottom) / 2.0, row.name));
        top = extent.bottom + ROW_GAP_MM;
        drawn.append(own);
    }
    let left = drawn.extent().left - 1.6;
    sheet.append(drawn);
    // A single row says by its figures what it is.
    for (middle, name) in names.iter().filter(|_| 1 < names.len()) {
        let at = Point::new(left, middle + 0.28 * SMALL_MM);
        sheet.text(line_of(at, name, SMALL_MM, Anchor::End));
    }
    ends(sheet, face, top);
    every
}

fn small_row(sheet: &mut Sheet, top: f64, figures: &[(f64, String)]) {
    for (x, words) in figures {
        let at = Point::new(*x, top + 0.76 * SMALL_MM);
        sheet.text(line_of(at, words, SMALL_MM, Anchor::Middle).bold());
    }
}

/// How each end of the wall is left, under it.
fn ends(sheet: &mut Sheet, face: &Face<'_>, top: f64) {
    let [start, finish] = face.ends();
    let here = [(start, face.stretch.first), (finish, face.stretch.last)];
    for (at, (end, here)) in here.into_iter().enumerate() {
        let word = match face.plan.ends.get(at) {
            Some(own) => end_word(own),
            None if at == 1 => "closes on station 0".to_owned(),
            None => continue,
        };
        if here {
            let at = Point::new(face.x(end.at), top + 0.76 * WORD_MM);
            sheet.word(at, &word, Anchor::Middle);
        }
    }
}

fn end_word(end: &WallEnd) -> String {
    match end.kind {
        End::Head if end.batter.n().is_some() => {
            format!("built end, {}", words::batter(end.batter))
        }
        End::Head => "built end".to_owned(),
        End::Joined => "joined end".to_owned(),
        End::Raked => "raked end".to_owned(),
    }
}

/// Stations of a stretch with the numbers of their frames.
fn numbered(face: &Face<'_>) -> Vec<(f64, String)> {
    let first = face.stretch.before + 1;
    let own = face.stretch.rows.iter().enumerate();
    let mut numbered: Vec<(f64, String)> = own
        .map(|(at, row)| (row.station.si(), (first + at).to_string()))
        .collect();
    if face.closes() {
        numbered.push((face.to(), "1".to_owned()));
    }
    numbered
}

/// Figures at stations as figures at places on paper, from left to right.
fn ordered(face: &Face<'_>, mut figures: Vec<(f64, String)>) -> Vec<(f64, String)> {
    for figure in &mut figures {
        figure.0 = face.x(figure.0);
    }
    figures.sort_by(|a, b| a.0.total_cmp(&b.0));
    figures
}

fn rows(face: &Face<'_>) -> Vec<Row> {
    let at = || numbered(face).into_iter().map(|(station, _)| station);
    let levels = |level: &dyn Fn(f64) -> f64| -> Vec<(f64, String)> {
        at().map(|station| (station, level_shown(face.course, level(station))))
            .collect()
    };
    let mut rows = vec![("station", levels(&|station| station))];
    if !face.plan.wall.ground.is_level() {
        rows.push(("ground", levels(&|station| face.lie.ground(station))));
    }
    if !face.lie.top_is_level() {
        rows.push(("top", levels(&|station| face.lie.top(station))));
    }
    let steps = steps(face);
    if !steps.is_empty() {
        rows.push(("step", steps));
    }
    rows.into_iter()
        .map(|(name, figures)| Row {
            name,
            figures: ordered(face, figures),
        })
        .collect()
}

/// What the top rises or falls by at each step of this stretch, going on from station 0.
fn steps(face: &Face<'_>) -> Vec<(f64, String)> {
    let here = |at: f64| face.from() <= at && at <= face.to();
    let steps = face.lie.steps().into_iter().filter(|(at, _)| here(*at));
    steps
        .map(|(at, rise)| {
            let way = if rise < 0.0 { "down" } else { "up" };
            let high = level_shown(face.course, rise.abs());
            (at, format!("{way} {high}"))
        })
        .collect()
}

/// Numbers of frames: in rings where there is room for rings.
fn numbers(sheet: &mut Sheet, y: f64, places: &[(f64, String)]) {
    let all = || places.iter().map(|(x, _)| *x);
    let ringed = every_so_many(all(), 2.0 * RING_MM + 1.0) == 1;
    let every = if ringed { 1 } else { every_so_many(all(), 6.2) };
    for at in shown_places(places.len(), every) {
        let (x, number) = &places[at];
        let centre = Point::new(*x, y);
        if ringed {
            sheet.circle(Pen::Dimension, centre, RING_MM);
        }
        let size = WORD_MM * 1.08;
        let base = Point::new(centre.x, y + 0.34 * size);
        sheet.text(line_of(base, number, size, Anchor::Middle).bold());
    }
}

fn length(sheet: &mut Sheet, face: &Face<'_>) {
    let y = sheet.extent().bottom + FIGURE_MM + 2.6;
    let to = face.scale.mm(face.plan.sizing.length);
    let bends = face
        .plan
        .wall
        .line
        .stretches()
        .iter()
        .any(|one| one.bend.is_some());
    Across {
        y,
        from: 0.0,
        to,
        figure: &shown(face.course, face.plan.sizing.length),
        word: if bends {
            "length along the centre line"
        } else {
            "length of wall"
        },
        outside: Outside::Right(to + 3.0),
    }
    .draw(sheet);
}
