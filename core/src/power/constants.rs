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
/// How long one stays at a place to charge at, if nothing else is said. Common practice, no source.
pub const STOP_HOURS: f64 = 2.0;
/// Less reserve than this at the lowest moment is called tight. Common practice, no source.
pub const TIGHT_HOURS: f64 = 12.0;
/// The longest reserve that is stated; beyond it the draw is too small to matter.
pub const MOST_RESERVE_HOURS: f64 = 10_000.0;
/// What can be taken out of what a label says, if nothing else is known. Common practice, no source.
pub const RATED_SHARE: f64 = 0.9;
/// Several times a day are spread over so many hours. Common practice, no source.
pub const AGAIN_WITHIN_H: f64 = 12.0;
/// How much a draw matters, of 1 to 9, if nothing is said.
pub const USUAL_IMPORTANCE: u32 = 5;
/// How warm water is before it is heated. Common practice, no source.
pub const HEAT_FROM_C: f64 = 15.0;
/// What a pot or a kettle weighs. Common practice, no source.
pub const VESSEL_KG: f64 = 0.5;
/// Specific heat of steel, in kJ/(kg K) (handbook value 0.50, from memory).
pub const STEEL_KJ_PER_KG_K: f64 = 0.5;
/// What reaches pot and water of what is drawn, in percent. Common practice, no source: kettles 85 to 95, hobs 60 to 85.
pub const HEAT_PERCENT: f64 = 85.0;
/// The air that a cool box's label is for, in °C (IEC 62552, 25 °C, from memory).
pub const LABEL_AIR_C: f64 = 25.0;
/// How cold a cool box is kept. Common practice, no source.
pub const INSIDE_C: f64 = 5.0;
/// Conductivity of polyurethane foam, in W/(m K) (handbook value 0.022 to 0.028, from memory).
pub const FOAM_W_MK: f64 = 0.025;
/// How much warmer than outside it is in a van that nobody heats. Common practice, no source.
pub const INSIDE_WARMER_C: f64 = 3.0;
/// The air where nothing is known of it, in °C.
pub const UNKNOWN_AIR_C: f64 = 20.0;
/// What reaches a panel in the shade of what would otherwise: light from the rest of the sky. Common practice, no source.
pub const SHADED_SHARE: f64 = 0.15;
/// A 12 V store's voltage while it is charged, and that of a usual panel for it at its best. Common practice, no source.
pub const SWITCHING_VOLTS: (f64, f64) = (13.3, 18.0);
/// Night, where it is not known when the sun sets: from the first hour to the second. Common practice, no source.
pub const DARK_HOURS: (usize, usize) = (20, 6);
/// Less than this, refused by sockets and missing later, is not worth a word, in Wh. Common practice, no source.
pub const LEAST_REFUSED_WH: f64 = 10.0;
/// How many runs by chance there are.
pub const RUNS: u32 = 1_000;
/// No larger panels are looked for, in W.
pub const MOST_PANEL_W: u32 = 2_000;
/// No larger store is looked for, in Wh.
pub const MOST_STORE_WH: u32 = 20_000;
/// The least and the most of what is usually used, over a whole trip, where nobody states a range. Common practice, no source.
pub const USE_LOW: f64 = 0.9;
/// See [`USE_LOW`].
pub const USE_HIGH: f64 = 1.2;
