//! Figures and words in tables that people edit: what could not be is refused where it stands.

use crate::quantity;
use craft::tables::Applies;
use serde::de::{Deserialize, Deserializer, Error};

/// A length of more than nothing, written as a person writes it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WrittenLength(pub(crate) craft::quantity::Length);

impl<'de> Deserialize<'de> for WrittenLength {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        let length = quantity::length(&text)
            .map_err(|wrong| D::Error::custom(format!("{}; {}", wrong.what, wrong.cure)))?;
        if length.value <= 0.0 {
            return Err(D::Error::custom(format!("{text} is not more than nothing")));
        }
        Ok(Self(length))
    }
}

/// A mass of more than nothing, written as a person writes it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WrittenMass(pub(crate) craft::quantity::Mass);

impl<'de> Deserialize<'de> for WrittenMass {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        let mass = quantity::mass(&text)
            .map_err(|wrong| D::Error::custom(format!("{}; {}", wrong.what, wrong.cure)))?;
        if mass.value <= 0.0 {
            return Err(D::Error::custom(format!("{text} is not more than nothing")));
        }
        Ok(Self(mass))
    }
}

/// A temperature, written as a person writes it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WrittenTemperature(pub(crate) craft::quantity::Temperature);

impl<'de> Deserialize<'de> for WrittenTemperature {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        quantity::temperature(&text)
            .map(Self)
            .map_err(|wrong| D::Error::custom(format!("{}; {}", wrong.what, wrong.cure)))
    }
}

/// A speed of nothing or more, written as a person writes it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WrittenSpeed(pub(crate) craft::quantity::Speed);

impl<'de> Deserialize<'de> for WrittenSpeed {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        let speed = quantity::speed(&text)
            .map_err(|wrong| D::Error::custom(format!("{}; {}", wrong.what, wrong.cure)))?;
        if speed.value < 0.0 {
            return Err(D::Error::custom(format!("{text} is less than nothing")));
        }
        Ok(Self(speed))
    }
}

/// A number of more than nothing.
pub(super) fn positive<'de, D: Deserializer<'de>>(reader: D) -> Result<f64, D::Error> {
    number(reader, |number| 0.0 < number, "more than nothing")
}

/// A number of nothing or more.
pub(super) fn not_negative<'de, D: Deserializer<'de>>(reader: D) -> Result<f64, D::Error> {
    number(reader, |number| 0.0 <= number, "nothing or more")
}

/// A share from 0 to below 1.
pub(super) fn share<'de, D: Deserializer<'de>>(reader: D) -> Result<f64, D::Error> {
    number(
        reader,
        |share| (0.0..1.0).contains(&share),
        "a share from 0 to below 1",
    )
}

/// A share above 0, up to 1.
pub(super) fn part<'de, D: Deserializer<'de>>(reader: D) -> Result<f64, D::Error> {
    number(
        reader,
        |part| 0.0 < part && part <= 1.0,
        "a share above 0 and up to 1",
    )
}

/// The word for when a row applies.
pub(super) fn applies<'de, D: Deserializer<'de>>(reader: D) -> Result<Applies, D::Error> {
    let given = String::deserialize(reader)?;
    let known = Applies::ALL.into_iter().find(|it| it.word() == given);
    known.ok_or_else(|| {
        let words = Applies::ALL.map(Applies::word).join(", ");
        D::Error::custom(format!("\"{given}\" is not one of {words}"))
    })
}

fn number<'de, D: Deserializer<'de>>(
    reader: D,
    fits: impl Fn(f64) -> bool,
    due: &str,
) -> Result<f64, D::Error> {
    let number = f64::deserialize(reader)?;
    if number.is_finite() && fits(number) {
        return Ok(number);
    }
    Err(D::Error::custom(format!(
        "{number} stands where {due} is due"
    )))
}
