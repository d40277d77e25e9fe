//! The question of who or what moves a stone: one person, a team, a bar, a plank, a machine.
//!
//! The limits are those of the lifting guide, which allows nothing: it is a filter for planning.

use super::draw::Draw;
use super::scale::{Scale, capital};
use super::stone::{stone_given, stone_of};
use super::wall::Wall;
use super::{Kind, Level, Question, Table};
use crate::lifting::{Answer, GuideLift, guide};
use crate::quantity::{
    Density, Length, Mass, POUND_KG, Read, kg_per_m3, kilograms, show_mass, show_share,
};
use crate::tables::{StoneTable, Tables};
use crate::wall::{Batter, Section};

/// A stone this near a limit, as a share of it, would be a question of rounding.
const CLEAR: f64 = 0.08;
/// What a block loses at its corners and hollows (common practice, no source).
const MISSING: f64 = 0.25;
/// The wall that copes are lifted on to, its underside and half a cope.
const COPES_M: f64 = 1.2;

/// A stone, and the lift it is for.
struct Stone<'a> {
    lift: &'a GuideLift,
    mass: Mass,
    /// How the question gives its mass, and how that is worked out.
    told: String,
    worked: Option<String>,
}

/// Level 1 asks whether one person lifts a stone, level 2 who or what moves it, level 3 gives
/// its size in place of its mass. Neighbours differ in mass or size; at level 3 also in the
/// answer, where the limits of their lifts leave room for it.
pub(super) fn who_lifts(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
    level: Level,
) -> Option<Question> {
    let guide = guide(
        &tables.lifting,
        kg_per_m3(2500.0),
        crate::quantity::metres(COPES_M),
        &[],
    );
    let lifts: Vec<&GuideLift> = guide
        .lifts
        .iter()
        .filter(|lift| kilograms(1.0) < lift.one_person)
        .collect();
    let lift = draw.pick(&lifts)?;
    let stone = match level {
        Level::Hard => sized(draw, scale, lift, &tables.stone)?,
        _ => weighed(draw, scale, lift, level)?,
    };
    Some(asked(&stone, scale, level))
}

/// A stone of which the mass is given.
fn weighed<'a>(
    draw: &mut Draw,
    scale: Scale,
    lift: &'a GuideLift,
    level: Level,
) -> Option<Stone<'a>> {
    // Odd kilograms or pounds stand at one neighbour, even ones at the other.
    let most = scale.either(95, 210);
    let all: Vec<u32> = (2..most).collect();
    // At level 1 as many stones are one-person lifts as not, and none is far beyond; at level 2
    // as many are for a team as for one person or a machine.
    let one = draw.pick(&[true, false])?;
    let answers: Vec<Answer> = lift.steps.iter().map(|step| step.answer).collect();
    let wanted = draw.pick(&answers)?;
    let clear: Vec<u32> = draw
        .half(&all)
        .into_iter()
        .filter(|mass| is_clear(lift, heavy(*mass, scale)))
        .collect();
    let fits = |mass: &u32| {
        let mass = heavy(*mass, scale);
        let answer = lift.answer(mass);
        match level {
            Level::Easy => (answer == Answer::OnePerson) == one && mass < lift.one_person * 3.0,
            _ => answer == wanted,
        }
    };
    let mut masses: Vec<u32> = clear.iter().copied().filter(fits).collect();
    if masses.is_empty() {
        // Between two limits there may be no whole number clear of both.
        masses = clear;
    }
    let mass = heavy(draw.pick(&masses)?, scale);
    Some(Stone {
        lift,
        mass,
        told: format!("A stone weighs {}.", whole_mass(mass, scale)),
        worked: None,
    })
}

