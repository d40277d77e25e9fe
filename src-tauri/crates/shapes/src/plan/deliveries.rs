//! What stone is ordered and by when, as JSON.

use craft::deliveries::Ordered;
use craft::quantity::in_tonnes;
use serde::Serialize;

/// One kind of stone that is ordered by itself.
#[derive(Debug, Clone, Serialize)]
pub struct Delivery {
    /// `wall stone` or `drainage stone`.
    pub what: String,
    /// So much must come.
    pub mass_t: f64,
    /// In so many whole loads; null if the size of one is not given.
    pub loads: Option<usize>,
    /// One load.
    pub load_t: Option<f64>,
    /// All loads together.
    pub loads_t: Option<f64>,
    /// The last day to order.
    pub order_by: String,
    /// The last working day before the course.
    pub there_by: String,
}

impl Delivery {
    pub(super) fn of(delivery: &craft::deliveries::Delivery) -> Self {
        let loads = delivery.loads;
        Self {
            what: ordered_word(delivery.what).to_owned(),
            mass_t: in_tonnes(delivery.mass),
            loads: loads.map(|it| it.count),
            load_t: loads.map(|it| in_tonnes(it.each)),
            loads_t: loads.map(|it| in_tonnes(it.mass())),
            order_by: delivery.order_by.to_string(),
            there_by: delivery.there_by.to_string(),
        }
    }
}

/// The words for what is ordered.
pub(crate) fn ordered_word(what: Ordered) -> &'static str {
    match what {
        Ordered::WallStone => "wall stone",
        Ordered::DrainageStone => "drainage stone",
    }
}
