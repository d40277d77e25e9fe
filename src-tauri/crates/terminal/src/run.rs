//! What each call does.

use crate::arguments::Print;
use crate::text;
use documents::{Course, DOCUMENTS, Document, named};
use files::course::CourseFile;
use files::{Library, save_new};
use press::Press;
use std::error::Error;
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

/// A refusal says what is wrong and what would be right.
type Done = Result<ExitCode, Box<dyn Error>>;

pub(crate) fn new(file: &Path, imperial: bool, out: &mut String) -> Done {
    save_new(file, Library::example(imperial).as_bytes())?;
    writeln!(
        out,
        "{}: an example course. Change it, then: coursewright plan {0}",
        file.display()
    )?;
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn plan(file: &Path, json: bool, store: Option<&Path>, out: &mut String) -> Done {
    let course = open(file, store)?;
    if json {
        writeln!(out, "{}", serde_json::to_string_pretty(&course.numbers())?)?;
    } else {
        out.push_str(&text::plan(&course.written));
    }
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn check(file: &Path, store: Option<&Path>, out: &mut String) -> Done {
    let course = open(file, store)?;
    out.push_str(&text::check(&course.written));
    Ok(ExitCode::from(u8::from(!course.written.to_do.is_empty())))
}

pub(crate) fn print(asked: &Print, out: &mut String) -> Done {
    if asked.list {
        for document in DOCUMENTS {
            writeln!(out, "{:16} {}", document.name, document.what)?;
        }
        return Ok(ExitCode::SUCCESS);
    }
    let (Some(file), Some(folder)) = (&asked.file, &asked.out) else {
        return Err("say which course to print and --out which folder".into());
    };
    let documents = chosen(&asked.only)?;
    let course = open(file, asked.store.as_deref())?;
    let pack = documents::pack(&course, &documents, &Press::new(), folder, |_| true)?;
    for file in &pack.files {
        writeln!(out, "{}", file.display())?;
    }
    if !pack.unprintable.is_empty() {
        let signs: String = pack.unprintable.iter().collect();
        writeln!(
            out,
            "These characters can't be printed; a sign stands in their place: {signs}"
        )?;
    }
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn licences(out: &mut String) -> Done {
    for (font, licence) in press::FONT_LICENCES {
        writeln!(out, "{font}\n\n{licence}\n")?;
    }
    Ok(ExitCode::SUCCESS)
}

fn chosen(only: &[String]) -> Result<Vec<&'static Document>, Box<dyn Error>> {
    if only.is_empty() {
        return Ok(DOCUMENTS.iter().collect());
    }
    only.iter()
        .map(|name| {
            named(name.trim()).ok_or_else(|| {
                let names: Vec<_> = DOCUMENTS.iter().map(|document| document.name).collect();
                format!(
                    "there is no document {name}\nthere are: {}",
                    names.join(", ")
                )
                .into()
            })
        })
        .collect()
}

fn open(path: &Path, store: Option<&Path>) -> Result<Course, Box<dyn Error>> {
    let library = match store {
        Some(store) => Library::with_store(store)?,
        None => Library::built_in()?,
    };
    let (file, text) = CourseFile::open(path)?;
    let course = Course::plan(file, &library)
        .map_err(|fault| fault.in_file(&path.display().to_string(), &text))?;
    Ok(course)
}
