//! The question of how many throughs and copes a wall takes.

use super::draw::Draw;
use super::scale::{Scale, rounded};
use super::stone::{stone_given, stone_of};
use super::wall::Wall;
use super::{Kind, Question};
use crate::quantity::{Length, Read, kg_per_m3};
use crate::stone::Stone;
use crate::tables::{StoneTable, Tables};

/// A wall with rows of throughs and a cope.
#[derive(Debug, Clone, Copy)]
pub(super) struct Top {
    pub(super) length: Length,
    pub(super) rows: usize,
    pub(super) spacing: Length,
    /// Of one cope.
    pub(super) thickness: Length,
}

impl Top {
    /// Throughs that do not fall just between two whole numbers. Neighbours differ in
    /// length.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let lengths: Vec<u32> = scale.either(
            (400..=950).step_by(50).collect(),
            (144..=360).step_by(12).collect(),
        );
        let length = draw.pick_unlike_neighbours(&lengths)?;
        let spacings: Vec<u32> = scale
            .either([80, 90, 100], [30, 36, 42])
            .into_iter()
            .filter(|spacing| 2 * (length % spacing) != *spacing)
            .collect();
        Some(Self {
            length: scale.marks(length),
            rows: draw.pick(&[1, 2])?,
            spacing: scale.marks(draw.pick(&spacings)?),
            thickness: scale
                .marks(draw.pick(scale.either([9, 10, 11, 12].as_slice(), [4, 5].as_slice()))?),
        })
    }

    /// A usual wall with these rows and this cope; its other measurements have no say in
    /// how many stones there are.
    fn stone(&self, scale: Scale, table: &StoneTable) -> Option<Stone> {
        let wall = Wall {
            height: scale.marks(scale.either(120, 48)),
            top: scale.marks(scale.either(40, 16)),
            one_in: 6,
        };
        let section = wall.section().ok()?;
        let mut given = wall.given().ok()?;
        given.through_rows = (1..=self.rows)
            .map(|row| wall.height * (row as f64 / (self.rows as f64 + 1.0)))
            .collect();
        given.through_spacing = self.spacing;
        given.cope_height = self.thickness;
        given.cope_thickness = self.thickness;
        let stone = stone_given(kg_per_m3(2500.0), 0.25, 0.2);
        stone_of(&given, &section, self.length, &stone, table).map(|(_, stone)| stone)
    }
}

/// A student's own.
pub(super) fn ask_throughs_and_copes(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    throughs_and_copes(Top::draw(draw, scale)?, scale, &tables.stone)
}

/// Throughs and copes, counted.
pub(super) fn throughs_and_copes(top: Top, scale: Scale, table: &StoneTable) -> Option<Question> {
    let stone = top.stone(scale, table)?;
    let in_a_row = stone.throughs.first()?.count;
    let (throughs, copes) = (stone.through_count(), stone.copes);
    let (length, spacing, thickness) = (
        scale.in_sum(top.length),
        scale.in_sum(top.spacing),
        scale.in_sum(top.thickness),
    );
    let rows = match top.rows {
        1 => "one row".to_owned(),
        rows => format!("{rows} rows"),
    };
    Some(Question {
        ask: format!(
            "A wall is {} long and has {rows} of throughs, one every {} along the row. Its \
             copes are {} thick along the wall. How many throughs does it take, a row rounded \
             to the nearest whole number, and how many copes, rounded up?",
            scale.write(top.length),
            scale.write(top.spacing),
            scale.write(top.thickness)
        ),
        working: format!(
            "Throughs in a row = length ÷ spacing, to the nearest whole number\n\
             = {length} ÷ {spacing} = {}\n\
             Throughs = rows × throughs in a row = {} × {in_a_row} = {throughs}\n\
             Copes = length ÷ thickness, rounded up\n\
             = {length} ÷ {thickness} = {}",
            rounded(top.length.si() / top.spacing.si(), in_a_row),
            top.rows,
            rounded(top.length.si() / top.thickness.si(), copes)
        ),
        answer: format!("{throughs} throughs, {copes} copes"),
        tolerance: "exact".to_owned(),
        value: throughs as f64,
        ..Question::of(Kind::ThroughsAndCopes)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };
    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    /// By hand: 7.5/0.9 = 8.33, so 8 in each of 2 rows; 7.5/0.12 = 62.5, so 63.
    #[test]
    fn throughs_to_the_nearest_and_copes_rounded_up() {
        let top = Top {
            length: METRES.marks(750),
            rows: 2,
            spacing: METRES.marks(90),
            thickness: METRES.marks(12),
        };
        let question = throughs_and_copes(top, METRES, &sample::tables().stone).expect("sound");
        assert_eq!(
            question.ask,
            "A wall is 7.50 m long and has 2 rows of throughs, one every 0.90 m along the row. \
             Its copes are 0.12 m thick along the wall. How many throughs does it take, a row \
             rounded to the nearest whole number, and how many copes, rounded up?"
        );
        assert_eq!(
            question.working,
            "Throughs in a row = length ÷ spacing, to the nearest whole number\n\
             = 7.50 m ÷ 0.90 m = 8.33, so 8\n\
             Throughs = rows × throughs in a row = 2 × 8 = 16\n\
             Copes = length ÷ thickness, rounded up\n= 7.50 m ÷ 0.12 m = 62.5, so 63"
        );
        assert_eq!(question.answer, "16 throughs, 63 copes");
        assert!((question.value - 16.0).abs() < 1e-9);
    }

    /// By hand: 20 ft is 240 in; 240/36 = 6.67, so 7 in one row; 240/4 = 60.
    #[test]
    fn throughs_and_copes_in_inches() {
        let top = Top {
            length: INCHES.marks(240),
            rows: 1,
            spacing: INCHES.marks(36),
            thickness: INCHES.marks(4),
        };
        let question = throughs_and_copes(top, INCHES, &sample::tables().stone).expect("sound");
        assert!(
            question
                .ask
                .contains("is 20 ft long and has one row of throughs")
        );
        assert_eq!(question.answer, "7 throughs, 60 copes");
    }

    #[test]
    fn no_row_falls_just_between_two_whole_numbers() {
        for scale in [METRES, INCHES] {
            for student in 0..500 {
                let mut draw = Draw::new(8, student, Kind::ThroughsAndCopes);
                let top = Top::draw(&mut draw, scale).expect("lists are not empty");
                let exact = top.length.si() / top.spacing.si();
                assert!(0.01 < (exact.fract() - 0.5).abs(), "{top:?}");
            }
        }
    }
}
