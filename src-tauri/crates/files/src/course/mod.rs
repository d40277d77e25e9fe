//! The course file: read, refused, planned, edited.

mod begin;
mod clock;
mod edit;
mod node;
#[cfg(test)]
mod on_the_day;
mod private;
mod read;
mod values;

pub use begin::{Answers, begin};
pub use clock::time_of_day;
pub use edit::{
    add_absence, add_break, add_day, add_rain, add_stretch, add_survey, add_vehicle, again,
    change_rule, mark, remove_absence, remove_break, remove_day, remove_rain, remove_row,
    remove_vehicle, set, take_back_rule, take_in_roster, tell, untell, unwish, wish,
};
pub(crate) use edit::{change_in, names_in, take_back_in, with_ends_of};
pub use node::nearest;
pub use private::Private;
pub(crate) use read::{kit_rules, own_changes, own_kit_rules};
pub use values::values;

use crate::{Error, Fault, Library, Refusal};
use craft::course::Course;
use craft::kit::{Held, Standing, changed, known_items, name_key};
use craft::plan::{Asked, Memory, Plan};
use craft::tables::Tables;
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};
use std::path::Path;

/// The newest set of keys this program knows.
pub const FORMAT: i64 = 1;

/// A course file that was understood.
#[derive(Debug, Clone, PartialEq)]
pub struct CourseFile {
    /// What it says.
    pub course: Course,
    /// The paper its pages are for.
    pub paper: Paper,
    /// The spelling, dates and first weekday of its pages.
    pub language: Language,
    /// Whether students are named one by one.
    pub roster: bool,
    /// What is noted of each student of the roster in confidence, in its order.
    pub private: Vec<Private>,
    /// Who helps when somebody is hurt, and how help finds the place.
    pub emergency: Emergency,
    /// The words of its texts that American English has others for: typed words are printed as
    /// they are, whatever the spelling of the program's own.
    pub typed: BTreeSet<String>,
    /// Where each key stands, in bytes.
    places: BTreeMap<String, usize>,
}

/// The paper pages are for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 8 1/2 by 11 in.
    Letter,
}

impl Paper {
    /// The word the file and the page templates use.
    pub fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }
}

/// The spelling, dates and first weekday of pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Language {
    /// As written in Britain.
    EnGb,
    /// As written in the United States.
    EnUs,
}

impl Language {
    /// The word the file uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::EnGb => "en-GB",
            Self::EnUs => "en-US",
        }
    }
}

/// What people have to know when somebody is hurt, in the instructor's words; what is not said
/// is empty, and a blank on the pages.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Emergency {
    /// Who gives first aid.
    pub first_aider: String,
    /// Where the first aid kit lies.
    pub first_aid_kit: String,
    /// The nearest hospital that takes people in.
    pub hospital: String,
    /// The way in for those who don't know the place.
    pub access: String,
    /// Where people gather and are counted, and an ambulance is met.
    pub meeting_point: String,
    /// Where a telephone has a signal.
    pub signal: String,
}

