//! Small groups, days and rotations worked out by hand.

use super::{LAYING, group, pace, written};
use crate::course::{Absence, Course, End, Pairing};
use crate::people::{LayingStage, Place, Unmet, days, pairs, presence, rotation, stints, unmet};
use crate::quantity::metres;
use crate::wall::Side;
use chrono::NaiveTime;

#[test]
fn pairs_mix_experience_and_keep_the_order_of_the_roster() {
    for (letters, expected) in [
        ("N", "1"),
        ("NN", "1+2"),
        ("NNN", "1+2+3"),
        ("NNNN", "1+2 3+4"),
        ("ENNI", "1+2 3+4"),
        ("EENN", "1+3 2+4"),
        // The fastest with the slowest: 1 with a novice, not with the improver.
        ("EINN", "1+3 2+4"),
        // A three of the improver and two novices: by hand, its squares come to 0.028 and the
        // other pair's to 0.049, against 0.098 and 0.014 with the experienced one in it.
        ("NNNEI", "1+4 2+3+5"),
        ("NNNNNNN", "1+2 3+4 5+6+7"),
    ] {
        let pairs = pairs(&group(letters), &pace(), LAYING);
        assert_eq!(written(&pairs), expected, "{letters}");
        assert!(unmet(&pairs).is_empty());
    }
}

#[test]
fn the_way_of_pairing_decides_between_wishes_and_experience() {
    // Two novices who would like to build together, with an improver there for each.
    for (way, expected) in [
        (Pairing::Mixed, "1+3 2+4"),
        (Pairing::Friends, "1+2 3+4"),
        (Pairing::Alike, "1+2 3+4"),
    ] {
        let mut group = group("NNII");
        group.pairing = way;
        group.students[0].with = vec!["2".to_owned()];
        let pairs = pairs(&group, &pace(), LAYING);
        assert_eq!(written(&pairs), expected, "{way:?}");
        let missed = Unmet::Wish("1".to_owned(), vec!["2".to_owned()]);
        let told = if way == Pairing::Mixed {
            vec![missed]
        } else {
            Vec::new()
        };
        assert_eq!(unmet(&pairs), told);
    }
}

#[test]
fn a_wish_counts_before_evenness_of_pace() {
    let mut group = group("EINN");
    group.students[3].with = vec!["1".to_owned()];
    assert_eq!(written(&pairs(&group, &pace(), LAYING)), "1+4 2+3");
}

#[test]
fn people_are_kept_apart_unless_there_is_no_other_way() {
    let mut four = group("NNNN");
    four.pairing = Pairing::Friends;
    four.students[0].with = vec!["2".to_owned()];
    four.students[1].apart = vec!["1".to_owned()];
    let kept = pairs(&four, &pace(), LAYING);
    assert_eq!(written(&kept), "1+3 2+4");
    let mut two = group("NN");
    two.students[0].apart = vec!["2".to_owned()];
    let forced = pairs(&two, &pace(), LAYING);
    assert_eq!(
        unmet(&forced),
        [Unmet::Together("1".to_owned(), "2".to_owned())]
    );
    // Of five, 1 can be with 2 and 3 alone.
    let mut five = group("NEINN");
    five.students[0].apart = vec!["4".to_owned(), "5".to_owned()];
    let around = pairs(&five, &pace(), LAYING);
    assert!(unmet(&around).is_empty(), "{}", written(&around));
}

/// Four novices on three days from 9 to 17 o'clock.
fn course() -> Course {
    let mut course = crate::plan::sample::course();
    course.group = group("NNNE");
    course
}

fn hour(hour: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, 0, 0).expect("a time")
}

fn absence(who: &str, day: usize, from: Option<u32>, until: Option<u32>) -> Absence {
    Absence {
        who: who.to_owned(),
        day,
        from: from.map(hour),
        until: until.map(hour),
    }
}

#[test]
fn presence_is_the_share_of_pace_that_is_there() {
    let mut course = course();
    course.absences = vec![
        absence("4", 0, None, Some(11)),
        absence("1", 0, Some(10), Some(12)),
        absence("2", 1, None, None),
    ];
    // By hand: 3 x 1/5 + 1/1.6 = 1.225 t an hour in all.
    let all = 1.225;
    let there = presence(&course, &pace(), LAYING);
    let shares = |day: usize| -> Vec<(NaiveTime, NaiveTime, f64)> {
        let round = |share: f64| (share * 1e9).round() / 1e9;
        there[day]
            .iter()
            .map(|part| (part.from, part.to, round(part.share * all)))
            .collect()
    };
    assert_eq!(
        shares(0),
        [
            (hour(9), hour(10), 0.6),
            (hour(10), hour(11), 0.4),
            (hour(11), hour(12), 1.025),
            (hour(12), hour(17), 1.225),
        ]
    );
    assert_eq!(shares(1), [(hour(9), hour(17), 1.025)]);
    assert_eq!(shares(2), [(hour(9), hour(17), 1.225)]);
    course.absences = ["1", "2", "3", "4"]
        .map(|who| absence(who, 2, None, None))
        .to_vec();
    assert!(presence(&course, &pace(), LAYING)[2][0].share.abs() < f64::MIN_POSITIVE);
    assert!(
        days(&course, metres(6.0), &pace(), LAYING)[2]
            .stints
            .is_empty()
    );
}

