//! The desk and the shelf of lessons: what there is, one lesson while it is written, put on the shelf
//! and taken away, with the course planned anew.

use crate::desk::{Desk, Error};
use crate::print_job::PrintJob;
use craft::tables::{Applies, Before};
use files::draft::{self, Change, Parts};
use files::own_cards::{self, Whose};
use files::{COURSE_DRAWINGS, Card, Figure, Library};
use shapes::window::{
    Choices, LessonChange, LessonChoice, LessonDraft, LessonFault, LessonKept, LessonParts,
    LessonShelf, PagesAsked, ShelfLesson, in_words,
};
use shapes::written::lasts;

/// The word of a lesson that is taught only where it is asked for.
const ASKED: &str = "asked";

impl Desk {
    /// All lessons there are, and what a lesson can be put together from.
    pub(crate) fn lesson_shelf(&self) -> LessonShelf {
        let tables = &self.course.library.tables;
        let named = |it: Applies| (it.word().to_owned(), format!("where {}", in_words(it)));
        let always = (
            Applies::Always.word().to_owned(),
            "on every course".to_owned(),
        );
        let others = Applies::ALL.into_iter().filter(|it| *it != Applies::Always);
        let caution = |it: &craft::tables::Caution| (it.id.clone(), it.text.clone());
        let sketches = self.library.sketches().into_iter();
        LessonShelf {
            lessons: self.on_shelf(),
            stages: self.stages_to_come_before(),
            conditions: std::iter::once(always).chain(others.map(named)).collect(),
            cautions: tables.cautions.iter().map(caution).collect(),
            drawings: COURSE_DRAWINGS
                .into_iter()
                .chain(sketches)
                .map(ToOwned::to_owned)
                .collect(),
            figures: Figure::ALL.iter().map(|it| it.word().to_owned()).collect(),
            folder: self
                .folder
                .join("lessons")
                .join("cards")
                .display()
                .to_string(),
        }
    }

    /// The lesson of this name as it is written.
    pub(crate) fn lesson(&mut self, id: &str) -> Result<LessonDraft, Error> {
        let text = own_cards::written(&self.folder, id)?;
        let draft = self.drafted(id, text);
        Ok(self.noted(draft))
    }

    /// A lesson to be written, of a name that is free.
    pub(crate) fn new_lesson(&self, title: &str) -> LessonDraft {
        let taken = own_cards::on_shelf(&self.folder);
        let taken: Vec<&str> = taken.iter().map(|(id, _)| id.as_str()).collect();
        let id = own_cards::name_for(title, &taken);
        let text = own_cards::new_card(&id, title.trim());
        self.drafted(&id, text)
    }

    /// A lesson with one part as it was typed; nothing is saved.
    pub(crate) fn change_lesson(
        &mut self,
        id: &str,
        text: &str,
        change: &LessonChange,
    ) -> LessonDraft {
        let changed = match change {
            LessonChange::Word(key, typed) => draft::changed(text, Change::Word(key, typed)),
            LessonChange::Lines(key, lines) => draft::changed(text, Change::Lines(key, lines)),
            LessonChange::Questions(asked) => draft::changed(text, Change::Questions(asked)),
            LessonChange::Body(body) => draft::changed(text, Change::Body(body)),
            LessonChange::Whole(whole) => Some(whole.clone()),
        };
        let draft = self.drafted(id, changed.unwrap_or_else(|| text.to_owned()));
        self.noted(draft)
    }

    /// Puts a lesson on the shelf, sound or not: one that is not does not count, and nothing that was
    /// written is lost. Where the course could not be planned with it, the shelf stays as it was.
    pub(crate) fn save_lesson(&mut self, id: &str, text: &str) -> Result<LessonKept, Error> {
        self.on_the_shelf(id, Some(text))?;
        Ok(self.kept(id, text.to_owned()))
    }

    /// Takes the instructor's own lesson off the shelf. `text` is what is being written: it stays at
    /// the editor, and saved again it is back.
    pub(crate) fn take_lesson_away(&mut self, id: &str, text: &str) -> Result<LessonKept, Error> {
        self.on_the_shelf(id, None)?;
        Ok(self.kept(id, text.to_owned()))
    }

    /// What the pages of a lesson that is being written are made of; nothing while it is not sound.
    pub(crate) fn lesson_job(&self, id: &str, text: &str) -> Result<Option<PrintJob>, Error> {
        let Ok((card, lesson)) = self.library.read_card(id, text) else {
            return Ok(None);
        };
        let course = self.course.with_lesson_alone(card, lesson);
        Ok(Some(PrintJob::new(
            &course,
            &self.press,
            PagesAsked::default(),
        )))
    }

    fn on_the_shelf(&mut self, id: &str, text: Option<&str>) -> Result<(), Error> {
        // A table of one's own that is broken is told by its name and line before anything is written.
        if self.folder.is_dir() {
            Library::with_store(&self.folder)?;
        }
        let before = match own_cards::whose_is(&self.folder, id) {
            Some(Whose::Own | Whose::Replaces) => Some(own_cards::written(&self.folder, id)?),
            Some(Whose::BuiltIn) | None => None,
        };
        self.put_on_shelf(id, text)?;
        let planned = self.read_library_again();
        if planned.is_err() {
            self.put_on_shelf(id, before.as_deref())?;
            self.read_library_again()?;
        }
        planned
    }

    fn put_on_shelf(&self, id: &str, text: Option<&str>) -> Result<(), files::Error> {
        match text {
            Some(text) => own_cards::save_card(&self.folder, id, text),
            None => own_cards::take_away(&self.folder, id),
        }
    }

