//! Numbers of the water balance that do not come from the plan.

/// Density of water at 20 °C. Source: IAPWS-95 at 101,325 Pa.
pub const DENSITY_KG_PER_L: f64 = 0.998_21;
/// Less water than this many days' use at the lowest moment is called tight. Common practice, no source.
pub const TIGHT_DAYS: f64 = 1.0;
/// The longest supply that is stated; beyond it the use is too small to matter.
pub const MOST_DAYS: f64 = 10_000.0;
