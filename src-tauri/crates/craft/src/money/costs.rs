//! What each thing costs for a group of any size.

use super::CostLine;
use super::show::show_price;
use crate::course::{Course, MoneyGiven, OnSite, StonePrice, WallKind};
use crate::quantity::{Mass, Read, Units, kilograms, show_count, show_mass, whole_number};
use crate::stone::Stone;

/// A thing a course costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Cost {
    Stone,
    Delivery,
    Hire,
    Consumables,
    Instructors,
    Assistants,
    Venue,
    Travel,
    Other,
}

impl Cost {
    /// All, in the order they are listed.
    pub const ALL: [Self; 9] = [
        Self::Stone,
        Self::Delivery,
        Self::Hire,
        Self::Consumables,
        Self::Instructors,
        Self::Assistants,
        Self::Venue,
        Self::Travel,
        Self::Other,
    ];

    /// What a person reads.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stone => "stone",
            Self::Delivery => "delivery",
            Self::Hire => "hire",
            Self::Consumables => "consumables",
            Self::Instructors => "instructors",
            Self::Assistants => "assistants",
            Self::Venue => "venue",
            Self::Travel => "travel",
            Self::Other => "other",
        }
    }
}

/// The prices of a course and what they are taken by.
pub(super) struct Costs<'a> {
    given: &'a MoneyGiven,
    /// Students of the plan.
    students: usize,
    instructors: usize,
    assistants: usize,
    days: usize,
    students_per_instructor: f64,
    /// Stone to order for the plan: the high figure.
    ordered: Mass,
    /// The same with what lies on site: this is what grows with the group.
    wanted: Mass,
    on_site: Mass,
    /// No more than this can be had.
    most: Option<Mass>,
    /// One delivery.
    load: Option<Mass>,
    grows: bool,
}

impl<'a> Costs<'a> {
    pub(super) fn of(
        course: &'a Course,
        given: &'a MoneyGiven,
        stone: &Stone,
        students_per_instructor: f64,
    ) -> Self {
        let on_site = on_site(&course.stone.on_site);
        let ordered = stone.to_deliver.high;
        let wanted = if 0.0 < ordered.si() {
            ordered + on_site
        } else {
            // What lies there is enough, by how much only the wall tells.
            stone.wanted(stone.built())
        };
        Self {
            given,
            students: course.group.students.len(),
            instructors: course.group.instructors as usize,
            assistants: course.group.assistants as usize,
            days: course.days.len(),
            students_per_instructor,
            ordered,
            wanted,
            on_site,
            most: course.stone.most,
            load: course.stone.load,
            grows: course.wall.length.is_none(),
        }
    }

    /// All costs of so many students.
    pub(super) fn total(&self, students: usize) -> f64 {
        let amounts = Cost::ALL.iter();
        amounts
            .filter_map(|cost| self.amount(*cost, students))
            .sum()
    }

    /// What one thing costs; nothing if its price is not given.
    pub(super) fn amount(&self, cost: Cost, students: usize) -> Option<f64> {
        let given = self.given;
        let each = |price: Option<f64>, count: usize| price.map(|price| price * count as f64);
        match cost {
            Cost::Stone => given
                .stone
                .map(|price| of_mass(price, self.charged(students))),
            Cost::Delivery => each(given.delivery, self.loads(students)),
            Cost::Hire => given.hire,
            Cost::Consumables => each(given.consumables, students),
            Cost::Instructors => each(given.instructor, self.instructors(students) * self.days),
            Cost::Assistants => each(given.assistant, self.assistants * self.days),
            Cost::Venue => given.venue,
            Cost::Travel => given.travel,
            Cost::Other => given.other,
        }
    }

