//! The kit store through the terminal program: counts, bookings, clashes, lists, counting home.

use super::desk::Desk;
use checks::courses::plain;
use checks::program::{Ran, run};
use serde_json::Value;

/// What the store of these checks begins with.
const LIST: &str = "item,good,needs care,broken,owner\n\
    Spade,9,1,2,\n\
    Walling hammer,30,,,\n\
    Frame board,6,,,\n\
    Steel bar,12,,,\n\
    Pinch bar,1,,,Upper Dale Club\n\
    Moon ladder,1,,,\n";

/// Two courses beside a store: `other.walling` is on the days of `course.walling`.
struct Shed {
    desk: Desk,
    store: String,
}

impl Shed {
    fn new() -> Self {
        let text = plain().replace("\"Walling hammer\" = 20\n", "");
        let desk = Desk::with_course(&text);
        let other = text.replace("Plain course", "The other course");
        desk.put("other.walling", &other);
        let store = desk.file("store").display().to_string();
        let shed = Self { desk, store };
        let filled = shed.import(LIST, &[]);
        assert_eq!(filled.code, Some(0), "{}", filled.err);
        shed
    }

    fn import(&self, list: &str, rest: &[&str]) -> Ran {
        let list = self.desk.put("list.csv", list).display().to_string();
        let mut all = vec!["kit", "import", &*list];
        all.extend(rest);
        all.extend(["--store", &*self.store]);
        run(&all)
    }

    /// `coursewright kit CALL FILE REST --store DIR`.
    fn kit(&self, call: &str, file: &str, rest: &[&str]) -> Ran {
        let file = self.desk.file(file).display().to_string();
        let mut all = vec!["kit", call];
        if call != "list" {
            all.push(&file);
        }
        all.extend(rest);
        all.extend(["--store", &*self.store]);
        run(&all)
    }

    fn plan(&self, file: &str) -> Value {
        let file = self.desk.file(file).display().to_string();
        let ran = run(&["plan", &file, "--json", "--store", &self.store]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        serde_json::from_str(&ran.out).expect("JSON")
    }
}

fn tool<'p>(plan: &'p Value, item: &str) -> &'p Value {
    let lines = plan["kit"].as_array().expect("a kit");
    let line = lines.iter().find(|line| line["item"] == item);
    line.unwrap_or_else(|| panic!("no {item}"))
}

#[test]
fn what_is_usable_in_the_store_counts_and_what_is_broken_does_not() {
    let shed = Shed::new();
    let plan = shed.plan("course.walling");
    assert_eq!(tool(&plan, "Spade")["have"], 10);
    assert!(
        tool(&plan, "Barrow")["have"].is_null(),
        "nobody has counted"
    );
    // A course that has counted for itself is believed.
    let counted = plain();
    let desk = &shed.desk;
    desk.put("counted.walling", &counted);
    assert_eq!(
        tool(&shed.plan("counted.walling"), "Walling hammer")["have"],
        20
    );
}

#[test]
fn two_courses_on_one_day_do_not_count_on_the_same_tools() {
    let shed = Shed::new();
    let before = shed.plan("course.walling");
    let need = tool(&before, "Walling hammer")["need"]
        .as_u64()
        .expect("a need");
    assert_eq!(tool(&before, "Walling hammer")["have"], 30);
    let booked = shed.kit("book", "other.walling", &[]);
    assert!(booked.out.contains("The other course"), "{}", booked.out);
    let after = shed.plan("course.walling");
    assert_eq!(tool(&after, "Walling hammer")["have"], 30 - need);
    // What it has booked itself is no loss to a course.
    assert_eq!(
        tool(&shed.plan("other.walling"), "Walling hammer")["have"],
        30
    );
    // A course on other days has all of it.
    let later = plain()
        .replace("2027-04-24", "2027-05-24")
        .replace("2027-04-25", "2027-05-25")
        .replace("\"Walling hammer\" = 20\n", "");
    shed.desk.put("later.walling", &later);
    assert_eq!(
        tool(&shed.plan("later.walling"), "Walling hammer")["have"],
        30
    );
}

#[test]
fn frames_booked_elsewhere_are_not_in_stock_here() {
    let shed = Shed::new();
    let here = shed.plan("course.walling");
    let count = here["frames"]["count"].as_u64().expect("a count");
    assert_eq!(here["frames"]["short"], 0, "six are owned");
    shed.kit("book", "other.walling", &[]);
    let short = shed.plan("course.walling")["frames"]["short"].as_u64();
    assert_eq!(short, Some((2 * count).saturating_sub(6)));
}

