//! The editions a document is printed in.

/// In what size of letters a document is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Edition {
    /// 12 point, for most people.
    #[default]
    Usual,
    /// 18 point and set anew, not enlarged: for people who can't see well.
    LargePrint,
}

impl Edition {
    /// The word by which a template knows it, under `edition`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::LargePrint => "large",
        }
    }

    /// The file of a document in this edition. Each edition has names of its own, so that both
    /// lie in one folder.
    pub fn file_name(self, document: &str) -> String {
        match self {
            Self::Usual => format!("{document}.pdf"),
            Self::LargePrint => format!("{document}-large-print.pdf"),
        }
    }

    /// How much larger than usual everything is that is read.
    pub(crate) fn enlarged(self) -> f64 {
        match self {
            Self::Usual => 1.0,
            Self::LargePrint => 1.5,
        }
    }
}
