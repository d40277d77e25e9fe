//! Counts, conditions, sizes and clashes against workings by hand.

use crate::conditions::Conditions;
use crate::course::{FrameKind, GloveSize};
use crate::kit::SaidBy;
use crate::kit::sample::{counted, days, group, rule, wearing};
use crate::kit::{FramesFree, Heat, Held, KitLine, Taken, Weather, frames_free, kit};
use crate::quantity::{Read, kilograms};
use crate::tables::{Applies, Each, KitRule, Per};
use chrono::NaiveDate;

/// The lines of these rules for 7 students, an instructor and an assistant.
fn lines(rules: &[KitRule], held: &[Held]) -> Vec<KitLine> {
    let (group, days, conditions) = (group(7, 1, 1), days(), Conditions::just(&[]));
    kit(rules, &counted(&group, &days, &conditions), held)
}

#[test]
fn each_thing_is_counted_by_what_its_rule_says() {
    // By hand: 7 students make 3 pairs and an odd one who joins them; 9 people are 3 lots of 4
    // and part of a lot; the longest day is 8.5 hours.
    for (per, each, need, why) in [
        (
            Per::Student,
            1.0,
            7,
            "1 per student, 7 of them: it is of use",
        ),
        (Per::Pair, 1.0, 3, "1 per pair, 3 of them: it is of use"),
        (
            Per::Stint,
            0.5,
            2,
            "0.5 per stint, 3 worked at a time: it is of use",
        ),
        (Per::Frame, 2.0, 8, "2 per frame, 4 of them: it is of use"),
        (
            Per::Instructor,
            1.0,
            2,
            "1 per instructor, 2 of them: it is of use",
        ),
        (Per::Person, 1.0, 9, "1 per person, 9 of them: it is of use"),
        (
            Per::People { every: 4 },
            2.0,
            6,
            "2 for every 4 people, 9 of them: it is of use",
        ),
        (
            Per::People { every: 9 },
            1.0,
            1,
            "1 for every 9 people, 9 of them: it is of use",
        ),
        (
            Per::PersonHour,
            0.5,
            39, // 0.5 x 9 x 8.5 = 38.25
            "0.5 an hour for each of 9 people, 8.5 hours on the longest day: it is of use",
        ),
        (Per::Day, 2.0, 6, "2 per day, 3 of them: it is of use"),
        (Per::Group, 2.0, 2, "2 for the group: it is of use"),
        (
            Per::Metre,
            0.8,
            8,
            "0.8 per metre of wall, 9.25 of them: it is of use",
        ),
    ] {
        let [line] = &lines(&[rule("Thing", per, each)], &[])[..] else {
            panic!("one line for {per:?}");
        };
        assert_eq!((line.need, line.why.as_str()), (need, why));
        assert!((line.mass.si() - 2.0 * need as f64).abs() < 1e-9);
        assert_eq!((line.have, line.short), (None, None));
    }
}

#[test]
fn spares_come_on_top_and_the_least_below() {
    let spared = KitRule {
        spare: 0.1,
        ..rule("Hammer", Per::Student, 1.0)
    };
    let least = KitRule {
        least: 4,
        ..rule("Saw", Per::Group, 1.0)
    };
    // A tenth of 10 is 1 and no more, whatever the rounding of 10 x 1.1.
    let ten = KitRule {
        spare: 0.1,
        ..rule("Ten", Per::Group, 10.0)
    };
    let lines = lines(&[spared, least, ten], &[]);
    let said: Vec<(usize, &str)> = lines.iter().map(|it| (it.need, it.why.as_str())).collect();
    assert_eq!(
        said,
        [
            (8, "1 per student, 7 of them, 10 % spare: it is of use"),
            (4, "1 for the group, never fewer than 4: it is of use"),
            (11, "10 for the group, 10 % spare: it is of use"),
        ]
    );
}

#[test]
fn water_goes_by_the_heat() {
    let water = KitRule {
        each: Each::ByHeat([0.25, 0.5, 0.75]),
        ..rule("Water", Per::PersonHour, 0.0)
    };
    let (group, days, conditions) = (group(7, 1, 1), days(), Conditions::just(&[]));
    let mut counted = counted(&group, &days, &conditions);
    // By hand: 9 people x 8.5 hours = 76.5; a quarter, a half and three quarters of that.
    for (heat, said, need, words) in [
        (
            Heat::Mild,
            SaidBy::Season,
            20,
            "in mild weather (by the season there)",
        ),
        (
            Heat::Warm,
            SaidBy::Season,
            39,
            "in warm weather (by the season there)",
        ),
        (
            Heat::Hot,
            SaidBy::Course,
            58,
            "in hot weather (as the course says)",
        ),
    ] {
        counted.weather = Weather { heat, said };
        let lines = kit(std::slice::from_ref(&water), &counted, &[]);
        assert_eq!(lines[0].need, need);
        assert!(lines[0].why.contains(words), "{}", lines[0].why);
    }
}

#[test]
fn rules_count_where_they_are_meant() {
    let when = |item, applies| KitRule {
        applies,
        ..rule(item, Per::Group, 1.0)
    };
    let people = |item, from_people, to_people| KitRule {
        from_people,
        to_people,
        ..rule(item, Per::Group, 1.0)
    };
    let rules = [
        when("Bar", Applies::Bars),
        when("Saw", Applies::Timber),
        when("Always", Applies::Always),
        people("Small", None, Some(8)),
        people("Middle", Some(9), Some(9)),
        people("Large", Some(10), None),
        KitRule {
            off: true,
            ..rule("Off", Per::Group, 1.0)
        },
    ];
    // 7 students with 2 who teach are 9 people.
    let (group, days) = (group(7, 1, 1), days());
    let conditions = Conditions::just(&[Applies::Timber]);
    let lines = kit(&rules, &counted(&group, &days, &conditions), &[]);
    let items: Vec<&str> = lines.iter().map(|line| line.item.as_str()).collect();
    assert_eq!(items, ["Saw", "Always", "Middle"]);
}

