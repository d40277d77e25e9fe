//! What must hold of every course, drawn at random: chances, percentiles, timetables.

mod chances;
mod drawn;
mod timetables;
