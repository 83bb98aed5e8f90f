//! Lengths and prices as whole numbers.

use crate::plan::Money;

/// A length in nanometres by mm.
const NM_PER_MM: f64 = 1_000_000.0;
/// No length is more: 100 m.
const LONGEST_MM: f64 = 100_000.0;
/// Prices count in this many digits after the point, and nothing costs more than a million.
pub(super) const PRICE_DIGITS: u32 = 4;
const DEAREST: i64 = 10_000_000_000;

/// In nanometres; none for what is no length.
pub(super) fn length(length_mm: f64) -> Option<u64> {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the range of the cast")]
    (0.0..=LONGEST_MM).contains(&length_mm).then(|| (length_mm * NM_PER_MM).round() as u64)
}

/// In nanometres; none for what is no length above 0.
pub(super) fn some_length(length_mm: f64) -> Option<u64> {
    length(length_mm).filter(|length| *length > 0)
}

pub(super) fn in_mm(length: u64) -> f64 {
    length as f64 / NM_PER_MM
}

/// A price in ten-thousandths; none where it is below nothing or too much.
pub(super) fn price(price: Money) -> Option<i64> {
    price.to_minor(PRICE_DIGITS).filter(|price| (0..=DEAREST).contains(price))
}

/// What a cost in units is as money.
pub(super) fn as_money(cost: i64, unit: i64) -> Money {
    Money::new(Money::from_minor(cost.saturating_mul(unit), PRICE_DIGITS).decimal().normalize())
}

/// The largest number that divides both.
pub(super) fn divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { divisor(b, a % b) }
}
