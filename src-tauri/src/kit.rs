//! The kit store beside the desk: what there is, who has booked, what came home.

use chrono::NaiveDate;
use craft::quantity::{Read, Units, show_mass};
use documents::{Course, FromStore, booking};
use shapes::window::{
    BookedCourse, BookedItem, KitListPreview, KitStore, Lot as LotShown, LotTyped, ReturnTyped,
};
use std::path::{Path, PathBuf};
use store::{Error, Homecoming, Kind, KitList, Lot, Mode, PacePreview, Preview, Return, Store};

/// The instructor's kit store.
pub(crate) struct Kit {
    folder: PathBuf,
    pub(crate) store: Store,
    /// The list that was looked at last, until it is taken in.
    looked_at: Option<Preview>,
    /// The pace book that was looked at last, until it is taken in.
    pub(crate) pace_looked_at: Option<PacePreview>,
}

impl Kit {
    /// Opens the store of a folder, and makes it where there is none.
    pub(crate) fn open(folder: PathBuf) -> Result<Self, Error> {
        Ok(Self {
            store: Store::open(&folder)?,
            folder,
            looked_at: None,
            pace_looked_at: None,
        })
    }

    /// What is held of each tool, what other courses have booked on these days, and the pace of
    /// earlier courses. A store that can't be read just now holds nothing: the place of the
    /// store says why.
    pub(crate) fn held(&self, path: Option<&Path>, days: &[NaiveDate]) -> FromStore {
        FromStore::read(&self.store, path, days).unwrap_or_default()
    }

    /// All of it, as the window shows it. `path` is the course that is open.
    pub(crate) fn shown(&self, path: Option<&Path>) -> Result<KitStore, Error> {
        let path = path.map(real);
        let courses = self.store.courses()?;
        let this = courses
            .iter()
            .find(|it| Some(&it.course.path) == path.as_ref());
        let stands = match this.map(|it| it.home_on) {
            None => "open",
            Some(None) => "booked",
            Some(Some(_)) => "home",
        };
        let clashes = self.store.clashes()?;
        Ok(KitStore {
            folder: self.folder.display().to_string(),
            notice: self
                .store
                .notice()
                .map(ToString::to_string)
                .unwrap_or_default(),
            lots: self.store.lots()?.iter().map(shown).collect(),
            booked: this.map_or_else(Vec::new, |it| items(&it.items)),
            stands: stands.to_owned(),
            clashes: clashes.clashes.iter().map(ToString::to_string).collect(),
            courses: courses
                .iter()
                .map(|it| BookedCourse {
                    title: it.course.title.clone(),
                    file: it.course.path.display().to_string(),
                    days: days(&it.course.days),
                    items: it.items.len(),
                    home: it.home_on.map(|on| on.to_string()).unwrap_or_default(),
                    this: Some(&it.course.path) == path.as_ref(),
                })
                .collect(),
        })
    }

    /// Puts a lot as it was typed in place of the one of this item and owner; a new one where
    /// `was` is nothing.
    pub(crate) fn put(&mut self, was: Option<(&str, &str)>, lot: &Lot) -> Result<(), Error> {
        match was {
            Some((item, owner)) => self.store.change_lot(item, owner, lot),
            None => self.store.add_lot(lot),
        }
    }

    pub(crate) fn remove(&mut self, item: &str, owner: &str) -> Result<(), Error> {
        self.store.remove_lot(item, owner)
    }

    /// Books what the course needs for its days.
    pub(crate) fn book(&mut self, course: &Course, path: &Path) -> Result<(), Error> {
        let booking = booking::of(course, path);
        self.store.book(&booking.course, &booking.items)
    }

    /// A course that has booked, and is saved with other needs or days, books those. A store
    /// that can't be written leaves its booking as it was: the store's own place says so.
    pub(crate) fn follow(&mut self, course: &Course, path: &Path) {
        let is_booked = self.store.courses().is_ok_and(|courses| {
            let here = real(path);
            courses
                .iter()
                .any(|it| it.course.path == here && it.home_on.is_none())
        });
        if is_booked {
            let _ = self.book(course, path);
        }
    }

    pub(crate) fn release(&mut self, path: &Path) -> Result<(), Error> {
        self.store.release(path).map(|_| ())
    }

    /// Counts the course's kit home, on its last day.
    pub(crate) fn home(
        &mut self,
        path: &Path,
        on: NaiveDate,
        returns: &[Return],
    ) -> Result<Homecoming, Error> {
        self.store.home(path, returns, on)
    }

    pub(crate) fn not_home(&mut self, path: &Path) -> Result<(), Error> {
        self.store.take_back_home(path)
    }

    /// What taking in this list would change; kept until it is taken in.
    pub(crate) fn look_at(&mut self, file: &Path, units: Units) -> Result<KitListPreview, Error> {
        let preview = self.store.preview(&KitList::read(file)?)?;
        let told = |lot: &Lot| words(lot, units);
        let shown = KitListPreview {
            file: file
                .file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default(),
            added: preview.added.iter().map(told).collect(),
            changed: preview
                .changed
                .iter()
                .map(|it| format!("{} (was: {})", told(&it.after), told(&it.before)))
                .collect(),
            same: preview.same.len(),
            not_in_file: preview.not_in_file.iter().map(told).collect(),
        };
        self.looked_at = Some(preview);
        Ok(shown)
    }

