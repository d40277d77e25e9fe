//! Quantities with dimensions: SI inside, made and read in a named unit.
//!
//! The types are `uom`'s, so that a length can't be added to a mass and two lengths
//! multiplied are an area. The short functions and methods here are the only way in and out.

mod show;
mod weather;

pub use show::{
    Units, round_to_mark, show_area, show_count, show_length, show_mark, show_mass, show_roughly,
    show_share, show_small, show_volume,
};
pub use uom::si::f64::{
    Area, Force, Length, LinearMassDensity, Mass, MassDensity as Density, Volume,
};
pub use weather::{
    Speed, Temperature, TemperatureRise, celsius, fahrenheit, fahrenheit_degrees, in_celsius,
    in_fahrenheit, in_kilometres_per_hour, in_miles_per_hour, kilometres_per_hour, knots,
    metres_per_second, miles_per_hour, show_speed, show_temperature,
};

use uom::si::area::square_meter;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::linear_mass_density::kilogram_per_meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::volume::cubic_meter;

/// One inch in metres, exact (international yard and pound agreement, 1959).
pub const INCH_M: f64 = 0.0254;
/// One foot in metres, exact (international yard and pound agreement, 1959).
pub const FOOT_M: f64 = 0.3048;
/// One pound in kilograms, exact (international yard and pound agreement, 1959).
pub const POUND_KG: f64 = 0.453_592_37;
/// One short ton (2,000 lb) in kilograms, exact.
pub const SHORT_TON_KG: f64 = 2000.0 * POUND_KG;

/// A length of so many metres.
pub fn metres(value: f64) -> Length {
    Length::new::<meter>(value)
}

/// A length of so many millimetres.
pub fn millimetres(value: f64) -> Length {
    metres(value / 1000.0)
}

/// An area of so many square metres.
pub fn square_metres(value: f64) -> Area {
    Area::new::<square_meter>(value)
}

/// A volume of so many cubic metres.
pub fn cubic_metres(value: f64) -> Volume {
    Volume::new::<cubic_meter>(value)
}

/// A mass of so many kilograms.
pub fn kilograms(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}

/// A mass of so many tonnes.
pub fn tonnes(value: f64) -> Mass {
    kilograms(value * 1000.0)
}

/// A density of so many kilograms to the cubic metre.
pub fn kg_per_m3(value: f64) -> Density {
    Density::new::<kilogram_per_cubic_meter>(value)
}

/// A mass per length of so many kilograms to the metre.
pub fn kg_per_m(value: f64) -> LinearMassDensity {
    LinearMassDensity::new::<kilogram_per_meter>(value)
}

/// A force of so many newtons.
pub fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

/// Reading a quantity as a number in a named unit, for the edges of the program.
pub trait Read {
    /// The number of SI base units: metres, square metres, cubic metres, kilograms,
    /// kilograms to the cubic metre or to the metre, newtons, kelvin, metres to the second.
    fn si(self) -> f64;
}

impl Read for Length {
    fn si(self) -> f64 {
        self.get::<meter>()
    }
}

impl Read for Area {
    fn si(self) -> f64 {
        self.get::<square_meter>()
    }
}

impl Read for Volume {
    fn si(self) -> f64 {
        self.get::<cubic_meter>()
    }
}

impl Read for Mass {
    fn si(self) -> f64 {
        self.get::<kilogram>()
    }
}

impl Read for Density {
    fn si(self) -> f64 {
        self.get::<kilogram_per_cubic_meter>()
    }
}

impl Read for Force {
    fn si(self) -> f64 {
        self.get::<newton>()
    }
}

impl Read for LinearMassDensity {
    fn si(self) -> f64 {
        self.get::<kilogram_per_meter>()
    }
}

/// A mass as a number of tonnes.
pub fn in_tonnes(mass: Mass) -> f64 {
    mass.si() / 1000.0
}

/// The whole number of `step`s that cover `whole`, at least one.
///
/// `n = ceil(whole / step)`; a remainder below one part in a thousand million is taken
/// for rounding, so that 1.1 m in steps of 0.1 m is 11 and not 12.
pub fn steps_to_cover(whole: Length, step: Length) -> usize {
    let exact = (whole / step).get::<uom::si::ratio::ratio>();
    whole_number((exact - 1e-9).ceil().max(1.0))
}

/// A float known to hold a small whole number, as that number; what is no number is 0.
pub fn whole_number(value: f64) -> usize {
    // The cast saturates and sends NaN to 0, which is what a count of nothing should be.
    value as usize
}
