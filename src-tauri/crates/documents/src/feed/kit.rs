//! What goes out, in what, and what comes home.

use super::Feed;
use crate::Course;
use craft::tables::Way;
use serde::Serialize;
use serde_json::{Value, json};
use shapes::written::{Hold, Kit, KitLine, LoadLine, Loads, Run};

/// The tools as they are loaded: by run and vehicle where vehicles are given, else under the
/// place where each is used. What is short or wants care stands before all of them.
pub(crate) fn load_list(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let kit = &written.kit;
    let loads = written.loads.as_ref();
    let places = match loads {
        Some(_) => Vec::new(),
        None => by_place(&kit.lines.iter().collect::<Vec<_>>()),
    };
    let first: Vec<&KitLine> = kit
        .lines
        .iter()
        .filter(|line| !line.short.is_empty() || !line.state.is_empty())
        .collect();
    let own = json!({
        "loads": loads.map(|loads| by_vehicle(loads, kit)),
        "places": places,
        "first": first,
        "counted": kit.lines.iter().any(|line| !line.have.is_empty()),
        "mass": kit.mass,
        "short": kit.short,
        "bars": written.frames.bars,
        "frames": written.frames.count,
    });
    Feed::new(course, own)
}

/// The lines under the place where each tool is used, in the order the places are first met.
fn by_place(lines: &[&KitLine]) -> Vec<Value> {
    let mut places: Vec<(&str, Vec<&KitLine>)> = Vec::new();
    for line in lines {
        match places.iter_mut().find(|(place, _)| *place == line.place) {
            Some((_, lines)) => lines.push(line),
            None => places.push((&line.place, vec![line])),
        }
    }
    let places = places.into_iter();
    places
        .map(|(place, lines)| json!({ "place": place, "lines": lines }))
        .collect()
}

/// A line of a loaded hold, with what the tool list knows of it.
#[derive(Serialize)]
struct Loaded<'a> {
    #[serde(flatten)]
    load: &'a LoadLine,
    place: &'a str,
    owners: &'a str,
    safety_critical: bool,
}

impl<'a> Loaded<'a> {
    fn of(load: &'a LoadLine, kit: &'a Kit) -> Self {
        let known = kit.lines.iter().find(|it| it.item == load.item);
        Self {
            load,
            place: known.map_or("", |it| &it.place),
            owners: known.map_or("", |it| &it.owners),
            safety_critical: known.is_some_and(|it| it.safety_critical),
        }
    }
}

fn by_vehicle(loads: &Loads, kit: &Kit) -> Value {
    let lines = |lines: &[LoadLine]| -> Value {
        let lines = lines.iter().map(|it| Loaded::of(it, kit));
        lines.map(|it| json!(it)).collect()
    };
    let hold = |hold: &Hold| {
        json!({
            "name": hold.name,
            "mass": hold.mass,
            "limit": hold.limit,
            "share": hold.share,
            "lines": lines(&hold.lines),
        })
    };
    let run = |run: &Run| {
        let holds: Vec<Value> = run.holds.iter().map(hold).collect();
        json!({ "number": run.number, "holds": holds })
    };
    json!({
        "runs": loads.runs.iter().map(run).collect::<Vec<_>>(),
        "too_heavy": lines(&loads.too_heavy),
        "told": loads.told,
        "notes": loads.notes,
    })
}

/// Everything that went out, to be counted back in: what belongs to others first, by owner;
/// then the instructor's own by place; what gets used up apart.
pub(crate) fn return_list(course: &Course) -> Feed<'_> {
    let lines: Vec<&KitLine> = course.written.kit.lines.iter().collect();
    let (lent, own): (Vec<_>, Vec<_>) = lines.into_iter().partition(|it| !it.owners.is_empty());
    let (used, kept): (Vec<_>, Vec<_>) = own.into_iter().partition(|it| it.consumable);
    let mut owners: Vec<(&str, Vec<&KitLine>)> = Vec::new();
    for line in lent {
        match owners.iter_mut().find(|(owner, _)| *owner == line.owners) {
            Some((_, lines)) => lines.push(line),
            None => owners.push((&line.owners, vec![line])),
        }
    }
    let owners: Vec<Value> = owners
        .into_iter()
        .map(|(owner, lines)| json!({ "owner": owner, "lines": lines }))
        .collect();
    let own = json!({
        "owners": owners,
        "places": by_place(&kept),
        "used": used,
        "fetched": fetched(course),
        "mass": course.written.kit.mass,
    });
    Feed::new(course, own)
}

