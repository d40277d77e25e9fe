//! What the course costs and takes.

use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::{MoneyGiven, PriceUnit, StonePrice};

/// No price of a course is higher, in whatever currency.
const MOST: f64 = 1e9;

/// Prices; nothing where the file says nothing of money.
pub(super) fn money(root: &Section<'_>) -> Result<Option<MoneyGiven>, Fault> {
    if root.get("money").is_none() {
        return Ok(None);
    }
    let section = root.section("money")?;
    section.only(&[
        "currency",
        "stone",
        "delivery",
        "hire",
        "consumables",
        "instructor",
        "assistant",
        "venue",
        "travel",
        "other",
        "fee",
    ])?;
    let price = |key: &str| {
        let entry = section.get(key);
        entry.map(|it| it.number(0.0, MOST)).transpose()
    };
    Ok(Some(MoneyGiven {
        currency: section
            .get("currency")
            .map(|it| currency(&it))
            .transpose()?,
        stone: section.get("stone").map(|it| by_mass(&it)).transpose()?,
        delivery: price("delivery")?,
        hire: price("hire")?,
        consumables: price("consumables")?,
        instructor: price("instructor")?,
        assistant: price("assistant")?,
        venue: price("venue")?,
        travel: price("travel")?,
        other: price("other")?,
        fee: price("fee")?,
    }))
}

fn currency(entry: &Entry<'_>) -> Result<String, Fault> {
    let letters = entry.text()?;
    let three_capitals = letters.len() == 3 && letters.bytes().all(|b| b.is_ascii_uppercase());
    if three_capitals {
        return Ok(letters.to_owned());
    }
    Err(entry.fault(
        "unknown-word",
        &format!("\"{letters}\" is not a currency"),
        "write the three capitals of ISO 4217, such as \"GBP\", \"EUR\" or \"USD\", or leave it out",
    ))
}

/// `42 / t`: so much for one of a unit of mass.
fn by_mass(entry: &Entry<'_>) -> Result<StonePrice, Fault> {
    let cure = "write a number, a stroke and a unit, in quotes: \"42 / t\", \"38 / short ton\", \"0.05 / kg\" or \"0.02 / lb\"";
    let Some(text) = entry.as_word() else {
        return Err(entry.fault("wrong-kind", "a price by mass is due here", cure));
    };
    let refuse = |what: &str| entry.fault("not-a-price", what, cure);
    let Some((number, unit)) = text.split_once('/') else {
        return Err(refuse(&format!(
            "\"{text}\" does not say for how much stone"
        )));
    };
    let (number, unit) = (number.trim(), unit.trim());
    let unit = PriceUnit::ALL
        .into_iter()
        .find(|known| known.word() == unit)
        .ok_or_else(|| {
            refuse(&format!(
                "\"{unit}\" in \"{text}\" is not a unit stone is priced by"
            ))
        })?;
    // Only as people write numbers: no exponents, no words for what is not finite.
    let plain = |sign: char| sign.is_ascii_digit() || sign == '.';
    let amount = number
        .parse::<f64>()
        .ok()
        .filter(|_| number.trim_start_matches('-').chars().all(plain))
        .ok_or_else(|| refuse(&format!("\"{number}\" in \"{text}\" is not a number")))?;
    if !(0.0..=MOST).contains(&amount) {
        let what = if amount < 0.0 {
            "this is less than nothing"
        } else {
            "this is too much"
        };
        return Err(entry.fault("out-of-range", &format!("{what}: \"{text}\""), cure));
    }
    Ok(StonePrice { amount, unit })
}

#[cfg(test)]
mod tests {
    use crate::bare::bare;
    use crate::course::CourseFile;
    use craft::course::{PriceUnit, StonePrice};

    fn parse(more: &str) -> Result<CourseFile, crate::Fault> {
        CourseFile::parse(&format!("{}\n[money]\n{more}", bare(false)))
    }

    #[test]
    fn prices_are_read_as_typed() {
        let text = "currency = \"GBP\"\nstone = \"42.50 / t\"\ndelivery = 90\nhire = 60\nconsumables = 8.5\ninstructor = 180\nassistant = 100\nvenue = 120\ntravel = 0\nother = 0\nfee = 160";
        let money = parse(text).expect("sound").course.money.expect("prices");
        assert_eq!(money.currency.as_deref(), Some("GBP"));
        assert_eq!((money.consumables, money.fee), (Some(8.5), Some(160.0)));
        for (text, amount, unit) in [
            ("42.50 / t", 42.5, PriceUnit::Tonne),
            ("38/short ton", 38.0, PriceUnit::ShortTon),
            (".05 / kg", 0.05, PriceUnit::Kilogram),
            ("0 / lb", 0.0, PriceUnit::Pound),
        ] {
            let file = parse(&format!("stone = \"{text}\"")).expect(text);
            let price = file.course.money.expect("prices").stone;
            assert_eq!(price, Some(StonePrice { amount, unit }), "{text}");
        }
        assert!(parse("").expect("sound").course.money.is_some());
        let none = CourseFile::parse(bare(false)).expect("sound");
        assert!(none.course.money.is_none());
    }

    #[test]
    fn slips_are_told_at_their_key() {
        for (text, key, words) in [
            ("currency = \"pounds\"", "money.currency", "not a currency"),
            ("currency = \"gbp\"", "money.currency", "not a currency"),
            ("stone = 42", "money.stone", "a price by mass is due"),
            ("stone = \"42\"", "money.stone", "does not say for how much"),
            (
                "stone = \"42 / ton\"",
                "money.stone",
                "\"ton\" in \"42 / ton\"",
            ),
            ("stone = \"dear / t\"", "money.stone", "\"dear\" in"),
            ("stone = \"nan / t\"", "money.stone", "is not a number"),
            ("stone = \"inf / t\"", "money.stone", "is not a number"),
            ("stone = \"1e3 / t\"", "money.stone", "is not a number"),
            ("stone = \"-42 / t\"", "money.stone", "less than nothing"),
            ("stone = \"9999999999 / t\"", "money.stone", "too much"),
            (
                "delivery = \"90\"",
                "money.delivery",
                "where a number is due",
            ),
            ("delivery = -90", "money.delivery", "less than nothing"),
            ("fee = 1e12", "money.fee", "too much"),
            ("fee = nan", "money.fee", "finite"),
            ("venu = 1", "money.venu", "no key"),
        ] {
            let fault = parse(text).expect_err(text);
            assert_eq!(fault.key, key, "{text}");
            assert!(fault.what.contains(words), "{text}: {}", fault.what);
        }
    }
}
