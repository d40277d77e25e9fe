//! What protects people at work, as far as this course carries it.

use crate::Course;
use serde_json::{Value, json};

/// Which kinds of protective gear are on the tool list. The rule is known by its words, so that
/// an instructor's own counts as well.
pub(super) fn protection(course: &Course) -> Value {
    let lines = &course.written.kit.lines;
    let listed = |words: &[&str]| {
        lines.iter().any(|line| {
            let rule = line.rule.to_lowercase();
            words.iter().any(|word| rule.contains(word))
        })
    };
    json!({
        "gloves": listed(&["glove"]),
        "eyes": listed(&["eye protection", "goggles", "safety glasses"]),
        "ears": listed(&["ear protection", "ear defender", "ear muff"]),
        "head": listed(&["helmet", "hard hat"]),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    fn of(more: &str) -> Value {
        let text = crate::feed::bare_example() + more;
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        protection(&Course::plan(file, &library).expect("a plan"))
    }

    #[test]
    fn gear_is_issued_where_it_is_carried() {
        let usual = json!({ "gloves": true, "eyes": true, "ears": true, "head": false });
        assert_eq!(of(""), usual);
        let own = "[[kit.rule]]\nitem = \"Climbing helmet\"\nper = \"student\"\neach = 1\n\
                   [[kit.rule]]\nitem = \"Ear protection\"\noff = true\n";
        let changed = json!({ "gloves": true, "eyes": true, "ears": false, "head": true });
        assert_eq!(of(own), changed);
    }
}
