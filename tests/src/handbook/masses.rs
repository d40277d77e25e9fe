//! How heavy stone and walls are: densities, voids, tonnes to the metre.

use checks::courses::{library, parsed, with};
use checks::{Found, Row, every_row};
use craft::plan::{Plan, plan};
use craft::quantity::{Read, in_tonnes};
use craft::tables::{Rock, Spread, Tables};

/// Standard gravity in m/s2, exact by definition.
const GRAVITY: f64 = 9.80665;

/// The wall of `mass_per_metre.csv`, one metre of it, without throughs.
fn usual_wall(stone: &str) -> String {
    with(&[
        ("\"1.07 m\"", "\"1.15 m\""),
        ("\"0.41 m\"", "\"0.35 m\""),
        ("batter = 6", "batter = 6.571428571428571"),
        ("length = \"6 m\"", "length = \"1 m\""),
        ("through_rows = [\"0.55 m\"]\n", ""),
        (
            "kind = \"limestone\"\ndensity = \"2600 kg/m3\"\nvoids = 0.25\n",
            stone,
        ),
    ])
}

fn planned(text: &str, tables: &Tables) -> Plan {
    plan(&parsed(text).course, tables).unwrap_or_else(|error| panic!("{error}"))
}

fn weighs_to_the_metre(row: &Row) -> Found {
    let mut tables = Tables::clone(&library().tables);
    tables.stone.cope_fill.centre = row.number("cope_fill");
    let stone = format!(
        "density = \"{} kg/m3\"\nvoids = {}\n",
        row.text("density_kg_m3"),
        row.text("voids")
    );
    let plan = planned(&usual_wall(&stone), &tables);
    let [body, footing, cope] = [plan.volumes.body, plan.volumes.footing, plan.volumes.cope];
    let gross = (body + footing + cope).si();
    row.near("gross area in m2", gross, 0.81125, 1e-9)?;
    let ours = in_tonnes(plan.stone.built());
    row.near("t/m", ours, row.number("t_per_m"), row.number("within"))
}

#[test]
fn a_worked_wall_weighs_what_it_should() {
    every_row("mass_per_metre.csv", weighs_to_the_metre);
}

#[test]
fn our_own_cope_is_among_the_worked_walls() {
    let ours = library().tables.stone.cope_fill.centre;
    let rows = checks::rows("mass_per_metre.csv");
    let worked = rows.iter().any(|row| {
        row.text("case").contains("our cope") && (row.number("cope_fill") - ours).abs() < 1e-12
    });
    assert!(
        worked,
        "the table's cope fill is {ours} now: work it by hand"
    );
}

fn usual(row: &Row) -> Found {
    let tables = &library().tables;
    for rock in &tables.stone.rocks {
        let plan = planned(&usual_wall(&format!("kind = \"{}\"\n", rock.key)), tables);
        let ours = in_tonnes(plan.stone.built());
        let what = format!("a metre of {}, in tonnes,", rock.key);
        row.between(&what, ours, row.number("low"), row.number("high"))?;
    }
    Ok(())
}

#[test]
fn a_field_wall_of_any_rock_weighs_what_such_walls_weigh() {
    every_row("usual_masses.csv", usual);
}

fn unit_weight(row: &Row) -> Found {
    let stone = format!(
        "density = \"{} kg/m3\"\nvoids = {}\n",
        row.text("density_kg_m3"),
        row.text("voids")
    );
    let bare = usual_wall(&stone).replace("cope_height = \"0.25 m\"\n", "");
    let bare = bare.replace(
        "footing = { depth = \"0.15 m\", outset = \"0.05 m\" }\n",
        "",
    );
    let plan = planned(&bare, &library().tables);
    let ours = plan.stone.built().si() * GRAVITY / 1000.0 / plan.volumes.body.si();
    row.near("kN/m3", ours, row.number("weight_kn_m3"), 0.000_6)
}

#[test]
fn a_cubic_metre_of_wall_weighs_what_it_should() {
    every_row("unit_weights.csv", unit_weight);
}

fn rock<'t>(row: &Row, tables: &'t Tables) -> Result<&'t Rock, String> {
    let key = row.text("rock");
    let mut rocks = tables.stone.rocks.iter();
    rocks
        .find(|rock| rock.key == key)
        .ok_or_else(|| row.fault("there is no such rock"))
}

fn published(row: &Row) -> Found {
    let rock = rock(row, &library().tables)?;
    let unit = match row.text("unit") {
        "kg/m3" => 1.0,
        "g/cm3" | "t/m3" => 1000.0,
        "kN/m3" => 1000.0 / GRAVITY,
        other => return Err(row.fault(&format!("no such unit: {other}"))),
    };
    // A bound that is met exactly may miss by what the change of unit rounds away.
    let slack = 1e-6;
    let [low, high] = [
        row.number("low") * unit - slack,
        row.number("high") * unit + slack,
    ];
    let middle = rock.density.si();
    match row.text("check") {
        "range" => {
            row.between("our low", rock.low.si(), low, high)?;
            row.between("our high", rock.high.si(), low, high)?;
            row.between("our middle", middle, low, high)
        }
        "middle" => row.between("our middle", middle, low, high),
        "load" => row.between("our middle", middle, 0.0, high),
        other => Err(row.fault(&format!("no such check: {other}"))),
    }
}

#[test]
fn densities_lie_within_published_ranges() {
    every_row("densities.csv", published);
}

#[test]
fn every_rock_of_the_table_is_vouched_for() {
    let rows = checks::rows("densities.csv");
    for rock in &library().tables.stone.rocks {
        let vouched = rows
            .iter()
            .any(|row| row.text("rock") == rock.key && row.text("check") == "range");
        assert!(vouched, "densities.csv has no range for {}", rock.key);
        let ordered = rock.low < rock.density && rock.density < rock.high;
        assert!(ordered, "{}: low, middle and high out of order", rock.key);
        assert!(!rock.source.is_empty(), "{} has no source", rock.key);
    }
}

fn share(row: &Row) -> Found {
    let stone = &library().tables.stone;
    let share: &Spread = match row.text("share") {
        "voids" => &stone.voids,
        "hearting_share" => &stone.hearting_share,
        "waste" => &stone.waste,
        other => return Err(row.fault(&format!("no such share: {other}"))),
    };
    for (what, ours) in [
        ("low", share.low),
        ("centre", share.centre),
        ("high", share.high),
    ] {
        row.between(what, ours, row.number("low"), row.number("high"))?;
    }
    let ordered = share.low < share.centre && share.centre < share.high;
    if ordered {
        Ok(())
    } else {
        Err(row.fault("low, centre and high are out of order"))
    }
}

#[test]
fn shares_lie_where_they_should() {
    every_row("shares.csv", share);
}
