//! Pens: what a line means, told by weight, dashes and fill and never by colour.

/// What a mark stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Pen {
    /// The edge of the wall.
    Outline,
    /// A face stone or a footing stone, hinted at.
    Stone,
    /// Hearting, hinted at.
    Hearting,
    /// A through.
    Through,
    /// A through that ends within the wall, behind the stones of the face.
    HiddenThrough,
    /// A cope stone.
    Cope,
    /// The line of the ground.
    Ground,
    /// Hatching of ground and of standing wall.
    Hatch,
    /// The edge of the trench.
    Trench,
    /// Drainage stone behind a wall.
    Drainage,
    /// A ring where a string is tied.
    String,
    /// A bar or board of a frame.
    Bar,
    /// A bar or board where something hides it.
    HiddenBar,
    /// Wall left to be carried on.
    Later,
    /// The centre line.
    Centre,
    /// A line measured from corner to corner.
    Diagonal,
    /// Dimension lines and the lines that lead to them.
    Dimension,
    /// The stroke across the end of a dimension line.
    Tick,
    /// From a word to what it names.
    Leader,
    /// Time in which the wall rises.
    Build,
    /// Time in which somebody teaches or tools are counted.
    Talk,
    /// Time in which somebody warns.
    Warning,
    /// Time in which nobody works.
    Rest,
    /// How far apart early and late, or little and much, may be.
    Spread,
    /// The edge of what was forecast and holds no longer.
    Forecast,
    /// What is likeliest.
    Curve,
    /// What is wished for.
    Wished,
    /// Lines to read a figure by.
    Grid,
    /// Filled dots and the dark parts of a scale bar.
    Solid,
    /// Words and figures.
    Text,
}

/// How a pen draws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Look {
    /// Line weight; nothing for a shape that is only filled.
    pub(crate) weight_mm: f64,
    /// Lengths of dashes and gaps in turn; empty for a whole line.
    pub(crate) dashes_mm: &'static [f64],
    /// What a closed shape is filled with.
    pub(crate) fill: Fill,
}

/// What a closed shape is filled with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fill {
    /// Whatever lies below shows through.
    Nothing,
    /// The colour of the paper, which hides what lies below.
    Paper,
    /// The colour of the ink.
    Ink,
}

impl Pen {
    /// Every pen.
    pub const ALL: [Self; 30] = [
        Self::Outline,
        Self::Stone,
        Self::Hearting,
        Self::Through,
        Self::HiddenThrough,
        Self::Cope,
        Self::Ground,
        Self::Hatch,
        Self::Trench,
        Self::Drainage,
        Self::String,
        Self::Bar,
        Self::HiddenBar,
        Self::Later,
        Self::Centre,
        Self::Diagonal,
        Self::Dimension,
        Self::Tick,
        Self::Leader,
        Self::Build,
        Self::Talk,
        Self::Warning,
        Self::Rest,
        Self::Spread,
        Self::Forecast,
        Self::Curve,
        Self::Wished,
        Self::Grid,
        Self::Solid,
        Self::Text,
    ];

    /// The class of its marks, for the window's own colours: `pen-outline`.
    pub fn class(self) -> &'static str {
        match self {
            Self::Outline => "pen-outline",
            Self::Stone => "pen-stone",
            Self::Hearting => "pen-hearting",
            Self::Through => "pen-through",
            Self::HiddenThrough => "pen-hidden-through",
            Self::Cope => "pen-cope",
            Self::Ground => "pen-ground",
            Self::Hatch => "pen-hatch",
            Self::Trench => "pen-trench",
            Self::Drainage => "pen-drainage",
            Self::String => "pen-string",
            Self::Bar => "pen-bar",
            Self::HiddenBar => "pen-hidden-bar",
            Self::Later => "pen-later",
            Self::Centre => "pen-centre",
            Self::Diagonal => "pen-diagonal",
            Self::Dimension => "pen-dimension",
            Self::Tick => "pen-tick",
            Self::Leader => "pen-leader",
            Self::Build => "pen-build",
            Self::Talk => "pen-talk",
            Self::Warning => "pen-warning",
            Self::Rest => "pen-rest",
            Self::Spread => "pen-spread",
            Self::Forecast => "pen-forecast",
            Self::Curve => "pen-curve",
            Self::Wished => "pen-wished",
            Self::Grid => "pen-grid",
            Self::Solid => "pen-solid",
            Self::Text => "pen-text",
        }
    }

    pub(crate) fn look(self) -> Look {
        let (weight_mm, dashes_mm, fill): (f64, &'static [f64], Fill) = match self {
            Self::Outline => (0.7, &[], Fill::Nothing),
            Self::Stone => (0.18, &[], Fill::Paper),
            Self::Hearting => (0.13, &[], Fill::Nothing),
            Self::Through | Self::Cope => (0.4, &[], Fill::Paper),
            Self::HiddenThrough => (0.5, &[0.8, 0.5], Fill::Nothing),
            Self::Ground => (0.55, &[], Fill::Nothing),
            Self::Hatch => (0.15, &[], Fill::Nothing),
            Self::Trench => (0.35, &[2.4, 1.2], Fill::Nothing),
            Self::Drainage => (0.15, &[], Fill::Paper),
            Self::String => (0.3, &[], Fill::Paper),
            Self::Bar => (0.3, &[], Fill::Paper),
            Self::HiddenBar => (0.25, &[1.4, 0.9], Fill::Nothing),
            Self::Later => (0.3, &[0.4, 1.0], Fill::Nothing),
            Self::Centre => (0.22, &[7.0, 1.2, 1.2, 1.2], Fill::Nothing),
            Self::Diagonal => (0.3, &[3.6, 1.4], Fill::Nothing),
            Self::Dimension | Self::Leader => (0.2, &[], Fill::Paper),
            Self::Tick => (0.45, &[], Fill::Nothing),
            Self::Build => (0.5, &[], Fill::Paper),
            Self::Talk => (0.25, &[], Fill::Paper),
            Self::Warning => (0.8, &[], Fill::Paper),
            Self::Rest => (0.25, &[1.2, 0.8], Fill::Paper),
            Self::Spread => (0.35, &[], Fill::Nothing),
            Self::Forecast => (0.3, &[1.8, 1.0], Fill::Nothing),
            Self::Curve => (0.7, &[], Fill::Nothing),
            Self::Wished => (0.4, &[3.6, 1.4], Fill::Nothing),
            Self::Grid => (0.1, &[], Fill::Nothing),
            Self::Solid | Self::Text => (0.0, &[], Fill::Ink),
        };
        Look {
            weight_mm,
            dashes_mm,
            fill,
        }
    }
}
