//! Sums of a course by hand, and what must hold for any prices.

use super::*;
use crate::course::{OnSite, PriceUnit, StonePrice};
use crate::plan::sample::SAMPLE;
use crate::quantity::{Mass, Units, kilograms, metres, tonnes};
use proptest::prelude::*;

/// Eight students, one instructor, three days; stone in loads of 10 t, 4 t on site.
fn course(money: MoneyGiven) -> Course {
    Course {
        money: Some(money),
        ..SAMPLE.0.clone()
    }
}

/// The stone of a wall, so much of it to order.
fn stone(high: Mass) -> Stone {
    let mut stone = SAMPLE.2.stone.clone();
    stone.to_deliver.high = high;
    stone
}

fn prices() -> MoneyGiven {
    MoneyGiven {
        currency: Some("GBP".to_owned()),
        stone: Some(StonePrice {
            amount: 42.0,
            unit: PriceUnit::Tonne,
        }),
        delivery: Some(90.0),
        hire: Some(60.0),
        consumables: Some(8.0),
        instructor: Some(180.0),
        assistant: Some(100.0),
        venue: Some(120.0),
        travel: Some(0.0),
        other: None,
        fee: Some(160.0),
    }
}

fn sums(course: &Course, high: Mass) -> Money {
    Money::of(course, &stone(high), 6.0).expect("prices are given")
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + a.abs())
}

/// By hand: 16 t are 2 loads, so 20 t at 42 = 840 and 2 x 90 = 180; 60; 8 x 8 = 64;
/// 3 x 180 = 540; no assistant; 120: 1804 altogether, 225.50 a head, 1280 of fees.
#[test]
fn a_course_by_hand() {
    let money = sums(&course(prices()), tonnes(16.0));
    let lines: Vec<(&str, &str, f64)> = money
        .lines
        .iter()
        .map(|line| (line.cost.word(), line.how.as_str(), line.amount))
        .collect();
    assert_eq!(
        lines,
        [
            ("stone", "2 loads of 10.0 t at GBP 42 / t", 840.0),
            ("delivery", "2 loads at GBP 90", 180.0),
            ("hire", "for the course", 60.0),
            ("consumables", "8 students at GBP 8", 64.0),
            ("instructors", "1 instructor, 3 days at GBP 180", 540.0),
            ("assistants", "0 assistants, 3 days at GBP 100", 0.0),
            ("venue", "for the course", 120.0),
            ("travel", "for the course", 0.0),
        ]
    );
    assert_eq!((money.total, money.per_head), (1804.0, 225.5));
    assert_eq!((money.income, money.left), (Some(1280.0), Some(-524.0)));
    assert_eq!(money.show(money.per_head), "GBP 225.50");
}

/// By hand. Stone grows from 16 t and the 4 t on site, 2.5 t a head; a load more at 10 and 14
/// students (5.6 + 4 ... 14 x 2.5 - 4 = 31 t is the fourth). An instructor more above 8, where
/// 6 students to one are good: two for 9 to 12, three for 13 to 18.
#[test]
fn larger_groups_take_loads_and_instructors() {
    let money = sums(&course(prices()), tonnes(16.0));
    assert_eq!(money.by_size.len(), 16);
    for (students, instructors, loads) in [
        (1, 1, 0),
        (2, 1, 1),
        (5, 1, 1),
        (6, 1, 2),
        (8, 1, 2),
        (9, 2, 2),
        (10, 2, 3),
        (12, 2, 3),
        (13, 3, 3),
        (14, 3, 4),
        (16, 3, 4),
    ] {
        let row = &money.by_size[students - 1];
        assert_eq!(
            (row.students, row.instructors, row.loads),
            (students, instructors, loads)
        );
    }
    // By hand, 12 students: 30 t x 42 + 3 x 90 + 60 + 96 + 2 x 540 + 120 = 2886.
    assert!(close(money.by_size[11].total, 2886.0));
    assert!(close(money.by_size[11].per_head, 240.5));
    let own = &money.by_size[7];
    assert_eq!((own.total, own.left), (money.total, money.left));
}

#[test]
fn a_given_length_takes_the_same_stone_for_every_group() {
    let mut given = course(prices());
    given.wall.length = Some(metres(9.0));
    let money = sums(&given, tonnes(16.0));
    assert!(money.by_size.iter().all(|row| row.loads == 2));
    // No more than can be had.
    let mut scarce = course(prices());
    scarce.stone.most = Some(tonnes(20.0));
    let money = sums(&scarce, tonnes(16.0));
    assert!(money.by_size.iter().all(|row| row.loads <= 2));
}

#[test]
fn stone_without_loads_is_paid_by_its_mass_in_any_unit() {
    let mut by_mass = course(MoneyGiven {
        stone: Some(StonePrice {
            amount: 0.025,
            unit: PriceUnit::Pound,
        }),
        delivery: Some(50.0),
        ..MoneyGiven::default()
    });
    by_mass.stone.load = None;
    by_mass.units = Units::Imperial;
    let money = sums(&by_mass, kilograms(453.592_37));
    // By hand: 453.59237 kg are 1,000 lb (international pound), 25 at 0.025.
    assert!((money.lines[0].amount - 25.0).abs() < 1e-9);
    assert_eq!(money.lines[0].how, "1000 lb at 0.025 / lb");
    assert!(close(money.lines[1].amount, 50.0));
    assert_eq!((money.income, money.left), (None, None));
    assert_eq!(money.break_even, None);
    let none = sums(&by_mass, kilograms(0.0));
    assert!(close(none.total, 0.0));
}

