//! A wall as it stands: its section along its line, on its ground, under its top.

use super::line::{Bend, Line};
use super::{Across, Ground, Section, Side};
use crate::Error;
use crate::quantity::{Length, Read, metres};

/// How the top of a wall runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Top {
    /// Level all along.
    Level,
    /// So far above the ground on the centre line as at station 0.
    FollowsGround,
    /// Level for a length, then up or down by whole steps of a height, so that each length
    /// comes as near as it can to the height at station 0 above the ground at its middle.
    Stepped {
        /// Of one level length.
        length: Length,
        /// Of one step.
        height: Length,
    },
}

/// A wall as it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Wall {
    /// At station 0.
    pub section: Section,
    /// Its centre line.
    pub line: Line,
    /// The ground.
    pub ground: Ground,
    /// How its top runs.
    pub top: Top,
}

/// A piece of wall along which everything changes evenly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Level of its top at both ends.
    pub top: [Length; 2],
    /// Its height at both ends: top less ground, on the centre line.
    pub height: [Length; 2],
    /// How it bends.
    pub bend: Option<Bend>,
}

impl Wall {
    /// A straight wall on level ground.
    pub fn plain(section: Section, length: Length) -> Self {
        Self {
            section,
            line: Line::straight(length),
            ground: Ground::default(),
            top: Top::Level,
        }
    }

    /// Along the centre line.
    pub fn length(&self) -> Length {
        self.line.length()
    }

    /// Whether it comes round to where it began, and so has no ends.
    pub fn is_ring(&self) -> bool {
        self.line.closes()
    }

    /// The level of the top at a station, `Z`; at a step, that of the length beyond it.
    pub fn top_level(&self, station: Length) -> Length {
        let ground = |at| self.ground.level(Across::Centre, at);
        match self.top {
            Top::Level => ground(metres(0.0)) + self.section.height(),
            Top::FollowsGround => ground(station) + self.section.height(),
            Top::Stepped { length, .. } => {
                // A hair beyond a step counts as beyond it, whatever the last digit says.
                self.step_level((station.si() / length.si() + 1e-9).floor().max(0.0))
            }
        }
    }

    /// The top of the level length with this number, counted from 0.
    fn step_level(&self, number: f64) -> Length {
        let first = self.ground.level(Across::Centre, metres(0.0));
        let Top::Stepped { length, height } = self.top else {
            return first + self.section.height();
        };
        if number < 0.5 {
            return first + self.section.height();
        }
        let middle = length * (number + 0.5);
        let risen = self.ground.level(Across::Centre, middle) - first;
        first + self.section.height() + height * (risen.si() / height.si()).round()
    }

    /// The level of the board at a station: at a step, the higher side's.
    pub fn board_level(&self, station: Length) -> Length {
        let hair = metres(1e-6);
        let before = self.top_level(if station < hair {
            station
        } else {
            station - hair
        });
        let after = self.top_level(if self.length() <= station {
            station - hair
        } else {
            station
        });
        match self.top {
            Top::Stepped { .. } if after < before => before,
            Top::Stepped { .. } => after,
            Top::Level | Top::FollowsGround => self.top_level(station),
        }
    }

    /// Local height: board less ground on the centre line.
    pub fn height_at(&self, station: Length) -> Length {
        self.board_level(station) - self.ground.level(Across::Centre, station)
    }

    /// Ground to the underside of the board at a face, plumb: `Z - g`.
    pub fn rise(&self, side: Side, station: Length) -> Length {
        self.board_level(station) - self.ground.level(Across::Face(side), station)
    }

    /// Centre line to a face at the ground: `T/2 + (Z - g)/n`.
    pub fn offset(&self, side: Side, station: Length) -> Length {
        self.section.offset(side, self.rise(side, station))
    }

    /// Where the top steps, between the ends.
    pub fn steps(&self) -> Vec<Length> {
        let Top::Stepped { length, .. } = self.top else {
            return Vec::new();
        };
        let mut steps = Vec::new();
        let mut number = 1.0;
        while length * number < self.length() {
            if self.step_level(number) != self.step_level(number - 1.0) {
                steps.push(length * number);
            }
            number += 1.0;
        }
        steps
    }

    /// The wall in pieces along which everything changes evenly: from joint to joint of the
    /// line, from one surveyed station to the next, from step to step.
    pub fn pieces(&self) -> Vec<Piece> {
        let surveyed = self.ground.surveyed().iter().map(|survey| survey.station);
        let mut breaks: Vec<Length> = surveyed.chain(self.steps()).collect();
        breaks.sort_by(|a, b| a.si().total_cmp(&b.si()));
        let mut pieces = Vec::new();
        for (from, to, bend) in self.line.spans() {
            let mut at = from;
            let inside = breaks.iter().filter(|one| from < **one && **one < to);
            for &next in inside.chain(std::iter::once(&to)) {
                if at < next {
                    pieces.push(self.piece(at, next, bend));
                }
                at = next;
            }
        }
        pieces
    }

    fn piece(&self, from: Length, to: Length, bend: Option<Bend>) -> Piece {
        let top = match self.top {
            // The level of the whole piece is that of its middle: a step is at its end.
            Top::Stepped { .. } => [self.top_level((from + to) / 2.0); 2],
            Top::Level | Top::FollowsGround => [from, to].map(|at| self.top_level(at)),
        };
        let ground = [from, to].map(|at| self.ground.level(Across::Centre, at));
        Piece {
            from,
            to,
            top,
            height: [top[0] - ground[0], top[1] - ground[1]],
            bend,
        }
    }

