//! Importing an export gives the same store, whatever the names.

use super::desk::{Desk, owned};
use craft::quantity::kilograms;
use proptest::prelude::*;
use store::{Kind, KitList, Lot, Mode, Store};

/// Names that spreadsheets, CSV and XML each take amiss in their own way.
const ODD: [&str; 22] = [
    "=1+1",
    "'=1",
    "''quoted''",
    "'",
    "-",
    "+44 123",
    "@home",
    "\"quoted\"",
    "5\" pin",
    "a,b;c\td",
    "two\nlines",
    "_x000D_",
    "_x005F_x0041_",
    "&lt;<b>&amp;",
    "👩‍🌾 spade",
    "e\u{301} or é",
    "\u{202E}desrever",
    "a\u{A0}b",
    "TRUE",
    "007",
    "1e5",
    "last record",
];

fn name() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(&ODD[..]).prop_map(str::to_owned),
        "[ -~\n\t\u{e9}\u{1F600}=+@'\"_x0-9]{1,12}",
        any::<String>(),
    ]
}

fn some_lot() -> impl Strategy<Value = Lot> {
    let mass = prop::option::of(prop_oneof![0.0..10_000.0, Just(0.1 + 0.2), Just(0.0)]);
    let counts = [0..=100_000_u32, 0..=5, 0..=100_000];
    (name(), name(), name(), name(), counts, mass).prop_map(
        |(item, unit, owner, note, counts, mass)| Lot {
            unit,
            note,
            mass: mass.map(kilograms),
            ..owned(&item, &owner, counts)
        },
    )
}

/// As many of the lots as a store takes: no empty names, none twice.
fn store_of(desk: &Desk, lots: &[Lot]) -> Store {
    let mut store = desk.with(&[owned("Spade", "", [1, 0, 0])]);
    for lot in lots {
        if let Err(refused) = store.add_lot(lot) {
            let known = ["empty-item", "lot-there", "unshowable"];
            assert!(known.contains(&refused.code()), "{refused}");
        }
    }
    store
}

fn comes_back(store: &Store, kind: Kind, name: &str) {
    let desk = Desk::new();
    let content = store.export(kind).expect("an export");
    let list = KitList::read(&desk.put(name, &content));
    let list = list.unwrap_or_else(|refused| panic!("{refused}"));
    let mut other = desk.store();
    let preview = other.preview(&list).expect("a preview");
    other.apply(&preview, Mode::Replace).expect("taken in");
    assert_eq!(other.lots().expect("lots"), store.lots().expect("lots"));
    let same = store.preview(&list).expect("a preview");
    assert_eq!(
        (same.added, same.changed, same.not_in_file),
        (vec![], vec![], vec![])
    );
    assert!(
        other.export(kind).expect("an export") == content,
        "the same bytes again"
    );
}

#[test]
fn every_odd_name_comes_back() {
    let desk = Desk::new();
    let lots = ODD.map(|name| Lot {
        unit: name.to_owned(),
        note: format!("{name}\n{name}"),
        mass: Some(kilograms(0.1)),
        ..owned(name, name, [1, 2, 3])
    });
    let store = desk.with(&lots);
    comes_back(&store, Kind::Csv, "kit.csv");
    comes_back(&store, Kind::Xlsx, "kit.xlsx");
}

#[test]
fn no_cell_of_a_text_begins_as_a_formula_does() {
    let desk = Desk::new();
    let lots = ODD.map(|name| owned(name, "", [1, 0, 0]));
    let text = desk.with(&lots).export(Kind::Csv).expect("an export");
    let mut reader = csv::Reader::from_reader(text.as_slice());
    let cells: Vec<String> = reader
        .records()
        .flat_map(|record| {
            record
                .expect("a record")
                .iter()
                .map(str::to_owned)
                .collect::<Vec<_>>()
        })
        .collect();
    assert!(cells.len() >= 8 * ODD.len());
    for cell in cells {
        assert!(
            !cell.starts_with(['=', '+', '-', '@', '\t', '\r']),
            "{cell}"
        );
    }
}

#[test]
fn an_export_of_nothing_is_refused_as_an_import() {
    let desk = Desk::new();
    for (kind, name) in [(Kind::Csv, "kit.csv"), (Kind::Xlsx, "kit.xlsx")] {
        let content = desk.store().export(kind).expect("an export");
        let refusal = desk.refusal(name, content);
        assert!(
            refusal.contains("there is no row below the columns' names"),
            "{refusal}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn importing_an_export_gives_the_same_store(lots in prop::collection::vec(some_lot(), 1..12)) {
        let desk = Desk::new();
        let store = store_of(&desk, &lots);
        comes_back(&store, Kind::Csv, "kit.csv");
        comes_back(&store, Kind::Xlsx, "kit.xlsx");
    }
}
