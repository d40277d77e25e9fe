//! How much pace differs, as `pace.toml` holds it: a part is never more than its whole.

use crate::tables::figures;

#[derive(serde::Deserialize)]
#[serde(try_from = "WrittenSpread")]
pub(crate) struct PaceSpread(craft::tables::PaceSpread);

impl From<PaceSpread> for craft::tables::PaceSpread {
    fn from(row: PaceSpread) -> Self {
        row.0
    }
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenSpread {
    #[serde(deserialize_with = "figures::share")]
    course: f64,
    #[serde(deserialize_with = "figures::share")]
    stage: f64,
    #[serde(deserialize_with = "figures::share")]
    instructor: f64,
    #[serde(deserialize_with = "figures::share")]
    instructor_stage: f64,
    #[serde(deserialize_with = "figures::share")]
    pair: f64,
    #[serde(deserialize_with = "figures::share")]
    reading: f64,
    #[serde(deserialize_with = "figures::not_negative")]
    clock_minutes: f64,
    source: String,
}

impl TryFrom<WrittenSpread> for PaceSpread {
    type Error = String;

    fn try_from(row: WrittenSpread) -> Result<Self, String> {
        let parts = [
            ("instructor", row.instructor, "course", row.course),
            ("instructor_stage", row.instructor_stage, "stage", row.stage),
        ];
        for (part, of_part, whole, of_whole) in parts {
            if of_whole < of_part {
                return Err(format!(
                    "{part} = {of_part} is a part of {whole} = {of_whole} and can't be more; lower it or raise {whole}"
                ));
            }
        }
        Ok(Self(craft::tables::PaceSpread {
            course: row.course,
            stage: row.stage,
            instructor: row.instructor,
            instructor_stage: row.instructor_stage,
            pair: row.pair,
            reading: row.reading,
            clock_minutes: row.clock_minutes,
            source: row.source,
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<craft::tables::PaceSpread, String> {
        let read = toml_edit::de::from_str::<PaceSpread>(text);
        read.map(Into::into).map_err(|it| it.message().to_owned())
    }

    const SOUND: &str = "course = 0.22\nstage = 0.17\ninstructor = 0.18\ninstructor_stage = 0.12\n\
        pair = 0.1\nreading = 0.05\nclock_minutes = 5\nsource = \"a guess\"\n";

    #[test]
    fn the_spread_is_read() {
        let spread = read(SOUND).expect("a spread");
        let due = craft::tables::PaceSpread {
            course: 0.22,
            stage: 0.17,
            instructor: 0.18,
            instructor_stage: 0.12,
            pair: 0.1,
            reading: 0.05,
            clock_minutes: 5.0,
            source: "a guess".to_owned(),
        };
        assert_eq!(spread, due);
    }

    #[test]
    fn what_can_not_be_is_refused() {
        for (given, instead, words) in [
            (
                "instructor = 0.18",
                "instructor = 0.3",
                "instructor = 0.3 is a part of course = 0.22 and can't be more; lower it or raise course",
            ),
            (
                "stage = 0.17\ni",
                "stage = 0.1\ni",
                "instructor_stage = 0.12 is a part of stage = 0.1 and can't be more; lower it or raise stage",
            ),
            (
                "clock_minutes = 5",
                "clock_minutes = -1",
                "-1 stands where nothing or more is due",
            ),
        ] {
            let refused = read(&SOUND.replace(given, instead)).expect_err(instead);
            assert_eq!(refused, words);
        }
    }
}
