//! People, days, weather, chance and length as lines of text.

use super::Text;
use shapes::written::{Day, Line, Place, Round, StageTimes, Written};

/// Of all that held simulated courses up, so many are told.
const HOLDUPS: usize = 4;

/// Who builds where, and who does what at each stage.
pub(super) fn people(plan: &Written, text: &mut Text) {
    text.heading("Stints");
    text.table(plan.stints.iter().map(|stint| {
        vec![
            format!("{}", stint.number),
            format!("{} to {}", stint.from, stint.to),
            stint.members.join(", "),
        ]
    }));
    let rounds = alike(&plan.running.rotation);
    if rounds.is_empty() {
        return;
    }
    text.heading("Who does what");
    text.table(who_stands_where(&rounds).into_iter());
    for round in &plan.running.rotation {
        for turn in &round.heads {
            text.line(&format!("{}: {turn}", round.stage));
        }
    }
}

/// Who stands at one of the two faces.
type Face = fn(&Place) -> &String;

/// A row for each stint at each stage. A face at which nobody ever stands, as where a bank is
/// behind the wall, has no column.
fn who_stands_where(rounds: &[(String, &[Place])]) -> Vec<Vec<String>> {
    let used = |face: Face| {
        let mut places = rounds.iter().flat_map(|(_, places)| places.iter());
        places.any(|place| !face(place).is_empty())
    };
    let faces: [(&str, Face); 2] = [
        ("left face", |place| &place.left),
        ("right face", |place| &place.right),
    ];
    let faces: Vec<_> = faces.into_iter().filter(|(_, face)| used(*face)).collect();
    let mut head = vec!["stage".to_owned(), "stint".to_owned()];
    head.extend(faces.iter().map(|(name, _)| (*name).to_owned()));
    let mut rows = vec![head];
    for (stages, places) in rounds {
        for (at, place) in places.iter().enumerate() {
            let stages = if at == 0 { stages.as_str() } else { "" };
            let mut row = vec![stages.to_owned(), place.stint.to_string()];
            row.extend(faces.iter().map(|(_, face)| face(place).clone()));
            rows.push(row);
        }
    }
    rows
}

/// Stages one after the other at which everybody stands at the same place, as one.
fn alike(rounds: &[Round]) -> Vec<(String, &[Place])> {
    let mut alike: Vec<(String, &[Place])> = Vec::new();
    for round in rounds.iter().filter(|round| !round.places.is_empty()) {
        match alike.last_mut() {
            Some((stages, places)) if same(places, &round.places) => {
                stages.push_str(&format!(", {}", round.stage));
            }
            _ => alike.push((round.stage.clone(), &round.places)),
        }
    }
    alike
}

fn same(one: &[Place], other: &[Place]) -> bool {
    let who = |place: &Place| (place.stint, place.left.clone(), place.right.clone());
    one.iter().map(who).eq(other.iter().map(who))
}

/// Each day by the clock with its weather and who is away, then wishes that can't be had.
pub(super) fn days(plan: &Written, text: &mut Text) {
    for day in &plan.days {
        timetable(day, text);
        weather(plan, day.number, text);
        away(plan, day.number, text);
    }
    if !plan.running.unmet.is_empty() {
        text.heading("Wishes that can't be had");
        for unmet in &plan.running.unmet {
            text.line(&format!("! {unmet}"));
        }
    }
}

fn timetable(day: &Day, text: &mut Text) {
    text.heading(&format!(
        "Day {}, {}, sun {} to {}",
        day.number, day.date, day.sunrise, day.sunset
    ));
    text.table(day.entries.iter().map(|entry| {
        vec![
            format!("{} - {}", entry.start, entry.finish),
            entry.kind.clone(),
            entry.what.clone(),
        ]
    }));
}

fn weather(plan: &Written, day: usize, text: &mut Text) {
    for it in plan.running.weather.iter().filter(|it| it.day == day) {
        if !it.figures.is_empty() {
            text.line(&format!("Weather: {}", it.figures.join(", ")));
        }
        for ask in &it.asks {
            text.line(&format!("- {ask}"));
        }
    }
}

fn away(plan: &Written, day: usize, text: &mut Text) {
    for it in plan.running.people.iter().filter(|it| it.day == day) {
        for away in &it.away {
            text.line(away);
        }
        if !it.stints.is_empty() {
            text.line("Stints of this day:");
            text.table(it.stints.iter().map(|stint| vec![stint.clone()]));
        }
    }
}

/// The chance, when each stage is done, and what held things up.
pub(super) fn chance(plan: &Written, text: &mut Text) {
    let chance = &plan.chance;
    text.heading(&format!(
        "Chance of finishing: {} (wished for: {}; from {})",
        chance.chance, chance.wished, chance.from
    ));
    if !plan.running.throughs.is_empty() {
        text.line(&plan.running.throughs);
    }
    stages(&chance.stages, text);
    lines(
        "What held these courses up most:",
        plan.running.holdups.iter().take(HOLDUPS),
        text,
    );
}

/// When each of these stages is done.
pub(super) fn stages(stages: &[StageTimes], text: &mut Text) {
    let head = ["done", "work", "early", "likely", "late"];
    let head = head.map(str::to_owned).to_vec();
    let rows = stages.iter().map(|stage| {
        vec![
            stage.name.clone(),
            stage.amount.clone(),
            stage.early.text.clone(),
            stage.likely.text.clone(),
            stage.late.text.clone(),
        ]
    });
    text.table(std::iter::once(head).chain(rows));
}

/// What would make the wall longer, and what else there is to know of its length.
pub(super) fn length(plan: &Written, text: &mut Text) {
    let running = &plan.running;
    if running.lifts.is_empty() && running.about_length.is_empty() {
        return;
    }
    text.heading("More about the length");
    for said in &running.about_length {
        text.line(said);
    }
    lines(
        "What would allow a longer wall:",
        running.lifts.iter(),
        text,
    );
}

/// What has a figure, the figure first; nothing where there is none.
pub(super) fn lines<'l>(head: &str, lines: impl Iterator<Item = &'l Line>, text: &mut Text) {
    let rows: Vec<Vec<String>> = lines
        .map(|line| vec![line.figure.clone(), line.what.clone()])
        .collect();
    if !rows.is_empty() {
        text.line(head);
        text.table(rows.into_iter());
    }
}
