//! Loads by hand, and what must hold whatever is loaded.

use super::*;
use crate::course::VehicleGiven;
use crate::tables::LoadingTable;
use proptest::prelude::*;
use std::collections::BTreeMap;

fn piece(name: &str, count: usize, kg: f64, first_needed: usize) -> Piece {
    Piece {
        name: name.to_owned(),
        count,
        each: kilograms(kg),
        first_needed,
        safety: false,
    }
}

fn hold(name: &str, kg: f64) -> Hold {
    Hold {
        name: name.to_owned(),
        limit: kilograms(kg),
    }
}

/// What lies where: `3 spade, 10 hammer`, in loading order.
fn contents(loaded: &Loaded) -> String {
    let lines = loaded.lines.iter();
    let lines: Vec<String> = lines
        .map(|it| format!("{} {}", it.count, it.name))
        .collect();
    lines.join(", ")
}

fn run(loads: &Loads, run: usize) -> Vec<String> {
    loads.runs[run].holds.iter().map(contents).collect()
}

#[test]
fn what_is_needed_first_goes_in_last() {
    let first_aid = Piece {
        safety: true,
        ..piece("first aid", 1, 2.0, 7)
    };
    let pieces = [
        piece("plank", 2, 12.0, 7),
        first_aid,
        piece("spade", 4, 2.0, 2),
        piece("mattock", 2, 3.0, 2),
        piece("peg", 10, 0.5, 1),
    ];
    let loads = Loads::of(&pieces, &[hold("van", 100.0)]);
    assert_eq!(
        run(&loads, 0),
        ["2 plank, 2 mattock, 4 spade, 10 peg, 1 first aid"]
    );
    assert_eq!((loads.runs.len(), loads.fewest), (1, 1));
    let van = &loads.runs[0].holds[0];
    // By hand: 2 x 12 + 2 x 3 + 4 x 2 + 10 x 0.5 + 2 = 45 kg.
    assert!((van.mass().si() - 45.0).abs() < 1e-9);
    assert!((van.share() - 0.45).abs() < 1e-9);
    assert!((loads.runs[0].mass() - van.mass()).si().abs() < 1e-9);
}

#[test]
fn the_first_run_carries_what_is_needed_first() {
    let pieces = [
        piece("cope plank", 5, 12.0, 9),
        piece("bar", 20, 3.0, 3),
        piece("spade", 10, 2.0, 1),
    ];
    // 140 kg in 80 kg: two runs. The bars keep together on the first, the planks on the second.
    let loads = Loads::of(&pieces, &[hold("van", 80.0)]);
    assert_eq!(run(&loads, 0), ["20 bar, 10 spade"]);
    assert_eq!(run(&loads, 1), ["5 cope plank"]);
    // In 72 kg two runs take every kilogram but four: the bars are split, in turn.
    let tight = Loads::of(&pieces, &[hold("van", 72.0)]);
    assert_eq!(run(&tight, 0), ["17 bar, 10 spade"]);
    assert_eq!(run(&tight, 1), ["5 cope plank, 3 bar"]);
    assert_eq!((tight.runs.len(), tight.fewest), (2, 2));
}

#[test]
fn a_trailer_takes_what_the_van_does_not() {
    let pieces = [piece("barrow", 4, 18.0, 1), piece("bar", 20, 3.0, 4)];
    let holds = [hold("van", 80.0), hold("trailer", 60.0)];
    let loads = Loads::of(&pieces, &holds);
    assert_eq!(run(&loads, 0), ["4 barrow", "20 bar"]);
    // A line that neither takes whole is spread over both.
    let spread = Loads::of(&[piece("bar", 40, 3.0, 4)], &holds);
    assert_eq!(run(&spread, 0), ["26 bar", "14 bar"]);
    // What is not needed is not hitched up.
    let light = Loads::of(&[piece("bar", 4, 3.0, 4)], &holds);
    assert_eq!(run(&light, 0), ["4 bar", ""]);
}

#[test]
fn a_piece_heavier_than_every_hold_is_named() {
    let pieces = [
        piece("mixer", 1, 150.0, 2),
        piece("spade", 3, 2.0, 1),
        piece("tent", 0, 20.0, 0),
    ];
    let loads = Loads::of(&pieces, &[hold("van", 100.0), hold("trailer", 149.0)]);
    assert_eq!(loads.fits_nowhere, [Line::of(&pieces[0], 1)]);
    assert_eq!(run(&loads, 0), ["3 spade", ""]);
    let none = Loads::of(&pieces, &[]);
    assert_eq!(
        (none.runs.len(), none.fewest, none.fits_nowhere.len()),
        (0, 0, 2)
    );
    let nothing = Loads::of(&[], &[hold("van", 1.0)]);
    assert!(nothing.runs.is_empty() && nothing.fits_nowhere.is_empty());
}

/// Three of 60 kg and three of 40 kg fill three vans of 100 kg only in pairs: by need alone
/// the light ones would ride together.
#[test]
fn heavy_pieces_are_fitted_together_where_a_run_is_saved() {
    let pieces = [piece("light", 3, 40.0, 0), piece("heavy", 3, 60.0, 1)];
    let loads = Loads::of(&pieces, &[hold("van", 100.0)]);
    assert_eq!((loads.runs.len(), loads.fewest), (3, 3));
    for at in 0..3 {
        assert_eq!(run(&loads, at), ["1 heavy, 1 light"]);
    }
    // Three of 60 kg take three runs of 100 kg, though 180 kg would go in two.
    let chunky = Loads::of(&[piece("heavy", 3, 60.0, 1)], &[hold("van", 100.0)]);
    assert_eq!((chunky.runs.len(), chunky.fewest), (3, 3));
}

