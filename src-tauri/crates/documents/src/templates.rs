//! Which templates a document is made with, and which of those are the instructor's own.

use crate::{Course, spelling};
use files::Library;
use files::course::Language;
use std::borrow::Cow;

/// The templates of one document.
pub(crate) struct Templates<'a> {
    /// File name and text of all there are: the instructor's own, else the built-in ones in the
    /// spelling of the course.
    pub(crate) all: Vec<(&'a str, Cow<'a, str>)>,
    /// The names of the instructor's own that this document may be made with.
    pub(crate) own: Vec<&'a str>,
    language: Language,
}

/// A built-in template's words are the program's own. No key of what it is fed, and no name of
/// the typesetter, is a British word.
fn in_language(text: &str, language: Language) -> Cow<'_, str> {
    match language {
        Language::EnGb => Cow::Borrowed(text),
        Language::EnUs => Cow::Owned(spelling::text(text, language)),
    }
}

/// Names and texts as the press takes them.
pub(crate) fn sources<'a>(all: &'a [(&'a str, Cow<'_, str>)]) -> Vec<(&'a str, &'a str)> {
    let text = |(name, text): &'a (&'a str, Cow<'_, str>)| (*name, text.as_ref());
    all.iter().map(text).collect()
}

impl<'a> Templates<'a> {
    /// The templates of a document whose main one is `main`.
    pub(crate) fn of(course: &'a Course, main: &str) -> Self {
        let all: Vec<(&str, &str)> = course
            .library
            .pages
            .iter()
            .map(|(name, text)| (name.as_str(), text.as_str()))
            .collect();
        let own = reached(&all, main)
            .into_iter()
            .filter(|(name, text)| Library::built_in_page(name) != Some(text))
            .map(|(name, _)| name)
            .collect();
        let language = course.file.language;
        let spelled = |(name, text)| match Library::built_in_page(name) {
            Some(built_in) if built_in == text => (name, in_language(text, language)),
            _ => (name, Cow::Borrowed(text)),
        };
        let all = all.into_iter().map(spelled).collect();
        Self { all, own, language }
    }

    /// The built-in ones alone, in the spelling of the course.
    pub(crate) fn built_in(&self) -> Vec<(&'a str, Cow<'static, str>)> {
        let names = self.all.iter().map(|(name, _)| *name);
        let built_in = names.filter_map(|name| Some((name, Library::built_in_page(name)?)));
        let spelled = built_in.map(|(name, text)| (name, in_language(text, self.language)));
        spelled.collect()
    }
}

/// The main template and all that it may import, and those that they may, and so on. A name
/// that stands anywhere in a text counts as imported: one too many does no harm.
fn reached<'a>(all: &[(&'a str, &'a str)], main: &str) -> Vec<(&'a str, &'a str)> {
    let mut reached: Vec<(&str, &str)> = Vec::new();
    let mut open: Vec<&str> = vec![main];
    while let Some(name) = open.pop() {
        if reached.iter().any(|(known, _)| *known == name) {
            continue;
        }
        if let Some(it) = all.iter().find(|(known, _)| *known == name) {
            reached.push(*it);
            let named = all.iter().map(|(other, _)| *other);
            open.extend(named.filter(|other| names(it.1, other)));
        }
    }
    reached
}

/// Whether a text names a template: a file beside it, or one of a folder whose files it picks by
/// a name worked out.
fn names(text: &str, template: &str) -> bool {
    match template.rsplit_once('/') {
        Some((folder, file)) => text.contains(file) || text.contains(&format!("\"{folder}/\"")),
        None => text.contains(template),
    }
}

#[cfg(test)]
mod tests {
    use super::reached;

    #[test]
    fn what_is_imported_by_what_is_imported_counts_and_nothing_else_does() {
        let all = [
            ("a.typ", "#import \"b.typ\": *"),
            ("b.typ", "#include \"./c.typ\" // and a.typ again"),
            ("c.typ", ""),
            ("d.typ", "#import \"a.typ\": *"),
            ("e.typ", "#import \"drawn/\" + name + \".typ\": it"),
            ("drawn/f.typ", "#import \"g.typ\": *"),
            ("drawn/g.typ", ""),
        ];
        let names = |main: &str| -> Vec<&str> {
            let mut names: Vec<&str> = reached(&all, main).iter().map(|it| it.0).collect();
            names.sort_unstable();
            names
        };
        assert_eq!(names("a.typ"), ["a.typ", "b.typ", "c.typ"]);
        assert_eq!(names("c.typ"), ["c.typ"]);
        assert_eq!(names("e.typ"), ["drawn/f.typ", "drawn/g.typ", "e.typ"]);
        assert_eq!(names("none.typ"), [""; 0]);
    }
}
