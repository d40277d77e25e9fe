//! Hearting: small angular pieces set tight between the two faces.

use super::crossing::Shape;
use super::luck::Luck;
use super::polygon::{P, area, bounds, drawn_in, edges, holds, hull, left_of, middle, slice, turn};
use super::setting::stone;
use super::stone::{Role, Stone};

/// A usual piece, across and up, in metres (common practice, no source).
const PIECE_M: [f64; 2] = [0.075, 0.05];
/// Pieces are flatter than high; heights count for more when the room is shared out.
const FLAT: f64 = 1.4;
/// No piece is smaller, in square metres.
const LEAST_PIECE_M2: f64 = 0.00025;
/// No piece begins nearer to the line of a face, in metres.
const IN_FACE_M: f64 = 0.05;
/// A planted hole is cleared this far from its middle, in metres, where there is room.
const HOLE_M: f64 = 0.075;
/// Beyond this two pieces do not touch, in metres.
const NEIGHBOURS_M: f64 = 0.25;

/// The hearting of a section whose other stones are laid, with holes where asked for.
/// `packed`: middles of pieces that are set besides, in room too narrow to be left to luck.
pub(super) fn heart(
    shape: &Shape,
    stones: &[Stone],
    packed: &[P],
    hollow: &[P],
    luck: &mut Luck,
) -> Vec<Stone> {
    let laid: Vec<Vec<P>> = stones.iter().map(|one| hull(&one.corners())).collect();
    let mut seeds = seeds(shape, &laid, luck);
    let free = |seed: &&P| !laid.iter().any(|one| holds(one, **seed));
    seeds.extend(packed.iter().filter(free));
    let mut pieces: Vec<Vec<P>> = seeds
        .iter()
        .filter_map(|seed| piece(shape, *seed, &seeds, &laid, luck))
        .collect();
    for at in hollow {
        clear(&mut pieces, &laid, *at);
    }
    pieces
        .iter()
        .map(|outline| {
            let [left, _, right, _] = bounds(outline);
            stone(outline, Role::Hearting, 0, right - left)
        })
        .collect()
}

/// One point for each piece, none within a stone.
fn seeds(shape: &Shape, laid: &[Vec<P>], luck: &mut Luck) -> Vec<P> {
    let mut seeds = Vec::new();
    let mut y = 0.4 * PIECE_M[1];
    while y < shape.height {
        let [left, right] = shape.faces(y);
        let mut x = left + PIECE_M[0] * luck.unit();
        while x < right {
            let seed = [
                x + 0.4 * PIECE_M[0] * luck.bell(),
                y + 0.45 * PIECE_M[1] * luck.bell(),
            ];
            let inside = left + IN_FACE_M < seed[0] && seed[0] < right - IN_FACE_M;
            if inside
                && 0.004 < seed[1]
                && seed[1] < shape.height - 0.004
                && !laid.iter().any(|one| holds(one, seed))
            {
                seeds.push(seed);
            }
            x += PIECE_M[0];
        }
        y += PIECE_M[1];
    }
    seeds
}

/// The room nearer to this point than to any other, less what the laid stones take.
fn piece(shape: &Shape, seed: P, seeds: &[P], laid: &[Vec<P>], luck: &mut Luck) -> Option<Vec<P>> {
    let reach = 0.6 * NEIGHBOURS_M;
    let [left, right] = shape.faces(seed[1]);
    let (from, to) = ((seed[0] - reach).max(left), (seed[0] + reach).min(right));
    let (low, high) = (
        (seed[1] - reach).max(0.0),
        (seed[1] + reach).min(shape.height),
    );
    let mut room = vec![[from, low], [to, low], [to, high], [from, high]];
    for other in seeds {
        let (dx, dy) = (other[0] - seed[0], other[1] - seed[1]);
        if dx.abs() < 1e-9 && dy.abs() < 1e-9 || NEIGHBOURS_M < dx.abs().max(dy.abs()) {
            continue;
        }
        // The line of equal distance, heights counting for more; the seed is on its left.
        let halfway = [seed[0] + dx / 2.0, seed[1] + dy / 2.0];
        let along = [-dy * FLAT * FLAT, dx];
        room = left_of(
            &room,
            halfway,
            [halfway[0] + along[0], halfway[1] + along[1]],
        );
    }
    for stone in laid {
        room = keep_off(room, stone, seed);
    }
    let room = drawn_in(&room, luck.between(0.0015, 0.0035));
    (3 <= room.len() && LEAST_PIECE_M2 <= area(&room)).then_some(room)
}

/// The room cut off along that edge of a stone which leaves most of it.
fn keep_off(room: Vec<P>, stone: &[P], seed: P) -> Vec<P> {
    let (a, b) = (bounds(&room), bounds(stone));
    if a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1] {
        return room;
    }
    edges(stone)
        .filter(|(from, to)| turn(*from, *to, seed) < 0.0)
        .map(|(from, to)| left_of(&room, to, from))
        .max_by(|a, b| area(a).total_cmp(&area(b)))
        .unwrap_or_default()
}

/// Takes out the pieces round the place nearest to the one asked for where a hole shows.
fn clear(pieces: &mut Vec<Vec<P>>, laid: &[Vec<P>], at: P) {
    let apart = |p: P, q: P| {
        let (dx, dy) = (p[0] - q[0], p[1] - q[1]);
        (dx * dx + dy * dy).sqrt()
    };
    let hole = pieces
        .iter()
        .map(|piece| middle(piece))
        .filter(|p| has_room(laid, *p))
        .min_by(|a, b| apart(*a, at).total_cmp(&apart(*b, at)));
    if let Some(hole) = hole {
        pieces.retain(|piece| HOLE_M < apart(middle(piece), hole));
    }
}

/// Whether no laid stone is near on either side, above or below.
fn has_room(laid: &[Vec<P>], p: P) -> bool {
    let near = 0.6 * HOLE_M;
    laid.iter().all(|stone| {
        [-near, 0.0, near].iter().all(|up| {
            slice(stone, p[1] + up).is_none_or(|[l, r]| r < p[0] - near || p[0] + near < l)
        })
    })
}