/// A stone of which the size is given.
fn sized<'a>(
    draw: &mut Draw,
    scale: Scale,
    lift: &'a GuideLift,
    table: &StoneTable,
) -> Option<Stone<'a>> {
    let longs: Vec<u32> = scale.either((20..=60).step_by(2).collect(), (8..=24).collect());
    let wides: [u32; 6] = scale.either([10, 13, 17, 22, 28, 36], [4, 5, 7, 9, 11, 14]);
    let highs: [u32; 5] = scale.either([7, 10, 14, 19, 26], [3, 4, 6, 8, 10]);
    let weighs = draw.pick(&scale.either([2350, 2550, 2650], [148, 157, 165]))?;
    let mut stones: Vec<([Length; 3], Mass)> = Vec::new();
    for long in draw.half(&longs) {
        for wide in wides {
            for high in highs {
                let sides = [long, wide, high].map(|marks| scale.marks(marks));
                let mass = block(sides, density(weighs, scale), table)?;
                // Longest side first, as a stone is measured.
                if wide <= long && high <= wide && is_clear(lift, mass) {
                    stones.push((sides, mass));
                }
            }
        }
    }
    let answered = |wanted: Answer| -> Vec<([Length; 3], Mass)> {
        let fits = |stone: &&([Length; 3], Mass)| lift.answer(stone.1) == wanted;
        stones.iter().filter(fits).copied().collect()
    };
    let there = |answer: &Answer| stones.iter().any(|stone| lift.answer(stone.1) == *answer);
    let all: Vec<Answer> = Answer::ALL.into_iter().filter(there).collect();
    let mine = |answer: &Answer| draw.is_mine(*answer as usize);
    let mut answers: Vec<Answer> = all.iter().copied().filter(mine).collect();
    if answers.is_empty() {
        answers = all;
    }
    let wanted = draw.pick(&answers)?;
    let ([long, wide, high], mass) = draw.pick(&answered(wanted))?;
    let (unit, cubic, per) =
        scale.either(("kg", "cubic metre", ""), ("lb", "cubic foot", " ÷ 1728"));
    Some(Stone {
        lift,
        mass,
        told: format!(
            "A stone is {} long, {} wide and {} high, measured over all; {} of that block is \
             missing at its corners. The rock weighs {weighs} {unit} to the {cubic}.",
            scale.write(long),
            scale.write(wide),
            scale.write(high),
            show_share(MISSING)
        ),
        worked: Some(format!(
            "Mass = length × width × height × weight × what is left of the block\n\
             = {} × {} × {}{per} × {weighs} {unit} × {} = {}",
            scale.in_sum(long),
            scale.in_sum(wide),
            scale.in_sum(high),
            1.0 - MISSING,
            show_mass(mass, scale.units)
        )),
    })
}

/// What a block weighs whose sides these are: the stone of a plumb wall of one block.
fn block([long, wide, high]: [Length; 3], density: Density, table: &StoneTable) -> Option<Mass> {
    let section = Section::new(high, wide, Batter::PLUMB, Batter::PLUMB).ok()?;
    let wall = Wall {
        height: high,
        top: wide,
        one_in: 6,
    };
    let given = stone_given(density, MISSING, 0.0);
    let (_, stone) = stone_of(&wall.given().ok()?, &section, long, &given, table)?;
    Some(stone.built())
}

fn density(weighs: u32, scale: Scale) -> Density {
    let weighs = f64::from(weighs);
    kg_per_m3(scale.either(weighs, weighs * POUND_KG / crate::quantity::FOOT_M.powi(3)))
}

fn heavy(mass: u32, scale: Scale) -> Mass {
    kilograms(f64::from(mass) * scale.either(1.0, POUND_KG))
}

fn whole_mass(mass: Mass, scale: Scale) -> String {
    let (unit, name) = scale.either((1.0, "kg"), (POUND_KG, "lb"));
    format!("{:.0} {name}", mass.si() / unit)
}

/// Whether a mass is clear of every limit of a lift.
fn is_clear(lift: &GuideLift, mass: Mass) -> bool {
    let limits = lift.steps.iter().filter_map(|step| step.up_to);
    limits
        .into_iter()
        .all(|limit| CLEAR * limit.si() < (mass - limit).si().abs())
}

