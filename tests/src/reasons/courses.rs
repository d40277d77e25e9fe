//! Courses whose reasons differ: the examples and what can be changed of them, in both units.

use files::Library;
use files::course::set;

/// What is changed of an example, by a name for it.
const CHANGES: [(&str, &[(&str, &str)]); 9] = [
    ("as it is", &[]),
    (
        "a given length",
        &[("wall.length", "7.3 m"), ("pace.chance", "0.6")],
    ),
    (
        "no footing, no cope",
        &[
            ("wall.footing.depth", ""),
            ("wall.footing.outset", ""),
            ("wall.cope_height", "0 m"),
        ],
    ),
    (
        "a plumb face",
        &[("wall.batter.left", "plumb"), ("wall.batter.right", "7.5")],
    ),
    (
        "a large group",
        &[
            ("group.novices", "14"),
            ("group.instructors", "1"),
            ("group.assistants", "1"),
        ],
    ),
    (
        "stone without end",
        &[("stone.on_site", "90 t"), ("stone.voids", "0.275")],
    ),
    (
        "bars too short",
        &[("frames.stock_lengths", "4 ft"), ("frames.bar", "20 mm")],
    ),
    (
        "plenty of frames",
        &[
            ("frames.in_stock", "30"),
            ("frames.spacing_straight", "2 m"),
        ],
    ),
    (
        "short of frames",
        &[("frames.in_stock", "3"), ("frames.leapfrog", "true")],
    ),
];

/// Each course with its name. A change that an example does not take (a roster has no counts) leaves
/// it as it is.
pub(crate) fn courses() -> Vec<(String, String)> {
    let thorn_beck =
        std::fs::read_to_string(checks::root().join("lessons/examples/thorn-beck.walling"));
    let examples = [
        ("hollin-bank", Library::example(false).to_owned()),
        ("quarry-pasture", Library::example(true).to_owned()),
        ("thorn-beck", thorn_beck.expect("the example")),
    ];
    let mut all = vec![("plain".to_owned(), checks::courses::plain())];
    for (example, text) in examples {
        for (name, changes) in CHANGES {
            let changed = changes.iter().fold(text.clone(), |text, (key, value)| {
                set(&text, key, value).unwrap_or(text)
            });
            for units in ["metric", "imperial"] {
                let text = set(&changed, "units", units).expect("units");
                all.push((format!("{example}, {name}, {units}"), text));
            }
        }
    }
    all
}