#[test]
fn a_bar_weighs_what_its_length_gives_unless_its_rule_says() {
    let bar = |mass| KitRule {
        mass: kilograms(mass),
        ..rule("Steel bar", Per::Frame, 2.0)
    };
    for (mass, each) in [(0.0, 2.8), (3.5, 3.5)] {
        assert_eq!(lines(&[bar(mass)], &[])[0].each, kilograms(each));
    }
}

#[test]
fn gloves_come_in_the_sizes_people_wear() {
    use GloveSize::{L, M, Xs};
    let gloves = |per| KitRule {
        by_size: true,
        spare: 0.25,
        ..rule("Gloves", per, 1.0)
    };
    let mut group = wearing(&[
        Some(L),
        None,
        Some(M),
        Some(L),
        Some(L),
        Some(L),
        Some(L),
        Some(Xs),
    ]);
    group.instructors = 2;
    let (days, conditions) = (days(), Conditions::just(&[]));
    let counted = counted(&group, &days, &conditions);
    let held = [Held::counted("gloves, l", 4), Held::counted("Gloves", 9)];
    let lines = kit(&[gloves(Per::Person)], &counted, &held);
    let said: Vec<(&str, usize, Option<usize>)> = lines
        .iter()
        .map(|line| (line.item.as_str(), line.need, line.short))
        .collect();
    // By hand: 1 x 1.25 is 2; 5 x 1.25 = 6.25 is 7; one student and two who teach, 3 x 1.25.
    assert_eq!(
        said,
        [
            ("Gloves, XS", 2, None),
            ("Gloves, M", 2, None),
            ("Gloves, L", 7, Some(3)),
            ("Gloves, size not known", 4, Some(0)),
        ]
    );
    assert_eq!(
        lines[2].why,
        "1 per person, 5 who wear L, 25 % spare, at least one spare: it is of use"
    );
    assert_eq!(
        lines[3].why,
        "1 per person, 3 whose size nobody has said (ask them), 25 % spare: it is of use"
    );
    assert!(lines.iter().all(|line| line.rule == "Gloves"));
    // Staff have no gloves of a rule per student; a rule per frame has no sizes.
    assert_eq!(kit(&[gloves(Per::Student)], &counted, &[])[3].need, 2);
    let [whole] = &kit(&[gloves(Per::Frame)], &counted, &[])[..] else {
        panic!("one line");
    };
    assert_eq!((whole.item.as_str(), whole.need), ("Gloves", 5));
}

fn taken(course: &str, day: u32, count: u32) -> Taken {
    Taken {
        course: course.to_owned(),
        date: NaiveDate::from_ymd_opt(2027, 4, day).expect("a date"),
        count,
    }
}

#[test]
fn what_others_have_booked_is_a_clash_only_where_enough_is_held() {
    let booked = |good| Held {
        taken: vec![taken("A", 24, 1), taken("B", 25, 2), taken("C", 25, 3)],
        ..Held::counted("Spade", good)
    };
    // 7 are needed, and on the busiest day 5 are taken.
    for (good, have, clash) in [
        (12, 7, &[][..]),
        (11, 6, &["B", "C"]),
        (7, 2, &["B", "C"]),
        (6, 1, &[]),
    ] {
        let lines = lines(&[rule("Spade", Per::Student, 1.0)], &[booked(good)]);
        let named: Vec<&str> = lines[0].clash.iter().map(|it| it.course.as_str()).collect();
        assert_eq!(
            (lines[0].have, &named[..]),
            (Some(have), clash),
            "{good} held"
        );
        assert_eq!(lines[0].short, Some(7_usize.saturating_sub(have)));
    }
}

#[test]
fn the_scarcest_part_says_how_many_frames_there_are() {
    let part = |item, each, applies| KitRule {
        applies,
        limits_frames: true,
        ..rule(item, Per::Frame, each)
    };
    let rules = [
        part("Board", 1.0, Applies::Bars),
        part("Bar", 2.0, Applies::Bars),
        part("Timber frame", 1.0, Applies::Timber),
        rule("Cap", Per::Frame, 2.0),
    ];
    let bars = Held {
        care: 2,
        broken: 9,
        taken: vec![taken("A", 24, 5), taken("B", 25, 4)],
        ..Held::counted("bar", 15)
    };
    let free = |held: &[Held], kind| frames_free(&rules, held, kind);
    // By hand: 17 bars make 8 frames, of which 5 bars, so 3 frames, are taken.
    let eight = FramesFree {
        usable: 8,
        taken: 3,
    };
    assert_eq!(
        free(std::slice::from_ref(&bars), FrameKind::Bar),
        Some(eight)
    );
    assert_eq!(eight.free(), 5);
    let held = [bars, Held::counted("Board", 6), Held::counted("Cap", 1)];
    let six = FramesFree {
        usable: 6,
        taken: 3,
    };
    assert_eq!(free(&held, FrameKind::Bar), Some(six));
    assert_eq!(free(&held, FrameKind::Timber), None);
    assert_eq!(free(&[], FrameKind::Bar), None);
}
