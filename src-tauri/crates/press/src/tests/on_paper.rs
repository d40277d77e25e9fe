//! Sheets for a printer: every page, its size, and nothing in it that needs a font.

use super::{WALL, data, sheet};
use crate::Press;

/// The picture with its words in a group, as drawings have them.
fn grouped() -> String {
    WALL.replace("<text", "<g><text")
        .replace("</text>", "</text></g>")
}

#[test]
fn every_page_is_a_sheet_of_its_own_size() {
    let data = data("Level 石");
    let made = Press::new().sheets(&sheet(&data, &[("wall.svg", WALL)]));
    let made = made.unwrap();
    assert_eq!(made.sheets.len(), 2);
    assert_eq!(made.unprintable, ['石']);
    for sheet in &made.sheets {
        assert!((sheet.width_pt - 15.0 / 2.54 * 72.0).abs() < 1e-6);
        assert!((sheet.height_pt - 20.0 / 2.54 * 72.0).abs() < 1e-6);
        assert!(!sheet.svg.contains("<text"));
        // The letters of what the typesetter writes today are joined, every one.
        assert!(!sheet.svg.contains("<use") && !sheet.svg.contains("<symbol"));
    }
    assert_ne!(made.sheets[0], made.sheets[1]);
}

/// A picture inside a page can't use the program's fonts, on paper as on the screen. Outlines
/// take room that words do not, so that as outlines both pictures are of about one length.
#[test]
fn words_of_a_picture_are_outlines_where_they_stand_in_a_group_too() {
    let data = data("Level");
    let (press, grouped) = (Press::new(), grouped());
    let lengths = |picture: &str| {
        let pictures = [("wall.svg", picture)];
        let job = sheet(&data, &pictures);
        let on_paper = press.sheets(&job).unwrap();
        let on_screen = press.page(&job, 2).unwrap();
        [on_paper.sheets[1].svg.len(), on_screen.svg.len()]
    };
    for (plain, grouped) in lengths(WALL).into_iter().zip(lengths(&grouped)) {
        assert!(plain.abs_diff(grouped) < 200, "{plain} and {grouped}");
    }
}
