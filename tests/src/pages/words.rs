//! What each document must say: the figures of the plan, as people read them.

mod office;

use super::field;
use checks::paper::{Paper, letters};
use craft::worksheet::{Asked, Question, fault_wall, sheet};
use documents::{Course, Document, Edition, filled};
use files::course::Language;
use files::{American, Block, Card, Span};
use shapes::left_safe;

/// Panics at the first thing a document should say and does not.
pub fn has_its_words(course: &Course, document: &Document, paper: &Paper) {
    let there = paper.letters();
    for words in due(course, document.name) {
        let words = match course.file.language {
            Language::EnGb => words,
            Language::EnUs => American::built_in().but(&words, &course.file.typed),
        };
        assert!(
            there.contains(&letters(&words)),
            "{}: no {words:?} in\n{}",
            document.name,
            paper.text()
        );
    }
    if document.name == "site-card" && course.edition == Edition::Usual {
        assert_eq!(paper.pages().len(), 1, "the site card is one page");
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
        "site-card" => field::site_card(course),
        "frame-card" => field::frame_card(course),
        "inspection-sheet" => field::inspection_sheet(course),
        "stints-poster" => field::stints_poster(course),
        "risk-assessment" => field::risk_assessment(course),
        "safety-briefing" => field::safety_briefing(course),
        "safety-handout" => safety_handout(course),
        "lifting-card" => lifting_card(course),
        "lesson-cards" => lesson_cards(course),
        "lesson-handouts" => lesson_handouts(course),
        "return-list" => return_list(course),
        "ready-list" => ready_list(course),
        "money-sheet" => money_sheet(course),
        "worksheets" => worksheets(course),
        "worksheets-key" => worksheets_key(course),
        "joining-letter" => office::joining_letter(course),
        "fitness-declaration" => office::fitness_declaration(course),
        "register" => office::register(course),
        "attendance-slip" => office::attendance_slip(course),
        "feedback-sheet" => office::feedback_sheet(course),
        "emergency-sheet" => office::emergency_sheet(course),
        "contacts-sheet" => office::contacts_sheet(course),
        // A new document says at least whose it is.
        _ => vec![course.written.title.clone()],
    }
}

/// The cards of the lessons this course teaches.
fn taught(course: &Course) -> Vec<&Card> {
    let library = &course.library;
    let cards = course.plan.taught.iter().filter_map(|lesson| {
        let lesson = library.tables.lessons.get(*lesson)?;
        library.cards.iter().find(|card| card.id == lesson.id)
    });
    let taught: Vec<&Card> = cards.collect();
    assert_eq!(taught.len(), course.plan.taught.len());
    taught
}

/// Who teaches has all but the text: what to show, what goes wrong, questions and answers.
fn lesson_cards(course: &Course) -> Vec<String> {
    let mut words = vec![course.written.title.clone()];
    for card in taught(course) {
        words.extend(card.kit.iter().cloned());
        let texts = card.aims.iter().chain(&card.show).chain(&card.mistakes);
        let questions = card.questions.iter().flat_map(|it| [&it.ask, &it.answer]);
        words.extend(texts.chain(questions).map(|text| filled(course, text)));
    }
    words
}

/// Students have the text with it, and no answers.
fn lesson_handouts(course: &Course) -> Vec<String> {
    let mut words = vec![course.written.title.clone()];
    for card in taught(course)
        .into_iter()
        .filter(|card| card.before != "day")
    {
        let asked = card.questions.iter().map(|it| &it.ask);
        let texts = card.aims.iter().chain(asked);
        words.extend(texts.map(|text| filled(course, text)));
        // A paragraph may go on on the next page, but its first letters stand on one line.
        for block in &card.text {
            if let Block::Paragraph(spans) | Block::Heading(spans) = block
                && let Some(Span::Words(text)) = spans.first()
            {
                words.push(filled(course, text).chars().take(20).collect());
            }
        }
    }
    words
}

/// What each student is asked, with the student's place in the group and name.
fn sheets(course: &Course) -> Vec<(String, Vec<Question>)> {
    let asked = Asked {
        course: &course.file.course,
        tables: &course.library.tables,
        frames: &course.plan.frames,
        fault_wall,
    };
    let students = course.file.course.group.students.iter().enumerate();
    students
        .map(|(place, student)| (student.name.clone(), sheet(&asked, place)))
        .collect()
}

/// Every student's name, and what stands over each question.
fn worksheets(course: &Course) -> Vec<String> {
    let mut words = names(course);
    for (_, questions) in sheets(course) {
        words.extend(questions.iter().map(|it| it.kind.title().to_owned()));
        words.extend(questions.into_iter().flat_map(|it| it.choices));
    }
    words
}

/// Every student's name, and every answer on its own.
fn worksheets_key(course: &Course) -> Vec<String> {
    let mut words = names(course);
    for (_, questions) in sheets(course) {
        let answers = questions.iter().flat_map(|it| it.answer.split("; "));
        words.extend(answers.map(str::to_owned));
    }
    words
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
    let bars = course.plan.frames.bars.is_some();
    for work in &course.plan.work {
        let stage = &course.library.tables.stages[work.stage];
        words.push(left_safe(&stage.if_left, bars));
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
