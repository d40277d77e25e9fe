//! The question of how many tonnes of stone to order.

use super::draw::Draw;
use super::scale::{Scale, number};
use super::wall::Wall;
use super::{Kind, Question};
use crate::course::{OnSite, StoneGiven, WallGiven};
use crate::quantity::{
    Density, FOOT_M, INCH_M, Length, Mass, POUND_KG, Read, SHORT_TON_KG, Units, kg_per_m3,
    kilograms, show_mass, show_share,
};
use crate::stone::Stone;
use crate::tables::{StoneTable, Tables};
use crate::wall::{Section, Volumes, Wall as Standing};

/// How far off the stone to order may be: what rounding each step leaves.
pub(super) const TOLERANCE: (&str, &str) = (
    "within 0.2 t (0.2 short tons)",
    "within 0.2 short tons (0.2 t)",
);

/// Stone with nothing left to the tables: everything that moves the answer is asked.
pub(super) fn stone_given(density: Density, air: f64, left_over: f64) -> StoneGiven {
    StoneGiven {
        kind: None,
        density: Some(density),
        voids: Some(air),
        hearting_share: None,
        waste: Some(left_over),
        on_site: OnSite::Heap(kilograms(0.0)),
        load: None,
        most: None,
        lead_days: None,
        closed: Vec::new(),
        old_wall: None,
        practice_pitch: false,
    }
}

pub(super) fn stone_of(
    given: &WallGiven,
    section: &Section,
    length: Length,
    stone: &StoneGiven,
    table: &StoneTable,
) -> Option<(Volumes, Stone)> {
    let standing = Standing::plain(*section, length);
    let volumes = Volumes::of(&standing, given.footing, given.cope_height);
    let stone = Stone::of(given, &standing, &volumes, stone, table).ok()?;
    Some((volumes, stone))
}

/// A wall without footing and cope, and the stone it is built of.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order {
    pub(super) wall: Wall,
    pub(super) length: Length,
    /// Kilograms to the cubic metre, or pounds to the cubic foot.
    pub(super) weighs: u32,
    /// Whole per cent of the wall.
    pub(super) air: u32,
    /// Whole per cent of what is delivered.
    pub(super) left_over: u32,
}

impl Order {
    /// Neighbours differ in batter.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let lengths: Vec<u32> = scale.either(
            (400..=900).step_by(50).collect(),
            (144..=360).step_by(12).collect(),
        );
        Some(Self {
            wall: Wall::draw(draw, scale)?,
            length: scale.marks(draw.pick(&lengths)?),
            weighs: draw
                .pick(&scale.either([2300, 2400, 2500, 2600, 2700], [145, 150, 155, 160, 170]))?,
            air: draw.pick(&[20, 25, 30])?,
            left_over: draw.pick(&[10, 20, 25])?,
        })
    }

    pub(super) fn density(&self, scale: Scale) -> Density {
        let weighs = f64::from(self.weighs);
        kg_per_m3(scale.either(weighs, weighs * POUND_KG / FOOT_M.powi(3)))
    }

    fn stone(&self, scale: Scale, table: &StoneTable) -> Option<(Section, Volumes, Stone)> {
        let section = self.wall.section().ok()?;
        let given = stone_given(
            self.density(scale),
            f64::from(self.air) / 100.0,
            f64::from(self.left_over) / 100.0,
        );
        let wall = self.wall.given().ok()?;
        let (volumes, stone) = stone_of(&wall, &section, self.length, &given, table)?;
        Some((section, volumes, stone))
    }
}

/// A student's own.
pub(super) fn ask_to_order(draw: &mut Draw, scale: Scale, tables: &Tables) -> Option<Question> {
    to_order(Order::draw(draw, scale)?, scale, &tables.stone)
}

