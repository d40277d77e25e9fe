//! What a question is about: every kind with its code, its title and its place on a sheet.

/// What a question is about.
///
/// Each kind draws its numbers at a place of its own, by the order below. A new kind goes
/// at the end; where it stands on the sheet is for [`Kind::ALL`] to say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The width at the ground.
    BaseWidth,
    /// The width at a string.
    WidthAtString,
    /// The wide end of a batter gauge.
    GaugeOffset,
    /// Frames along a wall, and their bars.
    FramesAndBars,
    /// The bar that is long enough.
    BarLength,
    /// The stone to order.
    Tonnes,
    /// Throughs and copes, counted.
    ThroughsAndCopes,
    /// Stages put in order.
    OrderOfWork,
    /// The batter of a face that was measured.
    Batter,
    /// Which frame is moved where, and when.
    Leapfrog,
    /// The marks of a frame where the ground is not level.
    UnevenGround,
    /// The diagonal between two frames, or of a right angle.
    Squareness,
    /// The parts of the course's own wall, cut across.
    NameTheParts,
    /// What is done about each hazard.
    HazardAndControl,
    /// Faults in a face drawn stone by stone.
    FindTheFault,
    /// Who or what moves a stone.
    OnePersonLift,
    /// Figures read off the table of the course's own frames.
    ReadTheTable,
}

impl Kind {
    /// All kinds as they stand on a sheet: what is named, put in order, looked for and read
    /// first, then the sums from easy to hard.
    pub const ALL: [Self; 17] = [
        Self::NameTheParts,
        Self::OrderOfWork,
        Self::FindTheFault,
        Self::HazardAndControl,
        Self::OnePersonLift,
        Self::ReadTheTable,
        Self::Leapfrog,
        Self::GaugeOffset,
        Self::BaseWidth,
        Self::WidthAtString,
        Self::Batter,
        Self::FramesAndBars,
        Self::ThroughsAndCopes,
        Self::Squareness,
        Self::UnevenGround,
        Self::BarLength,
        Self::Tonnes,
    ];

    /// All kinds by how much a course has of them: a sheet with fewer questions has the
    /// first of these (common practice, no source).
    pub(super) const BY_USE: [Self; 17] = [
        Self::NameTheParts,
        Self::FindTheFault,
        Self::OrderOfWork,
        Self::HazardAndControl,
        Self::OnePersonLift,
        Self::ReadTheTable,
        Self::WidthAtString,
        Self::FramesAndBars,
        Self::Squareness,
        Self::Tonnes,
        Self::GaugeOffset,
        Self::BaseWidth,
        Self::Batter,
        Self::ThroughsAndCopes,
        Self::UnevenGround,
        Self::BarLength,
        Self::Leapfrog,
    ];

    /// A short, fixed name for programs and course files. Never changes once shipped.
    pub fn code(self) -> &'static str {
        match self {
            Self::BaseWidth => "base-width",
            Self::WidthAtString => "width-at-string",
            Self::GaugeOffset => "gauge-offset",
            Self::FramesAndBars => "frames-and-bars",
            Self::BarLength => "bar-length",
            Self::Tonnes => "tonnes",
            Self::ThroughsAndCopes => "throughs-and-copes",
            Self::OrderOfWork => "order-of-work",
            Self::Batter => "batter",
            Self::Leapfrog => "leapfrog",
            Self::UnevenGround => "uneven-ground",
            Self::Squareness => "squareness",
            Self::NameTheParts => "name-the-parts",
            Self::HazardAndControl => "hazards",
            Self::FindTheFault => "find-the-fault",
            Self::OnePersonLift => "one-person-lift",
            Self::ReadTheTable => "read-the-table",
        }
    }

    /// What stands above the question.
    pub fn title(self) -> &'static str {
        match self {
            Self::BaseWidth => "Width at the ground",
            Self::WidthAtString => "Width at the string",
            Self::GaugeOffset => "Batter gauge",
            Self::FramesAndBars => "Frames and bars",
            Self::BarLength => "Length of a bar",
            Self::Tonnes => "Stone to order",
            Self::ThroughsAndCopes => "Throughs and copes",
            Self::OrderOfWork => "Order of work",
            Self::Batter => "Batter from two measurements",
            Self::Leapfrog => "Moving frames along",
            Self::UnevenGround => "Marks on uneven ground",
            Self::Squareness => "Square or not",
            Self::NameTheParts => "Name the parts",
            Self::HazardAndControl => "Hazards and what is done about them",
            Self::FindTheFault => "Find the fault",
            Self::OnePersonLift => "Who lifts this stone",
            Self::ReadTheTable => "Read the setting-out table",
        }
    }

    /// Whether something has to be worked out with numbers at every level.
    pub fn is_sum(self) -> bool {
        match self {
            Self::BaseWidth
            | Self::WidthAtString
            | Self::GaugeOffset
            | Self::FramesAndBars
            | Self::BarLength
            | Self::Tonnes
            | Self::ThroughsAndCopes
            | Self::Batter
            | Self::UnevenGround
            | Self::Squareness => true,
            Self::OrderOfWork
            | Self::Leapfrog
            | Self::NameTheParts
            | Self::HazardAndControl
            | Self::FindTheFault
            | Self::OnePersonLift
            | Self::ReadTheTable => false,
        }
    }

    /// How much of a page it takes with the room to answer it, in sixths.
    pub fn sixths_of_a_page(self) -> usize {
        match self {
            Self::NameTheParts => 4,
            Self::FindTheFault | Self::HazardAndControl => 3,
            _ => 2,
        }
    }
}
