//! Stand-ins in a finished page, replaced by what they stand for.

/// The page with its elements that begin and end so replaced by what each `stands_for`; one that stands
/// for nothing stays.
pub(crate) fn replaced(
    page: &str,
    begins: &str,
    ends: &str,
    stands_for: impl Fn(&str) -> Option<String>,
) -> String {
    let mut out = String::with_capacity(2 * page.len());
    let mut rest = page;
    while let Some(at) = rest.find(begins) {
        let (before, from_here) = rest.split_at(at);
        out.push_str(before);
        let end = from_here.find(ends);
        let end = end.map_or(from_here.len(), |end| end + ends.len());
        let (element, after) = from_here.split_at(end);
        match stands_for(element) {
            Some(inside) => out.push_str(&inside),
            None => out.push_str(element),
        }
        rest = after;
    }
    out.push_str(rest);
    out
}
