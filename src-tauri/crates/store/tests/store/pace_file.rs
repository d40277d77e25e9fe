//! The pace book to and from a file: the same book again, and every fault at its place.

use super::desk::{Desk, april};
use craft::pace::book::{Record, StageRecord};
use proptest::prelude::*;
use std::path::PathBuf;
use store::{PaceList, PaceRecord, Store};

const HEAD: &str = "course,first day,recorded on,stage,usual minutes,taken minutes,pairs at the string,course file\n";

fn stage((stage, usual, times, tied): (String, f64, f64, Option<f64>)) -> StageRecord {
    StageRecord {
        stage,
        usual_minutes: usual,
        taken_minutes: usual * times,
        tied,
    }
}

fn some_stages() -> impl Strategy<Value = Vec<StageRecord>> {
    let name = prop_oneof!["[a-z-]{1,9}", "[ -~\n\t\u{e9}=+@'\"]{1,9}"];
    let minutes = prop_oneof![0.001..100_000.0, Just(0.1 + 0.2), Just(90.0)];
    let tied = prop::option::of(1.0..1_000.0);
    prop::collection::vec((name, minutes, 0.11..9.9, tied).prop_map(stage), 1..6)
}

fn some_course() -> impl Strategy<Value = (String, String, Vec<StageRecord>)> {
    let title = prop_oneof!["[A-Za-z ]{0,12}", "[ -~\n\t\u{1F600};=+@'\"0-9]{0,12}"];
    ("[a-d=,;'\" ]{1,4}", title, some_stages())
}

/// A store with as many of the courses as it takes.
fn store_of(desk: &Desk, courses: &[(String, String, Vec<StageRecord>)]) -> Store {
    let mut store = desk.store();
    for (day, (file, title, stages)) in (1..).zip(courses) {
        let record = PaceRecord {
            path: desk.file(&format!("{file}.walling")),
            first_day: april(day),
            recorded_on: april(day + 2),
            record: Record {
                course: title.clone(),
                stages: stages.clone(),
            },
        };
        if let Err(refused) = store.record(&record) {
            let known = ["unnamed-stage", "stage-twice"];
            assert!(known.contains(&refused.code()), "{refused}");
        }
    }
    store
}

fn read(desk: &Desk, content: impl AsRef<[u8]>) -> PaceList {
    let list = PaceList::read(&desk.put("pace.csv", content));
    list.unwrap_or_else(|refused| panic!("{refused}"))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn importing_an_export_gives_the_same_book(courses in prop::collection::vec(some_course(), 1..6)) {
        let (here, there) = (Desk::new(), Desk::new());
        let store = store_of(&here, &courses);
        let book = store.pace_records().expect("records");
        prop_assume!(!book.is_empty());
        let content = store.export_pace().expect("an export");
        let list = read(&there, &content);
        let mut other = there.store();
        let preview = other.preview_pace(&list).expect("a preview");
        prop_assert_eq!(&preview.added, &book);
        other.apply_pace(&preview).expect("taken in");
        prop_assert_eq!(other.pace_records().expect("records"), book.clone());
        prop_assert_eq!(other.export_pace().expect("an export"), content);
        let again = store.preview_pace(&list).expect("a preview");
        prop_assert_eq!(again.same, book);
        prop_assert_eq!((again.added, again.changed.len(), again.not_in_file), (vec![], 0, vec![]));
    }
}

#[test]
fn a_book_reads_as_a_person_would_write_it() {
    let desk = Desk::new();
    let list = read(
        &desk,
        "Course file;Stage;Taken minutes;Usual minutes;First day;Recorded on;Course\n\
         C:\\walls\\a.walling;dig;62,5;60;2027-04-03;2027-04-05;Hollin Bank\n\
         \n\
         b.walling;dig;70;60;2027-04-09;2027-04-10;\n\
         C:\\walls\\a.walling;cope;40;50;2027-04-03;2027-04-05;Hollin Bank\n",
    );
    let [one, other] = list.records() else {
        panic!("two courses: {list:?}");
    };
    assert_eq!(one.path, PathBuf::from("C:\\walls\\a.walling"));
    let stages: Vec<(&str, f64)> = one
        .record
        .stages
        .iter()
        .map(|it| (it.stage.as_str(), it.taken_minutes))
        .collect();
    assert_eq!(stages, [("dig", 62.5), ("cope", 40.0)]);
    assert_eq!(
        (other.record.course.as_str(), other.first_day),
        ("", april(9))
    );
}

