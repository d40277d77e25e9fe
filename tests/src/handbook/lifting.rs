//! Lifting: the NIOSH equation against its manual, and the UK filter against its figures.

use checks::{Found, Row, every_row};
use craft::lifting::{
    Band, Body, Grip, Hands, Lift, Multipliers, People, PerMinute, Reach, Session, System,
    WorkTime, Zone, index,
};
use craft::quantity::{INCH_M, Length, Mass, POUND_KG, Read, kilograms, metres};
use std::time::Duration;

/// The system of a row, with its units of length and mass.
fn units(row: &Row) -> Result<(System, f64, f64), String> {
    match row.text("units") {
        "lb in" => Ok((System::Us, INCH_M, POUND_KG)),
        "kg cm" => Ok((System::Metric, 0.01, 1.0)),
        other => Err(row.fault(&format!("no such units: {other}"))),
    }
}

fn grip(row: &Row) -> Result<Grip, String> {
    match row.text("grip") {
        "good" => Ok(Grip::Good),
        "fair" => Ok(Grip::Fair),
        "poor" => Ok(Grip::Poor),
        other => Err(row.fault(&format!("no such grip: {other}"))),
    }
}

/// Close to the body at a height, straight ahead.
fn hands(height: Length) -> Hands {
    Hands {
        reach: metres(0.25),
        height,
        twist_degrees: 0.0,
    }
}

fn lift(from: Hands, to: Hands) -> Lift {
    Lift {
        from,
        to,
        control: false,
        rate: PerMinute(0.2),
        work: WorkTime::Short,
        grip: Grip::Good,
    }
}

/// Multipliers of a worksheet, two decimals each, multiplied as it does.
fn printed(row: &Row) -> Multipliers {
    let number = |column| row.number(column);
    Multipliers {
        reach: number("HM"),
        height: number("VM"),
        travel: number("DM"),
        twist: number("AM"),
        frequency: number("FM"),
        grip: number("CM"),
    }
}

fn index_is(row: &Row, column: &str, load: Mass, limit: Mass, within: f64) -> Found {
    match (index(load, limit), row.given(column)) {
        (None, None) => Ok(()),
        (Some(ours), Some(_)) => row.near(column, ours, row.number(column), within),
        (ours, theirs) => Err(row.fault(&format!("{column} is {ours:?}, not {theirs:?}"))),
    }
}

/// A worksheet rounds the limit before it divides the load by it.
fn worksheet(row: &Row) -> Found {
    let (system, _, mass_kg) = units(row)?;
    let limit = printed(row).limit(system);
    let written_down = row.number("limit");
    row.near("limit", limit.si() / mass_kg, written_down, 0.0501)?;
    let load = kilograms(row.number("load") * mass_kg);
    index_is(
        row,
        "index",
        load,
        kilograms(written_down * mass_kg),
        0.0501,
    )
}

#[test]
fn lifts_come_out_as_on_a_worksheet() {
    every_row("niosh_lifts.csv", worksheet);
}

fn measured(row: &Row, system: System, length_m: f64) -> Result<(Lift, Hands), String> {
    let length = |column| metres(row.number(column) * length_m);
    let at = |height| Hands {
        reach: length("reach"),
        height,
        twist_degrees: row.number("twist"),
    };
    let lift = Lift {
        control: false,
        rate: PerMinute(row.number("rate")),
        work: match row.text("work") {
            "1" => WorkTime::Short,
            "2" => WorkTime::Moderate,
            "8" => WorkTime::Long,
            other => return Err(row.fault(&format!("no such working time: {other}"))),
        },
        grip: grip(row)?,
        from: at(length("from")),
        to: at(length("to")),
    };
    let end = match row.text("end") {
        "origin" => lift.from,
        "destination" => lift.to,
        other => return Err(row.fault(&format!("no such end: {other}"))),
    };
    // Whoever needs the lift as a whole gets the lower of both ends.
    let whole = Lift {
        control: true,
        ..lift
    };
    if lift.multipliers(end, system).limit(system) < whole.limit(system) {
        return Err(row.fault("the whole lift is allowed more than one of its ends"));
    }
    Ok((lift, end))
}

fn in_full(row: &Row) -> Found {
    if row.given("end").is_none() {
        return Ok(());
    }
    let (system, length_m, mass_kg) = units(row)?;
    let (lift, end) = measured(row, system, length_m)?;
    let ours = lift.multipliers(end, system);
    let theirs = printed(row);
    for (what, ours, theirs) in [
        ("HM", ours.reach, theirs.reach),
        ("VM", ours.height, theirs.height),
        ("DM", ours.travel, theirs.travel),
        ("AM", ours.twist, theirs.twist),
        ("FM", ours.frequency, theirs.frequency),
        ("CM", ours.grip, theirs.grip),
    ] {
        row.near(what, ours, theirs, 0.0056)?;
    }
    let limit = ours.limit(system);
    let number = limit.si() / mass_kg;
    row.near("full limit", number, row.number("full_limit"), 0.000_51)?;
    let load = kilograms(row.number("load") * mass_kg);
    index_is(row, "full_index", load, limit, 0.000_51)
}

