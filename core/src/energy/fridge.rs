//! A cool box with a compressor and a thermostat.
//!
//! Heat comes through its walls in proportion to how much warmer the air is; the compressor takes it out at a coefficient of
//! performance that falls as the air gets warmer. While the box is at its temperature the compressor runs just as long as
//! keeps it there; otherwise it runs all the time, or not at all, until it is, which is worked out exactly for an hour of
//! steady air.
//!
//! ```
//! use kerbstead_core::energy::fridge::{Box, Cooling, Fridge};
//! let walls = Box { length_m: 0.5, width_m: 0.35, height_m: 0.4, foam_m: 0.035, conductivity_w_mk: 0.023 };
//! let fridge = Fridge { ua_w_k: walls.ua_w_k(), cooling: Cooling::Steady(1.6), running_w: 45.0, ..Fridge::default() };
//! assert!((fridge.wh_per_day(22.0) - 153.01).abs() < 0.1);
//! ```

use super::constants::{
    CONDENSER_ABOVE_K, EVAPORATOR_BELOW_K, LEAST_LIFT_K, MOST_PART_OF_CARNOT, MOST_W, PART_OF_CARNOT, ZERO_C_IN_K,
};
use super::{most, sound, within};

/// A box by its outside and its walls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Box {
    /// Outside length, in m.
    pub length_m: f64,
    /// Outside width, in m.
    pub width_m: f64,
    /// Outside height, in m.
    pub height_m: f64,
    /// Thickness of the foam, in m, at least 0.001.
    pub foam_m: f64,
    /// Conductivity of the foam, in W/(m K).
    pub conductivity_w_mk: f64,
}

impl Box {
    /// Heat that comes through a degree, in W/K: conduction through the middle surface of the walls, without door, gaskets
    /// and surface resistances (by hand, project's table of reference values).
    pub fn ua_w_k(&self) -> f64 {
        let foam_m = within(self.foam_m, 0.001, 1.0);
        let [a, b, c] = [self.length_m, self.width_m, self.height_m]
            .map(|side| sound(side, 10.0))
            .map(|side| sound(side - foam_m, 10.0));
        2.0 * (a * b + b * c + a * c) * sound(self.conductivity_w_mk, 10.0) / foam_m
    }
}

/// How well the compressor cools.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cooling {
    /// The same coefficient of performance at any temperature, 0.1 to 20.
    Steady(f64),
    /// A share of Carnot's bound between the evaporator and the condenser, 0 to 0.7.
    PartOfCarnot(f64),
}

impl Cooling {
    /// Heat taken out for each unit of electricity.
    pub fn performance(self, inside_c: f64, air_c: f64) -> f64 {
        match self {
            Self::Steady(performance) => within(performance, 0.1, 20.0),
            Self::PartOfCarnot(part) => {
                let part = within(part, 0.01, MOST_PART_OF_CARNOT);
                part * carnot(inside_c - EVAPORATOR_BELOW_K, air_c + CONDENSER_ABOVE_K)
            }
        }
    }
}

/// Carnot's bound of cooling: T cold / (T warm - T cold) in kelvin. A lift below 20 K counts as 20 K.
///
/// ```
/// use kerbstead_core::energy::fridge::carnot;
/// assert!((carnot(-10.0, 40.0) - 5.263).abs() < 0.001);
/// ```
pub fn carnot(cold_c: f64, warm_c: f64) -> f64 {
    let cold_c = within(cold_c, -100.0, 100.0);
    (cold_c + ZERO_C_IN_K) / most(within(warm_c, -100.0, 200.0) - cold_c, LEAST_LIFT_K)
}

/// A cool box with a compressor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fridge {
    /// Heat that comes in a degree, in W/K.
    pub ua_w_k: f64,
    /// What the thermostat keeps, in °C, -40 to 40.
    pub inside_c: f64,
    /// How well it cools.
    pub cooling: Cooling,
    /// Power while it runs, in W.
    pub running_w: f64,
    /// Heat that food and box take a degree, in Wh/K: ten kilograms of food have some 10.
    pub holds_wh_k: f64,
    /// Heat that comes in by opening it and by warm things, in W on average.
    pub opening_w: f64,
}

impl Default for Fridge {
    /// A small one. Common practice, no source.
    fn default() -> Self {
        Self {
            ua_w_k: 0.8,
            inside_c: 4.0,
            cooling: Cooling::PartOfCarnot(PART_OF_CARNOT),
            running_w: 45.0,
            holds_wh_k: 8.0,
            opening_w: 0.0,
        }
    }
}

