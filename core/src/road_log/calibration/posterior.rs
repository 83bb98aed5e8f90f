//! What is to be thought now.

use super::Prior;
use super::constants::CONTRADICTION_SHARE;
use super::eigen::Square;
use super::evidence::Evidence;
use super::noise::{Place, middle, places};
use super::outliers::Deleted;
use super::rows::{Each, Row};
use crate::statistics::{normal_density, normal_quantile, normal_share_below};

/// What is to be thought of factors and noise after the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Posterior {
    /// The mean of each factor.
    pub means: Vec<f64>,
    /// Its standard deviation.
    pub sds: Vec<f64>,
    /// The noise of a stretch of one day, as a standard deviation: the square root of one over the mean of one over the variance.
    pub noise_sd: f64,
    /// The degrees of freedom of that: the stretches with those that the guess counts as, less the parameters as far as it was
    /// the readings that decided them. With factors of which nothing was known before, they have Student's t with so many.
    pub degrees: f64,
    /// How many stretches were used.
    pub used: usize,
    /// How many could not be used, because they hold what is not a number or out of all range.
    pub unusable: usize,
    /// Which stretches are too far from what the others say, and were left out; in ascending order.
    pub outliers: Vec<usize>,
    /// For each stretch how far it is from what the others say, in standard deviations of what they predict; positive where more
    /// was observed. Nothing for those that could not be used.
    pub residuals: Vec<Option<f64>>,
    /// The share of what the prior predicts that is nearer to its middle than what the readings say alone, 0 to 1.
    pub surprise: f64,
    /// Mean and standard deviation of each factor in the prior.
    origins: Vec<(f64, f64)>,
    /// In standard deviations of the prior.
    covariances: Square,
    parts: Vec<Part>,
}

/// From where to where a number is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Interval {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
}

/// Normals for one variance of the noise, in standard deviations of the prior from its means.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Part {
    weight: f64,
    means: Each,
    sds: Each,
}

impl Posterior {
    /// The interval within which a factor is with a probability in percent, as likely below it as above it: of the posterior
    /// itself, not of a t or a normal near it. Nothing for a parameter that is not there.
    pub fn interval(&self, parameter: usize, percent: f64) -> Option<Interval> {
        let (mean, sd) = self.origins.get(parameter)?;
        let percent = if percent > 0.0 { percent.min(100.0) } else { 0.0 };
        let beyond = (1.0 - percent / 100.0) / 2.0;
        let end = |share| mean + sd * quantile(&self.parts, parameter, share);
        let low = end(beyond);
        // Where the ends are one number but for rounding, they stay in order.
        Some(Interval { low, high: end(1.0 - beyond).max(low) })
    }

    /// How two factors go together, from -1 to 1: near -1 where the readings only tell their sum. Nothing for a parameter that
    /// is not there.
    pub fn correlation(&self, one: usize, other: usize) -> Option<f64> {
        let is_there = one.max(other) < self.origins.len();
        let covariance = |a: usize, b: usize| self.covariances.get(a).and_then(|row| row.get(b)).copied();
        let sizes = libm::sqrt(covariance(one, one)? * covariance(other, other)?);
        (is_there && sizes > 0.0).then_some((covariance(one, other)? / sizes).clamp(-1.0, 1.0))
    }

    /// Whether the readings contradict what was thought before, so that something else than a factor is to be looked for: they
    /// are farther from it than 98 % of what it predicts.
    pub fn contradicts_prior(&self) -> bool {
        self.surprise > CONTRADICTION_SHARE
    }

    pub(super) fn of(evidence: &Evidence, prior: &Prior, weight: f64) -> Self {
        let places = places(evidence, weight);
        let parts: Vec<Part> = places.iter().map(|place| part(evidence, place)).collect();
        let means = mean(&parts);
        let covariances = covariances(evidence, &places, &parts, &means);
        let origins: Vec<(f64, f64)> = prior.means.iter().copied().zip(prior.sds.iter().copied()).collect();
        let variance = middle(&places);
        Self {
            means: origins.iter().zip(means).map(|((mean, sd), off)| mean + sd * off).collect(),
            sds: (0..).zip(&origins).map(|(at, (_, sd))| sd * libm::sqrt(diagonal(&covariances, at))).collect(),
            noise_sd: prior.noise_sd * libm::sqrt(variance),
            degrees: weight + evidence.count - evidence.decided(variance),
            used: 0,
            unusable: 0,
            outliers: vec![],
            residuals: vec![],
            surprise: 0.0,
            origins,
            covariances,
            parts,
        }
    }

