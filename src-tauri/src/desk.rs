//! The desk: the open course, everything done to it since it was opened, and where it lives.

use documents::{Course, Document, Drawings, Pack, pack};
use files::course::{self, CourseFile};
use files::{Fault, Library, clear_leftovers, save, save_new};
use press::Press;
use shapes::window::{self, Choices, Moved, View};
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
    /// No folder has been chosen to print into.
    NoFolder,
    /// What was to be shown can't be.
    Show(String),
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

impl From<documents::Error> for Error {
    fn from(error: documents::Error) -> Self {
        Self::Print(error)
    }
}

/// The open course.
pub(crate) struct Desk {
    library: Library,
    press: Press,
    /// Where the course lives; `None` for an example that has never been saved.
    path: Option<PathBuf>,
    /// What the disk holds, as far as the desk knows.
    on_disk: Option<String>,
    /// Every text of the course since it was opened; the one shown is at `at`.
    texts: Vec<String>,
    at: usize,
    course: Course,
    moved: Vec<Moved>,
    print_folder: Option<PathBuf>,
    /// The folder of the last print.
    printed: Option<PathBuf>,
}

impl Desk {
    /// A desk with the course of a file on it, or the example.
    pub(crate) fn set_up(file: Option<PathBuf>) -> Result<Self, files::Error> {
        let library = Library::built_in()?;
        let text = match &file {
            Some(path) => CourseFile::open(path)?.1,
            None => Library::example(false).to_owned(),
        };
        let name = file
            .as_ref()
            .map_or_else(|| "example".to_owned(), |it| it.display().to_string());
        let course = planned(&text, &library).map_err(|fault| fault.in_file(&name, &text))?;
        if let Some(folder) = file.as_deref().and_then(Path::parent) {
            clear_leftovers(folder);
        }
        Ok(Self {
            library,
            press: Press::new(),
            on_disk: file.is_some().then(|| text.clone()),
            path: file,
            texts: vec![text],
            at: 0,
            course,
            moved: Vec::new(),
            print_folder: None,
            printed: None,
        })
    }

    /// Puts the course of another file on the desk.
    pub(crate) fn open(&mut self, path: PathBuf) -> Result<(), Error> {
        *self = Self::set_up(Some(path))?;
        Ok(())
    }

    /// Whether the disk does not hold what is shown.
    pub(crate) fn unsaved(&self) -> bool {
        match &self.on_disk {
            Some(text) => text != self.text(),
            // An example nobody has touched is no loss.
            None => self.at != 0,
        }
    }

    fn text(&self) -> &str {
        self.texts.get(self.at).map_or("", String::as_str)
    }

    /// What the window shows.
    pub(crate) fn view(&self) -> View {
        let drawings = Drawings::on_screen(&self.course);
        View {
            file: self
                .path
                .as_ref()
                .and_then(|path| path.file_name())
                .map_or_else(
                    || "example, not yet saved".to_owned(),
                    |it| it.to_string_lossy().into_owned(),
                ),
            unsaved: self.unsaved(),
            can_undo: 0 < self.at,
            can_redo: self.at + 1 < self.texts.len(),
            values: course::values(self.text()),
            roster: self.course.file.roster,
            choices: Choices::of(&self.course.library.tables),
            plan: self.course.numbers(),
            written: self.course.written.clone(),
            drawings: window::Drawings {
                section: drawings.section.svg,
                elevation: drawings.elevation.svg,
                line_plan: drawings.line_plan.svg,
                setting_out: drawings.setting_out.svg,
                frame: drawings.frame.svg,
                gauge: drawings.gauge.svg,
            },
            moved: self.moved.clone(),
        }
    }

    /// Sets one key to what was typed; refused, nothing changes.
    pub(crate) fn edit(&mut self, key: &str, typed: &str) -> Result<(), Error> {
        let text = course::set(self.text(), key, typed)?;
        self.change(text)
    }

    /// One more course day.
    pub(crate) fn add_day(&mut self) -> Result<(), Error> {
        let text = course::add_day(self.text())?;
        self.change(text)
    }

    /// The last course day fewer.
    pub(crate) fn remove_day(&mut self) -> Result<(), Error> {
        let text = course::remove_day(self.text())?;
        self.change(text)
    }

    /// One more break in a day.
    pub(crate) fn add_break(&mut self, day: usize) -> Result<(), Error> {
        let text = course::add_break(self.text(), day)?;
        self.change(text)
    }

    /// One break of a day fewer.
    pub(crate) fn remove_break(&mut self, day: usize, at: usize) -> Result<(), Error> {
        let text = course::remove_break(self.text(), day, at)?;
        self.change(text)
    }

    /// One more stretch at the end of the line.
    pub(crate) fn add_stretch(&mut self, bent: bool) -> Result<(), Error> {
        let text = course::add_stretch(self.text(), bent)?;
        self.change(text)
    }

    /// One more surveyed station.
    pub(crate) fn add_survey(&mut self) -> Result<(), Error> {
        let text = course::add_survey(self.text())?;
        self.change(text)
    }

    /// One row of the line or of the survey fewer.
    pub(crate) fn remove_row(&mut self, key: &str, at: usize) -> Result<(), Error> {
        let text = course::remove_row(self.text(), key, at)?;
        self.change(text)
    }

