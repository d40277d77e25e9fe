//! Walls laid, looked over and measured.

mod by_hand;
mod laid;
mod planted;
mod tied;
mod walls;
