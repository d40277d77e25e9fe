//! xtask.
fn main() {}
