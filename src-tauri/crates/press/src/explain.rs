//! The typesetter's complaints turned into our own error: which file, which line, what to do.

use typst::WorldExt;
use typst::diag::SourceDiagnostic;
use typst::syntax::{DiagSpan, Lines};

use crate::world::{JobWorld, name};
use crate::{Error, FALLBACK_FAMILY, Flaw, TEXT_FAMILY};

/// A place in a file of the job, counted from 1.
struct Place {
    file: &'static str,
    line: usize,
    column: usize,
}

/// The first complaint, as an error. The rest mostly follow from it.
pub(crate) fn explain(world: &JobWorld, complaints: &[SourceDiagnostic]) -> Error {
    match complaints.first() {
        Some(complaint) => error(world, complaint),
        None => Error::Fault {
            why: "the typesetter gave up without a reason".to_owned(),
        },
    }
}

fn error(world: &JobWorld, complaint: &SourceDiagnostic) -> Error {
    let main = name(typst::World::main(world));
    let at = place(world, complaint.span);
    let file = at.as_ref().map_or(main, |at| at.file);
    let called_from = complaint
        .trace
        .iter()
        .filter_map(|step| place(world, step.span.into()))
        .find(|step| step.file == main && file != main)
        .map(|step| format!("{} line {}, column {}", step.file, step.line, step.column));
    let flaw = Flaw {
        file: file.to_owned(),
        line: at.as_ref().map(|at| at.line),
        column: at.as_ref().map(|at| at.column),
        what: complaint.message.trim_end_matches('.').to_owned(),
        called_from,
        hints: hints(complaint),
    };
    Error::Template(Box::new(flaw))
}

fn hints(complaint: &SourceDiagnostic) -> Vec<String> {
    if complaint.message.starts_with("unknown font family") {
        return vec![format!("the fonts are {TEXT_FAMILY} and {FALLBACK_FAMILY}")];
    }
    let hints = complaint.hints.iter();
    hints
        .map(|hint| hint.v.trim_end_matches('.').to_owned())
        .collect()
}

fn place(world: &JobWorld, span: DiagSpan) -> Option<Place> {
    let id = span.id()?;
    let start = world.range(span)?.start;
    let lines = Lines::new(world.text(id)?);
    let (line, column) = lines.byte_to_line_column(start)?;
    Some(Place {
        file: name(id),
        line: line + 1,
        column: column + 1,
    })
}
