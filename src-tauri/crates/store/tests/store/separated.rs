//! Kit lists as CSV: what people and their spreadsheets write, and every fault at its place.

use super::desk::{Desk, lot, owned};
use craft::quantity::kilograms;
use std::time::{Duration, Instant};
use store::{KitList, Lot, MOST_ROWS};

fn with_mass(kg: f64, lot: Lot) -> Lot {
    Lot {
        mass: Some(kilograms(kg)),
        ..lot
    }
}

/// What is told of a text, without the first line, which names the file.
fn told(text: impl AsRef<[u8]>) -> String {
    let refusal = Desk::new().refusal("kit.csv", text);
    let (first, faults) = refusal.split_once('\n').expect("a fault");
    assert_eq!(first, "kit.csv: nothing was imported.");
    faults.to_owned()
}

#[test]
fn lists_as_spreadsheets_of_many_lands_write_them() {
    let spade = || with_mass(1.5, owned("Spade", "", [3, 1, 0]));
    for (how, text) in [
        ("commas", "item,good,needs care,mass kg\nSpade,3,1,1.5\n"),
        (
            "other order and capitals",
            "MASS (kg),Good,Needs-Care,Item\n1.5,3,1,Spade",
        ),
        (
            "a byte order mark",
            "\u{FEFF}item,good,needs care,mass kg\r\nSpade,3,1,1.5\r\n",
        ),
        (
            "semicolons and a decimal comma",
            "item;good;needs care;mass kg\nSpade;3;1;1,5\n",
        ),
        (
            "semicolons and a point",
            "item;good;needs care;mass kg\nSpade;3;1;1.5\n",
        ),
        (
            "tabs",
            "item\tgood\tneeds care\tmass kg\nSpade\t3\t1\t1,5\n",
        ),
        (
            "the separator named",
            "sep=;\nitem;good;needs care;mass kg\nSpade;3;1;1,50\n",
        ),
        (
            "old line ends",
            "item,good,needs care,mass kg\rSpade,3,1,1.5\r",
        ),
        (
            "blank lines and cells",
            "\n\nitem,good,needs care,mass kg,,\n,,,\n\n Spade , 3,1 ,1.5,,\n",
        ),
        (
            "numbers with noughts",
            "item,good,needs care,mass kg\nSpade,3.0,01,1.50\n",
        ),
        (
            "quotation marks",
            "\"item\",\"good\",needs care,mass kg\n\"Spade\",\"3\",1,1.5\n",
        ),
    ] {
        assert_eq!(Desk::new().list("kit.csv", text), [spade()], "{how}");
    }
    assert_eq!(
        Desk::new().list("KIT.CSV", "item,good\nSpade,3"),
        [lot("Spade", 3)]
    );
}

#[test]
fn grams_are_not_thousands() {
    let mass = |text: &str| Desk::new().list("kit.csv", text)[0].mass.expect("a mass");
    assert_eq!(mass("item,good,mass kg\na,1,0.125\n"), kilograms(0.125));
    assert_eq!(mass("item,good,mass kg\na,1,1.125\n"), kilograms(1.125));
    assert_eq!(mass("item;good;mass kg\na;1;1,125\n"), kilograms(1.125));
    assert_eq!(mass("item;good;mass kg\na;1;0.125\n"), kilograms(0.125));
}

