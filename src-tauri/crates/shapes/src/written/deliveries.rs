//! What stone is ordered, in written figures: as it is said over the telephone.

use crate::clock::Clock;
use crate::plan::ordered_word;
use craft::quantity::{Units, show_count, show_mass};
use serde::Serialize;
use ts_rs::TS;

/// One kind of stone that is ordered by itself.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenDelivery")]
pub struct Delivery {
    /// `wall stone` or `drainage stone`.
    pub what: String,
    /// So much must come.
    pub mass: String,
    /// `2 loads`; this and the next two are empty if the size of a load is not given.
    pub loads: String,
    /// One load.
    pub load: String,
    /// All loads together.
    pub loads_mass: String,
    /// The last day to order.
    pub order_by: String,
    /// The last working day before the course.
    pub there_by: String,
}

impl Delivery {
    pub(super) fn of(delivery: &craft::deliveries::Delivery, units: Units, clock: &Clock) -> Self {
        let (loads, load, loads_mass) = match delivery.loads {
            None => (String::new(), String::new(), String::new()),
            Some(loads) => (
                show_count(loads.count, "load", "loads"),
                show_mass(loads.each, units),
                show_mass(loads.mass(), units),
            ),
        };
        Self {
            what: ordered_word(delivery.what).to_owned(),
            mass: show_mass(delivery.mass, units),
            loads,
            load,
            loads_mass,
            order_by: clock.date(delivery.order_by),
            there_by: clock.date(delivery.there_by),
        }
    }
}
