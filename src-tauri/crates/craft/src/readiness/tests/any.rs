//! What must hold of the list for any tools, tasks, marks and dates.

use super::*;
use crate::deliveries::deliveries;
use crate::kit::Held;
use proptest::prelude::*;

fn some_tools() -> impl Strategy<Value = Vec<KitLine>> {
    let words = [
        "spade", "Spade", "eye-bolt", "Eye bolt", "mattock", "tent", "Radio",
    ];
    let ways = [Way::Borrow, Way::Hire, Way::Buy];
    let prepare = ["", "charge", "Charge", "sharpen", "check the date"];
    let held = prop::option::of((0_u32..9, 0_u32..3, 0_u32..3));
    let one = (
        0..words.len(),
        0_usize..9,
        0_usize..9,
        0..ways.len(),
        0..prepare.len(),
        held,
    );
    prop::collection::vec(one, 0..12).prop_map(move |all| {
        let made = all
            .into_iter()
            .map(|(word, need, have, way, how, held)| KitLine {
                prepare: prepare[how].to_owned(),
                held: held.map(|(good, care, broken)| Held {
                    care,
                    broken,
                    ..Held::counted(words[word], good)
                }),
                ..tool(words[word], need, have, ways[way])
            });
        made.collect()
    })
}

fn some_tasks() -> impl Strategy<Value = Vec<Task>> {
    let applies = [
        Applies::Always,
        Applies::Bars,
        Applies::Cold,
        Applies::Timber,
    ];
    let one = (0_u32..90, 0_usize..3, 0..applies.len());
    prop::collection::vec(one, 0..25).prop_map(move |all| {
        let made = all
            .into_iter()
            .enumerate()
            .map(|(at, (days, when, which))| {
                let when = [When::DaysBefore, When::WorkingDaysBefore, When::DaysAfter][when](days);
                task(&format!("task-{at}"), when, applies[which])
            });
        made.collect()
    })
}

proptest! {
    /// Sorted by date; ids unique; nothing that is ordered, borrowed, prepared or arranged
    /// beforehand after the course begins; what is done counts for nothing and stays.
    #[test]
    fn the_list_is_in_order_whatever_is_in_it(
        kit in some_tools(),
        tasks in some_tasks(),
        times in (0_u32..60, 0_u32..60, 0_u32..60, 0_u32..250),
        ahead in 0_u64..3000,
        closed in prop::collection::vec(0_u64..40, 0..12),
        kept in any::<bool>(),
        done in prop::collection::vec(0_usize..40, 0..10),
    ) {
        let mut course = SAMPLE.0.clone();
        for one in &mut course.days {
            one.date = one.date + Days::new(ahead);
        }
        course.stone.lead_days = Some(times.3);
        let first = course.days[0].date;
        let closed: Vec<NaiveDate> = closed.iter().map(|back| first - Days::new(*back)).collect();
        let ready = ReadyTable {
            tasks,
            times: ComeByTimes {
                borrow_days: times.0,
                hire_days: times.1,
                buy_days: times.2,
                source: String::new(),
            },
            ..ReadyTable::default()
        };
        course.stone.closed = closed;
        let ordered = deliveries(&course, &SAMPLE.2.stone, None, &SAMPLE.1.stone);
        let planned = Planned { deliveries: &ordered, ..planned(&kit, &ready) };
        let bare = list_of(&course, planned);
        if kept {
            let marks = done.iter().filter_map(|at| bare.get(*at)).map(|it| it.id.clone());
            course.ready = Some(ReadyGiven { done: marks.collect() });
        }
        let list = list_of(&course, planned);
        prop_assert!(list.is_sorted_by_key(|it| (it.by.is_none(), it.by)));
        let ids: HashSet<&str> = list.iter().map(|it| it.id.as_str()).collect();
        prop_assert_eq!(ids.len(), list.len());
        prop_assert_eq!(bare.len(), list.len());
        prop_assert_eq!(check_marks(&course, &ready, &[], &list), Ok(()));
        for it in &list {
            let of_table = ready.tasks.iter().find(|task| task.id == it.id);
            let afterwards = matches!(of_table.map(|task| task.when), Some(When::DaysAfter(_)));
            prop_assert!(afterwards || it.by <= Some(first), "{it:?}");
            prop_assert!(!(it.done && it.counts));
            let marks = course.ready.as_ref().map(|ready| &ready.done[..]);
            prop_assert_eq!(it.done, marks.unwrap_or_default().contains(&it.id));
            let reminder = of_table.is_some() || it.id.starts_with("prepare:");
            prop_assert_eq!(it.counts, !it.done && (kept || !reminder));
        }
        let short = kit.iter().filter(|line| 0 < line.short.unwrap_or_default()).count();
        let told = list.iter().filter(|it| it.id.starts_with("kit:")).count();
        prop_assert_eq!(short, told);
    }
}
