//! Who does what at each stage of laying, so that everyone lays each kind of stone.

use super::Stint;
use super::heads::{Turn, turns};
use crate::course::{End, Student};
use crate::wall::Side;

/// The stages in which pairs lay stone, in order, by the ids of the stage table.
pub const LAYING_STAGES: [&str; 6] = [
    "footing",
    "first-lift",
    "throughs",
    "second-lift",
    "heads",
    "cope",
];

/// Stages at whose beginning the pairs move on by one stint, so that everyone builds on
/// another's joint (common practice, no source).
const MOVE_ON: [&str; 2] = ["throughs", "cope"];

/// A stage of laying that the course has.
#[derive(Debug, Clone, PartialEq)]
pub struct LayingStage {
    /// Its id in the stage table.
    pub id: String,
    /// How long it usually takes on the clock, in minutes.
    pub minutes: f64,
}

/// Who does what, stage by stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Rotation {
    /// One for each stage of laying, in order.
    pub rounds: Vec<Round>,
}

/// Who does what at one stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Round {
    /// The stage's id.
    pub stage: String,
    /// Who stands where, stint by stint.
    pub places: Vec<Place>,
    /// Turns at the built ends; none but in the stage of the heads.
    pub heads: Vec<Turn>,
    /// Which pairs set copes when; none but in the stage of the copes.
    pub copes: Vec<Shift>,
}

/// The people at one stint.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The stint, counted from 0.
    pub stint: usize,
    /// The pair, counted by the stint it began at.
    pub pair: usize,
    /// Names of those at the left face.
    pub left: Vec<String>,
    /// Names of those at the right face.
    pub right: Vec<String>,
    /// Names of those of one face who heart and pass stone while the others there lay; they
    /// stand last. Nobody where both faces are worked at, for there everyone lays.
    pub hearting: Vec<String>,
}

/// When one pair sets copes; the others bring stone and pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shift {
    /// The pair, counted from 0.
    pub pair: usize,
    /// The share of the stage at which it begins, 0 to 1.
    pub from: f64,
    /// The share of the stage at which it ends.
    pub to: f64,
}

/// Who does what at each of the stages that are stages of laying. In a pair faces are changed
/// at every stage; with a bank on a side everyone stands at the other face, and who lays and
/// who hearts is changed instead. `crews` is how many coping crews find room at once.
pub fn rotation(
    stints: &[Stint],
    stages: &[LayingStage],
    ends: [End; 2],
    crews: usize,
    bank: Option<Side>,
) -> Rotation {
    let heads: Vec<usize> = (0..ends.len())
        .filter(|at| ends[*at] == End::Head)
        .collect();
    let mut moved = 0;
    let mut rounds = Vec::new();
    let laying = stages
        .iter()
        .filter(|stage| LAYING_STAGES.contains(&stage.id.as_str()));
    for (at, stage) in laying.enumerate() {
        let is = |id: &str| stage.id == id;
        if 0 < at && MOVE_ON.into_iter().any(is) {
            moved += 1;
        }
        rounds.push(Round {
            stage: stage.id.clone(),
            places: places(stints, moved, !at.is_multiple_of(2), bank),
            heads: if is("heads") {
                turns(stints.len(), &heads, stage.minutes)
            } else {
                Vec::new()
            },
            copes: if is("cope") {
                shifts(stints.len(), crews)
            } else {
                Vec::new()
            },
        });
    }
    Rotation { rounds }
}

/// Everyone, each pair as many stints further on as it has moved; from the last stint on to
/// the first.
fn places(stints: &[Stint], moved: usize, changed: bool, bank: Option<Side>) -> Vec<Place> {
    let count = stints.len();
    (0..count)
        .map(|stint| {
            let pair = (stint + count - moved % count) % count;
            let members = stints.get(pair).map_or(&[][..], |it| &it.members);
            let (one, other) = faces(members);
            let (one, other) = if changed { (other, one) } else { (one, other) };
            let (left, right, hearting) = match bank {
                None => (one, other, Vec::new()),
                Some(bank) => before_the_bank(one, other, bank),
            };
            Place {
                stint,
                pair,
                left,
                right,
                hearting,
            }
        })
        .collect()
}

/// Left, right and who hearts, where nobody may stand between a bank and the wall: all are at
/// the face away from it, those who lay first. Who is alone lays and hearts.
fn before_the_bank(
    lay: Vec<String>,
    heart: Vec<String>,
    bank: Side,
) -> (Vec<String>, Vec<String>, Vec<String>) {
    let (lay, heart) = if lay.is_empty() {
        (heart, lay)
    } else {
        (lay, heart)
    };
    let front: Vec<String> = lay.iter().chain(&heart).cloned().collect();
    match bank.other() {
        Side::Left => (front, Vec::new(), heart),
        Side::Right => (Vec::new(), front, heart),
    }
}

/// The two sides of a pair; of three, two stand on one.
fn faces(members: &[Student]) -> (Vec<String>, Vec<String>) {
    let every_second = |from: usize| {
        members
            .iter()
            .skip(from)
            .step_by(2)
            .map(|student| student.name.clone())
            .collect()
    };
    (every_second(0), every_second(1))
}

/// Pairs in as few shifts as there is room for; neighbours in different ones, so that those
/// at work stand along the whole wall.
fn shifts(pairs: usize, crews: usize) -> Vec<Shift> {
    let count = pairs.div_ceil(crews.max(1)).max(1);
    let share = |shift: usize| shift as f64 / count as f64;
    (0..pairs)
        .map(|pair| Shift {
            pair,
            from: share(pair % count),
            to: share(pair % count + 1),
        })
        .collect()
}
