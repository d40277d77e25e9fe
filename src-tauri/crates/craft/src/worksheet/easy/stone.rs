//! Stone in one step: what is ordered of what is built in, and throughs that come out even.

use super::super::draw::Draw;
use super::super::scale::{Scale, number};
use super::super::stone::{TOLERANCE, stone_given, stone_of};
use super::super::throughs::{Top, throughs_and_copes as counted};
use super::super::wall::Wall;
use super::super::{Kind, Question};
use crate::quantity::{Read, kilograms};
use crate::quantity::{SHORT_TON_KG, kg_per_m3, metres, show_mass, show_share, square_metres};
use crate::tables::{StoneTable, Tables};
use crate::wall::{Batter, Section};

/// Any stone will do: the wall is made as long as its tonnes ask for.
const DENSITY: f64 = 2500.0;
const AIR: f64 = 0.25;

/// The stone to order for so many tonnes built in.
pub(in super::super) fn to_order(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    let built = draw.pick_unlike_neighbours(&[4, 5, 6, 7, 8, 9, 10, 12])?;
    let left_over = draw.pick(&[10, 20, 25])?;
    order_of(built, left_over, scale, &tables.stone)
}

fn order_of(built: u32, left_over: u32, scale: Scale, table: &StoneTable) -> Option<Question> {
    let mass = kilograms(f64::from(built) * scale.either(1000.0, SHORT_TON_KG));
    let section = Section::new(metres(1.0), metres(1.0), Batter::PLUMB, Batter::PLUMB).ok()?;
    let length = mass / (kg_per_m3(DENSITY) * (1.0 - AIR)) / square_metres(1.0);
    let share = f64::from(left_over) / 100.0;
    let given = stone_given(kg_per_m3(DENSITY), AIR, share);
    let wall = Wall {
        height: section.height(),
        top: section.top_width(),
        one_in: 6,
    };
    let (_, stone) = stone_of(&wall.given().ok()?, &section, length, &given, table)?;
    let to_deliver = stone.to_deliver.mid;
    let answer = show_mass(to_deliver, scale.units);
    let (ton, sign) = scale.either(("tonnes", "t"), ("short tons", "short tons"));
    Some(Question {
        ask: format!(
            "A wall will hold {built} {ton} of stone. Of the stone delivered, {} is left over, and \
             none lies on site. How many {ton} do you order?",
            show_share(share)
        ),
        working: format!(
            "To order = stone in the wall ÷ the share built in\n= {built} {sign} ÷ {}\n= {answer}",
            number(1.0 - share, 2)
        ),
        answer,
        tolerance: scale.either(TOLERANCE.0, TOLERANCE.1).to_owned(),
        value: to_deliver.si(),
        ..Question::of(Kind::Tonnes)
    })
}

/// One row of throughs, and copes, that come out without rounding.
pub(in super::super) fn throughs_and_copes(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    let count: u32 = draw.pick_unlike_neighbours(&[5, 6, 7, 8, 9, 10])?;
    let spacing = draw.pick(&scale.either([80, 90, 100], [30, 36, 42]))?;
    let even = |thickness: &u32| (count * spacing).is_multiple_of(*thickness);
    let thick: Vec<u32> = scale
        .either([10, 12], [5, 6])
        .into_iter()
        .filter(even)
        .collect();
    let top = Top {
        length: scale.marks(count * spacing),
        rows: 1,
        spacing: scale.marks(spacing),
        thickness: scale.marks(draw.pick(&thick)?),
    };
    counted(top, scale, &tables.stone)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    /// By hand: 8/0.8 = 10; 9/0.75 = 12.
    #[test]
    fn more_is_ordered_than_is_built_in() {
        let table = sample::tables().stone;
        let metric = order_of(8, 20, Scale::of(Units::Metric), &table).expect("sound");
        assert_eq!(metric.answer, "10.0 t");
        assert_eq!(
            metric.working,
            "To order = stone in the wall ÷ the share built in\n= 8 t ÷ 0.8\n= 10.0 t"
        );
        let imperial = order_of(9, 25, Scale::of(Units::Imperial), &table).expect("sound");
        assert_eq!(imperial.answer, "12.0 short tons");
    }
}
