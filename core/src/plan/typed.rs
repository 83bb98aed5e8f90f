//! What a person types, read into a value for a field: a number as it is, or a line of arithmetic worked out.

mod calculation;
mod numeral;
mod tokens;
mod units;

use rust_decimal::{Decimal, RoundingStrategy};
use serde_json::Value;

pub use numeral::NumberMarks;

use super::decimal::{most, to_float};
use super::validate::check_value;
use super::{Field, Kind, Quantity, Wrong};
use calculation::{Asked, Trouble, Worked, worked_out};
use numeral::{float, plain};

/// The decimals that an amount or a rate keeps when it was worked out. A till rounds long before; with these, a price
/// that was divided is still right to the cent a thousand times over.
const MOST_DECIMALS: u32 = 6;

/// The unit that numbers are typed in, and shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// One of it in the plan's unit.
    pub factor: f64,
    /// None of it, in the plan's unit: nothing, but for degrees Fahrenheit.
    pub zero: f64,
}

impl Scale {
    /// A number of the unit in the plan's.
    pub fn plan(self, number: f64) -> f64 {
        number * self.factor + self.zero
    }

    /// A number of the plan in the unit.
    pub fn shown(self, number: f64) -> f64 {
        (number - self.zero) / self.factor
    }
}

impl From<f64> for Scale {
    fn from(factor: f64) -> Self {
        Self { factor, zero: 0.0 }
    }
}

/// Reads typed text as a value for `field`, ready for an [`Edit`](super::Edit). Numbers are read in the unit of
/// `scale`: 1 for the plan's units. Empty text leaves the field unset.
///
/// Where a number belongs, arithmetic is worked out: `+ - * / x × ÷ ( )`, and per cent as shop calculators have it, so
/// that `+8%` adds 8 % of what stands before. Where the field measures something, numbers may have units: `4 ft 8 in`,
/// `2 x 500 ml`.
///
/// ```
/// use kerbstead_core::plan::{field, typed_value, NumberMarks, Path};
/// let price = field::at(&Path::from("kit/1/unit_price")).unwrap();
/// let marks = NumberMarks { decimal: ',', group: '.' };
/// assert_eq!(typed_value(price, "1.234,50", marks, 1.0).unwrap(), "1234.50");
/// assert_eq!(typed_value(price, "3*12,50+8%", marks, 1.0).unwrap(), "40.5");
/// assert!(typed_value(price, "twelve", marks, 1.0).is_err());
/// ```
///
/// # Errors
/// What is wrong with the text, and what would be right.
pub fn typed_value(field: &Field, text: &str, marks: NumberMarks, scale: impl Into<Scale>) -> Result<Value, Wrong> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(Value::Null);
    }
    let value =
        value(&field.kind, text, marks, scale.into()).map_err(|wrong| wrong.unwrap_or(expected(&field.kind)))?;
    check_value(&field.kind, &value)?;
    Ok(value)
}

/// Whether text in a field of that kind is more than a plain number: what it comes to is then worth showing.
pub fn is_calculation(kind: &Kind, text: &str, marks: NumberMarks) -> bool {
    let takes_numbers = matches!(kind, Kind::Number { .. } | Kind::Whole { .. } | Kind::Money { .. } | Kind::Rate);
    takes_numbers && !text.trim().is_empty() && plain(text.trim(), marks).is_none()
}

/// Reads an amount of one of several kinds: a bare number is of the first, a unit says which it is otherwise.
///
/// ```
/// use kerbstead_core::plan::{typed_amount, NumberMarks, Quantity};
/// let kinds = [Quantity::Count, Quantity::MassKg];
/// let (amount, quantity) = typed_amount("2 x 500 g", NumberMarks::default(), &kinds).unwrap();
/// assert_eq!((amount.to_string().as_str(), quantity), ("1", Quantity::MassKg));
/// ```
///
/// # Errors
/// What is wrong with the text, and what would be right.
pub fn typed_amount(text: &str, marks: NumberMarks, kinds: &[Quantity]) -> Result<(Decimal, Quantity), Wrong> {
    let mut other = None;
    let mut units = Vec::new();
    for &quantity in kinds {
        match amount(text.trim(), marks, Asked::measure(quantity)) {
            Ok(amount) => return Ok((amount.normalize(), quantity)),
            Err(Some(Wrong::OtherUnit { unit, units: more })) => {
                units.push(more);
                other = Some(unit);
            }
            Err(Some(Wrong::NoUnit { unit })) => other = Some(unit),
            Err(wrong) => return Err(wrong.unwrap_or(Wrong::NotANumber { example: 1.0, quantity })),
        }
    }
    Err(Wrong::OtherUnit { unit: other.unwrap_or_default(), units: units.join(", ") })
}

