//! What people, cooking and flames give off: heat, water, carbon dioxide.
//!
//! ```
//! use kerbstead_core::thermal::people::{Activity, GivenOff};
//! let night = GivenOff::person(Activity::Asleep).times(2.0);
//! assert!(night.water_g_h < 2.0 * GivenOff::person(Activity::Seated).water_g_h);
//! // A flame of a kilowatt: some 127 g of water an hour.
//! assert!((GivenOff::flame(1_000.0).water_g_h - 126.9).abs() < 0.2);
//! ```

use super::constants::{
    ASLEEP_TO_SEATED, BASAL_MJ_DAY, BASAL_TIMES, BUSY_TO_SEATED, MEAL_G, MOLE_L, PROPANE_G_MOL, PROPANE_WH_G,
    SEATED_G_H, SEATED_W, WATER_G_MOL, ZERO_C_IN_K,
};
use super::{sound, sound_c};

/// What somebody does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Activity {
    /// Sleeps.
    Asleep,
    /// Sits, reads, writes.
    #[default]
    Seated,
    /// Cooks, tidies, packs.
    Busy,
}

/// What is given off in an hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GivenOff {
    /// Heat that warms the air, without that of the water, in W.
    pub heat_w: f64,
    /// Water, in g/h.
    pub water_g_h: f64,
    /// Carbon dioxide, in l/h.
    pub co2_l_h: f64,
}

impl GivenOff {
    /// By a grown person (ASHRAE Fundamentals 2009, table 1, at 24 °C; asleep and busy in proportion to their heat, of which
    /// more is sensible in colder air).
    pub fn person(activity: Activity) -> Self {
        let share = [ASLEEP_TO_SEATED, 1.0, BUSY_TO_SEATED][activity as usize];
        let co2_l_h = co2_l_h(BASAL_MJ_DAY, BASAL_TIMES[activity as usize], 20.0, 101.325);
        Self { heat_w: SEATED_W[0] * share, water_g_h: SEATED_G_H * share, co2_l_h }
    }

    /// By an open flame of propane of so many watts (0 to 20,000) whose fumes stay inside: from C3H8 + 5 O2 = 3 CO2 + 4 H2O.
    /// An open flame also makes carbon monoxide, which is not computed.
    pub fn flame(heat_w: f64) -> Self {
        let heat_w = sound(heat_w, 0.0, 2e4);
        let mol_h = heat_w / PROPANE_WH_G / PROPANE_G_MOL;
        Self { heat_w, water_g_h: 4.0 * mol_h * WATER_G_MOL, co2_l_h: 3.0 * mol_h * MOLE_L }
    }

    /// By a meal's cooking within an hour, beside the heat. Common practice, no source.
    pub fn meal() -> Self {
        Self { water_g_h: MEAL_G, ..Self::default() }
    }

    /// So many times as much.
    #[must_use]
    pub fn times(self, times: f64) -> Self {
        let times = sound(times, 0.0, 100.0);
        Self { heat_w: self.heat_w * times, water_g_h: self.water_g_h * times, co2_l_h: self.co2_l_h * times }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            heat_w: self.heat_w + other.heat_w,
            water_g_h: self.water_g_h + other.water_g_h,
            co2_l_h: self.co2_l_h + other.co2_l_h,
        }
    }
}

/// Carbon dioxide that somebody gives off, in l/h: 0.85 x basal rate (MJ a day, 1 to 20) x multiple of it (0.5 to 20) x T/p x
/// 0.000211 in l/s, with T in K and p in kPa (Persily and de Jonge 2017, doi 10.1111/ina.12383, from memory).
///
/// ```
/// use kerbstead_core::thermal::people::co2_l_h;
/// assert!((co2_l_h(8.24, 1.2, -0.15, 101.0) / 3_600.0 - 0.00479).abs() < 1e-5);
/// ```
pub fn co2_l_h(basal_mj_day: f64, times_basal: f64, air_c: f64, pressure_kpa: f64) -> f64 {
    let kelvin = sound_c(air_c) + ZERO_C_IN_K;
    let burnt = 0.85 * sound(basal_mj_day, 1.0, 20.0) * sound(times_basal, 0.5, 20.0);
    burnt * kelvin / sound(pressure_kpa, 10.0, 200.0) * 0.000_211 * 3_600.0
}
