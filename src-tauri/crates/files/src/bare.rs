//! The example courses without vehicles, money and marks, for tests that add these.

use crate::Library;
use std::sync::LazyLock;

static METRIC: LazyLock<String> = LazyLock::new(|| without(Library::example(false)));
static IMPERIAL: LazyLock<String> = LazyLock::new(|| without(Library::example(true)));

/// An example course up to its vehicles, and from its pace on.
pub(crate) fn bare(imperial: bool) -> &'static str {
    if imperial { &IMPERIAL } else { &METRIC }
}

fn without(example: &str) -> String {
    let (before, rest) = example.split_once("[[vehicle]]").expect("vehicles");
    let (_, after) = rest.split_once("[pace]").expect("pace");
    format!("{before}[pace]{after}")
}
