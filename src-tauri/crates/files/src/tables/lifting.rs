//! `lifting.toml` as the sums want it.

use super::rows;
use craft::lifting::{Body, Grip, Heavy, PerMinute, Team};
use craft::quantity::{kilograms, metres};
use craft::tables::{HowLifted, LiftingPlace, LiftingTable, PlaceHeight, StageLift};

/// How stone is lifted on a course. A lift from several places becomes one for each.
pub(super) fn lifting(file: rows::Lifting) -> LiftingTable {
    let rows::Rows {
        hands,
        place,
        lift,
        body: bodies,
        flat_stone: flat,
        team,
        heavy,
        limit,
    } = file.rows;
    let places: Vec<LiftingPlace> = place.into_iter().map(one_place).collect();
    LiftingTable {
        lifts: lift.iter().flat_map(|row| lifts(row, &places)).collect(),
        hands: how_lifted(hands),
        men: body(bodies.men),
        women: body(bodies.women),
        body_source: bodies.source,
        flat_stone: [flat.along, flat.deep, flat.high],
        flat_stone_source: flat.source,
        team: Team {
            two: team.two,
            three: team.three,
        },
        team_source: team.source,
        heavy: Heavy {
            bar_most: kilograms(heavy.bar_most_kg),
            bar_height: heavy.bar_height.0,
            ramp_most: kilograms(heavy.ramp_most_kg),
        },
        heavy_source: heavy.source,
        limits: limit.into_iter().map(|it| it.text).collect(),
    }
}

fn one_place(row: rows::LiftingPlace) -> LiftingPlace {
    let height = match (row.height, row.at) {
        (Some(height), _) => PlaceHeight::AboveGround(height.0),
        (None, Some(rows::At::Top)) => PlaceHeight::Top,
        (None, _) => PlaceHeight::AboveGround(metres(0.0)),
    };
    LiftingPlace {
        id: row.id,
        name: row.name,
        height,
        source: row.source,
    }
}

fn lifts(row: &rows::StageLift, places: &[LiftingPlace]) -> Vec<StageLift> {
    // The rows have been read only if every place they name is there.
    let find = |id: &String| places.iter().find(|place| place.id == *id);
    let lift = |from: &LiftingPlace, to: &LiftingPlace| StageLift {
        stage: row.stage.clone(),
        from: from.clone(),
        to: to.clone(),
        rate: PerMinute(row.lifts_per_minute),
        source: row.source.clone(),
    };
    let from = row.from.iter().filter_map(find);
    find(&row.to).map_or_else(Vec::new, |to| from.map(|from| lift(from, to)).collect())
}

fn how_lifted(row: rows::HowLifted) -> HowLifted {
    HowLifted {
        reach: row.reach.0,
        twist_degrees: row.twist_degrees,
        grip: match row.grip {
            rows::Grip::Good => Grip::Good,
            rows::Grip::Fair => Grip::Fair,
            rows::Grip::Poor => Grip::Poor,
        },
        hours: row.hours,
        carried: row.carried.0,
        source: row.source,
    }
}

fn body(row: rows::Body) -> Body {
    Body {
        shoulder: row.shoulder.0,
        elbow: row.elbow.0,
        knuckle: row.knuckle.0,
        mid_lower_leg: row.mid_lower_leg.0,
        elbow_to_grip: row.elbow_to_grip.0,
        shoulder_to_grip: row.shoulder_to_grip.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shelf::{Shelf, built_in};
    use craft::lifting::{Answer, guide};
    use craft::quantity::{Read, kg_per_m3};

    fn table() -> LiftingTable {
        let shelf = Shelf { own: None };
        lifting(shelf.table("tables/lifting.toml").expect("the table"))
    }

    /// The built-in table with one text in place of another, and how it is refused.
    fn refused(old: &str, new: &str) -> String {
        let text = built_in("tables/lifting.toml").expect("the table");
        assert!(text.contains(old), "no {old} to change");
        let changed = text.replacen(old, new, 1);
        match toml_edit::de::from_str::<rows::Lifting>(&changed) {
            Ok(_) => panic!("\"{new}\" was taken"),
            Err(error) => error.message().to_owned(),
        }
    }

    #[test]
    fn every_stage_of_walling_has_a_lift_of_more_than_nothing() {
        let table = table();
        let stages: rows::Stages = Shelf { own: None }
            .table("tables/stages.toml")
            .expect("the stages");
        for lift in &table.lifts {
            let named = stages.stage.iter().any(|stage| stage.0.id == lift.stage);
            assert!(named, "no stage has the id {}", lift.stage);
        }
        let stones = [
            ("pebble".to_owned(), kilograms(1.0)),
            ("through".to_owned(), kilograms(55.0)),
        ];
        let guide = guide(&table, kg_per_m3(2600.0), metres(1.195), &stones);
        for stage in ["footing", "first-lift", "throughs", "second-lift", "cope"] {
            let easiest = guide.easiest(stage, kilograms(1.0));
            assert_eq!(easiest, Some(Answer::OnePerson), "{stage}");
        }
        for lift in &guide.lifts {
            let one = lift.one_person.si();
            assert!((3.0..15.0).contains(&one), "{} {one}", lift.stage);
            assert!(Answer::ThreePeople < lift.answer(kilograms(55.0)));
        }
        assert!(!guide.limits.is_empty());
    }

    #[test]
    fn what_no_row_can_be_is_refused_in_words() {
        for (old, new, says) in [
            ("to = \"knee\"", "to = \"nee\"", "names the place \"nee\""),
            ("id = \"knee\"", "id = \"waist\"", "two places have the id"),
            (
                "ground\"\nat = \"ground\"",
                "ground\"",
                "needs either a height",
            ),
            ("hours = 4.5", "hours = 9", "9 hours of lifting a day"),
            ("reach = \"40 cm\"", "reach = \"0 m\"", "more than nothing"),
            ("grip = \"poor\"", "grip = \"bad\"", "bad"),
            ("two = 0.667", "two = 1.5", "a share from 0 to below 1"),
        ] {
            let message = refused(old, new);
            assert!(message.contains(says), "{new}: {message}");
        }
    }
}
