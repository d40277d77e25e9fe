//! The desk: the open course, everything done to it since it was opened, and where it lives.

mod saving;

use crate::ahead::Ahead;
use crate::claim;
use crate::drawn;
use crate::history::History;
use crate::kit::{Kit, NotTyped};
use crate::outside::Outside;
use crate::shown::{self, trouble};
use craft::plan::{Asked, Memory};
use documents::Course;
use files::course::CourseFile;
use files::{Fault, Library, clear_leftovers};
use press::Press;
use shapes::window::{self, Choices, Moved, Numbers, Rule, Trouble, View};
use shapes::written::Written;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Why something could not be done at the desk.
#[derive(Debug)]
pub(crate) enum Error {
    /// The course would be refused.
    Fault(Fault),
    /// A file could not be read or written, or is refused.
    Files(files::Error),
    /// Pages could not be printed.
    Print(documents::Error),
    /// The file has been changed by someone else since it was opened.
    ChangedOutside(PathBuf),
    /// The file is open in another window, which has come forward.
    InOtherWindow(PathBuf),
    /// The file is open in another window, so that nothing is saved over it from this one.
    OpenElsewhere(PathBuf),
    /// What was kept of an earlier sitting is not there any more.
    NothingKept,
    /// There is no document of this name.
    NoDocument(String),
    /// No folder has been chosen to print into.
    NoFolder,
    /// The printer, or what stands between, refused.
    Printer(String),
    /// What was to be shown can't be.
    Show(String),
    /// The kit store refused.
    Store(store::Error),
    /// There is no kit store to work with, and why.
    NoStore(String),
    /// The course has never been saved, so the store does not know it.
    NeverSaved,
    /// Nothing has been told of the open course, so there is no pace to record.
    NothingTold,
    /// A list of people that can't be taken in: what is wrong, row by row.
    NotARoster(Vec<String>),
    /// A field that is no key of the course file.
    NotTyped(NotTyped),
}

impl From<Fault> for Error {
    fn from(fault: Fault) -> Self {
        Self::Fault(fault)
    }
}

impl From<files::Error> for Error {
    fn from(error: files::Error) -> Self {
        Self::Files(error)
    }
}

impl From<store::Error> for Error {
    fn from(error: store::Error) -> Self {
        Self::Store(error)
    }
}

impl From<NotTyped> for Error {
    fn from(wrong: NotTyped) -> Self {
        Self::NotTyped(wrong)
    }
}

impl From<documents::Error> for Error {
    fn from(error: documents::Error) -> Self {
        Self::Print(error)
    }
}

/// The open course.
pub(crate) struct Desk {
    pub(crate) library: Library,
    /// Why nothing of the instructor's own lessons and tables counts, where it is so.
    pub(crate) own_broken: Option<Trouble>,
    pub(crate) press: Press,
    /// The kit store, or why there is none.
    pub(crate) kit: Result<Kit, store::Error>,
    /// Where the store and the instructor's own lessons lie.
    pub(crate) folder: PathBuf,
    /// Where the course lives; `None` for an example that has never been saved.
    path: Option<PathBuf>,
    /// What the disk holds, as far as the desk knows.
    on_disk: Option<String>,
    /// What others have done to the file since.
    outside: Outside,
    /// Everything done to the course since it was opened.
    history: History,
    pub(crate) course: Course,
    memory: Memory,
    /// The figures before the last change.
    before: Written,
    moved: Vec<Moved>,
    /// The drawing the window shows, if any; the others need not be made. See [`Desk::look_at`].
    looked_at: Option<String>,
    pub(crate) ahead: Ahead,
    print_folder: Option<PathBuf>,
    /// Lessons with words that are on no shelf yet.
    pub(crate) unsaved_lessons: BTreeSet<String>,
    /// The folder of the last print.
    printed: Option<PathBuf>,
}

impl Desk {
    /// A desk with the course of a file on it, or the example.
    ///
    /// `folder` holds the instructor's kit store and own lessons; where those are broken the
    /// built-in ones count, and the view tells.
    pub(crate) fn set_up(file: Option<PathBuf>, folder: &Path) -> Result<Self, files::Error> {
        let text = match &file {
            Some(path) => CourseFile::open(path)?.1,
            None => Library::example(false).to_owned(),
        };
        let desk = Self::with(file, text, folder)?;
        if let Some(folder) = desk.path.as_deref().and_then(Path::parent) {
            clear_leftovers(folder);
        }
        Ok(desk)
    }

