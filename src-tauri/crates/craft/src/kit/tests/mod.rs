//! What is counted, held and changed, by hand and by what must hold for every course.

mod always;
mod by_hand;
mod changes;
