//! Pages made away from the desk: in the size and for the students asked for, and stopped.

use super::*;
use crate::ahead::PageWanted;
use crate::shown;
use documents::Replaced;
use shapes::window::{PagePreview, PagesAsked, Printing};
use std::cell::RefCell;

fn asked(large_print: bool, students: Option<Vec<usize>>) -> PagesAsked {
    PagesAsked {
        large_print,
        students,
    }
}

#[test]
fn a_page_is_of_the_edition_and_the_students_asked_for() {
    let (_folder, _path, mut desk) = desk_with_file();
    let mut page = |document: &str, page: usize, asked: PagesAsked| {
        let job = desk.print_job(asked).expect("planned");
        job.page(document, page).expect("a page")
    };
    let all = page("attendance-slip", 1, asked(false, None));
    assert_eq!(
        (all.page, all.pages),
        (1, 4),
        "two slips to a page for eight"
    );
    let three = page("attendance-slip", 9, asked(false, Some(vec![1, 2, 4])));
    assert_eq!(
        (three.page, three.pages),
        (2, 2),
        "beyond the last is the last"
    );
    let usual = page("frame-card", 1, asked(false, None));
    let large = page("frame-card", 1, asked(true, None));
    assert!(usual.pages < large.pages);
    assert!(usual.places.contains(&"frames".to_owned()));
    assert!(usual.own.is_empty());
    let none = desk
        .print_job(asked(false, None))
        .expect("planned")
        .page("no-such", 1);
    let told = shown::trouble(none.expect_err("no document"));
    assert_eq!(told.code, "no-document");
}

/// Pages wait for what could be done otherwise only where they tell of it: once something has been
/// built.
#[test]
fn pages_are_the_same_before_and_after_the_advice() {
    let (_folder, _path, mut desk) = desk_with_file();
    for told in [false, true] {
        if told {
            let line = super::day::told("line", "15:00", None, "done");
            desk.tell(&line).expect("told");
        } else {
            desk.edit("wall.height", "1.2 m", false).expect("edits");
        }
        assert!(!desk.view().advised);
        let soon = run_sheet(&mut desk);
        assert_eq!(desk.view().advised, told);
        desk.advise().expect("advises");
        let same = soon == run_sheet(&mut desk);
        assert!(same, "another run sheet, told: {told}");
        let today = desk.view().written.running.today;
        assert_eq!(today.is_some_and(|it| !it.cures.is_empty()), told);
    }
}

/// The page asked for last is begun with the next change; once nobody has come for it, no more.
#[test]
fn the_page_that_is_looked_at_is_begun_with_the_change() {
    let (_folder, _path, mut desk) = desk_with_file();
    let setting_out = PageWanted {
        document: "setting-out".to_owned(),
        page: 1,
        asked: asked(false, None),
    };
    let change = |desk: &mut Desk, height: &str| {
        desk.edit("wall.height", height, false).expect("edits");
        desk.ahead.has_begun()
    };
    assert!(!change(&mut desk, "1.1 m"), "nothing is looked at");
    let first = come_for(&mut desk, &setting_out);
    assert!(change(&mut desk, "1.2 m"));
    let second = come_for(&mut desk, &setting_out);
    assert_ne!(first.svg, second.svg);
    assert_eq!(second.svg, set_anew(&mut desk, &setting_out));
    // While somebody types only the piece with the page is set; the whole, once they pause.
    assert!(!first.alone && second.alone);
    desk.advise().expect("advises");
    assert!(!come_for(&mut desk, &setting_out).alone);

    // Another page than the one that was begun is not that one.
    assert!(change(&mut desk, "1.3 m"));
    let other = PageWanted {
        page: 2,
        ..setting_out.clone()
    };
    assert_eq!(come_for(&mut desk, &other).svg, set_anew(&mut desk, &other));

    assert!(change(&mut desk, "1.1 m"));
    desk.ahead.wait();
    assert!(!change(&mut desk, "1.2 m"), "nobody came for the last one");
    assert_eq!(come_for(&mut desk, &other).svg, set_anew(&mut desk, &other));

    // What waits for more than the figures is not begun before they are there.
    let line = super::day::told("line", "15:00", None, "done");
    desk.tell(&line).expect("told");
    assert!(!desk.ahead.has_begun());
    assert_eq!(come_for(&mut desk, &other).svg, set_anew(&mut desk, &other));
    desk.undo().expect("undone");
    assert!(desk.ahead.has_begun());
    desk.lay_example(Library::example(true)).expect("lays");
    assert!(!desk.ahead.has_begun(), "it is of another course");

    come_for(&mut desk, &other);
    assert!(change(&mut desk, "1.2 m"));
    desk.leave_pages();
    assert!(!change(&mut desk, "1.1 m"), "pages are not looked at");
    assert_eq!(come_for(&mut desk, &other).svg, set_anew(&mut desk, &other));
}

fn come_for(desk: &mut Desk, wanted: &PageWanted) -> PagePreview {
    let begun = desk.page(wanted.clone()).expect("planned");
    let runtime = tokio::runtime::Builder::new_current_thread().build();
    let done = runtime.expect("a runtime").block_on(begun.done());
    done.expect("does not break down").expect("a page")
}

