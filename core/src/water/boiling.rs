//! Water that must be made fit to drink: what boiling takes, and how long a filter lasts.
//!
//! ```
//! use kerbstead_core::water::boiling::{Boil, filter_lasts_days};
//! let boil = Boil { litres: 1.0, from_c: 15.0, power_w: 1_000.0, ..Boil::default() };
//! // 98.8 Wh to the boil, and a minute of it.
//! assert!((boil.energy_wh() - (98.8 + 16.7)).abs() < 0.5);
//! assert_eq!(filter_lasts_days(1_000.0, 5.0), Some(200.0));
//! ```

use super::constants::{HIGH_M, MOST_DAYS, ROLLING_BOIL_HIGH_MIN, ROLLING_BOIL_MIN};
use super::volume::density_kg_per_l;
use crate::energy::heat::{Heating, boiling_c};
use crate::energy::{sound, within};

/// Minutes of a rolling boil after which germs are dead at an altitude in m. Source: CDC (see [`ROLLING_BOIL_MIN`]). Boiling
/// takes out no salt, fuel, metal or poison.
pub fn rolling_boil_min(altitude_m: f64) -> f64 {
    if altitude_m > HIGH_M { ROLLING_BOIL_HIGH_MIN } else { ROLLING_BOIL_MIN }
}

/// Water that is boiled to be drunk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boil {
    /// How much, in l.
    pub litres: f64,
    /// How warm it is before, in °C.
    pub from_c: f64,
    /// Altitude, in m.
    pub altitude_m: f64,
    /// Heat that the pot takes a degree, in kJ/K.
    pub pot_kj_per_k: f64,
    /// What the kettle or hob draws, or the flame gives, in W.
    pub power_w: f64,
    /// What reaches the pot of it, 0.01 to 1.
    pub efficiency: f64,
}

impl Default for Boil {
    /// Nothing, from 10 °C, at sea level, without losses.
    fn default() -> Self {
        Self { litres: 0.0, from_c: 10.0, altitude_m: 0.0, pot_kj_per_k: 0.0, power_w: 0.0, efficiency: 1.0 }
    }
}

impl Boil {
    /// Energy to the boil and through the minutes of it, at full power, in Wh.
    pub fn energy_wh(&self) -> f64 {
        self.to_the_boil_wh() + self.rolling_wh()
    }

    /// Hours it takes; none if the power never gets there: none at all, or more than 10,000 hours.
    pub fn hours(&self) -> Option<f64> {
        let hours = self.energy_wh() / sound(self.power_w, 1e6);
        (hours <= 10_000.0).then_some(hours)
    }

    /// Energy to the boil, in Wh.
    pub fn to_the_boil_wh(&self) -> f64 {
        let heating = Heating {
            water_kg: sound(self.litres, 1e4) * density_kg_per_l(self.from_c),
            vessel_kj_per_k: self.pot_kj_per_k,
            from_c: within(self.from_c, 0.0, 100.0),
            to_c: boiling_c(self.altitude_m),
            boiled_away_kg: 0.0,
            efficiency: self.efficiency,
        };
        heating.energy_wh()
    }

    /// Energy of the rolling boil at full power, in Wh; nothing without water.
    fn rolling_wh(&self) -> f64 {
        let minutes = if self.litres > 0.0 { rolling_boil_min(self.altitude_m) } else { 0.0 };
        sound(self.power_w, 1e6) * minutes / 60.0
    }
}

/// How many days a filter lasts that is good for so many litres, at so many litres a day, 10,000 at most; none if nothing is
/// filtered. A filter that froze, or is past its date, is done earlier.
pub fn filter_lasts_days(life_l: f64, litres_per_day: f64) -> Option<f64> {
    let days = sound(life_l, 1e9) / sound(litres_per_day, 1e6);
    (litres_per_day > 0.0).then(|| sound(days, MOST_DAYS))
}

/// How many filters some days take, the first of which has done so many litres already; none if one is good for nothing.
///
/// ```
/// use kerbstead_core::water::boiling::filters_needed;
/// assert_eq!(filters_needed(300.0, 0.0, 4.0, 365), Some(5)); // 1,460 l
/// assert_eq!(filters_needed(300.0, 150.0, 4.0, 30), Some(1));
/// ```
pub fn filters_needed(life_l: f64, done_l: f64, litres_per_day: f64, days: u32) -> Option<u32> {
    let life_l = sound(life_l, 1e9);
    let wanted_l = sound(litres_per_day, 1e6) * f64::from(days) + sound(done_l, life_l);
    // A millionth is rounding.
    let filters = libm::ceil(wanted_l / life_l - 1e-6);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole, and what is too much saturates"
    )]
    (life_l > 0.0).then_some(filters as u32)
}
