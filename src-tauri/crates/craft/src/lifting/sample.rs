//! Bodies, a lift and a small table for the tests of lifting.

use super::{Body, Grip, Hands, Heavy, Lift, PerMinute, Team, WorkTime};
use crate::quantity::{kilograms, metres};
use crate::tables::{HowLifted, LiftingPlace, LiftingTable, PlaceHeight, StageLift};

pub(super) fn men() -> Body {
    Body {
        shoulder: metres(1.425),
        elbow: metres(1.09),
        knuckle: metres(0.755),
        mid_lower_leg: metres(0.27),
        elbow_to_grip: metres(0.36),
        shoulder_to_grip: metres(0.665),
    }
}

pub(super) fn women() -> Body {
    Body {
        shoulder: metres(1.31),
        elbow: metres(1.005),
        knuckle: metres(0.72),
        mid_lower_leg: metres(0.25),
        elbow_to_grip: metres(0.33),
        shoulder_to_grip: metres(0.60),
    }
}

/// Close to the body, between knuckles and elbow, seldom, straight ahead.
pub(super) fn easy_lift() -> Lift {
    let hands = Hands {
        reach: metres(0.25),
        height: metres(0.9),
        twist_degrees: 0.0,
    };
    Lift {
        from: hands,
        to: hands,
        control: true,
        rate: PerMinute(0.2),
        work: WorkTime::Short,
        grip: Grip::Good,
    }
}

fn place(id: &str, height: PlaceHeight) -> LiftingPlace {
    LiftingPlace {
        id: id.to_owned(),
        name: format!("the {id}"),
        height,
        source: "made up".to_owned(),
    }
}

pub(crate) fn table() -> LiftingTable {
    let source = || "made up".to_owned();
    let ground = || place("ground", PlaceHeight::AboveGround(metres(0.0)));
    let lift = |stage: &str, to: LiftingPlace, rate: f64| StageLift {
        stage: stage.to_owned(),
        from: ground(),
        to,
        rate: PerMinute(rate),
        source: source(),
    };
    LiftingTable {
        lifts: vec![
            lift("footing", ground(), 0.2),
            lift("cope", place("top", PlaceHeight::Top), 0.5),
        ],
        hands: HowLifted {
            reach: metres(0.4),
            twist_degrees: 30.0,
            grip: Grip::Poor,
            hours: 4.5,
            carried: metres(5.0),
            source: source(),
        },
        men: men(),
        women: women(),
        body_source: source(),
        flat_stone: [3.0, 2.0, 1.0],
        flat_stone_source: source(),
        team: Team {
            two: 2.0 / 3.0,
            three: 0.5,
        },
        team_source: source(),
        heavy: Heavy {
            bar_most: kilograms(200.0),
            bar_height: metres(0.3),
            ramp_most: kilograms(75.0),
        },
        heavy_source: source(),
        limits: vec!["Made up.".to_owned()],
    }
}