/// For each item that is short and borrowed or hired, what of it goes back to somebody else:
/// `2 borrowed`.
fn fetched(course: &Course) -> Value {
    let lines = course.plan.kit.iter();
    lines
        .filter_map(|line| {
            let short = line.short.filter(|short| 0 < *short)?;
            let how = match line.way {
                Way::Borrow => "borrowed",
                Way::Hire => "hired",
                Way::Buy => return None,
            };
            Some((line.item.clone(), Value::from(format!("{short} {how}"))))
        })
        .collect::<serde_json::Map<_, _>>()
        .into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::FromStore;
    use craft::kit::Held;
    use craft::quantity::Read;
    use files::Library;
    use files::course::CourseFile;
    use std::collections::BTreeMap;

    const TOO_HEAVY: &str =
        "[[kit.rule]]\nitem = \"Generator\"\nper = \"group\"\neach = 1\nmass = \"3 t\"\n";

    /// The metric example with these vehicles: name, payload and trailer in kilograms.
    fn course(vehicles: &[(&str, u32, Option<u32>)]) -> Course {
        let mut text = crate::feed::bare_example() + TOO_HEAVY;
        for (name, payload, trailer) in vehicles {
            text += &format!("[[vehicle]]\nname = \"{name}\"\npayload = \"{payload} kg\"\n");
            if let Some(trailer) = trailer {
                text += &format!("trailer = \"{trailer} kg\"\n");
            }
        }
        let held = vec![Held {
            owners: vec!["Farm".to_owned()],
            ..Held::counted("Barrow", 1)
        }];
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        Course::plan_with(
            file,
            &library,
            FromStore {
                held,
                ..FromStore::default()
            },
        )
        .expect("a plan")
    }

    fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
        let list = value[key].as_array();
        list.unwrap_or_else(|| panic!("no list {key} in {value}"))
    }

    /// How often each item stands in some lines, and how many of it in all.
    fn counted<'a>(
        lines: impl Iterator<Item = &'a Value>,
        count: impl Fn(&Value) -> usize,
    ) -> BTreeMap<String, (usize, usize)> {
        let mut found = BTreeMap::new();
        for line in lines {
            let item = line["item"].as_str().expect("an item").to_owned();
            let (times, all) = found.entry(item).or_insert((0, 0));
            *times += 1;
            *all += count(line);
        }
        found
    }

    /// Every item of the tool list, once.
    fn each_once(course: &Course) -> BTreeMap<String, (usize, usize)> {
        let lines = course.plan.kit.iter();
        lines.map(|line| (line.item.clone(), (1, 1))).collect()
    }

    const FLEETS: [&[(&str, u32, Option<u32>)]; 4] = [
        &[("Van", 900, None)],
        &[
            ("Van", 60, Some(45)),
            ("Car", 40, None),
            ("Pick-up", 90, None),
        ],
        &[("Handcart", 25, None)],
        &[("Car", 150, Some(150))],
    ];

    #[test]
    fn all_that_is_needed_is_loaded_or_fits_nowhere_and_nothing_is_too_full() {
        for fleet in FLEETS {
            let course = course(fleet);
            let data = load_list(&course).data;
            let loads = &data["loads"];
            let holds: Vec<&Value> = list(loads, "runs")
                .iter()
                .flat_map(|run| list(run, "holds"))
                .collect();
            let lines = holds.iter().flat_map(|hold| list(hold, "lines"));
            let lines = lines.chain(list(loads, "too_heavy"));
            let found = counted(lines, |line| {
                line["count"].as_u64().map_or(0, |it| it as usize)
            });
            for line in &course.plan.kit {
                let loaded = found.get(&line.item).map(|(_, all)| *all);
                assert_eq!(loaded, Some(line.need), "{} in {fleet:?}", line.item);
            }
            assert_eq!(found.len(), course.plan.kit.len());
            let fits_nowhere = counted(list(loads, "too_heavy").iter(), |_| 1);
            assert!(fits_nowhere.contains_key("Generator"), "{fits_nowhere:?}");
            for hold in &holds {
                let once = counted(list(hold, "lines").iter(), |_| 1);
                assert!(once.values().all(|(times, _)| *times == 1), "{once:?}");
            }
            let runs = &course.plan.loads.as_ref().expect("vehicles").runs;
            for hold in runs.iter().flat_map(|run| &run.holds) {
                assert!(hold.mass().si() <= hold.limit.si() + 1e-6, "{}", hold.name);
            }
            assert!(list(&data, "places").is_empty());
        }
    }

    #[test]
    fn without_vehicles_each_item_stands_once_under_its_place() {
        let course = course(&[]);
        let data = load_list(&course).data;
        assert!(data["loads"].is_null());
        let lines = list(&data, "places")
            .iter()
            .flat_map(|place| list(place, "lines"));
        assert_eq!(counted(lines, |_| 1), each_once(&course));
    }

    #[test]
    fn each_item_comes_home_once_and_what_is_borrowed_to_its_owner() {
        for fleet in FLEETS {
            let course = course(fleet);
            let data = return_list(&course).data;
            let lines = |key: &str| {
                let groups = list(&data, key).iter();
                groups.flat_map(|group| list(group, "lines")).cloned()
            };
            let all: Vec<Value> = lines("owners")
                .chain(lines("places"))
                .chain(list(&data, "used").iter().cloned())
                .collect();
            assert_eq!(counted(all.iter(), |_| 1), each_once(&course));
            let [farm] = list(&data, "owners") else {
                panic!("one owner: {data}");
            };
            assert_eq!(farm["owner"], "Farm");
            assert_eq!(farm["lines"][0]["item"], "Barrow");
            assert_eq!(data["fetched"]["Walling hammer"], "1 borrowed");
            let kept: Vec<Value> = lines("places").collect();
            assert!(kept.iter().all(|line| line["consumable"] == false));
        }
    }
}
