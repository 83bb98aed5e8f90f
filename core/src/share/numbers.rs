//! Numbers in whole digits: nothing is rounded on the way.

use serde_json::Value;

/// A whole number, whether it stands there as one or as a float.
pub(super) fn whole(value: &Value) -> Option<i64> {
    let from_float = |number: f64| {
        let is_whole = number.abs() < 1e15 && number.trunc().to_bits() == number.to_bits() && !is_minus_zero(number);
        #[allow(clippy::cast_possible_truncation)] // it is whole and below 10^15
        is_whole.then_some(number as i64)
    };
    value.as_i64().or_else(|| value.as_f64().filter(|_| value.is_f64()).and_then(from_float))
}

fn is_minus_zero(number: f64) -> bool {
    number.to_bits() == (-0.0_f64).to_bits()
}

/// The digits of a float and how many of them stand behind the point, when these few give it back to the bit.
pub(super) fn digits(number: f64) -> Option<(i64, u32)> {
    (1..=9).find_map(|decimals| {
        let scaled = number * power(decimals)?;
        // Below 2^53, so that the division that reads it is rounded once, as the reading of its decimals is.
        if scaled.is_nan() || scaled.abs() >= 9e15 {
            return None;
        }
        #[allow(clippy::cast_possible_truncation)] // see above
        let digits = (scaled + if scaled < 0.0 { -0.5 } else { 0.5 }) as i64;
        let back = float(digits, decimals)?;
        (back.to_bits() == number.to_bits()).then_some((digits, decimals))
    })
}

/// The float of those digits, so many of them behind the point.
pub(super) fn float(digits: i64, decimals: u32) -> Option<f64> {
    Some(digits as f64 / power(decimals)?)
}

fn power(decimals: u32) -> Option<f64> {
    const POWERS: [f64; 16] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];
    POWERS.get(decimals as usize).copied()
}

/// The digits of an amount that is written as text, when they give the very text back.
pub(super) fn amount_digits(text: &str) -> Option<(i64, u32)> {
    let (units, decimals) = text.split_once('.').unwrap_or((text, ""));
    if units.len() + decimals.len() > 18 || decimals.len() > 15 {
        return None;
    }
    let digits = (units.to_owned() + decimals).parse().ok()?;
    let decimals = u32::try_from(decimals.len()).ok()?;
    (amount(digits, decimals) == text).then_some((digits, decimals))
}

/// The text of an amount.
pub(super) fn amount(digits: i64, decimals: u32) -> String {
    let decimals = decimals as usize;
    let all = digits.unsigned_abs().to_string();
    let all = "0".repeat((decimals + 1).saturating_sub(all.len())) + &all;
    let (units, rest) = all.split_at(all.len() - decimals);
    let sign = if digits < 0 { "-" } else { "" };
    let point = if decimals > 0 { "." } else { "" };
    [sign, units, point, rest].concat()
}
