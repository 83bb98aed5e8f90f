//! The temperature outside by hour, from a day's low and high.
//!
//! ```
//! use kerbstead_core::sun::air::temperature_c;
//! assert!((temperature_c(4.0, 16.0, 3.0) - 16.0).abs() < 1e-12); // three hours after noon
//! assert!((temperature_c(4.0, 16.0, -9.0) - 4.0).abs() < 1e-12); // three hours after midnight
//! ```

use super::constants::WARMEST_AFTER_NOON_H;
use super::position::sound;
use std::f64::consts::PI;

/// The temperature so many hours after the sun's noon (before it, when negative), in degrees Celsius, for a mean low and
/// high (-90 to 70): a cosine of a day that is highest at 15 h. Common practice, no source; mornings are a little warmer
/// by it than they are, since the air goes on cooling until sunrise.
pub fn temperature_c(low_c: f64, high_c: f64, from_noon_h: f64) -> f64 {
    let low_c = sound(low_c, -90.0, 70.0);
    let half_c = (sound(high_c, -90.0, 70.0) - low_c).max(0.0) / 2.0;
    let turn = (sound(from_noon_h, -1e6, 1e6) - WARMEST_AFTER_NOON_H) / 24.0;
    low_c + half_c * (1.0 + libm::cos(2.0 * PI * turn))
}
