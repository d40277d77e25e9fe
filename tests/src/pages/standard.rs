//! The accessibility standard ISO 14289-1 (PDF/UA-1), and that the check can fail.

use super::look::{faults_of_file, printed};
use checks::courses::{plain, planned};
use checks::paper::Paper;
use documents::named;
use page_validation::{SafetyLimits, ValidationOptions, ValidationProfile, validate_pdf_bytes};

/// What breaks the standard; nothing for pages that keep it.
pub fn fails(pdf: &[u8]) -> Vec<String> {
    // Many pages are deeper and larger than the default limits allow for.
    let options = ValidationOptions::default()
        .profile(ValidationProfile::PdfUa1)
        .limits(SafetyLimits::unlimited());
    match validate_pdf_bytes(pdf, &options) {
        Ok(report) if report.is_compliant => Vec::new(),
        Ok(report) => vec![report.to_string()],
        Err(error) => vec![format!("can't be checked: {error}")],
    }
}

/// The pages with every `old` made `new`, of the same length so that no place is lost.
fn damaged(pdf: &[u8], old: &str, new: &str) -> Vec<u8> {
    assert_eq!(old.len(), new.len());
    let mut pdf = pdf.to_vec();
    let places: Vec<usize> = pdf
        .windows(old.len())
        .enumerate()
        .filter(|(_, part)| *part == old.as_bytes())
        .map(|(at, _)| at)
        .collect();
    assert!(!places.is_empty(), "{old} is not there to be damaged");
    for at in places {
        pdf[at..at + new.len()].copy_from_slice(new.as_bytes());
    }
    pdf
}

#[test]
fn damaged_pages_break_the_standard() {
    let course = planned(&plain());
    let sheet = printed(&course, named("setting-out").expect("a sheet")).pdf;
    assert!(fails(&sheet).is_empty(), "{:?}", fails(&sheet));
    for (old, new) in [
        ("/StructTreeRoot", "/StructTreeRoom"),
        ("/Alt", "/Alx"),
        ("/Lang", "/Lamg"),
        ("/MarkInfo", "/MarkInfa"),
        ("/DisplayDocTitle true", "/DisplayDocTitle fals"),
        ("pdfuaid", "pdfuxid"),
        ("/FontFile2", "/FontFileX"),
    ] {
        let broken = damaged(&sheet, old, new);
        assert!(!fails(&broken).is_empty(), "{old} made {new} goes unseen");
    }
}

/// The checks of our own see what they are there for, too.
#[test]
fn damaged_pages_are_seen_by_our_own_checks() {
    let course = planned(&plain());
    let sheet = printed(&course, named("setting-out").expect("a sheet")).pdf;
    let faults = |pdf: &[u8]| faults_of_file(&Paper::new(pdf));
    assert!(faults(&sheet).is_empty(), "{:?}", faults(&sheet));
    for (old, new, says) in [
        ("/S/TH", "/S/TD", "tables have no heads"),
        ("/Alt", "/Alx", "figures say nothing"),
        ("/FontFile2", "/FontFileX", "a font is left out"),
    ] {
        let found = faults(&damaged(&sheet, old, new));
        let seen = found.iter().any(|it| it.contains(says));
        assert!(seen, "{old} made {new}: {found:?}");
    }
    // Cut off in the middle, or with a page that is no longer one.
    assert!(Paper::new(&sheet[..sheet.len() / 2]).broken().is_some());
}
