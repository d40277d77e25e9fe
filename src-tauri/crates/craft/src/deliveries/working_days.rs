//! Working days counted back from a date.

use chrono::{Datelike, NaiveDate, Weekday};

/// The date so many working days before another: Monday to Friday, without the days named in
/// `closed`. For none it is the date itself, whatever day that is.
///
/// Where the calendar ends before that, the earliest working day it has.
pub fn working_days_before(date: NaiveDate, count: u32, closed: &[NaiveDate]) -> NaiveDate {
    let works = |day: &NaiveDate| {
        !matches!(day.weekday(), Weekday::Sat | Weekday::Sun) && !closed.contains(day)
    };
    std::iter::successors(date.pred_opt(), NaiveDate::pred_opt)
        .filter(works)
        .zip(0..count)
        .last()
        .map_or(date, |(day, _)| day)
}

/// The day stone has to be there: the last working day before the first course day.
pub fn delivery_day(first: NaiveDate, closed: &[NaiveDate]) -> NaiveDate {
    working_days_before(first, 1, closed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn day(y: i32, m: u32, d: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(y, m, d).expect("a date")
    }

    /// By a calendar: 24 April 2027 is a Saturday, 26 March 2027 Good Friday and 29 March
    /// Easter Monday.
    #[test]
    fn working_days_leave_weekends_and_closed_days_out() {
        let easter = [day(2027, 3, 26), day(2027, 3, 29)];
        for (date, count, closed, expected) in [
            (day(2027, 4, 24), 0, &[][..], day(2027, 4, 24)),
            (day(2027, 4, 24), 1, &[], day(2027, 4, 23)),
            (day(2027, 4, 24), 5, &[], day(2027, 4, 19)),
            (day(2027, 4, 24), 10, &[], day(2027, 4, 12)),
            (day(2027, 3, 30), 1, &[], day(2027, 3, 29)),
            (day(2027, 3, 30), 1, &easter, day(2027, 3, 25)),
            (day(2027, 3, 30), 3, &easter, day(2027, 3, 23)),
        ] {
            assert_eq!(working_days_before(date, count, closed), expected);
        }
        assert_eq!(delivery_day(day(2027, 4, 26), &[]), day(2027, 4, 23));
    }

    #[test]
    fn the_calendar_has_an_end() {
        assert!(working_days_before(NaiveDate::MIN, 3, &[]) == NaiveDate::MIN);
    }

    proptest! {
        /// Never after the date, never on a day nobody works; one by one counted they are so
        /// many, and a day more is never later.
        #[test]
        fn counted_one_by_one_they_are_so_many(
            ahead in 0_i64..2000,
            count in 0_u32..260,
            closed in prop::collection::btree_set(-500_i64..0, 0..40),
        ) {
            let date = day(2027, 1, 1) + chrono::Days::new(ahead.unsigned_abs());
            let closed: Vec<NaiveDate> = closed
                .into_iter()
                .map(|back| date - chrono::Days::new(back.unsigned_abs()))
                .collect();
            let found = working_days_before(date, count, &closed);
            prop_assert!(found <= date);
            let between = found.iter_days().take_while(|it| *it < date).filter(|it| {
                it.weekday().number_from_monday() < 6 && !closed.contains(it)
            });
            prop_assert_eq!(between.count(), count as usize);
            if 0 < count {
                prop_assert!(found.weekday().number_from_monday() < 6 && !closed.contains(&found));
            }
            prop_assert!(working_days_before(date, count + 1, &closed) < found);
        }
    }
}
