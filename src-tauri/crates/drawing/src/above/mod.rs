//! The ground from above: the line as it lies, the heaps beside it, and the setting-out
//! straightened along it.

pub(crate) mod ground_edge;
pub(crate) mod ground_view;
pub(crate) mod heap_ends;
pub(crate) mod heap_key;
pub(crate) mod heap_measured;
pub(crate) mod heap_plan;
pub(crate) mod heap_stones;
pub(crate) mod heap_told;
pub(crate) mod heap_view;
pub(crate) mod heap_words;
pub(crate) mod line_plan;
pub(crate) mod line_words;
pub(crate) mod pegs;
pub(crate) mod pitch;
pub(crate) mod pitch_rows;
pub(crate) mod pitch_words;
pub(crate) mod plan_words;
pub(crate) mod setting_out;
pub(crate) mod taped;
