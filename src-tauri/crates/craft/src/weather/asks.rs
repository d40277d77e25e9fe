//! What weather asks for: sentences of the table, with the figures of the day put in.

/// One thing the weather asks for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Ask {
    /// A sentence to act on. In a table it may name figures of the day in braces, as
    /// `{felt}`; in an answer they stand in their place.
    pub text: String,
    /// Who says so.
    pub source: String,
}

/// The figures an ask of a heat band may name: how hot it feels, the minutes of rest, and
/// the hot part of the day.
pub const HEAT_WORDS: [&str; 4] = ["felt", "rest", "from", "to"];
/// Of a cold band: how cold it feels.
pub const COLD_WORDS: [&str; 1] = ["felt"];
/// Of ice: the low of the day.
pub const ICE_WORDS: [&str; 1] = ["low"];
/// Of a band of wind: the wind.
pub const WIND_WORDS: [&str; 1] = ["wind"];
/// Of rain: its spells.
pub const RAIN_WORDS: [&str; 1] = ["rain"];
/// Of lightning: seconds from flash to bang, and minutes after the last thunder.
pub const LIGHTNING_WORDS: [&str; 2] = ["seconds", "minutes"];

/// The asks with the figures in the place of their words, both in the same order.
pub(super) fn filled<const N: usize>(
    asks: &[Ask],
    words: [&str; N],
    figures: &[String; N],
) -> Vec<Ask> {
    let fill = |ask: &Ask| {
        let pairs = words.iter().zip(figures);
        let text = pairs.fold(ask.text.clone(), |text, (word, figure)| {
            text.replace(&format!("{{{word}}}"), figure)
        });
        Ask {
            text,
            source: ask.source.clone(),
        }
    };
    asks.iter().map(fill).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stand_in_the_place_of_their_words() {
        let asks = [Ask {
            text: "Rest {rest} minutes from {from} to {to}; {rest} again.".to_owned(),
            source: "invented".to_owned(),
        }];
        let figures = ["40 °C", "15", "11:00", "17:00"].map(str::to_owned);
        let filled = filled(&asks, HEAT_WORDS, &figures);
        assert_eq!(
            filled[0].text,
            "Rest 15 minutes from 11:00 to 17:00; 15 again."
        );
        assert_eq!(filled[0].source, "invented");
    }
}
