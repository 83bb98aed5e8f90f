//! Whether the data contradict the prior.

use super::evidence::Evidence;
use super::noise::places;
use std::f64::consts::PI;

/// An axis of less than this share of the greatest says nothing.
const LEAST_SIZE: f64 = 1e-10;

/// The share of what the prior predicts that is nearer to its middle than what was found, 0 to 1: Box, "Sampling and Bayes'
/// inference in scientific modelling and robustness", 1980, for the factors that fit best alone, as Evans and Moshonov have
/// it, "Checking for prior-data conflict", 2006 (both from memory). The noise is what is left around the best fit, of which
/// the prior of the factors is no part. For one parameter the middle is the share of a t between minus and plus what was
/// found, if the noise were all that is uncertain.
pub(super) fn share(evidence: &Evidence, weight: f64) -> f64 {
    let least = LEAST_SIZE * evidence.sizes.iter().copied().fold(0.0, f64::max);
    let axes: Vec<(f64, f64)> =
        evidence.sizes.into_iter().zip(evidence.along).filter(|(size, _)| *size > least).collect();
    let explained: f64 = axes.iter().map(|(size, along)| along * along / size).sum();
    let around = Evidence {
        count: (evidence.count - axes.len() as f64).max(0.0),
        squares: (evidence.squares - explained).max(0.0),
        ..Evidence::default()
    };
    let distance = |variance: f64| axes.iter().map(|(size, along)| along * along / size / (size + variance)).sum();
    let nearer =
        places(&around, weight).into_iter().map(|it| it.weight * chi_squared_below(distance(it.variance), axes.len()));
    nearer.sum::<f64>().clamp(0.0, 1.0)
}

/// The share of a chi-squared distribution with up to four degrees below a number (closed forms).
fn chi_squared_below(value: f64, degrees: usize) -> f64 {
    let half = value / 2.0;
    let beyond = match degrees {
        0 => return 0.0,
        1 => libm::erfc(libm::sqrt(half)),
        2 => libm::exp(-half),
        3 => libm::erfc(libm::sqrt(half)) + 2.0 * libm::sqrt(half / PI) * libm::exp(-half),
        _ => libm::exp(-half) * (1.0 + half),
    };
    1.0 - beyond
}
