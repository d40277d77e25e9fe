//! What a certain length of wall takes: its volumes, frames and stone, and the work in it.

use super::Planner;
use crate::Error;
use crate::course::Effect;
use crate::frames::Frames;
use crate::pace::crew::{self, Gang};
use crate::pace::programme::{Given, Programme};
use crate::pace::work::Amounts;
use crate::quantity::{Length, metres};
use crate::stone::Stone;
use crate::wall::{Line, Volumes, Wall};

/// What a certain length of wall takes.
pub(super) struct Built {
    pub(super) wall: Wall,
    pub(super) length: Length,
    pub(super) volumes: Volumes,
    pub(super) frames: Frames,
    pub(super) stone: Stone,
}

impl Planner<'_> {
    pub(super) fn build(&self, length: Length) -> Result<Built, Error> {
        let given = &self.course.wall;
        let wall = self.standing(length);
        wall.can_stand(given.footing.map_or(metres(0.0), |it| it.outset))
            .map_err(|error| error.shown_in(self.course.units))?;
        let volumes = Volumes::of(&wall, given.footing, given.cope_height);
        let frames = Frames::set_out(given, &wall, &self.course.frames, &self.tables.bars)?;
        let (stone, table) = (&self.course.stone, &self.tables.stone);
        let stone = Stone::of(given, &wall, &volumes, stone, table)?;
        Ok(Built {
            wall,
            length,
            volumes,
            frames,
            stone,
        })
    }

    /// The wall as it stands when it is so long.
    pub(super) fn standing(&self, length: Length) -> Wall {
        Wall {
            section: self.section,
            line: Line::of_length(&self.course.wall.line, length),
            ground: self.ground.clone(),
            top: self.course.wall.top,
        }
    }

    pub(super) fn gang(&self, built: &Built) -> Gang<'_> {
        let frames = &self.course.frames;
        let in_use = frames.in_stock.filter(|_| frames.leapfrog);
        Gang {
            group: &self.course.group,
            pace: &self.pace,
            room: crew::room(built.length, built.frames.rows.len(), in_use),
            waits_for_help: self.course.running.counts(Effect::Teaching),
        }
    }

    pub(super) fn amounts<'b>(&'b self, built: &'b Built) -> Amounts<'b> {
        Amounts {
            wall: &self.course.wall,
            standing: &built.wall,
            volumes: &built.volumes,
            frames: &built.frames,
            stone: &built.stone,
        }
    }

    pub(super) fn programme(&self, built: &Built) -> Programme {
        let given = Given {
            stages: &self.tables.stages,
            lessons: &self.tables.lessons,
            pace: &self.pace,
            running: &self.course.running,
            timed: &self.time.timed,
            spacing: self.course.frames.spacing,
        };
        Programme::new(&given, &self.amounts(built), &self.gang(built))
    }
}
