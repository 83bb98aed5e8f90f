//! Values formatted without a browser: for the command line and for tests.

use jiff::civil::Date;

use super::Format;
use crate::plan::{Money, minor_digits};

/// Points before decimals, ISO dates, currency codes.
#[derive(Clone, Copy, Debug, Default)]
pub struct Plain;

impl Format for Plain {
    fn number(&self, value: f64, decimals: u8) -> String {
        let text = format!("{value:.*}", usize::from(decimals));
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
    }

    fn money(&self, amount: Money, currency: &str) -> String {
        let digits = minor_digits(currency);
        format!("{:.*} {currency}", digits as usize, amount.rounded(digits).decimal())
    }

    fn date(&self, date: Date) -> String {
        crate::plan::date_text(date)
    }

    fn month(&self, date: Date) -> String {
        format!("{:04}-{:02}", date.year(), date.month())
    }

    fn rough_money(&self, amount: f64, currency: &str) -> String {
        format!("{amount:.0} {currency}")
    }

    fn time(&self, minute: u16) -> String {
        format!("{:02}:{:02}", minute / 60, minute % 60)
    }

    fn plural(&self, number: f64) -> &'static str {
        // English, as CLDR has it for whole numbers.
        if (number - 1.0).abs() < f64::EPSILON { "one" } else { "other" }
    }
}
