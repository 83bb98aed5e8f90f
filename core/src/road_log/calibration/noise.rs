//! The posterior of the noise's variance, by sums over places.
//!
//! With `weight` stretches that the guess counts as, the density of the logarithm of the noise's standard deviation is
//!
//! `v^(-(weight + count) / 2) × Π (1 + size / v)^(-1/2) × exp(-(weight + left_with_prior(v)) / 2v)`
//!
//! up to a constant: the prior's times the likelihood with the factors integrated out (Bayesian Data Analysis, 3.2 and 14.8,
//! from memory). It is smooth and vanishes at both ends, so that the plain sum over evenly spaced places converges faster
//! than any power of their distance: Trefethen and Weideman, "The exponentially convergent trapezoidal rule", 2014 (from
//! memory). Halving the distance changes no result of the reference cases by more than 3e-10 of it.

use super::evidence::Evidence;

/// The distance of places where little is known, on the logarithm of the standard deviation.
const WIDEST_STEP: f64 = 0.15;
/// Their distance in standard deviations of that logarithm where much is known.
const STEP_SDS: f64 = 0.6;
/// Steps between the lowest and the highest mode, where data that go with the prior in no way have two far apart.
const MOST_BETWEEN: f64 = 1_000.0;
/// Steps in either direction; beyond the modes they are 250 at most, with a guess that counts as one stretch and nothing else.
const MOST_STEPS: usize = 1_400;
/// Places at which the density is less than `e` to minus this of the greatest do not count.
const NEGLIGIBLE: f64 = 36.0;

/// A variance of the noise, in squares of its guess, and how probable it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    pub weight: f64,
    pub variance: f64,
}

/// The posterior of the noise's variance. The weights sum to 1.
pub(super) fn places(evidence: &Evidence, weight: f64) -> Vec<Place> {
    let (low, high) = modes(evidence, weight);
    let between = libm::log(high / low) / 2.0;
    let step = (STEP_SDS / libm::sqrt(2.0 * (weight + evidence.count))).min(WIDEST_STEP).max(between / MOST_BETWEEN);
    let mut found = Vec::new();
    let mut greatest = f64::NEG_INFINITY;
    // From the lowest mode up to where it vanishes beyond the highest, then from the lowest down.
    for (first, direction, must_reach) in [(0.0, step, between), (-step, -step, 0.0)] {
        let mut off = first;
        for _ in 0..MOST_STEPS {
            let log_sd = libm::log(low) / 2.0 + off;
            let variance = libm::exp(2.0 * log_sd);
            let log_density = log_density(evidence, weight, log_sd, variance);
            if log_density < greatest - NEGLIGIBLE && off.abs() > must_reach {
                break;
            }
            greatest = log_density.max(greatest);
            found.push((log_density, variance));
            off += direction;
        }
    }
    normalised(&found, greatest)
}

fn normalised(found: &[(f64, f64)], greatest: f64) -> Vec<Place> {
    let mut sum = 0.0;
    let mut places = Vec::with_capacity(found.len());
    for (log_density, variance) in found {
        if *log_density >= greatest - NEGLIGIBLE {
            let weight = libm::exp(log_density - greatest);
            sum += weight;
            places.push(Place { weight, variance: *variance });
        }
    }
    for place in &mut places {
        place.weight /= sum;
    }
    places
}

fn log_density(evidence: &Evidence, weight: f64, log_sd: f64, variance: f64) -> f64 {
    let determined: f64 =
        evidence.sizes.iter().filter(|size| **size > 0.0).map(|size| libm::log1p(size / variance)).sum();
    let squares = weight + evidence.left_with_prior(variance);
    -(weight + evidence.count) * log_sd - 0.5 * (determined + squares / variance)
}

/// Bounds between which all modes of that density are. At a mode, `v = (weight + left(v)) / (weight + count - decided(v))`,
/// where `left` grows with `v` and `decided` falls; so bounds give narrower ones, until they are at the outermost modes.
fn modes(evidence: &Evidence, weight: f64) -> (f64, f64) {
    let all = weight + evidence.count;
    let (mut low, mut high) = (weight / all, (weight + evidence.squares) / weight);
    for _ in 0..60 {
        let next_low = ((weight + evidence.left(low)) / (all - evidence.decided(high))).max(low).min(high);
        let next_high =
            ((weight + evidence.left(high)) / (all - evidence.decided(low)).max(weight)).max(next_low).min(high);
        let is_done = next_low - low < 1e-3 * low && high - next_high < 1e-3 * high;
        (low, high) = (next_low, next_high);
        if is_done {
            break;
        }
    }
    (low, high)
}

/// The one variance that stands for all: that with the mean precision, which for a scaled inverse chi-squared is its scale.
pub(super) fn middle(places: &[Place]) -> f64 {
    1.0 / places.iter().map(|place| place.weight / place.variance).sum::<f64>()
}
