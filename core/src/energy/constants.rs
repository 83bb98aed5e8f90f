//! Numbers of the energy engine that nobody typed. What a thing's own manual says wins.

/// Specific heat of water, mean from 10 °C to the boil, in kJ/(kg K): the enthalpy differences of IAPWS-95 in the
/// project's table of reference values (98.795 Wh for 0.9991 kg over 84.974 K, and its neighbours) give 4.188 to 4.190.
pub const WATER_KJ_PER_KG_K: f64 = 4.189;
/// Heat to boil away a kilogram of water at 101,325 Pa, in Wh (IAPWS-95, from the project's table of reference values).
pub const BOIL_AWAY_WH_PER_KG: f64 = 626.8;
/// Joules in a watt hour, in thousands (ISO 80000-5, exact, from memory).
pub const KJ_PER_WH: f64 = 3.6;
/// Air pressure at sea level, in Pa (US Standard Atmosphere 1976, from memory).
pub const SEA_LEVEL_PA: f64 = 101_325.0;
/// Zero Celsius in kelvin (SI, exact, from memory).
pub const ZERO_C_IN_K: f64 = 273.15;
/// Antoine's constants of water from 1 to 100 °C, for millimetres of mercury and °C (from memory; within 0.05 °C of
/// IAPWS-95 from sea level to 2,500 m).
pub const ANTOINE: [f64; 3] = [8.071_31, 1_730.63, 233.426];
/// Pascals in a millimetre of mercury (NIST SP 811, from memory).
pub const PA_PER_MMHG: f64 = 133.322_387;

/// Share of Carnot's bound that a small compressor reaches. Common practice, no source.
pub const PART_OF_CARNOT: f64 = 0.35;
/// No more than this share is believed: the ideal vapour cycles of the usual refrigerants reach 0.72 to 0.77 (`CoolProp`,
/// from the project's table of reference values).
pub const MOST_PART_OF_CARNOT: f64 = 0.7;
/// How much colder than the box the evaporator is, in K. Common practice, no source.
pub const EVAPORATOR_BELOW_K: f64 = 12.0;
/// How much warmer than the air the condenser is, in K. Common practice, no source.
pub const CONDENSER_ABOVE_K: f64 = 15.0;
/// The least lift that is computed with, in K: at a smaller one a compressor's own losses rule. Common practice, no source.
pub const LEAST_LIFT_K: f64 = 20.0;

/// What reaches the cells of what reaches the sockets. Common practice, no source.
pub const CHARGE_EFFICIENCY: f64 = 0.95;
/// What reaches the outlets' side of what the cells give. Common practice, no source.
pub const DISCHARGE_EFFICIENCY: f64 = 0.97;
/// An inverter's efficiency by share of its lasting load, without its standby draw. Common practice, no source.
pub const INVERTER_EFFICIENCY: [(f64, f64); 5] = [(0.02, 0.70), (0.1, 0.86), (0.3, 0.91), (0.6, 0.90), (1.0, 0.86)];
/// What an inverter takes for itself, in W. Common practice, no source.
pub const INVERTER_STANDBY_W: f64 = 9.0;
/// Lasting power of the mains-voltage outlets for each Wh of the store, in W. Common practice, no source.
pub const AC_W_PER_WH: f64 = 0.6;
/// What a moment bears of what lasts. Common practice, no source.
pub const SURGE_TIMES: f64 = 2.0;
/// Low-voltage outlets, in W. Common practice, no source.
pub const DC_W: f64 = 120.0;
/// From the mains for each Wh of the store, in W. Common practice, no source.
pub const MAINS_W_PER_WH: f64 = 0.4;
/// From a vehicle's socket, in W. Common practice, no source.
pub const VEHICLE_W: f64 = 100.0;
/// From panels for each Wh of the store, in W. Common practice, no source.
pub const PANEL_W_PER_WH: f64 = 0.4;
/// State from which charging tapers. Common practice, no source.
pub const TAPER_FROM_STATE: f64 = 0.85;

/// No charging below this, in °C, whatever the chemistry. Common practice, no source.
pub const NONE_BELOW_C: f64 = 0.0;
/// Iron phosphate: full charging to 45 °C, none from 55 °C. Common practice, no source.
pub const LFP_HOT_C: (f64, f64) = (45.0, 55.0);
/// Nickel manganese cobalt: full charging to 40 °C, none from 45 °C. Common practice, no source.
pub const NMC_HOT_C: (f64, f64) = (40.0, 45.0);
/// Iron phosphate loses this share a month by itself. Common practice, no source.
pub const LFP_SELF_DISCHARGE_PER_MONTH: f64 = 0.03;
/// Nickel manganese cobalt does. Common practice, no source.
pub const NMC_SELF_DISCHARGE_PER_MONTH: f64 = 0.03;
/// Iron phosphate: cycles until 80 % is left. Common practice, no source.
pub const LFP_CYCLES: f64 = 3_000.0;
/// Nickel manganese cobalt. Common practice, no source.
pub const NMC_CYCLES: f64 = 800.0;
/// What is left after the stated cycles. Common practice, no source.
pub const LEFT_AFTER_CYCLES: f64 = 0.8;
/// A month of self-discharge, in hours: 30 days, as makers count. Common practice, no source.
pub const HOURS_PER_MONTH: f64 = 720.0;

/// The most power that is believed of anything, in W.
pub const MOST_W: f64 = 1e6;
/// The most energy that is believed of anything, in Wh.
pub const MOST_WH: f64 = 1e9;
/// No more hours are run: three years and a few days.
pub const MOST_HOURS: usize = 26_400;
/// No more stores are run.
pub const MOST_STORES: usize = 16;
/// No more draws are run.
pub const MOST_DRAWS: usize = 500;
/// The longest reserve that is stated, in hours: beyond it the draw is too small to matter.
pub const MOST_RESERVE_H: f64 = 10_000.0;
/// No more full cycles are counted.
pub const MOST_CYCLES: f64 = 1e9;
/// Less than this is no shortage, in Wh: rounding leaves as much.
pub const LEAST_SHORT_WH: f64 = 1e-9;
