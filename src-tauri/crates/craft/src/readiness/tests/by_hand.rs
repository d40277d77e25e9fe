//! The list by hand: dates by a calendar, and what it says word for word.

use super::*;
use crate::course::Wish;
use crate::deliveries::deliveries;
use crate::kit::{Held, Taken};
use crate::loads::{Hold, Piece};
use crate::pace::EntryKind;
use crate::quantity::tonnes;

/// By a calendar: the course begins on Friday 23 April 2027, so stone has to be there on
/// Thursday 22 April and is ordered ten working days before, on Thursday 8 April.
#[test]
fn dates_are_counted_from_the_course() {
    let (course, table) = (&SAMPLE.0, ready());
    let mut stone = SAMPLE.2.stone.clone();
    stone.to_deliver.mid = tonnes(14.0);
    stone.to_deliver.high = tonnes(16.0);
    stone.loads = Some(2);
    let ordered = deliveries(course, &stone, None, &SAMPLE.1.stone);
    let kit = [
        tool("Spade", 4, 1, Way::Borrow),
        tool("Digger", 1, 0, Way::Hire),
        tool("Marking paint", 2, 1, Way::Buy),
        tool("Barrow", 4, 4, Way::Borrow),
    ];
    let planned = Planned {
        stone: &stone,
        deliveries: &ordered,
        ..planned(&kit, &table)
    };
    let list = list_of(course, planned);
    let stone = one(&list, "stone");
    assert_eq!(
        stone.text,
        "Order stone: likely 14.0 t, high 16.0 t, 2 loads."
    );
    for (id, by) in [
        ("permission", day(3, 12)),
        ("stone", day(4, 8)),
        ("kit:spade", day(4, 9)),
        ("services", day(4, 9)),
        ("kit:digger", day(4, 13)),
        ("kit:marking-paint", day(4, 16)),
        ("home", day(4, 26)),
    ] {
        assert_eq!(one(&list, id).by, Some(by), "{id}");
    }
    let ids: Vec<&str> = list.iter().map(|it| it.id.as_str()).collect();
    // Of the same date, tools come before what is arranged.
    let expected = [
        "permission",
        "stone",
        "kit:spade",
        "services",
        "kit:digger",
        "kit:marking-paint",
        "home",
    ];
    assert_eq!(&ids[..7], expected);
    // What only matters elsewhere is not there.
    assert!(!ids.contains(&"lamps") && !ids.contains(&"stakes"));
}

#[test]
fn a_short_tool_says_how_to_come_by_it_and_who_has_it() {
    let mut hammer = tool("Walling hammer", 9, 4, Way::Borrow);
    hammer.safety_critical = true;
    hammer.held = Some(Held {
        care: 1,
        broken: 2,
        taken: vec![Taken {
            course: "Spring weekend".to_owned(),
            date: day(4, 24),
            count: 3,
        }],
        ..Held::counted("Walling hammer", 6)
    });
    let one_short = tool("Site level", 1, 0, Way::Hire);
    let (kit, table) = ([hammer, one_short], ready());
    let list = list_of(&SAMPLE.0, planned(&kit, &table));
    assert_eq!(
        one(&list, "kit:walling-hammer").text,
        "Walling hammer: 5 short (need 9, have 4, 2 more broken), borrow them. \"Spring weekend\" has booked 3 for 24 April 2027. Work must not begin without it."
    );
    assert_eq!(
        one(&list, "kit:site-level").text,
        "Site level: 1 short (need 1, have 0), hire one."
    );
    let care = one(&list, "care:walling-hammer");
    assert_eq!(
        care.text,
        "Walling hammer: 1 wants care before the course, for only 6 are good of the 9 needed."
    );
    assert_eq!((care.by, care.counts), (Some(day(4, 22)), true));
}