    /// Instructors for so many students: those of the course, and for a larger group one to
    /// every `students_per_instructor`, an assistant counting half.
    pub(super) fn instructors(&self, students: usize) -> usize {
        if students <= self.students {
            return self.instructors;
        }
        let staff = students as f64 / self.students_per_instructor;
        let needed = (staff - self.assistants as f64 / 2.0 - 1e-9).ceil();
        whole_number(needed.max(0.0)).max(self.instructors)
    }

    /// Deliveries for so many students; stone that comes in loads of unknown size is taken to
    /// come in one.
    pub(super) fn loads(&self, students: usize) -> usize {
        let mass = self.to_order(students);
        match self.load {
            _ if mass.si() <= 0.0 => 0,
            Some(load) => whole_number((mass.si() / load.si() - 1e-9).ceil()),
            None => 1,
        }
    }

    /// Stone to order for so many students.
    fn to_order(&self, students: usize) -> Mass {
        if !self.grows || students == self.students {
            return self.ordered;
        }
        let share = students as f64 / self.students as f64;
        let missing = self.wanted * share - self.on_site;
        let missing = if missing.si() < 0.0 {
            kilograms(0.0)
        } else {
            missing
        };
        match self.most {
            Some(most) if most < missing => most,
            _ => missing,
        }
    }

    /// Stone that is paid for: whole loads where their size is known.
    fn charged(&self, students: usize) -> Mass {
        match self.load {
            Some(load) => load * self.loads(students) as f64,
            None => self.to_order(students),
        }
    }

    /// The costs of the plan, with how each comes about.
    pub(super) fn lines(&self, course: &Course) -> Vec<CostLine> {
        Cost::ALL
            .iter()
            .filter_map(|&cost| {
                Some(CostLine {
                    cost,
                    how: self.how(cost, course),
                    amount: self.amount(cost, self.students)?,
                })
            })
            .collect()
    }

    fn how(&self, cost: Cost, course: &Course) -> String {
        let given = self.given;
        let show =
            |amount: Option<f64>| show_price(amount.unwrap_or_default(), given.currency.as_deref());
        let days = show_count(self.days, "day", "days");
        match cost {
            Cost::Stone => match course.wall.kind {
                WallKind::Freestanding => self.how_stone(course.units),
                WallKind::Retaining(_) => format!(
                    "{}; drainage stone behind the wall not counted",
                    self.how_stone(course.units)
                ),
            },
            Cost::Delivery => format!(
                "{} at {}",
                show_count(self.loads(self.students), "load", "loads"),
                show(given.delivery)
            ),
            Cost::Consumables => format!(
                "{} at {}",
                show_count(self.students, "student", "students"),
                show(given.consumables)
            ),
            Cost::Instructors => format!(
                "{}, {days} at {}",
                show_count(self.instructors, "instructor", "instructors"),
                show(given.instructor)
            ),
            Cost::Assistants => format!(
                "{}, {days} at {}",
                show_count(self.assistants, "assistant", "assistants"),
                show(given.assistant)
            ),
            Cost::Hire | Cost::Venue | Cost::Travel | Cost::Other => "for the course".to_owned(),
        }
    }

    fn how_stone(&self, units: Units) -> String {
        let price = self.given.stone.map_or_else(String::new, |price| {
            let amount = show_price(price.amount, self.given.currency.as_deref());
            format!("{amount} / {}", price.unit.word())
        });
        match self.load {
            Some(load) => format!(
                "{} of {} at {price}",
                show_count(self.loads(self.students), "load", "loads"),
                show_mass(load, units)
            ),
            None => format!("{} at {price}", show_mass(self.ordered, units)),
        }
    }
}

fn of_mass(price: StonePrice, mass: Mass) -> f64 {
    price.amount * mass.si() / price.unit.mass().si()
}

fn on_site(stone: &OnSite) -> Mass {
    match stone {
        OnSite::Heap(there) => *there,
        OnSite::ByKind(kinds) => kinds
            .iter()
            .fold(kilograms(0.0), |sum, (_, mass)| sum + *mass),
    }
}