/// The stone to order.
pub(super) fn to_order(order: Order, scale: Scale, table: &StoneTable) -> Option<Question> {
    let (section, volumes, stone) = order.stone(scale, table)?;
    let to_deliver = stone.to_deliver.mid;
    let answer = show_mass(to_deliver, scale.units);
    let (ton, cubic) = scale.either(("tonnes", "cubic metre"), ("short tons", "cubic foot"));
    Some(Question {
        ask: format!(
            "A wall is {} long, {} high to the underside of the cope and {} wide there. Both \
             faces have a batter of 1 in {}. Solid stone weighs {} to the {cubic}. Of the \
             wall, {} is air; of the stone delivered, {} is left over. None lies on site. How \
             many {ton} do you order, leaving out footing and cope?",
            scale.write(order.length),
            scale.write(order.wall.height),
            scale.write(order.wall.top),
            order.wall.one_in,
            weight(order.weighs, scale),
            show_share(f64::from(order.air) / 100.0),
            show_share(f64::from(order.left_over) / 100.0)
        ),
        working: [
            section_working(&order, &section, scale),
            stone_working(&order, &section, &volumes, stone.built(), scale),
            format!(
                "To order = that ÷ the share built in\n= {} ÷ {}\n= {answer}",
                tons(stone.built(), scale),
                number(1.0 - f64::from(order.left_over) / 100.0, 2)
            ),
        ]
        .join("\n"),
        answer,
        tolerance: scale.either(TOLERANCE.0, TOLERANCE.1).to_owned(),
        value: to_deliver.si(),
        ..Question::of(Kind::Tonnes)
    })
}

pub(super) fn section_working(order: &Order, section: &Section, scale: Scale) -> String {
    let (top, height) = (
        scale.in_sum(order.wall.top),
        scale.in_sum(order.wall.height),
    );
    let base = scale.in_sum(section.base_width());
    let area = match scale.units {
        Units::Metric => String::new(),
        Units::Imperial => format!(
            " = {} in² ÷ 144",
            number(section.area().si() / INCH_M.powi(2), 1)
        ),
    };
    format!(
        "Width at the ground = {top} + 2 × {height} ÷ {} = {base}\n\
         Section = (width at the ground + top width) ÷ 2 × height\n\
         = ({base} + {top}) ÷ 2 × {height}{area} = {}",
        order.wall.one_in,
        area_in_sum(section, scale)
    )
}

pub(super) fn stone_working(
    order: &Order,
    section: &Section,
    volumes: &Volumes,
    built: Mass,
    scale: Scale,
) -> String {
    let volume = volumes.body.si();
    let in_tons = match scale.units {
        Units::Metric => "1000",
        Units::Imperial => "2000",
    };
    let length = scale.write(order.length);
    let volume = match scale.units {
        Units::Metric => format!("{} m³", number(volume, 3)),
        Units::Imperial => format!("{} ft³", number(volume / FOOT_M.powi(3), 1)),
    };
    format!(
        "Volume = section × length\n= {} × {length} = {volume}\n\
         Stone in the wall = volume × weight × the share that is stone\n\
         = {volume} × {} × {} ÷ {in_tons} = {}",
        area_in_sum(section, scale),
        weight(order.weighs, scale),
        number(1.0 - f64::from(order.air) / 100.0, 2),
        tons(built, scale)
    )
}

pub(super) fn area_in_sum(section: &Section, scale: Scale) -> String {
    let area = section.area().si();
    match scale.units {
        Units::Metric => format!("{} m²", number(area, 4)),
        Units::Imperial => format!("{} ft²", number(area / FOOT_M.powi(2), 3)),
    }
}

pub(super) fn weight(weighs: u32, scale: Scale) -> String {
    format!("{weighs} {}", scale.either("kg", "lb"))
}

