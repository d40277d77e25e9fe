//! Pairs of a group against a reference solver for matchings in general graphs.

use checks::courses::library;
use checks::{Found, Row, every_row};
use craft::course::{Experience, Group, Pairing, Student};
use craft::people::pairs;
use craft::tables::{PaceTable, Rate};

const LAYING: &str = "laying of the table";
const HOURS: [f64; 3] = [5.0, 3.5, 1.6];

/// Squares of pace are rounded on our side, 2^17 steps to the square of the fastest.
const WITHIN: f64 = 3e-5;

fn pace() -> PaceTable {
    let mut pace = library().tables.pace.clone();
    pace.rates = vec![Rate {
        stage: LAYING.to_owned(),
        hours: HOURS,
        source: String::new(),
    }];
    pace
}

fn name(number: &str) -> String {
    format!("Student {number}")
}

fn group(row: &Row) -> Result<Group, String> {
    let experience = |letter| match letter {
        'N' => Ok(Experience::Novice),
        'I' => Ok(Experience::Improver),
        'E' => Ok(Experience::Experienced),
        _ => Err(row.fault("no such experience")),
    };
    let mut students = (1..)
        .zip(row.text("people").chars())
        .map(|(number, letter)| Ok(Student::new(name(&number.to_string()), experience(letter)?)))
        .collect::<Result<Vec<_>, String>>()?;
    for (column, sign) in [("wishes", '>'), ("apart", '-')] {
        for two in row.text(column).split_whitespace() {
            let (who, whom) = two.split_once(sign).ok_or_else(|| row.fault(two))?;
            let one = students.iter_mut().find(|it| it.name == name(who));
            let one = one.ok_or_else(|| row.fault("no such student"))?;
            let list = if sign == '>' {
                &mut one.with
            } else {
                &mut one.apart
            };
            list.push(name(whom));
        }
    }
    let pairing = match row.text("pairs") {
        "mixed" => Pairing::Mixed,
        "friends" => Pairing::Friends,
        "alike" => Pairing::Alike,
        _ => return Err(row.fault("no such way")),
    };
    Ok(Group {
        instructors: 1,
        assistants: 0,
        students,
        pairing,
    })
}

/// Together, first aim, second aim, unevenness.
type Aims = [f64; 4];

fn column(experience: Experience) -> usize {
    match experience {
        Experience::Novice => 0,
        Experience::Improver => 1,
        Experience::Experienced => 2,
    }
}

fn together(one: &Student, other: &Student) -> f64 {
    let apart = one.apart.contains(&other.name) || other.apart.contains(&one.name);
    f64::from(u8::from(apart))
}

fn aims(one: &Student, other: &Student, pairing: Pairing, usual: f64) -> Aims {
    let [a, b] = [one, other].map(|it| column(it.experience));
    let count = |truth: bool| f64::from(u8::from(truth));
    let wishes = count(one.with.contains(&other.name)) + count(other.with.contains(&one.name));
    let guided = count((a == 0) != (b == 0));
    let unlike = (a as f64 - b as f64).powi(2);
    let (first, second) = match pairing {
        Pairing::Mixed => (guided, wishes),
        Pairing::Friends => (wishes, guided),
        Pairing::Alike => (-unlike, wishes),
    };
    let uneven = (1.0 / HOURS[a] + 1.0 / HOURS[b] - usual).powi(2);
    [together(one, other), first, second, uneven]
}

fn sum(all: &[Aims]) -> Aims {
    std::array::from_fn(|at| all.iter().map(|aims| aims[at]).sum())
}

/// The aims of one pair, or of a three by the best of those who could build with both others.
fn of_pair(pair: &[Student], pairing: Pairing, usual: f64) -> Option<Aims> {
    match pair {
        [one, other] => Some(aims(one, other, pairing, usual)),
        [a, b, c] => [(a, b, c), (b, a, c), (c, a, b)]
            .into_iter()
            .map(|(middle, one, other)| {
                let ends = [together(one, other), 0.0, 0.0, 0.0];
                let [first, last] = [one, other].map(|end| aims(middle, end, pairing, usual));
                sum(&[first, last, ends])
            })
            .max_by(|a, b| {
                let order = |it: &Aims| [-it[0], it[1], it[2], -it[3]];
                order(a).partial_cmp(&order(b)).expect("numbers")
            }),
        _ => None,
    }
}

fn is_best(row: &Row) -> Found {
    let group = group(row)?;
    let speeds = group
        .students
        .iter()
        .map(|it| 1.0 / HOURS[column(it.experience)]);
    let usual = 2.0 * speeds.sum::<f64>() / group.students.len() as f64;
    let pairs = pairs(&group, &pace(), LAYING);
    let count: usize = pairs.iter().map(Vec::len).sum();
    row.near(
        "how many have a place",
        count as f64,
        group.students.len() as f64,
        0.0,
    )?;
    let each = pairs
        .iter()
        .map(|pair| of_pair(pair, group.pairing, usual))
        .collect::<Option<Vec<_>>>()
        .ok_or_else(|| row.fault("somebody is alone, or more than three are together"))?;
    let ours = sum(&each);
    row.near("together", ours[0], row.number("together"), 0.0)?;
    row.near("first", ours[1], row.number("first"), 0.0)?;
    row.near("second", ours[2], row.number("second"), 0.0)?;
    row.near("uneven", ours[3], row.number("uneven"), WITHIN)
}

#[test]
fn pairs_are_as_good_as_the_reference_finds_them() {
    every_row("pairings.csv", is_best);
}
