//! Water in the air: saturation, dew point, wet bulb, and what keeps a surface dry.
//!
//! ```
//! use kerbstead_core::thermal::damp::{dew_point_c, humidity_ratio, saturation_pa, wet_bulb_c};
//! use kerbstead_core::thermal::constants::SEA_LEVEL_PA;
//! let vapour_pa = 0.5 * saturation_pa(20.0);
//! assert!((dew_point_c(vapour_pa) - 9.272).abs() < 1e-3);
//! assert!((humidity_ratio(vapour_pa, SEA_LEVEL_PA) - 0.007_262).abs() < 1e-6);
//! assert!((wet_bulb_c(20.0, vapour_pa, SEA_LEVEL_PA) - 13.783).abs() < 2e-3);
//! ```

use super::constants::{AIR_KG_M3, MAGNUS, OVER_ICE, OVER_WATER, TRIPLE_POINT_C, WATER_TO_AIR, ZERO_C_IN_K};
use super::{relax, sound, sound_c};

/// Vapour pressure of saturated air from -90 to 90 °C, in Pa, over ice below water's triple point (ASHRAE Fundamentals 2017,
/// chapter 1, equations 5 and 6).
pub fn saturation_pa(air_c: f64) -> f64 {
    let kelvin = sound_c(air_c) + ZERO_C_IN_K;
    libm::exp(log_saturation(kelvin, is_over_ice(kelvin)).0)
}

#[inline]
fn is_over_ice(kelvin: f64) -> bool {
    kelvin <= TRIPLE_POINT_C + ZERO_C_IN_K
}

/// Logarithm of the saturation pressure, what it gains a kelvin, and what that gains.
#[inline]
pub(super) fn log_saturation(kelvin: f64, over_ice: bool) -> (f64, f64, f64) {
    let of = if over_ice { &OVER_ICE } else { &OVER_WATER };
    let t = kelvin;
    let log = of[0] / t + of[1] + t * (of[2] + t * (of[3] + t * (of[4] + t * of[5]))) + of[6] * libm::log(t);
    let each = -of[0] / (t * t) + of[2] + t * (2.0 * of[3] + t * (3.0 * of[4] + t * 4.0 * of[5])) + of[6] / t;
    let each_gains = (2.0 * of[0] / t - of[6]) / (t * t) + 2.0 * of[3] + t * (6.0 * of[4] + t * 12.0 * of[5]);
    (log, each, each_gains)
}

/// Temperature at which air with so much vapour (in Pa) is saturated, in °C, -90 to 90: the same equations solved by Newton
/// from Magnus's answer.
pub fn dew_point_c(vapour_pa: f64) -> f64 {
    let log_pa = libm::log(sound(vapour_pa, 1e-5, 1e5));
    let [pa, times, beyond_c] = MAGNUS;
    let over = log_pa - libm::log(pa);
    let mut kelvin = (beyond_c * over / (times - over)).clamp(-90.0, 90.0) + ZERO_C_IN_K;
    for _ in 0..8 {
        let (log, each, _) = log_saturation(kelvin, is_over_ice(kelvin));
        let step = (log_pa - log) / each;
        kelvin = (kelvin + step).clamp(ZERO_C_IN_K - 90.0, ZERO_C_IN_K + 90.0);
        // Newton's next step would be the square of this, by some 0.004 a kelvin.
        if step.abs() < 1e-4 {
            break;
        }
    }
    kelvin - ZERO_C_IN_K
}

/// Water for each kilogram of dry air, in kg, at a vapour pressure and an air pressure (1e4 to 2e5 Pa): 0.621945 p / (P - p)
/// (ASHRAE Fundamentals 2017, chapter 1). At most 10: no air is but vapour.
#[inline]
pub fn humidity_ratio(vapour_pa: f64, pressure_pa: f64) -> f64 {
    let (vapour_pa, pressure_pa) = (sound(vapour_pa, 0.0, 2e5), sound(pressure_pa, 1e4, 2e5));
    WATER_TO_AIR * vapour_pa / (pressure_pa - vapour_pa).max(WATER_TO_AIR / 10.0 * vapour_pa)
}

/// Vapour pressure of air with so much water, in Pa: the same turned round.
#[inline]
pub fn vapour_pa(humidity_ratio: f64, pressure_pa: f64) -> f64 {
    let ratio = sound(humidity_ratio, 0.0, 10.0);
    sound(pressure_pa, 1e4, 2e5) * ratio / (WATER_TO_AIR + ratio)
}

/// Vapour pressure for that of saturated air at the same temperature; above 1 there is fog.
pub fn relative_humidity(air_c: f64, vapour_pa: f64) -> f64 {
    sound(vapour_pa, 0.0, 2e5) / saturation_pa(air_c)
}

