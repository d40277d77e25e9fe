//! terminal.
fn main() {}
