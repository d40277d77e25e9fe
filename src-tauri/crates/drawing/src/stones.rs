//! Stones hinted at: rough outlines that look laid by hand and come out the same every time.
//!
//! They are no stone-by-stone plan of the wall; only sizes that the course gives are to
//! scale (throughs, copes, the trench). All lengths here are metres of wall.

use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::Read;

/// A corner in metres: to the right and up.
pub(crate) type Corner = (f64, f64);

/// Height of a course at the ground and at the top (common practice, no source: large
/// stones low, small ones high).
const COURSE_LOW_M: f64 = 0.2;
const COURSE_HIGH_M: f64 = 0.12;

/// One course of the body, from its bed up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bed {
    /// Above the ground.
    pub(crate) from: f64,
    /// Above the ground.
    pub(crate) to: f64,
    /// The row of throughs that lies on this bed, counted in the plan.
    pub(crate) throughs: Option<usize>,
}

/// The courses of the body from the ground to the top, with a bed at every through row.
pub(crate) fn beds(plan: &Plan, course: &Course) -> Vec<Bed> {
    let top = plan.section.height().si();
    let thickness = course.wall.through.thickness.si();
    let mut rows: Vec<(f64, usize)> = plan
        .stone
        .throughs
        .iter()
        .enumerate()
        .map(|(at, row)| (row.height.si(), at))
        .collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut beds = Vec::new();
    let mut from = 0.0;
    for (at, (row, which)) in rows.iter().enumerate() {
        beds.extend(plain_courses(from, *row, top));
        let next = rows.get(at + 1).map_or(top, |(next, _)| *next);
        let to = (row + thickness).min(next).min(top);
        beds.push(Bed {
            from: *row,
            to,
            throughs: Some(*which),
        });
        from = to;
    }
    beds.extend(plain_courses(from, top, top));
    beds
}

/// Courses that fill a lift, each a little lower than the one below.
fn plain_courses(from: f64, to: f64, top: f64) -> Vec<Bed> {
    let lift = to - from;
    if lift < 0.02 {
        return Vec::new();
    }
    let share = ((from + to) / 2.0 / top).clamp(0.0, 1.0);
    let about = COURSE_LOW_M + (COURSE_HIGH_M - COURSE_LOW_M) * share;
    // At most a few dozen: a hint does not need more, however tall the wall.
    let count = (lift / about).round().clamp(1.0, 40.0);
    let weight = |at: f64| 1.15 - 0.3 * (at + 0.5) / count;
    let all: f64 = steps(count).map(weight).sum();
    let mut bed = from;
    steps(count)
        .map(|at| {
            let from = bed;
            bed += lift * weight(at) / all;
            Bed {
                from,
                to: bed,
                throughs: None,
            }
        })
        .collect()
}

/// 0, 1, 2 ... below `count`, as numbers to reckon with.
pub(crate) fn steps(count: f64) -> impl Iterator<Item = f64> {
    (0_u32..)
        .map(f64::from)
        .take_while(move |step| *step < count)
}

/// A number from 0 to 1 that looks like chance and depends on the key alone (the mixing
/// steps of SplitMix64, Steele, Lea and Flood, "Fast Splittable Pseudorandom Number
/// Generators", 2014, from memory).
pub(crate) fn chance(key: u64) -> f64 {
    let mut z = key.wrapping_add(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^= z >> 31;
    // 53 bits are what a float holds exactly.
    (z >> 11) as f64 / (1_u64 << 53) as f64
}

/// A stone in a four-cornered place: its corners knocked off, a joint left all round.
///
/// The corners go round the place in either direction.
pub(crate) fn rough(place: [Corner; 4], joint: f64, key: u64) -> Vec<Corner> {
    let middle = (
        place.iter().map(|corner| corner.0).sum::<f64>() / 4.0,
        place.iter().map(|corner| corner.1).sum::<f64>() / 4.0,
    );
    let inner = place.map(|corner| towards(corner, middle, joint));
    let mut outline = Vec::with_capacity(12);
    for (at, &corner) in inner.iter().enumerate() {
        let before = inner[(at + 3) % 4];
        let after = inner[(at + 1) % 4];
        let dice = |salt: u64| chance(key.wrapping_mul(31).wrapping_add(salt));
        let salt = 3 * at as u64;
        let short = distance(corner, before).min(distance(corner, after));
        let cut = |salt: u64| (0.05 + 0.13 * dice(salt)) * short;
        outline.push(towards(corner, before, cut(salt)));
        outline.push(towards(corner, after, cut(salt + 1)));
        // No edge is quite straight: its middle gives a little.
        let share = 0.35 + 0.3 * dice(salt + 2);
        let on_edge = (
            corner.0 + (after.0 - corner.0) * share,
            corner.1 + (after.1 - corner.1) * share,
        );
        outline.push(towards(on_edge, middle, 0.03 * dice(salt + 7) * short));
    }
    outline
}

/// From `from` so far towards `to`, but never past a third of the way.
fn towards(from: Corner, to: Corner, by: f64) -> Corner {
    let far = distance(from, to);
    if far <= 0.0 {
        return from;
    }
    let share = (by / far).min(1.0 / 3.0);
    (
        from.0 + (to.0 - from.0) * share,
        from.1 + (to.1 - from.1) * share,
    )
}

fn distance(a: Corner, b: Corner) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;

    #[test]
    fn courses_fill_the_wall_and_throughs_lie_on_their_rows() {
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            let beds = beds(&plan, &course);
            let mut from = 0.0;
            for bed in &beds {
                assert!((bed.from - from).abs() < 0.021, "{name}: {bed:?}");
                assert!(bed.from < bed.to, "{name}: {bed:?}");
                from = bed.to;
            }
            let top = plan.section.height().si();
            assert!((from - top).abs() < 0.021, "{name}: {from} {top}");
            let rows = beds.iter().filter(|bed| bed.throughs.is_some()).count();
            assert_eq!(rows, plan.stone.throughs.len(), "{name}");
        }
    }

    #[test]
    fn a_stone_keeps_within_its_place() {
        for key in 0..50 {
            let place = [(0.0, 0.0), (0.4, 0.0), (0.38, 0.2), (0.02, 0.2)];
            for (x, y) in rough(place, 0.005, key) {
                assert!((0.0..=0.4).contains(&x) && (0.0..=0.2).contains(&y));
            }
        }
    }

    #[test]
    fn chance_is_the_same_every_time_and_spread_evenly() {
        assert!((chance(7) - chance(7)).abs() < f64::EPSILON);
        let mean = (0..1000).map(chance).sum::<f64>() / 1000.0;
        assert!((mean - 0.5).abs() < 0.05, "{mean}");
    }
}