    /// Notes how each of so many stretches compares.
    pub(super) fn look_at(
        &mut self,
        evidence: &Evidence,
        weight: f64,
        rows: &[Row],
        is_out: &[bool],
        stretches: usize,
    ) {
        let deleted = Deleted::of(evidence, weight);
        self.residuals = vec![None; stretches];
        for (row, is_out) in rows.iter().zip(is_out) {
            let residual = if *is_out { deleted.residual_of_other(row) } else { deleted.residual(row) };
            if let Some(slot) = self.residuals.get_mut(row.at) {
                *slot = Some(residual);
            }
            if *is_out {
                self.outliers.push(row.at);
            }
        }
        self.used = rows.len() - self.outliers.len();
        self.unusable = stretches - rows.len();
    }
}

/// Axes turned back to parameters.
fn part(evidence: &Evidence, place: &Place) -> Part {
    let (along, spread) = evidence.factors(place.variance);
    let mut part = Part { weight: place.weight, means: Each::default(), sds: Each::default() };
    for ((mean, sd), axes) in part.means.iter_mut().zip(&mut part.sds).zip(&evidence.axes) {
        let (mut sum, mut variance) = (0.0, 0.0);
        for ((axis, along), spread) in axes.iter().zip(along).zip(spread) {
            sum += axis * along;
            variance += axis * axis * spread;
        }
        (*mean, *sd) = (sum, libm::sqrt(variance));
    }
    part
}

fn mean(parts: &[Part]) -> Each {
    let mut means = Each::default();
    for part in parts {
        for (sum, mean) in means.iter_mut().zip(part.means) {
            *sum += part.weight * mean;
        }
    }
    means
}

/// The mean of the covariances with the covariance of the means.
fn covariances(evidence: &Evidence, places: &[Place], parts: &[Part], means: &Each) -> Square {
    let mut spread = Each::default();
    for place in places {
        for (sum, variance) in spread.iter_mut().zip(evidence.factors(place.variance).1) {
            *sum += place.weight * variance;
        }
    }
    let mut covariances = Square::default();
    for (a, row) in covariances.iter_mut().enumerate() {
        for (b, covariance) in row.iter_mut().enumerate() {
            let within = evidence.axes[a].iter().zip(evidence.axes[b]).zip(spread);
            *covariance = within.map(|((a, b), spread)| a * b * spread).sum::<f64>()
                + parts.iter().map(|it| it.weight * (it.means[a] - means[a]) * (it.means[b] - means[b])).sum::<f64>();
        }
    }
    covariances
}

fn diagonal(matrix: &Square, at: usize) -> f64 {
    matrix.get(at).and_then(|row| row.get(at)).map_or(0.0, |value| value.max(0.0))
}

/// What a share of a mixture is below: by Newton's method, kept between bounds. Its quantile lies between those of its parts.
fn quantile(parts: &[Part], parameter: usize, share: f64) -> f64 {
    let z = normal_quantile(share);
    let normals = || {
        let at = |part: &Part| Some((part.weight, *part.means.get(parameter)?, *part.sds.get(parameter)?));
        parts.iter().filter_map(at)
    };
    let mut low = normals().map(|(_, mean, sd)| mean + z * sd).fold(f64::INFINITY, f64::min);
    let mut high = normals().map(|(_, mean, sd)| mean + z * sd).fold(f64::NEG_INFINITY, f64::max);
    let mut at = normals().map(|(weight, mean, sd)| weight * (mean + z * sd)).sum::<f64>().max(low).min(high);
    for _ in 0..100 {
        let (mut over, mut density) = (-share, 0.0);
        for (weight, mean, sd) in normals() {
            let z = (at - mean) / sd;
            over += weight * normal_share_below(z);
            density += weight * normal_density(z) / sd;
        }
        if over > 0.0 {
            high = at;
        } else {
            low = at;
        }
        let next = at - over / density;
        let next = if next > low && next < high { next } else { f64::midpoint(low, high) };
        let is_done = (next - at).abs() <= 1e-15 * next.abs().max(1.0);
        at = next;
        if is_done {
            break;
        }
    }
    at
}
