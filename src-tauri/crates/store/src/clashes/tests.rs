//! Clashes and what is free against a model that counts everything by brute force.

use super::*;
use crate::{CourseEntry, Lot, Return};
use chrono::Days;
use craft::kit::name_key;
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::path::Path;

/// Items by number; the spelling differs from use to use, and the last is never held.
const ITEMS: [[&str; 2]; 5] = [
    ["Spade", "SPADE"],
    ["Frame", " frame"],
    ["Über-Bar", "über-bar"],
    ["Line  and pins", "line and pins"],
    ["Tent", "tent"],
];

fn date(day: u8) -> NaiveDate {
    let first = NaiveDate::from_ymd_opt(2027, 4, 28).expect("a date");
    first + Days::new(day.into())
}

/// A course: its days, what it books as item, spelling and count, and whether it is home.
#[derive(Debug, Clone)]
struct Course {
    days: Vec<u8>,
    items: Vec<(usize, usize, u32)>,
    home: bool,
}

impl Course {
    fn wants(&self, item: usize) -> u32 {
        let of_it = self.items.iter().filter(|(which, ..)| *which == item);
        of_it.map(|(.., count)| count).sum()
    }

    fn out_on(&self, day: u8) -> bool {
        !self.home && self.days.contains(&day)
    }

    fn entry(&self, number: usize) -> CourseEntry {
        CourseEntry {
            path: PathBuf::from(format!("/courses/{number}.walling")),
            title: format!("Course {number}"),
            days: self.days.iter().copied().map(date).collect(),
        }
    }
}

fn course() -> impl Strategy<Value = Course> {
    let days = prop::collection::vec(0..6_u8, 0..4);
    let items = prop::collection::vec((0..ITEMS.len(), 0..2_usize, 0..6_u32), 0..6);
    let parts = (days, items, prop::bool::weighted(0.2));
    parts.prop_map(|(days, items, home)| Course { days, items, home })
}

/// Lots as item, owner, good, care and broken.
type Lots = Vec<(usize, u8, [u32; 3])>;

fn lots() -> impl Strategy<Value = Lots> {
    let counts = [0..6_u32, 0..3_u32, 0..3_u32];
    prop::collection::vec((0..ITEMS.len() - 1, 0..3_u8, counts), 0..10)
}

/// The store of these lots and courses, and what is usable of each item: `None` if no lot
/// holds it.
fn build(lots: &Lots, courses: &[Course]) -> (Store, Vec<Option<u32>>) {
    let mut store = Store::in_memory();
    let mut seen = BTreeSet::new();
    let mut usable = vec![None; ITEMS.len()];
    for (item, owner, [good, care, broken]) in lots {
        if !seen.insert((item, owner)) {
            continue;
        }
        let lot = Lot {
            item: ITEMS[*item][usize::from(owner % 2)].to_owned(),
            owner: ["", "Club", "Neighbour"][usize::from(*owner)].to_owned(),
            good: *good,
            care: *care,
            broken: *broken,
            ..Lot::default()
        };
        store.add_lot(&lot).expect("a lot");
        *usable[*item].get_or_insert(0) += good + care;
    }
    for (number, course) in courses.iter().enumerate() {
        let items = course.items.iter();
        let items: Vec<(String, u32)> = items
            .map(|(item, spelling, count)| (ITEMS[*item][*spelling].to_owned(), *count))
            .collect();
        let entry = course.entry(number);
        store.book(&entry, &items).expect("booked");
        if course.home {
            let none: [Return; 0] = [];
            store.home(&entry.path, &none, date(9)).expect("home");
        }
    }
    (store, usable)
}

/// A day, an item, and which courses take how many.
type Found = (u8, usize, Vec<(usize, u32)>);

/// Every day and item looked at one by one.
fn by_brute_force(courses: &[Course], usable: &[Option<u32>]) -> Vec<Found> {
    let mut found = Vec::new();
    for day in 0..6 {
        for (item, usable) in usable.iter().enumerate() {
            let out = courses.iter().enumerate().filter(|(_, it)| it.out_on(day));
            let claims: Vec<(usize, u32)> = out
                .map(|(number, it)| (number, it.wants(item)))
                .filter(|(_, count)| 0 < *count)
                .collect();
            let sum: u32 = claims.iter().map(|(_, count)| count).sum();
            if usable.is_some_and(|usable| usable < sum) {
                found.push((day, item, claims));
            }
        }
    }
    found
}

fn item_of(name: &str) -> usize {
    let same = |it: &str| name_key(it) == name_key(name);
    let place = ITEMS
        .iter()
        .position(|spellings| spellings.iter().any(|it| same(it)));
    place.expect("a known item")
}

fn claims_of(claims: &[Claim]) -> Vec<(usize, u32)> {
    let number = |claim: &Claim| claim.title.trim_start_matches("Course ").parse();
    let claims = claims.iter();
    claims
        .map(|it| (number(it).expect("a number"), it.count))
        .collect()
}

proptest! {
    #[test]
    fn clashes_are_those_found_by_brute_force(
        lots in lots(),
        courses in prop::collection::vec(course(), 0..7),
    ) {
        let (store, usable) = build(&lots, &courses);
        let found = store.clashes().expect("clashes");
        let mut clashes: Vec<_> = found
            .clashes
            .iter()
            .map(|it| {
                let item = item_of(&it.item);
                assert_eq!(Some(it.usable), usable[item]);
                let day = (it.date - date(0)).num_days();
                (u8::try_from(day).expect("a day"), item, claims_of(&it.courses))
            })
            .collect();
        let dates: Vec<NaiveDate> = found.clashes.iter().map(|it| it.date).collect();
        prop_assert!(dates.is_sorted());
        clashes.sort();
        prop_assert_eq!(clashes, by_brute_force(&courses, &usable));
        for (item, usable) in usable.iter().enumerate() {
            let open = courses.iter().enumerate().filter(|(_, it)| !it.home && 0 < it.wants(item));
            let wanted: Vec<_> = open.map(|(number, it)| (number, it.wants(item))).collect();
            let told = found.not_in_store.iter().find(|it| item_of(&it.item) == item);
            match told {
                Some(told) => prop_assert_eq!(claims_of(&told.courses), wanted),
                None => prop_assert!(usable.is_some() || wanted.is_empty()),
            }
            prop_assert!(told.is_none() || usable.is_none());
        }
    }

    #[test]
    fn what_is_free_leaves_a_courses_own_bookings_out(
        lots in lots(),
        courses in prop::collection::vec(course(), 1..7),
        which in any::<prop::sample::Index>(),
    ) {
        let (store, usable) = build(&lots, &courses);
        let own = which.index(courses.len());
        let days = &courses[own].days;
        let entry = courses[own].entry(own);
        let path: &Path = &entry.path;
        let held = store.held_for(Some(path), &entry.days).expect("held");
        prop_assert_eq!(held.len(), usable.iter().flatten().count());
        for held in held {
            let item = item_of(&held.item);
            prop_assert_eq!(Some(held.usable()), usable[item]);
            let others = |day: u8| {
                let others = courses.iter().enumerate().filter(|(it, _)| *it != own);
                let out = others.filter(|(_, it)| it.out_on(day));
                out.map(|(_, it)| it.wants(item)).sum::<u32>()
            };
            let busiest = days.iter().map(|day| others(*day)).max().unwrap_or_default();
            prop_assert_eq!(held.free(), held.usable().saturating_sub(busiest));
            let own_title = &entry.title;
            prop_assert!(held.taken.iter().all(|it| it.course != *own_title));
        }
    }
}