fn asked(stone: &Stone<'_>, scale: Scale, level: Level) -> Question {
    let (lift, units) = (stone.lift, scale.units);
    let answer = lift.answer(stone.mass);
    let limit = |mass: Option<Mass>| {
        mass.map_or("whatever is heavier".to_owned(), |mass| {
            format!("up to {}", show_mass(mass, units))
        })
    };
    let shown = level.pick(1, usize::MAX, usize::MAX);
    let rows = lift.steps.iter().take(shown);
    let words = match (level, answer) {
        (Level::Easy, Answer::OnePerson) => "one person",
        (Level::Easy, _) => "more than one person",
        (_, answer) => who(answer),
    };
    let step = lift.steps.iter().find(|step| step.answer == answer);
    let reason = match (level, step.and_then(|step| step.up_to)) {
        (Level::Easy, _) => format!(
            "The guide's limit for one person here is {}; the stone weighs {}",
            show_mass(lift.one_person, units),
            whole_mass(stone.mass, scale)
        ),
        (_, up_to) => format!(
            "{}: {} {}",
            whole_mass(stone.mass, scale),
            who(answer),
            limit(up_to)
        ),
    };
    let question = level.pick(
        "Is that for one, or for more?",
        "Who or what moves it?",
        "Who or what moves it?",
    );
    let mut working: Vec<String> = stone.worked.iter().cloned().collect();
    working.push(reason);
    working.push(format!("So: {words}. A guide, never permission."));
    Question {
        ask: format!(
            "{} It is taken up from {} and set down at {}. {question} The table is the lifting \
             guide's for that lift; whoever lifts still decides for themselves.",
            stone.told, lift.from, lift.to
        ),
        working: working.join("\n"),
        answer: words.to_owned(),
        value: stone.mass.si(),
        table: Some(Table {
            head: vec!["Who or what".to_owned(), "Weight of the stone".to_owned()],
            rows: rows
                .map(|step| vec![capital(who(step.answer)), limit(step.up_to)])
                .collect(),
        }),
        ..Question::of(Kind::OnePersonLift)
    }
}

fn who(answer: Answer) -> &'static str {
    match answer {
        Answer::OnePerson => "one person",
        Answer::TwoPeople => "two people",
        Answer::ThreePeople => "three people",
        Answer::Bar => "a bar and rollers",
        Answer::Ramp => "a plank or ramp",
        Answer::Machine => "a machine, or another stone",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    /// By hand: 0.40 · 0.20 · 0.10 m is 0.008 m³; at 2500 kg/m³ 20 kg, less a quarter 15 kg.
    #[test]
    fn a_block_loses_a_quarter_at_its_corners() {
        let sides = [40, 20, 10].map(|marks| METRES.marks(marks));
        let mass = block(sides, kg_per_m3(2500.0), &sample::tables().stone).expect("sound");
        assert!((mass.si() - 15.0).abs() < 1e-9);
    }

    /// HSE INDG143, lifting filter, hands below the middle of the lower leg: for women 7 kg close
    /// and 3 kg with arms extended; 40 cm away 7 - 4 · .07/.135 = 4.93 kg, less than NIOSH allows
    /// for either lift of the table.
    #[test]
    fn the_least_figure_of_both_guides_decides() {
        let tables = sample::tables();
        for student in 0..100 {
            let mut draw = Draw::new(5, student, Kind::OnePersonLift);
            let question = who_lifts(&mut draw, METRES, &tables, Level::Easy).expect("lifts");
            let alone = question.answer == "one person";
            assert_eq!(alone, question.value < 4.93, "{}", question.ask);
        }
    }

    #[test]
    fn at_every_level_the_table_gives_the_answer() {
        let tables = sample::tables();
        for level in [Level::Usual, Level::Hard] {
            for student in 0..100 {
                let mut draw = Draw::new(5, student, Kind::OnePersonLift);
                let question = who_lifts(&mut draw, METRES, &tables, level).expect("lifts");
                let table = question.table.expect("a table");
                let read = table.rows.iter().find(|row| {
                    let number = row[1].trim_start_matches("up to ").trim_end_matches(" kg");
                    number
                        .parse::<f64>()
                        .map_or(true, |most| question.value <= most)
                });
                assert_eq!(read.map(|row| row[0].to_lowercase()), Some(question.answer));
            }
        }
    }

    /// Who reads a neighbour's answer has the wrong one, and a group does not all write the same.
    #[test]
    fn at_the_hardest_level_neighbours_have_other_answers() {
        let tables = sample::tables();
        for units in [Units::Metric, Units::Imperial] {
            let answer = |student| {
                let mut draw = Draw::new(5, student, Kind::OnePersonLift);
                let question = who_lifts(&mut draw, Scale { units }, &tables, Level::Hard);
                question.expect("lifts").answer
            };
            let answers: Vec<String> = (0..200).map(answer).collect();
            assert!(answers.windows(2).all(|pair| pair[0] != pair[1]));
            let several: std::collections::BTreeSet<&String> = answers.iter().collect();
            assert!(3 < several.len(), "{several:?}");
        }
    }
}
