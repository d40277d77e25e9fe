//! Places on the map in both spellings that an emergency service asks for.

use checks::{Found, Row, every_row};
use shapes::written::Coordinates;

fn is_where_it_is(row: &Row) -> Found {
    let ours = Coordinates::of(row.number("latitude"), row.number("longitude"));
    for (column, ours) in [
        ("latitude_text", ours.latitude),
        ("longitude_text", ours.longitude),
        ("latitude_dms", ours.latitude_dms),
        ("longitude_dms", ours.longitude_dms),
    ] {
        row.same(column, &ours, row.text(column))?;
    }
    Ok(())
}

#[test]
fn a_place_reads_the_same_as_on_other_maps() {
    every_row("coordinates.csv", is_where_it_is);
}
