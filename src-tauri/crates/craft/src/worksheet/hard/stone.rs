//! The stone to order for a wall with a footing, some of it on site already.

use super::super::draw::Draw;
use super::super::scale::{Scale, number};
use super::super::stone::{
    Order, TOLERANCE, area_in_sum, section_working, stone_given, stone_of, tons, weight,
};
use super::super::wall::Wall;
use super::super::{Kind, Question};
use crate::course::OnSite;
use crate::quantity::{
    FOOT_M, Length, Read, SHORT_TON_KG, Units, Volume, kilograms, show_mass, show_share,
};
use crate::tables::{StoneTable, Tables};
use crate::wall::Footing;

/// A wall with a footing, and the stone that lies there.
#[derive(Debug, Clone, Copy)]
struct Whole {
    order: Order,
    footing: Footing,
    /// Tonnes or short tons on site.
    on_site: u32,
}

impl Whole {
    /// Neighbours differ in batter.
    fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let lengths: Vec<u32> = scale.either(
            (430..=870).step_by(20).collect(),
            (150..=342).step_by(6).collect(),
        );
        let weighs = scale.either([2350, 2450, 2550, 2650, 2750], [143, 152, 157, 163, 168]);
        Some(Self {
            order: Order {
                wall: Wall::draw(draw, scale)?,
                length: scale.marks(draw.pick(&lengths)?),
                weighs: draw.pick(&weighs)?,
                air: draw.pick(&[22, 25, 28])?,
                left_over: draw.pick(&[12, 15, 18, 22])?,
            },
            footing: Footing {
                depth: scale.marks(draw.pick(&scale.either([15, 18, 20], [6, 7, 8]))?),
                outset: scale.marks(draw.pick(&scale.either([5, 7], [2, 3]))?),
            },
            on_site: draw.pick(&[1, 2])?,
        })
    }
}

/// The stone to order.
pub(in super::super) fn to_order(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    order_of(Whole::draw(draw, scale)?, scale, &tables.stone)
}

fn order_of(whole: Whole, scale: Scale, table: &StoneTable) -> Option<Question> {
    let (order, footing) = (whole.order, whole.footing);
    let [air, left_over] = [order.air, order.left_over].map(|it| f64::from(it) / 100.0);
    let section = order.wall.section().ok()?;
    let mut wall = order.wall.given().ok()?;
    wall.footing = Some(footing);
    let mut given = stone_given(order.density(scale), air, left_over);
    let ton = scale.either(1000.0, SHORT_TON_KG);
    given.on_site = OnSite::Heap(kilograms(f64::from(whole.on_site) * ton));
    let (volumes, stone) = stone_of(&wall, &section, order.length, &given, table)?;
    let to_deliver = stone.to_deliver.mid;
    let answer = show_mass(to_deliver, scale.units);
    let (words, cubic, sign) = scale.either(
        ("tonnes", "cubic metre", "t"),
        ("short tons", "cubic foot", "short tons"),
    );
    let in_tons = scale.either("1000", "2000");
    let length = |length: Length| scale.in_sum(length);
    let long = scale.write(order.length);
    let all = volumes.body + volumes.footing;
    Some(Question {
        ask: format!(
            "A wall is {long} long, {} high to the underside of the cope and {} wide there. Both \
             faces have a batter of 1 in {}. Its footing is {} deep and stands out {} beyond each \
             face. Solid stone weighs {} to the {cubic}. Of the wall, {} is air; of the stone \
             delivered, {} is left over. {} {sign} of stone is on site already. How many {words} do you order, \
             leaving out the cope?",
            scale.write(order.wall.height),
            scale.write(order.wall.top),
            order.wall.one_in,
            scale.write(footing.depth),
            scale.write(footing.outset),
            weight(order.weighs, scale),
            show_share(air),
            show_share(left_over),
            whole.on_site
        ),
        working: [
            section_working(&order, &section, scale),
            format!(
                "Body = section × length = {} × {long} = {}",
                area_in_sum(&section, scale),
                cubed(volumes.body, scale)
            ),
            format!(
                "Footing = (width at the ground + 2 × outset) × depth × length\n\
                 = ({} + 2 × {}) × {} × {}{} = {}",
                length(section.base_width()),
                length(footing.outset),
                length(footing.depth),
                length(order.length),
                scale.either("", " ÷ 1728"),
                cubed(volumes.footing, scale)
            ),
            format!(
                "Stone in the wall = volume × weight × the share that is stone\n\
                 = {} × {} × {} ÷ {in_tons} = {}",
                cubed(all, scale),
                weight(order.weighs, scale),
                number(1.0 - air, 2),
                tons(stone.built(), scale)
            ),
            format!(
                "To order = that ÷ the share built in − what lies on site\n= {} ÷ {} − {} {sign}\n\
                 = {answer}",
                tons(stone.built(), scale),
                number(1.0 - left_over, 2),
                whole.on_site
            ),
        ]
        .join("\n"),
        answer,
        tolerance: scale.either(TOLERANCE.0, TOLERANCE.1).to_owned(),
        value: to_deliver.si(),
        ..Question::of(Kind::Tonnes)
    })
}

fn cubed(volume: Volume, scale: Scale) -> String {
    match scale.units {
        Units::Metric => format!("{} m³", number(volume.si(), 3)),
        Units::Imperial => format!("{} ft³", number(volume.si() / FOOT_M.powi(3), 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::worksheet::sample;

    /// By hand: base 0.80 m, section 0.72 m², body 0.72 · 6 = 4.32 m³; footing
    /// (0.80 + 0.10) · 0.20 · 6 = 1.08 m³; 5.40 · 2.5 · 0.75 = 10.125 t; /0.75 − 2 = 11.5 t.
    #[test]
    fn the_footing_is_built_too_and_what_lies_there_is_not_ordered() {
        let scale = Scale::of(Units::Metric);
        let whole = Whole {
            order: Order {
                wall: Wall {
                    height: scale.marks(120),
                    top: scale.marks(40),
                    one_in: 6,
                },
                length: scale.marks(600),
                weighs: 2500,
                air: 25,
                left_over: 25,
            },
            footing: Footing {
                depth: scale.marks(20),
                outset: scale.marks(5),
            },
            on_site: 2,
        };
        let question = order_of(whole, scale, &sample::tables().stone).expect("sound");
        assert_eq!(question.answer, "11.5 t");
        assert!((question.value - 11_500.0).abs() < 1e-6);
        assert!(
            question
                .working
                .contains("= (0.80 m + 2 × 0.05 m) × 0.20 m × 6.00 m = 1.08 m³\n")
        );
    }
}
