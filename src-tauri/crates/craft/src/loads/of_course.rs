//! What of a course travels, and in what: the tool list as pieces, the vehicles as holds.

use super::{Hold, Loads, Piece};
use crate::Error;
use crate::course::{Course, VehicleGiven};
use crate::kit::KitLine;
use crate::quantity::{Read, kilograms};
use crate::tables::{LoadingTable, Stage};

/// `needed_for` of a tool that is needed from the beginning.
const ALL: &str = "all";

impl Loads {
    /// The tools of a course in its vehicles; nothing where no vehicle is given.
    ///
    /// # Errors
    /// As [`holds`].
    pub fn of_course(
        course: &Course,
        kit: &[KitLine],
        stages: &[Stage],
        table: &LoadingTable,
    ) -> Result<Option<Self>, Error> {
        if course.vehicles.is_empty() {
            return Ok(None);
        }
        let holds = holds(&course.vehicles, table)?;
        Ok(Some(Self::of(&pieces(kit, stages), &holds)))
    }
}

/// The tool list as pieces. A tool for no stage of the table is taken to be needed from the
/// beginning, which is never too late.
pub fn pieces(kit: &[KitLine], stages: &[Stage]) -> Vec<Piece> {
    let first_needed = |stage: &str| {
        let place = stages.iter().position(|it| it.id == stage && stage != ALL);
        place.map_or(0, |place| place + 1)
    };
    kit.iter()
        .map(|line| Piece {
            name: line.item.clone(),
            count: line.need,
            each: line.each,
            first_needed: first_needed(&line.needed_for),
            safety: line.safety_critical,
        })
        .collect()
}

/// Vehicles as holds, each followed by its trailer: payload less the people in it.
///
/// # Errors
/// [`Error::PeopleFillVehicle`] if they leave nothing for tools.
pub fn holds(vehicles: &[VehicleGiven], table: &LoadingTable) -> Result<Vec<Hold>, Error> {
    let mut holds = Vec::new();
    for (at, vehicle) in vehicles.iter().enumerate() {
        let limit = vehicle.payload - table.person * f64::from(vehicle.people);
        if limit.si() <= 0.0 {
            return Err(Error::PeopleFillVehicle {
                vehicle: at,
                people: vehicle.people,
                person: table.person,
                payload: vehicle.payload,
                units: None,
            });
        }
        holds.push(Hold {
            name: vehicle.name.clone(),
            limit,
        });
        let trailer = vehicle.trailer.filter(|limit| kilograms(0.0) < *limit);
        holds.extend(trailer.map(|limit| Hold {
            name: format!("{}: trailer", vehicle.name),
            limit,
        }));
    }
    Ok(holds)
}
