//! The wall cut across, with its measurements.

use crate::across::bank::Bank;
use crate::across::cut::{Cut, outwards};
use crate::across::cut_stones::Laid;
use crate::across::section_handles::handles;
use crate::across::section_widths::{CENTRE_PAST_MM, top_width, widths};
use crate::across::section_words::{description, notes, short};
use crate::paper::dimension::{CLEAR_MM, tick};
use crate::paper::fitting::fitted;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, strip};
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM};
use crate::paper::side_notes::{Note, Towards};
use crate::paper::upright::{Led, Level, PAST_MM, Step, Upright, across, led};
use crate::paper::words::{self, shown};
use crate::turns::comes_from;
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::wall::Side;

/// From the drawing to the nearest upright dimension line, and from its words to the next.
const LANE_MM: f64 = 4.0;
/// What a batter's figure and word take in height.
const BATTER_MM: f64 = FIGURE_MM + WORD_MM + 2.0;
/// A wall lower than this on paper is too low for all that is named beside a bank.
const CROWDED_MM: f64 = 24.0;

/// The wall cut across, to scale, with its measurements.
pub fn section(plan: &Plan, course: &Course, room: Room) -> Scene {
    let crowded = is_crowded(&Cut::new(plan, course, Scale::SMALLEST));
    // The words beside the wall need its height, and more of them more of it.
    let least = if crowded { CROWDED_MM } else { BATTER_MM };
    let legible = |scale: Scale| least < scale.mm(plan.section.height());
    let laid = Laid::at_station_0(plan, course);
    let fit = |among: bool| {
        fitted(room, legible, |scale, room| {
            measured(&Cut::new(plan, course, scale).built_of(&laid), among, room)
        })
    };
    let mut best = fit(crowded);
    // Beside its face a batter is seen at once; among the heights it leaves more room.
    if !crowded {
        let among = fit(true);
        if among.0.n() * 4 <= best.0.n() * 3 {
            best = among;
        }
    }
    let (scale, mut sheet, room) = best;
    let heading = Heading {
        name: "section",
        title: "The wall cut across, with its measurements".to_owned(),
        description: description(&Cut::new(plan, course, scale)),
    };
    for handle in handles(&Cut::new(plan, course, scale)) {
        sheet.handle(handle);
    }
    sheet.into_scene(heading, scale, room)
}

/// `among`: the batters stand among the heights.
fn measured(cut: &Cut<'_>, among: bool, room: Room) -> Sheet {
    let mut sheet = Sheet::default();
    cut.draw(&mut sheet);
    let drawn = sheet.extent();
    let bank = cut.bank();
    let front = bank.as_ref().map_or(Side::Left, |bank| bank.side.other());
    let heights_at = front.other();
    if !among {
        Side::BOTH
            .into_iter()
            .for_each(|side| batter(&mut sheet, cut, side));
    }
    let near = Side::BOTH.map(|side| lane(&sheet, side));
    for (side, out) in Side::BOTH.into_iter().zip(near) {
        cut.hatched_ground(&mut sheet, side, out);
    }
    through_heights(&mut sheet, cut, front, among);
    heights(&mut sheet, cut, heights_at, (near, among));
    if !cut.is_level() {
        heights(&mut sheet, cut, heights_at.other(), (near, among));
    }
    top_width(&mut sheet, cut, drawn.top);
    widths(&mut sheet, cut, drawn.top - CENTRE_PAST_MM);
    strip(
        &mut sheet,
        cut.scale,
        cut.course.units,
        &notes(cut),
        room.width_mm,
    );
    sheet
}

/// Whether there is so much to figure beside the wall that its batters stand among the heights.
fn is_crowded(cut: &Cut<'_>) -> bool {
    cut.bank().is_some() || !cut.is_level()
}

/// Where the next upright line stands on a side: clear of all that is there.
fn lane(sheet: &Sheet, side: Side) -> f64 {
    match side {
        Side::Left => sheet.extent().left - LANE_MM,
        Side::Right => sheet.extent().right + LANE_MM,
    }
}

fn towards(side: Side) -> Towards {
    match side {
        Side::Left => Towards::Left,
        Side::Right => Towards::Right,
    }
}

