//! Numbers of the money balance that do not come from the plan.

use rust_decimal::Decimal;

/// Cash that lasts fewer days on the road than this above the floor is called tight. Common practice, no source.
pub const TIGHT_DAYS: u32 = 7;

/// Of costs without a range, so many percent are kept apart. Common practice, no source.
pub const RESERVE_PERCENT: Decimal = Decimal::TEN;

/// How much faster a thing sells below its usual price: at a share `s` of it, `s^-3` times as fast. Our assumption.
/// Common practice, no source.
pub const STEEPNESS: f64 = 3.0;

/// An asking price is looked at again after so many days. Common practice, no source.
pub const DAYS_PER_PRICE: u32 = 7;

/// Days in a month on average: 365.2425 days of the Gregorian year over 12. Source: ISO 8601:2004, the Gregorian
/// calendar with 97 leap years in 400 (from memory; the division is exact).
pub const DAYS_PER_MONTH: Decimal = Decimal::from_parts(30_436_875, 0, 0, false, 6);
