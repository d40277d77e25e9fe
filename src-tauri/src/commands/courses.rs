//! The commands of "Your courses": what there is to open, a new course, the same one again.

use super::Reply;
use crate::Shared;
use crate::begin::{self, Typed};
use crate::desk::{Desk, Error};
use crate::kit::{NotTyped, real};
use crate::leaving::may_leave;
use crate::recent;
use crate::shown::trouble;
use chrono::Local;
use files::course::CourseFile;
use files::examples;
use shapes::window::{
    AnswersChecked, BeginChoices, ExampleCourse, Readiness, RecentCourse, View, YourCourses,
};
use std::path::PathBuf;
use tauri::{AppHandle, State};

/// What there is to open. Each file is read; how ready it is is asked for one by one.
#[tauri::command(async)]
pub(crate) fn your_courses(shared: State<'_, Shared>) -> Reply<YourCourses> {
    let (folder, on_desk, unsaved) = {
        let desk = shared.desk();
        (desk.folder.clone(), desk.path().map(real), desk.unsaved())
    };
    let (list, notice) = recent::list(&folder);
    let recent: Vec<RecentCourse> = list
        .courses
        .iter()
        .map(|it| recent::shown(it, on_desk.as_deref()))
        .collect();
    let example = |it: files::Example| ExampleCourse {
        name: it.name.to_owned(),
        title: CourseFile::parse(it.text).map_or_else(|_| String::new(), |it| it.course.title),
        about: it.about(),
    };
    Ok(YourCourses {
        start_here: on_desk.is_none() && !unsaved,
        recent,
        examples: examples().into_iter().map(example).collect(),
        notice,
    })
}

/// How ready a course of the list is. The desk is free meanwhile.
#[tauri::command(async)]
pub(crate) fn course_readiness(shared: State<'_, Shared>, path: &str) -> Reply<Readiness> {
    let (file, library) = {
        let desk = shared.desk();
        (known(&desk, path).map_err(trouble)?, desk.library.clone())
    };
    let held = |days: &[chrono::NaiveDate]| {
        let desk = shared.desk();
        let kit = desk.kit.as_ref().ok();
        kit.map(|kit| kit.held(Some(&file), days))
            .unwrap_or_default()
    };
    recent::readiness(&file, &library, held).map_err(trouble)
}

/// Takes a course off the list; its file stays.
#[tauri::command(async)]
pub(crate) fn forget_course(shared: State<'_, Shared>, path: &str) -> Reply<YourCourses> {
    {
        let desk = shared.desk();
        let file = known(&desk, path).map_err(trouble)?;
        recent::forget(&desk.folder, &file).map_err(|it| trouble(it.into()))?;
    }
    your_courses(shared)
}

/// A course of the list; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn open_course(
    app: AppHandle,
    shared: State<'_, Shared>,
    path: String,
) -> Reply<Option<View>> {
    put(&app, &shared, |desk| {
        let file = known(desk, &path)?;
        desk.open(file)
    })
}

/// An example by its name; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn open_example(
    app: AppHandle,
    shared: State<'_, Shared>,
    name: String,
) -> Reply<Option<View>> {
    put(&app, &shared, |desk| {
        let example = examples().into_iter().find(|it| it.name == name);
        let example = example.ok_or_else(|| not_there("there is no such example"))?;
        desk.lay_example(example.text)
    })
}

/// What a new course may be answered with, on a machine in this time zone.
#[tauri::command(async)]
pub(crate) fn begin_choices(shared: State<'_, Shared>, zone: &str) -> Reply<BeginChoices> {
    let today = Local::now().date_naive();
    begin::choices(zone, today, &shared.desk().library).map_err(trouble)
}

/// What is wrong with some answers, or what they come to. The desk is free meanwhile.
#[tauri::command(async)]
pub(crate) fn check_answers(shared: State<'_, Shared>, answers: Typed) -> Reply<AnswersChecked> {
    let library = shared.desk().library.clone();
    begin::check(answers, &library).map_err(trouble)
}

/// The course these answers make; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn begin_course(
    app: AppHandle,
    shared: State<'_, Shared>,
    answers: Typed,
) -> Reply<Option<View>> {
    put(&app, &shared, |desk| desk.begin(answers))
}

/// A course of the list from another first day on; null if the person thought better of it.
#[tauri::command]
pub(crate) async fn course_again(
    app: AppHandle,
    shared: State<'_, Shared>,
    path: String,
    first: String,
) -> Reply<Option<View>> {
    put(&app, &shared, |desk| {
        let file = known(desk, &path)?;
        desk.again(&file, &first)
    })
}

/// Puts another course on the desk, after asking whether unsaved changes may go.
fn put(
    app: &AppHandle,
    shared: &Shared,
    lay: impl FnOnce(&mut Desk) -> Result<(), Error>,
) -> Reply<Option<View>> {
    if !may_leave(app, shared)? {
        return Ok(None);
    }
    let mut desk = shared.desk();
    lay(&mut desk).map_err(trouble)?;
    Ok(Some(recent::noted(&desk).view()))
}

/// The file of a course of the list: nothing else is opened without a dialog.
fn known(desk: &Desk, path: &str) -> Result<PathBuf, Error> {
    let found = recent::known(&desk.folder, path);
    found.ok_or_else(|| not_there("this course is not on the list"))
}

fn not_there(what: &str) -> Error {
    Error::NotTyped(NotTyped {
        field: String::new(),
        what: what.to_owned(),
        cure: "Choose one of the list, or open a file with Open.",
    })
}
