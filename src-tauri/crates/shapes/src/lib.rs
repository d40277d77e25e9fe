//! The one place where a plan becomes JSON: for the terminal, the pages and the window.
//!
//! - [`plan`]: every number of a plan in SI, unrounded, unit in the name
//! - [`written`]: the same figures as a person reads them, rounded in one place
//! - [`window`]: what the desktop program and its window say to each other
//! - [`bindings`]: all of it as TypeScript

pub mod bindings;
mod clock;
pub mod plan;
pub mod window;
mod words;
pub mod written;

pub use clock::{Clock, DateStyle};
pub use words::left_safe;
