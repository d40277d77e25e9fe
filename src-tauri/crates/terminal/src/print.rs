//! `print`: which documents, whose pages, in which edition, and what is told of them.

use crate::arguments::{APART, Print};
use crate::run::{Done, open_for_pages};
use crate::tell;
use crate::text::harmless;
use documents::{Course, DOCUMENTS, Document, Edition, Pack, Replaced, fed, named, wanted};
use files::Library;
use files::course::{CourseFile, nearest, values};
use press::{Apart, Limits, Press};
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

pub(crate) fn print(asked: &Print, out: &mut String) -> Done {
    if asked.list {
        for document in DOCUMENTS {
            writeln!(out, "{:20} {}", document.name, document.what)?;
        }
        return Ok(ExitCode::SUCCESS);
    }
    let Some(file) = &asked.file else {
        return Err("say which course to print".into());
    };
    let only = asked.only.iter().chain(&asked.json);
    let only = only
        .map(|name| document(name.trim()))
        .collect::<Result<Vec<_>, _>>()?;
    let mut course = open_for_pages(file, asked.store.as_deref())?;
    if !asked.students.is_empty() {
        course.chosen = Some(chosen(&course, &asked.students)?);
    }
    if asked.large_print {
        course.edition = Edition::LargePrint;
    }
    if let (Some(_), Some(document)) = (&asked.json, only.first()) {
        let fed = fed(&course, document);
        let json = serde_json::to_string_pretty(&fed.data)?;
        match &asked.out {
            Some(folder) => put_down(folder, &json, &fed.drawings, out)?,
            None => writeln!(out, "{json}")?,
        }
        return Ok(ExitCode::SUCCESS);
    }
    let Some(folder) = &asked.out else {
        return Err("say --out which folder to print into".into());
    };
    let documents = if only.is_empty() {
        wanted(&course)
    } else {
        only
    };
    let pack = documents::pack(&course, &documents, &press()?, folder, |_, _| true)?;
    told(&course, &pack, asked.store.as_deref(), out)?;
    if !pack.unprintable.is_empty() {
        out.push_str(&unprintable(&CourseFile::open(file)?.1, &pack.unprintable));
    }
    Ok(if pack.unsaved.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(2)
    })
}

/// All that a template is fed as files, for who writes one.
fn put_down(
    folder: &Path,
    json: &str,
    drawings: &[(String, String)],
    out: &mut String,
) -> Result<(), Box<dyn std::error::Error>> {
    std::fs::create_dir_all(folder)?;
    let data = (press::DATA_FILE.to_owned(), json.to_owned());
    for (name, text) in drawings.iter().chain([&data]) {
        let path = folder.join(name);
        files::save(&path, text.as_bytes())?;
        writeln!(out, "{}", path.display())?;
    }
    Ok(())
}

/// A press that can try the instructor's own templates in a second run of this program.
fn press() -> std::io::Result<Press> {
    let this = std::env::current_exe()?;
    Ok(Press::new().beside(Apart::new(this, &[APART], Limits::default())))
}

/// The second run.
pub(crate) fn apart() -> Done {
    press::serve(std::io::stdin(), &mut std::io::stdout().lock())?;
    Ok(ExitCode::SUCCESS)
}

/// The files printed; beside them what stood in for a broken template, and what could not be
/// written.
fn told(course: &Course, pack: &Pack, store: Option<&Path>, out: &mut String) -> std::fmt::Result {
    for file in &pack.files {
        writeln!(out, "{}", file.display())?;
    }
    for wrong in &course.library.pages_unread {
        tell(&format!("{wrong}\n  the built-in page template is used"));
    }
    for it in &pack.replaced {
        tell(&replaced(it, store));
    }
    for unsaved in &pack.unsaved {
        tell(&unsaved.to_string());
    }
    Ok(())
}

/// Which characters could not be printed, and what in the course file holds them.
fn unprintable(text: &str, signs: &[char]) -> String {
    let all: String = signs.iter().collect();
    let mut told = format!(
        "No font of the program has these characters; an empty box stands in their place: {all}\n"
    );
    for (key, typed) in values(text) {
        if typed.contains(signs) {
            // As a person counts: `student 3 name` is that of the third.
            let parts = key.split('.').map(|part| match part.parse::<usize>() {
                Ok(number) => (number + 1).to_string(),
                Err(_) => part.to_owned(),
            });
            let key = parts.collect::<Vec<_>>().join(" ");
            told.push_str(&harmless(&format!("  in {key}: {typed}")));
            told.push('\n');
        }
    }
    told
}

/// `STORE/lessons/pages/run-sheet.typ:3:9: what is wrong`, and what was done about it.
fn replaced(it: &Replaced, store: Option<&Path>) -> String {
    let own = store.map(|store| store.join("lessons"));
    let path = |file: &str| match &own {
        Some(own) => own.join(Library::path_of_page(file)).display().to_string(),
        None => file.to_owned(),
    };
    let what = match &it.why {
        press::Error::Template(flaw) if it.own.contains(&flaw.file) => at_its_place(flaw, path),
        why => {
            let files: Vec<String> = it.own.iter().map(|file| path(file)).collect();
            format!("{}: {why}", files.join(", "))
        }
    };
    format!(
        "{what}\n  {} is printed from the built-in template",
        it.document
    )
}

fn at_its_place(flaw: &press::Flaw, path: impl Fn(&str) -> String) -> String {
    let mut told = path(&flaw.file);
    if let (Some(line), Some(column)) = (flaw.line, flaw.column) {
        told.push_str(&format!(":{line}:{column}"));
    }
    told.push_str(&format!(": {}", flaw.what));
    if let Some(from) = &flaw.called_from {
        told.push_str(&format!("; called from {from}"));
    }
    for hint in &flaw.hints {
        told.push_str(&format!("\n  hint: {hint}"));
    }
    told
}

/// The document of a name; one of no name there is says which there are.
fn document(name: &str) -> Result<&'static Document, String> {
    named(name).ok_or_else(|| {
        let names: Vec<_> = DOCUMENTS.iter().map(|document| document.name).collect();
        let like = nearest(name, names.iter().copied());
        let like = like.map_or(String::new(), |it| format!("; did you mean {it}?"));
        format!(
            "there is no document {name}{like}\nthere are: {}",
            names.join(", ")
        )
    })
}

/// The places in the group of the students named: each time one name, or several with commas.
fn chosen(course: &Course, asked: &[String]) -> Result<Vec<usize>, String> {
    let names: Vec<&str> = course
        .file
        .course
        .group
        .students
        .iter()
        .map(|student| student.name.trim())
        .collect();
    let mut chosen = Vec::new();
    for typed in asked {
        // A name may have a comma in it.
        let whole = names.contains(&typed.trim());
        let parts: Vec<&str> = if whole {
            vec![typed]
        } else {
            typed.split(',').collect()
        };
        for part in parts.iter().map(|part| part.trim()) {
            let places = names.iter().enumerate().filter(|(_, name)| **name == part);
            let before = chosen.len();
            chosen.extend(places.map(|(place, _)| place));
            if chosen.len() == before {
                return Err(unknown(part, &names));
            }
        }
    }
    Ok(chosen)
}

fn unknown(name: &str, names: &[&str]) -> String {
    let cure = match nearest(name, names.iter().copied()) {
        Some(like) => format!("did you mean {like}?"),
        None => format!("there are: {}", names.join(", ")),
    };
    format!("there is no student {name} in this course\n{cure}")
}
