//! Walls laid, looked over and measured.

mod by_hand;
mod laid;
mod planted;
mod walls;
