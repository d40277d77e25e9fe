//! The commands of what stands behind words and figures: reasons, meanings, sketches.

use super::Reply;
use crate::Shared;
use crate::desk::Error;
use crate::drawn;
use crate::shown::trouble;
use shapes::window::{Sketch, Term};
use shapes::written::Reason;
use tauri::State;

/// Why the figures of the open course are what they are.
#[tauri::command(async)]
pub(crate) fn reasons(shared: State<'_, Shared>) -> Vec<Reason> {
    documents::reasons(&shared.desk().course)
}

/// The words of the trade.
#[tauri::command(async)]
pub(crate) fn words(shared: State<'_, Shared>) -> Vec<Term> {
    let desk = shared.desk();
    let terms = desk.course.library.terms.iter().cloned();
    terms
        .map(|term| Term {
            word: term.word,
            also: term.also,
            meaning: term.meaning,
            drawing: term.drawing,
            everyday: term.everyday,
            source: term.source,
        })
        .collect()
}

/// A sketch by its name, set while the desk is free, or a drawing of the open course.
#[tauri::command(async)]
pub(crate) fn sketch(shared: State<'_, Shared>, name: &str) -> Reply<Sketch> {
    let (pages, press) = {
        let desk = shared.desk();
        if let Some(drawing) = drawn::named(&desk.course, name) {
            return Ok(Sketch {
                svg: drawing.svg,
                words: drawing.description,
                of_the_course: true,
            });
        }
        (desk.course.library.pages.clone(), desk.press.clone())
    };
    let unknown = || Error::Show(format!("there is no sketch \"{name}\""));
    let sketch = documents::sketch(&pages, name, &press).ok_or_else(|| trouble(unknown()))?;
    let sketch = sketch.map_err(|wrong| trouble(Error::Show(wrong.to_string())))?;
    Ok(Sketch {
        svg: sketch.svg,
        words: sketch.words,
        of_the_course: false,
    })
}
