//! Carbon dioxide by the hour, against fresh air.
//!
//! ```
//! use kerbstead_core::thermal::air_quality::Room;
//! // One person in ten cubic metres with two litres of fresh air a second.
//! let room = Room { volume_m3: 10.0, air_m3_h: 7.2, outside_ppm: 420.0, co2_l_h: 18.72 };
//! assert!((room.steady_ppm() - 3_020.0).abs() < 1e-6);
//! assert!((room.after(420.0, 1.0).1 - 1_754.44).abs() < 0.01);
//! ```

use super::{decay_reach, relax_by, sound};

/// The most that is computed with: air is not more than carbon dioxide.
const MOST_PPM: f64 = 1e6;

/// A room with steady fresh air and steady sources.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Air in it, in m³, 0.1 to 1,000.
    pub volume_m3: f64,
    /// Fresh air, in m³/h, 0 to 1e5.
    pub air_m3_h: f64,
    /// Carbon dioxide outside, in ppm: some 420.
    pub outside_ppm: f64,
    /// Carbon dioxide given off, in l/h, 0 to 1e4.
    pub co2_l_h: f64,
}

impl Room {
    /// What it nears, in ppm: outside + G/Q (ASTM D6245, from memory). Without fresh air none, which is infinite unless nothing
    /// is given off.
    pub fn steady_ppm(&self) -> f64 {
        let co2 = sound(self.co2_l_h, 0.0, 1e4);
        let gain = if co2 > 0.0 { co2 * 1e3 / sound(self.air_m3_h, 0.0, 1e5) } else { 0.0 };
        sound(self.outside_ppm, 0.0, MOST_PPM) + gain
    }

    /// On average and after some hours (0 to 1e4), in ppm: C = outside + G/Q (1 - e^(-Qt/V)) from outside air (ASTM D6245,
    /// from memory), and likewise from any other.
    pub fn after(&self, from_ppm: f64, hours: f64) -> (f64, f64) {
        let hours = sound(hours, 0.0, 1e4);
        let changes = sound(self.air_m3_h, 0.0, 1e5) / sound(self.volume_m3, 0.1, 1e3) * hours;
        self.after_by(from_ppm, hours, decay_reach(changes))
    }

    /// The same with [`decay_reach`] of the air changes known.
    pub(super) fn after_by(&self, from_ppm: f64, hours: f64, reach: f64) -> (f64, f64) {
        let volume_m3 = sound(self.volume_m3, 0.1, 1e3);
        let changes_per_h = sound(self.air_m3_h, 0.0, 1e5) / volume_m3;
        let gains_per_h = sound(self.co2_l_h, 0.0, 1e4) * 1e3 / volume_m3;
        let fills_per_h = gains_per_h + changes_per_h * sound(self.outside_ppm, 0.0, MOST_PPM);
        let (mean, end) = relax_by(sound(from_ppm, 0.0, MOST_PPM), fills_per_h, changes_per_h, hours, reach);
        (mean.min(MOST_PPM), end.min(MOST_PPM))
    }

    /// Hours until it rises or falls to a level, in ppm; none if it never does.
    ///
    /// ```
    /// use kerbstead_core::thermal::air_quality::Room;
    /// let room = Room { volume_m3: 10.0, air_m3_h: 7.2, outside_ppm: 420.0, co2_l_h: 18.72 };
    /// assert!((room.hours_until(420.0, 1_754.44).unwrap() - 1.0).abs() < 1e-4);
    /// assert_eq!(room.hours_until(420.0, 3_100.0), None);
    /// ```
    pub fn hours_until(&self, from_ppm: f64, level_ppm: f64) -> Option<f64> {
        let (from, level) = (sound(from_ppm, 0.0, MOST_PPM), sound(level_ppm, 0.0, MOST_PPM));
        let volume_m3 = sound(self.volume_m3, 0.1, 1e3);
        let changes_per_h = sound(self.air_m3_h, 0.0, 1e5) / volume_m3;
        let rise_per_h = sound(self.co2_l_h, 0.0, 1e4) * 1e3 / volume_m3
            + changes_per_h * (sound(self.outside_ppm, 0.0, MOST_PPM) - from);
        // The rise decays as the level nears: moved = rise (1 - e^(-n t)) / n.
        let moved = (level - from) / rise_per_h;
        let hours = if changes_per_h > 0.0 { -libm::log1p(-moved * changes_per_h) / changes_per_h } else { moved };
        let is_there = (level - from).abs() <= 0.0;
        if is_there { Some(0.0) } else { Some(hours).filter(|hours| hours.is_finite() && *hours >= 0.0) }
    }
}

/// Fresh air that keeps a level (ppm) in the long run, in m³/h; none if outside air is above it already.
pub fn fresh_m3_h(co2_l_h: f64, level_ppm: f64, outside_ppm: f64) -> Option<f64> {
    let above = sound(level_ppm, 0.0, MOST_PPM) - sound(outside_ppm, 0.0, MOST_PPM);
    (above > 0.0).then(|| sound(co2_l_h, 0.0, 1e4) * 1e3 / above)
}