/// A face's batter in words beside it.
fn batter(sheet: &mut Sheet, cut: &Cut<'_>, side: Side) {
    let (figure, word) = batter_words(cut, side);
    let middle = widest_gap(cut, side);
    let half_m = BATTER_MM / 2.0 / cut.scale.mm_per_m();
    let low = (middle - half_m).max(cut.ground(side));
    // The bar leans outwards going down, so that its foot beside the words is what counts.
    let bar = cut.face(side, low) + outwards(side) * cut.bar_width(side);
    let projection = outwards(side) * cut.course.wall.through.projection.si();
    let rail = cut
        .timber
        .as_ref()
        .and_then(|timber| timber.lower_rail(cut));
    let rail = rail.map_or(bar, |_| {
        bar + outwards(side) * cut.timber.as_ref().map_or(0.0, |it| it.overhang())
    });
    let out = |x: f64| outwards(side) * x;
    let nearest = out(rail).max(out(cut.face(side, low) + projection));
    let near = cut.at(out(nearest), middle).x + outwards(side) * 4.0;
    let at = cut.at(cut.face(side, middle), middle);
    sheet.line(Pen::Leader, at, Point::new(near, at.y));
    let text = near + outwards(side) * CLEAR_MM;
    let anchor = match side {
        Side::Left => Anchor::End,
        Side::Right => Anchor::Start,
    };
    sheet.figure(Point::new(text, at.y - 0.4), &figure, anchor);
    sheet.word(Point::new(text, at.y + 0.6 + 0.78 * WORD_MM), word, anchor);
}

/// The same as a note among others.
fn batter_note(cut: &Cut<'_>, side: Side) -> Led {
    let (figure, word) = batter_words(cut, side);
    let ground = cut.ground(side);
    let y = ground + (cut.top() - ground) * 0.25;
    Led::within(cut.at(cut.face(side, y), y), figure, word)
}

fn batter_words(cut: &Cut<'_>, side: Side) -> (String, &'static str) {
    let batter = cut.plan.section.batter(side);
    let word = match cut.bank() {
        Some(bank) if bank.side == side => "back",
        Some(_) => "front",
        None if batter.n().is_none() => "face",
        None => "batter",
    };
    (words::batter(batter), word)
}

/// The middle of the widest stretch of face with no line across it: lines of the through rows
/// cross on the side where their heights are figured.
fn widest_gap(cut: &Cut<'_>, side: Side) -> f64 {
    let ground = cut.ground(side);
    let figured = cut.bank().map_or(Side::Left, |bank| bank.side.other());
    let mut lines = vec![ground, cut.top()];
    if side == figured {
        let rows = cut.plan.stone.throughs.iter().map(|row| row.height.si());
        lines.extend(rows.filter(|row| ground < *row));
        lines.sort_by(f64::total_cmp);
    }
    let widest = lines
        .windows(2)
        .map(|pair| ((pair[0] + pair[1]) / 2.0, pair[1] - pair[0]))
        .max_by(|a, b| a.1.total_cmp(&b.1));
    let middle = (ground + cut.top()) / 2.0;
    match widest {
        Some((at, gap)) if BATTER_MM <= gap * cut.scale.mm_per_m() => at,
        // Where no gap is wide enough the words stand at half height, and the lines give way.
        _ => middle,
    }
}

/// Heights of the through rows above the ground on the centre line, and the bar's hold in the
/// ground, along one upright line.
fn through_heights(sheet: &mut Sheet, cut: &Cut<'_>, side: Side, among: bool) {
    let x = lane(sheet, side);
    let mut notes = Vec::new();
    for (at, row) in cut.plan.stone.throughs.iter().enumerate() {
        let y = row.height.si();
        let comes_here = comes_from(cut.plan, cut.course, at, 0).is_none_or(|from| from == side);
        let out = if comes_here {
            cut.course.wall.through.projection.si()
        } else {
            0.0
        };
        let end = cut.face(side, y) + outwards(side) * out;
        let level = Level::of(cut.at(end, y), towards(side));
        across(sheet, level.y, level.from, x + outwards(side) * PAST_MM);
        tick(sheet, Point::new(x, level.y));
        notes.push(Note {
            y: level.y,
            figure: shown(cut.course, row.height),
            word: "throughs".to_owned(),
        });
    }
    if let Some(highest) = notes.iter().map(|note| note.y).min_by(f64::total_cmp) {
        sheet.line(Pen::Dimension, Point::new(x, 0.0), Point::new(x, highest));
        tick(sheet, Point::new(x, 0.0));
        if !cut.is_level() {
            let from = cut.at(cut.face(side, 0.0), 0.0).x;
            across(sheet, 0.0, from, x + outwards(side) * PAST_MM);
            notes.push(Note {
                y: 0.0,
                figure: String::new(),
                word: "centre-line ground".to_owned(),
            });
        }
    }
    if cut.timber.is_none() {
        let (foot, _) = cut.bar_ends(side);
        let below = cut.trench(side).map_or(cut.ground(side), |(_, deep)| deep);
        let y = (below + foot.min(below)) / 2.0;
        let bar = cut.at(cut.face(side, y), y);
        across(sheet, bar.y, bar.x, x);
        notes.push(Note {
            y: bar.y,
            figure: shown(cut.course, cut.course.frames.embedment),
            word: "bar in the ground".to_owned(),
        });
    }
    if among {
        notes.extend(led(sheet, x, towards(side), vec![batter_note(cut, side)]));
    }
    let lane = Upright {
        x,
        towards: towards(side),
        steps: Vec::new(),
        notes,
    };
    lane.draw(sheet);
}

