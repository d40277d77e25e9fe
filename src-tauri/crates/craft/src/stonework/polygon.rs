//! Plane geometry of outlines, in metres: area, boxes, slices and cuts.

/// A corner: along and up.
pub(super) type P = [f64; 2];

/// Twice the signed area of a triangle: more than zero where c lies left of a to b.
pub(super) fn turn(a: P, b: P, c: P) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// The area of an outline whose corners run anticlockwise.
pub(super) fn area(corners: &[P]) -> f64 {
    edges(corners)
        .map(|(a, b)| a[0] * b[1] - b[0] * a[1])
        .sum::<f64>()
        / 2.0
}

/// The edges in order.
pub(super) fn edges(corners: &[P]) -> impl Iterator<Item = (P, P)> + '_ {
    corners
        .iter()
        .copied()
        .zip(corners.iter().copied().cycle().skip(1))
}

/// The box round an outline: left, low, right, high.
pub(super) fn bounds(corners: &[P]) -> [f64; 4] {
    corners.iter().fold(
        [
            f64::INFINITY,
            f64::INFINITY,
            f64::NEG_INFINITY,
            f64::NEG_INFINITY,
        ],
        |[l, b, r, t], p| [l.min(p[0]), b.min(p[1]), r.max(p[0]), t.max(p[1])],
    )
}

/// Where a level line enters the outline and where it leaves it for the last time.
pub(super) fn slice(corners: &[P], y: f64) -> Option<[f64; 2]> {
    let mut found: Option<[f64; 2]> = None;
    for (a, b) in edges(corners) {
        if (a[1] <= y) != (b[1] <= y) {
            let x = a[0] + (b[0] - a[0]) * ((y - a[1]) / (b[1] - a[1]));
            found = Some(found.map_or([x, x], |[l, r]| [l.min(x), r.max(x)]));
        }
    }
    found
}

/// Whether the point lies inside.
pub(super) fn holds(corners: &[P], p: P) -> bool {
    edges(corners)
        .filter(|(a, b)| {
            (a[1] <= p[1]) != (b[1] <= p[1])
                && p[0] < a[0] + (b[0] - a[0]) * ((p[1] - a[1]) / (b[1] - a[1]))
        })
        .count()
        % 2
        == 1
}

/// The part of a convex outline on the left of the line from a to b.
pub(super) fn left_of(corners: &[P], a: P, b: P) -> Vec<P> {
    let mut kept = Vec::with_capacity(corners.len() + 1);
    for (from, to) in edges(corners) {
        let (f, t) = (turn(a, b, from), turn(a, b, to));
        if 0.0 <= f {
            kept.push(from);
        }
        if (0.0 <= f) != (0.0 <= t) {
            let part = f / (f - t);
            kept.push([
                from[0] + (to[0] - from[0]) * part,
                from[1] + (to[1] - from[1]) * part,
            ]);
        }
    }
    kept
}

/// A line that stands nearly upright: where it is at a level, and how it leans.
#[derive(Debug, Clone, Copy)]
pub(super) struct Upright {
    /// Where it is at `y`.
    pub(super) x: f64,
    /// The level of `x`.
    pub(super) y: f64,
    /// Along for each unit up.
    pub(super) lean: f64,
}

impl Upright {
    /// Straight up.
    pub(super) fn plumb(x: f64) -> Self {
        Self {
            x,
            y: 0.0,
            lean: 0.0,
        }
    }

    /// Where it is at this level.
    pub(super) fn at(self, y: f64) -> f64 {
        self.x + self.lean * (y - self.y)
    }
}

/// The convex outline round points, anticlockwise.
pub(super) fn hull(points: &[P]) -> Vec<P> {
    let mut sorted = points.to_vec();
    sorted.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    let mut hull: Vec<P> = Vec::with_capacity(sorted.len() + 1);
    let mut half = |points: &mut dyn Iterator<Item = P>| {
        let start = hull.len();
        for p in points {
            while start + 2 <= hull.len()
                && turn(hull[hull.len() - 2], hull[hull.len() - 1], p) <= 0.0
            {
                hull.pop();
            }
            hull.push(p);
        }
        hull.pop();
    };
    half(&mut sorted.iter().copied());
    half(&mut sorted.iter().rev().copied());
    hull
}

/// A convex outline drawn in by so much all round; nothing where that leaves nothing.
pub(super) fn drawn_in(corners: &[P], by: f64) -> Vec<P> {
    let mut left = corners.to_vec();
    for (a, b) in edges(corners) {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let long = (dx * dx + dy * dy).sqrt();
        if long < 1e-9 {
            continue;
        }
        let shift = [-dy / long * by, dx / long * by];
        left = left_of(
            &left,
            [a[0] + shift[0], a[1] + shift[1]],
            [b[0] + shift[0], b[1] + shift[1]],
        );
    }
    left
}

/// The middle of the corners.
pub(super) fn middle(corners: &[P]) -> P {
    let count = corners.len().max(1) as f64;
    let sum = corners
        .iter()
        .fold([0.0, 0.0], |sum, p| [sum[0] + p[0], sum[1] + p[1]]);
    [sum[0] / count, sum[1] / count]
}
