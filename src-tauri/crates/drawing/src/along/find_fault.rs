//! A face with faults, drawn stone by stone under squares, for a student to find them.

use crate::paper::fitting::fitted;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet};
use craft::quantity::{Length, Read};
use craft::stonework::{self, Role};
use craft::worksheet::{FaultWall, Grid};

/// A face lower than this on paper has stones too small to look over.
const LEAST_HEIGHT_MM: f64 = 25.0;
/// From the face to the letters and numbers of its squares.
const LETTER_MM: f64 = 2.0;
/// How far the ground is drawn past the face.
const PAST_MM: f64 = 5.0;
/// A ring stands clear of what it is round.
const CLEAR_MM: f64 = 2.0;
/// The least radius of a ring, which holds a missing through.
const RING_M: f64 = 0.2;

/// The face under its squares. `found`: with a ring round each fault, for the instructor's key.
pub fn find_the_fault(wall: &FaultWall, room: Room, found: bool) -> Scene {
    let (scale, sheet, room) = fitted(
        room,
        |scale| LEAST_HEIGHT_MM < scale.mm(wall.height),
        |scale, _| face(wall, scale, found),
    );
    let heading = Heading {
        name: "find-the-fault",
        title: "A wall with faults to be found".to_owned(),
        description: description(wall, scale, found),
    };
    sheet.into_scene(heading, scale, room)
}

fn face(wall: &FaultWall, scale: Scale, found: bool) -> Sheet {
    let mut sheet = Sheet::default();
    for stone in wall.stones.iter().filter(|it| it.role != Role::Through) {
        draw(&mut sheet, Pen::Stone, stone, scale);
    }
    for stone in wall.stones.iter().filter(|it| it.role == Role::Through) {
        draw(&mut sheet, Pen::Through, stone, scale);
    }
    let (right, top) = (scale.mm(wall.length), -scale.mm(wall.height));
    sheet.line(
        Pen::Ground,
        Point::new(-PAST_MM, 0.0),
        Point::new(right + PAST_MM, 0.0),
    );
    squares(&mut sheet, &wall.grid, scale, right, top);
    if found {
        for fault in &wall.faults {
            let radius = scale.mm(fault.size).min(scale.mm(wall.grid.height)) / 2.0;
            let least = RING_M * scale.mm_per_m();
            sheet.circle(
                Pen::Outline,
                on_paper(fault.at, scale),
                radius.max(least) + CLEAR_MM,
            );
        }
    }
    sheet
}

fn draw(sheet: &mut Sheet, pen: Pen, stone: &stonework::Stone, scale: Scale) {
    let corners = stone.outline.iter().map(|at| on_paper(*at, scale));
    sheet.polygon(pen, corners.collect());
}

/// Dotted lines, which no one takes for joints, with letters below and numbers on the left.
fn squares(sheet: &mut Sheet, grid: &Grid, scale: Scale, right: f64, top: f64) {
    let (wide, high) = (scale.mm(grid.width), scale.mm(grid.height));
    for column in 0..grid.columns {
        let x = wide * column as f64;
        if 0 < column {
            sheet.line(Pen::Later, Point::new(x, 0.0), Point::new(x, top));
        }
        let below = Point::new(x + wide / 2.0, LETTER_MM + FIGURE_MM);
        sheet.figure(below, &Grid::letter(column).to_string(), Anchor::Middle);
    }
    for row in 0..grid.rows {
        let y = -high * row as f64;
        if 0 < row {
            sheet.line(Pen::Later, Point::new(0.0, y), Point::new(right, y));
        }
        let middle = y - high / 2.0 + 0.34 * FIGURE_MM;
        let beside = Point::new(-LETTER_MM - 1.0, middle);
        sheet.figure(beside, &(row + 1).to_string(), Anchor::End);
    }
}

fn on_paper(at: stonework::Point, scale: Scale) -> Point {
    let mm = |length: Length| length.si() * scale.mm_per_m();
    Point::new(mm(at.x), -mm(at.y))
}

/// What faults there are is the answer, so that only the key tells it.
fn description(wall: &FaultWall, scale: Scale, found: bool) -> String {
    let last = Grid::letter(wall.grid.columns.saturating_sub(1));
    let rings = if found {
        let squares: Vec<String> = wall
            .faults
            .iter()
            .map(|fault| wall.grid.square(fault.at))
            .collect();
        format!(" Rings stand round its faults, in {}.", squares.join(", "))
    } else {
        " To find its faults the drawing has to be seen.".to_owned()
    };
    format!(
        "Face of a dry stone wall at 1:{}, stone by stone, under squares lettered A to {last} along \
         and numbered 1 to {} up from the ground.{rings}",
        scale.n(),
        wall.grid.rows
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use crate::overlap::{faults, words};
    use crate::paper::scene::Mark;
    use craft::worksheet::{Level, fault_wall};

    const ROOM: Room = Room {
        width_mm: 170.0,
        height_mm: 80.0,
    };

    fn of(student: usize) -> FaultWall {
        fault_wall(fixture::weekend().seed, Level::Usual, student).expect("a wall")
    }

    fn wall() -> FaultWall {
        of(2)
    }

    #[test]
    fn every_stone_is_drawn_and_every_square_named() {
        let wall = wall();
        let scene = find_the_fault(&wall, ROOM, false);
        let polygon = |mark: &&Mark| matches!(mark, Mark::Polygon { .. });
        let stones = scene.marks.iter().filter(polygon).count();
        assert_eq!(stones, wall.stones.len());
        assert_eq!(words(&scene), ["A", "B", "C", "D", "E", "1", "2", "3"]);
        assert!(scene.width_mm <= ROOM.width_mm && scene.height_mm <= ROOM.height_mm);
    }

    #[test]
    fn no_letter_stands_on_a_line() {
        for student in 0..12 {
            let wall = of(student);
            for width_mm in [180.0, 100.0] {
                let room = Room { width_mm, ..ROOM };
                let scene = find_the_fault(&wall, room, true);
                assert_eq!(faults(&scene), Vec::<String>::new());
            }
        }
    }

    #[test]
    fn only_the_key_rings_and_tells_the_faults() {
        let wall = wall();
        let rings = |scene: &Scene| {
            let round = |mark: &&Mark| matches!(mark, Mark::Circle { .. });
            scene.marks.iter().filter(round).count()
        };
        let (asked, key) = (
            find_the_fault(&wall, ROOM, false),
            find_the_fault(&wall, ROOM, true),
        );
        assert_eq!((rings(&asked), rings(&key)), (0, wall.faults.len()));
        let square = wall.grid.square(wall.faults[0].at);
        assert!(key.description.contains(&square));
        assert!(!asked.description.contains(&square));
    }
}
