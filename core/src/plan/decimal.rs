//! Arithmetic of decimals, once: the library has its own inlined wherever it is used, a kilobyte each time.

use rust_decimal::Decimal;

/// The sum, unless it is more than a decimal holds.
#[inline(never)]
pub(crate) fn plus(a: Decimal, b: Decimal) -> Option<Decimal> {
    a.checked_add(b)
}

/// The difference, unless it is more than a decimal holds.
pub(crate) fn less(a: Decimal, b: Decimal) -> Option<Decimal> {
    // Nothing has no sign.
    plus(a, if b.is_zero() { b } else { -b })
}

/// The product, unless it is more than a decimal holds.
#[inline(never)]
pub(crate) fn times(a: Decimal, b: Decimal) -> Option<Decimal> {
    a.checked_mul(b)
}

/// The quotient, unless it is more than a decimal holds or there is nothing to divide by.
#[inline(never)]
pub(crate) fn over(a: Decimal, b: Decimal) -> Option<Decimal> {
    a.checked_div(b)
}

/// The most that a decimal holds, either way.
pub(crate) const fn most(is_negative: bool) -> Decimal {
    if is_negative { Decimal::MIN } else { Decimal::MAX }
}

/// The float of a decimal, by one division of its digits.
pub(crate) fn to_float(amount: Decimal) -> f64 {
    let amount = amount.normalize();
    let power = (0..amount.scale()).fold(1.0, |power, _| power * 10.0);
    amount.mantissa() as f64 / power
}

/// A length, a volume or another measure as a decimal to its thousandths, to be multiplied with a price. What is not a
/// number or below nothing is nothing, what is beyond a million millions is that.
pub(crate) fn of_measure(value: f64) -> Decimal {
    const MOST: f64 = 1e15;
    #[allow(clippy::cast_possible_truncation)] // whole and within the range of the cast
    let thousandths = if value > 0.0 { (value * 1000.0).min(MOST).round() as i64 } else { 0 };
    Decimal::new(thousandths, 3)
}
