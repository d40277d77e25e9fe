//! What each document must say: the figures of the plan, as people read them.

use checks::paper::{Paper, letters};
use documents::{Course, Document};

/// Panics at the first thing a document should say and does not.
pub fn has_its_words(course: &Course, document: &Document, paper: &Paper) {
    let there = paper.letters();
    for words in due(course, document.name) {
        assert!(
            there.contains(&letters(&words)),
            "{}: no {words:?} in\n{}",
            document.name,
            paper.text()
        );
    }
    let students = course.file.course.group.students.len();
    if document.name == "worksheets" {
        let pages = paper.pages();
        assert!(
            students <= pages.len(),
            "{} pages for {students}",
            pages.len()
        );
    }
}

fn due(course: &Course, document: &str) -> Vec<String> {
    match document {
        "stone-order" => stone_order(course),
        "load-list" => load_list(course),
        "setting-out" => setting_out(course),
        "run-sheet" => run_sheet(course),
        "progress-sheet" => progress_sheet(course),
        "safety-handout" => safety_handout(course),
        "lifting-card" => lifting_card(course),
        "return-list" => return_list(course),
        "ready-list" => ready_list(course),
        "money-sheet" => money_sheet(course),
        "worksheets" | "worksheets-key" => names(course),
        // A new document says at least whose it is.
        _ => vec![course.written.title.clone()],
    }
}

fn stone_order(course: &Course) -> Vec<String> {
    let stone = &course.written.stone;
    let built = stone.kinds.iter().filter(|kind| !kind.none);
    let mut words: Vec<String> = built.map(|kind| kind.wanted.clone()).collect();
    words.extend(stone.rests_on.iter().map(|it| it.source.clone()));
    words.extend(stone.throughs.iter().map(|row| row.length.clone()));
    words.push(stone.old_wall.clone());
    for it in &course.written.deliveries {
        words.extend([&it.mass, &it.order_by, &it.there_by, &it.loads].map(Clone::clone));
    }
    if course
        .written
        .deliveries
        .iter()
        .any(|it| it.what == "wall stone")
    {
        words.extend([&stone.high, &stone.mid, &stone.low].map(Clone::clone));
        words.extend(stone.kinds.iter().map(|kind| kind.order.clone()));
    } else {
        words.push(stone.order.clone());
    }
    words
}

fn load_list(course: &Course) -> Vec<String> {
    let lines = course.written.kit.lines.iter();
    let mut words: Vec<String> = lines
        .flat_map(|line| [&line.item, &line.cure, &line.owners].map(Clone::clone))
        .collect();
    let Some(loads) = &course.written.loads else {
        return words;
    };
    words.extend(loads.notes.iter().cloned());
    for hold in loads.runs.iter().flat_map(|run| &run.holds) {
        words.push(hold.name.clone());
        if !hold.lines.is_empty() {
            words.extend([&hold.mass, &hold.limit, &hold.share].map(Clone::clone));
        }
        let lines = hold.lines.iter();
        words.extend(lines.flat_map(|it| [&it.item, &it.carried].map(Clone::clone)));
    }
    words.extend(loads.too_heavy.iter().map(|it| it.item.clone()));
    words
}

fn return_list(course: &Course) -> Vec<String> {
    let lines = course.written.kit.lines.iter();
    lines
        .flat_map(|line| [&line.item, &line.need, &line.owners].map(Clone::clone))
        .collect()
}

fn lifting_card(course: &Course) -> Vec<String> {
    let lifting = &course.written.lifting;
    let mut words = lifting.limits.clone();
    words.extend([lifting.heavier.clone(), lifting.held.clone()]);
    for lift in &lifting.lifts {
        let told = [&lift.stage, &lift.niosh, &lift.men, &lift.women];
        words.extend(told.map(Clone::clone));
    }
    for stone in &lifting.stones {
        words.extend([&stone.stone, &stone.mass, &stone.answer].map(Clone::clone));
    }
    words
}

