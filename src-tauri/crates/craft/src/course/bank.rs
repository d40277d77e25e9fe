//! The bank behind a retaining wall, as the instructor knows it.

use crate::quantity::{Density, Length};
use crate::wall::Side;

/// The bank behind a retaining wall; what is not said comes from the table.
#[derive(Debug, Clone, PartialEq)]
pub struct BankGiven {
    /// The side it lies on.
    pub side: Side,
    /// Thickness of the drainage stone behind the wall.
    pub drainage: Option<Length>,
    /// How high it leans against the wall; up to the top if it is not said.
    pub height: Option<Length>,
    /// What it is made of, as it lies.
    pub fill: Option<Density>,
    /// The friction angle within it, in degrees.
    pub friction_degrees: Option<f64>,
    /// The friction angle between it and the back of the wall, in degrees.
    pub wall_friction_degrees: Option<f64>,
    /// The friction angle under the wall, in degrees.
    pub base_friction_degrees: Option<f64>,
    /// How steeply the ground above rises from the wall, in degrees.
    pub slope_degrees: Option<f64>,
    /// What stands, drives or is stored above, in kN/m2.
    pub load_kpa: Option<f64>,
    /// It stands near a boundary.
    pub near_boundary: bool,
    /// It stands near a building.
    pub near_building: bool,
}
