//! What the instructor has marked as seen to.

use crate::Fault;
use crate::course::node::Section;
use craft::course::ReadyGiven;

/// The marks; nothing where the instructor keeps no list. Whether each is of something there
/// is to see to shows when the course is planned.
pub(super) fn ready(root: &Section<'_>) -> Result<Option<ReadyGiven>, Fault> {
    if root.get("ready").is_none() {
        return Ok(None);
    }
    let section = root.section("ready")?;
    section.only(&["done"])?;
    let entries = section.get("done").map_or(Ok(Vec::new()), |it| it.list())?;
    let mut done: Vec<String> = Vec::new();
    for entry in entries {
        let id = entry.text()?;
        if done.iter().any(|it| it == id) {
            return Err(entry.fault(
                "mark-twice",
                &format!("\"{id}\" is there twice"),
                "name each thing once",
            ));
        }
        done.push(id.to_owned());
    }
    Ok(Some(ReadyGiven { done }))
}

#[cfg(test)]
mod tests {
    use crate::Library;
    use crate::course::CourseFile;

    fn parse(more: &str) -> Result<CourseFile, crate::Fault> {
        CourseFile::parse(&format!("{}\n{more}", Library::example(false)))
    }

    #[test]
    fn marks_are_read_and_no_table_is_no_list() {
        let done = |more: &str| {
            let ready = parse(more).expect("sound").course.ready;
            ready.map(|it| it.done)
        };
        assert_eq!(done(""), None);
        assert_eq!(done("[ready]"), Some(Vec::new()));
        let two = done("[ready]\ndone = [\"permission\", \"stone\"]");
        assert_eq!(two, Some(vec!["permission".to_owned(), "stone".to_owned()]));
    }

    #[test]
    fn slips_are_told_at_their_key() {
        for (text, key, words) in [
            ("ready = 3", "pace.ready", "no key"),
            (
                "[ready]\ndone = \"stone\"",
                "ready.done",
                "where a list is due",
            ),
            ("[ready]\ndone = [3]", "ready.done.0", "where text is due"),
            (
                "[ready]\ndone = [\"stone\", \"stone\"]",
                "ready.done.1",
                "there twice",
            ),
            ("[ready]\ndoen = []", "ready.doen", "no key"),
        ] {
            let fault = parse(text).expect_err(text);
            assert_eq!(fault.key, key, "{text}");
            assert!(fault.what.contains(words), "{text}: {}", fault.what);
        }
    }

    #[test]
    fn a_mark_of_nothing_is_refused_at_its_place_with_the_nearest() {
        let library = Library::built_in().expect("the built-in library");
        let text = format!(
            "{}\n[ready]\ndone = [\"stone\", \"drainge\"]\n",
            Library::example(false)
        );
        let file = CourseFile::parse(&text).expect("sound so far");
        let fault = file.plan(&library).expect_err("a slip of the pen");
        assert_eq!(fault.code, "unknown-task");
        assert_eq!(fault.key, "ready.done.1");
        assert_eq!(
            fault.what,
            "ready.done 2: there is nothing called \"drainge\" to be seen to"
        );
        assert_eq!(fault.cure, "did you mean \"drainage\"?");
        assert_eq!(&text[fault.at..fault.at + 4], "done");
        let good = text.replace("drainge", "kit:walling-hammer");
        let plan = CourseFile::parse(&good)
            .expect("sound")
            .plan(&library)
            .expect("a plan");
        let of = |id: &str| plan.to_do.iter().find(|it| it.id == id);
        assert_eq!(
            of("stone").map(|it| (it.done, it.counts)),
            Some((true, false))
        );
    }
}