/// A value, or what is wrong where more can be said than what is expected.
type Read<T> = Result<T, Option<Wrong>>;

fn value(kind: &Kind, text: &str, marks: NumberMarks, scale: Scale) -> Read<Value> {
    Ok(match *kind {
        Kind::Number { quantity, .. } => number(text, marks, Asked::measure(quantity), scale)?,
        Kind::Whole { quantity, .. } => {
            let worked = || worked(text, marks, Asked::measure(quantity)).map(|it| it.amount.normalize().to_string());
            whole(&plain(text, marks).map_or_else(worked, Ok)?).ok_or(None)?
        }
        Kind::Money { .. } => decimal(text, marks, Asked::MONEY)?,
        Kind::Rate => decimal(text, marks, Asked::RATE)?,
        Kind::StoreItem | Kind::Entry(_) => plain(text, marks).and_then(|digits| whole(&digits)).ok_or(None)?,
        Kind::Currency => text.to_ascii_uppercase().into(),
        Kind::Flag => (text == "true").into(),
        Kind::Text { .. } | Kind::Date | Kind::Choice(_) => text.into(),
    })
}

/// What is wrong with a text of which nothing more can be said.
fn expected(kind: &Kind) -> Wrong {
    match *kind {
        Kind::Number { quantity, example, .. } => Wrong::NotANumber { example, quantity },
        Kind::Money { example, .. } => Wrong::NotMoney { example },
        Kind::Rate => Wrong::NotARate,
        Kind::Whole { example, .. } => Wrong::NotWhole { example },
        _ => Wrong::NotWhole { example: 1 },
    }
}

fn number(text: &str, marks: NumberMarks, asked: Asked, scale: Scale) -> Read<Value> {
    let number = if let Some(digits) = plain(text, marks) {
        float(&digits).map(|number| scale.plan(number))
    } else {
        let Worked { amount, has_unit } = worked(text, marks, asked)?;
        Some(if has_unit { to_float(amount) } else { scale.plan(to_float(amount)) })
    };
    number.and_then(serde_json::Number::from_f64).map(Value::Number).ok_or(None)
}

fn whole(digits: &str) -> Option<Value> {
    digits.parse::<u32>().ok().map(Value::from)
}

fn decimal(text: &str, marks: NumberMarks, asked: Asked) -> Read<Value> {
    let is_plain = plain(text, marks).is_some();
    let amount = amount(text, marks, asked)?;
    let rounded = || amount.round_dp_with_strategy(MOST_DECIMALS, RoundingStrategy::MidpointAwayFromZero).normalize();
    // What was typed is kept to the last digit.
    Ok(if is_plain { amount } else { rounded() }.to_string().into())
}

/// A plain number, or what a line of arithmetic comes to.
fn amount(text: &str, marks: NumberMarks, asked: Asked) -> Read<Decimal> {
    match plain(text, marks) {
        Some(digits) => exact(&digits).ok_or(None),
        None => worked(text, marks, asked).map(|worked| worked.amount),
    }
}

/// A plain number. One of more digits before the point than any field takes is the most that can be held: too much.
fn exact(digits: &str) -> Option<Decimal> {
    let whole = digits.trim_start_matches(['-', '+', '0']).split('.').next().unwrap_or_default();
    if whole.len() > MOST_DIGITS {
        return Some(most(digits.starts_with('-')));
    }
    Decimal::from_str_exact(digits).ok()
}

/// With more digits before the point, a number is too much for every field.
const MOST_DIGITS: usize = 18;

/// What a line of arithmetic comes to. More than can be held is the most that can be: too much for any field.
fn worked(text: &str, marks: NumberMarks, asked: Asked) -> Read<Worked> {
    match worked_out(text, marks, asked) {
        Ok(worked) => Ok(worked),
        Err(Trouble::TooLarge) => Ok(Worked { amount: Decimal::MAX, has_unit: true }),
        Err(Trouble::Unreadable) => Err(None),
        Err(Trouble::Wrong(wrong)) => Err(Some(wrong)),
    }
}
