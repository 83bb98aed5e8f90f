//! Values of the plan to and from their form in the file.
//!
//! Written here rather than derived: derived code reads every type once more for every kind of text or tree it might
//! come from, and would be a third of what a phone has to load. The file is a tree of [`Value`]s, and nothing else.

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde_json::Value;

use super::record::written;
use super::{Estimate, Money, Path, date_text, read_date};

/// A value with a form in the file.
///
/// ```
/// use kerbstead_core::plan::{Item, Plain};
/// let item = Item::from_plain(&serde_json::json!({ "name": "Can" })).unwrap();
/// assert_eq!(item.to_plain()["quantity"], 1);
/// assert!(Item::from_plain(&serde_json::json!({ "quantity": "three" })).is_none());
/// ```
pub trait Plain {
    /// Its form in the file; `Null` when it is not set.
    fn to_plain(&self) -> Value;

    /// Becomes what stands in the file. False when that is not of its kind; it may then be anything.
    fn read(&mut self, value: &Value) -> bool;

    /// The value that stands in the file, if it is of this kind.
    fn from_plain(value: &Value) -> Option<Self>
    where
        Self: Default,
    {
        let mut read = Self::default();
        read.read(value).then_some(read)
    }
}

/// Puts the value there, if there is one.
fn keep<T>(target: &mut T, value: Option<T>) -> bool {
    value.map(|value| *target = value).is_some()
}

impl Plain for f64 {
    fn to_plain(&self) -> Value {
        (*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_f64())
    }
}

impl Plain for u32 {
    fn to_plain(&self) -> Value {
        (*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_u64().and_then(|number| Self::try_from(number).ok()))
    }
}

impl Plain for u64 {
    fn to_plain(&self) -> Value {
        (*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_u64())
    }
}

impl Plain for usize {
    fn to_plain(&self) -> Value {
        (*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_u64().and_then(|number| Self::try_from(number).ok()))
    }
}

/// Itself, whatever it is.
impl Plain for Value {
    fn to_plain(&self) -> Value {
        self.clone()
    }

    fn read(&mut self, value: &Value) -> bool {
        self.clone_from(value);
        true
    }
}

impl Plain for bool {
    fn to_plain(&self) -> Value {
        (*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_bool())
    }
}

impl Plain for String {
    fn to_plain(&self) -> Value {
        self.as_str().into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_str().map(str::to_owned))
    }
}

impl Plain for Path {
    fn to_plain(&self) -> Value {
        self.as_str().into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_str().map(Self::from))
    }
}

impl Plain for Date {
    fn to_plain(&self) -> Value {
        date_text(*self).into()
    }

    fn read(&mut self, value: &Value) -> bool {
        keep(self, value.as_str().and_then(read_date))
    }
}

/// Text as this tool writes it, and the plain numbers that people write by hand.
impl Plain for Decimal {
    fn to_plain(&self) -> Value {
        self.to_string().into()
    }

    fn read(&mut self, value: &Value) -> bool {
        let read = match value {
            Value::String(text) => Self::from_str_exact(text).ok(),
            Value::Number(number) => match (number.as_i64(), number.as_f64()) {
                (Some(whole), _) => Some(Self::from(whole)),
                (None, Some(number)) => nearest_decimal(number),
                (None, None) => None,
            },
            _ => None,
        };
        keep(self, read)
    }
}

/// The decimal that a float was written as, when that had at most 15 digits, and else the nearest with as many. `None`
/// when it is too large.
///
/// With that few digits the first power of ten at which the float comes back is the right one, see
/// [`typed_value`](super::typed_value). To print the float and read that takes fifteen kilobytes of code.
fn nearest_decimal(number: f64) -> Option<Decimal> {
    const MOST_DECIMALS: u32 = 15;
    const MOST_EXACT: f64 = 9_007_199_254_740_992.0;
    let mut nearest = None;
    let mut power = 1.0;
    for decimals in 0..=MOST_DECIMALS {
        let scaled = (number * power).round();
        if scaled.abs() >= MOST_EXACT {
            break;
        }
        #[allow(clippy::cast_possible_truncation)] // whole and within the range just before
        let decimal = Decimal::new(scaled as i64, decimals);
        nearest = Some(decimal);
        if (scaled / power).to_bits() == number.to_bits() {
            break;
        }
        power *= 10.0;
    }
    #[allow(clippy::cast_possible_truncation)] // a cast keeps to the range, and what is at its ends is refused
    nearest.or_else(|| Decimal::try_from_i128_with_scale(number as i128, 0).ok())
}

impl Plain for Money {
    fn to_plain(&self) -> Value {
        self.decimal().to_plain()
    }

    fn read(&mut self, value: &Value) -> bool {
        let read = match value {
            Value::String(text) => text.parse().ok(),
            _ => Decimal::from_plain(value).map(Self::new),
        };
        keep(self, read)
    }
}

impl<T: Plain + Default> Plain for Option<T> {
    fn to_plain(&self) -> Value {
        self.as_ref().map_or(Value::Null, Plain::to_plain)
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = T::from_plain(value);
        self.is_some() || value.is_null()
    }
}

impl<T: Plain + Default> Plain for Estimate<T> {
    fn to_plain(&self) -> Value {
        match self {
            Self::Plain(value) => value.to_plain(),
            Self::Range { low, likely, high } => written(&["low", "likely", "high"], &[low, likely, high]),
        }
    }

    fn read(&mut self, value: &Value) -> bool {
        let part = |name| value.get(name).and_then(T::from_plain);
        let read = if value.is_object() {
            let parts = (part("low"), part("likely"), part("high"));
            if let (Some(low), Some(likely), Some(high)) = parts {
                Some(Self::Range { low, likely, high })
            } else {
                None
            }
        } else {
            T::from_plain(value).map(Self::Plain)
        };
        keep(self, read)
    }
}

impl<T: Plain + Default> Plain for Vec<T> {
    fn to_plain(&self) -> Value {
        Value::Array(self.iter().map(Plain::to_plain).collect())
    }

    fn read(&mut self, value: &Value) -> bool {
        let Some(entries) = value.as_array() else { return false };
        self.clear();
        for entry in entries {
            let Some(entry) = T::from_plain(entry) else { return false };
            self.push(entry);
        }
        true
    }
}

#[cfg(test)]
mod tests {
    use super::nearest_decimal;

    #[test]
    fn a_float_becomes_the_decimal_that_it_was_written_as() {
        let written = ["12.5", "0.1", "-19.99", "0.30", "1234567.89", "999999999.99", "0.000001", "123456789.012345"];
        for text in written {
            let number: f64 = text.parse().unwrap_or_default();
            let decimal = nearest_decimal(number).map(|decimal| decimal.to_string());
            assert_eq!(decimal, Some(number.to_string()), "{text}");
        }
        assert_eq!(nearest_decimal(0.1 + 0.2).map(|decimal| decimal.to_string()), Some("0.300000000000000".to_owned()));
        assert_eq!(nearest_decimal(1e20).map(|decimal| decimal.to_string()), Some("100000000000000000000".to_owned()));
        assert_eq!(nearest_decimal(-1e300), None);
    }
}