    /// Takes in the list that was looked at last.
    pub(crate) fn take_in(&mut self, replace: bool) -> Result<(), Error> {
        let Some(preview) = self.looked_at.take() else {
            return Ok(());
        };
        let mode = if replace { Mode::Replace } else { Mode::Merge };
        self.store.apply(&preview, mode)
    }

    /// The kit list as the content of a file of this name.
    pub(crate) fn export(&self, file: &Path) -> Result<Vec<u8>, Error> {
        self.store.export(Kind::of(file)?)
    }
}

/// The file a path leads to, as the store knows it.
pub(crate) fn real(path: &Path) -> PathBuf {
    std::fs::canonicalize(path).unwrap_or_else(|_| path.to_owned())
}

/// So many of each, for the window.
pub(crate) fn items(items: &[(String, u32)]) -> Vec<BookedItem> {
    let item = |(item, count): &(String, u32)| BookedItem {
        item: item.clone(),
        count: *count,
    };
    items.iter().map(item).collect()
}

fn days(days: &[NaiveDate]) -> String {
    match days {
        [] => String::new(),
        [one] => one.to_string(),
        [first, .., last] => format!("{first} to {last}"),
    }
}

fn shown(lot: &Lot) -> LotShown {
    LotShown {
        item: lot.item.clone(),
        unit: lot.unit.clone(),
        owner: lot.owner.clone(),
        good: lot.good,
        care: lot.care,
        broken: lot.broken,
        // Unrounded: what is shown in a field goes back into the store with it.
        mass: lot
            .mass
            .map(|mass| format!("{} kg", mass.si()))
            .unwrap_or_default(),
        note: lot.note.clone(),
    }
}

/// `Spade, of Upper Dale Club: 4 good, 1 broken`.
fn words(lot: &Lot, units: Units) -> String {
    let mut words = lot.item.clone();
    if !lot.owner.is_empty() {
        words.push_str(&format!(", of {}", lot.owner));
    }
    words.push_str(&format!(": {} good", lot.good));
    for (count, state) in [(lot.care, "in need of care"), (lot.broken, "broken")] {
        if 0 < count {
            words.push_str(&format!(", {count} {state}"));
        }
    }
    if let Some(mass) = lot.mass {
        words.push_str(&format!(", {} each", show_mass(mass, units)));
    }
    words
}

/// A field that does not hold what it should, by its name, with what would be right.
#[derive(Debug)]
pub(crate) struct NotTyped {
    pub(crate) field: String,
    pub(crate) what: String,
    pub(crate) cure: &'static str,
}

/// A lot as it was typed; an empty count is none.
pub(crate) fn lot(typed: &LotTyped) -> Result<Lot, NotTyped> {
    let mass = typed.mass.trim();
    Ok(Lot {
        item: typed.item.trim().to_owned(),
        unit: typed.unit.trim().to_owned(),
        owner: typed.owner.trim().to_owned(),
        good: count("good", &typed.good)?,
        care: count("care", &typed.care)?,
        broken: count("broken", &typed.broken)?,
        mass: if mass.is_empty() {
            None
        } else {
            Some(mass_typed(mass).map_err(|wrong| NotTyped {
                field: "mass".to_owned(),
                what: wrong.what,
                cure: "write a mass with its unit, such as \"1.6 kg\", or leave it empty",
            })?)
        },
        note: typed.note.trim().to_owned(),
    })
}

/// A mass, with a comma as decimal sign as well.
fn mass_typed(typed: &str) -> Result<craft::quantity::Mass, files::quantity::NotAQuantity> {
    files::quantity::mass(typed).or_else(|wrong| {
        let with_points = files::quantity::with_points(typed).ok_or_else(|| wrong.clone())?;
        files::quantity::mass(&with_points).map_err(|_| wrong)
    })
}

/// What became of each item, as it was typed. What is no count is told as `back.Spade`.
pub(crate) fn returns(typed: &[ReturnTyped]) -> Result<Vec<Return>, NotTyped> {
    let one = |it: &ReturnTyped| {
        let of = |field: &str, typed: &str| count(&format!("{field}.{}", it.item), typed);
        Ok(Return {
            item: it.item.clone(),
            owner: None,
            back: of("back", &it.back)?,
            care: of("care", &it.care)?,
            broken: of("broken", &it.broken)?,
            used_up: of("used_up", &it.used_up)?,
            lost: of("lost", &it.lost)?,
        })
    };
    typed.iter().map(one).collect()
}

fn count(field: &str, typed: &str) -> Result<u32, NotTyped> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(0);
    }
    typed.parse().map_err(|_| NotTyped {
        field: field.to_owned(),
        what: format!("\"{typed}\" is not a count"),
        cure: "write a whole number such as 4, or leave it empty for none",
    })
}
