//! The comma as a decimal sign, where nobody can take it for anything else.

/// A text with its decimal commas as points, if it has any: `1,07 m` is `1.07 m`.
///
/// A comma with three digits behind it and no lone nought before it may also part thousands, as in
/// `1,250 kg`: such a text is left to be refused, because nothing is guessed.
pub fn with_points(text: &str) -> Option<String> {
    let signs: Vec<char> = text.chars().collect();
    let digit = |at: usize| signs.get(at).is_some_and(char::is_ascii_digit);
    let mut points = signs.clone();
    let mut found = false;
    for (at, _) in signs.iter().enumerate().filter(|(_, sign)| **sign == ',') {
        if at == 0 || !digit(at - 1) || !digit(at + 1) {
            continue;
        }
        let behind = (at + 1..).take_while(|it| digit(*it)).count();
        let before = (0..at).rev().take_while(|it| digit(*it)).count();
        let whole: String = signs[at - before..at].iter().collect();
        if behind == 3 && whole != "0" {
            return None;
        }
        points[at] = '.';
        found = true;
    }
    found.then(|| points.into_iter().collect())
}

#[cfg(test)]
mod tests {
    use super::with_points;

    #[test]
    fn a_comma_between_digits_is_a_point_unless_it_may_part_thousands() {
        for (typed, read) in [
            ("1,07 m", Some("1.07 m")),
            ("0,125 m", Some("0.125 m")),
            ("3,5", Some("3.5")),
            ("12,5 %", Some("12.5 %")),
            ("0,55 m, 0,9 m", Some("0.55 m, 0.9 m")),
            ("1,250 kg", None),
            ("1,2 and 1,250", None),
            ("Ann, Ben", None),
            ("1, 2", None),
            (",5 m", None),
            ("1.07 m", None),
            ("", None),
        ] {
            assert_eq!(with_points(typed).as_deref(), read, "{typed}");
        }
    }
}
