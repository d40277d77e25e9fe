//! Deliveries of stone: whole loads, when they are ordered and when they must be there.

mod working_days;

pub use working_days::{delivery_day, working_days_before};

use crate::course::Course;
use crate::quantity::{Mass, kilograms, whole_number};
use crate::retaining::Retaining;
use crate::stone::Stone;
use crate::tables::StoneTable;
use chrono::NaiveDate;
use uom::si::ratio::ratio;

/// One kind of stone that is ordered by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Delivery {
    /// What is ordered.
    pub what: Ordered,
    /// So much must come.
    pub mass: Mass,
    /// In so many whole loads, if the size of one is known.
    pub loads: Option<Loads>,
    /// The last day to order: the lead time in working days before it must be there.
    pub order_by: NaiveDate,
    /// The last working day before the course.
    pub there_by: NaiveDate,
}

/// What can be ordered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ordered {
    /// The wall's own stone.
    WallStone,
    /// Clean stone of one size for behind a wall that holds back a bank.
    DrainageStone,
}

/// Whole loads of one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loads {
    /// How many.
    pub count: usize,
    /// One of them.
    pub each: Mass,
}

impl Loads {
    /// As many as bring so much: `mass / each`, rounded up.
    fn bringing(mass: Mass, each: Mass) -> Self {
        let exact = (mass / each).get::<ratio>();
        Self {
            // A remainder below one part in a thousand million is rounding, not stone.
            count: whole_number((exact - 1e-9).ceil().max(0.0)),
            each,
        }
    }

    /// All of them together.
    pub fn mass(self) -> Mass {
        self.each * self.count as f64
    }
}

/// What is ordered for a course: the wall's stone at its high figure, and the drainage stone
/// where a bank is held back. What nothing is lacking of is left out.
pub fn deliveries(
    course: &Course,
    stone: &Stone,
    retaining: Option<&Retaining>,
    table: &StoneTable,
) -> Vec<Delivery> {
    let Some(first) = course.days.first().map(|day| day.date) else {
        return Vec::new();
    };
    let closed = &course.stone.closed;
    let lead = course.stone.lead_days.unwrap_or(table.lead_days);
    let there_by = delivery_day(first, closed);
    let drainage = retaining.map_or(kilograms(0.0), |it| it.backfill_mass);
    [
        (Ordered::WallStone, stone.to_deliver.high),
        (Ordered::DrainageStone, drainage),
    ]
    .into_iter()
    .filter(|(_, mass)| kilograms(0.0) < *mass)
    .map(|(what, mass)| Delivery {
        what,
        mass,
        loads: course.stone.load.map(|each| Loads::bringing(mass, each)),
        order_by: working_days_before(there_by, lead, closed),
        there_by,
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::sample::SAMPLE;
    use crate::quantity::tonnes;
    use proptest::prelude::*;

    fn ordered(change: impl Fn(&mut Course)) -> Vec<Delivery> {
        let (course, tables, plan) = &*SAMPLE;
        let mut course = course.clone();
        change(&mut course);
        deliveries(&course, &plan.stone, None, &tables.stone)
    }

    /// By a calendar: the course begins on Friday 23 April 2027, so the stone is there by
    /// Thursday 22 April, and ten working days before that is Thursday 8 April.
    #[test]
    fn stone_is_there_before_the_course_and_ordered_before_that() {
        let day = |day| NaiveDate::from_ymd_opt(2027, 4, day).expect("a date");
        let [stone] = ordered(|course| course.stone.lead_days = Some(10))[..] else {
            panic!("one delivery");
        };
        assert_eq!((stone.order_by, stone.there_by), (day(8), day(22)));
        let [stone] = ordered(|course| {
            course.stone.lead_days = Some(1);
            course.stone.closed = vec![day(22), day(20)];
        })[..] else {
            panic!("one delivery");
        };
        assert_eq!((stone.order_by, stone.there_by), (day(19), day(21)));
    }

    #[test]
    fn nothing_is_ordered_where_nothing_is_lacking() {
        let (course, tables, plan) = &*SAMPLE;
        let mut stone = plan.stone.clone();
        stone.to_deliver.high = kilograms(0.0);
        assert!(deliveries(course, &stone, None, &tables.stone).is_empty());
    }

    proptest! {
        #[test]
        fn whole_loads_bring_enough_and_one_fewer_does_not(mass in 1.0..99_999.0, each in 1.0..40_000.0) {
            let (mass, each) = (kilograms(mass), kilograms(each));
            let loads = Loads::bringing(mass, each);
            prop_assert!(mass <= loads.mass() * (1.0 + 1e-8));
            prop_assert!(each * (loads.count as f64 - 1.0) < mass);
        }
    }

    #[test]
    fn twenty_tonnes_are_two_loads_of_ten() {
        assert_eq!(Loads::bringing(tonnes(20.0), tonnes(10.0)).count, 2);
        assert_eq!(Loads::bringing(tonnes(20.1), tonnes(10.0)).count, 3);
    }
}
