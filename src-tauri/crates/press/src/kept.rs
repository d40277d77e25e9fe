//! What was worked out of a file the last time, for when the same file comes again.

use std::collections::HashMap;
use std::sync::{Mutex, PoisonError};

use typst::syntax::FileId;

/// For each file name the text it last had and what was worked out of it, so that it does not
/// grow with the changes to a file.
pub(crate) struct Kept<T>(Mutex<HashMap<FileId, (String, T)>>);

impl<T: Clone> Kept<T> {
    pub(crate) fn new() -> Self {
        Self(Mutex::default())
    }

    pub(crate) fn forget(&self) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *all = HashMap::new();
    }

    /// What `work_out` makes of the text of this file, or made of it the last time.
    pub(crate) fn of(&self, id: FileId, text: &str, work_out: impl FnOnce() -> T) -> T {
        let all = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((known, kept)) = all().get(&id)
            && known == text
        {
            return kept.clone();
        }
        // Not under the lock: other files are worked out meanwhile.
        let made = work_out();
        all().insert(id, (text.to_owned(), made.clone()));
        made
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use typst::syntax::{RootedPath, VirtualPath, VirtualRoot};

    #[test]
    fn only_another_text_of_the_same_file_is_worked_out_anew() {
        let file = |name: &str| {
            let path = VirtualPath::new(name).expect("a path");
            RootedPath::new(VirtualRoot::Project, path).intern()
        };
        let (kept, mut times) = (Kept::new(), 0);
        for (name, text, made) in [
            ("a", "one", 1),
            ("a", "one", 1),
            ("b", "one", 2),
            ("a", "two", 3),
            ("b", "one", 2),
            ("a", "one", 4),
        ] {
            let got = kept.of(file(name), text, || {
                times += 1;
                times
            });
            assert_eq!(got, made, "{name} {text}");
        }
    }
}
