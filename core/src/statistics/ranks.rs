//! Ranks, and how well two lists go up together.

use crate::order;

/// The ranks of values, from 1 for the lowest; equal ones share the mean of theirs. What is not a number ranks highest.
///
/// ```
/// use kerbstead_core::statistics::ranks;
/// assert_eq!(ranks(&[7.0, 3.0, 7.0, 9.0]), [2.5, 1.0, 2.5, 4.0]);
/// ```
pub fn ranks(values: &[f64]) -> Vec<f64> {
    let mut ranks = vec![0.0; values.len()];
    let mut before = 0;
    for equal in order::sorted(values.iter().map(|value| key(*value))).chunk_by(|a, b| a.0 == b.0) {
        let rank = before as f64 + f64::midpoint(1.0, equal.len() as f64);
        for (_, at) in equal {
            if let Some(slot) = ranks.get_mut(*at) {
                *slot = rank;
            }
        }
        before += equal.len();
    }
    ranks
}

/// Spearman's rank correlation, from -1 to 1: the correlation of the ranks, so that ties are taken into account (Spearman,
/// "The proof and measurement of association between two things", 1904, from memory). Nothing of lists of different
/// lengths or of fewer than three values, of one that is the same throughout, or that holds what is not a number.
pub fn rank_correlation(a: &[f64], b: &[f64]) -> Option<f64> {
    if a.len() != b.len() || a.len() < 3 || a.iter().chain(b).any(|value| value.is_nan()) {
        return None;
    }
    let mean = (a.len() + 1) as f64 / 2.0;
    let (mut of_a, mut of_b, mut of_both) = (0.0, 0.0, 0.0);
    for (a, b) in ranks(a).iter().zip(ranks(b)) {
        let (a, b) = (a - mean, b - mean);
        of_a += a * a;
        of_b += b * b;
        of_both += a * b;
    }
    (of_a > 0.0 && of_b > 0.0).then(|| (of_both / libm::sqrt(of_a * of_b)).clamp(-1.0, 1.0))
}

/// A whole number that goes up with the value.
fn key(value: f64) -> u64 {
    if value.is_nan() {
        return u64::MAX;
    }
    // Adding zero makes one zero of the two.
    let bits = (value + 0.0).to_bits();
    let sign = 1 << 63;
    if bits & sign == 0 { bits | sign } else { !bits }
}
