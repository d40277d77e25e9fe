//! Why a figure is what it is: each line of each sum is worked out again from the figures in it.

#[path = "reasons/courses.rs"]
mod courses;
#[path = "reasons/shown.rs"]
mod shown;
#[path = "reasons/sum.rs"]
mod sum;

use checks::courses::planned;
use courses::courses;
use shapes::written::Reason;
use sum::check;

/// Every line of every reason of every course, in both systems of units.
#[test]
fn every_sum_comes_out_as_it_stands() {
    let (mut lines, mut wrong) = (0, Vec::new());
    for (name, text) in courses() {
        for reason in documents::reasons(&planned(&text)) {
            for step in &reason.steps {
                lines += 1;
                if let Err(why) = check(&step.line) {
                    wrong.push(format!(
                        "{name}, {}: {}\n  {}\n  {why}",
                        reason.id, step.what, step.line
                    ));
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {lines}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(800 < lines, "only {lines} lines");
}

/// A reason begins with the answer and says what it rests on.
#[test]
fn every_reason_is_whole() {
    for (name, text) in courses() {
        let course = planned(&text);
        let reasons = documents::reasons(&course);
        let mut ids: Vec<&str> = reasons.iter().map(|it| it.id.as_str()).collect();
        for due in [
            "length",
            "chance",
            "hours",
            "base-width",
            "strings",
            "volumes",
            "frames",
            "offsets",
            "built",
            "order",
            "hearting",
            "students-per-instructor",
            "lift",
            "water",
        ] {
            assert!(ids.contains(&due), "{name}: nothing of {due}");
        }
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(
            ids.len(),
            reasons.len(),
            "{name}: a figure with two reasons"
        );
        for Reason {
            id,
            title,
            figure,
            sentences,
            steps,
            sources,
        } in &reasons
        {
            assert!(
                !title.is_empty() && !figure.is_empty() && !sentences.is_empty(),
                "{name}, {id}"
            );
            let whole = |it: &String| it.ends_with(['.', '?']) && !it.contains("..");
            assert!(sentences.iter().all(whole), "{name}, {id}: {sentences:?}");
            let rests = !sources.is_empty() || sentences[0].starts_with("Nothing");
            assert!(rests, "{name}, {id} rests on nothing");
            assert!(
                sources
                    .iter()
                    .all(|it| !it.what.is_empty() && !it.source.is_empty()),
                "{name}, {id}"
            );
            assert!(
                !steps.is_empty() || ["order", "order-by", "lift"].contains(&id.as_str()),
                "{name}, {id}"
            );
        }
        let figure = |id: &str| {
            reasons
                .iter()
                .find(|it| it.id == id)
                .map(|it| it.figure.clone())
        };
        let written = &course.written;
        for (id, shown) in [
            ("length", written.wall.length.clone()),
            ("chance", written.chance.chance.clone()),
            ("base-width", written.wall.base_width.clone()),
            ("frames", written.frames.count.to_string()),
            ("order", written.stone.high.clone()),
            ("built", written.stone.built.clone()),
        ] {
            assert_eq!(
                figure(id),
                Some(shown),
                "{name}: {id} says another figure than the plan"
            );
        }
    }
}
