//! Has the built-in copy of `lessons/` made anew when a file is added there.

fn main() {
    println!("cargo:rerun-if-changed=../../../lessons");
}
