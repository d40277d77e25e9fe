//! The course days: their hours, their breaks, and the weather the forecast gives them.

use crate::Fault;
use crate::course::node::Section;
use chrono::{NaiveTime, TimeDelta};
use craft::course::{Break, Day, Spell, WeatherGiven};
use craft::quantity::{Temperature, in_celsius};

pub(super) fn days(root: &Section<'_>) -> Result<Vec<Day>, Fault> {
    let sections = root.tables("day")?;
    if sections.is_empty() {
        return Err(root.fault(
            "missing-key",
            "there is no course day".to_owned(),
            "add a [[day]] with date, start and finish",
        ));
    }
    let mut days: Vec<Day> = Vec::new();
    for section in &sections {
        let day = day(section, days.last())?;
        days.push(day);
    }
    Ok(days)
}

fn day(section: &Section<'_>, before: Option<&Day>) -> Result<Day, Fault> {
    section.only(&["date", "start", "finish", "breaks", "weather", "rain"])?;
    let date_entry = section.need("date", "give the day's date, such as 2027-04-24")?;
    let date = date_entry.date()?;
    if let Some(before) = before.filter(|before| date <= before.date) {
        let what = if date == before.date {
            format!("{date} is there twice")
        } else {
            format!("{date} stands after {}", before.date)
        };
        return Err(date_entry.fault("date-order", &what, "give each day once, in order"));
    }
    let start = section
        .need("start", "say when the day begins, such as 09:00:00")?
        .time()?;
    let finish_entry = section.need("finish", "say when the day ends, such as 16:30:00")?;
    let finish = finish_entry.time()?;
    if finish <= start {
        return Err(finish_entry.fault(
            "finish-before-start",
            &format!("the day ends at {finish}, not after its start at {start}"),
            "give a finish later than the start",
        ));
    }
    let hours = (start, finish);
    Ok(Day {
        date,
        start,
        finish,
        breaks: breaks(section, hours)?,
        weather: WeatherGiven {
            rain: rain(section, hours)?,
            ..weather(&section.section("weather")?)?
        },
    })
}

/// When the day begins and ends.
type Hours = (NaiveTime, NaiveTime);

fn breaks(section: &Section<'_>, hours: Hours) -> Result<Vec<Break>, Fault> {
    let mut breaks = Vec::new();
    let mut last_end = None;
    for section in section.tables("breaks")? {
        section.only(&["name", "start", "minutes"])?;
        let (start, minutes) = BREAK.piece(&section, hours, &mut last_end)?;
        let name = section.get("name").map_or(Ok("Break"), |it| it.text())?;
        breaks.push(Break {
            name: name.to_owned(),
            start,
            minutes,
        });
    }
    Ok(breaks)
}

fn rain(section: &Section<'_>, hours: Hours) -> Result<Vec<Spell>, Fault> {
    let mut spells = Vec::new();
    let mut last_end = None;
    for section in section.tables("rain")? {
        section.only(&["start", "minutes"])?;
        let (start, minutes) = RAIN.piece(&section, hours, &mut last_end)?;
        spells.push(Spell { start, minutes });
    }
    Ok(spells)
}

/// The words for a piece of the day that must lie within it and beside the others.
struct Piece {
    name: &'static str,
    when_cure: &'static str,
    how_long_cure: &'static str,
    outside: &'static str,
    outside_cure: &'static str,
    overlap: &'static str,
    overlap_cure: &'static str,
}

const BREAK: Piece = Piece {
    name: "break",
    when_cure: "say when the break begins, such as 12:30:00",
    how_long_cure: "say how long the break lasts",
    outside: "break-outside-day",
    outside_cure: "move the break or the day's hours",
    overlap: "breaks-overlap",
    overlap_cure: "give the breaks in order, none inside another",
};

const RAIN: Piece = Piece {
    name: "rain",
    when_cure: "say when the rain begins, such as 14:00:00",
    how_long_cure: "say how many minutes the rain lasts",
    outside: "rain-outside-day",
    outside_cure: "give the rain that falls within the day's hours alone",
    overlap: "rain-overlaps",
    overlap_cure: "give the spells of rain in order, none inside another",
};

impl Piece {
    /// The piece this table gives; `last_end` is when the one before it ended, and is moved on.
    fn piece(
        &self,
        section: &Section<'_>,
        (day_start, day_finish): Hours,
        last_end: &mut Option<NaiveTime>,
    ) -> Result<(NaiveTime, u32), Fault> {
        let name = self.name;
        let start_entry = section.need("start", self.when_cure)?;
        let start = start_entry.time()?;
        let minutes = section
            .need("minutes", self.how_long_cure)?
            .whole(1, 1440)?;
        let end = start + TimeDelta::minutes(minutes.into());
        // A piece past midnight comes round to a time before its start, one of a whole day to it.
        if start < day_start || day_finish < end || end <= start {
            let what = format!(
                "the {name} from {start} to {end} is outside the day, {day_start} to {day_finish}"
            );
            return Err(start_entry.fault(self.outside, &what, self.outside_cure));
        }
        if let Some(last_end) = last_end.filter(|last_end| start < *last_end) {
            let what = format!(
                "the {name} at {start} begins before the one before it ends, at {last_end}"
            );
            return Err(start_entry.fault(self.overlap, &what, self.overlap_cure));
        }
        *last_end = Some(end);
        Ok((start, minutes))
    }
}

