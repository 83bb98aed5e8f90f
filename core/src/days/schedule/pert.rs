//! Durations that are ranges.

use crate::draws::Chance;

/// How long an activity may take: slots of work, low to high.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Durations {
    /// If all goes well.
    pub low: f64,
    /// Most likely.
    pub likely: f64,
    /// If little goes well.
    pub high: f64,
}

impl Durations {
    /// No range.
    pub fn certain(slots: f64) -> Self {
        Self { low: slots, likely: slots, high: slots }
    }
}

/// The mean of a duration given as a range: (low + 4 likely + high) / 6. Malcolm, Roseboom, Clark and Fazar, "Application
/// of a technique for research and development program evaluation", 1959 (from memory).
pub fn pert_mean(low: f64, likely: f64, high: f64) -> f64 {
    (low + 4.0 * likely + high) / 6.0
}

/// Its variance as the same method assumes it: ((high - low) / 6)².
pub fn pert_variance(low: f64, high: f64) -> f64 {
    let deviation = (high - low) / 6.0;
    deviation * deviation
}

/// ln 4 and 1 + ln 5, of the algorithm below.
const LN_4: f64 = 1.386_294_361_119_890_6;
const ONE_AND_LN_5: f64 = 2.609_437_912_434_100_3;

/// A duration drawn by chance: the beta distribution from low to high whose mean is that of the method, with alpha + beta
/// = 6: alpha = 1 + 4 (likely - low) / (high - low), beta = 1 + 4 (high - likely) / (high - low) (Vose, "Risk analysis",
/// 2000, from memory). A range that is none, or not in order, is put in order first.
pub fn draw(durations: Durations, chance: &mut Chance) -> f64 {
    let Durations { low, likely, high } = sound(durations);
    let width = high - low;
    if width <= 0.0 {
        return likely;
    }
    let rise = 4.0 * (likely - low) / width;
    low + width * beta_of_six(1.0 + rise, 5.0 - rise, chance)
}

/// From 0 to a million, and in order.
fn sound(durations: Durations) -> Durations {
    let number = |value: f64| if value.is_finite() { value.clamp(0.0, 1e6) } else { 0.0 };
    let likely = number(durations.likely);
    Durations { low: number(durations.low).min(likely), likely, high: number(durations.high).max(likely) }
}

/// A beta variate whose two parameters, each at least 1, make 6: algorithm BB of Cheng, "Generating beta variates with
/// nonintegral shape parameters", 1978 (from memory; its moments are tested).
fn beta_of_six(alpha: f64, beta: f64, chance: &mut Chance) -> f64 {
    let (less, more) = (alpha.min(beta), alpha.max(beta));
    let scale = (4.0 / (2.0 * less * more - 6.0)).sqrt();
    let slope = less + 1.0 / scale;
    loop {
        let (first, second) = (chance.share(), chance.share());
        let logit = scale * libm::log(first / (1.0 - first));
        let odds = less * libm::exp(logit);
        let drawn = first * first * second;
        let gain = slope * logit - LN_4;
        let sum = less + gain - odds;
        let is_taken = sum + ONE_AND_LN_5 >= 5.0 * drawn || sum >= libm::log(drawn);
        if is_taken || gain + 6.0 * libm::log(6.0 / (more + odds)) >= libm::log(drawn) {
            return if alpha <= beta { odds / (more + odds) } else { more / (more + odds) };
        }
    }
}