#[test]
fn what_was_recorded_otherwise_is_shown_and_can_be_taken_back() {
    let desk = Desk::new();
    let (here, there) = (desk.file("a.walling"), desk.file("b.walling"));
    let row = |file: &PathBuf, taken: &str| {
        format!(
            "A,2027-04-03,2027-04-05,dig,60,{taken},2.5,{}\n",
            file.display()
        )
    };
    let mut store = desk.store();
    let take_in = |store: &mut Store, rows: &str| {
        let preview = store
            .preview_pace(&read(&desk, format!("{HEAD}{rows}")))
            .expect("a preview");
        store.apply_pace(&preview).expect("taken in");
        preview
    };
    take_in(&mut store, &(row(&here, "70") + &row(&there, "80")));
    let before = store.pace_records().expect("records");
    let preview = take_in(&mut store, &row(&here, "90"));
    assert_eq!(
        (
            preview.added.len(),
            preview.changed.len(),
            preview.not_in_file.len()
        ),
        (0, 1, 1)
    );
    assert_eq!(preview.changed[0].before, before[0]);
    assert_ne!(store.pace_records().expect("records"), before);
    store.take_back_record(&here).expect("taken back");
    assert_eq!(store.pace_records().expect("records"), before);
    store.apply_pace(&preview).expect("as it was looked at");
    assert_eq!(
        store.apply_pace(&preview).expect_err("no longer").code(),
        "changed-since-preview"
    );
}

#[test]
fn every_fault_is_told_at_its_place_and_nothing_is_taken_in() {
    let desk = Desk::new();
    for (rows, told) in [
        (
            "A,24/04/2027,2027-04-30,dig,60,70,,a\n",
            "row 2, column B (first day): \"24/04/2027\" is not a date. Write it as 2027-04-24: year, month, day.",
        ),
        (
            "A,2027-04-24,2027-04-23,dig,60,70,,a\n",
            "row 2, column C (recorded on): the course begins on 24 April 2027, so its pace can't be recorded on 23 April 2027. Look at the dates.",
        ),
        (
            "A,2027-04-24,2027-04-25,,60,70,,a\n",
            "row 2, column D (stage): nothing stands here. Write the stage as an exported pace book names it, such as dig or first-lift.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,long,,a\n",
            "row 2, column F (taken minutes): \"long\" is not a number. Write minutes in digits, such as 90.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,240,5,,a\n",
            "row 2, column F (taken minutes): 5 minutes where 240 are usual is a pace no group has. A stage takes between a tenth of its usual time and ten times as long: look for a slip of the pen, or leave the row out.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,-60,-70,,a\n",
            "row 2, column E (usual minutes): -60 is less than nothing. Write 0 or more.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,70,0.5,a\n",
            "row 2, column G (pairs at the string): 0.5 is not from 1 to 1000. Count the pairs at the string, 1 or more; leave it blank where nobody waited for a string.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,70,,\n",
            "row 2, column H (course file): nothing stands here. Write the course's file with its folder; rows with the same file are one course.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,70,,a\nA,2027-04-24,2027-04-25,dig,60,70,,a\n",
            "row 3, column D (stage): the stage \"dig\" of this course is in row 2 already. Add its times up in one row.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,70,,a\nB,2027-04-24,2027-04-25,cope,60,70,,a\n",
            "row 3, column A (course): this differs from row 2, which is of the same course file. Write the same in all rows of a course.",
        ),
        (
            "=1+1,2027-04-24,2027-04-25,dig,60,70,,a\n",
            "row 2, column A (course): this is a formula. Paste its value instead.",
        ),
        (
            "A,2027-04-24,2027-04-25,dig,60,70,,\"a\n",
            "row 2, column H: a quotation mark opens here and is never closed. Close it, or write it twice (\"\") where one is meant.",
        ),
        (
            "",
            "there is no row below the columns' names. Write a row for each stage of a course.",
        ),
    ] {
        let path = desk.put("pace.csv", format!("{HEAD}{rows}"));
        let refused = PaceList::read(&path).expect_err(rows).to_string();
        let refused = desk.words(&refused);
        assert!(
            refused.starts_with("pace.csv: nothing was imported."),
            "{refused}"
        );
        assert!(refused.contains(told), "{rows}\n{refused}");
    }
}

#[test]
fn other_files_are_no_pace_book() {
    let desk = Desk::new();
    for (name, content, told) in [
        (
            "pace.xlsx",
            "",
            "the name of a pace book ends in .csv, and this one does not. Save it as CSV UTF-8 (.csv).",
        ),
        (
            "pace.csv",
            "item,good\nSpade,4\n",
            "row 1: this row should name the columns",
        ),
        (
            "pace.csv",
            "course,first day,recorded on,stage,usual minutes,course file\n",
            "there is no column \"taken minutes\"",
        ),
        ("pace.csv", "", "the file is empty"),
    ] {
        let refused = PaceList::read(&desk.put(name, content))
            .expect_err(name)
            .to_string();
        assert!(refused.contains(told), "{refused}");
    }
    let empty = desk.store().export_pace().expect("an export");
    let refused = PaceList::read(&desk.put("pace.csv", empty)).expect_err("nothing in it");
    assert!(
        refused.to_string().contains("there is no row below"),
        "{refused}"
    );
}