/// Temperature to which water that evaporates cools the air, in °C: the humidity ratio that a wet bulb implies (ASHRAE
/// Fundamentals 2017, chapter 1, equations 33 and 35), solved by halving between dew point and air.
pub fn wet_bulb_c(air_c: f64, vapour_pa: f64, pressure_pa: f64) -> f64 {
    let air_c = sound_c(air_c);
    let ratio = humidity_ratio(vapour_pa, pressure_pa);
    let (mut low_c, mut high_c) = (dew_point_c(vapour_pa).min(air_c), air_c);
    for _ in 0..40 {
        let middle_c = f64::midpoint(low_c, high_c);
        if implied_ratio(air_c, middle_c, pressure_pa) > ratio { high_c = middle_c } else { low_c = middle_c }
    }
    f64::midpoint(low_c, high_c)
}

fn implied_ratio(air_c: f64, wet_c: f64, pressure_pa: f64) -> f64 {
    let saturated = humidity_ratio(saturation_pa(wet_c), pressure_pa);
    let air_kj = 1.006 * (air_c - wet_c);
    if wet_c >= 0.0 {
        ((2_501.0 - 2.326 * wet_c) * saturated - air_kj) / (2_501.0 + 1.86 * air_c - 4.186 * wet_c)
    } else {
        ((2_830.0 - 0.24 * wet_c) * saturated - air_kj) / (2_830.0 + 1.86 * air_c - 2.1 * wet_c)
    }
}

/// The water of a room's air over some hours of steady fresh air and sources, nothing settling: humidity ratio on average and
/// at the end. In closed form: ρ V dw/dt = G + ρ Q (outside - w).
///
/// ```
/// use kerbstead_core::thermal::damp::Room;
/// let room = Room { volume_m3: 10.0, air_m3_h: 20.0, outside_ratio: 0.004, water_g_h: 48.0 };
/// assert!((room.steady_ratio() - 0.006).abs() < 1e-12);
/// let (_, after) = room.after(0.004, 0.5);
/// assert!((after - (0.006 - 0.002 * (-1.0_f64).exp())).abs() < 1e-12);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Air in it, in m³, 0.1 to 1,000.
    pub volume_m3: f64,
    /// Fresh air, in m³/h, 0 to 1e5.
    pub air_m3_h: f64,
    /// Humidity ratio outside, in kg/kg, 0 to 10.
    pub outside_ratio: f64,
    /// Water given off, in g/h, 0 to 1e5.
    pub water_g_h: f64,
}

impl Room {
    /// Humidity ratio it nears; without fresh air none, which is infinite unless no water is given off.
    pub fn steady_ratio(&self) -> f64 {
        let water = sound(self.water_g_h, 0.0, 1e5);
        let gain = if water > 0.0 { water / (1e3 * AIR_KG_M3 * sound(self.air_m3_h, 0.0, 1e5)) } else { 0.0 };
        sound(self.outside_ratio, 0.0, 10.0) + gain
    }

    /// Humidity ratio on average and after some hours (0 to 1e4), from what it was.
    pub fn after(&self, from_ratio: f64, hours: f64) -> (f64, f64) {
        let volume_m3 = sound(self.volume_m3, 0.1, 1e3);
        let changes_per_h = sound(self.air_m3_h, 0.0, 1e5) / volume_m3;
        let gains_per_h = sound(self.water_g_h, 0.0, 1e5) / (1e3 * AIR_KG_M3 * volume_m3);
        let fills_per_h = gains_per_h + changes_per_h * sound(self.outside_ratio, 0.0, 10.0);
        relax(sound(from_ratio, 0.0, 10.0), fills_per_h, changes_per_h, sound(hours, 0.0, 1e4))
    }
}

/// Fresh air that just keeps a surface of a temperature dry, in m³/h, while so much water (g/h) is given off, by outside air
/// with a vapour pressure; none if that air would wet the surface by itself. In the steady state: G / (ρ (saturation at the
/// surface - outside)).
///
/// ```
/// use kerbstead_core::thermal::damp::{dry_m3_h, humidity_ratio, saturation_pa};
/// let flow = dry_m3_h(8.0, 80.0, 500.0, 101_325.0).unwrap();
/// let inside = humidity_ratio(500.0, 101_325.0) + 0.080 / (1.2 * flow);
/// assert!((inside - humidity_ratio(saturation_pa(8.0), 101_325.0)).abs() < 1e-12);
/// assert_eq!(dry_m3_h(-5.0, 80.0, 500.0, 101_325.0), None);
/// ```
pub fn dry_m3_h(surface_c: f64, water_g_h: f64, outside_pa: f64, pressure_pa: f64) -> Option<f64> {
    let room = humidity_ratio(saturation_pa(surface_c), pressure_pa) - humidity_ratio(outside_pa, pressure_pa);
    (room > 0.0).then(|| sound(water_g_h, 0.0, 1e5) / (1e3 * AIR_KG_M3 * room))
}
