//! Pages on their way to a printer, as the window holds them while the system asks for one.

use super::Trouble;
use serde::Serialize;
use ts_rs::TS;

/// One page as it lies on the paper.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PaperSheet {
    /// The page, upright as it is read.
    pub svg: String,
    /// How wide it is on the paper, in points; a page larger than the paper is made to fit.
    pub width_pt: f64,
    /// How high, in points.
    pub height_pt: f64,
    /// It lies sideways on the paper, because it is wider than high.
    pub sideways: bool,
}

/// All pages of a print.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PaperSheets {
    /// In the order in which they come out of the printer.
    pub sheets: Vec<PaperSheet>,
    /// The paper is US Letter; A4 otherwise.
    pub letter: bool,
    /// Characters that no bundled font holds, if any; a sign stands in their place.
    pub unprintable: String,
    /// What of the instructor's own could not be used.
    pub own: Vec<Trouble>,
}

/// What came of it when the system asked for a printer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum PaperEnd {
    /// The printer has the pages.
    Sent,
    /// The person thought better of it.
    NotSent,
    /// The system still asks; the page hears when it has done.
    Asking,
}
