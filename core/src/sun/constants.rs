//! Numbers of the sun, the sky and panels that do not come from the plan.

/// Julian day of 1 January 2000, 0:00 UTC. Source: definition of the Julian day (JD 2451545.0 is 12:00 of that day).
pub const JD_2000: f64 = 2_451_544.5;
/// The earliest moment that is told apart, as a Julian day: 1 January 1900.
pub const FIRST_JD: f64 = 2_415_020.5;
/// The last one: 1 January 2101.
pub const LAST_JD: f64 = 2_488_434.5;
/// Days in a mean year of the Gregorian calendar. Source: the calendar, 146,097 days in 400 years.
pub const YEAR_DAYS: f64 = 365.2425;
/// Terrestrial time less universal time, in seconds, if it cannot be estimated: about that of the 2020s (IERS; from memory).
pub const DELTA_T_S: f64 = 69.0;
/// Mean sidereal time at Greenwich at JD 2451545.0, in degrees, and what it gains on the mean sun a day. Source: Reda and
/// Andreas, NREL/TP-560-34302, equation 28, as `solar-positioning` 0.7.2 has it.
pub const SIDEREAL_DEG: [f64; 2] = [280.460_618_37, 0.985_647_366_29];
/// Parallax of the sun at the mean distance, in degrees. Source: 8.794 seconds of arc, Reda and Andreas, equation 33, as
/// above.
pub const PARALLAX_DEG: f64 = 8.794 / 3_600.0;
/// Height of the sun's middle when its upper edge rises or sets: refraction 0.5667 and radius 0.2667 degrees. Source: Reda
/// and Andreas, NREL/TP-560-34302, appendix A.2, as the reference values have it.
pub const RISE_DEG: f64 = -0.8333;
/// Below this height no refraction is counted. Source: as [`RISE_DEG`]; with 0.26667 and 0.5667.
pub const REFRACTION_FROM_DEG: f64 = -0.833_37;

/// Air pressure at the level of the sea, in hectopascals. Source: US Standard Atmosphere 1976 (from memory).
pub const SEA_LEVEL_HPA: f64 = 1_013.25;
/// Temperature at the level of the sea in kelvins, what it falls by for a metre, and the exponent of the pressure.
/// Source: US Standard Atmosphere 1976; values and short formula as the project's reference values have them.
pub const STANDARD_AIR: [f64; 3] = [288.15, 0.006_5, 5.255_9];
/// Temperature of the air for refraction if nobody says another, in degrees Celsius. Common practice, no source: a
/// yearly mean, as references take it.
pub const USUAL_AIR_C: f64 = 12.0;

/// Irradiance from the sun at its mean distance, in watts per square metre. Source: 1,366.1, ASTM E 490, as pvlib 0.16.1
/// takes it.
pub const SOLAR_CONSTANT_W_M2: f64 = 1_366.1;
/// The series of the sun's distance by the day of the year: 1, cos, sin, cos 2, sin 2. Source: Spencer 1971, as pvlib
/// 0.16.1 has it.
pub const SPENCER: [f64; 5] = [1.000_11, 0.034_221, 0.001_28, 0.000_719, 7.7e-5];
/// Air mass: factor, degrees, exponent. Source: Kasten and Young, Applied Optics 28, 1989, as pvlib 0.16.1 has it.
pub const KASTEN_YOUNG: [f64; 3] = [0.505_72, 6.079_95, -1.636_4];
/// How hazy the air is if nobody says: Linke turbidity. Common practice, no source: clean mountain air 2, country 3,
/// towns 4 to 5, moist and still air more.
pub const USUAL_TURBIDITY: f64 = 3.0;
/// The least and the greatest that is counted. Common practice, no source.
pub const TURBIDITY_RANGE: [f64; 2] = [1.0, 10.0];
/// Below this cosine of the zenith angle the horizontal irradiance above the air is taken for that at it, so that a
/// clearness index near sunset means something. Source: pvlib 0.16.1, `clearness_index`.
pub const LEAST_COS_ZENITH: f64 = 0.065;
/// Beyond this zenith angle no beam is told apart from the rest. Source: pvlib 0.16.1, `erbs`.
pub const MOST_BEAM_ZENITH_DEG: f64 = 87.0;

/// What `n` eighths of cloud leave of a clear sky's global irradiance: `1 - 0.75 (n/8)^3.4`. Source: Kasten and Czeplak,
/// Solar Energy 24, 1980 (from memory).
pub const KASTEN_CZEPLAK: [f64; 2] = [0.75, 3.4];
/// Eighths of cloud for the words clear, some, many, overcast. Source: the middles of what reports of the weather at
/// airfields call scattered (3 to 4) and broken (5 to 7), and overcast (8) (from memory); clear is none.
pub const OKTAS: [f64; 4] = [0.0, 3.5, 6.0, 8.0];
/// The clearness of the darkest day. Source: Bendt, Collares-Pereira and Rabl, Solar Energy 27, 1981 (from memory).
pub const DARKEST_DAY: f64 = 0.05;
/// How much of a day's clearness the next day has: autocorrelation of days. Source: 0.29, Graham, Hollands and Huget,
/// Solar Energy 40, 1988 (from memory).
pub const NEXT_DAY: f64 = 0.29;

/// The least cosine of the zenith angle that the light around the sun is divided by. Source: pvlib 0.16.1, `haydavies`.
pub const LEAST_COS_ON_PLANE: f64 = 0.017_45;
/// A panel is turned no more often than this a day. Common practice, no source.
pub const MOST_TURNS: u8 = 24;
/// What the ground gives back if nobody says: grass and soil. Common practice, no source; snow 0.6 to 0.8.
pub const USUAL_ALBEDO: f64 = 0.2;
/// What dirt takes if nobody says. Common practice, no source.
pub const USUAL_SOILING: f64 = 0.03;

/// The light that a panel's peak watts are stated at, in watts per square metre, and the temperature of its cells in degrees
/// Celsius. Source: standard test conditions, IEC 60904-3 (from memory).
pub const RATED_W_M2: f64 = 1_000.0;
/// See [`RATED_W_M2`].
pub const RATED_C: f64 = 25.0;
/// The light and the air at which data sheets state the cells' temperature. Source: IEC 61215 (from memory).
pub const NOCT_W_M2: f64 = 800.0;
/// See [`NOCT_W_M2`].
pub const NOCT_AIR_C: f64 = 20.0;
/// Constants of the temperature of cells: a, b, and how much warmer than the back the cells are at 1,000 W/m². Open rack,
/// close to a roof, insulated back. Source: King, Boyson and Kratochvil, SAND2004-3535, as pvlib 0.16.1 has them
/// (`open_rack_glass_polymer`, `close_mount_glass_glass`, `insulated_back_glass_polymer`).
pub const SANDIA: [[f64; 3]; 3] = [[-3.56, -0.075, 3.0], [-2.98, -0.047_1, 1.0], [-2.81, -0.045_5, 0.0]];
/// What a degree changes if nobody says, as a share of the peak watts. Common practice, no source: of crystalline silicon
/// -0.003 to -0.0045; a data sheet wins.
pub const USUAL_PER_C: f64 = -0.003_5;
/// What comes out of a controller that follows the panel, if nobody says. Common practice, no source.
pub const TRACKING_EFFICIENCY: f64 = 0.95;

/// How long after noon it is warmest, in hours: at 15 h. Common practice, no source.
pub const WARMEST_AFTER_NOON_H: f64 = 3.0;
