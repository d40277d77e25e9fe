//! Time zones by country, with the place each is named after, and how a country writes.

use crate::Error;
use crate::course::{Language, Paper};
use crate::shelf::Text;
use craft::quantity::Units;
use serde::Deserialize;

/// The table of time zones.
#[derive(Debug, Clone)]
pub struct Zones {
    /// The zones, country by country; the usual one of a country comes first.
    pub zones: Vec<Zone>,
    letter_paper: Vec<String>,
    feet_and_inches: Vec<String>,
    american: Vec<String>,
}

/// A time zone of a country.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    /// The country, as two letters of ISO 3166-1.
    pub country: String,
    /// The zone's IANA name.
    pub name: String,
    /// Of the place the zone is named after: degrees, north positive.
    pub latitude: f64,
    /// Of the same place: degrees, east positive.
    pub longitude: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Rows {
    #[serde(rename = "source")]
    _source: String,
    letter_paper: Vec<String>,
    #[serde(rename = "letter_paper_source")]
    _letter_paper_source: String,
    feet_and_inches: Vec<String>,
    american: Vec<String>,
    #[serde(rename = "words_source")]
    _words_source: String,
    zones: Vec<(String, String, f64, f64)>,
}

impl Zones {
    /// The built-in table.
    ///
    /// # Errors
    /// [`Error::Refused`] if it is broken.
    pub fn built_in() -> Result<Self, Error> {
        let path = "tables/zones.toml";
        let text = Text::built_in(path).ok_or_else(|| Error::Read {
            path: path.into(),
            cause: std::io::ErrorKind::NotFound.into(),
        })?;
        let rows: Rows = text.toml()?;
        let zone = |(country, name, latitude, longitude)| Zone {
            country,
            name,
            latitude,
            longitude,
        };
        Ok(Self {
            zones: rows.zones.into_iter().map(zone).collect(),
            letter_paper: rows.letter_paper,
            feet_and_inches: rows.feet_and_inches,
            american: rows.american,
        })
    }

    /// The zone of this name in this country, else anywhere; nothing for a zone that is not in
    /// the table, as an old name or one of the sea.
    pub fn named(&self, name: &str, country: &str) -> Option<&Zone> {
        let named = || self.zones.iter().filter(|it| it.name == name);
        named()
            .find(|it| it.country == country)
            .or_else(|| named().next())
    }

    /// The paper of a country, as its code; A4 where nothing is known.
    pub fn paper(&self, country: &str) -> Paper {
        if self.letter_paper.iter().any(|it| it == country) {
            Paper::Letter
        } else {
            Paper::A4
        }
    }

    /// The units a country builds in.
    pub fn units(&self, country: &str) -> Units {
        if self.feet_and_inches.iter().any(|it| it == country) {
            Units::Imperial
        } else {
            Units::Metric
        }
    }

    /// The spelling and the dates of a country.
    pub fn language(&self, country: &str) -> Language {
        if self.american.iter().any(|it| it == country) {
            Language::EnUs
        } else {
            Language::EnGb
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use chrono_tz::Tz;

    #[test]
    fn every_zone_is_known_and_lies_on_the_globe() {
        let zones = Zones::built_in().expect("sound").zones;
        assert!(400 < zones.len(), "{}", zones.len());
        for zone in zones {
            assert!(zone.name.parse::<Tz>().is_ok(), "{}", zone.name);
            assert!(zone.latitude.abs() <= 90.0, "{}", zone.name);
            assert!(zone.longitude.abs() <= 180.0, "{}", zone.name);
        }
    }

    #[test]
    fn every_country_with_an_emergency_number_has_a_zone() {
        let zones = Zones::built_in().expect("sound").zones;
        for country in Library::built_in().expect("sound").countries {
            let has = zones.iter().any(|it| it.country == country.code);
            assert!(has, "{}", country.name);
        }
    }

    #[test]
    fn a_country_says_how_it_writes() {
        let zones = Zones::built_in().expect("sound");
        assert_eq!(zones.paper("CA"), Paper::Letter);
        assert_eq!(zones.units("CA"), Units::Metric);
        assert_eq!(zones.language("US"), Language::EnUs);
        assert_eq!(zones.paper(""), Paper::A4);
        let toronto = zones.named("America/Toronto", "CA").expect("a zone");
        assert_eq!((toronto.latitude, toronto.longitude), (43.65, -79.38));
        assert_eq!(zones.named("Europe/Nowhere", "GB"), None);
    }
}
