//! Throughs that stand out of both faces: how many, how long, and the copes over them.

use super::super::draw::Draw;
use super::super::scale::{Scale, rounded};
use super::super::stone::{stone_given, stone_of};
use super::super::wall::Wall;
use super::super::{Kind, Question};
use crate::quantity::{Length, Read, kg_per_m3};
use crate::tables::{StoneTable, Tables};

/// A wall with one row of throughs that stand out, and copes.
#[derive(Debug, Clone, Copy)]
struct Row {
    wall: Wall,
    length: Length,
    /// Of the row above the ground.
    height: Length,
    spacing: Length,
    /// Beyond each face.
    stands_out: Length,
    thickness: Length,
}

impl Row {
    /// Neighbours differ in batter.
    fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let wall = Wall::draw(draw, scale)?;
        let lengths: Vec<u32> = scale.either(
            (430..=930).step_by(20).collect(),
            (150..=354).step_by(6).collect(),
        );
        let length = draw.pick(&lengths)?;
        // Not so that a row falls just between two whole numbers.
        let between = |spacing: &u32| {
            let over = 2 * (length % spacing);
            over.abs_diff(*spacing) < spacing / 10
        };
        let spacings: Vec<u32> = scale
            .either([80, 85, 95, 110], [30, 33, 39, 42])
            .into_iter()
            .filter(|spacing| !between(spacing))
            .collect();
        let spacing = scale.marks(draw.pick(&spacings)?);
        let thick = draw.pick(scale.either([9, 11, 13].as_slice(), &[4, 5, 7]))?;
        let mut rows = Vec::new();
        for &height in scale.either([45, 50, 55].as_slice(), &[18, 20, 22]) {
            for &stands_out in scale.either([3, 4, 5].as_slice(), &[1, 2]) {
                let row = Self {
                    wall,
                    length: scale.marks(length),
                    height: scale.marks(height),
                    spacing,
                    stands_out: scale.marks(stands_out),
                    thickness: scale.marks(thick),
                };
                if row.gives_nothing_away(scale) {
                    rows.push(row);
                }
            }
        }
        draw.pick(&rows)
    }

    /// Whether the length of a through doesn't stand in the question already.
    fn gives_nothing_away(&self, scale: Scale) -> bool {
        let given = [self.height, self.spacing, self.wall.top, self.wall.height];
        self.wall.section().is_ok_and(|section| {
            let long = section.width_at(self.height) + self.stands_out * 2.0;
            given.iter().all(|it| scale.write(*it) != scale.write(long))
        })
    }
}

/// How many throughs and copes, and how long a through.
pub(in super::super) fn throughs_and_copes(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    counted(Row::draw(draw, scale)?, scale, &tables.stone)
}

fn counted(row: Row, scale: Scale, table: &StoneTable) -> Option<Question> {
    let section = row.wall.section().ok()?;
    let mut given = row.wall.given().ok()?;
    given.through_rows = vec![row.height];
    given.through_spacing = row.spacing;
    given.through.projection = row.stands_out;
    given.cope_height = row.thickness;
    given.cope_thickness = row.thickness;
    let usual = stone_given(kg_per_m3(2500.0), 0.25, 0.2);
    let (_, stone) = stone_of(&given, &section, row.length, &usual, table)?;
    let throughs = stone.throughs.first()?;
    let (count, copes) = (throughs.count, stone.copes);
    let sum = |length: Length| scale.in_sum(length);
    let width = section.width_at(row.height);
    Some(Question {
        ask: format!(
            "A wall is {} long, {} high to the underside of the cope and {} wide there. Both faces \
             have a batter of 1 in {}. A row of throughs lies {} above the ground, one every {} \
             along it, each standing out {} beyond both faces. The copes are {} thick along the \
             wall. How many throughs (to the nearest whole number) and copes (rounded up) does it \
             take, and how long is a through?",
            scale.write(row.length),
            scale.write(row.wall.height),
            scale.write(row.wall.top),
            row.wall.one_in,
            scale.write(row.height),
            scale.write(row.spacing),
            scale.write(row.stands_out),
            scale.write(row.thickness)
        ),
        working: format!(
            "Throughs = length ÷ spacing, to the nearest whole number\n= {long} ÷ {} = {}\n\
             Copes = length ÷ thickness, rounded up\n= {long} ÷ {} = {}\n\
             Width at the row = {} + 2 × ({} − {}) ÷ {} = {}\n\
             Through = that + 2 × what stands out\n= {} + 2 × {}\n= {}",
            sum(row.spacing),
            rounded(row.length.si() / row.spacing.si(), count),
            sum(row.thickness),
            rounded(row.length.si() / row.thickness.si(), copes),
            sum(row.wall.top),
            sum(row.wall.height),
            sum(row.height),
            row.wall.one_in,
            scale.mark_in_sum(width),
            scale.mark_in_sum(width),
            sum(row.stands_out),
            scale.total(throughs.length),
            long = sum(row.length),
        ),
        answer: format!(
            "{count} throughs, {copes} copes, {} long",
            scale.write(throughs.length)
        ),
        tolerance: format!("exact; the length {}", scale.tolerance()),
        value: count as f64,
        ..Question::of(Kind::ThroughsAndCopes)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    /// By hand: 750/90 = 8.33, so 8; 750/11 = 68.2, so 69; at 0.55 m the wall is
    /// 0.40 + 2 · (1.15 − 0.55)/6 = 0.60 m wide, and 0.60 + 2 · 0.04 = 0.68 m.
    #[test]
    fn a_through_is_as_long_as_the_wall_is_wide_and_what_stands_out() {
        let scale = Scale::of(Units::Metric);
        let row = Row {
            wall: Wall {
                height: scale.marks(115),
                top: scale.marks(40),
                one_in: 6,
            },
            length: scale.marks(750),
            height: scale.marks(55),
            spacing: scale.marks(90),
            stands_out: scale.marks(4),
            thickness: scale.marks(11),
        };
        let question = counted(row, scale, &sample::tables().stone).expect("sound");
        assert_eq!(question.answer, "8 throughs, 69 copes, 0.68 m long");
    }
}
