//! The temperature outside by hour, from a day's low and high.
//!
//! By day a sine that begins with the low at sunrise and has the high some time after noon; by night a decay from what it
//! was at sunset to the next low.
//!
//! ```
//! use kerbstead_core::sun::air::AirByHour;
//! let air = AirByHour::new(4.0, 16.0, 12.0);
//! assert!((air.temperature_c(-6.0) - 4.0).abs() < 1e-9); // sunrise, six hours before noon
//! assert!((air.temperature_c(1.5) - 16.0).abs() < 1e-9);
//! assert!((air.temperature_c(17.9) - air.temperature_c(18.1)).abs() < 0.4); // the next sunrise
//! ```

use super::constants::{AFTER_NOON_H, NIGHT_DECAY_H};
use super::position::sound;
use std::f64::consts::PI;

/// The course of a day's temperature. Source: Parton and Logan, Agricultural Meteorology 23, 1981, in the form of Goudriaan
/// and van Laar, Modelling Potential Crop Growth Processes, 1994, whose night meets the next low (both from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirByHour {
    low_c: f64,
    rise_c: f64,
    day_h: f64,
    /// What the temperature at sunset is above the low.
    sunset_c: f64,
    /// What of the decay is left at the end of the night.
    left: f64,
}

impl AirByHour {
    /// For a low and a high in degrees Celsius (-90 to 70) and a day of so many hours. Days shorter than 4 hours and longer
    /// than 22 count as those: the form knows no polar night.
    pub fn new(low_c: f64, high_c: f64, day_h: f64) -> Self {
        let low_c = sound(low_c, -90.0, 70.0);
        let rise_c = (sound(high_c, -90.0, 70.0) - low_c).max(0.0);
        let day_h = sound(day_h, 4.0, 22.0);
        let left = libm::exp(-(24.0 - day_h) / NIGHT_DECAY_H);
        let sunset_c = rise_c * libm::sin(PI * day_h / (day_h + 2.0 * AFTER_NOON_H));
        Self { low_c, rise_c, day_h, sunset_c, left }
    }

    /// The temperature so many hours after the sun's noon (or before, when negative); any number of hours, day after day.
    pub fn temperature_c(&self, from_noon_h: f64) -> f64 {
        let since_rise_h = (sound(from_noon_h, -1e6, 1e6) + self.day_h / 2.0).rem_euclid(24.0);
        if since_rise_h <= self.day_h {
            return self.low_c + self.rise_c * libm::sin(PI * since_rise_h / (self.day_h + 2.0 * AFTER_NOON_H));
        }
        let decay = libm::exp(-(since_rise_h - self.day_h) / NIGHT_DECAY_H);
        self.low_c + self.sunset_c * (decay - self.left) / (1.0 - self.left)
    }
}
