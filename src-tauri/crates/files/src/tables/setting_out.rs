//! `frames.toml` and `retaining.toml` as the sums want them.

use super::rows;
use craft::quantity::{kg_per_m, kg_per_m3, metres, newtons};
use craft::retaining::{Bank, Limits};
use craft::tables::{BoardTable, FrameTable, RetainingTable, StringTable};
use craft::timber::{Lumber, Timber};

/// Boards, strings and the rest.
pub(super) fn frames(file: rows::Frames) -> FrameTable {
    let (board, string, timber) = (file.board, file.string, file.timber);
    FrameTable {
        board: BoardTable {
            width: board.width.0,
            thickness: board.thickness.0,
            overhang: board.overhang.0,
            play: board.play.0,
            source: board.source,
        },
        string: StringTable {
            mass: kg_per_m(string.mass_g_per_m / 1000.0),
            pull: newtons(string.pull_n),
            tail: string.tail.0,
            source: string.source,
        },
        timber: Timber {
            width: timber.width.0,
            thickness: timber.thickness.0,
            projection: timber.projection.0,
            below_ground: metres(0.0),
            overhang: timber.overhang.0,
            lower_rail: timber.lower_rail.0,
            lumber: Lumber {
                stock_lengths: timber.stock_lengths.iter().map(|it| it.0).collect(),
                kerf: timber.kerf.0,
                end_waste: timber.end_waste.0,
            },
        },
        timber_source: timber.source,
        gap_play: file.footing.play.0,
        least_grip: file.footing.least_grip.0,
        footing_source: file.footing.source,
        end_course: file.head.course.0,
        end_source: file.head.source,
    }
}

/// What holds for walls that hold back a bank.
pub(super) fn retaining(file: rows::Retaining) -> RetainingTable {
    let (limits, bank) = (file.limits, file.bank);
    RetainingTable {
        limits: Limits {
            overturning: limits.overturning.value,
            sliding: limits.sliding.value,
            base_share: limits.base_share.value,
            permit_height: limits.permit_height.value.0,
        },
        bank: Bank {
            // The bank reaches to the top of whatever wall holds it, unless a course says less.
            retained: metres(0.0),
            fill: kg_per_m3(bank.fill_kg_m3.value),
            friction_degrees: bank.friction_degrees.value,
            wall_friction_degrees: bank.wall_friction_degrees.value,
            slope_degrees: bank.slope_degrees.value,
            load_kpa: bank.load_kpa.value,
            base_friction_degrees: bank.base_friction_degrees.value,
        },
        drainage: file.drainage.thickness.0,
        drainage_density: kg_per_m3(file.drainage.kg_m3),
        ask: file.ask.text,
        ask_source: file.ask.source,
        assumptions: file.assumption.into_iter().map(|it| it.text).collect(),
    }
}