/// Trench, ground to cope and cope, one above the other. `near`: out to where the ground is
/// drawn. `among`: the batter stands among them.
fn heights(sheet: &mut Sheet, cut: &Cut<'_>, side: Side, (near, among): ([f64; 2], bool)) {
    let out = towards(side);
    let first = near[usize::from(side == Side::Right)];
    let bank = cut.bank().filter(|bank| bank.side == side);
    let figured_below = cut.bank().map_or(Side::Left, |bank| bank.side.other());
    let x = if side == figured_below {
        lane(sheet, side)
    } else {
        first
    };
    let place = |x: f64, y: f64| Level::of(cut.at(x, y), out);
    // A line through a bank would be lost in its strokes.
    let below = |x: f64, y: f64| match &bank {
        Some(bank) => place(bank.far_end(), y),
        None => place(x, y),
    };
    let ground = Level {
        from: if bank.is_some() {
            below(0.0, 0.0).from
        } else {
            first
        },
        ..place(0.0, cut.ground(side))
    };
    let top = place(cut.board_end(side), cut.top());
    let step = |low, high, length: Length, word: &str| Step {
        low,
        high,
        figure: shown(cut.course, length),
        word: word.to_owned(),
    };
    let mut steps = Vec::new();
    if let Some((edge, deep)) = cut.trench(side) {
        let depth = metres(cut.ground(side) - deep);
        steps.push(step(below(edge, deep), ground, depth, "footing trench"));
    }
    let rise = cut
        .row()
        .map_or(cut.plan.section.height(), |row| row.rise(side));
    steps.push(step(ground, top, rise, "ground to cope"));
    if 0.0 < cut.cope() && side != figured_below {
        let half = outwards(side) * cut.plan.section.top_width().si() / 2.0;
        let high = place(half, cut.top() + cut.cope());
        steps.push(step(top, high, cut.course.wall.cope_height, "cope"));
    }
    let mut notes = Vec::new();
    if among && side != figured_below {
        match &bank {
            Some(bank) => notes.extend(behind(bank)),
            None => notes.push(batter_note(cut, side)),
        }
    }
    let chain = Upright {
        x,
        towards: out,
        steps,
        notes: led(sheet, x, out, notes),
    };
    chain.draw(sheet);
}

/// What stands behind a retaining wall, named on the bank's side.
fn behind(bank: &Bank<'_>) -> Vec<Led> {
    let (cut, side) = (bank.cut, bank.side);
    let (foot, level) = (cut.ground(side), bank.level());
    let share = |share: f64| foot + (level - foot) * share;
    let within =
        |(at, y): (f64, f64), figure: String, word: &str| Led::within(cut.at(at, y), figure, word);
    let (batter, word) = batter_words(cut, side);
    let back = (bank.behind(0.0, share(0.9)), share(0.9));
    let mut named = vec![within(back, batter, word)];
    if level + 1e-9 < cut.top() {
        let at = cut.at(bank.behind(0.0, level), level);
        let height = shown(cut.course, bank.height());
        named.push(Led::from(at, height, "height of bank"));
    }
    if let Some(tail) = cut.tied_stone() {
        named.push(within(tail, String::new(), "long tie stones"));
    }
    let y = share(0.45);
    named.push(within(
        (bank.in_drainage(y), y),
        String::new(),
        "drainage stone",
    ));
    let slope = bank.retaining.bank.slope_degrees;
    let (rise, earth_is) = if 0.0 < slope {
        (format!("{}°", short(slope)), "bank, rising")
    } else {
        (String::new(), "bank")
    };
    let y = share(0.3);
    named.push(within((bank.in_earth(y), y), rise, earth_is));
    let upright = if cut.timber.is_some() { "leg" } else { "bar" };
    let y = share(0.15);
    let inside = cut.face(side, y) + outwards(side) * cut.bar_width(side) / 2.0;
    let first = format!("{upright}, set first");
    named.push(within((inside, y), String::new(), &first));
    named
}