    /// Refuses what can't be built: ground that rises to the top, and an arc whose inner
    /// face would lie beyond its centre. `outset`: how far the footing stands out.
    ///
    /// # Errors
    /// [`Error::GroundAboveTop`], [`Error::RadiusTooSmall`].
    pub fn can_stand(&self, outset: Length) -> Result<(), Error> {
        for piece in self.pieces() {
            for (at, top) in [(piece.from, piece.top[0]), (piece.to, piece.top[1])] {
                self.rises_above_ground(at, top)?;
                self.bends_freely(&piece, at, top, outset)?;
            }
        }
        Ok(())
    }

    fn rises_above_ground(&self, at: Length, top: Length) -> Result<(), Error> {
        let across = [
            (Across::Centre, "level"),
            (Across::Face(Side::Left), "left"),
            (Across::Face(Side::Right), "right"),
        ];
        for (across, key) in across {
            let ground = self.ground.level(across, at);
            if top <= ground {
                let surveyed = self.ground.surveyed().iter();
                let number = surveyed.enumerate().find(|(_, one)| one.station == at);
                return Err(Error::GroundAboveTop {
                    survey: number.map(|(number, _)| (number, key)),
                    station: at,
                    ground,
                    top,
                    units: None,
                });
            }
        }
        Ok(())
    }

    fn bends_freely(
        &self,
        piece: &Piece,
        at: Length,
        top: Length,
        outset: Length,
    ) -> Result<(), Error> {
        let Some(bend) = piece.bend else {
            return Ok(());
        };
        let rise = top - self.ground.level(Across::Face(bend.turn), at);
        let inner = self.section.offset(bend.turn, rise) + outset;
        let half = self.section.base_width() / 2.0;
        let least = if inner < half { half } else { inner };
        if bend.radius < least {
            let middle = (piece.from + piece.to) / 2.0;
            return Err(Error::RadiusTooSmall {
                stretch: self
                    .line
                    .spans()
                    .take_while(|(_, to, _)| *to < middle)
                    .count(),
                radius: bend.radius,
                least,
                station: at,
                units: None,
            });
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Batter, Survey};

    fn sloping(top: Top) -> Wall {
        let six = Batter::one_in(6.0).expect("sound");
        let survey = |station: f64, level: f64| Survey {
            station: metres(station),
            level: metres(level),
            left: metres(level),
            right: metres(level - 0.06),
        };
        Wall {
            section: Section::new(metres(1.2), metres(0.4), six, six).expect("sound"),
            line: Line::straight(metres(10.0)),
            ground: Ground::new(vec![survey(0.0, 0.0), survey(10.0, -0.5)]),
            top,
        }
    }

    /// By hand: 4 m along, the ground has fallen 0.2 m; the right face 0.06 m more.
    #[test]
    fn rises_and_offsets_on_falling_ground() {
        let wall = sloping(Top::Level);
        let at = metres(4.0);
        assert!((wall.height_at(at).si() - 1.4).abs() < 1e-12);
        assert!((wall.rise(Side::Right, at).si() - 1.46).abs() < 1e-12);
        let offset = wall.offset(Side::Right, at).si();
        assert!((offset - (0.2 + 1.46 / 6.0)).abs() < 1e-12);
        let following = sloping(Top::FollowsGround);
        assert!((following.height_at(at).si() - 1.2).abs() < 1e-12);
    }

    /// By hand: level lengths of 2.5 m; at their middles (3.75, 6.25, 8.75 m) the ground has
    /// fallen 0.1875, 0.3125 and 0.4375 m: one, two and two steps of 0.2 m.
    #[test]
    fn a_stepped_top_follows_in_whole_steps() {
        let wall = sloping(Top::Stepped {
            length: metres(2.5),
            height: metres(0.2),
        });
        for (at, top) in [(0.0, 1.2), (2.4, 1.2), (2.5, 1.0), (5.0, 0.8), (9.9, 0.8)] {
            assert!(
                (wall.top_level(metres(at)).si() - top).abs() < 1e-12,
                "{at}"
            );
        }
        assert_eq!(wall.steps(), [metres(2.5), metres(5.0)]);
        assert!((wall.board_level(metres(2.5)).si() - 1.2).abs() < 1e-12);
        assert_eq!(wall.pieces().len(), 3);
    }

    #[test]
    fn ground_above_the_top_and_too_tight_an_arc_are_refused() {
        let mut wall = sloping(Top::Level);
        assert!(wall.can_stand(metres(0.1)).is_ok());
        wall.line = Line::of_length(
            &[crate::wall::Stretch {
                length: metres(1.0),
                bend: Some(Bend {
                    radius: metres(0.45),
                    turn: Side::Right,
                }),
            }],
            metres(1.0),
        );
        // The right face stands 0.2 + 1.26/6 + 0.1 = 0.51 m off, and more as the ground falls.
        assert!(matches!(
            wall.can_stand(metres(0.1)),
            Err(Error::RadiusTooSmall { .. })
        ));
        let mut buried = sloping(Top::Level);
        buried.ground = Ground::new(vec![Survey {
            station: metres(5.0),
            level: metres(0.0),
            left: metres(1.2),
            right: metres(0.0),
        }]);
        assert!(matches!(
            buried.can_stand(metres(0.0)),
            Err(Error::GroundAboveTop { .. })
        ));
    }
}
