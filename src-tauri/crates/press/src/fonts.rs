//! The fonts built into the program: their names, their files, and which characters they hold.

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// The family that sets all text, in pages and in pictures alike.
pub const TEXT_FAMILY: &str = "Atkinson Hyperlegible Next";

/// The family that stands in for characters [`TEXT_FAMILY`] lacks: Greek, Cyrillic, Hebrew,
/// Arabic, arrows, ticks and boxes.
pub const FALLBACK_FAMILY: &str = "DejaVu Sans";

/// The licence of each family, as (family, text). It must be shown wherever the program is given.
pub const FONT_LICENCES: [(&str, &str); 2] = [
    (
        TEXT_FAMILY,
        include_str!("../fonts/AtkinsonHyperlegibleNext-LICENCE.txt"),
    ),
    (FALLBACK_FAMILY, include_str!("../fonts/DejaVu-LICENCE.txt")),
];

/// The font files. The regular text face comes first: where a style names no font we have,
/// the first of equally good faces is taken.
const FILES: [&[u8]; 5] = [
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Italic.ttf"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
    include_bytes!("../fonts/DejaVuSans.ttf"),
    include_bytes!("../fonts/DejaVuSans-Bold.ttf"),
];

/// The built-in faces and the book the typesetter looks them up in.
pub(crate) struct Fonts {
    faces: Vec<Font>,
    book: LazyHash<FontBook>,
}

impl Fonts {
    /// Reads the built-in font files.
    pub(crate) fn built_in() -> Self {
        let faces: Vec<Font> = FILES
            .into_iter()
            .flat_map(|file| Font::iter(Bytes::new(file)))
            .collect();
        let book = LazyHash::new(FontBook::from_fonts(&faces));
        Self { faces, book }
    }

    pub(crate) fn book(&self) -> &LazyHash<FontBook> {
        &self.book
    }

    pub(crate) fn face(&self, index: usize) -> Option<Font> {
        self.faces.get(index).cloned()
    }

    /// Whether some face has a drawing for this character.
    pub(crate) fn cover(&self, c: char) -> bool {
        self.faces
            .iter()
            .any(|face| face.info().coverage.contains(u32::from(c)))
    }
}

#[cfg(test)]
mod tests {
    use super::{FALLBACK_FAMILY, Fonts, TEXT_FAMILY};

    #[test]
    fn each_font_is_there_in_its_styles() {
        let fonts = Fonts::built_in();
        let faces: Vec<(&str, usize)> = fonts
            .book()
            .families()
            .map(|(family, faces)| (family, faces.count()))
            .collect();
        assert_eq!(faces, [(TEXT_FAMILY, 3), (FALLBACK_FAMILY, 2)]);
        assert!(fonts.cover('A') && fonts.cover('✓'));
        assert!(!fonts.cover('石'));
    }
}
