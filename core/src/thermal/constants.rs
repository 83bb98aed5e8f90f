//! Numbers of the thermal engine that nobody typed. What a maker declares wins.

/// Zero Celsius in kelvin (SI, exact, from memory).
pub const ZERO_C_IN_K: f64 = 273.15;
/// Stefan and Boltzmann's constant, in W/(m² K⁴) (CODATA 2018, from memory).
pub const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Standard fall, in m/s² (ISO 80000-3, exact, from memory).
pub const GRAVITY_M_S2: f64 = 9.806_65;
/// Air pressure at sea level, in Pa (US Standard Atmosphere 1976, from memory).
pub const SEA_LEVEL_PA: f64 = 101_325.0;

/// Inside surface resistance when heat goes up, sideways and down, in m² K/W (ISO 6946:2017, table 7, from memory).
pub const INSIDE_M2K_W: [f64; 3] = [0.10, 0.13, 0.17];
/// Outside surface resistance, in m² K/W (ISO 6946:2017, table 7).
pub const OUTSIDE_M2K_W: f64 = 0.04;
/// Emissivity of ordinary surfaces (ISO 6946, from memory).
pub const ORDINARY_EMISSIVITY: f64 = 0.9;
/// Emissivity of clean bright foil. Common practice, no source; dust and damp raise it.
pub const FOIL_EMISSIVITY: f64 = 0.05;
/// Mean temperature of a gap in a wall, in °C (ISO 6946's usual case, from memory).
pub const GAP_C: f64 = 10.0;
/// Convection in a gap when heat goes up and sideways, in W/(m² K) (ISO 6946 annex on air gaps, from memory).
pub const GAP_UP_W_M2K: f64 = 1.95;
/// The same sideways.
pub const GAP_SIDEWAYS_W_M2K: f64 = 1.25;
/// The same down, as `a d^b` with d in m.
pub const GAP_DOWN: [f64; 2] = [0.12, -0.44];
/// Conductivity of still air in a gap, in W/(m K) (same annex).
pub const STILL_AIR_W_MK: f64 = 0.025;
/// Outside convection in still air, in W/(m² K), and what each m/s of wind adds (ISO 6946:2017, annex C, from memory).
pub const OUTSIDE_CONVECTION: [f64; 2] = [4.0, 4.0];
/// Radiation of a black surface at 10 °C, in W/(m² K) (ISO 6946:2017, annex C, from memory).
pub const RADIATION_W_M2K: f64 = 5.1;
/// Wind for which the table's outside resistance stands, in m/s (ISO 6946:2017, annex C, from memory).
pub const USUAL_WIND_M_S: f64 = 4.0;
/// What a level surface radiates to the sky beyond what air of its temperature gives back, in W/m² (ASHRAE Fundamentals,
/// the sol-air temperature, from memory). A share of it under clouds.
pub const CLEAR_SKY_W_M2: f64 = 63.0;
/// Absorptance of a light, a middling and a dark colour (ISO 13790, from memory).
pub const ABSORPTANCE: [f64; 3] = [0.3, 0.6, 0.9];

/// Density of air, in kg/m³ (project's table of reference values; `PsychroLib` has 1.215 at 15 °C and 50 %).
pub const AIR_KG_M3: f64 = 1.2;
/// Heat that air takes, in J/(kg K) (project's table of reference values).
pub const AIR_J_KGK: f64 = 1_006.0;
/// Heat that a cubic metre of air takes away, in Wh/(m³ K): 1.2 x 1006 / 3600 = 0.3353, the usual 0.33 to 0.34.
pub const AIR_WH_M3K: f64 = AIR_KG_M3 * AIR_J_KGK / 3_600.0;
/// What comes through a sharp-edged opening of what would without narrowing (BS 5925, from memory).
pub const DISCHARGE: f64 = 0.61;
/// Wind through one opening, as a share of area times wind (BS 5925, from memory).
pub const WIND_ONE_SIDED: f64 = 0.025;
/// Wind through a low and a high opening of equal area, as a share of area times wind: 0.25 to 0.35 for wind at an angle
/// (ASHRAE Fundamentals, ventilation, from memory).
pub const WIND_THROUGH: f64 = 0.3;

