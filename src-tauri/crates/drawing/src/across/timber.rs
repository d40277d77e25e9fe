//! A nailed timber frame seen along the wall: where each piece of batten lies.

use crate::across::cut::{Cut, outwards};
use crate::paper::pen::Pen;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::Corner;
use craft::plan::Plan;
use craft::quantity::{Length, Read};
use craft::timber::{Part, Piece, Timber, TimberPlan};
use craft::wall::Side;

/// The dot that stands for a nail.
const NAIL_MM: f64 = 0.45;

/// The pieces of one frame.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TimberFrame<'a> {
    pub(crate) timber: &'a Timber,
    pieces: &'a [Piece],
}

impl<'a> TimberFrame<'a> {
    /// The frame at station 0, where frames are of timber.
    pub(crate) fn first(plan: &'a Plan) -> Option<Self> {
        let TimberPlan { timber, frames, .. } = plan.timber.as_ref()?;
        let pieces = frames.first()?;
        Some(Self { timber, pieces })
    }

    pub(crate) fn piece(&self, part: Part) -> Option<&'a Piece> {
        self.pieces.iter().find(|piece| piece.part == part)
    }

    /// Of the batten, in the plane of the frame.
    pub(crate) fn width(&self) -> f64 {
        self.timber.width.si()
    }

    pub(crate) fn overhang(&self) -> f64 {
        self.timber.overhang.si()
    }

    /// Level of the underside of the lower rail, if there is one: so far above the higher
    /// ground.
    pub(crate) fn lower_rail(&self, cut: &Cut<'_>) -> Option<f64> {
        self.piece(Part::LowerRail)?;
        let higher = cut.ground(Side::Left).max(cut.ground(Side::Right));
        Some(higher + self.timber.lower_rail.si())
    }

    /// A leg from its foot to its top end, both sawn level; its inner edge is the face.
    pub(crate) fn leg(&self, cut: &Cut<'_>, side: Side) -> [Corner; 4] {
        let slope = cut.plan.section.batter(side).slope_factor();
        let up = |along: Length| along.si() / slope;
        let foot = cut.ground(side) - up(self.timber.below_ground);
        let head = cut.top() + up(self.timber.projection);
        let thick = outwards(side) * self.width() * slope;
        let (low, high) = (cut.face(side, foot), cut.face(side, head));
        [
            (low, foot),
            (high, head),
            (high + thick, head),
            (low + thick, foot),
        ]
    }

    /// The outer edge of a leg at a level.
    fn outer(&self, cut: &Cut<'_>, side: Side, y: f64) -> f64 {
        let slope = cut.plan.section.batter(side).slope_factor();
        cut.face(side, y) + outwards(side) * self.width() * slope
    }

    /// A rail whose underside lies at a level.
    pub(crate) fn rail(&self, cut: &Cut<'_>, y: f64) -> [Corner; 4] {
        let end = |side| self.outer(cut, side, y) + outwards(side) * self.overhang();
        let (left, right, up) = (end(Side::Left), end(Side::Right), y + self.width());
        [(left, y), (left, up), (right, up), (right, y)]
    }

    /// The brace: along its middle line from low on the left to high on the right, sawn along
    /// the legs' outer edges.
    pub(crate) fn brace(&self, cut: &Cut<'_>) -> Option<[Corner; 4]> {
        let half = self.width() / 2.0;
        let (low, high) = (self.lower_rail(cut)? + half, cut.top() + half);
        let foot = (self.outer(cut, Side::Left, low), low);
        let head = (self.outer(cut, Side::Right, high), high);
        let along = (head.0 - foot.0, head.1 - foot.1);
        let long = along.0.hypot(along.1);
        let square = (-along.1 / long * half, along.0 / long * half);
        // Where a line beside the middle one, so far off, meets a leg's outer edge: that edge
        // leans `lean` towards the middle for each unit of rise.
        let end = |(x, y): Corner, off: f64, side: Side| {
            let lean = -outwards(side) * cut.plan.section.batter(side).lean();
            let start = (x + off * square.0, y + off * square.1);
            let gap = start.0 - x - lean * (start.1 - y);
            let t = -gap / (along.0 - lean * along.1);
            (start.0 + t * along.0, start.1 + t * along.1)
        };
        Some([
            end(foot, 1.0, Side::Left),
            end(head, 1.0, Side::Right),
            end(head, -1.0, Side::Right),
            end(foot, -1.0, Side::Left),
        ])
    }

    /// The legs, which stand along the faces.
    pub(crate) fn legs(&self, cut: &Cut<'_>, sheet: &mut Sheet) {
        for side in Side::BOTH {
            cut.shape(sheet, Pen::Bar, &self.leg(cut, side));
        }
    }

    /// What runs across the wall and is built round: dashed.
    pub(crate) fn within(&self, cut: &Cut<'_>, sheet: &mut Sheet) {
        if let Some(y) = self.lower_rail(cut) {
            cut.shape(sheet, Pen::HiddenBar, &self.rail(cut, y));
        }
        if let Some(brace) = self.brace(cut) {
            cut.shape(sheet, Pen::HiddenBar, &brace);
        }
    }

    /// The whole frame on its own, with its nails.
    pub(crate) fn alone(&self, cut: &Cut<'_>, sheet: &mut Sheet) {
        self.legs(cut, sheet);
        let rails = [self.lower_rail(cut), Some(cut.top())];
        for y in rails.into_iter().flatten() {
            cut.shape(sheet, Pen::Bar, &self.rail(cut, y));
        }
        if let Some(brace) = self.brace(cut) {
            cut.shape(sheet, Pen::Bar, &brace);
        }
        self.nails(cut, sheet, &rails);
    }

    /// Two nails where a rail crosses a leg, set slantwise so that the batten does not split.
    fn nails(&self, cut: &Cut<'_>, sheet: &mut Sheet, rails: &[Option<f64>]) {
        for y in rails.iter().flatten() {
            for side in Side::BOTH {
                for (up, across) in [(0.3, 0.35), (0.7, 0.65)] {
                    let y = y + up * self.width();
                    let (inner, outer) = (cut.face(side, y), self.outer(cut, side, y));
                    let x = inner + (outer - inner) * across;
                    sheet.circle(Pen::Solid, cut.at(x, y), NAIL_MM);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use crate::paper::scale::Scale;
    use craft::course::FrameKind;

    fn long((a, b): (Corner, Corner)) -> f64 {
        (a.0 - b.0).hypot(a.1 - b.1)
    }

    /// Two roads to one answer: the corners that are drawn, measured, against the cut list.
    #[test]
    fn what_is_drawn_is_as_long_as_the_cut_list_says() {
        for (name, mut course) in fixture::courses() {
            course.frames.kind = FrameKind::Timber;
            let plan = fixture::plan(&course);
            let cut = Cut::new(&plan, &course, Scale::SMALLEST);
            let frame = cut.timber.as_ref().expect("of timber");
            let listed = |part| frame.piece(part).map(|piece| piece.length.si());
            let legs = Side::BOTH.map(|side| frame.leg(&cut, side));
            let top = frame.rail(&cut, cut.top());
            let mut drawn = vec![
                (Part::LeftLeg, long((legs[0][0], legs[0][1]))),
                (Part::RightLeg, long((legs[1][2], legs[1][3]))),
                (Part::TopRail, long((top[0], top[3]))),
            ];
            if let (Some(y), Some(brace)) = (frame.lower_rail(&cut), frame.brace(&cut)) {
                let rail = frame.rail(&cut, y);
                drawn.push((Part::LowerRail, long((rail[0], rail[3]))));
                let edges = [(brace[0], brace[1]), (brace[2], brace[3])].map(long);
                drawn.push((Part::Brace, edges[0].max(edges[1])));
            }
            for (part, drawn) in drawn {
                let listed = listed(part).expect("it is drawn");
                assert!(
                    (drawn - listed).abs() < 1e-9,
                    "{name}: {part:?} {drawn} {listed}"
                );
            }
        }
    }
}
