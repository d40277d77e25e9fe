//! The tables of `lessons/tables` as the sums want them.

mod figures;
mod hazards;
mod heaps;
mod kit;
mod lifting;
mod ready;
mod rows;
mod setting_out;
mod weather;

use crate::Error;
use crate::cards::{Card, Kind};
use crate::shelf::Shelf;
use craft::pace::Fatigue;
use craft::quantity::{kg_per_m, kg_per_m3};
use craft::tables::{
    Bar, Before, Caution, HazardAsked, Lesson, PaceTable, Places, Rate, Rests, Rock, Spread, Stage,
    StoneTable, Tables,
};

pub(crate) use kit::{KIT_OWN, rules_with};
pub(crate) use rows::Countries;

/// All tables; the lessons of the timetable come from the lesson cards, which are read with
/// these at hand.
pub(crate) fn tables(shelf: &Shelf) -> Result<Tables, Error> {
    let stages = stages(shelf)?;
    let cautions = cautions(shelf.table("tables/cautions.toml")?);
    Ok(Tables {
        stone: stone(shelf.table("tables/stone.toml")?),
        bars: bars(shelf.table("tables/bars.toml")?),
        frames: setting_out::frames(shelf.table("tables/frames.toml")?),
        retaining: setting_out::retaining(shelf.table("tables/retaining.toml")?),
        pace: pace(shelf.table("tables/pace.toml")?),
        kit: kit::rules(shelf, &stages)?,
        stages,
        lessons: Vec::new(),
        heaps: heaps::heaps(shelf.table("tables/heaps.toml")?),
        lifting: lifting::lifting(shelf.table("tables/lifting.toml")?),
        ready: ready::ready(shelf.table("tables/ready.toml")?),
        weather: weather::weather(shelf.table("tables/weather.toml")?),
        hazards: hazards::hazards(shelf, &cautions)?,
        cautions,
        hazards_asked: hazards_asked(shelf.table("tables/hazards-asked.toml")?),
    })
}

fn stone(file: rows::Stone) -> StoneTable {
    let spread = |it: rows::Spread| Spread {
        centre: it.centre,
        low: it.low,
        high: it.high,
        source: it.source,
    };
    StoneTable {
        rocks: file
            .stone
            .into_iter()
            .map(|row| Rock {
                key: row.key,
                name: row.name,
                density: kg_per_m3(row.density_kg_m3),
                low: kg_per_m3(row.low_kg_m3),
                high: kg_per_m3(row.high_kg_m3),
                source: row.source,
            })
            .collect(),
        voids: spread(file.defaults.voids),
        hearting_share: spread(file.defaults.hearting_share),
        waste: spread(file.defaults.waste),
        cope_fill: spread(file.defaults.cope_fill),
        reused: spread(file.defaults.reused),
        lead_days: file.lead_working_days,
        lead_source: file.lead_source,
    }
}

fn bars(file: rows::Bars) -> Vec<Bar> {
    file.bar
        .into_iter()
        .map(|row| Bar {
            key: row.key,
            diameter: row.diameter.0,
            mass: kg_per_m(row.mass_kg_per_m),
            source: row.source,
        })
        .collect()
}

fn pace(file: rows::Pace) -> PaceTable {
    let places = file.places;
    PaceTable {
        rates: file
            .rate
            .into_iter()
            .map(|row| Rate {
                stage: row.stage,
                hours: [row.hours.novice, row.hours.improver, row.hours.experienced],
                source: row.source,
            })
            .collect(),
        spread: file.spread.into(),
        fatigue: Fatigue {
            from_hours: file.fatigue.from_hours,
            per_hour: file.fatigue.per_hour,
            least: file.fatigue.least,
            source: file.fatigue.source,
        },
        places: Places {
            hands_on: places.hands_on,
            learning_hours: places.learning_hours,
            learning_factor: places.learning_factor,
            facing_pair: places.facing_pair.0,
            diggers: places.diggers.0,
            coping_crew: places.coping_crew.0,
            students_per_instructor: places.students_per_instructor,
            too_many_students: places.too_many_students,
            one_wall: places.one_wall,
            source: places.source,
        },
        rests: Rests {
            name: file.rests.name,
            longest: file.rests.longest_minutes,
            grace: file.rests.grace_minutes,
            minutes: file.rests.minutes,
            source: file.rests.source,
        },
    }
}

fn stages(shelf: &Shelf) -> Result<Vec<Stage>, Error> {
    let file: rows::Stages = shelf.table("tables/stages.toml")?;
    Ok(file.stage.into_iter().map(|row| row.0).collect())
}

/// A lesson of the timetable from its card.
pub(crate) fn lesson(card: &Card) -> Lesson {
    Lesson {
        id: card.id.clone(),
        title: card.title.clone(),
        minutes: card.minutes,
        before: match card.before.as_str() {
            "start" => Before::Course,
            "day" => Before::EachDay,
            stage => Before::Stage(stage.to_owned()),
        },
        safety: card.kind == Kind::Safety,
        when: card.when.clone(),
    }
}

fn hazards_asked(file: rows::HazardsAsked) -> Vec<HazardAsked> {
    file.row
        .into_iter()
        .map(|row| HazardAsked {
            hazard: row.hazard,
            control: row.control,
            source: row.source,
        })
        .collect()
}

fn cautions(file: rows::Cautions) -> Vec<Caution> {
    file.caution
        .into_iter()
        .map(|row| Caution {
            id: row.id,
            text: row.text,
            applies: row.applies,
            for_students: row.audience != rows::Audience::Instructor,
            source: row.source,
        })
        .collect()
}
