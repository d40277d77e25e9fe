//! The tables of `lessons/tables` as the sums want them.

mod figures;
mod rows;
mod setting_out;

use crate::Error;
use crate::cards::Card;
use crate::shelf::{Shelf, Text};
use craft::course::FrameKind;
use craft::quantity::{kg_per_m, kg_per_m3, kilograms};
use craft::tables::{
    Applies, Bar, Before, Caution, Crew, KitRule, Lesson, PaceSpread, PaceTable, Per, Places, Rate,
    Rock, Spread, Stage, StoneTable, Tables, Work,
};
use std::path::Path;

pub(crate) use rows::{Countries, Terms};

/// All tables; the lessons of the timetable come from the lesson cards.
pub(crate) fn tables(shelf: &Shelf, cards: &[Card]) -> Result<Tables, Error> {
    Ok(Tables {
        stone: stone(shelf.table("tables/stone.toml")?),
        bars: bars(shelf.table("tables/bars.toml")?),
        frames: setting_out::frames(shelf.table("tables/frames.toml")?),
        retaining: setting_out::retaining(shelf.table("tables/retaining.toml")?),
        pace: pace(shelf.table("tables/pace.toml")?),
        stages: stages(shelf.table("tables/stages.toml")?),
        kit: kit(shelf.table("tables/kit.toml")?),
        lessons: cards.iter().map(lesson).collect(),
        cautions: cautions(shelf.table("tables/cautions.toml")?),
    })
}

/// What the instructor's store has counted.
pub(crate) fn kit_on_hand(
    store: Option<&Path>,
    tables: &Tables,
) -> Result<Vec<(String, u32)>, Error> {
    let Some(file) = store
        .map(|store| store.join("kit.toml"))
        .filter(|file| file.is_file())
    else {
        return Ok(Vec::new());
    };
    let text = Text::read(&file, "kit.toml".to_owned())?;
    let counted: rows::KitOnHand = text.toml()?;
    let known = |item: &str| {
        tables
            .kit
            .iter()
            .any(|rule| rule.item.eq_ignore_ascii_case(item))
    };
    if let Some(item) = counted.on_hand.keys().find(|item| !known(item)) {
        let at = text.text.find(item.as_str()).unwrap_or_default();
        return Err(text.fault("unknown-tool", at, &format!("no kit rule names \"{item}\"")));
    }
    Ok(counted.on_hand.into_iter().collect())
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
        spread: PaceSpread {
            course: file.spread.course,
            stage: file.spread.stage,
            pair: file.spread.pair,
            source: file.spread.source,
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
            tidy_minutes: places.tidy_minutes,
            source: places.source,
        },
    }
}

fn stages(file: rows::Stages) -> Vec<Stage> {
    file.stage
        .into_iter()
        .map(|row| Stage {
            id: row.id,
            name: row.name,
            work: match (row.work, row.minutes) {
                (Some(work), _) => work.into(),
                (None, minutes) => Work::Minutes(minutes.unwrap_or_default()),
            },
            crew: match row.crew {
                rows::Crew::Everyone => Crew::Everyone,
                rows::Crew::FacingPairs => Crew::FacingPairs,
                rows::Crew::Diggers => Crew::Diggers,
                rows::Crew::CopingCrews => Crew::CopingCrews,
            },
            note: row.note,
        })
        .collect()
}

fn kit(file: rows::Kit) -> Vec<KitRule> {
    file.rule
        .into_iter()
        .map(|row| KitRule {
            item: row.item,
            unit: row.unit,
            per: match row.per {
                rows::Per::Student => Per::Student,
                rows::Per::Pair => Per::Pair,
                rows::Per::Stint => Per::Stint,
                rows::Per::Frame => Per::Frame,
                rows::Per::Instructor => Per::Instructor,
                rows::Per::Person => Per::Person,
                rows::Per::Group => Per::Group,
                rows::Per::Metre => Per::Metre,
            },
            only_for: row.frames.map(|kind| match kind {
                rows::FrameKind::Bar => FrameKind::Bar,
                rows::FrameKind::Timber => FrameKind::Timber,
            }),
            each: row.each,
            spare: row.spare,
            least: row.least,
            safety_critical: row.safety_critical,
            consumable: row.consumable,
            mass: kilograms(row.mass_kg),
            place: row.place,
            needed_for: row.needed_for,
            why: row.why,
            source: row.source,
        })
        .collect()
}

fn lesson(card: &Card) -> Lesson {
    Lesson {
        id: card.id.clone(),
        title: card.title.clone(),
        minutes: card.minutes,
        before: match card.before.as_str() {
            "start" => Before::Course,
            "day" => Before::EachDay,
            stage => Before::Stage(stage.to_owned()),
        },
        safety: card.kind == "safety",
    }
}

fn cautions(file: rows::Cautions) -> Vec<Caution> {
    file.caution
        .into_iter()
        .map(|row| Caution {
            id: row.id,
            text: row.text,
            applies: match row.applies {
                rows::Applies::Always => Applies::Always,
                rows::Applies::Bars => Applies::Bars,
                rows::Applies::Footing => Applies::Footing,
                rows::Applies::Cope => Applies::Cope,
                rows::Applies::Throughs => Applies::Throughs,
                rows::Applies::Heads => Applies::Heads,
                rows::Applies::Retaining => Applies::Retaining,
                rows::Applies::Curves => Applies::Curves,
                rows::Applies::Slopes => Applies::Slopes,
                rows::Applies::Timber => Applies::Timber,
                rows::Applies::Cold => Applies::Cold,
                rows::Applies::Hot => Applies::Hot,
                rows::Applies::Dark => Applies::Dark,
            },
            for_students: row.audience != rows::Audience::Instructor,
            source: row.source,
        })
        .collect()
}
