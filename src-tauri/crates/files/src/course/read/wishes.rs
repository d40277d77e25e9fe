//! Whom a student would like to build with, and whom they are not to be put together with.

use crate::Fault;
use crate::course::node::{Entry, Section, nearest};

/// The names under `with` and `apart` of a student, each a name of the roster.
pub(super) fn wishes(
    section: &Section<'_>,
    who: &str,
    names: &[String],
) -> Result<(Vec<String>, Vec<String>), Fault> {
    let with = others(section, "with", who, names)?;
    let apart = others(section, "apart", who, names)?;
    if let Some((both, entry)) = apart
        .iter()
        .find(|(name, _)| with.iter().any(|(wished, _)| wished == name))
    {
        return Err(entry.fault(
            "with-and-apart",
            &format!("{both} stands under with as well"),
            "keep the name under one of the two",
        ));
    }
    let plain = |list: Vec<(String, Entry<'_>)>| list.into_iter().map(|(name, _)| name).collect();
    Ok((plain(with), plain(apart)))
}

fn others<'s>(
    section: &Section<'s>,
    key: &str,
    who: &str,
    names: &[String],
) -> Result<Vec<(String, Entry<'s>)>, Fault> {
    let Some(entry) = section.get(key) else {
        return Ok(Vec::new());
    };
    let mut others: Vec<(String, Entry<'s>)> = Vec::new();
    for entry in entry.list()? {
        let name = known(&entry, names)?;
        if name == who {
            return Err(entry.fault(
                "wish-for-oneself",
                &format!("{name} is the student's own name"),
                "name another student",
            ));
        }
        if others.iter().all(|(other, _)| *other != name) {
            others.push((name, entry));
        }
    }
    Ok(others)
}

/// A name that a student has.
pub(super) fn known(entry: &Entry<'_>, names: &[String]) -> Result<String, Fault> {
    let given = entry.text()?.trim();
    if names.iter().any(|name| name == given) {
        return Ok(given.to_owned());
    }
    let cure = nearest(given, names.iter().map(String::as_str)).map_or_else(
        || "write the name as it stands in the roster; without one they are \"Student 1\", \"Student 2\" and so on".to_owned(),
        |near| format!("did you mean \"{near}\"?"),
    );
    Err(entry.fault(
        "unknown-student",
        &format!("there is no student \"{given}\""),
        &cure,
    ))
}
