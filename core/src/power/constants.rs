//! Numbers of the power balance that do not come from the plan. What a store's or a vehicle's own manual says wins.

/// What a small inverter passes on at a usual load. Common practice, no source (makers state 85 to 93).
pub const INVERTER_EFFICIENCY_PERCENT: f64 = 88.0;
/// What a small inverter takes for itself. Common practice, no source.
pub const INVERTER_IDLE_W: f64 = 9.0;
/// What reaches the cells of what goes in. Common practice, no source.
pub const CHARGE_EFFICIENCY_PERCENT: f64 = 90.0;
/// Mains-voltage outlets of a small portable store, for long. Common practice, no source.
pub const AC_CONTINUOUS_W: f64 = 500.0;
/// The same for a moment. Common practice, no source.
pub const AC_SURGE_W: f64 = 1_000.0;
/// Low-voltage outlets of a small portable store. Common practice, no source.
pub const DC_CONTINUOUS_W: f64 = 120.0;
/// What a small portable store takes from a vehicle socket. Common practice, no source.
pub const VEHICLE_INPUT_W: f64 = 100.0;
/// What it takes from the mains. Common practice, no source.
pub const MAINS_INPUT_W: f64 = 200.0;
/// Where charging begins to taper. Common practice, no source.
pub const TAPER_FROM_PERCENT: f64 = 85.0;
/// Nominal voltage of a vehicle socket. Common practice, no source.
pub const SOCKET_VOLTS: f64 = 12.0;
/// Fuse of a vehicle socket: 10, 15 or 20 A are seen. Common practice, no source.
pub const SOCKET_FUSE_A: f64 = 10.0;
/// Share of its fuse that a socket bears for hours. Common practice, no source.
pub const SOCKET_LASTING_SHARE: f64 = 0.8;
/// When a day's driving begins, if nothing else is said. Common practice, no source.
pub const DRIVE_FROM_HOUR: f64 = 10.0;
/// When a mains socket becomes free, if nothing else is said. Common practice, no source.
pub const MAINS_FROM_HOUR: f64 = 9.0;
/// Less reserve than this at the lowest moment is called tight. Common practice, no source.
pub const TIGHT_HOURS: f64 = 12.0;
/// The longest reserve that is stated; beyond it the draw is too small to matter.
pub const MOST_RESERVE_HOURS: f64 = 10_000.0;
