//! The example courses that come with the program.

use crate::shelf;

/// An example course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Example {
    /// The name of its file without the ending.
    pub name: &'static str,
    /// Its text.
    pub text: &'static str,
}

impl Example {
    /// What its first lines say it is: the comment at the top, as one text.
    pub fn about(&self) -> String {
        let comment = self.text.lines().map_while(|line| line.strip_prefix('#'));
        comment.map(str::trim).collect::<Vec<_>>().join(" ")
    }
}

/// All examples, by name.
pub fn examples() -> Vec<Example> {
    let mut all: Vec<Example> = shelf::built_in_files("examples")
        .filter_map(|(name, text)| {
            let name = name.strip_suffix(".walling")?;
            Some(Example { name, text })
        })
        .collect();
    all.sort_by_key(|it| it.name);
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::CourseFile;

    #[test]
    fn every_example_is_sound_and_says_what_it_is() {
        let all = examples();
        assert!(3 <= all.len());
        for example in all {
            assert!(CourseFile::parse(example.text).is_ok(), "{}", example.name);
            assert!(example.about().ends_with('.'), "{}", example.name);
        }
    }
}