fn ready_list(course: &Course) -> Vec<String> {
    let list = course.written.to_do.iter();
    list.flat_map(|it| [&it.text, &it.by].map(Clone::clone))
        .collect()
}

fn money_sheet(course: &Course) -> Vec<String> {
    let Some(money) = &course.written.money else {
        return vec!["[money]".to_owned(), "fee=".to_owned()];
    };
    let mut words = vec![
        money.total.clone(),
        money.per_head.clone(),
        money.income.clone(),
        money.left.clone(),
        money.break_even.clone(),
    ];
    for line in &money.lines {
        words.extend([&line.how, &line.amount].map(Clone::clone));
    }
    words
}

fn setting_out(course: &Course) -> Vec<String> {
    let (wall, frames) = (&course.written.wall, &course.written.frames);
    let mut words = vec![
        wall.length.clone(),
        wall.height.clone(),
        wall.base_width.clone(),
        wall.top_width.clone(),
        frames
            .bars
            .as_ref()
            .map_or_else(String::new, |bars| bars.needed.clone()),
    ];
    for row in &frames.rows {
        words.extend([
            row.station.clone(),
            row.left_offset.clone(),
            row.right_offset.clone(),
        ]);
    }
    for string in &frames.strings {
        words.extend([string.height.clone(), string.width.clone()]);
    }
    for one in &frames.moves {
        words.extend([one.from.clone(), one.to.clone(), one.built_to.clone()]);
    }
    words
}

fn run_sheet(course: &Course) -> Vec<String> {
    let mut words = vec![course.written.chance.chance.clone()];
    for day in &course.written.days {
        words.push(day.date.clone());
        for entry in &day.entries {
            words.extend([entry.start.clone(), entry.what.clone()]);
        }
    }
    for stint in &course.written.stints {
        words.extend([stint.from.clone(), stint.to.clone()]);
        words.extend(stint.members.iter().cloned());
    }
    let running = &course.written.running;
    words.push(running.throughs.clone());
    words.extend(running.unmet.iter().cloned());
    for day in &running.weather {
        words.extend(day.figures.iter().chain(&day.asks).cloned());
    }
    for day in &running.people {
        words.extend(day.away.iter().chain(&day.stints).cloned());
    }
    for round in &running.rotation {
        // Longer ones are cut short there.
        let places = round.places.iter().flat_map(|it| [&it.left, &it.right]);
        words.extend(places.filter(|who| who.chars().count() < 50).cloned());
        words.extend(round.heads.iter().cloned());
    }
    for work in &course.plan.work {
        words.push(course.library.tables.stages[work.stage].if_left.clone());
    }
    match &running.today {
        Some(today) => {
            words.extend([today.now.clone(), today.chance.clone()]);
            words.extend(today.cures.iter().take(6).map(|it| it.figure.clone()));
        }
        None => words.push("Leave it so".to_owned()),
    }
    words
}

/// Stages, bays with their ends, and every time to ask.
fn progress_sheet(course: &Course) -> Vec<String> {
    let written = &course.written;
    let stages = written.chance.stages.iter();
    let mut words: Vec<String> = stages.map(|stage| stage.name.clone()).collect();
    for (at, _) in written.frames.bays.iter().enumerate() {
        words.push(format!("Bay {}", at + 1));
    }
    words.extend(written.frames.rows.iter().map(|row| row.station.clone()));
    for day in &written.days {
        words.push(day.date.clone());
        let asked = day.entries.iter();
        let asked = asked.filter(|it| it.kind == "break" || it.kind == "tidy");
        words.extend(asked.map(|it| it.start.clone()));
    }
    words
}

fn safety_handout(course: &Course) -> Vec<String> {
    let told = course.written.cautions.iter();
    let told = told.filter(|caution| caution.for_students);
    let mut words: Vec<String> = told.map(|caution| caution.text.clone()).collect();
    let country = course.file.course.venue.country.as_deref();
    words.extend(course.library.emergency(country).map(str::to_owned));
    words
}

fn names(course: &Course) -> Vec<String> {
    let students = course.file.course.group.students.iter();
    students.map(|student| student.name.clone()).collect()
}
