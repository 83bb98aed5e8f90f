//! How far the assumptions go.

/// By how much fuel and running costs are dearer, in percent. Common practice, no source.
pub const DEARER_PERCENT: u32 = 20;
/// How much less light there is on panels under a duller sky, in percent. Common practice, no source.
pub const DULLER_PERCENT: f64 = 20.0;
/// By how many days the day of leaving is moved. Common practice, no source.
pub const LATER_DAYS: i32 = 14;
