//! What the papers of the office must say: people, places, hours and what is likely to happen.

use craft::people::Attended;
use documents::Course;
use shapes::written::{Coordinates, lasts};

/// The names of those whose own pages these are; none are printed where nobody is named.
fn named(course: &Course) -> Vec<String> {
    let students = course.file.course.group.students.iter();
    let named = students.filter(|_| course.file.roster);
    named.map(|student| student.name.clone()).collect()
}

fn place(course: &Course) -> [String; 4] {
    let venue = &course.file.course.venue;
    let it = Coordinates::of(venue.latitude, venue.longitude);
    [it.latitude, it.longitude, it.latitude_dms, it.longitude_dms]
}

pub(super) fn joining_letter(course: &Course) -> Vec<String> {
    let written = &course.written;
    let mut words = named(course);
    words.extend(place(course));
    words.push(course.file.emergency.access.clone());
    for day in &written.days {
        words.extend([&day.date, &day.start, &day.finish].map(Clone::clone));
        let breaks = day.entries.iter().filter(|it| it.kind == "break");
        words.extend(breaks.flat_map(|it| [it.what.clone(), it.start.clone()]));
    }
    let wall = &written.wall;
    words.extend([&wall.length, &wall.height, &written.stone.built].map(Clone::clone));
    words.extend(["Boots", "toilet", "Under 18", "in confidence", "Telephone"].map(str::to_owned));
    words
}

pub(super) fn fitness_declaration(course: &Course) -> Vec<String> {
    let mut words = named(course);
    let stones = &course.written.lifting.stones;
    words.extend(stones.iter().map(|it| it.mass.clone()));
    let due = [
        "Kneeling",
        "Under 18",
        "Destroyed on",
        "no legal advice",
        "Signed",
    ];
    words.extend(due.map(str::to_owned));
    words
}

pub(super) fn register(course: &Course) -> Vec<String> {
    let mut words = named(course);
    for day in &course.written.days {
        words.extend([&day.date, &day.start, &day.finish].map(Clone::clone));
    }
    let sizes = course.file.course.group.students.iter();
    words.extend(sizes.filter_map(|it| it.gloves.map(|size| size.word().to_owned())));
    let away = course.written.running.people.iter();
    words.extend(away.flat_map(|day| day.away.iter().cloned()));
    words.extend(["Signature", "In", "Out"].map(str::to_owned));
    words
}

pub(super) fn attendance_slip(course: &Course) -> Vec<String> {
    let mut words = vec!["no qualification".to_owned(), "Instructor".to_owned()];
    for student in &course.file.course.group.students {
        let there = Attended::of(&course.file.course, student);
        if there.days().is_empty() {
            continue;
        }
        if course.file.roster {
            words.push(student.name.clone());
        }
        words.push(lasts(there.taught_minutes(&course.plan.timetable)));
    }
    words
}

pub(super) fn feedback_sheet(course: &Course) -> Vec<String> {
    let lessons = course.written.days.iter().flat_map(|day| &day.entries);
    let lessons = lessons.filter(|it| it.kind == "lesson");
    let mut words: Vec<String> = lessons.map(|it| it.what.clone()).collect();
    // Whoever is alone is not asked about partner and neighbours.
    let questions = match course.file.course.group.students.len() {
        1 => "9",
        _ => "10",
    };
    words.extend(["No name", "safe", questions].map(str::to_owned));
    words
}

pub(super) fn emergency_sheet(course: &Course) -> Vec<String> {
    let country = course.file.course.venue.country.as_deref();
    let mut words: Vec<String> = place(course).to_vec();
    words.extend(course.library.emergency(country).map(str::to_owned));
    let said = &course.file.emergency;
    words.extend(
        [
            &said.first_aider,
            &said.first_aid_kit,
            &said.hospital,
            &said.access,
            &said.meeting_point,
            &said.signal,
        ]
        .map(Clone::clone),
    );
    let injuries = course.library.first_aid.iter();
    words.extend(injuries.flat_map(|it| [it.name.clone(), it.source.clone()]));
    words
}

pub(super) fn contacts_sheet(course: &Course) -> Vec<String> {
    let mut words: Vec<String> = course
        .file
        .course
        .group
        .students
        .iter()
        .map(|it| it.name.clone())
        .collect();
    for notes in &course.file.private {
        words.extend([notes.emergency_contact.clone(), notes.medical.clone()]);
    }
    words.extend(["PRIVATE", "Destroyed on"].map(str::to_owned));
    words
}
