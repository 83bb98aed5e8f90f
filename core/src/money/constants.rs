//! Numbers of the money balance that do not come from the plan.

/// Cash that lasts fewer days on the road than this above the floor is called tight. Common practice, no source.
pub const TIGHT_DAYS: u32 = 7;

/// Of costs without a range, so many percent are kept apart. Common practice, no source.
pub const RESERVE_PERCENT: u32 = 10;

/// How much faster a thing sells below its usual price: at a share `s` of it, `s^-3` times as fast. Our assumption.
/// Common practice, no source.
pub const STEEPNESS: f64 = 3.0;

/// An asking price is looked at again after so many days. Common practice, no source.
pub const DAYS_PER_PRICE: u32 = 7;