#[test]
fn every_fault_is_told_at_its_place() {
    for (text, words) in [
        (
            "item,good\nSpade,six\n",
            "row 2, column B (good): \"six\" is not a number. Write a whole number in digits, such as 6.",
        ),
        (
            "good,item\n3 pieces,Spade\n",
            "row 2, column A (good): \"3 pieces\" is not a number. Write a whole number in digits, such as 6.",
        ),
        (
            "item,good,broken\nSpade,6,1e3\n",
            "row 2, column C (broken): \"1e3\" is not a number. Write a whole number in digits, such as 6.",
        ),
        (
            "item,good\nSpade,-2\n",
            "row 2, column B (good): -2 is less than nothing. Write 0 or more.",
        ),
        (
            "item,good\nSpade,2.5\n",
            "row 2, column B (good): 2.5 is not a whole number. Write whole ones only.",
        ),
        (
            "item,good\nSpade,100001\n",
            "row 2, column B (good): 100001 is more than anybody has. The most is 100000; look for a slip of the finger.",
        ),
        (
            "item,good\nSpade,1.000\n",
            "row 2, column B (good): \"1.000\" can be read in two ways. Write 1000 without a mark, or fewer digits behind it.",
        ),
        (
            "item;good;mass kg\nSpade;1;1.250\n",
            "row 2, column C (mass kg): \"1.250\" can be read in two ways. Write 1250 without a mark, or fewer digits behind it.",
        ),
        (
            "item,good,mass kg\nSpade,1,\"1,250\"\n",
            "row 2, column C (mass kg): \"1,250\" can be read in two ways. Write 1250 without a mark, or fewer digits behind it.",
        ),
        (
            "item,good,mass kg\nSpade,1,\"1,5\"\n",
            "row 2, column C (mass kg): \"1,5\" is not a number. Write it with a point: 1.5.",
        ),
        (
            "item,good,mass kg\nSpade,1,1.5 kg\n",
            "row 2, column C (mass kg): \"1.5 kg\" is not a number. Write kilograms in digits, such as 1.5.",
        ),
        (
            "item,good,mass kg\nSpade,1,-0.5\n",
            "row 2, column C (mass kg): -0.5 is less than nothing. Write 0 or more.",
        ),
        (
            "item,good,mass kg\nSpade,1,10000.5\n",
            "row 2, column C (mass kg): 10000.5 is more than anybody has. The most is 10000; look for a slip of the finger.",
        ),
        (
            "item,good,mass kg\nSpade,1,NaN\nPick,1,inf\n",
            "row 2, column C (mass kg): \"NaN\" is not a number. Write kilograms in digits, such as 1.5.\nrow 3, column C (mass kg): \"inf\" is not a number. Write kilograms in digits, such as 1.5.",
        ),
        (
            "item,good\nSpade,\n",
            "row 2, column B (good): nothing says how many there are. Write a whole number; 0 if there is none.",
        ),
        (
            "item,good\n ,3\n",
            "row 2, column A (item): the item has no name, but the row is not blank. Write what it is, or clear the row.",
        ),
        (
            "item,good\nSpade,3\n\n\"Pick\nlong\",1\nsPADE,2\n",
            "row 5, column A (item): \"sPADE\" is in row 2 already. Put both into one row, or name their owners.",
        ),
        (
            "owner,item,good\nClub,Spade,3\n,Spade,3\nCLUB, spade,2\n",
            "row 4, column B (item): \"spade\" of \"CLUB\" is in row 2 already. Put both into one row.",
        ),
        (
            "item,good\n=A1,3\nSpade,=1+1\n",
            "row 2, column A (item): this is a formula. Paste its value instead.\nrow 3, column B (good): this is a formula. Paste its value instead.",
        ),
        (
            "item,good\nSpa\u{7}de,3\n",
            "row 2, column A (item): this holds a character that can't be shown (U+0007). Type it again without it.",
        ),
        (
            "item,good\nSpade,3,rusty,,x\nPick,1,new\n",
            "row 2, column C: \"rusty\" stands in a column without a name. Name the column in the first row, or clear it.\nrow 2, column E: \"x\" stands in a column without a name. Name the column in the first row, or clear it.",
        ),
        (
            "item,good\nSpade,3\n\"Pick,1\nBar,2\n",
            "row 3, column A: a quotation mark opens here and is never closed. Close it, or write it twice (\"\") where one is meant.",
        ),
    ] {
        assert_eq!(told(text), words, "{text:?}");
    }
}

#[test]
fn a_long_text_is_told_short() {
    let text = format!("item,good\n{},{}\n", "x".repeat(201), "9".repeat(400));
    assert_eq!(
        told(text),
        "row 2, column A (item): this has 201 characters, and 200 at most can be kept. Shorten it.\nrow 2, column B (good): 9999999999999999999999999999999999999999... is more than anybody has. The most is 100000; look for a slip of the finger."
    );
}

#[test]
fn headings_are_told_with_what_was_found() {
    for (text, words) in [
        (
            "item,owner\nSpade,Club\n",
            "row 1: there is no column \"good\"; what was found is \"item\", \"owner\". Name the columns in the first row: \"item\" and \"good\" there must be.",
        ),
        (
            "item,goood\nSpade,3\n",
            "row 1: there is no column \"good\"; what was found is \"item\", \"goood\". Did you mean \"goood\"? Call it \"good\".",
        ),
        (
            "\n\nSpade,3\nPick,1\n",
            "row 3: this row should name the columns; what was found is \"Spade\", \"3\". Write the columns' names above the rows: item, unit, owner, good, needs care, broken, mass kg, note. Only \"item\" and \"good\" must be there.",
        ),
        (
            "item,good,brokn,colour\nSpade,3,0,red\n",
            "row 1, column C: a kit list has no column \"brokn\". Did you mean \"broken\"?\nrow 1, column D: a kit list has no column \"colour\". Take it out; the columns are item, unit, owner, good, needs care, broken, mass kg, note.",
        ),
        (
            "item,good,Good\nSpade,3,3\n",
            "row 1, column C (good): column B is called \"good\" too. Leave in one of the two.",
        ),
        (
            "item,good,=1\nSpade,3,3\n",
            "row 1, column C: the heading is not a word. Write the column's name as plain text.",
        ),
    ] {
        assert_eq!(told(text), words, "{text:?}");
    }
}