#[test]
fn preparation_is_grouped_by_what_is_done() {
    let prepared = |item: &str, how: &str| KitLine {
        prepare: how.to_owned(),
        ..tool(item, 2, 2, Way::Borrow)
    };
    let kit = [
        prepared("Telephone", "charge"),
        prepared("Mattock", "sharpen the edge"),
        prepared("Laser level", "Charge."),
        prepared("Barrow", "Pump up the wheel"),
        prepared("Tape", "look at the hook"),
        KitLine {
            need: 0,
            ..prepared("Drill", "charge")
        },
    ];
    let table = ready();
    let list = list_of(&SAMPLE.0, planned(&kit, &table));
    let charge = one(&list, "prepare:charge");
    assert_eq!(
        charge.text,
        "Charge, and see that it holds: telephone, laser level."
    );
    assert_eq!(
        (charge.by, charge.part, charge.counts),
        (Some(day(4, 22)), Part::Kit, false)
    );
    assert_eq!(one(&list, "prepare:sharpen").text, "Sharpen: mattock.");
    assert_eq!(
        one(&list, "prepare:look-over").text,
        "Look over the other tools while packing, as the load list says under each: 2 kinds."
    );
    assert!(
        one(
            &list_of(&marked(&[]), planned(&kit, &table)),
            "prepare:charge"
        )
        .counts
    );
}

#[test]
fn what_is_arranged_counts_once_the_list_is_kept_and_nothing_done_does() {
    let (kit, table) = ([tool("Spade", 4, 1, Way::Borrow)], ready());
    let planned = planned(&kit, &table);
    let reminders = list_of(&SAMPLE.0, planned);
    assert!(!one(&reminders, "permission").counts && one(&reminders, "kit:spade").counts);
    let kept = list_of(&marked(&["kit:spade", "services"]), planned);
    for (id, done) in [
        ("permission", false),
        ("kit:spade", true),
        ("services", true),
    ] {
        let it = one(&kept, id);
        assert_eq!((it.done, it.counts), (done, !done), "{id}");
    }
    assert_eq!(kept.len(), reminders.len());
}

#[test]
fn without_stone_to_come_nobody_looks_for_its_heap() {
    let mut table = ready();
    let heaps = task("heaps", When::DaysBefore(2), Applies::Always);
    table.tasks.push(Task {
        part: Part::Stone,
        ..heaps
    });
    let mut stone = SAMPLE.2.stone.clone();
    let has = |stone: &Stone| {
        let planned = Planned {
            stone,
            ..planned(&[], &table)
        };
        list_of(&SAMPLE.0, planned)
            .iter()
            .any(|it| it.id == "heaps")
    };
    stone.to_deliver.high = tonnes(1.0);
    assert!(has(&stone));
    stone.to_deliver.high = tonnes(0.0);
    assert!(!has(&stone));
}

#[test]
fn a_mark_of_nothing_is_refused_and_a_mark_of_what_was_is_not() {
    let (kit, table) = ([tool("Spade", 4, 4, Way::Borrow)], ready());
    let rules = [crate::tables::KitRule {
        item: "Spade".to_owned(),
        unit: String::new(),
        per: crate::tables::Per::Pair,
        off: false,
        applies: Applies::Always,
        from_people: None,
        to_people: None,
        by_size: false,
        limits_frames: false,
        each: crate::tables::Each::Same(1.0),
        spare: 0.0,
        least: 0,
        safety_critical: false,
        consumable: false,
        mass: kilograms(2.0),
        place: String::new(),
        needed_for: "all".to_owned(),
        way: Way::Borrow,
        prepare: "sharpen".to_owned(),
        why: String::new(),
        source: String::new(),
    }];
    // The spades are there and no bank is behind the wall, so neither stands in the list.
    let good = marked(&[
        "permission",
        "kit:spade",
        "drainage",
        "prepare:sharpen",
        "stakes",
    ]);
    let list = list_of(&good, planned(&kit, &table));
    assert!(!list.iter().any(|it| it.id == "kit:spade"));
    assert_eq!(check_marks(&good, &table, &rules, &list), Ok(()));
    let stray = marked(&["permission", "permision"]);
    let error = check_marks(&stray, &table, &rules, &list).expect_err("a slip of the pen");
    assert_eq!(error.key().as_deref(), Some("ready.done.1"));
    assert_eq!(
        error.to_string(),
        "there is nothing called \"permision\" to be seen to"
    );
    let (given, known) = error.choices().expect("words to choose from");
    assert!(given == "permision" && known.iter().any(|it| it == "permission"));
}