impl CourseFile {
    /// Reads a course from its text.
    ///
    /// # Errors
    /// The first [`Fault`] in the text.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        read::course(text)
    }

    /// Reads a course from a file.
    ///
    /// # Errors
    /// [`Error::Read`] if there is no such file; [`Error::Refused`].
    pub fn open(path: &Path) -> Result<(Self, String), Error> {
        let text = read_text(path)?;
        let file = Self::parse(&text)
            .map_err(|fault| fault.in_file(&path.display().to_string(), &text))?;
        Ok((file, text))
    }

    /// The plan of this course.
    ///
    /// # Errors
    /// A [`Fault`] at the key that asks for what can't be built.
    pub fn plan(&self, library: &Library) -> Result<Plan, Fault> {
        craft::plan::plan(&self.course, &library.tables).map_err(|error| self.fault(&error))
    }

    /// The plan of this course while it is being changed: see [`craft::plan::again`].
    ///
    /// # Errors
    /// As [`CourseFile::plan`].
    pub fn plan_again(
        &self,
        library: &Library,
        asked: Asked,
        memory: &mut Memory,
    ) -> Result<Plan, Fault> {
        craft::plan::again(&self.course, &library.tables, asked, memory)
            .map_err(|error| self.fault(&error))
    }

    /// Counts tools of an instructor's store too. Where the file itself has counted, no more
    /// than that counts; but what other courses have booked of the store is gone all the same.
    ///
    /// What the store holds beyond the tools of the rules is no matter of this course.
    pub fn count_also(&mut self, store: &[Held], tables: &Tables) {
        let kit = &mut self.course.kit;
        let rules = changed(
            &tables.kit,
            &kit.changes,
            Standing::ThisCourse,
            &tables.stages,
        );
        // Changes that can't be are refused when the course is planned.
        let items = known_items(&rules.unwrap_or_else(|_| tables.kit.clone()));
        let items: HashSet<String> = items.iter().map(|item| name_key(item)).collect();
        let counted = &mut kit.held;
        // From the last to the first, so that of two under one name the first counts.
        let places: HashMap<String, usize> = counted
            .iter()
            .enumerate()
            .rev()
            .map(|(at, held)| (name_key(&held.item), at))
            .collect();
        for held in store {
            let name = name_key(&held.item);
            if !items.contains(&name) {
                continue;
            }
            match places.get(&name).and_then(|at| counted.get_mut(*at)) {
                Some(known) => {
                    known.at_most = Some(known.good);
                    known.good = known.good.max(held.usable());
                    known.taken.clone_from(&held.taken);
                }
                None => counted.push(held.clone()),
            }
        }
    }

    /// A refusal of the sums, at the place of the key it is about.
    fn fault(&self, error: &craft::Error) -> Fault {
        fault_at(error, error.key().unwrap_or_default(), &self.places)
    }
}

/// A refusal of the sums about this key, at its place.
fn fault_at(error: &craft::Error, key: String, places: &BTreeMap<String, usize>) -> Fault {
    let choices = error.choices();
    // A name a person chose as a key stands at a place of its own.
    let named = choices.and_then(|(given, _)| places.get(&format!("{key}.{given}")));
    let nearest =
        choices.and_then(|(given, known)| node::nearest(given, known.iter().map(String::as_str)));
    Fault {
        code: error.code(),
        at: named.copied().unwrap_or_else(|| place(&key, places)),
        what: if key.is_empty() {
            error.to_string()
        } else {
            format!("{}: {error}", node::said(&key))
        },
        key,
        cure: nearest.map_or_else(|| error.cure(), |near| error.cure_with(near)),
    }
}

/// Where a key stands, or the nearest table round it.
fn place(key: &str, places: &BTreeMap<String, usize>) -> usize {
    let mut key = key;
    loop {
        if let Some(at) = places.get(key) {
            return *at;
        }
        match key.rsplit_once('.') {
            Some((outer, _)) => key = outer,
            None => return 0,
        }
    }
}

/// The text of a file. Bytes that are no text are refused at their place.
fn read_text(path: &Path) -> Result<String, Error> {
    let bytes = std::fs::read(path).map_err(|cause| Error::Read {
        path: path.to_owned(),
        cause,
    })?;
    String::from_utf8(bytes).map_err(|wrong| {
        let good = wrong.utf8_error().valid_up_to();
        let before = String::from_utf8_lossy(&wrong.as_bytes()[..good]).into_owned();
        let fault = Fault {
            code: "not-text",
            key: String::new(),
            at: good,
            what: "this is not text in UTF-8".to_owned(),
            cure: "open a course file (NAME.walling), or save the file as UTF-8 text".to_owned(),
        };
        Refusal::from_fault(fault, path, &before)
    })
}

impl Refusal {
    fn from_fault(fault: Fault, path: &Path, text: &str) -> Error {
        fault.in_file(&path.display().to_string(), text).into()
    }
}
