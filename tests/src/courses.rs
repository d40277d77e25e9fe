//! Courses to try things on: texts of course files, changed here and there, and their plans.

use documents::Course;
use files::Library;
use files::course::CourseFile;
use serde_json::Value;
use std::sync::OnceLock;

/// A course file of our own with every key in it, so that its lines stay where they are.
pub fn plain() -> String {
    let path = crate::folder("courses").join("plain.walling");
    std::fs::read_to_string(&path).unwrap_or_else(|cause| panic!("{}: {cause}", path.display()))
}

/// The plain course with texts exchanged; each must be there exactly once.
pub fn with(changes: &[(&str, &str)]) -> String {
    changed(plain(), changes)
}

/// A text with parts exchanged; each must be there exactly once.
pub fn changed(mut text: String, changes: &[(&str, &str)]) -> String {
    for (old, new) in changes {
        let times = text.matches(old).count();
        assert_eq!(times, 1, "{old:?} stands {times} times in the course");
        text = text.replacen(old, new, 1);
    }
    text
}

/// The built-in library, read once.
pub fn library() -> &'static Library {
    static LIBRARY: OnceLock<Library> = OnceLock::new();
    LIBRARY.get_or_init(|| Library::built_in().expect("the built-in library is sound"))
}

/// A text as a course file.
pub fn parsed(text: &str) -> CourseFile {
    CourseFile::parse(text).unwrap_or_else(|fault| {
        let refusal = fault.in_file("course", text);
        panic!("{refusal}\n{text}")
    })
}

/// A course made ready to be shown and printed.
pub fn planned(text: &str) -> Course {
    Course::plan(parsed(text), library()).unwrap_or_else(|fault| {
        let refusal = fault.in_file("course", text);
        panic!("{refusal}\n{text}")
    })
}

/// The plan of a course, by the sums' own door.
pub fn plan(text: &str) -> craft::plan::Plan {
    craft::plan::plan(&parsed(text).course, &library().tables)
        .unwrap_or_else(|error| panic!("{error}\n{text}"))
}

/// Every number of a plan, as `plan --json` gives it.
pub fn numbers(text: &str) -> Value {
    let plan = planned(text).numbers();
    serde_json::to_value(plan).expect("a plan is JSON")
}

/// The number at a path such as `/wall/length_m`.
pub fn number(numbers: &Value, path: &str) -> f64 {
    numbers
        .pointer(path)
        .and_then(Value::as_f64)
        .unwrap_or_else(|| panic!("there is no number at {path}"))
}

/// The list at a path.
pub fn list<'n>(numbers: &'n Value, path: &str) -> &'n [Value] {
    numbers
        .pointer(path)
        .and_then(Value::as_array)
        .unwrap_or_else(|| panic!("there is no list at {path}"))
}
