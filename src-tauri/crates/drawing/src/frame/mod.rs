//! One frame put together, and the gauge it is leaned to.

pub(crate) mod assembly;
pub(crate) mod board;
pub(crate) mod checks;
pub(crate) mod gauge;
pub(crate) mod lines;
pub(crate) mod words;