#[test]
fn only_who_is_away_all_day_leaves_their_pair() {
    let mut course = course();
    let plain = days(&course, metres(6.0), &pace(), LAYING);
    assert_eq!(plain.len(), 3);
    assert!(
        plain
            .iter()
            .all(|day| day.same_as_first && day.away.is_empty())
    );
    let whole = stints(&course.group, metres(6.0), &pace(), LAYING);
    assert_eq!(plain[0].stints, whole);
    course.absences = vec![
        absence("3", 1, None, Some(11)),
        absence("2", 2, None, Some(12)),
        absence("2", 2, Some(12), None),
    ];
    let days = days(&course, metres(6.0), &pace(), LAYING);
    assert!(days[0].same_as_first && days[1].same_as_first && !days[2].same_as_first);
    let late = &days[1].away[0];
    assert_eq!((late.who.as_str(), late.until), ("3", hour(11)));
    assert!(late.comes_late(&course.days[1]) && !late.leaves_early(&course.days[1]));
    let stint = late.stint.expect("a stint");
    assert!(whole[stint].members.iter().any(|it| it.name == "3"));
    assert_eq!(days[2].present, ["1", "3", "4"]);
    assert_eq!(days[2].away.len(), 1);
    assert_eq!(days[2].away[0].stint, None);
    assert_eq!(days[2].stints.len(), 1);
}

#[test]
fn pairs_that_can_stay_together_do() {
    let mut course = course();
    course.group = group("NNNNNNNN");
    course.absences = vec![absence("1", 1, None, None), absence("4", 1, None, None)];
    let days = days(&course, metres(9.0), &pace(), LAYING);
    let pairs = |day: usize| {
        let of = |stint: &crate::people::Stint| stint.members.clone();
        written(&days[day].stints.iter().map(of).collect::<Vec<_>>())
    };
    assert_eq!(pairs(0), "1+2 3+4 5+6 7+8");
    assert_eq!(pairs(1), "2+3 5+6 7+8");
}

fn stages(minutes: f64) -> Vec<LayingStage> {
    [
        "line",
        "footing",
        "first-lift",
        "throughs",
        "second-lift",
        "heads",
        "level",
        "cope",
    ]
    .map(|id| LayingStage {
        id: id.to_owned(),
        minutes,
    })
    .to_vec()
}

#[test]
fn rounds_change_faces_and_pairs_move_on_at_throughs_and_copes() {
    let stints = stints(&group("NNNNNN"), metres(9.0), &pace(), LAYING);
    let rounds = rotation(&stints, &stages(60.0), [End::Head, End::Joined], 2, None).rounds;
    let told: Vec<String> = rounds
        .iter()
        .map(|round| {
            let place =
                |it: &crate::people::Place| format!("{}|{}", it.left.concat(), it.right.concat());
            let places: Vec<String> = round.places.iter().map(place).collect();
            format!("{} {}", round.stage, places.join(" "))
        })
        .collect();
    assert_eq!(
        told,
        [
            "footing 1|2 3|4 5|6",
            "first-lift 2|1 4|3 6|5",
            "throughs 5|6 1|2 3|4",
            "second-lift 6|5 2|1 4|3",
            "heads 5|6 1|2 3|4",
            "cope 4|3 6|5 2|1",
        ]
    );
    // By hand: three turns of 20 minutes at the one head; three pairs in two shifts of copes.
    let turns: Vec<(usize, usize)> = rounds[4].heads.iter().map(|it| (it.end, it.pair)).collect();
    assert_eq!(turns, [(0, 0), (0, 1), (0, 2)]);
    assert!((rounds[4].heads[1].from - 1.0 / 3.0).abs() < 1e-12);
    let shifts: Vec<(usize, f64)> = rounds[5]
        .copes
        .iter()
        .map(|it| (it.pair, it.from))
        .collect();
    assert_eq!(shifts, [(0, 0.0), (1, 0.5), (2, 0.0)]);
    // In 40 minutes there is time for two turns.
    let short = rotation(&stints, &stages(40.0), [End::Head, End::Joined], 2, None).rounds;
    assert_eq!(short[4].heads.len(), 2);
    let both = rotation(&stints, &stages(40.0), [End::Head, End::Head], 2, None).rounds;
    let turns: Vec<(usize, usize)> = both[4].heads.iter().map(|it| (it.end, it.pair)).collect();
    assert_eq!(turns, [(0, 0), (0, 1), (1, 2)]);
}

#[test]
fn before_a_bank_everyone_stands_at_the_other_face_and_takes_turns_to_lay() {
    // Who is at the front, those who lay first; behind the stroke who hearts.
    let cases = [
        ("NNNN", ["12-2 34-4", "21-1 43-3"]),
        ("NNN", ["132-2", "213-13"]),
        ("N", ["1-", "1-"]),
    ];
    for (people, expected) in cases {
        let stints = stints(&group(people), metres(9.0), &pace(), LAYING);
        for bank in [Side::Left, Side::Right] {
            let ends = [End::Joined; 2];
            let rounds = rotation(&stints, &stages(60.0), ends, 2, Some(bank)).rounds;
            let told = rounds[..2].iter().map(|round| {
                let place = |it: &Place| {
                    let (front, back) = match bank {
                        Side::Left => (&it.right, &it.left),
                        Side::Right => (&it.left, &it.right),
                    };
                    assert!(back.is_empty(), "{back:?} between bank and wall");
                    format!("{}-{}", front.concat(), it.hearting.concat())
                };
                let places: Vec<String> = round.places.iter().map(place).collect();
                places.join(" ")
            });
            assert_eq!(told.collect::<Vec<_>>(), expected);
        }
    }
}
