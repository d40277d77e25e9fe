//! Pages laid on the paper of the course: a wide one sideways, a larger one made to fit.

use press::Sheet;
use shapes::window::PaperSheet;

/// ISO 216: 210 x 297 mm, in points.
const A4: (f64, f64) = (210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0);
/// 8.5 x 11 inches, in points.
const LETTER: (f64, f64) = (8.5 * 72.0, 11.0 * 72.0);

/// How a page lies. A printer has one paper in its tray, so every page goes onto the course's
/// own; the built-in ones all have that size, those of an instructor's template may have another.
/// A smaller page keeps its true size, for its drawings may be measured.
pub(crate) fn laid(page: Sheet, letter: bool) -> PaperSheet {
    let (across, down) = if letter { LETTER } else { A4 };
    let sideways = page.height_pt < page.width_pt;
    let (wide, high) = if sideways {
        (down, across)
    } else {
        (across, down)
    };
    let fit = (wide / page.width_pt).min(high / page.height_pt).min(1.0);
    PaperSheet {
        svg: page.svg,
        width_pt: page.width_pt * fit,
        height_pt: page.height_pt * fit,
        sideways,
    }
}

#[cfg(test)]
mod tests {
    use super::{A4, LETTER, laid};
    use press::Sheet;

    fn close(one: f64, other: f64) -> bool {
        (one - other).abs() < 0.01
    }

    #[test]
    fn a_page_keeps_its_size_where_it_fits_and_no_page_is_cut() {
        // Width and height in points of a page, whether the paper is Letter, what it lies as.
        let table = [
            (A4, false, (595.28, 841.89), false),
            (LETTER, true, (612.0, 792.0), false),
            // A4 across lies sideways and just fits.
            ((A4.1, A4.0), false, (841.89, 595.28), true),
            // A5 stays A5.
            ((419.53, 595.28), false, (419.53, 595.28), false),
            // A3 comes out as A4, its drawings at 1 to the root of two.
            ((841.89, 1190.55), false, (595.28, 841.81), false),
            // Letter is wider than A4 and not as high: its width decides.
            (LETTER, false, (595.28, 770.36), false),
            (A4, true, (560.0, 792.0), false),
        ];
        for ((width_pt, height_pt), letter, (width, height), sideways) in table {
            let svg = String::new();
            let sheet = Sheet {
                svg,
                width_pt,
                height_pt,
            };
            let lies = laid(sheet, letter);
            assert!(close(lies.width_pt, width), "{width_pt}: {lies:?}");
            assert!(close(lies.height_pt, height), "{height_pt}: {lies:?}");
            assert_eq!(lies.sideways, sideways, "{lies:?}");
        }
    }
}
