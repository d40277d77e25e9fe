//! Why a figure is what it is, as text.

use crate::run::{Done, open};
use shapes::written::Reason;
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

/// The reason of one figure; without one, the figures there are.
pub(crate) fn explain(
    file: &Path,
    figure: Option<&str>,
    store: Option<&Path>,
    out: &mut String,
) -> Done {
    let reasons = documents::reasons(&open(file, store)?);
    let Some(figure) = figure else {
        for reason in &reasons {
            writeln!(out, "{:<24} {}: {}", reason.id, reason.title, reason.figure)?;
        }
        return Ok(ExitCode::SUCCESS);
    };
    match reasons.iter().find(|it| it.id == figure) {
        Some(reason) => told(reason, out)?,
        None => {
            let known: Vec<&str> = reasons.iter().map(|it| it.id.as_str()).collect();
            return Err(format!(
                "\"{figure}\" is no figure with a reason\n  right would be one of: {}",
                known.join(", ")
            )
            .into());
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn told(reason: &Reason, out: &mut String) -> std::fmt::Result {
    writeln!(out, "{}: {}\n", reason.title, reason.figure)?;
    for sentence in &reason.sentences {
        writeln!(out, "{sentence}")?;
    }
    for step in &reason.steps {
        writeln!(out, "\n  {}\n    {}", step.what, step.line)?;
    }
    writeln!(out, "\nWhat it rests on")?;
    for it in &reason.sources {
        writeln!(out, "  {}: {}", it.what, it.source)?;
    }
    Ok(())
}