#[test]
fn lifts_come_out_in_full() {
    every_row("niosh_lifts.csv", in_full);
}

fn one_multiplier(row: &Row) -> Found {
    let (system, length_m, _) = units(row)?;
    let value = row.number("value");
    let length = metres(value * length_m);
    let mut it = lift(hands(metres(0.5)), hands(metres(0.5)));
    let of = |it: &Lift| it.multipliers(it.from, system);
    let ours = match row.text("multiplier") {
        "HM" => {
            it.from.reach = length;
            of(&it).reach
        }
        "VM" => {
            it.from.height = length;
            of(&it).height
        }
        "DM" => {
            it.to.height = it.from.height + length;
            of(&it).travel
        }
        "AM" => {
            it.from.twist_degrees = value;
            of(&it).twist
        }
        "CM" => {
            it.from.height = length;
            it.grip = grip(row)?;
            of(&it).grip
        }
        other => return Err(row.fault(&format!("no such multiplier: {other}"))),
    };
    row.near(
        row.text("multiplier"),
        ours,
        row.number("printed"),
        row.number("within"),
    )
}

#[test]
fn multipliers_are_what_the_tables_print() {
    every_row("niosh_multipliers.csv", one_multiplier);
}

fn frequency(row: &Row) -> Found {
    let rate = PerMinute(row.number("rate"));
    for (column, work, band) in [
        ("1_below", WorkTime::Short, Band::Below),
        ("1_above", WorkTime::Short, Band::AtOrAbove),
        ("2_below", WorkTime::Moderate, Band::Below),
        ("2_above", WorkTime::Moderate, Band::AtOrAbove),
        ("8_below", WorkTime::Long, Band::Below),
        ("8_above", WorkTime::Long, Band::AtOrAbove),
    ] {
        let ours = rate.multiplier(work, band);
        row.near(column, ours, row.number(column), 1e-9)?;
    }
    Ok(())
}

#[test]
fn the_frequency_table_is_the_published_one() {
    every_row("niosh_frequency.csv", frequency);
}

fn work_time(row: &Row) -> Found {
    let minutes = |text: &str| text.parse().map(|it: u64| Duration::from_secs(it * 60));
    let sessions = row.text("sessions").split(';').map(|text| {
        let (work, rest) = text.split_once('+')?;
        Some(Session {
            work: minutes(work).ok()?,
            rest: minutes(rest).ok()?,
        })
    });
    let day: Option<Vec<Session>> = sessions.collect();
    let day = day.ok_or_else(|| row.fault("sessions are written as 30+10;45+0"))?;
    let ours = match WorkTime::of(&day) {
        Some(WorkTime::Short) => "short",
        Some(WorkTime::Moderate) => "moderate",
        Some(WorkTime::Long) => "long",
        None => "",
    };
    row.same("the working time", ours, row.text("counts_as"))
}

#[test]
fn a_day_of_lifting_counts_as_the_manual_says() {
    every_row("niosh_work_times.csv", work_time);
}

fn filter_weight(row: &Row) -> Found {
    let zone = match row.text("zone") {
        "above shoulder" => Zone::AboveShoulder,
        "elbow to shoulder" => Zone::ElbowToShoulder,
        "knuckle to elbow" => Zone::KnuckleToElbow,
        "leg to knuckle" => Zone::LegToKnuckle,
        "below leg" => Zone::BelowLeg,
        other => return Err(row.fault(&format!("no such zone: {other}"))),
    };
    let reach = match row.text("reach") {
        "close" => Reach::Close,
        "extended" => Reach::Extended,
        other => return Err(row.fault(&format!("no such reach: {other}"))),
    };
    for (column, people) in [("men", People::Men), ("women", People::Women)] {
        let ours = zone.weight(people, reach).si();
        row.near(column, ours, row.number(column), 1e-9)?;
    }
    Ok(())
}

#[test]
fn the_filter_weights_are_the_published_ones() {
    every_row("lifting_filter.csv", filter_weight);
    let rows = checks::rows("lifting_filter.csv");
    assert_eq!(rows.len(), 2 * Zone::ALL.len());
}

fn reduction(row: &Row) -> Found {
    // A body of round figures; the hands stay between its knuckles and its elbow.
    let body = Body {
        shoulder: metres(1.4),
        elbow: metres(1.1),
        knuckle: metres(0.7),
        mid_lower_leg: metres(0.3),
        elbow_to_grip: metres(0.35),
        shoulder_to_grip: metres(0.65),
    };
    let mut it = lift(hands(metres(0.8)), hands(metres(1.0)));
    it.rate = PerMinute(row.number("rate"));
    it.to.twist_degrees = row.number("twist");
    let ours = People::Men.limit(&body, &it, metres(row.number("carried")));
    let whole = Zone::KnuckleToElbow.weight(People::Men, Reach::Close);
    let left = ours.si() / whole.si() * 100.0;
    row.near("per cent left", left, row.number("left"), 1e-9)
}

#[test]
fn the_filter_is_reduced_as_published() {
    every_row("lifting_reductions.csv", reduction);
}
