//! Letters of a page drawn run by run.
//!
//! The typesetter points to an outline for each letter. Who shows such a page builds each outline anew
//! at each letter that points to it; a run of letters in one path looks the same and is drawn some three
//! times as fast.

use std::collections::HashMap;

/// How the typesetter begins an outline, and how it goes on after its name.
const OUTLINE: &str = "<symbol id=\"";
const BEGINS: &str = " overflow=\"visible\"><path d=\"M 0 0";
const ENDS: &str = "\"/></symbol>";
/// How it begins a letter, and how it ends one.
const LETTER: &str = "<use ";
const LETTER_ENDS: &str = "\" fill-rule=\"nonzero\"/>";
/// The steps of an outline that are not counted from the step before.
const ABSOLUTE: [char; 9] = ['M', 'L', 'H', 'V', 'C', 'S', 'Q', 'T', 'A'];

/// The page with its letters joined. A run that has anything else in it stays as it is.
pub(crate) fn joined(page: &str) -> String {
    let outlines: HashMap<&str, String> = outlines(page).collect();
    let mut out = String::with_capacity(2 * page.len());
    let mut all_joined = true;
    let mut rest = page;
    while let Some(at) = rest.find(LETTER) {
        let (before, from_here) = rest.split_at(at);
        out.push_str(before);
        let (run, after) = run(from_here);
        if run.is_empty() {
            all_joined = false;
            out.push_str(LETTER);
            rest = &from_here[LETTER.len()..];
            continue;
        }
        if let Some(path) = path(&run, &outlines) {
            out.push_str(&path);
        } else {
            all_joined = false;
            out.push_str(&from_here[..from_here.len() - after.len()]);
        }
        rest = after;
    }
    out.push_str(rest);
    if all_joined {
        without_outlines(&out)
    } else {
        out
    }
}

/// The outlines that can be moved by their first step, by their names, without needless spaces.
fn outlines(page: &str) -> impl Iterator<Item = (&str, String)> {
    page.split(OUTLINE).skip(1).filter_map(|symbol| {
        let (name, steps) = outline(symbol)?;
        let absolute = steps.contains(ABSOLUTE);
        (!absolute).then(|| (name, short(steps)))
    })
}

/// The name of an outline, and its steps; nothing where it is more than one path.
fn outline(symbol: &str) -> Option<(&str, &str)> {
    let (name, path) = symbol.split_once('"')?;
    let (steps, _) = path.strip_prefix(BEGINS)?.split_once('"')?;
    let after = &path[BEGINS.len() + steps.len()..];
    after.starts_with(ENDS).then_some((name, steps))
}

/// Steps without what their numbers can be told apart without: spaces after a letter and before a
/// sign, and noughts before a point.
fn short(steps: &str) -> String {
    let mut out = String::with_capacity(steps.len());
    let mut parted = false;
    let mut rest = steps.chars().peekable();
    while let Some(c) = rest.next() {
        if c == ' ' {
            parted = true;
            continue;
        }
        let before = out.chars().next_back().unwrap_or('M');
        if parted && c != '-' && !before.is_ascii_alphabetic() {
            out.push(' ');
        }
        let in_a_number = !parted && before.is_ascii_digit();
        if c != '0' || in_a_number || rest.peek() != Some(&'.') {
            out.push(c);
        }
        parted = false;
    }
    out
}

/// A letter: which outline, where, and in what ink.
struct Letter<'p> {
    name: &'p str,
    x: &'p str,
    y: &'p str,
    ink: &'p str,
}

/// The letters that follow each other from here on, and what comes after them.
fn run(from_here: &str) -> (Vec<Letter<'_>>, &str) {
    let mut letters = Vec::new();
    let mut rest = from_here;
    while let Some((letter, after)) = letter(rest) {
        letters.push(letter);
        rest = after;
    }
    (letters, rest)
}

fn letter(from_here: &str) -> Option<(Letter<'_>, &str)> {
    let rest = from_here.strip_prefix(LETTER)?;
    let (name, rest) = rest.strip_prefix("xlink:href=\"#")?.split_once('"')?;
    let (x, rest) = rest.strip_prefix(" x=\"")?.split_once('"')?;
    let (y, rest) = rest.strip_prefix(" y=\"")?.split_once('"')?;
    let rest = rest.strip_prefix(" fill=\"")?;
    let (ink, _) = rest.split_once('"')?;
    let after = rest[ink.len()..].strip_prefix(LETTER_ENDS)?;
    ink.starts_with('#')
        .then_some((Letter { name, x, y, ink }, after))
}