#[test]
fn a_clash_is_named_with_course_and_date_and_ends_with_letting_go() {
    let shed = Shed::new();
    let few = shed.import("item,good\nWalling hammer,3\n", &[]);
    assert_eq!(few.code, Some(0), "{}", few.err);
    assert_eq!(shed.kit("book", "course.walling", &[]).code, Some(1));
    shed.kit("book", "other.walling", &[]);
    let list = shed.kit("list", "", &[]);
    assert_eq!(list.code, Some(1));
    let clash = list
        .out
        .lines()
        .find(|line| line.starts_with("! ") && line.contains("Walling hammer"));
    let clash = clash.unwrap_or_else(|| panic!("no clash in {}", list.out));
    for word in ["Plain course", "The other course", "2027", "3"] {
        assert!(clash.contains(word), "{word} in {clash}");
    }
    let check = run(&[
        "check",
        &shed.desk.course().display().to_string(),
        "--store",
        &shed.store,
    ]);
    assert!(check.out.contains("The other course"), "{}", check.out);
    let gone = shed.kit("release", "other.walling", &[]);
    assert_eq!(gone.code, Some(0));
    let told = shed.kit("list", "", &[]).out;
    assert!(!told.contains("The other course"), "{told}");
}

#[test]
fn counting_home_changes_the_store_and_can_be_taken_back() {
    let shed = Shed::new();
    shed.kit("book", "course.walling", &[]);
    let list = || shed.kit("list", "", &[]).out;
    let before = list();
    let none = shed.kit("home", "other.walling", &[]);
    assert_eq!(none.code, Some(2), "nothing was booked for it");
    let stray = shed.kit("home", "course.walling", &["--broken", "Anvil=1"]);
    assert_eq!(stray.code, Some(2));
    assert!(stray.err.contains("Anvil was not booked"), "{}", stray.err);
    assert_eq!(list(), before, "a refusal changes nothing");
    let rest = ["--broken", "Spade=2", "--lost", "Walling hammer=1"];
    let home = shed.kit("home", "course.walling", &rest);
    assert_eq!(home.code, Some(0), "{}", home.err);
    let after = list();
    assert!(
        after.contains("Spade: 7 good, 1 in need of care, 4 broken"),
        "{after}"
    );
    assert!(after.contains("Walling hammer: 29 good"), "{after}");
    assert!(after.contains("home on 2027-04-25"), "{after}");
    let back = shed.kit("not-home", "course.walling", &[]);
    assert_eq!(back.code, Some(0), "{}", back.err);
    assert_eq!(list(), before);
}

#[test]
fn a_list_with_a_fault_is_told_by_row_and_column_and_changes_nothing() {
    let shed = Shed::new();
    let before = shed.kit("list", "", &[]).out;
    for (list, words) in [
        ("item,good\nSpade,four\n", &["row 2", "good", "four"][..]),
        ("item,good\nSpade,4\nspade,5\n", &["row 2", "row 3"]),
        ("item,count\nSpade,4\n", &["good"]),
        ("item,good\nSpade,=2+2\n", &["row 2", "formula"]),
    ] {
        let ran = shed.import(list, &["--replace"]);
        assert_eq!(ran.code, Some(2), "{list}");
        let said = ran.err.to_lowercase();
        for word in words {
            assert!(said.contains(word), "{word} in {said}");
        }
        assert_eq!(shed.kit("list", "", &[]).out, before, "{list}");
    }
}

#[test]
fn an_export_taken_in_as_the_whole_list_is_the_same_store() {
    let shed = Shed::new();
    let before = shed.kit("list", "", &[]).out;
    for name in ["out.csv", "out.xlsx"] {
        let written = shed.kit("export", name, &[]);
        assert_eq!(written.code, Some(0), "{}", written.err);
        let twice = shed.kit("export", name, &[]);
        assert_eq!(
            twice.code,
            Some(2),
            "a file that is there is not overwritten"
        );
        let looked = shed.kit("import", name, &["--look", "--replace"]);
        assert!(looked.out.contains("6 as they were"), "{}", looked.out);
        let taken = shed.kit("import", name, &["--replace"]);
        assert_eq!(taken.code, Some(0), "{}", taken.err);
        assert_eq!(shed.kit("list", "", &[]).out, before);
    }
}

#[test]
fn planning_makes_no_store_where_there_is_none() {
    let desk = Desk::with_course(&plain());
    std::fs::create_dir(desk.file("empty")).expect("a folder");
    let store = desk.file("empty").display().to_string();
    assert_eq!(desk.call("plan", &["--store", &store]).code, Some(0));
    let inside = std::fs::read_dir(desk.file("empty"))
        .expect("reads")
        .count();
    assert_eq!(inside, 0);
}
