//! Student's t distribution (Gosset, "The probable error of a mean", 1908).

use super::beta::{beta_share_below, log_beta};
use super::normal::{normal_density, normal_quantile, normal_share_below};
use super::tail;

/// Fewer degrees count as so many.
const LEAST_DEGREES: f64 = 0.05;
/// From so many on, the distribution is taken as a normal one with corrections.
const MANY_DEGREES: f64 = 1_000.0;
/// The logarithm of the greatest quantile.
const MOST_LOG: f64 = 345.0;

/// The share of Student's t distribution below `t`. Degrees may be any number from 0.05 on, infinity too, with which it is the
/// normal distribution. A `t` that is not a number counts as 0.
///
/// ```
/// // With one degree it is Cauchy's distribution, of which a quarter is above 1.
/// assert!((kerbstead_core::statistics::t_share_below(1.0, 1.0) - 0.75).abs() < 1e-12);
/// ```
pub fn t_share_below(t: f64, degrees: f64) -> f64 {
    let (t, degrees) = (if t.is_nan() { 0.0 } else { t }, sound_degrees(degrees));
    if degrees >= MANY_DEGREES {
        return nearly_normal_share(t, degrees);
    }
    let beyond = upper_tail(t.abs(), degrees);
    if t > 0.0 { 1.0 - beyond } else { beyond }
}

/// What a share of Student's t distribution is below. Shares count as at least 1e-100 from 0; no answer is beyond 1e149 or so.
///
/// By Newton's method on the logarithm of the tail over that of `t`. That curve is concave: `S(t) / (t f(t))` is the
/// integral of `f(ut) / f(t)` over `u` from 1 on, which falls as `t` grows. So its asymptote lies above it, and the steps go
/// from there to the answer without ever passing it.
pub fn t_quantile(share: f64, degrees: f64) -> f64 {
    let ((side, beyond), degrees) = (tail(share), sound_degrees(degrees));
    if degrees >= MANY_DEGREES {
        return nearly_normal_quantile(normal_quantile(share), degrees);
    }
    if beyond >= 0.5 {
        return 0.0;
    }
    let mut log_t = asymptote(beyond, degrees).min(MOST_LOG);
    for _ in 0..200 {
        let t = libm::exp(log_t);
        let found = upper_tail(t, degrees);
        let step = libm::log(found / beyond) * found / (t * density(t, degrees));
        log_t = (log_t + step).min(MOST_LOG);
        if step.abs() < 1e-14 {
            break;
        }
    }
    side * libm::exp(log_t)
}

fn sound_degrees(degrees: f64) -> f64 {
    if degrees > LEAST_DEGREES { degrees } else { LEAST_DEGREES }
}

/// The share above a `t` that is not negative: half of a beta distribution's (Abramowitz and Stegun, "Handbook of Mathematical
/// Functions", 26.5.27, from memory).
fn upper_tail(t: f64, degrees: f64) -> f64 {
    let ratio = (t / libm::sqrt(degrees)).min(1e150);
    let square = ratio * ratio;
    0.5 * beta_share_below(degrees / 2.0, 0.5, 1.0 / (1.0 + square), square / (1.0 + square))
}

fn density(t: f64, degrees: f64) -> f64 {
    let power = f64::midpoint(degrees, 1.0) * libm::log1p(t * t / degrees);
    libm::exp(-power - log_beta(0.5, degrees / 2.0)) / libm::sqrt(degrees)
}

/// The logarithm of the `t` with a tail, if the tail were the first term of its series for great `t` throughout:
/// `(degrees / t²)^a / (2 a B(a, 1/2))`, with `a` half the degrees.
fn asymptote(beyond: f64, degrees: f64) -> f64 {
    let a = degrees / 2.0;
    let log_power = libm::log(2.0 * beyond * a) + log_beta(a, 0.5);
    (libm::log(degrees) - log_power / a) / 2.0
}

/// Fisher's series, "Expansion of Student's integral in powers of 1/n", 1925 (from memory; a test compares it).
fn nearly_normal_share(t: f64, degrees: f64) -> f64 {
    // Beyond, the tail is less than what its rounding would be.
    let t = t.clamp(-30.0, 30.0);
    let s = t * t;
    let first = (s + 1.0) / 4.0;
    let second = (((3.0 * s - 7.0) * s - 5.0) * s - 3.0) / 96.0;
    let third = (((((s - 11.0) * s + 14.0) * s + 6.0) * s - 3.0) * s - 15.0) / 384.0;
    let less = t * (first + (second + third / degrees) / degrees) / degrees;
    (normal_share_below(t) - normal_density(t) * less).clamp(0.0, 1.0)
}

/// The same the other way round: Abramowitz and Stegun, 26.7.5 (from memory; a test compares it).
fn nearly_normal_quantile(z: f64, degrees: f64) -> f64 {
    let s = z * z;
    let first = (s + 1.0) / 4.0;
    let second = ((5.0 * s + 16.0) * s + 3.0) / 96.0;
    let third = (((3.0 * s + 19.0) * s + 17.0) * s - 15.0) / 384.0;
    let fourth = ((((79.0 * s + 776.0) * s + 1_482.0) * s - 1_920.0) * s - 945.0) / 92_160.0;
    z + z * (first + (second + (third + fourth / degrees) / degrees) / degrees) / degrees
}