/// The path of a run, if it is all of one ink and all its outlines are known.
fn path(run: &[Letter<'_>], outlines: &HashMap<&str, String>) -> Option<String> {
    let ink = run.first()?.ink;
    let mut path = format!("<path fill=\"{ink}\" fill-rule=\"nonzero\" d=\"");
    for letter in run {
        let steps = outlines.get(letter.name).filter(|_| letter.ink == ink)?;
        for part in ["M", letter.x, " ", letter.y, steps] {
            path.push_str(part);
        }
    }
    path.push_str("\"/>");
    Some(path)
}

/// The page without outlines, to which nothing points any more.
fn without_outlines(page: &str) -> String {
    let mut out = String::with_capacity(page.len());
    let mut parts = page.split(OUTLINE);
    out.push_str(parts.next().unwrap_or_default());
    for symbol in parts {
        match outline(symbol).and_then(|_| symbol.split_once(ENDS)) {
            Some((_, after)) => out.push_str(after),
            None => {
                out.push_str(OUTLINE);
                out.push_str(symbol);
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::joined;

    fn symbol(name: &str, steps: &str) -> String {
        format!("<symbol id=\"{name}\" overflow=\"visible\"><path d=\"M 0 0{steps}\"/></symbol>")
    }

    fn letter(name: &str, x: f64, ink: &str) -> String {
        format!(
            "<use xlink:href=\"#{name}\" x=\"{x}\" y=\"0\" fill=\"{ink}\" fill-rule=\"nonzero\"/>"
        )
    }

    fn page(runs: &[String]) -> String {
        let (a, b) = (
            symbol("gA", "m 1.5 0v 17.3h -8.4Z "),
            symbol("gB", "m 2 0q 1 2 3 4Z "),
        );
        let runs = runs.iter().map(|run| format!("<g>{run}</g>"));
        format!("<svg>{}<defs>{a}{b}</defs></svg>", runs.collect::<String>())
    }

    #[test]
    fn the_letters_of_a_run_are_one_path_each_at_its_place() {
        let black = letter("gA", 0.0, "#000000") + &letter("gB", 12.5, "#000000");
        let grey = letter("gB", 3.0, "#777777");
        assert_eq!(
            joined(&page(&[black, grey])),
            "<svg><g><path fill=\"#000000\" fill-rule=\"nonzero\" \
             d=\"M0 0m1.5 0v17.3h-8.4ZM12.5 0m2 0q1 2 3 4Z\"/></g>\
             <g><path fill=\"#777777\" fill-rule=\"nonzero\" d=\"M3 0m2 0q1 2 3 4Z\"/></g>\
             <defs></defs></svg>"
        );
    }

    #[test]
    fn what_is_not_understood_stays_as_it_is_with_all_outlines() {
        let absolute = symbol("gC", "L 3 4Z ");
        let black = |name: &str| letter(name, 0.0, "#000000");
        for run in [
            black("gA") + &black("gC"),
            black("gA") + &letter("gB", 2.0, "#ff0000"),
            black("gUnknown"),
            black("gA").replace("#000000", "url(#shade)"),
            black("gA").replace("/>", " stroke=\"#000000\"/>"),
            "<use xlink:href=\"#gA\" transform=\"scale(2)\"/>".to_owned(),
        ] {
            let page = page(&[run]) + &absolute;
            assert_eq!(joined(&page), page);
        }
    }

    #[test]
    fn steps_are_shortened_by_nothing_that_is_read() {
        for (steps, short) in [
            (
                "m 8.008 -0.312q -1.82 0 -3.289 0.507Z ",
                "m8.008-.312q-1.82 0-3.289 .507Z",
            ),
            ("h 10.05v -100h 0.5", "h10.05v-100h.5"),
            ("m 0 0l 20 30", "m0 0l20 30"),
        ] {
            assert_eq!(super::short(steps), short);
        }
    }

    #[test]
    fn a_page_cut_short_is_left_as_it_is() {
        for page in [
            "",
            "<use ",
            "<svg><use xlink:href=\"#gA",
            "<symbol id=\"gA\" overflow",
        ] {
            assert_eq!(joined(page), page);
        }
    }
}
