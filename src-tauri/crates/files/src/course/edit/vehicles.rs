//! Vehicles added and dropped.

use super::tables::{put_in, take_out};
use super::{checked, parsed, text_value};
use crate::Fault;
use crate::course::CourseFile;
use craft::quantity::Units;

/// What a new vehicle may carry until its instructor has typed in what its papers say: less
/// than any van does (common practice, no source).
const PAYLOAD: (&str, &str) = ("300 kg", "650 lb");

/// The text with one more vehicle: a small one, for its limits to be typed in.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_vehicle(text: &str) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let taken = |name: &str| course.vehicles.iter().any(|it| it.name == name);
    let numbered = (2..).map(|number| format!("Van {number}"));
    let name = std::iter::once("Van".to_owned())
        .chain(numbered)
        .find(|name| !taken(name))
        .unwrap_or_default();
    let payload = match course.units {
        Units::Metric => PAYLOAD.0,
        Units::Imperial => PAYLOAD.1,
    };
    let keys = [("name", name.as_str()), ("payload", payload)];
    let keys = keys.map(|(key, value)| (key, text_value(value)));
    put_in(&mut document, "vehicle", None, &keys)?;
    checked(document, text)
}

/// The text without one vehicle, counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_vehicle(text: &str, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    take_out(&mut document, "vehicle", at);
    checked(document, text)
}

#[cfg(test)]
mod tests {
    use super::super::set;
    use super::*;
    use crate::bare::bare;

    fn names(text: &str) -> Vec<String> {
        let course = CourseFile::parse(text).expect("sound").course;
        course.vehicles.into_iter().map(|it| it.name).collect()
    }

    #[test]
    fn vehicles_come_and_go() {
        let text = bare(false);
        let one = add_vehicle(text).expect("a van");
        assert_eq!(
            one,
            format!("{text}\n[[vehicle]]\nname = \"Van\"\npayload = \"300 kg\"\n")
        );
        let two = add_vehicle(&one).expect("two vans");
        assert_eq!(names(&two), ["Van", "Van 2"]);
        let typed = set(&two, "vehicle.1.payload", "1.1 t").expect("a payload");
        let typed = set(&typed, "vehicle.1.trailer", "500 kg").expect("a trailer");
        assert!(
            typed.contains("payload = \"1.1 t\"\ntrailer = \"500 kg\"\n"),
            "{typed}"
        );
        let less = remove_vehicle(&typed, 0).expect("one van");
        assert_eq!(names(&less), ["Van 2"]);
        assert_eq!(remove_vehicle(&one, 0).expect("none"), text);
        assert_eq!(remove_vehicle(text, 0).expect("as it was"), text);
        assert_eq!(remove_vehicle(&one, 7).expect("as it was"), one);
        assert!(add_vehicle(bare(true)).expect("a van").contains("650 lb"));
    }

    #[test]
    fn vehicles_on_one_line_come_and_go_as_well() {
        let text = bare(false);
        let line = "vehicle = [{ name = \"Van\", payload = \"1 t\" }]\n\n[venue]";
        let text = text.replacen("[venue]", line, 1);
        let two = add_vehicle(&text).expect("two vans");
        assert_eq!(names(&two), ["Van", "Van 2"]);
        assert_eq!(names(&remove_vehicle(&two, 0).expect("one")), ["Van 2"]);
        let none = remove_vehicle(&text, 0).expect("none");
        assert!(names(&none).is_empty() && !none.contains("vehicle"));
    }
}
