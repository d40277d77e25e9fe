//! Who or what moves a stone of a given mass: a person, a team, a bar, a plank, a machine.

use crate::quantity::{Length, Mass, kilograms};

/// Who or what moves a stone, the lightest means first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Answer {
    /// One person.
    OnePerson,
    /// Two people together.
    TwoPeople,
    /// Three people together.
    ThreePeople,
    /// A bar and rollers, near the ground.
    Bar,
    /// A plank or a ramp, higher up.
    Ramp,
    /// A machine, or another stone.
    Machine,
}

impl Answer {
    /// All of them, the lightest means first.
    pub const ALL: [Self; 6] = [
        Self::OnePerson,
        Self::TwoPeople,
        Self::ThreePeople,
        Self::Bar,
        Self::Ramp,
        Self::Machine,
    ];

    /// A short, fixed word for programs.
    pub fn id(self) -> &'static str {
        match self {
            Self::OnePerson => "one person",
            Self::TwoPeople => "two people",
            Self::ThreePeople => "three people",
            Self::Bar => "bar",
            Self::Ramp => "ramp",
            Self::Machine => "machine",
        }
    }

    /// What to do, as one sentence for the person who does it.
    pub fn sentence(self) -> &'static str {
        match self {
            Self::OnePerson => {
                "One person: stone close to the body, feet moved instead of the back turned, and only if it feels right to them."
            }
            Self::TwoPeople => {
                "Two people together, about the same height, one of them giving the word; agree beforehand how to let go."
            }
            Self::ThreePeople => {
                "Three people together, if all three find a hold and room to stand; one gives the word. If not, a bar or a plank."
            }
            Self::Bar => {
                "A bar and rollers: prise it up a little at a time, pack under it, walk or roll it into place. It is never lifted."
            }
            Self::Ramp => {
                "A plank or a ramp: two slide or roll it in stages and chock it at each; one gives the word, nobody stands below."
            }
            Self::Machine => {
                "A machine with someone trained to drive it, or leave it where it lies and pick smaller stone."
            }
        }
    }
}

/// What people together may lift, as a share of the sum of what each may lift.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Team {
    /// Two people.
    pub two: f64,
    /// Three people.
    pub three: f64,
}

/// What is moved without being lifted.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Heavy {
    /// The heaviest stone for a bar and rollers.
    pub bar_most: Mass,
    /// A bar and packing are used no higher above the ground than this.
    pub bar_height: Length,
    /// The heaviest stone for a plank or a ramp.
    pub ramp_most: Mass,
}

/// One means, and the heaviest stone it is for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Who or what.
    pub answer: Answer,
    /// Up to and with this mass; `None` for whatever is heavier.
    pub up_to: Option<Mass>,
}

/// The means for a lift, the lightest first, each for heavier stones than the one before; a
/// means that carries no more than the one before it is left out.
///
/// A team of n lifts `n · share · one`, `one` being what one person may lift. Past that the
/// stone is not lifted any more: a bar and rollers if the higher end of its way, `highest`,
/// is as near the ground as a bar and packing are used, else a plank; past those a machine.
pub fn steps(one: Mass, highest: Length, team: Team, heavy: &Heavy) -> Vec<Step> {
    let moved = if highest <= heavy.bar_height {
        (Answer::Bar, heavy.bar_most)
    } else {
        (Answer::Ramp, heavy.ramp_most)
    };
    let mut steps = Vec::new();
    let mut before = kilograms(0.0);
    for (answer, up_to) in [
        (Answer::OnePerson, one),
        (Answer::TwoPeople, one * (2.0 * team.two)),
        (Answer::ThreePeople, one * (3.0 * team.three)),
        moved,
    ] {
        if before < up_to {
            before = up_to;
            let up_to = Some(up_to);
            steps.push(Step { answer, up_to });
        }
    }
    steps.push(Step {
        answer: Answer::Machine,
        up_to: None,
    });
    steps
}

/// The lightest means of these that a stone takes; a mass that is no number takes a machine.
pub(super) fn for_mass(steps: &[Step], mass: Mass) -> Answer {
    let fits = |step: &&Step| step.up_to.is_some_and(|up_to| mass <= up_to);
    steps
        .iter()
        .find(fits)
        .map_or(Answer::Machine, |step| step.answer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::metres;

    const TEAM: Team = Team {
        two: 2.0 / 3.0,
        three: 0.5,
    };

    fn heavy() -> Heavy {
        Heavy {
            bar_most: kilograms(200.0),
            bar_height: metres(0.3),
            ramp_most: kilograms(75.0),
        }
    }

    fn answer(one: f64, highest: f64, mass: f64) -> Answer {
        let steps = steps(kilograms(one), metres(highest), TEAM, &heavy());
        for_mass(&steps, kilograms(mass))
    }

    /// By hand with 18 kg for one: two lift 2/3 of 36 = 24, three half of 54 = 27.
    #[test]
    fn the_answer_goes_by_mass() {
        for (mass, low, high) in [
            (18.0, Answer::OnePerson, Answer::OnePerson),
            (18.1, Answer::TwoPeople, Answer::TwoPeople),
            (23.9, Answer::TwoPeople, Answer::TwoPeople),
            (24.1, Answer::ThreePeople, Answer::ThreePeople),
            (27.0, Answer::ThreePeople, Answer::ThreePeople),
            (27.1, Answer::Bar, Answer::Ramp),
            (75.0, Answer::Bar, Answer::Ramp),
            (75.1, Answer::Bar, Answer::Machine),
            (200.1, Answer::Machine, Answer::Machine),
            (f64::NAN, Answer::Machine, Answer::Machine),
        ] {
            assert_eq!(answer(18.0, 0.1, mass), low, "{mass}");
            assert_eq!(answer(18.0, 0.5, mass), high, "{mass}");
        }
    }

    #[test]
    fn nobody_lifts_what_no_guide_allows() {
        assert_eq!(answer(0.0, 1.9, 1.0), Answer::Ramp);
        let only = steps(kilograms(0.0), metres(0.0), TEAM, &heavy());
        assert_eq!(only.len(), 2);
    }

    #[test]
    fn every_answer_is_a_sentence() {
        for one in Answer::ALL {
            let says = one.sentence();
            assert!(says.ends_with('.') && says.len() < 130, "{says}");
            assert!(says.to_lowercase().contains(one.id()), "{says}");
        }
    }
}
