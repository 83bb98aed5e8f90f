//! What a person types, read into a value for a field.

use rust_decimal::Decimal;
use serde_json::Value;

use super::validate::check_value;
use super::{Field, Kind, Wrong};

/// How numbers are written where the person lives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NumberMarks {
    /// The mark before the decimals.
    pub decimal: char,
    /// The mark between thousands.
    pub group: char,
}

impl Default for NumberMarks {
    fn default() -> Self {
        Self { decimal: '.', group: ',' }
    }
}

/// The most characters of a number that are read.
const MOST_CHARS: usize = 60;

/// Reads typed text as a value for `field`, ready for an [`Edit`](super::Edit). Numbers are read in the unit that is
/// `factor` times the plan's own: 1 for the plan's units. Empty text leaves the field unset.
///
/// ```
/// use kerbstead_core::plan::{field, typed_value, NumberMarks, Path};
/// let price = field::at(&Path::from("kit/1/unit_price")).unwrap();
/// let marks = NumberMarks { decimal: ',', group: '.' };
/// assert_eq!(typed_value(price, "1.234,50", marks, 1.0).unwrap(), "1234.50");
/// assert!(typed_value(price, "twelve", marks, 1.0).is_err());
/// ```
///
/// # Errors
/// What is wrong with the text, and what would be right.
pub fn typed_value(field: &Field, text: &str, marks: NumberMarks, factor: f64) -> Result<Value, Wrong> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(Value::Null);
    }
    let value = match field.kind {
        Kind::Number { quantity, example, .. } => {
            number(text, marks, factor).ok_or(Wrong::NotANumber { example, quantity })?
        }
        Kind::Whole { example, .. } => whole(text, marks).ok_or(Wrong::NotWhole { example })?,
        Kind::Money { example, .. } => decimal(text, marks).ok_or(Wrong::NotMoney { example })?.to_string().into(),
        Kind::Rate => decimal(text, marks).ok_or(Wrong::NotARate)?.to_string().into(),
        Kind::Currency => text.to_ascii_uppercase().into(),
        Kind::StoreItem => whole(text, marks).ok_or(Wrong::NotWhole { example: 1 })?,
        Kind::Flag => (text == "true").into(),
        Kind::Text { .. } | Kind::Date | Kind::Choice(_) => text.into(),
    };
    check_value(&field.kind, &value)?;
    Ok(value)
}

fn number(text: &str, marks: NumberMarks, factor: f64) -> Option<Value> {
    let number = float(&plain(text, marks)?)?;
    serde_json::Number::from_f64(number * factor).map(Value::Number)
}

/// The float nearest to a number of at most 15 digits, not counting noughts at its ends.
///
/// Written here because reading numbers of any length takes a table of ten kilobytes. Up to that length one
/// multiplication or division of two floats that are both exact rounds just once, and so as well as can be; see W. D.
/// Clinger, "How to read floating point numbers accurately", 1990.
fn float(text: &str) -> Option<f64> {
    const MOST_DIGITS: usize = 15;
    // The highest power of ten that is exact as a float.
    const MOST_POWER: usize = 22;
    let digits = text.trim_start_matches('-');
    let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let digits: String = digits.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    let significant = digits.trim_end_matches('0');
    if significant.len() > MOST_DIGITS {
        return None;
    }
    let noughts = digits.len() - significant.len();
    let mantissa = significant.bytes().fold(0.0, |number, digit| number * 10.0 + f64::from(digit - b'0'));
    let power = |tens: usize| (tens <= MOST_POWER).then(|| (0..tens).fold(1.0, |power, _| power * 10.0));
    let size = match noughts.checked_sub(decimals) {
        _ if significant.is_empty() => 0.0,
        Some(tens) => mantissa * power(tens)?,
        None => mantissa / power(decimals - noughts)?,
    };
    Some(if text.starts_with('-') { -size } else { size })
}

fn whole(text: &str, marks: NumberMarks) -> Option<Value> {
    plain(text, marks)?.parse::<u32>().ok().map(Value::from)
}

fn decimal(text: &str, marks: NumberMarks) -> Option<Decimal> {
    Decimal::from_str_exact(&plain(text, marks)?).ok()
}

/// The number with a point and without marks between thousands. Of a lone mark that could be either, `1.5` where the
/// point groups thousands, the decimals win unless exactly three digits follow a group of up to three that does not
/// begin with a nought: `0.125` can only mean an eighth.
fn plain(text: &str, marks: NumberMarks) -> Option<String> {
    if text.chars().count() > MOST_CHARS {
        return None;
    }
    let is_space = |c: char| c.is_whitespace() || c == '\u{a0}' || c == '\u{202f}' || c == '\'' || c == '\u{2019}';
    let text: String = text.chars().filter(|c| !is_space(*c)).map(|c| if c == '\u{2212}' { '-' } else { c }).collect();
    let (whole, decimals) = split(&text, marks);
    let whole: String = whole.chars().filter(|c| *c != marks.group).collect();
    let digits = whole.trim_start_matches(['-', '+']);
    let sound = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if digits.len() + 1 < whole.len()
        || !sound(digits)
        || !sound(decimals)
        || (digits.is_empty() && decimals.is_empty())
    {
        return None;
    }
    let sign = if whole.starts_with('-') { "-" } else { "" };
    let digits = if digits.is_empty() { "0" } else { digits };
    Some(if decimals.is_empty() { format!("{sign}{digits}") } else { format!("{sign}{digits}.{decimals}") })
}

/// What stands before and after the decimal mark.
fn split(text: &str, marks: NumberMarks) -> (&str, &str) {
    if let Some(parts) = text.split_once(marks.decimal) {
        return parts;
    }
    match text.split_once(['.', ',']) {
        Some((whole, rest)) if !groups_thousands(whole, rest) => (whole, rest),
        _ => (text, ""),
    }
}

fn groups_thousands(whole: &str, rest: &str) -> bool {
    let digits = whole.trim_start_matches(['-', '+']);
    (1..=3).contains(&digits.len()) && !digits.starts_with('0') && rest.split(['.', ',']).all(|group| group.len() == 3)
}
