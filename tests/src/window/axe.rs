//! Every place in every look and size against the rules of WCAG 2.2 AA, by axe-core in the real
//! window.

use super::hands::Seen;
use super::open_example;
use std::fs;

/// The rules for everyone, as axe-core names them.
const RULES: &str = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']";

/// Sizes and text: what is used at a desk, the smallest laptop, and there with large text.
const SIZES: [((u32, u32), &str); 3] = [
    ((1280, 800), ""),
    ((1024, 640), ""),
    ((1024, 640), "largest"),
];

/// Runs the rules on what is shown; one line for each part that breaks one.
fn script(colours: bool) -> String {
    format!(
        "const done = arguments[arguments.length - 1];\
         axe.run(document, {{ runOnly: {{ type: 'tag', values: {RULES} }}, preload: false,\
           resultTypes: ['violations'], rules: {{ 'color-contrast': {{ enabled: {colours} }} }} }})\
         .then(({{ violations, passes }}) => done(violations.flatMap(({{ id, help, nodes }}) =>\
           nodes.map(({{ target, failureSummary }}) =>\
             `${{id}} (${{help}}): ${{target.join(' ')}}: ${{failureSummary}}`)).join('\\n')\
           || `${{passes.length > 8 ? '' : 'hardly a rule was tried'}}`),\
         (wrong) => done(`axe: ${{wrong}}`))"
    )
}

fn no_place_breaks_a_rule(look: &'static str) {
    let axe = checks::root().join("ui/node_modules/axe-core/axe.min.js");
    let axe = fs::read_to_string(axe).expect("axe-core is there: npm ci in ui/ installs it");
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.script(&axe);
    let mut broken = Vec::new();
    for (at, (size, text)) in SIZES.into_iter().enumerate() {
        let seen = Seen { size, text, look };
        window.look_as(seen);
        for place in window.places() {
            window.visit(&place);
            window.unfold();
            // Colours are the same at every size, and slow to compare.
            let found = window.script_async(&script(at == 0));
            broken.extend(found.lines().map(|it| format!("{place}, {seen:?}: {it}")));
        }
    }
    assert!(broken.is_empty(), "\n{}\n", broken.join("\n"));
}

#[test]
fn no_place_breaks_a_rule_in_light() {
    no_place_breaks_a_rule("light");
}

#[test]
fn no_place_breaks_a_rule_in_the_dark() {
    no_place_breaks_a_rule("dark");
}

#[test]
fn no_place_breaks_a_rule_in_bright_sun() {
    no_place_breaks_a_rule("sun");
}
