//! The standard normal distribution.

use super::tail;
use std::f64::consts::{PI, SQRT_2};

/// The share of the standard normal distribution below `z`; a half where that is not a number.
pub fn normal_share_below(z: f64) -> f64 {
    if z.is_nan() { 0.5 } else { 0.5 * libm::erfc(-z / SQRT_2) }
}

/// What a share of the standard normal distribution is below. Shares count as at least 1e-100 from 0, and no nearer to 1 than
/// numbers can tell.
pub fn normal_quantile(share: f64) -> f64 {
    let (side, beyond) = tail(share);
    let mut z = rough_quantile(beyond);
    // Halley's steps, each of which triples the digits.
    for _ in 0..3 {
        let newton = (normal_share_below(-z) - beyond) / normal_density(z);
        z += newton / (1.0 - newton * z / 2.0);
    }
    side * z
}

/// The density of the standard normal distribution; 0 where `z` is not a number.
pub fn normal_density(z: f64) -> f64 {
    if z.is_nan() { 0.0 } else { libm::exp(-z * z / 2.0) / libm::sqrt(2.0 * PI) }
}

/// To 4.5e-4: Hastings, in Abramowitz and Stegun, "Handbook of Mathematical Functions", 26.2.23 (from memory).
fn rough_quantile(beyond: f64) -> f64 {
    let t = libm::sqrt(-2.0 * libm::log(beyond));
    let above = 2.515_517 + t * (0.802_853 + t * 0.010_328);
    let below = 1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308));
    t - above / below
}
