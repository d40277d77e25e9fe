//! American spelling of the program's own words. What a person typed is never respelled.

use crate::Course;
use files::course::Language;
use files::{American, Library};
use serde_json::Value;
use shapes::written::Written;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A text of the program's own, in a language.
pub(crate) fn text(text: &str, language: Language) -> String {
    match language {
        Language::EnGb => text.to_owned(),
        Language::EnUs => American::built_in().of(text),
    }
}

/// Every text a template is fed, whoever made it: words that the course file itself has are left
/// as they were typed.
pub(crate) fn data(value: &mut Value, course: &Course) {
    if course.file.language == Language::EnGb {
        return;
    }
    match value {
        Value::String(it) => *it = American::built_in().but(it, &course.file.typed),
        Value::Array(all) => all.iter_mut().for_each(|it| data(it, course)),
        Value::Object(all) => all.values_mut().for_each(|it| data(it, course)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// What `say` of `look.typ` puts in place of British words, for templates of the instructor's own.
pub(crate) fn for_templates(language: Language) -> BTreeMap<String, String> {
    match language {
        Language::EnGb => BTreeMap::new(),
        Language::EnUs => American::built_in().pairs().collect(),
    }
}

/// The library with its words in a language.
pub(crate) fn library(library: &Library, language: Language) -> Library {
    let mut library = library.clone();
    if language == Language::EnGb {
        return library;
    }
    let respell = |it: &mut String| *it = text(it, language);
    let tables = Arc::make_mut(&mut library.tables);
    for stage in &mut tables.stages {
        respell(&mut stage.name);
        respell(&mut stage.note);
        respell(&mut stage.if_left);
    }
    for rule in &mut tables.kit {
        for it in [&mut rule.unit, &mut rule.place, &mut rule.why] {
            respell(it);
        }
    }
    for lesson in &mut tables.lessons {
        respell(&mut lesson.title);
    }
    for caution in &mut tables.cautions {
        respell(&mut caution.text);
    }
    for hazard in &mut tables.hazards.hazards {
        let words = [&mut hazard.name, &mut hazard.harm, &mut hazard.who];
        let asked = hazard.ask.iter_mut().chain(&mut hazard.controls);
        words.into_iter().chain(asked).for_each(respell);
    }
    let limits = tables.lifting.limits.iter_mut();
    let notes = tables.ready.loading.notes.iter_mut();
    let tasks = tables.ready.tasks.iter_mut();
    limits
        .chain(notes.map(|note| &mut note.text))
        .chain(tasks.map(|task| &mut task.text))
        .for_each(respell);
    respell(&mut tables.retaining.ask);
    for assumption in &mut tables.retaining.assumptions {
        respell(assumption);
    }
    library
}

/// The sentences the sums make, in a language.
pub(crate) fn sentences(written: &mut Written, language: Language) {
    let respell = |it: &mut String| *it = text(it, language);
    for line in &mut written.kit.lines {
        respell(&mut line.why);
        respell(&mut line.need);
        respell(&mut line.prepare);
    }
    let loaded = written.loads.iter_mut().flat_map(|it| &mut it.runs);
    let loaded = loaded.flat_map(|run| &mut run.holds);
    for line in loaded.flat_map(|hold| &mut hold.lines) {
        respell(&mut line.carried);
    }
    for caution in &mut written.cautions {
        respell(&mut caution.text);
    }
    respell(&mut written.stone.per_length);
    respell(&mut written.wall.top);
    respell(&mut written.frames.leapfrog);
    for end in &mut written.wall.ends {
        respell(&mut end.what);
    }
    if let Some(bars) = &mut written.frames.bars {
        respell(&mut bars.trench);
    }
    if let Some(bank) = &mut written.retaining {
        for (name, _) in &mut bank.reckoned {
            respell(name);
        }
    }
}
