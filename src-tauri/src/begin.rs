//! A new course from six answers, and the same course again, between the window and the files.

use crate::desk::{Desk, Error};
use crate::kit::NotTyped;
use crate::shown::trouble;
use chrono::NaiveDate;
use craft::plan::Asked;
use craft::quantity::Units;
use documents::{Course, FromStore};
use files::course::{Answers, CourseFile, Language, again, begin};
use files::{Country, Fault, Library, Zones};
use shapes::window::{AnswersChecked, BeginChoices, ComesTo, CountryChoice, Trouble};
use std::collections::BTreeMap;

/// Answers by the key of the course file that each becomes.
pub(crate) type Typed = BTreeMap<String, String>;

/// What may be chosen, and what is filled in on a machine in this zone.
pub(crate) fn choices(
    zone: &str,
    today: NaiveDate,
    library: &Library,
) -> Result<BeginChoices, Error> {
    let zones = Zones::built_in()?;
    let country = |it: &Country| CountryChoice {
        code: it.code.clone(),
        name: it.name.clone(),
        units: match zones.units(&it.code) {
            Units::Metric => "metric".to_owned(),
            Units::Imperial => "imperial".to_owned(),
        },
        american: zones.language(&it.code) == Language::EnUs,
        zones: names(&zones, Some(&it.code)),
    };
    let rocks = library.tables.stone.rocks.iter();
    let mut usual = Answers::usual(zone, today, &zones);
    // A country whose emergency number is not known is left open.
    if library.emergency(Some(&usual.country)).is_none() {
        usual.country.clear();
    }
    Ok(BeginChoices {
        usual: typed(usual),
        countries: library.countries.iter().map(country).collect(),
        zones: names(&zones, None),
        rocks: rocks
            .map(|rock| (rock.key.clone(), rock.name.clone()))
            .collect(),
    })
}

/// The zones of a country in the table's order, or all of them by name, each once.
fn names(zones: &Zones, country: Option<&str>) -> Vec<String> {
    let of = |it: &&files::Zone| country.is_none_or(|country| it.country == country);
    let names = zones.zones.iter().filter(of);
    let mut names: Vec<String> = names.map(|it| it.name.clone()).collect();
    if country.is_none() {
        names.sort();
        names.dedup();
    }
    names
}

/// What is wrong with the answers, or what they come to.
pub(crate) fn check(typed: Typed, library: &Library) -> Result<AnswersChecked, Error> {
    let planned = made(typed, library)?.and_then(|text| {
        let one = |fault| vec![fault];
        let file = CourseFile::parse(&text).map_err(one)?;
        let (asked, store) = (Asked::Figures, FromStore::default());
        Course::plan_again(file, library, store, asked, &mut Default::default()).map_err(one)
    });
    Ok(match planned {
        Ok(course) => AnswersChecked {
            troubles: Vec::new(),
            comes_to: Some(ComesTo::of(&course.written)),
        },
        Err(faults) => AnswersChecked {
            troubles: faults.into_iter().map(told).collect(),
            comes_to: None,
        },
    })
}

fn told(fault: Fault) -> Trouble {
    trouble(Error::Fault(fault))
}

fn made(typed: Typed, library: &Library) -> Result<Result<String, Vec<Fault>>, Error> {
    let zones = Zones::built_in()?;
    Ok(begin(&answers(typed), &library.tables, &zones))
}

impl Desk {
    /// Puts the course these answers make on the desk.
    pub(crate) fn begin(&mut self, typed: Typed) -> Result<(), Error> {
        let text = made(typed, &self.library)?;
        // There is a fault for each refusal.
        let first = |faults: Vec<Fault>| faults.into_iter().next().map(Error::Fault);
        match text {
            Ok(text) => self.lay_new(text),
            Err(faults) => first(faults).map_or(Ok(()), Err),
        }
    }

    /// Puts a course of the list on the desk again, from another first day on.
    pub(crate) fn again(&mut self, path: &std::path::Path, first: &str) -> Result<(), Error> {
        let first = first.trim().parse().map_err(|_| NotTyped {
            field: "day.0.date".to_owned(),
            what: "this is not a date".to_owned(),
            cure: "give the new first day as year, month and day, such as 2028-04-22",
        })?;
        let (_, text) = CourseFile::open(path)?;
        self.lay_new(again(&text, first)?)
    }
}

fn answers(mut typed: Typed) -> Answers {
    let mut take = |key: &str| typed.remove(key).unwrap_or_default();
    Answers {
        place: take("venue.name"),
        country: take("venue.country"),
        latitude: take("venue.latitude"),
        longitude: take("venue.longitude"),
        time_zone: take("venue.time_zone"),
        first_day: take("day.0.date"),
        days: take("day"),
        start: take("day.0.start"),
        finish: take("day.0.finish"),
        instructors: take("group.instructors"),
        novices: take("group.novices"),
        improvers: take("group.improvers"),
        experienced: take("group.experienced"),
        units: take("units"),
        stone: take("stone.kind"),
        frames: take("frames.kind"),
        in_stock: take("frames.in_stock"),
    }
}

