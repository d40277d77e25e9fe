//! Kit lists as workbooks: what people's cells hold, and files that are no workbook.

use super::desk::{Desk, lot};
use craft::quantity::kilograms;
use proptest::prelude::*;
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook, Worksheet};
use std::io::{Cursor, Read, Write};
use std::time::{Duration, Instant};
use store::{Kind, KitList, Lot};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

/// A workbook whose sheet begins with these headings.
fn book(headings: &[&str], fill: impl FnOnce(&mut Worksheet)) -> Vec<u8> {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    for (column, heading) in (0..).zip(headings) {
        sheet.write(0, column, *heading).expect("a heading");
    }
    fill(sheet);
    book.save_to_buffer().expect("a workbook")
}

fn told(content: impl AsRef<[u8]>) -> String {
    let refusal = Desk::new().refusal("kit.xlsx", content);
    let (first, faults) = refusal.split_once('\n').expect("a fault");
    assert_eq!(first, "kit.xlsx: nothing was imported.");
    faults.to_owned()
}

#[test]
fn cells_are_taken_for_what_they_are() {
    let content = book(&["Item", "GOOD", "mass (kg)", "needs care"], |sheet| {
        // Numbers, numbers kept as text, a number as a name, blank rows and cells.
        sheet.write(1, 0, "Spade").expect("a cell");
        sheet.write(1, 1, 3).expect("a cell");
        sheet.write(1, 2, 1.25).expect("a cell");
        sheet.write(4, 0, 12).expect("a cell");
        sheet.write(4, 1, " 4 ").expect("a cell");
        sheet.write(4, 2, "0,125").expect("a cell");
        sheet.write(4, 3, 2.0).expect("a cell");
        sheet.write(4, 7, "  ").expect("a cell");
    });
    let with_mass = |kg, lot| Lot {
        mass: Some(kilograms(kg)),
        ..lot
    };
    let twelve = Lot {
        care: 2,
        ..lot("12", 4)
    };
    assert_eq!(
        Desk::new().list("kit.XLSX", content),
        [with_mass(1.25, lot("Spade", 3)), with_mass(0.125, twelve)]
    );
}

#[test]
fn the_first_sheet_that_is_shown_counts() {
    let mut book = Workbook::new();
    let hidden = book.add_worksheet();
    hidden.set_hidden(true);
    hidden.write(0, 0, "secret").expect("a cell");
    let shown = book.add_worksheet();
    shown.set_active(true);
    for (column, text) in (0..).zip(["item", "good"]) {
        shown.write(2, column, text).expect("a cell");
    }
    shown.write(3, 0, "Spade").expect("a cell");
    shown.write(3, 1, 3).expect("a cell");
    book.add_worksheet()
        .write(0, 0, "other things")
        .expect("a cell");
    let content = book.save_to_buffer().expect("a workbook");
    assert_eq!(Desk::new().list("kit.xlsx", content), [lot("Spade", 3)]);
}

