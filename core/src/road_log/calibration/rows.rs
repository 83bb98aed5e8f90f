//! Stretches in units of what is thought before: factors in standard deviations from their means, noise in guesses of it.

use super::constants::{LEAST_DAYS, MOST_DAYS, MOST_PARAMETERS, MOST_VALUE};
use super::{Prior, Stretch};

/// A number for each parameter; 0 for those that are not there.
pub(super) type Each = [f64; MOST_PARAMETERS];

/// A stretch of which the noise would have variance 1 if the guess were right.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    /// Which stretch it is.
    pub at: usize,
    /// How far one standard deviation of each factor moves it.
    pub pulls: Each,
    /// How far it is from what the prior has as likely.
    pub off: f64,
}

impl Row {
    /// Nothing of a stretch that cannot be used.
    pub fn of(at: usize, stretch: &Stretch, prior: &Prior) -> Option<Self> {
        let is_usable = |value: f64| value.abs() <= MOST_VALUE;
        let are_usable = is_usable(stretch.observed)
            && is_usable(stretch.known)
            && stretch.expected.len() == prior.means.len()
            && stretch.expected.iter().all(|value| is_usable(*value))
            && (LEAST_DAYS..=MOST_DAYS).contains(&stretch.weight_days);
        if !are_usable {
            return None;
        }
        let noise_sd = prior.noise_sd * libm::sqrt(stretch.weight_days);
        let mut off = stretch.observed - stretch.known;
        let mut pulls = Each::default();
        for (pull, ((expected, mean), sd)) in
            pulls.iter_mut().zip(stretch.expected.iter().zip(&prior.means).zip(&prior.sds))
        {
            *pull = sd * expected / noise_sd;
            off -= mean * expected;
        }
        Some(Self { at, pulls, off: off / noise_sd })
    }
}