/// Mass of water vapour for that of dry air at the same pressure (ASHRAE Fundamentals 2017, chapter 1).
pub const WATER_TO_AIR: f64 = 0.621_945;
/// Below it saturation is over ice, in °C: water's triple point (ASHRAE Fundamentals 2017, as `PsychroLib` 2.5.0 takes it).
pub const TRIPLE_POINT_C: f64 = 0.01;
/// Coefficients of saturation over ice (ASHRAE Fundamentals 2017, chapter 1, equation 5).
pub const OVER_ICE: [f64; 7] =
    [-5.674_535_9e3, 6.392_524_7, -9.677_843e-3, 6.221_570_1e-7, 2.074_782_5e-9, -9.484_024e-13, 4.163_501_9];
/// Coefficients of saturation over water (ASHRAE Fundamentals 2017, chapter 1, equation 6).
pub const OVER_WATER: [f64; 7] =
    [-5.800_220_6e3, 1.391_499_3, -4.864_023_9e-2, 4.176_476_8e-5, -1.445_209_3e-8, 0.0, 6.545_967_3];
/// Magnus's constants, which only begin the search for a dew point: Pa, 1, °C (WMO guide 8, from memory).
pub const MAGNUS: [f64; 3] = [611.2, 17.62, 243.12];
/// Convection at an inside wall, in W/(m² K), which carries water to it as it carries heat (ISO 6946:2017, annex C, for heat
/// going sideways, from memory; water by Lewis's relation).
pub const INSIDE_CONVECTION_W_M2K: f64 = 2.5;

/// Water that a face holds before it runs down, in kg/m² (ISO 13788 has 0.2 for surfaces that take none up, from memory).
pub const FACE_HOLDS_KG_M2: f64 = 0.2;

/// Heat of a seated person, in W: sensible and latent, at 24 °C (ASHRAE Fundamentals 2009, table 1, very light work).
pub const SEATED_W: [f64; 2] = [70.0, 45.0];
/// Water that goes with that, in g/h (the same, grams in the project's table of reference values).
pub const SEATED_G_H: f64 = 66.0;
/// Heat of a sleeper for that of somebody seated: 0.7 of 1.1 met (ASHRAE 55, from memory).
pub const ASLEEP_TO_SEATED: f64 = 0.7 / 1.1;
/// The same for cooking and tidying: 1.8 of 1.1 met (ASHRAE 55 has 1.6 to 2.0, from memory).
pub const BUSY_TO_SEATED: f64 = 1.8 / 1.1;
/// Activity asleep, seated and busy as multiples of the basal rate (Persily and de Jonge 2017: 0.95 asleep; seated as in the
/// project's table of reference values; both from memory. Busy as ASHRAE 55 has it, from memory).
pub const BASAL_TIMES: [f64; 3] = [0.95, 1.2, 1.8];
/// Basal rate of a man of 21 to 30, in MJ a day (Persily and de Jonge 2017, from memory).
pub const BASAL_MJ_DAY: f64 = 8.24;
/// Water that cooking a meal sends into the air, in g. Common practice, no source.
pub const MEAL_G: f64 = 250.0;
/// Heat of burning propane, its vapour not counted, in Wh/g (46.35 MJ/kg, from memory).
pub const PROPANE_WH_G: f64 = 46.35 / 3.6;
/// Mass of a mole of propane, in g; it burns to three of carbon dioxide and four of water (from memory).
pub const PROPANE_G_MOL: f64 = 44.1;
/// Mass of a mole of water, in g (from memory).
pub const WATER_G_MOL: f64 = 18.015;
/// Volume of a mole of gas at 20 °C, in l (from memory).
pub const MOLE_L: f64 = 24.06;
/// Carbon dioxide outside, in ppm (project's table of reference values).
pub const OUTSIDE_PPM: f64 = 420.0;
/// Limits at work, in ppm: over eight hours (OSHA) and over fifteen minutes (ACGIH, NIOSH), all from memory. They are limits
/// for healthy workers, not a promise.
pub const WORK_PPM: [f64; 2] = [5_000.0, 30_000.0];
