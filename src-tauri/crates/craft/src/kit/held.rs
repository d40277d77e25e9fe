//! What is held of a tool, in what state, and what other courses have booked of it.

use chrono::NaiveDate;

/// One tool as the kit store, or the course file, counts it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Held {
    /// The tool, as its rule names it.
    pub item: String,
    /// Ready for use.
    pub good: u32,
    /// Usable, with something to see to first.
    pub care: u32,
    /// Not to be used.
    pub broken: u32,
    /// Who owns them, where they are not the instructor's own.
    pub owners: Vec<String>,
    /// What other courses have booked on days of this course.
    pub taken: Vec<Taken>,
    /// No more than the course file itself counts on, if it says.
    pub at_most: Option<u32>,
}

/// So many of a tool booked by another course on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The other course's title.
    pub course: String,
    /// The day.
    pub date: NaiveDate,
    /// How many.
    pub count: u32,
}

impl Held {
    /// So many, all good and all free: as a course file counts.
    pub fn counted(item: impl Into<String>, good: u32) -> Self {
        Self {
            item: item.into(),
            good,
            ..Self::default()
        }
    }

    /// Fit to be taken along: good, or in need of care.
    pub fn usable(&self) -> u32 {
        self.good.saturating_add(self.care)
    }

    /// What other courses have booked on the day on which they have booked most.
    pub fn most_taken(&self) -> u32 {
        let days = self.taken.iter().map(|it| self.taken_on(it.date));
        days.max().unwrap_or_default()
    }

    /// The bookings of the day, or days, on which most is booked.
    pub fn busiest(&self) -> Vec<&Taken> {
        let most = self.most_taken();
        let busy = |it: &&Taken| 0 < it.count && self.taken_on(it.date) == most;
        self.taken.iter().filter(busy).collect()
    }

    /// What is left on the day on which other courses have booked most, and no more than the
    /// course counts on.
    pub fn free(&self) -> u32 {
        let left = self.usable().saturating_sub(self.most_taken());
        self.at_most.map_or(left, |most| left.min(most))
    }

    fn taken_on(&self, date: NaiveDate) -> u32 {
        let that_day = self.taken.iter().filter(|it| it.date == date);
        that_day.fold(0, |sum, it| sum.saturating_add(it.count))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_busiest_day_decides_what_is_free() {
        let day = |day| NaiveDate::from_ymd_opt(2027, 4, day).expect("a date");
        let taken = |course: &str, date, count| Taken {
            course: course.to_owned(),
            date,
            count,
        };
        let held = Held {
            care: 1,
            broken: 3,
            taken: vec![
                taken("A", day(23), 2),
                taken("B", day(24), 3),
                taken("C", day(24), 1),
            ],
            ..Held::counted("Spade", 5)
        };
        assert_eq!(held.usable(), 6);
        assert_eq!(held.free(), 2);
        let busiest: Vec<&str> = held.busiest().iter().map(|it| it.course.as_str()).collect();
        assert_eq!(busiest, ["B", "C"]);
        let nothing = Held {
            taken: vec![taken("A", day(23), 9)],
            ..Held::counted("Spade", 5)
        };
        assert_eq!(nothing.free(), 0);
    }
}
