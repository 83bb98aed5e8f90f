//! Numbers of the aisle, with their sources.

/// Cubic millimetres in a litre (exact).
pub const MM3_PER_LITRE: f64 = 1_000_000.0;

/// From this hour of a day on, a count of the cash comes after what was paid that day, as the run has it.
pub const COUNTED_AFTER_HOUR: u32 = 12;
