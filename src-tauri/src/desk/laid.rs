//! A course put on the desk that no file holds yet: an example, or one that was just made.

use super::{Asked, Desk, Error, History, Memory, planned};

/// What the disk holds of a course that was made and never saved: nothing.
const NOTHING: &str = "";

impl Desk {
    /// Puts a course on the desk that was just made; not to save it is to lose it.
    pub(crate) fn lay_new(&mut self, text: String) -> Result<(), Error> {
        self.lay(text, Some(NOTHING.to_owned()))
    }

    /// Puts an example on the desk; as long as nobody changes it there is nothing to lose.
    pub(crate) fn lay_example(&mut self, text: &str) -> Result<(), Error> {
        self.lay(text.to_owned(), None)
    }

    /// What is told in place of a file's name where there is none.
    pub(super) fn unnamed(&self) -> &'static str {
        match self.on_disk {
            None => "example, not yet saved",
            Some(_) => "not yet saved",
        }
    }

    fn lay(&mut self, text: String, on_disk: Option<String>) -> Result<(), Error> {
        let kit = self.kit.as_ref().ok();
        let mut memory = Memory::default();
        let course = planned(&text, &self.library, kit, None, Asked::Advice, &mut memory)?;
        self.path = None;
        self.on_disk = on_disk;
        self.history = History::new(text);
        self.before = course.written.clone();
        self.course = course;
        self.memory = memory;
        self.moved.clear();
        self.ahead.forget();
        self.print_folder = None;
        self.printed = None;
        Ok(())
    }
}
