//! The lifting guide of a wall: what each guide allows at each stage, and how big such a stone is.

use super::answer::{Answer, Step, for_mass, steps};
use super::{Hands, Lift, People, Session, StoneSize, System, WorkTime, index};
use crate::quantity::{Density, Length, Mass, kilograms};
use crate::tables::{HowLifted, LiftingPlace, LiftingTable, PlaceHeight, StageLift};
use std::time::Duration;

/// What two published guides say of lifting the stones of a wall. Guidance with limits,
/// never permission.
#[derive(Debug, Clone, PartialEq)]
pub struct Guide {
    /// The lifts of the work, in its order.
    pub lifts: Vec<GuideLift>,
    /// The stones asked about, in the order they were given.
    pub stones: Vec<StoneAnswers>,
    /// How stone is held and moved in all of these lifts.
    pub hands: HowLifted,
    /// What the guides leave out; belongs beside every figure.
    pub limits: Vec<String>,
}

/// One lift, and what may be lifted so.
#[derive(Debug, Clone, PartialEq)]
pub struct GuideLift {
    /// The stage's id.
    pub stage: String,
    /// Where the stone is taken up, in words.
    pub from: String,
    /// Where it is set down, in words.
    pub to: String,
    /// The height of the hands there, above the ground.
    pub from_height: Length,
    /// The height of the hands there; never above the top of the wall.
    pub to_height: Length,
    /// Lifts to the minute of one person.
    pub per_minute: f64,
    /// What one person may lift by the NIOSH equation in its metric, more careful form: the
    /// worse of taking up and setting down. Nothing where the lift lies outside it.
    pub niosh: Mass,
    /// What a man may lift by the UK filter.
    pub men: Mass,
    /// What a woman may lift by the UK filter.
    pub women: Mass,
    /// The least of the three.
    pub one_person: Mass,
    /// How big a stone of that mass is.
    pub size: StoneSize,
    /// Who or what moves heavier stones.
    pub steps: Vec<Step>,
}

/// Who or what moves one stone.
#[derive(Debug, Clone, PartialEq)]
pub struct StoneAnswers {
    /// What the stone is called.
    pub name: String,
    /// Its mass.
    pub mass: Mass,
    /// For each of the guide's lifts, in their order.
    pub answers: Vec<Answer>,
}

impl GuideLift {
    /// Who or what moves a stone of this mass in this lift.
    pub fn answer(&self, mass: Mass) -> Answer {
        for_mass(&self.steps, mass)
    }

    /// How many times what one person may lift by NIOSH a stone of this mass is: its lifting
    /// index. `None` where NIOSH allows nothing.
    pub fn index(&self, mass: Mass) -> Option<f64> {
        index(mass, self.niosh)
    }
}

impl Guide {
    /// Who or what moves a stone of this mass at a stage, from the place that makes it
    /// easiest; `None` if nothing is lifted at that stage.
    pub fn easiest(&self, stage: &str, mass: Mass) -> Option<Answer> {
        let at_stage = self.lifts.iter().filter(|lift| lift.stage == stage);
        at_stage.map(|lift| lift.answer(mass)).min()
    }
}

/// The lifting guide of a wall of this rock.
///
/// `cope_height` is where the hands set a cope down: the height of the wall to the underside
/// of its cope and half a cope. Stones are named with their mass. A lift that a guide says
/// nothing of (a wall above reach, a load carried too far) is allowed nothing.
pub fn guide(
    table: &LiftingTable,
    density: Density,
    cope_height: Length,
    stones: &[(String, Mass)],
) -> Guide {
    let lifts: Vec<GuideLift> = table
        .lifts
        .iter()
        .map(|lift| lift_of(table, lift, density, cope_height))
        .collect();
    let stones = stones
        .iter()
        .map(|(name, mass)| StoneAnswers {
            name: name.clone(),
            mass: *mass,
            answers: lifts.iter().map(|lift| lift.answer(*mass)).collect(),
        })
        .collect();
    Guide {
        lifts,
        stones,
        hands: table.hands.clone(),
        limits: table.limits.clone(),
    }
}

fn lift_of(table: &LiftingTable, row: &StageLift, density: Density, top: Length) -> GuideLift {
    let from_height = hands_at(&row.from, top);
    let to_height = lower(hands_at(&row.to, top), top);
    let hands = |height| Hands {
        reach: table.hands.reach,
        height,
        twist_degrees: table.hands.twist_degrees,
    };
    let work = work_time(table.hands.hours);
    let lift = Lift {
        from: hands(from_height),
        to: hands(to_height),
        control: true,
        rate: row.rate,
        work: work.unwrap_or(WorkTime::Long),
        grip: table.hands.grip,
    };
    let niosh = match work {
        Some(_) => lift.limit(System::Metric),
        None => kilograms(0.0),
    };
    let men = People::Men.limit(&table.men, &lift, table.hands.carried);
    let women = People::Women.limit(&table.women, &lift, table.hands.carried);
    let highest = if from_height < to_height {
        to_height
    } else {
        from_height
    };
    let one_person = [men, women].into_iter().fold(niosh, lower);
    GuideLift {
        stage: row.stage.clone(),
        from: row.from.name.clone(),
        to: row.to.name.clone(),
        from_height,
        to_height,
        per_minute: row.rate.0,
        niosh,
        men,
        women,
        one_person,
        size: StoneSize::of(one_person, density, table.flat_stone),
        steps: steps(one_person, highest, table.team, &table.heavy),
    }
}

