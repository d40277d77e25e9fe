//! A time of day as a person types it, by the clock of 24 hours or of twice 12.

use chrono::NaiveTime;

/// `13:30`, `9.15`, `13:30:00`, `1:30 pm`, `1.30 p.m.`, `1 PM`; nothing for what is no time of day.
///
/// Twelve is noon with pm and midnight with am. A bare hour needs am or pm, for it could be a
/// count.
pub fn time_of_day(typed: &str) -> Option<NaiveTime> {
    let typed = typed.trim().to_lowercase();
    let (clock, half) = half_of_day(&typed);
    let mut parts = clock.split([':', '.']);
    let hour = number(parts.next()?, 1)?;
    let minute = match parts.next() {
        Some(minutes) => number(minutes, 2)?,
        None => half.map(|_| 0)?,
    };
    let second = parts.next().map_or(Some(0), |seconds| number(seconds, 2))?;
    if parts.next().is_some() {
        return None;
    }
    let hour = match half {
        None => hour,
        Some(after_noon) if (1..=12).contains(&hour) => hour % 12 + 12 * u32::from(after_noon),
        Some(_) => return None,
    };
    NaiveTime::from_hms_opt(hour, minute, second)
}

/// What the clock shows, and whether pm was said with it, or am.
fn half_of_day(typed: &str) -> (&str, Option<bool>) {
    for (words, after_noon) in [("p.m.", true), ("pm", true), ("a.m.", false), ("am", false)] {
        if let Some(clock) = typed.strip_suffix(words) {
            return (clock.trim_end(), Some(after_noon));
        }
    }
    (typed, None)
}

/// One or two digits, and no fewer than `least`.
fn number(digits: &str, least: usize) -> Option<u32> {
    let is_number =
        (least..=2).contains(&digits.len()) && digits.bytes().all(|it| it.is_ascii_digit());
    is_number.then(|| digits.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::time_of_day;

    #[test]
    fn times_are_read_by_both_clocks() {
        for (typed, read) in [
            ("13:30", "13:30:00"),
            ("9:05", "09:05:00"),
            (" 09.05 ", "09:05:00"),
            ("13:30:15", "13:30:15"),
            ("1:30 pm", "13:30:00"),
            ("1:30PM", "13:30:00"),
            ("1.30 p.m.", "13:30:00"),
            ("9 am", "09:00:00"),
            ("12 pm", "12:00:00"),
            ("12:15 a.m.", "00:15:00"),
            ("12:15 AM", "00:15:00"),
        ] {
            let time = time_of_day(typed).map(|it| it.to_string());
            assert_eq!(time.as_deref(), Some(read), "{typed}");
        }
    }

    #[test]
    fn what_is_no_time_of_day_is_none() {
        for typed in [
            "",
            "9",
            "9:5",
            "25:00",
            "13:60",
            "13:30 pm",
            "0:30 am",
            "half past",
            "am",
            "1:2:3:4",
            "-1:30",
            "+1:30",
            "9:30 xm",
            "1:30 pm pm",
            "\u{661}:30",
            "2027-04-24",
        ] {
            assert_eq!(time_of_day(typed), None, "{typed}");
        }
    }
}
