//! What is installed: icons, file type, manual, completions, the Debian package, and what the
//! window is allowed.

#[path = "package/allowed.rs"]
mod allowed;
#[path = "package/deb.rs"]
mod deb;
#[path = "package/icons.rs"]
mod icons;
#[path = "package/manual.rs"]
mod manual;
#[path = "package/settings.rs"]
mod settings;

use checks::root;
use std::path::{Path, PathBuf};

/// A file of the desktop program.
fn desktop(name: &str) -> PathBuf {
    root().join("src-tauri").join(name)
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|cause| panic!("{}: {cause}", path.display()))
}

fn json(name: &str) -> serde_json::Value {
    let path = desktop(name);
    serde_json::from_str(&read(&path)).unwrap_or_else(|cause| panic!("{}: {cause}", path.display()))
}
