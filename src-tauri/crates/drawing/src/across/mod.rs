//! The wall cut across: its section, and the section with letters in place of figures.

pub(crate) mod bank;
pub(crate) mod cut;
pub(crate) mod cut_stones;
pub(crate) mod parts;
pub(crate) mod section;
pub(crate) mod section_handles;
pub(crate) mod section_widths;
pub(crate) mod section_words;
pub(crate) mod timber;
