//! Heat for water and food: what a kettle or a hob takes.
//!
//! ```
//! use kerbstead_core::energy::heat::{Heating, boiling_c};
//! let kettle = Heating { water_kg: 0.9991, from_c: 15.0, to_c: boiling_c(0.0), ..Heating::default() };
//! assert!((kettle.energy_wh() - 98.795).abs() < 0.5);
//! ```

use super::constants::{
    ANTOINE, BOIL_AWAY_WH_PER_KG, KJ_PER_WH, MOST_WH, PA_PER_MMHG, SEA_LEVEL_PA, WATER_KJ_PER_KG_K,
};
use super::{sound, within};

/// Something that is heated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heating {
    /// Water, or food that is mostly water, in kg.
    pub water_kg: f64,
    /// Heat that the vessel takes a degree, in kJ/K: half a kilogram of steel takes 0.25.
    pub vessel_kj_per_k: f64,
    /// Temperature before, in °C.
    pub from_c: f64,
    /// Temperature after, in °C: at the boil, [`boiling_c`].
    pub to_c: f64,
    /// Water that boils away, in kg.
    pub boiled_away_kg: f64,
    /// What reaches the vessel of what is drawn, 0.01 to 1.
    pub efficiency: f64,
}

impl Default for Heating {
    /// Nothing, without losses.
    fn default() -> Self {
        Self { water_kg: 0.0, vessel_kj_per_k: 0.0, from_c: 0.0, to_c: 0.0, boiled_away_kg: 0.0, efficiency: 1.0 }
    }
}

impl Heating {
    /// Energy drawn, in Wh.
    pub fn energy_wh(&self) -> f64 {
        let degrees = sound(self.to_c - self.from_c, 1e3);
        let heat_kj = heat_kj(sound(self.water_kg, 1e4), sound(self.vessel_kj_per_k, 1e4), degrees);
        let heat_wh = heat_kj / KJ_PER_WH + sound(self.boiled_away_kg, 1e4) * BOIL_AWAY_WH_PER_KG;
        sound(heat_wh / within(self.efficiency, 0.01, 1.0), MOST_WH)
    }
}

/// Heat to warm water in a vessel by so many degrees: (m c + C) ΔT, in kJ.
fn heat_kj(water_kg: f64, vessel_kj_per_k: f64, degrees_k: f64) -> f64 {
    (water_kg * WATER_KJ_PER_KG_K + vessel_kj_per_k) * degrees_k
}

/// Air pressure at an altitude from -500 to 9,000 m, in Pa: the lowest layer of the US Standard Atmosphere 1976 in its short
/// form (project's table of reference values).
pub fn pressure_pa(altitude_m: f64) -> f64 {
    SEA_LEVEL_PA * libm::pow(1.0 - 0.0065 * within(altitude_m, -500.0, 9_000.0) / 288.15, 5.2559)
}

/// Boiling point of water at an altitude from -500 to 9,000 m, in °C: Antoine's equation solved for the temperature.
///
/// ```
/// use kerbstead_core::energy::heat::boiling_c;
/// assert!((boiling_c(1_600.0) - 94.651).abs() < 0.1);
/// ```
pub fn boiling_c(altitude_m: f64) -> f64 {
    let [a, b, c] = ANTOINE;
    b / (a - libm::log10(pressure_pa(altitude_m) / PA_PER_MMHG)) - c
}
