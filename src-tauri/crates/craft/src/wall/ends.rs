//! How a wall ends: built heads with their own batter, joined to standing wall, raked back.

use super::volume::body;
use super::{Batter, Piece, Wall};
use crate::course::End;
use crate::quantity::{Length, Read, Volume, cubic_metres, metres, whole_number};

/// One end of a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallEnd {
    /// Along the centre line.
    pub station: Length,
    /// How it ends.
    pub kind: End,
    /// Ground to the underside of the cope there.
    pub height: Length,
    /// How the end itself leans: a head's own batter, one in one where it is raked, and
    /// plumb where it joins.
    pub batter: Batter,
    /// Stones at the end, alternately long and short from the ground up at each face; only a
    /// head has them.
    pub stones: EndStones,
    /// What its lean leaves out of the body.
    pub left_out: Volume,
}

/// The stones of a head, both faces together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct EndStones {
    /// Laid with their length along the wall.
    pub long: usize,
    /// Laid across, tying into the wall.
    pub short: usize,
}

impl WallEnd {
    /// Both ends of a wall; none of a ring. `head`: the batter of each built end;
    /// `course`: the height of one end stone.
    pub fn both(wall: &Wall, kinds: [End; 2], head: [Batter; 2], course: Length) -> Vec<Self> {
        if wall.is_ring() {
            return Vec::new();
        }
        let ends = [metres(0.0), wall.length()];
        let leans = [0, 1].map(|at| lean(kinds[at], head[at]));
        [0, 1]
            .map(|at| Self {
                station: ends[at],
                kind: kinds[at],
                height: wall.height_at(ends[at]),
                batter: leans[at],
                stones: match kinds[at] {
                    End::Head => EndStones::up_to(wall.height_at(ends[at]), course),
                    End::Joined | End::Raked => EndStones::default(),
                },
                left_out: left_out(wall, at, leans),
            })
            .to_vec()
    }
}

impl EndStones {
    /// Courses of one height, a long and a short stone in turn at each face, a long one first.
    fn up_to(height: Length, course: Length) -> Self {
        let courses = whole_number((height.si() / course.si()).round()).max(1);
        Self {
            long: 2 * courses.div_ceil(2),
            short: 2 * (courses / 2),
        }
    }
}

/// A raked end steps back one along for one up (common practice, no source).
fn lean(kind: End, head: Batter) -> Batter {
    match kind {
        End::Head => head,
        End::Joined => Batter::PLUMB,
        End::Raked => Batter::ONE_IN_ONE,
    }
}

/// What the lean of one end leaves out: at a distance s from it the wall stands only `s n`
/// high, and what would be above that is missing: the body down to a depth of `h - s n`.
/// Where both ends leave out the same, each answers for its own half.
fn left_out(wall: &Wall, end: usize, leans: [Batter; 2]) -> Volume {
    let Some(n) = leans[end].n() else {
        return cubic_metres(0.0);
    };
    let length = wall.length();
    // Where the two slopes would meet: n s = n' (L - s).
    let reach = match leans[1 - end].n() {
        Some(other) => length * (other / (n + other)),
        None => length,
    };
    let missing: Vec<Piece> = wall
        .pieces()
        .iter()
        .filter_map(|piece| cut_to(piece, end, reach, length))
        .flat_map(|piece| {
            let from_end = |at: Length| if end == 0 { at } else { length - at };
            let above = Piece {
                height: [
                    piece.height[0] - from_end(piece.from) * n,
                    piece.height[1] - from_end(piece.to) * n,
                ],
                ..piece
            };
            above.broken_where(metres(0.0))
        })
        .filter(|piece| metres(0.0) < piece.height[0] || metres(0.0) < piece.height[1])
        .collect();
    body(&wall.section, &missing)
}

/// The part of a piece within `reach` of the end.
fn cut_to(piece: &Piece, end: usize, reach: Length, length: Length) -> Option<Piece> {
    let (least, most) = if end == 0 {
        (metres(0.0), reach)
    } else {
        (length - reach, length)
    };
    let from = if piece.from < least {
        least
    } else {
        piece.from
    };
    let to = if most < piece.to { most } else { piece.to };
    if to <= from {
        return None;
    }
    let at = |values: [Length; 2], station: Length| {
        values[0] + (values[1] - values[0]) * ((station - piece.from) / (piece.to - piece.from))
    };
    Some(Piece {
        from,
        to,
        top: [at(piece.top, from), at(piece.top, to)],
        height: [at(piece.height, from), at(piece.height, to)],
        bend: piece.bend,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Ground, Line, Section, Survey, Top};

    fn wall(length: f64, fall: f64) -> Wall {
        let batter = |n| Batter::one_in(n).expect("sound");
        let survey = |station: f64, level: f64| Survey {
            station: metres(station),
            level: metres(level),
            left: metres(level),
            right: metres(level),
        };
        Wall {
            section: Section::new(metres(1.2), metres(0.4), batter(6.0), batter(8.0))
                .expect("sound"),
            line: Line::straight(metres(length)),
            ground: Ground::new(vec![survey(0.0, 0.0), survey(length, -fall)]),
            top: Top::Level,
        }
    }

    /// What stands higher than both slopes allow, summed over thin upright slices.
    fn summed(wall: &Wall, n: [f64; 2]) -> f64 {
        let (slices, length) = (100_000, wall.length().si());
        let step = length / f64::from(slices);
        (0..slices)
            .map(|slice| {
                let s = (f64::from(slice) + 0.5) * step;
                let height = wall.height_at(metres(s)).si();
                let stands = (s * n[0]).min((length - s) * n[1]).min(height);
                wall.section.area_to_depth(metres(height - stands)).si() * step
            })
            .sum()
    }

    #[test]
    fn what_ends_leave_out_is_the_sum_of_its_slices() {
        let plumb = [Batter::PLUMB; 2];
        let five = Batter::one_in(5.0).expect("sound");
        for (length, fall) in [(6.0, 0.0), (6.0, 0.4), (1.5, 0.0)] {
            let wall = wall(length, fall);
            let course = metres(0.15);
            let raked = WallEnd::both(&wall, [End::Raked, End::Raked], plumb, course);
            let all = raked[0].left_out + raked[1].left_out;
            assert!(
                (all.si() - summed(&wall, [1.0, 1.0])).abs() < 1e-6,
                "{length}"
            );
            let mixed = WallEnd::both(&wall, [End::Head, End::Raked], [five; 2], course);
            let all = mixed[0].left_out + mixed[1].left_out;
            assert!(
                (all.si() - summed(&wall, [5.0, 1.0])).abs() < 1e-6,
                "{length}"
            );
        }
    }

    /// By hand: 1.2 m in courses of 0.15 m is 8 courses: 4 long and 4 short at each face.
    #[test]
    fn end_stones_alternate() {
        let both = WallEnd::both(
            &wall(6.0, 0.0),
            [End::Head, End::Joined],
            [Batter::PLUMB; 2],
            metres(0.15),
        );
        assert_eq!(both[0].stones, EndStones { long: 8, short: 8 });
        assert_eq!(both[1].stones, EndStones::default());
        assert_eq!(both[0].left_out, cubic_metres(0.0));
    }
}
