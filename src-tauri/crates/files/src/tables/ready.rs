//! `ready.toml` as the sums want it.

use super::rows;
use craft::tables::{ComeByTimes, LoadingNote, LoadingTable, ReadyTable, Task};

/// What has to be arranged, the times it takes, and what vehicles are reckoned with.
pub(super) fn ready(file: rows::Ready) -> ReadyTable {
    let (times, loading) = (file.times, file.loading);
    ReadyTable {
        tasks: file
            .task
            .into_iter()
            .map(|row| Task {
                id: row.id,
                text: row.text,
                when: row.when,
                part: row.part,
                applies: row.applies,
                source: row.source,
            })
            .collect(),
        times: ComeByTimes {
            borrow_days: times.borrow_days,
            hire_days: times.hire_days,
            buy_days: times.buy_days,
            source: times.source,
        },
        loading: LoadingTable {
            person: loading.person.0,
            person_source: loading.source,
            notes: loading
                .note
                .into_iter()
                .map(|row| LoadingNote {
                    text: row.text,
                    source: row.source,
                })
                .collect(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::CourseFile;
    use crate::shelf::Shelf;
    use craft::conditions::Conditions;
    use craft::loads::Loads;
    use craft::quantity::kilograms;
    use craft::readiness::{Planned, to_do};
    use craft::tables::{Part, When};

    const BUILT_IN: &str = include_str!("../../../../../lessons/tables/ready.toml");

    fn read(text: &str) -> Result<ReadyTable, String> {
        let rows: Result<rows::Ready, _> = toml_edit::de::from_str(text);
        rows.map(ready).map_err(|error| error.to_string())
    }

    #[test]
    fn the_built_in_table_is_sound() {
        let shelf = Shelf { own: None };
        let table = ready(shelf.table("tables/ready.toml").expect("a sound table"));
        assert_eq!(table.loading.person, kilograms(80.0));
        assert!(!table.loading.notes.is_empty());
        let of = |id: &str| table.tasks.iter().find(|task| task.id == id);
        for (id, part) in [
            ("permission", Part::Venue),
            ("insurance", Part::Papers),
            ("tipper", Part::Stone),
            ("services", Part::Venue),
            ("wildlife", Part::Venue),
            ("stock", Part::Venue),
            ("nights", Part::Days),
            ("wet-weather", Part::Days),
            ("toilets", Part::Venue),
            ("fitness", Part::People),
            ("consent", Part::People),
            ("emergency", Part::Venue),
            ("first-aider", Part::People),
            ("public-path", Part::Venue),
            ("print", Part::Papers),
            ("ring-venue", Part::Venue),
            ("load", Part::Kit),
        ] {
            assert_eq!(of(id).map(|task| task.part), Some(part), "{id}");
        }
        assert_eq!(of("record").map(|task| task.when), Some(When::DaysAfter(1)));
        for task in &table.tasks {
            assert!(
                task.text.ends_with('.') && !task.source.is_empty(),
                "{}",
                task.id
            );
        }
        // Borrowing comes before hiring and buying: it may be refused.
        let times = &table.times;
        assert!(times.buy_days <= times.hire_days && times.hire_days <= times.borrow_days);
    }

    /// The example course with a van.
    #[test]
    fn the_example_course_is_arranged_and_loaded() {
        let library = Library::built_in().expect("the built-in library");
        let van = "[[vehicle]]\nname = \"Van\"\npayload = \"600 kg\"\npeople = 2\n";
        let text = format!("{}\n{van}", crate::bare::bare(false));
        let table = read(BUILT_IN).expect("a sound table");
        let file = CourseFile::parse(&text).expect("sound");
        let (course, tables) = (&file.course, &library.tables);
        let plan = craft::plan::plan(course, tables).expect("a plan");
        let loads = Loads::of_course(course, &plan.kit, &tables.stages, &table.loading)
            .expect("room in the van")
            .expect("a van");
        // By hand: 600 - 2 x 80 = 440 kg.
        assert_eq!(loads.runs[0].holds[0].limit, kilograms(440.0));
        assert!(loads.fits_nowhere.is_empty() && loads.runs.len() <= loads.fewest + 1);
        let conditions = Conditions::of(course, &plan.sun);
        let planned = Planned {
            stone: &plan.stone,
            retaining: plan.retaining.as_ref(),
            frames: &plan.frames,
            timber: plan.timber.as_ref(),
            kit: &plan.kit,
            loads: Some(&loads),
            money: None,
            forecast: &plan.forecast,
            from_here: None,
            timetable: &plan.timetable,
            wishes: &[],
            pairs: &[],
            lessons: &[],
            conditions: &conditions,
            ready: &table,
            deliveries: &plan.deliveries,
        };
        let list = to_do(course, planned);
        let has = |id: &str| list.iter().any(|it| it.id == id);
        // Bar frames and no bank, in April: no day is cold, hot or dark.
        assert!(has("try-a-bar") && !has("approval") && !has("bank"));
        assert!(!has("cold") && !has("heat") && !has("lamps"));
        let undated = list.iter().filter(|it| it.by.is_none());
        assert!(undated.map(|it| &it.id[..]).all(|id| id == "chance"));
        let of_table = |id: &str| table.tasks.iter().any(|task| task.id == id);
        for it in &list {
            let reminder = of_table(&it.id) || it.id.starts_with("prepare:");
            assert!(it.counts != reminder, "{}", it.id);
        }
    }

    /// So that whoever reads the file reads it in order; a working day is taken for seven
    /// fifths of a calendar day, so neighbours may be out of order by one.
    #[test]
    fn the_built_in_tasks_stand_in_the_order_they_fall_due() {
        let table = read(BUILT_IN).expect("a sound table");
        let ahead: Vec<f64> = table
            .tasks
            .iter()
            .map(|task| match task.when {
                When::DaysBefore(days) => f64::from(days),
                When::WorkingDaysBefore(days) => f64::from(days) * 7.0 / 5.0,
                When::DaysAfter(days) => -1.0 - f64::from(days),
            })
            .collect();
        assert!(ahead.is_sorted_by(|a, b| *b <= *a + 1.0), "{ahead:?}");
    }

    /// Each slip is made in the built-in table and told in words.
    #[test]
    fn slips_in_the_table_are_told() {
        for (was, is, words) in [
            (
                "borrow_days = 21",
                "borrow_days = -1",
                "nothing or more is due",
            ),
            (
                "borrow_days = 21",
                "borrow_days = 2.5",
                "a whole number of days",
            ),
            (
                "days_before = 42",
                "days_before = 4200",
                "a whole number of days",
            ),
            (
                "days_before = 42",
                "",
                "\"permission\" needs one of days_before",
            ),
            (
                "days_before = 42",
                "days_before = 42\ndays_after = 1",
                "needs one of",
            ),
            (
                "id = \"permission\"",
                "id = \"Permission\"",
                "small letters",
            ),
            ("id = \"permission\"", "id = \"stone\"", "works out itself"),
            (
                "id = \"permission\"",
                "id = \"insurance\"",
                "\"insurance\" is there twice",
            ),
            (
                "part = \"venue\"",
                "part = \"veneu\"",
                "\"veneu\" is not one of: venue",
            ),
            ("applies = \"always\"", "applies = \"often\"", "often"),
            ("person = \"80 kg\"", "person = \"80\"", "without a unit"),
            (
                "person = \"80 kg\"",
                "person = \"0 kg\"",
                "not more than nothing",
            ),
            ("person = \"80 kg\"", "", "missing field `person`"),
        ] {
            assert!(BUILT_IN.contains(was), "{was}");
            let error = read(&BUILT_IN.replacen(was, is, 1)).expect_err(is);
            assert!(error.contains(words), "{is}: {error}");
        }
    }
}
