//! A course described plainly, in a file of `models/`, put to the program's own simulation.

use checks::folder;
use chrono::{NaiveDate, NaiveTime, TimeDelta};
use craft::course::Day;
use craft::pace::belief::Belief;
use craft::pace::calendar::{Calendar, DAY_MINUTES, Rated, Span, left_of};
use craft::pace::luck::Luck;
use craft::pace::programme::{Learning, Programme, Step};
use craft::pace::ties::Ties;
use craft::tables::{Along, Crew, PaceSpread, Stage, Work};
use serde::Deserialize;

/// What the courses of a file have in common where they do not say otherwise.
#[derive(Debug, Clone, Copy, Deserialize)]
pub(super) struct Usual {
    course: f64,
    stage: f64,
    pair: f64,
    pairs: f64,
    novices: f64,
    learning_hours: f64,
    learning_factor: f64,
}

/// One course; the keys are explained at the top of `models/days.toml`.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct Case {
    pub(super) name: String,
    open: Vec<[f64; 3]>,
    step: Vec<CaseStep>,
    by_hand: Option<Vec<f64>>,
    course: Option<f64>,
    stage: Option<f64>,
    pair: Option<f64>,
    pairs: Option<f64>,
    novices: Option<f64>,
}

#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
struct CaseStep {
    usual: Vec<f64>,
    together: bool,
    string: bool,
    laying: bool,
    fixed: bool,
    lessons: Vec<f64>,
    after: Option<f64>,
}

#[derive(Debug, Deserialize)]
struct Told {
    usual: Usual,
    case: Vec<Case>,
}

/// The courses of `models/NAME`.
pub(super) fn told(name: &str) -> Vec<Case> {
    let path = folder("models").join(name);
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|cause| panic!("{}: {cause}", path.display()));
    let told: Told = toml_edit::de::from_str(&text)
        .unwrap_or_else(|cause| panic!("{}: {cause}", path.display()));
    told.case
        .into_iter()
        .map(|case| case.or(&told.usual))
        .collect()
}

impl Case {
    /// With what it does not say itself. Learning is the same in all of them.
    fn or(mut self, usual: &Usual) -> Self {
        assert!((usual.learning_hours - 2.0).abs() + (usual.learning_factor - 1.5).abs() < 1e-12);
        self.course = self.course.or(Some(usual.course));
        self.stage = self.stage.or(Some(usual.stage));
        self.pair = self.pair.or(Some(usual.pair));
        self.pairs = self.pairs.or(Some(usual.pairs));
        self.novices = self.novices.or(Some(usual.novices));
        self
    }

    /// When each step is done by hand, infinite for never; a course with it has no luck.
    pub(super) fn by_hand(&self) -> Option<&[f64]> {
        self.by_hand.as_deref()
    }

    /// The open stretches as what is left of whole days, each day from midnight to midnight.
    pub(super) fn calendar(&self) -> Calendar {
        let ends = self.open.iter().map(|[_, to, _]| *to);
        let last = ends.fold(0.0, f64::max);
        let mut days = Vec::new();
        let mut date = NaiveDate::from_ymd_opt(2027, 4, 24).expect("a date");
        while (days.len() as f64) * DAY_MINUTES < last {
            days.push(Day {
                date,
                start: NaiveTime::MIN,
                finish: NaiveTime::from_hms_opt(23, 59, 0).expect("a time"),
                breaks: Vec::new(),
                weather: Default::default(),
            });
            date += TimeDelta::days(1);
        }
        let span = |[from, to, _]: &[f64; 3]| Span {
            from: *from,
            to: *to,
        };
        let open: Vec<Span> = self.open.iter().map(span).collect();
        let rated = self.open.iter().map(|open| Rated {
            span: span(open),
            rate: open[2],
        });
        let whole = Span {
            from: f64::NEG_INFINITY,
            to: f64::INFINITY,
        };
        Calendar::new(&days, &left_of(whole, &open), &rated.collect::<Vec<_>>())
    }

    pub(super) fn programme(&self) -> Programme {
        let mut lesson_minutes = Vec::new();
        let mut strings = 0;
        let steps = self.step.iter().enumerate().map(|(stage, step)| {
            let first = lesson_minutes.len();
            lesson_minutes.extend(&step.lessons);
            strings += usize::from(step.string);
            Step {
                stage,
                usual: step.usual.clone(),
                together: step.together,
                string: step.string.then(|| strings - 1),
                laying: step.laying,
                lessons: (first..lesson_minutes.len()).collect(),
                // The pinned lesson itself is not taught by the programme: any number will do.
                after: step.after.map(|clock| (0, clock)),
                crowding: 0.0,
            }
        });
        let steps: Vec<Step> = steps.collect();
        let bays = self.step[0].usual.len();
        Programme {
            steps,
            bays,
            lesson_minutes,
            ties: Ties::new(self.pairs.expect("pairs"), self.pair.expect("a spread")),
            laid: vec![0.0; bays],
            learning: Learning::new(self.novices.expect("novices"), 1.5, 2.0),
        }
    }

    /// How slow the stages may turn out.
    pub(super) fn luck(&self, seed: u64, samples: usize) -> Luck {
        let spread = PaceSpread {
            course: self.course.expect("a spread"),
            stage: self.stage.expect("a spread"),
            instructor: 0.0,
            instructor_stage: 0.0,
            pair: self.pair.expect("a spread"),
            reading: 0.0,
            clock_minutes: 0.0,
            source: String::new(),
        };
        let stages: Vec<Stage> = self.step.iter().map(CaseStep::as_stage).collect();
        let belief = Belief::built_in(&stages, &spread);
        Luck::new(seed, samples, &stages, &belief, self.step[0].usual.len())
    }
}

impl CaseStep {
    fn as_stage(&self) -> Stage {
        Stage {
            id: String::new(),
            name: String::new(),
            work: if self.fixed {
                Work::Minutes(15)
            } else {
                Work::Metres
            },
            crew: Crew::Everyone,
            string: self.string,
            along: Along::BayByBay,
            beforehand: false,
            note: String::new(),
            if_left: String::new(),
        }
    }
}