    /// A desk with a course that the file, where it has one, is known to hold.
    fn with(file: Option<PathBuf>, text: String, folder: &Path) -> Result<Self, files::Error> {
        let kit = Kit::open(folder.to_owned());
        let (library, broken) = match Library::with_store(folder) {
            Ok(library) => (library, None),
            Err(files::Error::Read { .. } | files::Error::NoFolder { .. }) => {
                (Library::built_in()?, None)
            }
            Err(broken) => (Library::built_in()?, Some(broken)),
        };
        let name = file
            .as_ref()
            .map_or_else(|| "example".to_owned(), |it| it.display().to_string());
        let mut memory = Memory::default();
        let store = kit.as_ref().ok();
        let course = planned(
            &text,
            &library,
            store,
            file.as_deref(),
            Asked::Advice,
            &mut memory,
        )
        .map_err(|fault| fault.in_file(&name, &text))?;
        Ok(Self {
            library,
            own_broken: broken.map(|it| trouble(it.into())),
            press: crate::apart::press(),
            kit,
            folder: folder.to_owned(),
            on_disk: file.is_some().then(|| text.clone()),
            path: file,
            outside: Outside::Same,
            history: History::new(text),
            before: course.written.clone(),
            course,
            memory,
            moved: Vec::new(),
            looked_at: Some(drawn::AT_FIRST.to_owned()),
            ahead: Ahead::default(),
            print_folder: None,
            unsaved_lessons: BTreeSet::new(),
            printed: None,
        })
    }

    /// Puts the course of another file on the desk; one that is open in another window is brought
    /// forward there instead.
    pub(crate) fn open(&mut self, path: PathBuf) -> Result<(), Error> {
        let place = claim::place_of(&path);
        let is_this = self.path.as_deref().map(claim::place_of) == Some(place);
        if !is_this && claim::other_window_answers(&self.folder, &path) {
            return Err(Error::InOtherWindow(path));
        }
        let folder = self.folder.clone();
        let opened = Self::set_up(Some(path), &folder)?;
        // Lessons are no part of a course: what is written of them goes on. And the window goes on
        // looking at the drawing it looked at.
        let unsaved_lessons = std::mem::take(&mut self.unsaved_lessons);
        let looked_at = self.looked_at.take();
        *self = Self {
            unsaved_lessons,
            looked_at,
            ..opened
        };
        Ok(())
    }

    pub(crate) fn text(&self) -> &str {
        self.history.text()
    }

    /// What the window shows.
    pub(crate) fn view(&self) -> View {
        let values = self.history.values();
        let drawn = drawn::shown(&self.course, self.looked_at.as_deref(), values);
        View {
            file: self
                .path
                .as_ref()
                .and_then(|path| path.file_name())
                .map_or_else(
                    || self.unnamed().to_owned(),
                    |it| it.to_string_lossy().into_owned(),
                ),
            unsaved: self.unsaved(),
            advised: self.course.asked == Asked::Advice,
            undo: self.history.undo_of().map(<[_]>::to_vec),
            redo: self.history.redo_of().map(<[_]>::to_vec),
            today: chrono::Local::now().date_naive().to_string(),
            own: self.own(),
            roster: self.course.file.roster,
            students: self.students(),
            choices: Choices::of(
                &self.course.plan,
                &self.course.file.course,
                &self.course.library.tables,
            ),
            rules: Rule::all(
                &self.course.library.tables,
                &self.course.file.course,
                &self.course.library.own_rules,
            ),
            plan: Numbers::of(
                &self.course.plan,
                &self.course.file.course,
                &self.course.library.tables,
            ),
            written: self.course.written.clone(),
            values: values.clone(),
            handles: drawn.handles,
            drawings: drawn.drawings,
            moved: self.moved.clone(),
        }
    }

    /// From now on the window shows this drawing, or none.
    pub(crate) fn look_at(&mut self, drawing: Option<String>) {
        self.looked_at = drawing;
    }

    /// What of the instructor's own can't be used.
    fn own(&self) -> Vec<Trouble> {
        let parts = shown::own(&self.library, &[]);
        self.own_broken.iter().cloned().chain(parts).collect()
    }