fn set_anew(desk: &mut Desk, wanted: &PageWanted) -> String {
    let job = desk.print_job(wanted.asked.clone()).expect("planned");
    job.page(&wanted.document, wanted.page).expect("a page").svg
}

fn run_sheet(desk: &mut Desk) -> Vec<String> {
    let job = desk.print_job(asked(false, None)).expect("planned");
    let page = |at| job.page("run-sheet", at).expect("a page");
    let pages = page(1).pages;
    (1..=pages).map(|at| page(at).svg).collect()
}

#[test]
fn a_print_tells_what_it_sets_and_stops_when_it_is_told_to() {
    let (folder, _path, mut desk) = desk_with_file();
    let into = folder.path().join("pages");
    let names = ["feedback-sheet", "return-list", "ready-list"].map(str::to_owned);
    let told: RefCell<Vec<Printing>> = RefCell::default();
    let job = desk.print_job(asked(false, None)).expect("planned");
    let pack = job.run(&names, &into, |it| {
        told.borrow_mut().push(it);
        told.borrow().len() < 3
    });
    let pack = pack.expect("prints");
    assert_eq!(pack.files.len(), 2);
    let told = told.into_inner();
    let first = told.first().expect("told");
    assert_eq!((first.at, first.of), (1, 3));
    assert_eq!(first.title, "Feedback sheet");
    assert_eq!((first.pages, first.last), (0, 0), "nothing is set yet");
    let so_far: Vec<_> = told.iter().map(|it| (it.pages, it.last)).collect();
    let pages = pack.pages;
    assert_eq!(so_far.last().map(|it| it.0), Some(pages), "{so_far:?}");
    assert!(
        so_far
            .windows(2)
            .all(|it| it[1].0 == it[0].0 + it[1].1 && 0 < it[1].1)
    );
    assert!(!into.join("ready-list.pdf").exists());
    let nothing = job.run(&names, &folder.path().join("none"), |_| false);
    assert!(nothing.expect("nothing to print").files.is_empty());
    assert!(!folder.path().join("none").exists());
}

#[test]
fn sheets_for_a_printer_are_the_pages_of_what_was_named_or_none() {
    let (_folder, _path, mut desk) = desk_with_file();
    let names = ["frame-card", "register"].map(str::to_owned);
    let told: RefCell<Vec<Printing>> = RefCell::default();
    let job = desk.print_job(asked(false, None)).expect("planned");
    let made = job.sheets(&names, |it| {
        told.borrow_mut().push(it);
        true
    });
    let made = made.expect("set").expect("not stopped");
    let pages = |name: &str| job.page(name, 1).expect("a page").pages;
    let (frames, register) = (pages("frame-card"), pages("register"));
    assert_eq!(made.sheets.len(), frames + register);
    assert!(!made.letter && made.unprintable.is_empty() && made.own.is_empty());
    for sheet in &made.sheets {
        assert_eq!(
            (sheet.width_pt.round(), sheet.height_pt.round()),
            (595.0, 842.0)
        );
        // Nothing of it leads anywhere, as on the screen.
        assert!(!sheet.svg.contains("place:"));
    }
    let told = told.into_inner();
    let so_far: Vec<_> = told.iter().map(|it| (it.at, it.of, it.pages)).collect();
    assert_eq!(so_far, [(1, 2, 0), (2, 2, frames)]);

    let stopped = job.sheets(&names, |it| it.at < 2).expect("no fault");
    assert!(stopped.is_none(), "half a pack is not printed");
}

#[test]
fn what_of_ones_own_can_not_be_used_is_told_beside_the_page() {
    let folder = tempfile::tempdir().expect("a folder");
    let lessons = folder.path().join("lessons");
    for (name, text) in [
        ("pages/ready-list.typ", &b"\xff\xfe"[..]),
        ("cards/copes.md", b"no head\n"),
    ] {
        let path = lessons.join(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("makes it");
        std::fs::write(path, text).expect("writes");
    }
    let mut desk = Desk::set_up(None, folder.path()).expect("opens");
    let page = desk
        .print_job(asked(false, None))
        .expect("planned")
        .page("ready-list", 1);
    let own = page.expect("the built-in page").own;
    let [lesson, template] = own.as_slice() else {
        panic!("{own:?}");
    };
    assert!(lesson.what.contains("copes.md, line 1"), "{}", lesson.what);
    assert!(lesson.cure.contains("built-in lesson"), "{}", lesson.cure);
    assert!(
        template.what.contains("ready-list.typ"),
        "{}",
        template.what
    );
    let replaced = Replaced {
        document: "run-sheet",
        own: vec!["run-sheet.typ".to_owned()],
        why: press::Error::TooLong {
            name: "run-sheet.typ".to_owned(),
            seconds: 20,
        },
    };
    let failed = shown::own(&desk.library, &[replaced]);
    let failed = failed.last().expect("told");
    assert_eq!(failed.code, "template-too-long");
    assert!(failed.what.starts_with("Run sheet: "), "{}", failed.what);
    assert_eq!(failed.cure, "This is the built-in page.");
}
