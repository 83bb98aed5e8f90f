//! How two lists of numbers go together, by their ranks.

use crate::order;

/// How far one list rises with the other: 1 when each rise of one is a rise of the other, -1 when each is a fall, near 0 when
/// neither says anything of the other. Spearman, "The proof and measurement of association between two things", 1904 (from
/// memory): the product-moment correlation of the ranks, equal values sharing their mean rank. Nothing when the lists are not
/// equally long, or all values of one are equal.
pub(super) fn rank_correlation(a: &[f64], b: &[f64]) -> Option<f64> {
    if a.len() != b.len() {
        return None;
    }
    let (a, b) = (ranks(a), ranks(b));
    // The mean of all ranks from 1 on, shared or not.
    let mean = f64::midpoint(a.len() as f64, 1.0);
    let (mut together, mut of_a, mut of_b) = (0.0, 0.0, 0.0);
    for (a, b) in a.iter().zip(&b) {
        together += (a - mean) * (b - mean);
        of_a += (a - mean) * (a - mean);
        of_b += (b - mean) * (b - mean);
    }
    (of_a > 0.0 && of_b > 0.0).then(|| (together / libm::sqrt(of_a * of_b)).clamp(-1.0, 1.0))
}

/// The rank of each value, from 1 for the least; equal ones share the mean of theirs.
pub(super) fn ranks(values: &[f64]) -> Vec<f64> {
    let sorted = order::sorted(values.iter().map(|value| key(*value)));
    let mut ranks = vec![0.0; values.len()];
    for equal in sorted.chunk_by(|one, next| one.0 == next.0) {
        // Ranks are counted from the place after the last of the lower ones.
        let below = equal.first().map_or(0, |first| sorted.partition_point(|(key, _)| *key < first.0));
        let mean = below as f64 + f64::midpoint(equal.len() as f64, 1.0);
        for (_, at) in equal {
            if let Some(rank) = ranks.get_mut(*at) {
                *rank = mean;
            }
        }
    }
    ranks
}

/// A whole number that rises with a number; both zeros are one.
fn key(value: f64) -> u64 {
    let bits = (value + 0.0).to_bits();
    if bits >> 63 == 0 { bits | 1 << 63 } else { !bits }
}

#[cfg(test)]
mod tests {
    use super::{rank_correlation, ranks};

    /// Worked by hand; the last is Spearman's formula 1 - 6 sum of squares / (n (n² - 1)) = 1 - 6 * 8 / 120.
    #[test]
    fn ranks_and_their_correlation_are_those_worked_by_hand() {
        assert_eq!(ranks(&[3.0, -1.0, 3.0, 0.0, -0.0]), [4.5, 1.0, 4.5, 2.5, 2.5]);
        let five = [1.0, 2.0, 3.0, 4.0, 5.0];
        assert_eq!(rank_correlation(&five, &[2.0, 4.0, 8.0, 16.0, 32.0]), Some(1.0));
        assert_eq!(rank_correlation(&five, &[5.0, 0.0, -1.0, -7.0, -9.0]), Some(-1.0));
        assert_eq!(rank_correlation(&five, &[2.0, 1.0, 5.0, 3.0, 4.0]), Some(0.6));
        assert_eq!(rank_correlation(&five, &[7.0; 5]), None);
        assert_eq!(rank_correlation(&five, &[7.0; 4]), None);
        assert_eq!(rank_correlation(&[], &[]), None);
    }
}