fn hands_at(place: &LiftingPlace, top: Length) -> Length {
    match place.height {
        PlaceHeight::AboveGround(height) => height,
        PlaceHeight::Top => top,
    }
}

/// A day's lifting, its breaks left out of account.
fn work_time(hours: f64) -> Option<WorkTime> {
    let work = Duration::try_from_secs_f64(hours * 3600.0).ok()?;
    WorkTime::of(&[Session {
        work,
        rest: Duration::ZERO,
    }])
}

/// The lower of two quantities; what is no number is passed on, for it must end at nothing.
fn lower<T: PartialOrd + Copy>(one: T, other: T) -> T {
    if one < other { one } else { other }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use crate::quantity::{Read, kg_per_m3, metres};

    fn sample_guide(cope_height: f64) -> Guide {
        let stones = [("through".to_owned(), kilograms(55.0))];
        guide(
            &sample::table(),
            kg_per_m3(2600.0),
            metres(cope_height),
            &stones,
        )
    }

    fn near(ours: Mass, theirs: f64) {
        assert!((ours.si() - theirs).abs() < 0.005, "{} {theirs}", ours.si());
    }

    /// By hand, hands 40 cm away, 30 degrees aside, poor grip, long: a footing stone from the
    /// ground to the ground, 0.2 to the minute:
    /// 23 · .625 · .775 · 1 · .904 · .85 · .9 = 7.70; filter below the leg: men
    /// 10 - 5 · .04/.1525 = 8.69, women 7 - 4 · .07/.135 = 4.93.
    /// A cope from the ground to 1.2 m, 0.5 to the minute, origin: D = 1.2 and DM = .8575,
    /// 23 · .625 · .775 · .8575 · .904 · .81 · .9 = 6.30; the destination, VM = .865,
    /// allows more.
    #[test]
    fn each_guide_says_what_it_says() {
        let guide = sample_guide(1.2);
        let [footing, cope] = &guide.lifts[..] else {
            panic!("two lifts");
        };
        near(footing.niosh, 7.70);
        near(footing.men, 8.69);
        near(footing.women, 4.93);
        near(footing.one_person, 4.93);
        near(cope.niosh, 6.30);
        near(cope.men, 8.69);
        near(cope.women, 4.93);
        // By hand: 20 / 7.70.
        let index = footing.index(kilograms(20.0));
        assert!(
            index.is_some_and(|it| (it - 2.60).abs() < 0.005),
            "{index:?}"
        );
        // 4.926 kg / 2600 kg/m3 is 0.001 895 m3.
        assert!((footing.size.cube.si() - 0.1237).abs() < 0.0001);
        assert!((cope.to_height.si() - 1.2).abs() < 1e-12);
    }

    #[test]
    fn a_through_is_barred_on_the_ground_and_ramped_up() {
        let guide = sample_guide(1.2);
        assert_eq!(guide.stones[0].answers, [Answer::Bar, Answer::Ramp]);
        let through = kilograms(55.0);
        assert_eq!(guide.easiest("footing", through), Some(Answer::Bar));
        assert_eq!(guide.easiest("sort", through), None);
        assert_eq!(guide.limits, sample::table().limits);
    }

    #[test]
    fn a_wall_above_reach_is_lifted_to_by_nobody() {
        let guide = sample_guide(1.8);
        near(guide.lifts[1].niosh, 0.0);
        near(guide.lifts[1].one_person, 0.0);
        assert_eq!(guide.lifts[1].index(kilograms(1.0)), None);
        assert_eq!(guide.lifts[1].answer(kilograms(1.0)), Answer::Ramp);
    }

    #[test]
    fn more_hours_than_the_equation_knows_allow_nothing() {
        let mut table = sample::table();
        for hours in [8.5, -1.0, f64::NAN] {
            table.hands.hours = hours;
            let guide = guide(&table, kg_per_m3(2600.0), metres(1.2), &[]);
            near(guide.lifts[0].niosh, 0.0);
        }
    }

    /// On a low wall no stone of the second lift goes higher than the wall does.
    #[test]
    fn nothing_is_set_above_the_top() {
        let mut table = sample::table();
        table.lifts[1].to.height = PlaceHeight::AboveGround(metres(0.9));
        let guide = guide(&table, kg_per_m3(2600.0), metres(0.7), &[]);
        assert!((guide.lifts[1].to_height.si() - 0.7).abs() < 1e-12);
    }
}
