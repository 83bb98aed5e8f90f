//! What so many percent of some values are at most.

/// What `percent` of ascending values (0 to 100) are at most, between two in proportion: type 7 of Hyndman and Fan, "Sample
/// quantiles in statistical packages", 1996 (from memory). 0 of no values.
pub fn percentile(ascending: &[f64], percent: f64) -> f64 {
    let place = within_percent(percent) / 100.0 * ascending.len().saturating_sub(1) as f64;
    let at = whole(place);
    let half = |at: usize| ascending.get(at).map(|value| finite(*value) / 2.0);
    let below = half(at).unwrap_or(0.0);
    let above = half(at + 1).unwrap_or(below);
    // In halves, whose difference is never too great for a number.
    2.0 * (below + (above - below) * (place - at as f64))
}

/// The value in the middle, or the middle of the two there. What is not finite is left out; 0 of no values.
pub fn median(values: &[f64]) -> f64 {
    let finite: Vec<f64> = values.iter().copied().filter(|value| value.is_finite()).collect();
    percentile(&ascending(&finite), 50.0)
}

/// The median of how far values are from their median: Hampel, "The influence curve and its role in robust estimation", 1974
/// (from memory). Of normal values it is 0.6745 standard deviations.
pub fn median_absolute_deviation(values: &[f64]) -> f64 {
    let middle = median(values);
    let off: Vec<f64> = values.iter().map(|value| (value - middle).abs()).collect();
    median(&off)
}

pub(crate) fn ascending(values: &[f64]) -> Vec<f64> {
    let mut values = values.to_vec();
    values.sort_unstable_by(f64::total_cmp);
    values
}

fn within_percent(percent: f64) -> f64 {
    if percent > 0.0 { percent.min(100.0) } else { 0.0 }
}

/// The nearest number there is; 0 for what is none.
fn finite(value: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.clamp(-f64::MAX, f64::MAX) }
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "it is a place in a list")]
fn whole(value: f64) -> usize {
    value as usize
}