    /// Whether closing the window would lose anything: of the course, or of a lesson.
    pub(crate) fn would_be_lost(&self) -> bool {
        self.unsaved() || self.has_unsaved_lessons()
    }

    pub(crate) fn has_unsaved_lessons(&self) -> bool {
        !self.unsaved_lessons.is_empty()
    }

    /// Closing the window asks first while a lesson has words that are on no shelf.
    fn noted(&mut self, draft: LessonDraft) -> LessonDraft {
        if draft.saved {
            self.unsaved_lessons.remove(&draft.id);
        } else {
            self.unsaved_lessons.insert(draft.id.clone());
        }
        draft
    }

    fn kept(&mut self, id: &str, text: String) -> LessonKept {
        let draft = self.drafted(id, text);
        LessonKept {
            draft: self.noted(draft),
            shelf: self.lesson_shelf(),
            view: self.view(),
        }
    }

    fn drafted(&self, id: &str, text: String) -> LessonDraft {
        let read = self.library.read_card(id, &text);
        let is_spoken = |card: &Card| card.before == "day";
        LessonDraft {
            id: id.to_owned(),
            parts: draft::parts(&text).map(shown),
            handout: !read.as_ref().is_ok_and(|(card, _)| is_spoken(card)),
            fault: read.err().map(fault),
            whose: match own_cards::whose_is(&self.folder, id) {
                None => "new",
                Some(whose) => word(whose),
            }
            .to_owned(),
            saved: own_cards::written(&self.folder, id).is_ok_and(|it| it == text),
            text,
        }
    }

    fn on_shelf(&self) -> Vec<ShelfLesson> {
        let stages = self.stages_to_come_before();
        let course = &self.course;
        let tables = &course.library.tables;
        let choices = Choices::of(&course.plan, &course.file.course, tables).lessons;
        let place = |before: &str| stages.iter().position(|(word, _)| word == before);
        let mut lessons: Vec<(usize, ShelfLesson)> = own_cards::on_shelf(&self.folder)
            .into_iter()
            .map(|(id, whose)| {
                let before = self.before(&id).unwrap_or_default();
                let at = place(&before);
                let name = at
                    .and_then(|at| stages.get(at))
                    .map(|(_, name)| name.clone());
                let choice = choices.iter().find(|it| it.id == id);
                let lesson = self.shelf_lesson(id, whose, name.unwrap_or_default(), choice);
                (at.unwrap_or(stages.len()), lesson)
            })
            .collect();
        lessons.sort_by(|(at, one), (other_at, other)| {
            at.cmp(other_at).then_with(|| one.title.cmp(&other.title))
        });
        lessons.into_iter().map(|(_, lesson)| lesson).collect()
    }

    fn shelf_lesson(
        &self,
        id: String,
        whose: Whose,
        before: String,
        choice: Option<&LessonChoice>,
    ) -> ShelfLesson {
        let tables = &self.course.library.tables;
        let lesson = tables.lessons.iter().find(|it| it.id == id);
        let fault = match (whose, own_cards::written(&self.folder, &id)) {
            (Whose::BuiltIn, _) => String::new(),
            (_, Err(error)) => error.to_string(),
            (_, Ok(text)) => {
                let wrong = self.library.read_card(&id, &text).err();
                wrong
                    .map(|it| format!("line {}: {}", it.line, it.what))
                    .unwrap_or_default()
            }
        };
        ShelfLesson {
            title: lesson.map_or_else(|| id.clone(), |it| it.title.clone()),
            before,
            lasts: lesson
                .map(|it| lasts(f64::from(it.minutes)))
                .unwrap_or_default(),
            whose: word(whose).to_owned(),
            taught: choice.is_some_and(|it| it.taught),
            why: choice.map(|it| it.why.clone()).unwrap_or_default(),
            fault,
            id,
        }
    }

    /// The word of what a lesson comes before.
    fn before(&self, id: &str) -> Option<String> {
        let lessons = &self.course.library.tables.lessons;
        let lesson = lessons.iter().find(|it| it.id == id)?;
        Some(match &lesson.before {
            Before::Course => "start".to_owned(),
            Before::EachDay => "day".to_owned(),
            Before::Stage(stage) => stage.clone(),
        })
    }

    fn stages_to_come_before(&self) -> Vec<(String, String)> {
        let stages = self.course.library.tables.stages.iter();
        let stages = stages.map(|it| (it.id.clone(), format!("before: {}", it.name)));
        [
            ("start", "first thing on day 1"),
            ("day", "first thing on every later day"),
        ]
        .map(|(word, name)| (word.to_owned(), name.to_owned()))
        .into_iter()
        .chain(stages)
        .collect()
    }
}

fn word(whose: Whose) -> &'static str {
    match whose {
        Whose::BuiltIn => "built-in",
        Whose::Replaces => "replaces",
        Whose::Own => "own",
    }
}

fn fault(it: files::own_cards::CardFault) -> LessonFault {
    let in_text = it.text_line.is_some();
    LessonFault {
        part: if in_text { "body".to_owned() } else { it.key },
        line: it.text_line.unwrap_or(it.line),
        what: it.what,
        cure: it.cure,
    }
}

fn shown(it: Parts) -> LessonParts {
    LessonParts {
        title: it.title,
        kind: it.kind,
        minutes: it.minutes,
        before: it.before,
        // Nothing said is the same as on every course.
        when: match it.when.is_empty() {
            true => vec![Applies::Always.word().to_owned()],
            false => it.when.into_iter().filter(|word| word != ASKED).collect(),
        },
        drawings: it.drawings,
        aims: it.aims,
        show: it.show,
        kit: it.kit,
        hazards: it.hazards,
        mistakes: it.mistakes,
        questions: it.questions,
        body: it.body,
    }
}

#[cfg(test)]
mod tests;