#[test]
fn every_fault_is_told_at_its_place() {
    let date = ExcelDateTime::from_ymd(2027, 4, 24).expect("a date");
    let as_date = Format::new().set_num_format("yyyy-mm-dd");
    let content = book(&["item", "unit", "good", "mass kg"], |sheet| {
        let mut row = 0;
        let mut put = |fill: &dyn Fn(&mut Worksheet, u32)| {
            row += 1;
            sheet.write(row, 0, format!("Item {row}")).expect("a cell");
            sheet.write(row, 2, 1).expect("a cell");
            fill(sheet, row);
        };
        put(&|sheet, row| drop(sheet.write(row, 2, "six")));
        put(&|sheet, row| drop(sheet.write(row, 2, -2)));
        put(&|sheet, row| drop(sheet.write(row, 2, 2.5)));
        put(&|sheet, row| drop(sheet.write(row, 2, 1e9)));
        put(&|sheet, row| drop(sheet.write(row, 2, Formula::new("=1+1").set_result("2"))));
        put(&|sheet, row| drop(sheet.write(row, 0, Formula::new("=A1").set_result("item"))));
        put(&|sheet, row| drop(sheet.write_with_format(row, 2, &date, &as_date)));
        put(&|sheet, row| drop(sheet.write_with_format(row, 1, &date, &as_date)));
        put(&|sheet, row| drop(sheet.write(row, 2, true)));
        put(&|sheet, row| drop(sheet.write(row, 3, "1.250")));
        put(&|sheet, row| drop(sheet.write(row, 0, "item 1")));
        put(&|sheet, row| drop(sheet.write(row, 0, " ")));
        put(&|sheet, row| drop(sheet.write(row, 25, "note to self")));
        put(&|sheet, row| drop(sheet.write(row, 26, 0.5)));
    });
    let words = [
        "row 2, column C (good): \"six\" is not a number. Write a whole number in digits, such as 6.",
        "row 3, column C (good): -2 is less than nothing. Write 0 or more.",
        "row 4, column C (good): 2.5 is not a whole number. Write whole ones only.",
        "row 5, column C (good): 1000000000 is more than anybody has. The most is 100000; look for a slip of the finger.",
        "row 6, column C (good): this is a formula. Paste its value instead.",
        "row 7, column A (item): this is a formula. Paste its value instead.",
        "row 8, column C (good): this is a date or time. Write a whole number in digits, such as 6.",
        "row 9, column B (unit): this is a date or time. Format the cell as text and type it again.",
        "row 10, column C (good): this is a TRUE. Write a whole number in digits, such as 6.",
        "row 11, column D (mass kg): \"1.250\" can be read in two ways. Write 1250 without a mark, or fewer digits behind it.",
        "row 13, column A (item): the item has no name, but the row is not blank. Write what it is, or clear the row.",
        "row 14, column Z: \"note to self\" stands in a column without a name. Name the column in the first row, or clear it.",
        "row 15, column AA: 0.5 stands in a column without a name. Name the column in the first row, or clear it.",
    ];
    assert_eq!(told(content), words.join("\n"));
}

#[test]
fn what_is_no_workbook_is_told() {
    let compound = b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";
    let name: Vec<u8> = "EncryptedPackage"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    let sound = Desk::new()
        .with(&[lot("Spade", 2)])
        .export(Kind::Xlsx)
        .expect("an export");
    let cure = "Open it in a spreadsheet program, save it as .xlsx and import that.";
    for (content, words) in [
        (Vec::new(), "the file is empty. Choose the workbook with the kit list.".to_owned()),
        (
            b"item,good\nSpade,3\n".to_vec(),
            "this is not a workbook, whatever its name says. Open it in a spreadsheet program and save it as .xlsx.".to_owned(),
        ),
        (
            [&compound[..], &[0; 600], &name].concat(),
            "the workbook is protected by a password. Open it, save it without a password, and import that.".to_owned(),
        ),
        (
            [&compound[..], &[0; 600]].concat(),
            "this is an old workbook (.xls) under a new name. Open it in a spreadsheet program and save it as .xlsx.".to_owned(),
        ),
        (
            sound[..sound.len() / 2].to_vec(),
            format!("the workbook is damaged or not complete. {cure}"),
        ),
        (
            parts_of(&[("readme.txt", b"nothing")]),
            format!("the workbook is damaged or not complete. {cure}"),
        ),
    ] {
        assert_eq!(told(content), words);
    }
}

fn parts_of(parts: &[(&str, &[u8])]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, content) in parts {
        zip.start_file(*name, SimpleFileOptions::default())
            .expect("a part");
        zip.write_all(content).expect("its content");
    }
    zip.finish().expect("an archive").into_inner()
}

#[test]
fn a_workbook_that_swells_is_refused_before_it_is_read() {
    let large = vec![b' '; 300_000_000];
    let bomb = parts_of(&[("xl/sharedStrings.xml", &large)]);
    assert!(bomb.len() < 1_000_000);
    let words = "the workbook unpacks to more than the 200 MB a kit list may have. Copy the kit list alone into a new workbook and import that.";
    let began = Instant::now();
    assert_eq!(told(&bomb), words);
    // One that lies about its size: the size of the part as the directory gives it.
    let mut lying = bomb.clone();
    let entry = bomb
        .windows(4)
        .rposition(|it| it == b"PK\x01\x02")
        .expect("an entry");
    lying[entry + 24..entry + 28].copy_from_slice(&10_u32.to_le_bytes());
    let lied = told(&lying);
    assert!(
        lied == words || lied.starts_with("the workbook is damaged"),
        "{lied}"
    );
    let names: Vec<String> = (0..2_001).map(|n| format!("part {n}")).collect();
    let many: Vec<(&str, &[u8])> = names.iter().map(|name| (name.as_str(), &b""[..])).collect();
    assert_eq!(told(parts_of(&many)), words);
    assert!(
        began.elapsed() < Duration::from_secs(10),
        "{:?}",
        began.elapsed()
    );
}