/// What lies on site is enough for 8 and runs out for more.
#[test]
fn on_site_stone_serves_a_group_until_it_runs_out() {
    let mut own = course(prices());
    own.stone.on_site = OnSite::Heap(tonnes(1000.0));
    let money = sums(&own, kilograms(0.0));
    assert!(close(money.lines[0].amount, 0.0));
    assert!(money.by_size.iter().all(|row| row.loads == 0));
}

#[test]
fn without_money_there_are_no_sums() {
    assert_eq!(Money::of(&SAMPLE.0, &SAMPLE.2.stone, 6.0), None);
    let free = sums(
        &course(MoneyGiven {
            fee: Some(0.0),
            ..prices()
        }),
        tonnes(16.0),
    );
    assert_eq!(free.break_even, Some(BreakEven::Never));
}

fn price(most: f64) -> impl Strategy<Value = Option<f64>> {
    prop::option::of((0.0..most).prop_map(|it: f64| (it * 100.0).round() / 100.0))
}

fn any_prices() -> impl Strategy<Value = MoneyGiven> {
    let staff = (price(300.0), price(200.0), price(400.0));
    let goods = (price(90.0), price(200.0), price(100.0), price(20.0));
    (goods, staff, price(50.0), price(50.0), price(400.0)).prop_map(
        |((stone, delivery, hire, consumables), staff, travel, other, fee)| MoneyGiven {
            currency: None,
            stone: stone.map(|amount| StonePrice {
                amount,
                unit: PriceUnit::Tonne,
            }),
            delivery,
            hire,
            consumables,
            instructor: staff.0,
            assistant: staff.1,
            venue: staff.2,
            travel,
            other,
            fee,
        },
    )
}

/// The costs of a group of another size, once more and without the parts of the program: 4 t
/// lie on site, loads are of 10 t.
fn written_out(course: &Course, given: &MoneyGiven, high_t: f64, good: f64, size: usize) -> f64 {
    let (own, size_f) = (course.group.students.len(), size as f64);
    let staff = course.group.instructors;
    let assistants = f64::from(course.group.assistants);
    let mut instructors = f64::from(staff);
    while own < size && good * (instructors + assistants / 2.0) < size_f - 1e-6 {
        instructors += 1.0;
    }
    let wanted = if 0.0 < high_t {
        high_t + 4.0
    } else {
        let stone = &SAMPLE.2.stone;
        stone.built().value / 1000.0 / (1.0 - stone.waste)
    };
    let order = if size == own || course.wall.length.is_some() {
        high_t
    } else {
        wanted / own as f64 * size_f - 4.0
    };
    let mut loads = 0.0;
    while loads * 10.0 < order - 1e-6 {
        loads += 1.0;
    }
    let of = |price: Option<f64>| price.unwrap_or_default();
    let stone = given.stone.map(|price| price.amount);
    of(stone) * loads * 10.0
        + of(given.delivery) * loads
        + of(given.consumables) * size_f
        + (of(given.instructor) * instructors + of(given.assistant) * assistants) * 3.0
        + [given.hire, given.venue, given.travel, given.other]
            .map(of)
            .iter()
            .sum::<f64>()
}

proptest! {
    /// Lines add up to the total, heads to the total, what is left to the fees; and the least
    /// number that breaks even is what trying every number finds, as are its gaps.
    #[test]
    fn totals_add_up_and_break_even_is_found(
        given in any_prices(),
        tonnes_high in 0.0..40.0,
        students in 1_usize..40,
        staff in (0_u32..4, 0_u32..4),
        good in 3.0..9.0,
        auto in any::<bool>(),
    ) {
        let mut course = course(given.clone());
        course.group.students = vec![course.group.students[0].clone(); students];
        (course.group.instructors, course.group.assistants) = staff;
        course.wall.length = (!auto).then(|| metres(9.0));
        let stone = stone(tonnes(tonnes_high));
        let money = Money::of(&course, &stone, good).expect("prices are given");
        let lines: f64 = money.lines.iter().map(|line| line.amount).sum();
        prop_assert!(close(lines, money.total));
        prop_assert!(close(money.per_head * students as f64, money.total));
        prop_assert!(money.lines.iter().all(|line| 0.0 <= line.amount));
        for row in &money.by_size {
            let again = written_out(&course, &given, tonnes_high, good, row.students);
            prop_assert!(close(row.total, again), "{row:?}: {again}");
        }
        prop_assert_eq!(money.by_size.len(), (2 * students).max(12));
        let own = &money.by_size[students - 1];
        prop_assert!(close(own.total, money.total));
        prop_assert_eq!(own.instructors, course.group.instructors as usize);
        for pair in money.by_size.windows(2) {
            prop_assert!(pair[0].instructors <= pair[1].instructors);
            prop_assert!(pair[0].loads <= pair[1].loads);
            prop_assert!(pair[0].total <= pair[1].total + 1e-9);
        }
        let Some(fee) = given.fee else {
            prop_assert_eq!(&money.break_even, &None);
            return Ok(());
        };
        let covers: Vec<usize> = (1..=MOST_STUDENTS)
            .filter(|&size| written_out(&course, &given, tonnes_high, good, size) <= fee * size as f64 + 1e-6)
            .collect();
        match (&money.break_even, covers.first()) {
            (Some(BreakEven::Never), None) => {}
            (Some(BreakEven::From { least, but_not }), Some(first)) => {
                prop_assert_eq!(least, first);
                let not: Vec<usize> = but_not.iter().flat_map(|(a, b)| *a..=*b).collect();
                let gaps = (*first..=MOST_STUDENTS).filter(|size| !covers.contains(size));
                prop_assert_eq!(not, gaps.collect::<Vec<_>>());
                prop_assert!(but_not.is_sorted_by(|a, b| a.1 + 1 < b.0));
            }
            other => prop_assert!(false, "{other:?}"),
        }
    }
}