impl Fridge {
    /// One of which a label says what it takes a day in air of a temperature. With the same inside and the usual compressor,
    /// its walls follow from that; in air of that temperature it takes what the label says.
    ///
    /// ```
    /// use kerbstead_core::energy::fridge::Fridge;
    /// let fridge = Fridge::labelled(360.0, 25.0, 4.0, 45.0);
    /// assert!((fridge.wh_per_day(25.0) - 360.0).abs() < 1e-9);
    /// assert!(fridge.wh_per_day(35.0) > 360.0 * 31.0 / 21.0);
    /// ```
    pub fn labelled(wh_per_day: f64, rated_air_c: f64, inside_c: f64, running_w: f64) -> Self {
        let fridge = Self { inside_c, running_w, ..Self::default() }.made_sound();
        let heat_w = sound(wh_per_day, 1e6) / 24.0 * fridge.performance(rated_air_c);
        Self { ua_w_k: heat_w / within(rated_air_c - fridge.inside_c, 1.0, 200.0), ..fridge }
    }

    /// What it takes in a day of steady air once it is at its temperature, in Wh.
    pub fn wh_per_day(&self, air_c: f64) -> f64 {
        let fridge = self.made_sound();
        24.0 * fridge.running_w * sound(fridge.holding_share(within(air_c, -60.0, 90.0)), 1.0)
    }

    /// One hour in steady air: from the temperature of the box to that after it, and the share of the hour in which the
    /// compressor runs.
    pub fn hour(&self, box_c: f64, air_c: f64) -> (f64, f64) {
        let fridge = self.made_sound();
        fridge.sound_hour(within(box_c, -60.0, 90.0) + 0.0, within(air_c, -60.0, 90.0))
    }

    pub(super) fn sound_hour(&self, box_c: f64, air_c: f64) -> (f64, f64) {
        let holding = self.holding_share(air_c);
        let is_at = box_c.to_bits() == self.inside_c.to_bits();
        if is_at && (0.0..=1.0).contains(&holding) {
            return (box_c, holding);
        }
        let runs = box_c > self.inside_c || (is_at && holding > 1.0);
        let cooling_w = if runs { self.running_w * self.performance(air_c) } else { 0.0 };
        if self.ua_w_k <= 0.0 {
            return (box_c, f64::from(u8::from(runs)));
        }
        let level_c = air_c + (self.opening_w - cooling_w) / self.ua_w_k;
        let per_h = self.ua_w_k / self.holds_wh_k;
        let until = hours_until(box_c, self.inside_c, level_c, per_h);
        if until < 1.0 {
            let share = sound(holding, 1.0);
            return (self.inside_c, if runs { until + (1.0 - until) * share } else { (1.0 - until) * share });
        }
        (level_c + (box_c - level_c) * libm::exp(-per_h), f64::from(u8::from(runs)))
    }

    pub(super) fn made_sound(&self) -> Self {
        Self {
            ua_w_k: sound(self.ua_w_k, 1e3),
            // Adding zero takes the sign from a zero, so that bits tell whether two temperatures are equal.
            inside_c: within(self.inside_c, -40.0, 40.0) + 0.0,
            cooling: self.cooling,
            running_w: sound(self.running_w, MOST_W),
            holds_wh_k: within(self.holds_wh_k, 0.1, 1e5),
            opening_w: sound(self.opening_w, 1e4),
        }
    }

    fn performance(&self, air_c: f64) -> f64 {
        self.cooling.performance(self.inside_c, air_c)
    }

    /// Share of the time in which the compressor must run to keep the temperature: below 0 in cold air, above 1 when it
    /// cannot.
    fn holding_share(&self, air_c: f64) -> f64 {
        let heat_w = self.ua_w_k * (air_c - self.inside_c) + self.opening_w;
        let cooling_w = self.running_w * self.performance(air_c);
        if cooling_w > 0.0 {
            heat_w / cooling_w
        } else if heat_w > 0.0 {
            f64::INFINITY
        } else {
            0.0
        }
    }
}

/// Hours until a temperature that nears a level exponentially meets another one; none in finite time is infinite.
fn hours_until(from_c: f64, to_c: f64, level_c: f64, per_h: f64) -> f64 {
    let ratio = (from_c - level_c) / (to_c - level_c);
    if ratio > 1.0 && ratio.is_finite() { libm::log(ratio) / per_h } else { f64::INFINITY }
}