fn typed(answers: Answers) -> Typed {
    let pairs = [
        ("venue.name", answers.place),
        ("venue.country", answers.country),
        ("venue.latitude", answers.latitude),
        ("venue.longitude", answers.longitude),
        ("venue.time_zone", answers.time_zone),
        ("day.0.date", answers.first_day),
        ("day", answers.days),
        ("day.0.start", answers.start),
        ("day.0.finish", answers.finish),
        ("group.instructors", answers.instructors),
        ("group.novices", answers.novices),
        ("group.improvers", answers.improvers),
        ("group.experienced", answers.experienced),
        ("units", answers.units),
        ("stone.kind", answers.stone),
        ("frames.kind", answers.frames),
        ("frames.in_stock", answers.in_stock),
    ];
    let owned = |(key, value): (&str, String)| (key.to_owned(), value);
    pairs.into_iter().map(owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn today() -> NaiveDate {
        "2027-01-04".parse().expect("a date")
    }

    fn usual(library: &Library) -> Typed {
        let mut usual = choices("America/New_York", today(), library)
            .expect("choices")
            .usual;
        usual.insert("venue.name".to_owned(), "Quarry Pasture".to_owned());
        usual
    }

    fn desk() -> (tempfile::TempDir, Desk) {
        let folder = tempfile::tempdir().expect("a folder");
        let desk = Desk::set_up(None, &folder.path().join("own")).expect("opens");
        (folder, desk)
    }

    #[test]
    fn the_usual_answers_follow_the_machine() {
        let library = Library::built_in().expect("the library");
        let usual = usual(&library);
        assert_eq!(usual["venue.country"], "US");
        assert_eq!(usual["units"], "imperial");
        let checked = check(usual, &library).expect("checks");
        assert!(checked.troubles.is_empty(), "{:?}", checked.troubles);
        let length = checked.comes_to.expect("a plan").length;
        assert!(length.contains("ft"), "{length}");
        let nowhere = choices("Asia/Kathmandu", today(), &library).expect("choices");
        assert_eq!(nowhere.usual["venue.country"], "");
        assert_eq!(nowhere.usual["venue.time_zone"], "Asia/Kathmandu");
    }

    #[test]
    fn what_can_not_be_is_told_at_its_key() {
        let library = Library::built_in().expect("the library");
        let mut typed = usual(&library);
        typed.insert("day".to_owned(), "many".to_owned());
        typed.remove("venue.name");
        let checked = check(typed, &library).expect("checks");
        let keys: Vec<&str> = checked.troubles.iter().map(|it| it.key.as_str()).collect();
        assert_eq!(keys, ["venue.name", "day"]);
        assert!(checked.comes_to.is_none());
    }

    /// A course that was made is unsaved from the start, has no file, and undo has nothing.
    #[test]
    fn a_made_course_is_to_be_saved() {
        let (folder, mut desk) = desk();
        assert!(!desk.unsaved());
        let typed = usual(&desk.library);
        desk.begin(typed).expect("begins");
        let view = desk.view();
        assert!(view.unsaved && view.undo.is_none());
        assert_eq!(view.file, "not yet saved");
        assert_eq!(view.written.title, "Walling at Quarry Pasture");
        let path = folder.path().join("new.walling");
        desk.save_as(path.clone()).expect("saves");
        assert!(!desk.unsaved());
        let again = CourseFile::open(&path).expect("opens").0;
        assert_eq!(again.course.venue.name, "Quarry Pasture");
    }

    #[test]
    fn a_refused_answer_leaves_the_desk_as_it_was() {
        let (_folder, mut desk) = desk();
        let before = desk.text().to_owned();
        assert!(desk.begin(Typed::new()).is_err());
        assert_eq!(desk.text(), before);
    }

    #[test]
    fn the_same_again_is_a_course_of_its_own() {
        let (folder, mut desk) = desk();
        let path = folder.path().join("last-year.walling");
        std::fs::write(&path, Library::example(false)).expect("writes");
        assert!(desk.again(&path, "soon").is_err());
        desk.again(&path, "2028-04-21").expect("again");
        assert_eq!(desk.path(), None);
        assert!(desk.unsaved());
        assert_eq!(
            desk.course.file.course.days[0].date.to_string(),
            "2028-04-21"
        );
        let there = std::fs::read_to_string(&path).expect("reads");
        assert_eq!(there, Library::example(false), "last year's file stays");
    }

    #[test]
    fn an_example_that_nobody_changed_is_no_loss() {
        let (_folder, mut desk) = desk();
        for example in files::examples() {
            desk.lay_example(example.text).expect("lays it");
            assert!(!desk.unsaved(), "{}", example.name);
            assert_eq!(desk.view().file, "example, not yet saved");
        }
        desk.edit("group.novices", "3", false).expect("edits");
        assert!(desk.unsaved());
    }
}