/// With one decimal more than an answer has, so that the next step does not suffer.
pub(super) fn tons(mass: Mass, scale: Scale) -> String {
    match scale.units {
        Units::Metric => format!("{} t", number(mass.si() / 1000.0, 2)),
        Units::Imperial => format!("{} short tons", number(mass.si() / SHORT_TON_KG, 2)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::worksheet::sample;

    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };
    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    /// By hand: base 0.40 + 2 · 1.20/6 = 0.80 m; section (0.80 + 0.40)/2 · 1.20 = 0.72 m²;
    /// 0.72 · 6 = 4.32 m³; 4.32 · 2.5 · 0.75 = 8.1 t; 8.1/0.8 = 10.125 t.
    #[test]
    fn the_tonnes_to_order() {
        let order = Order {
            wall: Wall {
                height: METRES.marks(120),
                top: METRES.marks(40),
                one_in: 6,
            },
            length: METRES.marks(600),
            weighs: 2500,
            air: 25,
            left_over: 20,
        };
        let question = to_order(order, METRES, &sample::tables().stone).expect("sound");
        assert_eq!(
            question.ask,
            "A wall is 6.00 m long, 1.20 m high to the underside of the cope and 0.40 m wide \
             there. Both faces have a batter of 1 in 6. Solid stone weighs 2500 kg to the cubic \
             metre. Of the wall, 25 % is air; of the stone delivered, 20 % is left over. None lies on \
             site. How many tonnes do you order, leaving out footing and cope?"
        );
        assert_eq!(
            question.working,
            "Width at the ground = 0.40 m + 2 × 1.20 m ÷ 6 = 0.80 m\n\
             Section = (width at the ground + top width) ÷ 2 × height\n\
             = (0.80 m + 0.40 m) ÷ 2 × 1.20 m = 0.72 m²\n\
             Volume = section × length\n= 0.72 m² × 6.00 m = 4.32 m³\n\
             Stone in the wall = volume × weight × the share that is stone\n\
             = 4.32 m³ × 2500 kg × 0.75 ÷ 1000 = 8.1 t\n\
             To order = that ÷ the share built in\n= 8.1 t ÷ 0.8\n= 10.1 t"
        );
        assert_eq!(question.answer, "10.1 t");
        assert!((question.value - 10_125.0).abs() < 1e-6);
    }

    /// By hand: base 16 + 2 · 42/6 = 30 in; section (30 + 16)/2 · 42 = 966 in² = 6.708 ft²;
    /// 6.708 · 20 = 134.17 ft³; 134.17 · 160 · 0.75 = 16,100 lb = 8.05 tons of 2,000 lb;
    /// 8.05/0.8 = 10.06.
    #[test]
    fn the_short_tons_to_order() {
        let order = Order {
            wall: Wall {
                height: INCHES.marks(42),
                top: INCHES.marks(16),
                one_in: 6,
            },
            length: INCHES.marks(240),
            weighs: 160,
            air: 25,
            left_over: 20,
        };
        let question = to_order(order, INCHES, &sample::tables().stone).expect("sound");
        assert!(question.ask.contains("weighs 160 lb to the cubic foot"));
        assert!(question.ask.contains("How many short tons do you order"));
        assert_eq!(
            question.working,
            "Width at the ground = 16 in + 2 × 42 in ÷ 6 = 30 in\n\
             Section = (width at the ground + top width) ÷ 2 × height\n\
             = (30 in + 16 in) ÷ 2 × 42 in = 966 in² ÷ 144 = 6.708 ft²\n\
             Volume = section × length\n= 6.708 ft² × 20 ft = 134.2 ft³\n\
             Stone in the wall = volume × weight × the share that is stone\n\
             = 134.2 ft³ × 160 lb × 0.75 ÷ 2000 = 8.05 short tons\n\
             To order = that ÷ the share built in\n= 8.05 short tons ÷ 0.8\n= 10.1 short tons"
        );
        assert_eq!(question.answer, "10.1 short tons");
        assert!((question.value - 20_125.0 * POUND_KG).abs() < 1e-6);
    }

    /// Whoever rounds square metres and cubic metres to two decimals, or square feet to one
    /// and cubic feet to none, is still right.
    #[test]
    fn rounding_each_step_stays_within_the_tolerance() {
        let table = sample::tables().stone;
        let round = |value: f64, places: i32| {
            let factor = 10_f64.powi(places);
            (value * factor).round() / factor
        };
        for (scale, foot, places, ton) in [
            (METRES, 1.0, (2, 2), 1000.0),
            (INCHES, FOOT_M, (1, 0), SHORT_TON_KG),
        ] {
            for student in 0..500 {
                let mut draw = Draw::new(5, student, Kind::Tonnes);
                let order = Order::draw(&mut draw, scale).expect("lists are not empty");
                let question = to_order(order, scale, &table).expect("sound");
                let section = order.wall.section().expect("sound");
                let area = round(section.area().si() / foot.powi(2), places.0);
                let volume = round(area * order.length.si() / foot, places.1);
                let weighs = order.density(scale).si() * foot.powi(3) / ton;
                let built = round(volume * weighs * (1.0 - f64::from(order.air) / 100.0), 2);
                let ordered = round(built / (1.0 - f64::from(order.left_over) / 100.0), 1);
                let off = (ordered - question.value / ton).abs();
                assert!(off <= 0.2, "{}: off by {off}", question.ask);
            }
        }
    }
}