/// All but the rain, which stands beside the other weather as breaks do.
fn weather(section: &Section<'_>) -> Result<WeatherGiven, Fault> {
    section.only(&["high", "low", "humidity", "wind", "full_sun"])?;
    let high = section.get("high").map(|it| it.temperature()).transpose()?;
    Ok(WeatherGiven {
        high,
        low: low(section, high)?,
        humidity: section
            .get("humidity")
            .map(|it| it.humidity())
            .transpose()?,
        wind: section.get("wind").map(|it| it.speed()).transpose()?,
        full_sun: section.get("full_sun").map_or(Ok(false), |it| it.truth())?,
        rain: Vec::new(),
    })
}

/// 10 °C and 50 °F are the same but for rounding.
const HAIR: f64 = 1e-6;

fn low(section: &Section<'_>, high: Option<Temperature>) -> Result<Option<Temperature>, Fault> {
    let Some(entry) = section.get("low") else {
        return Ok(None);
    };
    let low = entry.temperature()?;
    let [low_c, high_c] = [Some(low), high].map(|it| it.map(in_celsius));
    if let (Some(low), Some(high)) = (low_c, high_c)
        && high + HAIR < low
    {
        return Err(entry.fault(
            "low-above-high",
            &format!("the low of {low:.1} °C is above the high of {high:.1} °C"),
            "give the warmest of the day as high and the coldest as low",
        ));
    }
    Ok(Some(low))
}

#[cfg(test)]
mod tests {
    use crate::course::CourseFile;
    use crate::{Fault, Library};
    use chrono::NaiveTime;
    use craft::course::WeatherGiven;
    use craft::quantity::{in_celsius, in_kilometres_per_hour};

    /// The example with these lines at the head of its first day.
    fn with(lines: &str) -> Result<WeatherGiven, Fault> {
        let text = Library::example(false).replacen("[[day]]\n", &format!("[[day]]\n{lines}\n"), 1);
        let file = CourseFile::parse(&text)?;
        Ok(file.course.days[0].weather.clone())
    }

    #[test]
    fn the_forecast_is_read_as_it_is_typed() {
        let given = with(
            "weather = { high = \"24 C\", low = \"12 °C\", humidity = 1, wind = \"20 km/h\", \
             full_sun = true }\nrain = [ { start = 14:00:00, minutes = 90 } ]",
        )
        .expect("a forecast");
        let close = |ours: Option<f64>, theirs: f64| {
            assert!(ours.is_some_and(|ours| (ours - theirs).abs() < 1e-9));
        };
        close(given.high.map(in_celsius), 24.0);
        close(given.low.map(in_celsius), 12.0);
        close(given.wind.map(in_kilometres_per_hour), 20.0);
        close(given.humidity, 1.0);
        assert!(given.full_sun);
        assert_eq!(given.rain[0].minutes, 90);
        let end = NaiveTime::from_hms_opt(15, 30, 0).expect("a time");
        assert_eq!(given.rain[0].end(), end);
    }

    #[test]
    fn nothing_said_is_nothing_guessed() {
        assert_eq!(with("").expect("a day"), WeatherGiven::default());
    }

    #[test]
    fn a_forecast_that_can_not_be_is_refused() {
        for (lines, code, key) in [
            ("weather = { high = 24 }", "wrong-kind", "high"),
            ("weather = { high = \"24\" }", "not-a-quantity", "high"),
            ("weather = { high = \"61 C\" }", "out-of-range", "high"),
            ("weather = { low = \"-61 C\" }", "out-of-range", "low"),
            (
                "weather = { high = \"10 C\", low = \"51 F\" }",
                "low-above-high",
                "low",
            ),
            ("weather = { humidity = 60 }", "out-of-range", "humidity"),
            ("weather = { humidity = nan }", "out-of-range", "humidity"),
            ("weather = { wind = \"-5 mph\" }", "out-of-range", "wind"),
            ("weather = { wind = \"201 km/h\" }", "out-of-range", "wind"),
            ("weather = { wnid = \"5 mph\" }", "unknown-key", "wnid"),
            ("weather = { full_sun = \"yes\" }", "wrong-kind", "full_sun"),
        ] {
            let fault = with(lines).expect_err(lines);
            assert_eq!(
                (fault.code, &*fault.key),
                (code, &*format!("day.0.weather.{key}"))
            );
        }
        for edge in [
            "weather = { high = \"60 C\", low = \"60 C\", wind = \"200 km/h\", humidity = 0 }",
            "weather = { high = \"140 F\", low = \"-60 C\", wind = \"0 mph\", humidity = 1.0 }",
            "weather = { low = \"-76 F\" }",
            "weather = { high = \"10 C\", low = \"50 F\" }",
            "weather = { high = \"50 F\", low = \"10 C\" }",
        ] {
            assert!(with(edge).is_ok(), "{edge}");
        }
    }

    /// The day goes from 9:00 to 17:00.
    #[test]
    fn rain_falls_in_order_within_the_day() {
        let spells = |spells: &[(&str, u32)]| {
            let one = |(start, minutes): &(&str, u32)| {
                format!("{{ start = {start}:00, minutes = {minutes} }}")
            };
            let list: Vec<String> = spells.iter().map(one).collect();
            with(&format!("rain = [ {} ]", list.join(", "))).map_err(|fault| fault.code)
        };
        assert!(spells(&[("09:00", 60), ("10:00", 420)]).is_ok());
        for (bad, code) in [
            (&[("08:30", 60)][..], "rain-outside-day"),
            (&[("16:30", 60)], "rain-outside-day"),
            (&[("16:30", 1440)], "rain-outside-day"),
            (&[("10:00", 60), ("10:59", 5)], "rain-overlaps"),
            (&[("12:00", 60), ("10:00", 5)], "rain-overlaps"),
            (&[("12:00", 0)], "out-of-range"),
        ] {
            assert_eq!(spells(bad), Err(code), "{bad:?}");
        }
    }
}
