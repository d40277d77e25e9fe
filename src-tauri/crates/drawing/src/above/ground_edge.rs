//! Where a face meets the ground, all along the wall.

use crate::paper::strewn::steps;
use craft::quantity::{Length, metres};
use craft::wall::{Across, Line, Place, Side, Wall};

/// An edge beside the centre line: station and offset in order. Between two of them the
/// offset changes evenly; where the top steps the same station stands twice.
pub(crate) type Edge = Vec<(Length, Length)>;

/// A face at the ground: `T/2 + (Z - g)/n`, as the frames are set.
pub(crate) fn face(wall: &Wall, side: Side) -> Edge {
    let mut edge: Edge = Vec::new();
    for piece in wall.pieces() {
        for (station, top) in [(piece.from, piece.top[0]), (piece.to, piece.top[1])] {
            let rise = top - wall.ground.level(Across::Face(side), station);
            let corner = (station, wall.section.offset(side, rise));
            if edge.last() != Some(&corner) {
                edge.push(corner);
            }
        }
    }
    edge
}

/// The same edge farther out.
pub(crate) fn beyond(edge: &[(Length, Length)], by: Length) -> Edge {
    let out = |(station, offset): &(Length, Length)| (*station, *offset + by);
    edge.iter().map(out).collect()
}

/// The centre line itself.
pub(crate) fn centre(line: &Line) -> Edge {
    let none = metres(0.0);
    let ends = line.spans().map(|(_, to, _)| (to, none));
    std::iter::once((none, none)).chain(ends).collect()
}

/// An edge as corners on the ground, an arc in straight pieces that turn no more than so
/// many radians.
pub(crate) fn corners(line: &Line, side: Side, edge: &[(Length, Length)], turn: f64) -> Vec<Place> {
    let place = |station, offset| line.place(station).beside(side, offset);
    let mut corners = Vec::new();
    for pair in edge.windows(2) {
        let ((from, near), (to, far)) = (pair[0], pair[1]);
        let turned = (line.place(to).heading - line.place(from).heading).abs();
        let pieces = (turned / turn).ceil().max(1.0);
        corners.extend(steps(pieces).map(|step| {
            let share = step / pieces;
            place(from + (to - from) * share, near + (far - near) * share)
        }));
    }
    corners.extend(
        edge.last()
            .map(|(station, offset)| place(*station, *offset)),
    );
    corners
}

/// The part of an edge from one station to another.
pub(crate) fn part(edge: &[(Length, Length)], from: Length, to: Length) -> Edge {
    let mut part: Edge = Vec::new();
    for pair in edge.windows(2) {
        let ((begins, near), (ends, far)) = (pair[0], pair[1]);
        if ends < from || to < begins {
            continue;
        }
        for station in [begins, ends] {
            let station = if station < from { from } else { station };
            let station = if to < station { to } else { station };
            let offset = if begins == ends || station == ends {
                far
            } else {
                near + (far - near) * ((station - begins) / (ends - begins))
            };
            let offset = if station == begins { near } else { offset };
            if part.last() != Some(&(station, offset)) {
                part.push((station, offset));
            }
        }
    }
    part
}

/// The offset of an edge at a station; where it jumps, the larger.
pub(crate) fn offset_at(edge: &[(Length, Length)], station: Length) -> Option<Length> {
    let mut found: Option<Length> = None;
    for pair in edge.windows(2) {
        let ((from, near), (to, far)) = (pair[0], pair[1]);
        if station < from || to < station || from == to {
            continue;
        }
        let here = near + (far - near) * ((station - from) / (to - from));
        if found.is_none_or(|most| most < here) {
            found = Some(here);
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use craft::quantity::Read;

    /// Two roads to one answer: the edge and the frames' own offsets.
    #[test]
    fn edges_pass_the_marks_of_every_frame() {
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            for side in Side::BOTH {
                let edge = face(&plan.wall, side);
                for row in &plan.frames.rows {
                    let here = offset_at(&edge, row.station).expect("on the line");
                    let off = (here - row.offset(side)).si().abs();
                    assert!(off < 1e-6, "{name}, {side:?}, {:?}: {off}", row.station);
                }
            }
        }
    }

    /// By hand: from 0.2 m at station 0 to 0.4 m at 4 m, then 0.1 m on to 6 m: at 1 m it is
    /// 0.25 m, and where it jumps both offsets stay.
    #[test]
    fn a_part_begins_and_ends_where_it_is_cut() {
        let edge: Edge = [(0.0, 0.2), (4.0, 0.4), (4.0, 0.1), (6.0, 0.1)]
            .map(|(station, offset)| (metres(station), metres(offset)))
            .to_vec();
        let cut: Vec<(f64, f64)> = part(&edge, metres(1.0), metres(5.0))
            .into_iter()
            .map(|(station, offset)| (station.si(), (offset.si() * 1e9).round() / 1e9))
            .collect();
        assert_eq!(cut, [(1.0, 0.25), (4.0, 0.4), (4.0, 0.1), (5.0, 0.1)]);
        assert_eq!(offset_at(&edge, metres(4.0)), Some(metres(0.4)));
    }
}