    fn students(&self) -> Vec<String> {
        let students = self.course.file.course.group.students.iter();
        students.map(|student| student.name.clone()).collect()
    }

    pub(crate) fn change(&mut self, text: String) -> Result<(), Error> {
        self.change_in(text, None, false)
    }

    /// A change typed in a field; `goes_on` where the person has typed there before and never left.
    pub(crate) fn change_in(
        &mut self,
        text: String,
        field: Option<&str>,
        goes_on: bool,
    ) -> Result<(), Error> {
        if text == self.text() {
            self.moved.clear();
            return Ok(());
        }
        let goes_on = goes_on && field.is_some_and(|field| self.history.goes_on(field));
        let before = self.show(&text)?;
        if !goes_on {
            self.before = before;
        }
        // What typing has moved is told against the figures it began at.
        self.moved = window::moved(&self.before, &self.course.written);
        self.history.step(text, field, goes_on);
        Ok(())
    }

    /// The text that typing in a field changes: as long as it goes on, the one it began at. Who empties
    /// a field to write it anew finds its line where it was, with the remark behind it.
    pub(crate) fn typed_over(&self, field: &str, goes_on: bool) -> String {
        let began = (goes_on && self.history.goes_on(field)).then(|| self.history.before());
        began.flatten().unwrap_or_else(|| self.text().to_owned())
    }

    /// Back to before the last change.
    pub(crate) fn undo(&mut self) -> Result<(), Error> {
        if let Some(text) = self.history.before() {
            self.show(&text)?;
            self.history.back();
        }
        Ok(())
    }

    /// Forward again.
    pub(crate) fn redo(&mut self) -> Result<(), Error> {
        if let Some(text) = self.history.after() {
            self.show(&text)?;
            self.history.forth();
        }
        Ok(())
    }

    /// Shows what another text comes to, and tells the figures shown before; what could be done
    /// otherwise is asked for later, by [`Desk::advise`].
    pub(crate) fn show(&mut self, text: &str) -> Result<Written, Error> {
        let course = self.plan(text, Asked::Figures)?;
        let before = std::mem::replace(&mut self.course, course).written;
        self.begin_page();
        self.moved = window::moved(&before, &self.course.written);
        Ok(before)
    }

    /// Works out what could be done otherwise, if that has not been asked of the course shown.
    pub(crate) fn advise(&mut self) -> Result<(), Error> {
        if self.course.asked == Asked::Figures {
            let text = self.text().to_owned();
            self.course = self.plan(&text, Asked::Advice)?;
        }
        Ok(())
    }

    fn plan(&mut self, text: &str, asked: Asked) -> Result<Course, Fault> {
        let (kit, path) = (self.kit.as_ref().ok(), self.path.as_deref());
        planned(text, &self.library, kit, path, asked, &mut self.memory)
    }

    /// Where the course lives.
    pub(crate) fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// Where pages go: where the person said, else a folder beside the course.
    pub(crate) fn print_folder(&self) -> Option<PathBuf> {
        self.print_folder.clone().or_else(|| {
            let path = self.path.as_ref()?;
            let name = path.file_stem()?.to_string_lossy();
            Some(path.with_file_name(format!("{name} pages")))
        })
    }

    /// Where pages shall go.
    pub(crate) fn print_into(&mut self, folder: PathBuf) {
        self.print_folder = Some(folder);
    }

    /// Remembers the folder of the last print.
    pub(crate) fn printed(&mut self, folder: PathBuf) {
        self.printed = Some(folder);
    }

    /// The folder of the last print.
    pub(crate) fn last_print(&self) -> Option<PathBuf> {
        self.printed.clone()
    }
}

fn planned(
    text: &str,
    library: &Library,
    kit: Option<&Kit>,
    path: Option<&Path>,
    asked: Asked,
    memory: &mut Memory,
) -> Result<Course, Fault> {
    let file = CourseFile::parse(text)?;
    let days: Vec<_> = file.course.days.iter().map(|day| day.date).collect();
    let store = kit.map(|kit| kit.held(path, &days)).unwrap_or_default();
    Course::plan_again(file, library, store, asked, memory)
}

mod laid;
#[cfg(test)]
mod tests;
