//! What the programs are built from and under which terms: every library with the text of its
//! licence, as its authors wrote it.

use crate::run::{cargo, heard, top};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// What of the window's libraries is part of its pages; the others only build and check them.
const IN_THE_PAGES: [&str; 4] = ["svelte", "clsx", "esm-env", "@tauri-apps/api"];

/// A library that is part of the programs.
struct Library {
    /// Name and version.
    name: String,
    /// Its terms, in its authors' words.
    terms: String,
    /// Where it is kept.
    place: String,
    /// The folder of its sources on this machine.
    folder: PathBuf,
}

/// The whole text, with the licences of the fonts at its end.
pub(crate) fn all(fonts: &str) -> Result<String, String> {
    let mut libraries = crates()?;
    libraries.extend(pages());
    let mut texts: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    let mut without = Vec::new();
    for library in &libraries {
        let found = licences_of(library);
        if found.is_empty() {
            without.push(format!("  {}: {}\n", library.name, library.terms));
        }
        for text in found {
            texts.entry(text).or_default().insert(&library.name);
        }
    }
    let mut all = String::from("What the programs of Coursewright are built from\n\n");
    for library in &libraries {
        all.push_str(&format!(
            "{}: {}, {}\n",
            library.name, library.terms, library.place
        ));
    }
    all.push_str(
        "\nand the standard library of Rust: MIT OR Apache-2.0, https://github.com/rust-lang/rust\n\
         and SQLite, in libsqlite3-sys: in the public domain, https://sqlite.org\n\n\
         These came without a text of their own; those of the licences they name stand below,\n\
         with the names of others:\n",
    );
    all.push_str(&without.concat());
    for (text, names) in &texts {
        let names: Vec<&str> = names.iter().copied().collect();
        all.push_str(&format!("\n\n======== {}\n\n{text}\n", names.join(", ")));
    }
    all.push_str(&format!("\n\n======== The fonts\n\n{fonts}\n"));
    Ok(all)
}

/// The crates that are linked into either program.
fn crates() -> Result<Vec<Library>, String> {
    let unpacked = unpacked()?;
    let mut ask = cargo(&["tree", "--offline", "--prefix", "none", "--edges"]);
    ask.args(["normal,no-proc-macro", "--format", "{p}|{l}|{r}"]);
    ask.args(["--package", "terminal", "--package", "coursewright-desktop"]);
    let said = heard(&mut ask)?;
    let lines: BTreeSet<&str> = said.lines().map(|it| it.trim_end_matches(" (*)")).collect();
    let mut found = Vec::new();
    for line in lines {
        let mut cells = line.split('|');
        let (package, terms, place) = (cells.next(), cells.next(), cells.next());
        // Our own stand with their folder.
        let Some(package) = package.filter(|it| !it.is_empty() && !it.contains('(')) else {
            continue;
        };
        let name = package.replacen(" v", "-", 1);
        let mut folders = unpacked.iter().map(|it| it.join(&name));
        let folder = folders.find(|it| it.is_dir()).ok_or_else(|| {
            format!("{package}: where its sources are is not known, so neither is its licence")
        })?;
        found.push(Library {
            name: package.to_owned(),
            terms: terms.unwrap_or_default().to_owned(),
            place: place.unwrap_or_default().to_owned(),
            folder,
        });
    }
    Ok(found)
}

/// Where cargo keeps what it has unpacked, one folder for each place that crates come from.
fn unpacked() -> Result<Vec<PathBuf>, String> {
    let home = std::env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| Some(Path::new(&std::env::var_os("HOME")?).join(".cargo")))
        .ok_or("where cargo keeps its crates is not known: set CARGO_HOME")?;
    let all = home.join("registry/src");
    let entries = fs::read_dir(&all).map_err(|wrong| format!("{}: {wrong}", all.display()))?;
    Ok(entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .collect())
}

/// The libraries in the window's pages.
fn pages() -> Vec<Library> {
    let library = |name: &&str| {
        let folder = top().join("ui/node_modules").join(name);
        let about = fs::read_to_string(folder.join("package.json")).unwrap_or_default();
        Library {
            name: format!("{name} v{}", value(&about, "version")),
            terms: value(&about, "license"),
            place: format!("https://www.npmjs.com/package/{name}"),
            folder,
        }
    };
    IN_THE_PAGES.iter().map(library).collect()
}

/// A text of a JSON object, by its key.
fn value(json: &str, key: &str) -> String {
    let rest = json.split(&format!("\"{key}\": \"")).nth(1);
    let text = rest.and_then(|rest| rest.split('"').next());
    text.unwrap_or("unknown").to_owned()
}

/// The texts of the licences of a library; where it brings one in another language along, as those
/// named `-sys` do, that one's as well, which stand a folder further down.
fn licences_of(library: &Library) -> Vec<String> {
    let mut texts = licences_in(&library.folder);
    let brings_another = library.name.contains("-sys v");
    if let Some(inside) = fs::read_dir(&library.folder)
        .ok()
        .filter(|_| brings_another)
    {
        let folders = inside.filter_map(|entry| Some(entry.ok()?.path()));
        let mut folders: Vec<PathBuf> = folders.filter(|it| it.is_dir()).collect();
        folders.sort();
        texts.extend(folders.iter().flat_map(|it| licences_in(it)));
    }
    texts
}

/// The texts of the licences in a folder, each with its lines' ends made alike.
fn licences_in(folder: &Path) -> Vec<String> {
    let Ok(entries) = fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut files: Vec<PathBuf> = entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| is_licence(path))
        .collect();
    files.sort();
    let texts = files.iter().filter_map(|it| fs::read_to_string(it).ok());
    texts
        .map(|text| text.replace("\r\n", "\n").trim().to_owned())
        .filter(|text| !text.is_empty())
        .collect()
}

fn is_licence(path: &Path) -> bool {
    const STARTS: [&str; 8] = [
        "licen",
        "copying",
        "copyright",
        "notice",
        "unlicense",
        "mpl-",
        "lgpl-",
        "apache",
    ];
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let name = name.to_lowercase();
    path.is_file() && STARTS.iter().any(|start| name.starts_with(start))
}
