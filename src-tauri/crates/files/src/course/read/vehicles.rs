//! The vehicles that bring the tools.

use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::VehicleGiven;
use craft::quantity::{Mass, Read};

/// What any vehicle carries: from a handcart to a lorry.
const LEAST_KG: f64 = 10.0;
const MOST_KG: f64 = 40_000.0;

/// More people than travel in one vehicle.
const MOST_PEOPLE: u32 = 60;

pub(super) fn vehicles(root: &Section<'_>) -> Result<Vec<VehicleGiven>, Fault> {
    let mut vehicles: Vec<VehicleGiven> = Vec::new();
    for section in root.tables("vehicle")? {
        let one = vehicle(&section, &vehicles)?;
        vehicles.push(one);
    }
    Ok(vehicles)
}

fn vehicle(section: &Section<'_>, before: &[VehicleGiven]) -> Result<VehicleGiven, Fault> {
    section.only(&["name", "payload", "trailer", "people"])?;
    let payload = section.need(
        "payload",
        "say what it may carry, as its papers do: payload = \"700 kg\"",
    )?;
    Ok(VehicleGiven {
        name: name(section, before)?,
        payload: limit(&payload)?,
        trailer: section.get("trailer").map(|it| limit(&it)).transpose()?,
        people: section
            .get("people")
            .map_or(Ok(0), |it| it.whole(0, MOST_PEOPLE))?,
    })
}

fn name(section: &Section<'_>, before: &[VehicleGiven]) -> Result<String, Fault> {
    let entry = section.need("name", "give the vehicle a name: name = \"Van\"")?;
    let name = entry.text()?.trim();
    if name.is_empty() {
        return Err(entry.fault(
            "empty-text",
            "the name is empty",
            "call it what you call it",
        ));
    }
    if before.iter().any(|it| it.name == name) {
        return Err(entry.fault(
            "vehicle-twice",
            &format!("there is a \"{name}\" already"),
            "give each vehicle a name of its own",
        ));
    }
    Ok(name.to_owned())
}

fn limit(entry: &Entry<'_>) -> Result<Mass, Fault> {
    let mass = entry.mass(true)?;
    if (LEAST_KG..=MOST_KG).contains(&mass.si()) {
        return Ok(mass);
    }
    let what = if mass.si() < LEAST_KG {
        "this is less than any vehicle carries"
    } else {
        "this is more than any vehicle carries"
    };
    Err(entry.fault(
        "out-of-range",
        what,
        "between 10 kg and 40 t, as its papers say",
    ))
}

#[cfg(test)]
mod tests {
    use crate::bare::bare;
    use crate::course::CourseFile;
    use craft::quantity::{kilograms, tonnes};

    fn parse(more: &str) -> Result<CourseFile, crate::Fault> {
        CourseFile::parse(&format!("{}\n{more}", bare(false)))
    }

    #[test]
    fn vehicles_are_read_as_typed() {
        let file = parse(
            "[[vehicle]]\nname = \"Van\"\npayload = \"700 kg\"\ntrailer = \"0.5 t\"\npeople = 2\n[[vehicle]]\nname = \"Pick-up\"\npayload = \"1 t\"\n",
        );
        let vehicles = file.expect("sound").course.vehicles;
        assert_eq!(vehicles.len(), 2);
        assert_eq!(vehicles[0].trailer, Some(kilograms(500.0)));
        assert_eq!((vehicles[0].people, vehicles[1].people), (2, 0));
        assert_eq!(
            (vehicles[1].payload, vehicles[1].trailer),
            (tonnes(1.0), None)
        );
        assert!(parse("").expect("sound").course.vehicles.is_empty());
    }

    #[test]
    fn slips_are_told_at_their_key() {
        let van = "[[vehicle]]\nname = \"Van\"\n";
        for (text, key, words) in [
            (van.to_owned(), "vehicle.0.payload", "missing"),
            (
                format!("{van}payload = 700"),
                "vehicle.0.payload",
                "bare number",
            ),
            (
                format!("{van}payload = \"700 kilo\""),
                "vehicle.0.payload",
                "kilo",
            ),
            (
                format!("{van}payload = \"-700 kg\""),
                "vehicle.0.payload",
                "less than nothing",
            ),
            (
                format!("{van}payload = \"7 kg\""),
                "vehicle.0.payload",
                "less than any vehicle",
            ),
            (
                format!("{van}payload = \"700 t\""),
                "vehicle.0.payload",
                "more than any vehicle",
            ),
            (
                format!("{van}payload = \"1 t\"\ntrailer = \"0 kg\""),
                "vehicle.0.trailer",
                "less",
            ),
            (
                format!("{van}payload = \"1 t\"\npeople = 1.5"),
                "vehicle.0.people",
                "not a whole",
            ),
            (
                format!("{van}payload = \"1 t\"\npeople = -1"),
                "vehicle.0.people",
                "less than nothing",
            ),
            (
                format!("{van}payload = \"1 t\"\npeple = 1"),
                "vehicle.0.peple",
                "no key",
            ),
            (
                "[[vehicle]]\npayload = \"1 t\"".to_owned(),
                "vehicle.0.name",
                "missing",
            ),
            (
                "[[vehicle]]\nname = \" \"\npayload = \"1 t\"".to_owned(),
                "vehicle.0.name",
                "empty",
            ),
            (
                format!("{van}payload = \"1 t\"\n{van}payload = \"1 t\""),
                "vehicle.1.name",
                "already",
            ),
        ] {
            let fault = parse(&text).expect_err(&text);
            assert_eq!(fault.key, key, "{text}");
            assert!(fault.what.contains(words), "{text}: {}", fault.what);
        }
    }
}
