//! How a sum of money is written.

/// Currencies without a smaller coin in use (ISO 4217, minor unit 0; from memory).
const WHOLE: [&str; 16] = [
    "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV",
    "XAF", "XOF", "XPF",
];

/// `GBP 1,240`, `GBP 12.50`, `GBP -45.50`: the letters of the currency as given (none if
/// they are not), thousands apart, and two decimals where the amount is not whole and the
/// currency has them.
pub fn show_money(amount: f64, currency: Option<&str>) -> String {
    let whole_only = currency.is_some_and(|letters| WHOLE.contains(&letters));
    let cents = if whole_only {
        amount.abs().round() * 100.0
    } else {
        (amount.abs() * 100.0).round()
    };
    let digits = format!("{cents:.0}");
    let (whole, decimals) = digits.split_at(digits.len().saturating_sub(2));
    let whole = if whole.is_empty() { "0" } else { whole };
    let sign = if amount < 0.0 && 0.0 < cents { "-" } else { "" };
    let decimals = match decimals {
        "00" | "0" => String::new(),
        one if one.len() == 1 => format!(".0{one}"),
        two => format!(".{two}"),
    };
    let letters = currency.map_or_else(String::new, |letters| format!("{letters} "));
    format!("{letters}{sign}{}{decimals}", apart(whole))
}

/// A price as it was typed, where it goes finer than two decimals: `GBP 0.042`.
pub(super) fn show_price(amount: f64, currency: Option<&str>) -> String {
    let cents = amount * 100.0;
    if (cents - cents.round()).abs() < 1e-6 {
        return show_money(amount, currency);
    }
    let letters = currency.map_or_else(String::new, |letters| format!("{letters} "));
    format!("{letters}{amount}")
}

/// Digits with a comma before every three from the end.
fn apart(digits: &str) -> String {
    let mut apart = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if 0 < at && (digits.len() - at).is_multiple_of(3) {
            apart.push(',');
        }
        apart.push(digit);
    }
    apart
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Written by hand: what a person would put on an invoice.
    #[test]
    fn money_reads_as_a_person_writes_it() {
        for (amount, currency, written) in [
            (0.0, Some("GBP"), "GBP 0"),
            (0.05, Some("GBP"), "GBP 0.05"),
            (0.5, Some("GBP"), "GBP 0.50"),
            (12.5, Some("GBP"), "GBP 12.50"),
            (999.995, Some("GBP"), "GBP 1,000"),
            (1240.0, Some("EUR"), "EUR 1,240"),
            (12_345.678, Some("USD"), "USD 12,345.68"),
            (1_234_567.0, None, "1,234,567"),
            (-45.5, Some("GBP"), "GBP -45.50"),
            (-0.001, Some("GBP"), "GBP 0"),
            (4833.333, Some("JPY"), "JPY 4,833"),
            (100_000_000.0, Some("KRW"), "KRW 100,000,000"),
        ] {
            assert_eq!(show_money(amount, currency), written, "{amount}");
        }
        for (amount, written) in [(42.0, "GBP 42"), (42.5, "GBP 42.50"), (0.042, "GBP 0.042")] {
            assert_eq!(show_price(amount, Some("GBP")), written);
        }
    }
}
