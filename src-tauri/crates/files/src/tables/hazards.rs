//! `hazards.toml` as the sums want it.

use super::rows;
use crate::Error;
use crate::shelf::Shelf;
use craft::hazards::Rating;
use craft::tables::{Caution, Hazard, HazardTable};

const FILE: &str = "tables/hazards.toml";

/// What can hurt someone; every caution it names must be there.
pub(super) fn hazards(shelf: &Shelf, cautions: &[Caution]) -> Result<HazardTable, Error> {
    let text = shelf.text(FILE)?;
    let file: rows::Hazards = text.toml()?;
    for hazard in &file.rows.hazard {
        for id in &hazard.cautions {
            if cautions.iter().any(|caution| caution.id == *id) {
                continue;
            }
            let at = text.text.find(&format!("\"{id}\"")).unwrap_or_default();
            let what = format!("\"{id}\" is no caution of cautions.toml");
            return Err(text.fault("unknown-caution", at, &what));
        }
    }
    Ok(table(file))
}

fn table(file: rows::Hazards) -> HazardTable {
    let rows::HazardRows {
        heights,
        matrix,
        hazard,
    } = file.rows;
    HazardTable {
        knee: heights.knee.0,
        waist: heights.waist.0,
        heights_source: heights.source,
        matrix_source: matrix.source,
        hazards: hazard
            .into_iter()
            .map(|row| Hazard {
                before: Rating::from(&row.before),
                after: Rating::from(&row.after),
                id: row.id,
                name: row.name,
                harm: row.harm,
                who: row.who,
                met_by: row.met_by,
                ask: row.ask,
                controls: row.controls,
                cautions: row.cautions,
                source: row.source,
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shelf::built_in;
    use craft::hazards::{Circumstance, Level};

    fn built_in_table() -> HazardTable {
        crate::Library::built_in()
            .expect("sound")
            .tables
            .hazards
            .clone()
    }

    /// The built-in table with one text in place of another, as a table of one's own.
    fn with(old: &str, new: &str) -> Result<HazardTable, String> {
        let text = built_in(FILE).expect("it is built in");
        assert!(text.contains(old), "no {old} to change");
        let own = tempfile::tempdir().expect("a folder");
        let tables = own.path().join("tables");
        std::fs::create_dir(&tables).expect("a folder");
        std::fs::write(tables.join("hazards.toml"), text.replacen(old, new, 1)).expect("a file");
        let cautions = crate::Library::built_in()
            .expect("sound")
            .tables
            .cautions
            .clone();
        let shelf = Shelf {
            own: Some(own.path().to_owned()),
        };
        hazards(&shelf, &cautions).map_err(|error| error.to_string())
    }

    #[test]
    fn every_hazard_says_all_there_is_to_say() {
        let table = built_in_table();
        assert!(30 <= table.hazards.len(), "{}", table.hazards.len());
        for it in &table.hazards {
            let words = [&it.name, &it.harm, &it.who, &it.source];
            assert!(words.iter().all(|it| !it.trim().is_empty()), "{}", it.id);
            assert!(!it.controls.is_empty(), "{} has no control", it.id);
            assert!(!it.after.is_above(it.before), "{} gets worse", it.id);
            assert!(Level::VeryLow <= it.after.level());
            let asked = it.ask.as_ref().is_none_or(|ask| ask.ends_with('?'));
            assert!(asked, "{} asks no question", it.id);
        }
    }

    /// A word no hazard uses would be a word nobody tries.
    #[test]
    fn what_a_course_can_have_beyond_the_rest_has_its_hazard() {
        let table = built_in_table();
        let without: Vec<&str> = Circumstance::all()
            .filter(|word| !table.hazards.iter().any(|it| it.met_by.contains(word)))
            .map(Circumstance::word)
            .collect();
        assert_eq!(without, ["curves"]);
    }

    #[test]
    fn what_can_not_be_is_refused_with_its_file() {
        assert!(with("id = \"dark\"", "id = \"dark\"").is_ok());
        for (old, new, told) in [
            ("\"over-knee\"]", "\"over-nee\"]", "over-nee"),
            (
                "likelihood = \"likely\"",
                "likelihood = \"sure\"",
                "unlikely, possible, likely",
            ),
            (
                "severity = \"grave\"",
                "severity = \"none\"",
                "slight, serious, grave",
            ),
            (
                "id = \"strained-back\"",
                "id = \"crushed-fingers\"",
                "stands twice",
            ),
            (
                "after = { likelihood = \"possible\", severity = \"slight\" }",
                "after = { likelihood = \"possible\", severity = \"grave\" }",
                "worse after",
            ),
            (
                "cautions = [\"dust\"]",
                "cautions = [\"dusts\"]",
                "\"dusts\" is no caution",
            ),
            ("knee = \"0.5 m\"", "knee = \"1.5 m\"", "knee"),
            (
                "who = \"everyone who handles",
                "whom = \"everyone who handles",
                "whom",
            ),
            ("met_by = [\"rain\"]", "met_by = []", "always"),
        ] {
            let error = with(old, new).expect_err(new);
            assert!(error.contains(told), "{new}: {error}");
            assert!(error.contains("hazards.toml"), "{new}: {error}");
        }
    }

    #[test]
    fn a_hazard_without_controls_is_refused() {
        let text = built_in(FILE).expect("it is built in");
        let from = text.find("controls = [").expect("controls");
        let line = text[from..].lines().next().expect("a line");
        let error = with(line, "controls = []").expect_err("refused");
        assert!(error.contains("no controls"), "{error}");
    }
}
