//! All shapes as TypeScript, for the window.

use crate::{plan, window, written};
use ts_rs::{Config, TS};

/// The text of the window's generated types.
pub fn typescript() -> String {
    let config = Config::new().with_large_int("number");
    let mut text =
        "// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.\n".to_owned();
    let mut add = |declaration: String| {
        text.push_str("\nexport ");
        text.push_str(&declaration);
        text.push('\n');
    };
    macro_rules! all {
        ($($shape:ty),* $(,)?) => { $( add(<$shape as TS>::decl(&config)); )* };
    }
    all![
        window::View,
        window::Choices,
        window::Drawings,
        window::Moved,
        window::Trouble,
        window::Document,
        window::Printed,
        plan::Plan,
        plan::Wall,
        plan::LineStretch,
        plan::ProfilePoint,
        plan::WallEnd,
        plan::Sizing,
        plan::Limit,
        plan::Retaining,
        plan::Check,
        plan::Frames,
        plan::FrameRow,
        plan::Bay,
        plan::Curve,
        plan::Bars,
        plan::Board,
        plan::Trench,
        plan::Move,
        plan::Timber,
        plan::CutRow,
        plan::Buy,
        plan::Pattern,
        plan::Leapfrog,
        plan::StringHeight,
        plan::StringToBring,
        plan::Stone,
        plan::Range,
        plan::ByKind,
        plan::Throughs,
        plan::ThroughRow,
        plan::Copes,
        plan::KitLine,
        plan::People,
        plan::Stint,
        plan::Member,
        plan::StageWork,
        plan::Entry,
        plan::Finish,
        plan::StageTimes,
        plan::SunDay,
        plan::Caution,
        plan::ToDo,
        written::Written,
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
        written::ThroughRow,
        written::Kit,
        written::KitLine,
        written::Stint,
        written::Day,
        written::Entry,
        written::Chance,
        written::StageTimes,
        written::Mark,
        written::Caution,
        written::ToDo,
    ];
    text
}

#[cfg(test)]
mod tests {
    /// `cargo xtask bindings` sets this to write the file instead of comparing it.
    const UPDATE: &str = "UPDATE_BINDINGS";

    #[test]
    fn the_window_has_the_newest_types() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../../ui/src/bindings.ts");
        let now = super::typescript();
        if std::env::var_os(UPDATE).is_some() {
            std::fs::write(path, &now).expect("writes");
        }
        let there = std::fs::read_to_string(path).expect("reads");
        assert!(
            there == now,
            "ui/src/bindings.ts is old: run `cargo xtask bindings`"
        );
    }
}
