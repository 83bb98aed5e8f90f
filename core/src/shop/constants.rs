//! Numbers of the aisle, with their sources.

use rust_decimal::Decimal;

/// Days in a month on average: 365.2425 days of the Gregorian year over 12. Source: ISO 8601:2004, the Gregorian
/// calendar with 97 leap years in 400 (from memory; the division is exact).
pub const DAYS_PER_MONTH: Decimal = Decimal::from_parts(30_436_875, 0, 0, false, 6);

/// Cubic millimetres in a litre (exact).
pub const MM3_PER_LITRE: f64 = 1_000_000.0;

/// From this hour of a day on, a count of the cash comes after what was paid that day, as the run has it.
pub const COUNTED_AFTER_HOUR: u32 = 12;