#[test]
fn other_encodings_are_told_with_the_place() {
    let utf16 = |text: &str, mark: &[u8]| {
        let units = text.encode_utf16().flat_map(u16::to_le_bytes);
        mark.iter().copied().chain(units).collect::<Vec<u8>>()
    };
    let list = "item,good\nSpade,3\n";
    let wide = "this file is in UTF-16 (some programs call it \"Unicode text\"). Save it as \"CSV UTF-8\" and import that.";
    assert_eq!(told(utf16(list, b"\xFF\xFE")), wide);
    assert_eq!(told(utf16(list, b"")), wide);
    assert_eq!(told(b"\xFE\xFF\0i\0t"), wide);
    for (bytes, place) in [
        // Latin-1: a pickaxe of Zoe's, with two dots.
        (
            &b"item,good,owner\n\"Pick\nlong\",3,x\nSpade,1,Zo\xEB\n"[..],
            "row 3, column C (owner): here the file is not in UTF-8 (byte EB)",
        ),
        (
            b"item;good\r\n\r\nSch\xFCppe;1\r\n",
            "row 3, column A (item): here the file is not in UTF-8 (byte FC)",
        ),
        (
            b"item,good\n\"Spade\nof Zo\xEB\",1\n",
            "row 2, column A (item): here the file is not in UTF-8 (byte EB)",
        ),
        (
            b"\xA3item,good\n",
            "row 1, column A: here the file is not in UTF-8 (byte A3)",
        ),
        (
            b"item,good\nSpade,3\n\x80",
            "row 3, column A (item): here the file is not in UTF-8 (byte 80)",
        ),
    ] {
        assert_eq!(
            told(bytes),
            format!("{place}. Save it as \"CSV UTF-8\" and import that.")
        );
    }
}

#[test]
fn wrong_and_empty_files_are_told() {
    let empty = "the file is empty. Write the columns' names into the first row, \"item\" and \"good\" at least, and a row for each item below.";
    assert_eq!(told(""), empty);
    assert_eq!(told("\u{FEFF}"), empty);
    assert_eq!(told(",,\n\n ,\n"), empty);
    assert_eq!(
        told("item,good\n\n"),
        "there is no row below the columns' names. Write a row for each item."
    );
    assert_eq!(
        told(b"PK\x03\x04rest"),
        "this is a workbook under the name of a CSV file. Open it in a spreadsheet program and save it as .xlsx or as \"CSV UTF-8\"."
    );
    let desk = Desk::new();
    for (name, words) in [
        ("kit.ods", "a kit list ends in .csv or .xlsx, not in .ods"),
        (
            "kit",
            "the name of a kit list ends in .csv or .xlsx, this one in neither",
        ),
    ] {
        let cure = "Save it as a workbook (.xlsx) or as CSV UTF-8 (.csv).";
        let expected = format!("{name}: nothing was imported.\n{words}. {cure}");
        assert_eq!(desk.refusal(name, "item,good\n"), expected);
    }
    std::fs::create_dir(desk.file("folder.csv")).expect("a folder");
    for (name, words) in [
        (
            "missing.csv",
            "there is no such file. Look at its name and place.",
        ),
        (
            "folder.csv",
            "this is not a file. Choose a file, not a folder.",
        ),
    ] {
        let refused = KitList::read(&desk.file(name)).map(drop).expect_err(name);
        let told = desk.words(&refused.to_string());
        assert_eq!(told, format!("{name}: nothing was imported.\n{words}"));
    }
}

#[test]
fn twenty_faults_are_told_and_the_others_counted() {
    let text: String = (0..50).map(|_| "Spade,x\n").collect();
    let told = told(format!("item,good\n{text}"));
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines.len(), 21);
    assert_eq!(lines[20], "and 30 more");
    let refused = KitList::read(&Desk::new().put("kit.csv", format!("item,good\n{text}")));
    assert_eq!(
        refused.map(drop).expect_err("refused").code(),
        "not-a-number"
    );
}

#[test]
fn a_hundred_thousand_rows_end_well_and_soon() {
    let rows = |count: u32| {
        (0..count).fold("item,good\n".to_owned(), |mut text, row| {
            text.push_str(&format!("Item {row},{}\n", row % 90));
            text
        })
    };
    let began = Instant::now();
    let words = "row 20002: this is one row more than the 20000 a kit list may have. Leave in what is kit, or import it in several files.";
    assert_eq!(told(rows(100_000)), words);
    let faulty = rows(100_000).replace(",7\n", ",seven\n");
    assert!(told(faulty).starts_with(&format!("{words}\nrow 9, column B (good)")));
    let most = Desk::new().list("kit.csv", rows(MOST_ROWS));
    assert_eq!(most.len(), 20_000);
    let wide = "good,item,".repeat(700_000);
    assert_eq!(
        told(&wide),
        "row 1: a file of 1400000 columns is no kit list. Leave in these: item, unit, owner, good, needs care, broken, mass kg, note."
    );
    let ragged = format!("item,good\nSpade,3,{}\n", "x,".repeat(3_000_000));
    assert!(told(ragged).ends_with("and 79 more"));
    let large = "x".repeat(16_000_001);
    assert_eq!(
        told(large),
        "the file is larger than the 16 MB a kit list may have. Leave in what is kit, or import it in several files."
    );
    assert!(
        began.elapsed() < Duration::from_secs(10),
        "{:?}",
        began.elapsed()
    );
}
