//! Heat index and wind chill against the weather services' formulas and charts.

use checks::courses::library;
use checks::{Found, Row, every_row};
use craft::course::WeatherGiven;
use craft::quantity::{Units, in_celsius, in_fahrenheit};
use craft::weather::{DayWeather, heat_index, wind_chill};
use files::quantity::{speed, temperature};

/// The tables give three decimals.
const LAST_DECIMAL: f64 = 0.000_6;

fn is_hot(row: &Row) -> Found {
    let air = temperature(row.text("temperature")).map_err(|wrong| row.fault(&wrong.what))?;
    let humidity = row.number("humidity") / 100.0;
    let ours = heat_index(air, humidity).ok_or_else(|| row.fault("there is no heat index"))?;
    let ours = in_fahrenheit(ours);
    let theirs = row.number("heat_index_f");
    row.near("the heat index", ours, theirs, LAST_DECIMAL)?;
    if row.given("chart_f").is_some() {
        row.near("to the degree", ours.round(), row.number("chart_f"), 1e-9)?;
    }
    let given = WeatherGiven {
        high: Some(air),
        humidity: Some(humidity),
        ..WeatherGiven::default()
    };
    let day = DayWeather::of(&given, &library().tables.weather, Units::Imperial);
    let name = day.heat_band.map_or_else(String::new, |band| band.name);
    // Our bands divide one of theirs: "danger, very high risk" is theirs of danger.
    let theirs = name.split(',').next().unwrap_or_default();
    row.same("the band", theirs, row.text("band"))
}

#[test]
fn the_heat_index_is_as_the_weather_service_works_it_out() {
    every_row("heat_index.csv", is_hot);
}

fn is_cold(row: &Row) -> Found {
    let air = temperature(row.text("temperature")).map_err(|wrong| row.fault(&wrong.what))?;
    let wind = speed(row.text("wind")).map_err(|wrong| row.fault(&wrong.what))?;
    let chill =
        |units| wind_chill(air, wind, units).ok_or_else(|| row.fault("there is no wind chill"));
    let ours = in_fahrenheit(chill(Units::Imperial)?);
    let theirs = row.number("chill_f");
    row.near("the wind chill", ours, theirs, LAST_DECIMAL)?;
    if row.given("chart_f").is_some() {
        row.near("to the degree", ours.round(), row.number("chart_f"), 1e-9)?;
    }
    let ours = in_celsius(chill(Units::Metric)?);
    row.near("in metric", ours, row.number("metric_c"), LAST_DECIMAL)
}

#[test]
fn the_wind_chill_is_as_the_weather_services_work_it_out() {
    every_row("wind_chill.csv", is_cold);
}
