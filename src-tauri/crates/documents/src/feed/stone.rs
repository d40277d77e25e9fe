//! What stone is ordered: by when, in how many loads, of which kinds, and what that rests on.

use super::Feed;
use crate::Course;
use crate::drawings::Drawings;
use serde_json::{Value, json};
use shapes::written::Delivery;

pub(crate) fn stone_order(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let of = |what: &str| written.deliveries.iter().find(|it| it.what == what);
    let bank = written.retaining.as_ref();
    let drainage = bank.zip(of("drainage stone")).map(|(bank, delivery)| {
        json!({ "delivery": delivery, "loose": bank.backfill, "thick": bank.drainage })
    });
    let own = json!({
        "stone": written.stone,
        "wall": written.wall,
        "delivery": of("wall stone"),
        "drainage": drainage,
        "practice_pitch": course.plan.stone.practice_pitch,
        "first_day": written.days.first().map(|day| day.date.clone()).unwrap_or_default(),
        "lead": lead(course, &written.deliveries),
        "heaps": written.heaps,
    });
    let drawings = Drawings::on_paper(course);
    let heap_plan = move || drawings.heap_plan_in_parts();
    Feed::new(course, own).with_parts(
        "heap-plan.svg",
        "heap_plan_words",
        "heap_plan_more",
        heap_plan,
    )
}

/// How many working days ahead stone is ordered, and who says so; null if none is.
fn lead(course: &Course, deliveries: &[Delivery]) -> Value {
    if deliveries.is_empty() {
        return Value::Null;
    }
    let table = &course.library.tables.stone;
    let given = course.file.course.stone.lead_days;
    json!({
        "days": given.unwrap_or(table.lead_days),
        "source": match given {
            Some(_) => "as this course says",
            None => table.lead_source.as_str(),
        },
        "closed": course.file.course.stone.closed.len(),
    })
}
