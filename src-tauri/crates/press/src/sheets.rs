//! All pages of a job as sheets of paper, to be handed to a printer by somebody who can draw SVG.

use serde::{Deserialize, Serialize};

use crate::{Error, Job, Press, Way, fault, svg, typeset};

/// One page, and how large its paper is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// The page as SVG, one point to a unit. Everything in it is an outline, and it needs no
    /// other file.
    pub svg: String,
    /// In points, of which 72 are an inch.
    pub width_pt: f64,
    /// In points.
    pub height_pt: f64,
}

/// A document as sheets of paper.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheets {
    /// In their order; at least one.
    pub sheets: Vec<Sheet>,
    /// As [`crate::Printed::unprintable`].
    pub unprintable: Vec<char>,
}

impl Press {
    /// Every page of the job as SVG. Words in pictures come as outlines, and the pages are not
    /// held to the accessibility standard, for paper is not read aloud.
    ///
    /// # Errors
    /// As for [`Press::pdf`].
    pub fn sheets(&self, job: &Job<'_>) -> Result<Sheets, Error> {
        let (world, unprintable) = self.prepare(job, Way::Usual)?;
        let world = world.outlined();
        self.remembering(|| {
            let document = typeset(&world)?;
            let sheets: Vec<Sheet> = document
                .pages()
                .iter()
                .map(|page| Sheet {
                    svg: svg(page),
                    width_pt: page.frame.width().to_pt(),
                    height_pt: page.frame.height().to_pt(),
                })
                .collect();
            if sheets.is_empty() {
                return Err(fault("it has no pages"));
            }
            Ok(Sheets {
                sheets,
                unprintable,
            })
        })
    }

    /// As [`Press::sheets`], in the second process, like [`Press::pdf_apart`].
    ///
    /// # Errors
    /// As for [`Press::pdf_apart`].
    pub fn sheets_apart(&self, job: &Job<'_>) -> Result<Sheets, Error> {
        match &self.apart {
            Some(apart) => apart.sheets(job),
            None => self.sheets(job),
        }
    }
}
