//! What a tape reads from frame to frame: between marks on one side, and from corner to corner.

use crate::above::line_words::same;
use crate::paper::words::{self, shown};
use craft::course::Course;
use craft::frames::Bay;
use craft::plan::Plan;
use craft::quantity::Length;

/// Which measurements differ along the wall, so that each has to be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Taped {
    pub(crate) frames_alike: bool,
    /// A tape along either side reads the bay's own length everywhere.
    pub(crate) sides_as_the_bay: bool,
    /// What a tape along the sides reads is the same in all bays.
    pub(crate) sides_alike: bool,
    /// Both diagonals of every bay are equal.
    pub(crate) square: bool,
    /// The diagonals are the same in all bays.
    pub(crate) diagonals_alike: bool,
}

impl Taped {
    pub(crate) fn of(plan: &Plan) -> Self {
        let bays = &plan.frames.bays;
        let alike = |of: &dyn Fn(&Bay) -> [Length; 2]| {
            bays.windows(2)
                .all(|pair| both_same(of(&pair[0]), of(&pair[1])))
        };
        let rows = plan.frames.rows.windows(2);
        Self {
            frames_alike: rows.clone().all(|pair| {
                same(pair[0].left_offset, pair[1].left_offset)
                    && same(pair[0].right_offset, pair[1].right_offset)
            }),
            sides_as_the_bay: bays.iter().all(|bay| both_same(bay.taped, [bay.length; 2])),
            sides_alike: alike(&|bay| bay.taped),
            square: bays
                .iter()
                .all(|bay| same(bay.diagonals[0], bay.diagonals[1])),
            diagonals_alike: alike(&|bay| bay.diagonals),
        }
    }

    /// What is the same in every bay, where a tape along the sides does not read its length.
    pub(crate) fn alike_in_words(self, plan: &Plan, course: &Course) -> Option<String> {
        let bay = plan.frames.bays.first()?;
        let [left, right] = bay.taped.map(|taped| shown(course, taped));
        (self.sides_alike && !self.sides_as_the_bay).then(|| {
            format!(
                "Taped straight, every bay measures {left} between its left marks and {right} \
                 between its right ones."
            )
        })
    }

    /// Everything taped, in sentences.
    pub(crate) fn in_words(self, plan: &Plan, course: &Course) -> Vec<String> {
        let bays = &plan.frames.bays;
        let each = |of: &dyn Fn(&Bay) -> Length| {
            let figures: Vec<String> = bays.iter().map(|bay| shown(course, of(bay))).collect();
            words::list(&figures)
        };
        let mut said: Vec<String> = self.alike_in_words(plan, course).into_iter().collect();
        if !self.sides_alike && !self.sides_as_the_bay {
            said.push(format!(
                "Taped straight from frame to frame, the left marks stand {} apart; the right \
                 marks {}.",
                each(&|bay| bay.taped[0]),
                each(&|bay| bay.taped[1])
            ));
        }
        let first = each(&|bay| bay.diagonals[0]);
        said.push(match bays.first() {
            Some(bay) if self.square && self.diagonals_alike => format!(
                "Every bay is square when both its diagonals measure {}.",
                shown(course, bay.diagonals[0])
            ),
            _ if self.square => format!("Both diagonals of each bay in turn: {first}."),
            _ => format!(
                "Diagonals of each bay in turn, from its left mark to the next right one: \
                 {first}; from its right mark to the next left one: {}.",
                each(&|bay| bay.diagonals[1])
            ),
        });
        said
    }
}

fn both_same(a: [Length; 2], b: [Length; 2]) -> bool {
    same(a[0], b[0]) && same(a[1], b[1])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use craft::quantity::metres;

    /// By hand, on a straight of level ground with bays of 3 m and a base of 0.41 + 2 · 1.07/6
    /// = 0.76667 m: sqrt(3² + 0.76667²) = 3.0964 m; bays of 2 m and of 2.55 m: 2.1419 m and
    /// 2.6628 m.
    #[test]
    fn level_and_straight_walls_need_few_words() {
        let mut course = fixture::weekend();
        let plan = fixture::plan(&course);
        let taped = Taped::of(&plan);
        assert!(taped.sides_as_the_bay && taped.frames_alike && taped.square);
        assert_eq!(
            taped.in_words(&plan, &course),
            ["Every bay is square when both its diagonals measure 3.096 m."]
        );
        course.wall.line = vec![fixture::lie::straight(4.0), fixture::lie::straight(5.1)];
        course.wall.length = Some(metres(9.1));
        let plan = fixture::plan(&course);
        let taped = Taped::of(&plan);
        assert!(taped.square && !taped.diagonals_alike);
        assert_eq!(
            taped.in_words(&plan, &course),
            ["Both diagonals of each bay in turn: 2.142 m, 2.142 m, 2.663 m and 2.663 m."]
        );
    }

    #[test]
    fn a_ring_is_taped_alike_all_round() {
        let courses = fixture::lie::courses();
        let (_, ring) = courses
            .iter()
            .find(|(name, _)| *name == "a ring")
            .expect("there");
        let plan = fixture::plan(ring);
        let taped = Taped::of(&plan);
        assert!(taped.sides_alike && !taped.sides_as_the_bay && taped.diagonals_alike);
        // By hand: eleven bays of 360 / 11 degrees; the left face lies outside on a radius of
        // 2.5 + 0.38333: 2 · 2.88333 · sin(16.3636°) = 1.6246 m; inside 2 · 2.11667 · the same
        // = 1.1927 m.
        assert_eq!(
            taped.alike_in_words(&plan, ring).expect("said"),
            "Taped straight, every bay measures 1.625 m between its left marks and 1.193 m \
             between its right ones."
        );
    }
}
