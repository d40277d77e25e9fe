//! What the instructor keeps in order: what is not ready, by date, and the money.

use super::Feed;
use crate::Course;
use serde_json::{Value, json};
use shapes::written::{GroupRow, Money, ToDo};

/// Up to so many sizes of group all of them are printed.
const ALL_SIZES: usize = 20;

/// So near to the group of this course every size is printed.
const NEAR: usize = 3;

/// The list of what there is to see to, a group for each date.
pub(crate) fn ready_list(course: &Course) -> Feed<'_> {
    let list = &course.written.to_do;
    let mut dates: Vec<(&str, Vec<&ToDo>)> = Vec::new();
    for it in list {
        match dates.last_mut().filter(|(date, _)| *date == it.date) {
            Some((_, lines)) => lines.push(it),
            None => dates.push((&it.date, vec![it])),
        }
    }
    let groups: Vec<Value> = dates
        .iter()
        .map(|(_, lines)| {
            let by = lines.first().map_or("", |it| it.by.as_str());
            json!({ "by": by, "when": when(course, lines), "lines": lines })
        })
        .collect();
    let count = |which: fn(&&ToDo) -> bool| list.iter().filter(which).count();
    let own = json!({
        "groups": groups,
        "open": count(|it| it.counts),
        "reminders": count(|it| !it.counts && !it.done),
        "done": count(|it| it.done),
        "keeps_a_list": course.file.course.ready.is_some(),
        "first_day": course.written.days.first().map(|day| day.date.clone()),
    });
    Feed::new(course, own)
}

/// How long before or after the course a date is: `3 days before the course`.
fn when(course: &Course, lines: &[&ToDo]) -> String {
    let days = &course.file.course.days;
    let id = lines.first().map_or("", |it| it.id.as_str());
    let by = course.plan.to_do.iter().find(|it| it.id == id);
    let (Some(by), Some(first), Some(last)) = (by.and_then(|it| it.by), days.first(), days.last())
    else {
        return String::new();
    };
    let (before, after) = ((first.date - by).num_days(), (by - last.date).num_days());
    match (before, after) {
        (1, _) => "the evening before the course".to_owned(),
        (14.., _) if before % 7 == 0 => format!("{} weeks before the course", before / 7),
        (1.., _) => format!("{before} days before the course"),
        (_, 1) => "the day after the course".to_owned(),
        (_, 1..) => format!("{after} days after the course"),
        (_, 0) => "the last day of the course".to_owned(),
        (0, _) => "the first day of the course".to_owned(),
        _ => "during the course".to_owned(),
    }
}

/// What the course costs and takes; without prices, how to give them.
pub(crate) fn money_sheet(course: &Course) -> Feed<'_> {
    let students = course.file.course.group.students.len();
    let money = course.written.money.as_ref();
    let own = json!({
        "money": money,
        "sizes": money.map(|money| sizes(money, students)),
        "students": students,
        "auto_length": course.file.course.wall.length.is_none(),
    });
    Feed::new(course, own)
}

/// The sizes of group to print: all where they are few; else those near the group of this
/// course and every fifth.
fn sizes(money: &Money, students: usize) -> Vec<&GroupRow> {
    let few = money.by_size.len() <= ALL_SIZES;
    let rows = money.by_size.iter();
    rows.filter(|row| {
        few || row.students.abs_diff(students) <= NEAR || row.students.is_multiple_of(5)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    /// The metric example with more of it: 23 to 25 April 2027, eight students.
    fn course(change: impl Fn(String) -> String) -> Course {
        let text = change(crate::feed::bare_example());
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        Course::plan(file, &library).expect("a plan")
    }

    #[test]
    fn everything_stands_once_under_its_date() {
        let course = course(|text| text + "[ready]\ndone = [\"permission\"]\n");
        let data = ready_list(&course).data;
        let groups = data["groups"].as_array().expect("groups");
        let lines: Vec<&Value> = groups
            .iter()
            .flat_map(|group| group["lines"].as_array().expect("lines"))
            .collect();
        let ids: Vec<&str> = lines.iter().filter_map(|it| it["id"].as_str()).collect();
        let due: Vec<&str> = course.plan.to_do.iter().map(|it| it.id.as_str()).collect();
        assert_eq!(ids, due);
        for group in groups {
            for line in group["lines"].as_array().expect("lines") {
                assert_eq!(line["by"], group["by"]);
            }
        }
        assert_eq!(data["done"], 1);
        let count = |key: &str| data[key].as_u64().expect("a count");
        let all = count("open") + count("reminders") + count("done");
        assert_eq!(all, due.len() as u64);
    }

    /// By a calendar: 12 March and 8 April 2027 are six weeks and 15 days before 23 April.
    #[test]
    fn dates_are_told_from_the_course() {
        let data = ready_list(&course(|text| text)).data;
        let groups = data["groups"].as_array().expect("groups");
        for (by, when) in [
            ("Fri 12 March 2027", "6 weeks before the course"),
            ("Thu 8 April 2027", "15 days before the course"),
            ("Fri 16 April 2027", "7 days before the course"),
            ("Thu 22 April 2027", "the evening before the course"),
            ("Sun 25 April 2027", "the last day of the course"),
            ("Mon 26 April 2027", "the day after the course"),
        ] {
            let group = groups.iter().find(|group| group["by"] == by);
            assert_eq!(group.map(|it| &it["when"]), Some(&json!(when)), "{by}");
        }
    }

    #[test]
    fn many_sizes_of_group_are_thinned_out_and_few_are_not() {
        let sizes = |students: &str| -> Vec<u64> {
            let course = course(|text| {
                text.replace("novices = 6", &format!("novices = {students}"))
                    + "[money]\nfee = 150\nvenue = 900\n"
            });
            let data = money_sheet(&course).data;
            let rows = data["sizes"].as_array().expect("sizes");
            rows.iter()
                .filter_map(|row| row["students"].as_u64())
                .collect()
        };
        assert_eq!(sizes("6"), (1..=16).collect::<Vec<_>>());
        let many = sizes("38");
        assert_eq!(&many[..7], [5, 10, 15, 20, 25, 30, 35]);
        assert_eq!(&many[7..14], [37, 38, 39, 40, 41, 42, 43]);
        assert_eq!(many.last(), Some(&80));
    }

    #[test]
    fn money_is_wanted_only_where_there_is_any() {
        let sheet = crate::named("money-sheet").expect("a sheet");
        assert!(!sheet.wanted(&course(|text| text)));
        assert!(sheet.wanted(&course(|text| text + "[money]\nfee = 150\n")));
        let all = crate::wanted(&course(|text| text)).len();
        let private = crate::DOCUMENTS.iter().filter(|it| it.is_private()).count();
        assert_eq!(all + private + 1, crate::DOCUMENTS.len());
    }
}
