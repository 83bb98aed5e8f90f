//! What readings of the road say of a plan's parameters: Bayesian linear regression.
//!
//! Between two readings lies a [`Stretch`]. What was observed on it is what is known for certain, and of each parameter what
//! would be if its factor were 1, times that factor, and noise:
//!
//! `observed = known + factor_1 × expected_1 + ... + noise`, where the variance of the noise is `noise_sd² × days`.
//!
//! The [`Prior`] says what was thought of the factors and of the noise before, the [`Posterior`] what is to be thought now.
//!
//! ```
//! use kerbstead_core::road_log::calibration::{Prior, Stretch, calibrate};
//! // The fridge was thought to draw 400 Wh a day, give or take 30 %. It drew more like 480.
//! let stretch = |observed, days| Stretch { observed, expected: vec![400.0 * days], known: 0.0, weight_days: days };
//! let stretches = [stretch(470.0, 1.0), stretch(985.0, 2.0), stretch(450.0, 1.0), stretch(1_460.0, 3.0)];
//! let prior = Prior { means: vec![1.0], sds: vec![0.3], noise_sd: 50.0, noise_weight: 2.0 };
//! let posterior = calibrate(&stretches, &prior).unwrap();
//! assert!((posterior.means[0] - 1.2).abs() < 0.01 && posterior.sds[0] < 0.05);
//! let interval = posterior.interval(0, 80.0).unwrap();
//! assert!(interval.low > 1.14 && interval.high < 1.25);
//! assert!(!posterior.contradicts_prior() && posterior.outliers.is_empty());
//! ```
//!
//! # The method
//!
//! The prior of a factor is normal, that of the noise's variance a scaled inverse chi-squared, and neither depends on the
//! other: the semi-conjugate prior (Gelman, Carlin, Stern, Dunson, Vehtari, Rubin, "Bayesian Data Analysis", 3rd edition,
//! chapters 3 and 14.8; Hoff, "A First Course in Bayesian Statistical Methods", 9.2; both from memory). The fully conjugate
//! prior would have a closed form, but in it the standard deviation of a factor grows with the noise: where readings are
//! noisier than guessed, it would be as if less had been known of the fridge.
//!
//! Given the noise, factors are normal, by the usual formulas (`evidence`). Of the noise alone the density is known but for
//! its sum, which is taken at some dozens of places (`noise`), exactly for all that matters. So the posterior of a factor is
//! a mixture of normals. Student's t, which the conjugate prior gives, is such a mixture too, and what this one becomes
//! when the prior of the factors says nothing.
//!
//! Outliers are named by rule (`outliers`), and what is left is held against the prior (`surprise`).

pub mod constants;
mod eigen;
mod evidence;
mod noise;
mod outliers;
mod posterior;
mod rows;
mod surprise;

pub use posterior::{Interval, Posterior};

use evidence::Evidence;
use rows::Row;

/// What lies between two readings. All but the days is in one unit, whichever: Wh, litres.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stretch {
    /// What the readings say.
    pub observed: f64,
    /// For each parameter, what of it would be there if its factor were 1.
    pub expected: Vec<f64>,
    /// What is certain, and scaled by nothing.
    pub known: f64,
    /// How long it is, in days: the variance of the noise grows with it.
    pub weight_days: f64,
}

/// What is thought before there are readings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prior {
    /// The likely factor of each parameter, up to four of them; mostly 1.
    pub means: Vec<f64>,
    /// The standard deviation of each factor, from 0 on: 0.3 for "give or take 30 %", 0 for what is certain.
    pub sds: Vec<f64>,
    /// A guess of the noise of a stretch of one day, as a standard deviation, above 0.
    pub noise_sd: f64,
    /// As how many stretches that guess counts, from 1 to 1,000,000: 1 unless the noise was measured, since a wrong guess that
    /// counts for much is believed for long.
    pub noise_weight: f64,
}

impl Prior {
    /// Whether it can be reckoned with.
    fn is_sound(&self) -> bool {
        let is_sd = |sd: f64| (0.0..=constants::MOST_SD).contains(&sd);
        let is_mean = |mean: f64| mean.abs() <= constants::MOST_VALUE;
        (1..=constants::MOST_PARAMETERS).contains(&self.means.len())
            && self.means.len() == self.sds.len()
            && self.means.iter().all(|mean| is_mean(*mean))
            && self.sds.iter().all(|sd| is_sd(*sd))
            && (constants::LEAST_NOISE_SD..=constants::MOST_VALUE).contains(&self.noise_sd)
    }

    fn weight(&self) -> f64 {
        if self.noise_weight > 1.0 { self.noise_weight.min(constants::MOST_NOISE_WEIGHT) } else { 1.0 }
    }
}

/// What readings make of a prior. Stretches that cannot be used are left out and counted: with what is not finite, with days
/// that are not above 0, or with another number of parameters. A parameter of which no stretch says anything keeps its
/// prior. Nothing where the prior is none: no parameter or more than four, lists of different lengths, a negative standard
/// deviation, a noise that is not above 0.
pub fn calibrate(stretches: &[Stretch], prior: &Prior) -> Option<Posterior> {
    if !prior.is_sound() {
        return None;
    }
    let weight = prior.weight();
    let rows: Vec<Row> = (0..).zip(stretches).filter_map(|(at, stretch)| Row::of(at, stretch, prior)).collect();
    let is_out = outliers::among(&rows, weight);
    let evidence = Evidence::of(rows.iter().zip(&is_out).filter(|(_, is_out)| !**is_out).map(|(row, _)| row));
    let mut posterior = Posterior::of(&evidence, prior, weight);
    posterior.look_at(&evidence, weight, &rows, &is_out, stretches.len());
    posterior.surprise = surprise::share(&evidence, weight);
    Some(posterior)
}
