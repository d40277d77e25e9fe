//! Why a stage takes so many hours.

use super::super::line::{hundredths, number, percent};
use super::super::{Of, Reason};
use craft::course::Experience;
use craft::plan::StageWork;
use craft::quantity::{FOOT_M, SHORT_TON_KG, Units};
use craft::tables::{PaceTable, Stage, Work};

/// What an amount of a stage is counted in, and how many of the table's units one of it is.
fn counted_in(work: Work, units: Units) -> (&'static str, f64) {
    let metric = units == Units::Metric;
    match work {
        Work::StrippedTonnes
        | Work::HeapTonnes
        | Work::FootingTonnes
        | Work::FirstLiftTonnes
        | Work::SecondLiftTonnes
            if metric =>
        {
            ("t", 1.0)
        }
        Work::StrippedTonnes
        | Work::HeapTonnes
        | Work::FootingTonnes
        | Work::FirstLiftTonnes
        | Work::SecondLiftTonnes => ("short tons", SHORT_TON_KG / 1000.0),
        Work::TrenchCubicMetres if metric => ("m³", 1.0),
        Work::TrenchCubicMetres => ("ft³", FOOT_M.powi(3)),
        Work::Metres | Work::CopeMetres if metric => ("m", 1.0),
        Work::Metres | Work::CopeMetres => ("ft", FOOT_M),
        Work::Frames => ("frames", 1.0),
        Work::Throughs => ("throughs", 1.0),
        Work::Heads => ("heads", 1.0),
        Work::CopeEnds => ("ends", 1.0),
        Work::Minutes(_) | Work::EachDay(_) => ("", 1.0),
    }
}

pub(super) fn hours(of: &Of<'_>) -> Reason {
    let plan = of.plan;
    let built = plan.work.iter().map(|work| work.hours).sum::<f64>();
    let mut reason = Reason::new("hours", "Hours of the stages", format!("{} h", hundredths(built)))
        .say("Each stage takes its amount of work, divided by what the people at it get done in an hour.")
        .say("What one person gets done is one over the hours the pace table gives for one unit. As many work at once as find a place: the fastest first. Beyond a good number to each instructor people wait for help, and lose a share.")
        .say("These are hours of building at usual pace. Breaks and lessons, learning, tiring, heat and rain come on top in the timetable.");
    for work in &plan.work {
        if let Some(stage) = of.tables.stages.get(work.stage) {
            reason = of_stage(of, reason, stage, work);
        }
    }
    let places = &of.tables.pace.places;
    reason
        .source(
            format!(
                "Hands on stone: {} of building time; good up to {} students to an instructor; an assistant counts half",
                percent(places.hands_on),
                number(places.students_per_instructor)
            ),
            &places.source,
        )
        .source(
            format!(
                "Places: a pair to {}, diggers {} apart, a coping crew to {}",
                of.length(places.facing_pair),
                of.length(places.diggers),
                of.length(places.coping_crew)
            ),
            &places.source,
        )
}

fn of_stage(of: &Of<'_>, reason: Reason, stage: &Stage, work: &StageWork) -> Reason {
    let name = &stage.name;
    if stage.work.is_fixed() {
        return reason.step(
            format!("{name}: a fixed time"),
            format!(
                "{} / 60 = {}",
                number(work.hours * 60.0),
                hundredths(work.hours)
            ),
        );
    }
    let (unit, each) = counted_in(stage.work, of.units());
    let (pace, from) = rates(of, stage);
    let once = work.at_once;
    let together = once.together / each;
    let terms = terms(of, &pace, once.people, each);
    let reason = reason.step(
        format!(
            "{name}: {unit} an hour by {} at it at once, people over hours a unit",
            super::super::frames::some(once.people)
        ),
        format!("{} = {}", terms.join(" + "), number(together)),
    );
    let (reason, teaching) = if once.teaching < 1.0 - 1e-9 {
        let good = of.tables.pace.places.students_per_instructor;
        let ratio = good / (once.teaching * once.teaching);
        let reason = reason.step(
            format!(
                "{name}: with {} to each who teaches, this share is left",
                hundredths(ratio)
            ),
            format!(
                "√({} / {}) = {}",
                number(good),
                number(ratio),
                number(once.teaching)
            ),
        );
        (reason, format!(" × {}", number(once.teaching)))
    } else {
        (reason, String::new())
    };
    let hands = percent(of.tables.pace.places.hands_on);
    reason
        .step(
            format!(
                "{name}: hours, for {} {unit}",
                hundredths(work.amount / each)
            ),
            format!(
                "{} / ({}{teaching} × {hands}) = {}",
                number(work.amount / each),
                number(together),
                hundredths(work.hours)
            ),
        )
        .source(format!("{name}: hours a unit"), from)
}

/// The rates of a stage as they hold for this course, and who says so.
fn rates(of: &Of<'_>, stage: &Stage) -> ([f64; 3], String) {
    if let Some(given) = of.course.rates.iter().find(|it| it.stage == stage.id) {
        return (given.hours, "given in the course file".to_owned());
    }
    let PaceTable { rates, .. } = &of.tables.pace;
    let row = rates.iter().find(|it| it.stage == stage.id);
    row.map_or(([1.0; 3], String::new()), |row| {
        (row.hours, row.source.clone())
    })
}

/// `3 / 1.6 + 3.5 / 3.5`: the fastest first, as many as are at it.
fn terms(of: &Of<'_>, hours: &[f64; 3], people: f64, each: f64) -> Vec<String> {
    let students = &of.course.group.students;
    let of_a_kind = |kind| students.iter().filter(|it| it.experience == kind).count();
    let mut rows = [
        (of_a_kind(Experience::Novice), hours[0]),
        (of_a_kind(Experience::Improver), hours[1]),
        (of_a_kind(Experience::Experienced), hours[2]),
    ];
    rows.sort_by(|one, other| one.1.total_cmp(&other.1));
    let mut left = people;
    let mut terms = Vec::new();
    for (count, hours) in rows {
        let at_it = left.min(count as f64);
        left -= at_it;
        if 1e-9 < at_it {
            terms.push(format!("{} / {}", number(at_it), number(hours * each)));
        }
    }
    terms
}
