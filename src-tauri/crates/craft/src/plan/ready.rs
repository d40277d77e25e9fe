//! What of a plan is for the weeks before: loads, money and the list of what is not ready.

use super::Planner;
use crate::Error;
use crate::kit::KitLine;
use crate::loads::Loads;
use crate::money::Money;
use crate::readiness::{self, Planned, ToDo};
use crate::stone::Stone;

impl Planner<'_> {
    pub(super) fn loads(&self, kit: &[KitLine]) -> Result<Option<Loads>, Error> {
        let table = &self.tables.ready.loading;
        Loads::of_course(&self.course, kit, &self.tables.stages, table)
            .map_err(|error| error.shown_in(self.course.units))
    }

    pub(super) fn money(&self, stone: &Stone) -> Option<Money> {
        let good = self.pace.places.students_per_instructor;
        Money::of(&self.course, stone, good)
    }

    pub(super) fn to_do(&self, planned: Planned<'_>) -> Result<Vec<ToDo>, Error> {
        let list = readiness::to_do(&self.course, planned);
        readiness::check_marks(&self.course, &self.tables.ready, &self.tables.kit, &list)?;
        Ok(list)
    }
}
