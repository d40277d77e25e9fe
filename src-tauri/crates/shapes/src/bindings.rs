//! All shapes as TypeScript, for the window: one file for each module, and one that names all.

use crate::{plan, window, written};
use ts_rs::{Config, TS};

/// A generated file of `ui/src/bindings`.
pub struct Generated {
    /// Its name.
    pub file: &'static str,
    /// Its text.
    pub text: String,
}

/// The window's generated types.
pub fn typescript() -> Vec<Generated> {
    let index = ["window", "plan", "written"].map(|it| format!("export * from './{it}'\n"));
    vec![
        generated(
            "index.ts",
            "The types Rust and the window share.",
            index.concat(),
        ),
        generated(
            "window.ts",
            "What the desktop program and its window say to each other.",
            format!(
                "import type {{ Entry, Member, StageWork, WishUnmet }} from './plan'\nimport type {{ Written, WrittenBookRow }} from './written'\n{}",
                window_types()
            ),
        ),
        generated("plan.ts", "Numbers of a plan, SI throughout.", plan_types()),
        generated(
            "written.ts",
            "A plan as a person reads it.",
            written_types(),
        ),
    ]
}

fn generated(file: &'static str, about: &str, types: String) -> Generated {
    Generated {
        file,
        text: format!(
            "// {about}\n// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.\n\n{types}"
        ),
    }
}

/// The declarations of some shapes, each exported.
macro_rules! declared {
    ($($shape:ty),* $(,)?) => {{
        let config = Config::new().with_large_int("number");
        [$( <$shape as TS>::decl(&config) ),*]
            .map(|declaration| format!("export {declaration}\n"))
            .join("\n")
    }};
}

fn window_types() -> String {
    declared![
        window::View,
        window::Renewed,
        window::Difference,
        window::Numbers,
        window::Choices,
        window::LessonChoice,
        window::Drawings,
        window::Handles,
        window::Handle,
        window::HandleStop,
        window::DayHandles,
        window::DayPlaces,
        window::DayEntry,
        window::Changed,
        window::Moved,
        window::Trouble,
        window::Keeping,
        window::Kept,
        window::Outside,
        window::Document,
        window::PagesAsked,
        window::PagePreview,
        window::Printing,
        window::Printed,
        window::PaperSheet,
        window::PaperSheets,
        window::PaperEnd,
        window::Rule,
        window::RuleKey,
        window::KitStore,
        window::Lot,
        window::BookedCourse,
        window::BookedItem,
        window::LotTyped,
        window::ReturnTyped,
        window::CountedHome,
        window::KitListPreview,
        window::Dropped,
        window::RosterPreview,
        window::LessonShelf,
        window::ShelfLesson,
        window::LessonDraft,
        window::LessonParts,
        window::LessonFault,
        window::LessonChange,
        window::LessonKept,
        window::PaceBook,
        window::PaceRow,
        window::PaceCourse,
        window::PacePreview,
        window::YourCourses,
        window::RecentCourse,
        window::ExampleCourse,
        window::Readiness,
        window::BeginChoices,
        window::CountryChoice,
        window::AnswersChecked,
        window::ComesTo,
        window::Term,
        window::Sketch,
    ]
}

fn plan_types() -> String {
    declared![plan::Unmet, plan::Member, plan::StageWork, plan::Entry]
}

fn written_types() -> String {
    declared![
        written::Written,
        written::Running,
        written::Line,
        written::DayWeather,
        written::DayPeople,
        written::Round,
        written::Place,
        written::BookRow,
        written::Today,
        written::StageDone,
        written::Wall,
        written::EndRow,
        written::Limit,
        written::Timber,
        written::CutLine,
        written::PatternLine,
        written::Retaining,
        written::FromFront,
        written::Frames,
        written::Row,
        written::BayRow,
        written::CurveRow,
        written::Bars,
        written::Move,
        written::StringRow,
        written::StringToBring,
        written::Stone,
        written::Kind,
        written::RestsOn,
        written::ThroughRow,
        written::Delivery,
        written::Kit,
        written::KitLine,
        written::Heaps,
        written::Lifting,
        written::Lift,
        written::HeavyStone,
        written::Loads,
        written::Run,
        written::Hold,
        written::LoadLine,
        written::Money,
        written::CostLine,
        written::GroupRow,
        written::Stint,
        written::Day,
        written::Entry,
        written::Chance,
        written::StageTimes,
        written::Mark,
        written::Caution,
        written::ToDo,
        written::Reason,
        written::ReasonStep,
        written::ReasonSource,
    ]
}

#[cfg(test)]
mod tests {
    /// `cargo xtask bindings` sets this to write the files instead of comparing them.
    const UPDATE: &str = "UPDATE_BINDINGS";

    #[test]
    fn the_window_has_the_newest_types() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../../ui/src/bindings");
        for now in super::typescript() {
            let path = std::path::Path::new(folder).join(now.file);
            if std::env::var_os(UPDATE).is_some() {
                std::fs::create_dir_all(folder).expect("a folder");
                std::fs::write(&path, &now.text).expect("writes");
            }
            let there = std::fs::read_to_string(&path).expect("reads");
            assert!(
                there == now.text,
                "ui/src/bindings/{} is old: run `cargo xtask bindings`",
                now.file
            );
        }
    }
}
