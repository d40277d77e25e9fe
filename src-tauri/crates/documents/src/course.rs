//! A course made ready to be shown: read, planned, written out.

use crate::edition::Edition;
use crate::spelling;
use crate::stored::FromStore;
use chrono::NaiveDate;
use craft::course::Student;
use craft::plan::{Asked, Memory};
use files::course::{CourseFile, Language};
use files::{Fault, Library};
use shapes::plan::Plan;
use shapes::written::Written;
use shapes::{Clock, DateStyle};

/// A planned course.
#[derive(Debug, Clone)]
pub struct Course {
    /// The course file as understood.
    pub file: CourseFile,
    /// The plan.
    pub plan: craft::plan::Plan,
    /// Every figure as a person reads it.
    pub written: Written,
    /// What the course was planned with.
    pub library: Library,
    /// Whose pages are wanted of the documents with pages for each student, as places in the
    /// group; everybody's where nothing is said.
    pub chosen: Option<Vec<usize>>,
    /// The edition its pages are wanted in.
    pub edition: Edition,
    /// How much was asked of the plan.
    pub asked: Asked,
}

impl Course {
    /// Plans a course file.
    ///
    /// # Errors
    /// The [`Fault`] at the key that asks for what can't be built.
    pub fn plan(file: CourseFile, library: &Library) -> Result<Self, Fault> {
        Self::plan_with(file, library, FromStore::default())
    }

    /// Plans a course file with what the instructor's store holds: tools, where the file itself
    /// has not counted, and the pace of earlier courses.
    ///
    /// # Errors
    /// As [`Course::plan`].
    pub fn plan_with(file: CourseFile, library: &Library, store: FromStore) -> Result<Self, Fault> {
        Self::plan_again(file, library, store, Asked::Advice, &mut Memory::default())
    }

    /// Plans a course file that is being changed: see [`craft::plan::again`].
    ///
    /// # Errors
    /// As [`Course::plan`].
    pub fn plan_again(
        mut file: CourseFile,
        library: &Library,
        store: FromStore,
        asked: Asked,
        memory: &mut Memory,
    ) -> Result<Self, Fault> {
        let library = spelling::library(library, file.language);
        file.count_also(&store.held, &library.tables);
        file.course.recorded = store.recorded;
        let plan = file.plan_again(&library, asked, memory)?;
        let style = date_style(file.language);
        let mut written = Written::of(&plan, &file.course, &library.tables, style);
        spelling::sentences(&mut written, file.language);
        Ok(Self {
            file,
            plan,
            written,
            library,
            chosen: None,
            edition: Edition::default(),
            asked,
        })
    }

    /// The students whose own pages are wanted, each with their place in the group.
    pub(crate) fn chosen_students(&self) -> impl Iterator<Item = (usize, &Student)> {
        let students = self.file.course.group.students.iter().enumerate();
        students.filter(|(place, _)| self.chosen.as_ref().is_none_or(|all| all.contains(place)))
    }

    /// Some of the course dates in short.
    pub(crate) fn dates(&self, dates: &[NaiveDate]) -> String {
        self.clock().dates(dates)
    }

    /// The clock at the venue, which writes times as the course's language does.
    pub fn clock(&self) -> Clock {
        Clock::new(&self.file.course, date_style(self.file.language))
    }

    /// Every number of the plan, in SI.
    pub fn numbers(&self) -> Plan {
        Plan::of(&self.plan, &self.file.course, &self.library.tables)
    }
}

pub(crate) fn date_style(language: Language) -> DateStyle {
    match language {
        Language::EnGb => DateStyle::British,
        Language::EnUs => DateStyle::American,
    }
}
