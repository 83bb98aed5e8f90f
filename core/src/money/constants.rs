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

/// Half of the things that somebody offers are sold in so many days at their usual price. Common practice, no source.
pub const HALF_SOLD_DAYS: f64 = 14.0;

/// A thing whose lowest price nobody states is given away for no less than so many percent of its usual price. Common
/// practice, no source.
pub const LOWEST_PERCENT: u32 = 50;

/// The chance, in percent, with which sales are to bring what is wanted. Common practice, no source.
pub const WANTED_PERCENT: u32 = 80;

/// A thing is stored for so many months where the plan has no route. Common practice, no source.
pub const STORED_MONTHS: u32 = 12;

/// Ways of building are compared over so many months. Common practice, no source.
pub const TRIAL_MONTHS: u32 = 24;

/// The chance, in percent, that the life does not suit: low, likely, high. Nobody counted it; our assumption. Common
/// practice, no source.
pub const UNSUITED_PERCENT: [f64; 3] = [10.0, 30.0, 60.0];

/// After so many months on the road one finds out: low, likely, high. Common practice, no source.
pub const FINDS_OUT_MONTHS: [f64; 3] = [1.0, 3.0, 6.0];

/// What used things bring of what was paid for them, in percent: low, likely, high. Common practice, no source.
pub const KEPT_PERCENT: [f64; 3] = [30.0, 50.0, 70.0];

/// Days in a month on average: 365.2425 days of the Gregorian year over 12. Source: ISO 8601:2004, the Gregorian
/// calendar with 97 leap years in 400 (from memory; the division is exact).
pub const DAYS_PER_MONTH: Decimal = Decimal::from_parts(30_436_875, 0, 0, false, 6);
