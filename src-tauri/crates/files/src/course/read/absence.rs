//! Who is away for a day or a part of one.

use super::wishes::known;
use crate::Fault;
use crate::course::node::{Entry, Section};
use chrono::NaiveTime;
use craft::course::{Absence, Day, Student};

/// The absences of these students on these days.
pub(super) fn absences(
    root: &Section<'_>,
    days: &[Day],
    students: &[Student],
) -> Result<Vec<Absence>, Fault> {
    let names: Vec<String> = students
        .iter()
        .map(|student| student.name.clone())
        .collect();
    root.tables("absence")?
        .iter()
        .map(|section| absence(section, days, &names))
        .collect()
}

fn absence(section: &Section<'_>, days: &[Day], names: &[String]) -> Result<Absence, Fault> {
    section.only(&["who", "day", "from", "until"])?;
    let who = known(&section.need("who", "say who is away")?, names)?;
    let entry = section.need("day", "say on which course day, counted from 1")?;
    let (at, day) = course_day(&entry, days)?;
    let time = |key: &str| {
        section
            .get(key)
            .map(|entry| within(&entry, day, at))
            .transpose()
    };
    let (from, until) = (time("from")?, time("until")?);
    if let (Some(from), Some(until), Some(entry)) = (from, until, section.get("until"))
        && until <= from
    {
        return Err(entry.fault(
            "until-before-from",
            &format!("{until} is not after {from}, when they leave"),
            "give a time later than from, or leave it out if they do not come back that day",
        ));
    }
    Ok(Absence {
        who,
        day: at,
        from,
        until,
    })
}

fn course_day<'d>(entry: &Entry<'_>, days: &'d [Day]) -> Result<(usize, &'d Day), Fault> {
    let number = entry.whole(0, u32::MAX)? as usize;
    let found = number
        .checked_sub(1)
        .and_then(|at| days.get(at).map(|day| (at, day)));
    found.ok_or_else(|| {
        let cure = match days.len() {
            1 => "the course has one day: day = 1".to_owned(),
            count => format!("a whole number from 1 to {count}"),
        };
        entry.fault(
            "no-such-day",
            &format!("there is no course day {number}"),
            &cure,
        )
    })
}

fn within(entry: &Entry<'_>, day: &Day, at: usize) -> Result<NaiveTime, Fault> {
    let time = entry.time()?;
    if (day.start..=day.finish).contains(&time) {
        return Ok(time);
    }
    Err(entry.fault(
        "absence-outside-day",
        &format!(
            "{time} is outside day {}, {} to {}",
            at + 1,
            day.start,
            day.finish
        ),
        "give a time within the day's hours, or leave it out",
    ))
}

#[cfg(test)]
mod tests {
    use crate::bare::bare;
    use crate::course::CourseFile;
    use chrono::NaiveTime;

    fn absences(more: &str) -> Result<Vec<craft::course::Absence>, crate::Fault> {
        CourseFile::parse(&format!("{}\n{more}", bare(false))).map(|file| file.course.absences)
    }

    #[test]
    fn absences_are_read_as_typed() {
        let name = &CourseFile::parse(bare(false))
            .expect("sound")
            .course
            .group
            .students[0]
            .name;
        let text = format!(
            "[[absence]]\nwho = \"{name}\"\nday = 2\n[[absence]]\nwho = \"{name}\"\nday = 1\nfrom = 11:00:00\nuntil = 13:00:00\n"
        );
        let given = absences(&text).expect("sound");
        assert_eq!(given.len(), 2);
        assert_eq!(
            (given[0].day, given[0].from, given[0].until),
            (1, None, None)
        );
        let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0);
        assert_eq!((given[1].day, given[1].from), (0, time(11)));
        assert_eq!((&given[1].who, given[1].until), (name, time(13)));
        assert!(absences("").expect("sound").is_empty());
    }
}