#[test]
fn a_hundred_thousand_rows_end_well_and_soon() {
    let content = book(&["item", "good"], |sheet| {
        for row in 1..=100_000 {
            sheet.write(row, 0, format!("Item {row}")).expect("a cell");
            sheet.write(row, 1, row % 9).expect("a cell");
        }
    });
    let began = Instant::now();
    assert_eq!(
        told(content),
        "row 20002: this is one row more than the 20000 a kit list may have. Leave in what is kit, or import it in several files."
    );
    // Cells far out take no room.
    let far = book(&["item", "good"], |sheet| {
        sheet.write(1_048_575, 16_383, "far").expect("a cell");
    });
    assert_eq!(
        told(far),
        "row 1048576, column XFD: \"far\" stands in a column without a name. Name the column in the first row, or clear it.\nrow 1048576, column A (item): the item has no name, but the row is not blank. Write what it is, or clear the row.\nrow 1048576, column B (good): nothing says how many there are. Write a whole number; 0 if there is none."
    );
    assert!(
        began.elapsed() < Duration::from_secs(10),
        "{:?}",
        began.elapsed()
    );
}

/// The workbook with one of its parts changed, packed anew.
fn changed(content: &[u8], change: impl FnOnce(&mut [(String, Vec<u8>)])) -> Vec<u8> {
    let mut old = ZipArchive::new(Cursor::new(content)).expect("an archive");
    let mut parts = Vec::new();
    for index in 0..old.len() {
        let mut entry = old.by_index(index).expect("a part");
        let mut bytes = Vec::new();
        entry.read_to_end(&mut bytes).expect("its content");
        let name = entry.name().expect("a name").to_string();
        parts.push((name, bytes));
    }
    change(&mut parts);
    let parts: Vec<(&str, &[u8])> = parts
        .iter()
        .map(|(name, bytes)| (name.as_str(), bytes.as_slice()))
        .collect();
    parts_of(&parts)
}

fn mangled(content: &[u8], part: usize, changes: &[(usize, u8)]) -> Vec<u8> {
    changed(content, |parts| {
        let part = part % parts.len();
        let bytes = &mut parts[part].1;
        for (at, byte) in changes {
            let at = at % bytes.len();
            bytes[at] = *byte;
        }
    })
}

/// Found by the property below: the library that reads workbooks panics on this one.
#[test]
fn a_table_that_ends_before_it_begins_ends_no_program() {
    let sound = book(&["item", "good"], |_| {});
    let upside_down = changed(&sound, |parts| {
        let sheet = parts
            .iter_mut()
            .find(|(name, _)| name.ends_with("sheet1.xml"));
        let sheet = &mut sheet.expect("a sheet").1;
        let text = String::from_utf8(sheet.clone()).expect("text");
        let other = text.replace("\"A1:B1\"", "\"D1:B1\"");
        assert_ne!(text, other);
        *sheet = other.into_bytes();
    });
    let told = told(upside_down);
    let known = ["the workbook is damaged", "there is no row below"];
    assert!(known.iter().any(|it| told.starts_with(it)), "{told}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn a_mangled_workbook_is_read_or_refused(
        part in 0_usize..12,
        changes in prop::collection::vec((any::<usize>(), prop_oneof![any::<u8>(), 0x20_u8..0x7F]), 1..6),
    ) {
        let sound = book(&["item", "good", "note"], |sheet| {
            for row in 1..4 {
                sheet.write(row, 0, format!("Item {row}")).expect("a cell");
                sheet.write(row, 1, row * 1_000).expect("a cell");
                sheet.write(row, 2, Formula::new("=1+1")).expect("a cell");
            }
        });
        let path = Desk::new();
        let file = path.put("kit.xlsx", mangled(&sound, part, &changes));
        if let Err(refused) = KitList::read(&file) {
            prop_assert!(!refused.to_string().contains("panic"));
        }
    }

    #[test]
    fn nonsense_under_the_name_of_csv_is_read_or_refused(bytes in prop::collection::vec(
        prop_oneof![any::<u8>(), Just(b'"'), Just(b','), Just(b'\n'), Just(b'\r'), Just(b';')], 0..80,
    )) {
        let desk = Desk::new();
        let text = [b"item,good\n", bytes.as_slice()].concat();
        for content in [bytes, text] {
            let _ = KitList::read(&desk.put("kit.csv", content));
        }
    }
}
