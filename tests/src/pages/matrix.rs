//! The courses every document is printed for.

use checks::courses::with;
use files::Library;

/// Names that would be code, marks or trouble if they were not printed as typed.
pub(crate) const ODD_NAMES: [&str; 8] = [
    "#read(\"/etc/passwd\")",
    "* _ $ @ref <label> \\ ~ --",
    "Zoë O'Brien-\"Wall\"",
    "Αλέξανδρος Πέτρου",
    "Жанна Каменева",
    "// not a comment /* nor this */",
    "[brackets] {braces} `ticks`",
    "#set page(fill: black)",
];

/// Each with a name that says what it tries.
pub(crate) fn courses() -> Vec<(&'static str, String)> {
    let one = [
        ("novices = 6", "novices = 0"),
        ("improvers = 2", "improvers = 1"),
    ];
    let many = [("novices = 6", "novices = 38")];
    vec![
        ("the metric example", Library::example(false).to_owned()),
        ("the imperial example", Library::example(true).to_owned()),
        ("one student", with(&one)),
        ("forty students", with(&many)),
        ("odd names", with_odd_names()),
        ("a bare wall", bare()),
    ]
}

/// A roster of odd names, one of them four hundred letters long.
pub(crate) fn with_odd_names() -> String {
    let long = "Long ".repeat(80);
    let mut text = with(&[
        ("novices = 6", "novices = 0"),
        ("improvers = 2", "improvers = 0"),
    ]);
    for name in ODD_NAMES.iter().copied().chain([long.as_str()]) {
        text.push_str(&format!("\n[[student]]\nname = {}\n", quoted(name)));
    }
    text
}

/// A name as TOML writes it.
fn quoted(name: &str) -> String {
    format!("\"{}\"", name.replace('\\', "\\\\").replace('"', "\\\""))
}

/// No cope, no footing, no throughs, plumb, fewer frames than stations, no bar long enough.
fn bare() -> String {
    let drop = |key: &str, text: &str| -> String {
        let keep = |line: &&str| !line.starts_with(key);
        text.lines().filter(keep).collect::<Vec<_>>().join("\n")
    };
    let mut text = Library::example(false).to_owned();
    for key in [
        "cope_height",
        "footing",
        "through_rows",
        "country",
        "longest_wall",
        "load",
    ] {
        text = drop(key, &text);
    }
    text.replace("batter = 8", "batter = \"plumb\"")
        .replace("in_stock = 6", "in_stock = 3")
        .replace("leapfrog = false", "leapfrog = true")
        .replace("length = \"auto\"", "length = \"20 m\"")
        .replace("\"5 ft\", \"6 ft\", \"8 ft\"", "\"3 ft\"")
}