    fn change(&mut self, text: String) -> Result<(), Error> {
        if text == self.text() {
            self.moved.clear();
            return Ok(());
        }
        self.show(&text)?;
        self.texts.truncate(self.at + 1);
        self.texts.push(text);
        self.at += 1;
        Ok(())
    }

    /// Back to before the last change.
    pub(crate) fn undo(&mut self) -> Result<(), Error> {
        self.step(self.at.checked_sub(1))
    }

    /// Forward again.
    pub(crate) fn redo(&mut self) -> Result<(), Error> {
        self.step(Some(self.at + 1))
    }

    fn step(&mut self, to: Option<usize>) -> Result<(), Error> {
        let Some((to, text)) = to.and_then(|to| Some((to, self.texts.get(to)?.clone()))) else {
            return Ok(());
        };
        self.show(&text)?;
        self.at = to;
        Ok(())
    }

    fn show(&mut self, text: &str) -> Result<(), Error> {
        let course = planned(text, &self.library)?;
        self.moved = window::moved(&self.course.written, &course.written);
        self.course = course;
        Ok(())
    }

    /// Where the course lives.
    pub(crate) fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// Saves to the file the course came from, unless that has been changed meanwhile.
    pub(crate) fn save(&mut self, path: &Path) -> Result<(), Error> {
        let there = std::fs::read_to_string(path).ok();
        if there.is_some() && there != self.on_disk {
            return Err(Error::ChangedOutside(path.to_owned()));
        }
        save(path, self.text().as_bytes())?;
        self.on_disk = Some(self.text().to_owned());
        Ok(())
    }

    /// Saves to a file the person has just chosen and, where there was one, agreed to replace.
    pub(crate) fn save_as(&mut self, path: PathBuf) -> Result<(), Error> {
        if path.exists() {
            save(&path, self.text().as_bytes())?;
        } else {
            save_new(&path, self.text().as_bytes())?;
        }
        self.on_disk = Some(self.text().to_owned());
        self.path = Some(path);
        Ok(())
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

    /// What a print needs, so that the desk is free while it runs.
    pub(crate) fn print_job(&self) -> Result<PrintJob, Error> {
        Ok(PrintJob {
            course: self.course.clone(),
            press: self.press.clone(),
            folder: self.print_folder().ok_or(Error::NoFolder)?,
        })
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

/// A course to print as it was when the print was asked for.
pub(crate) struct PrintJob {
    course: Course,
    press: Press,
    pub(crate) folder: PathBuf,
}

impl PrintJob {
    /// Prints the documents of these names.
    pub(crate) fn run(&self, names: &[String]) -> Result<Pack, Error> {
        let chosen: Vec<&Document> = names
            .iter()
            .filter_map(|name| documents::named(name))
            .collect();
        Ok(pack(
            &self.course,
            &chosen,
            &self.press,
            &self.folder,
            |_| true,
        )?)
    }
}

fn planned(text: &str, library: &Library) -> Result<Course, Fault> {
    Course::plan(CourseFile::parse(text)?, library)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn desk_with_file() -> (tempfile::TempDir, PathBuf, Desk) {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        std::fs::write(&path, Library::example(false)).expect("writes");
        let desk = Desk::set_up(Some(path.clone())).expect("opens");
        (folder, path, desk)
    }

    #[test]
    fn undo_to_the_start_gives_the_starting_file_byte_for_byte() {
        let (_folder, path, mut desk) = desk_with_file();
        desk.edit("group.novices", "4").expect("edits");
        desk.edit("wall.height", "0.9 m").expect("edits");
        desk.add_day().expect("adds");
        assert!(desk.unsaved());
        for _ in 0..3 {
            desk.undo().expect("undoes");
        }
        assert!(!desk.unsaved());
        desk.save(&path).expect("saves");
        assert_eq!(
            std::fs::read_to_string(&path).expect("reads"),
            Library::example(false)
        );
    }

    #[test]
    fn a_refused_edit_changes_nothing_and_says_what_would_be_right() {
        let (_folder, _path, mut desk) = desk_with_file();
        let before = desk.view();
        let Err(Error::Fault(fault)) = desk.edit("wall.height", "tall") else {
            panic!("should be refused");
        };
        assert_eq!(fault.key, "wall.height");
        let after = desk.view();
        assert_eq!(before.values, after.values);
        assert_eq!(before.written.wall.length, after.written.wall.length);
        assert!(!after.can_undo);
    }

    #[test]
    fn a_file_changed_by_someone_else_is_not_overwritten() {
        let (_folder, path, mut desk) = desk_with_file();
        desk.edit("group.novices", "4").expect("edits");
        std::fs::write(&path, "someone else's").expect("writes");
        assert!(matches!(desk.save(&path), Err(Error::ChangedOutside(_))));
        assert_eq!(
            std::fs::read_to_string(&path).expect("reads"),
            "someone else's"
        );
    }

    #[test]
    fn comments_and_spelling_stay_when_a_value_changes() {
        let (_folder, path, mut desk) = desk_with_file();
        desk.edit("wall.height", "3'6\"").expect("edits");
        desk.save(&path).expect("saves");
        let text = std::fs::read_to_string(&path).expect("reads");
        let line = text
            .lines()
            .find(|line| line.starts_with("height"))
            .expect("the line");
        assert!(line.starts_with("height = \"3'6\\\"\""), "{line}");
        assert!(
            line.contains("# ground to the underside of the cope"),
            "{line}"
        );
    }
}