#[test]
fn what_nothing_carries_and_what_nobody_pays_is_told() {
    let mixer = Piece {
        name: "Mixer".to_owned(),
        count: 1,
        each: kilograms(150.0),
        first_needed: 0,
        safety: false,
    };
    let van = Hold {
        name: "Van".to_owned(),
        limit: kilograms(100.0),
    };
    let loads = Loads::of(&[mixer], &[van]);
    let costly = Course {
        money: Some(crate::course::MoneyGiven {
            currency: Some("GBP".to_owned()),
            venue: Some(1000.0),
            fee: Some(100.0),
            ..Default::default()
        }),
        ..SAMPLE.0.clone()
    };
    let money = Money::of(&costly, &SAMPLE.2.stone, 6.0);
    let table = ready();
    let planned = Planned {
        loads: Some(&loads),
        money: money.as_ref(),
        ..planned(&[], &table)
    };
    let list = list_of(&costly, planned);
    assert_eq!(
        one(&list, "too-heavy").text,
        "Heavier than any vehicle or trailer of this course may carry: Mixer (150 kg each). Hire one that may, or have them brought."
    );
    let loss = one(&list, "money");
    assert_eq!(
        loss.text,
        "The fees of 8 students leave GBP 200 of the costs uncovered. It breaks even with 10 students."
    );
    assert!(loss.counts && loss.by.is_none());
}

#[test]
fn wishes_that_cannot_be_had_are_something_to_do() {
    let (kit, table) = ([], ready());
    let mut course = marked(&[]);
    course.running.wishes = vec![Wish {
        lesson: "copes".to_owned(),
        day: 1,
        at: None,
    }];
    let (wishes, pairs) = (
        [fixed::Unmet {
            wish: 0,
            why: fixed::Why::NoRoom,
        }],
        [
            people::Unmet::Together("Ann".to_owned(), "Bo".to_owned()),
            people::Unmet::Wish("Cy".to_owned(), vec!["Di".to_owned()]),
        ],
    );
    let unmet = Planned {
        wishes: &wishes,
        pairs: &pairs,
        ..planned(&kit, &table)
    };
    let list = list_of(&course, unmet);
    let wish = one(&list, "wish:copes");
    assert_eq!(wish.part, Part::Days);
    assert!(wish.text.contains("on day 2") && wish.counts, "{wish:?}");
    let apart = one(&list, "apart");
    assert!(apart.text.contains("Ann and Bo"), "{apart:?}");
    assert!(list.iter().all(|it| !it.text.contains("Cy")), "{list:#?}");
    // What stands in the list can be marked, and stays a good mark when the wish can be had.
    let mut borne = course;
    borne.ready = marked(&["wish:copes", "apart"]).ready;
    check_marks(&borne, &table, &[], &[]).expect("known");
    let list = list_of(&borne, unmet);
    assert!(!one(&list, "wish:copes").counts && !one(&list, "apart").counts);
}

#[test]
fn a_day_on_which_nobody_builds_is_told() {
    let (kit, table) = ([], ready());
    let all = planned(&kit, &table);
    assert!(list_of(&SAMPLE.0, all).iter().all(|it| it.id != "no-time"));
    let mut timetable = SAMPLE.2.timetable.clone();
    timetable.retain(|entry| entry.day != 1 || entry.kind != EntryKind::Build);
    let list = list_of(
        &SAMPLE.0,
        Planned {
            timetable: &timetable,
            ..all
        },
    );
    let found = one(&list, "no-time");
    assert!(found.text.starts_with("Day 2 has no time"), "{found:?}");
}

#[test]
fn once_something_is_built_the_chance_from_there_is_what_counts() {
    let (kit, table) = ([], ready());
    let with = |chance| Forecast {
        chance,
        ..SAMPLE.2.forecast.clone()
    };
    let course = Course {
        chance: 0.8,
        ..SAMPLE.0.clone()
    };
    for (before, from_here, said) in [
        (0.9, None, None),
        (0.6, None, Some("The chance")),
        (0.6, Some(0.9), None),
        (0.9, Some(0.6), Some("From here")),
    ] {
        let (before, from_here) = (with(before), from_here.map(with));
        let planned = Planned {
            forecast: &before,
            from_here: from_here.as_ref(),
            ..planned(&kit, &table)
        };
        let list = list_of(&course, planned);
        let found = list.iter().find(|it| it.id == "chance");
        assert_eq!(found.is_some(), said.is_some());
        assert!(found.is_none_or(|it| it.text.starts_with(said.unwrap_or_default())));
    }
}