#[test]
fn people_and_trailers_count() {
    let table = LoadingTable {
        person: kilograms(80.0),
        ..LoadingTable::default()
    };
    let van = |people, trailer| VehicleGiven {
        name: "Van".to_owned(),
        payload: kilograms(700.0),
        trailer,
        people,
    };
    // By hand: 700 - 2 x 80 = 540 kg.
    let both = holds(&[van(2, Some(kilograms(500.0)))], &table).expect("room");
    assert_eq!(both, [hold("Van", 540.0), hold("Van: trailer", 500.0)]);
    assert_eq!(
        holds(&[van(0, Some(kilograms(0.0)))], &table)
            .expect("room")
            .len(),
        1
    );
    let full = holds(&[van(0, None), van(9, None)], &table).expect_err("720 kg of people");
    assert_eq!(full.key().as_deref(), Some("vehicle.1.people"));
    assert_eq!(
        full.to_string(),
        "9 people at 80 kg each leave nothing of the payload of 700 kg"
    );
}

fn counted<'a>(lines: impl Iterator<Item = &'a Line>) -> BTreeMap<&'a str, usize> {
    let mut counts = BTreeMap::new();
    for line in lines {
        *counts.entry(line.name.as_str()).or_default() += line.count;
    }
    counts
}

fn some_pieces(heaviest: f64) -> impl Strategy<Value = Vec<Piece>> {
    let one = (1_usize..40, 0.0..heaviest, 0_usize..12, any::<bool>());
    prop::collection::vec(one, 0..30).prop_map(|all| {
        let pieces = all.into_iter().enumerate();
        pieces
            .map(|(at, (count, kg, first_needed, safety))| Piece {
                name: format!("tool {at}"),
                count,
                // To the tenth of a kilogram, as tools are weighed.
                each: kilograms((kg * 10.0).round() / 10.0),
                first_needed,
                safety: safety && at % 5 == 0,
            })
            .collect()
    })
}

fn some_holds(least: f64, most: f64) -> impl Strategy<Value = Vec<Hold>> {
    prop::collection::vec(least..most, 1..4).prop_map(|limits| {
        let named = limits.into_iter().enumerate();
        named
            .map(|(at, kg)| hold(&format!("hold {at}"), kg))
            .collect()
    })
}

fn sound(pieces: &[Piece], holds: &[Hold], loads: &Loads) -> Result<(), TestCaseError> {
    let everywhere = loads.runs.iter().flat_map(|run| &run.holds);
    let lines = everywhere.clone().flat_map(|it| &it.lines);
    let found = counted(lines.chain(&loads.fits_nowhere));
    let wanted = pieces
        .iter()
        .map(|it| (it.name.as_str(), it.count))
        .collect();
    prop_assert_eq!(found, wanted);
    for loaded in everywhere {
        prop_assert!(loaded.mass().si() <= loaded.limit.si() + 1e-6);
        prop_assert!(loaded.share() <= 1.0 + 1e-6);
    }
    for line in &loads.fits_nowhere {
        prop_assert!(holds.iter().all(|hold| hold.limit < line.each));
    }
    prop_assert!(loads.fewest <= loads.runs.len());
    prop_assert!(
        loads
            .runs
            .iter()
            .all(|run| run.holds.iter().any(|it| !it.lines.is_empty()))
    );
    // Within a hold nothing goes in after what is needed before it.
    let needs: BTreeMap<&str, usize> = pieces
        .iter()
        .map(|it| (it.name.as_str(), need(it)))
        .collect();
    for loaded in loads.runs.iter().flat_map(|run| &run.holds) {
        let order: Vec<usize> = loaded
            .lines
            .iter()
            .map(|it| needs[it.name.as_str()])
            .collect();
        prop_assert!(order.is_sorted_by(|first_in, next| next <= first_in));
    }
    Ok(())
}

proptest! {
    /// Every piece is in one place or named as fitting nowhere; no hold is over its limit.
    #[test]
    fn nothing_is_lost_and_nothing_is_overloaded(
        pieces in some_pieces(120.0),
        holds in some_holds(0.5, 300.0),
    ) {
        let loads = Loads::of(&pieces, &holds);
        sound(&pieces, &holds, &loads)?;
    }

    /// A run is begun only when no hold of the runs before it has room for some piece, so less
    /// than the heaviest piece is left in each of these holds: the bound of first-fit bin
    /// packing.
    #[test]
    fn runs_are_few(pieces in some_pieces(25.0), holds in some_holds(100.0, 900.0)) {
        let loads = Loads::of(&pieces, &holds);
        sound(&pieces, &holds, &loads)?;
        let whole: f64 = pieces.iter().map(|it| it.each.si() * it.count as f64).sum();
        let room: f64 = holds.iter().map(|it| it.limit.si()).sum();
        let heaviest = pieces.iter().map(|it| it.each.si()).fold(0.0, f64::max);
        let filled = room - heaviest * holds.len() as f64;
        let full_runs = loads.runs.len().saturating_sub(1) as f64;
        prop_assert!(full_runs * filled <= whole + 1e-6);
        prop_assert!(whole <= room * loads.fewest as f64 + 1e-6);
    }

    /// What goes in one van goes in one run, every line in one place.
    #[test]
    fn one_van_that_takes_all_makes_one_run(pieces in some_pieces(25.0)) {
        let whole: f64 = pieces.iter().map(|it| it.each.si() * it.count as f64).sum();
        let loads = Loads::of(&pieces, &[hold("van", whole.max(1.0))]);
        prop_assert_eq!(loads.runs.len(), usize::from(!pieces.is_empty()));
        let lines: usize = loads.runs.iter().map(|run| run.holds[0].lines.len()).sum();
        prop_assert_eq!(lines, pieces.len());
    }
}
