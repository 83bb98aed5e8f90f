//! What is kept apart: for costs that come out higher, and for a breakdown.

use super::chance::{Outlook, Refused, Runs, UncertainFlow};

/// Courses that the reserve rests on: they place a percentile within a percent.
const PATHS: u32 = 10_000;

/// A cost still to come, in minor units, `low <= likely <= high`. Where all three are the same, nobody gave a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostAhead {
    /// The least.
    pub low: i64,
    /// The most likely.
    pub likely: i64,
    /// The most.
    pub high: i64,
}

/// What is kept apart, in minor units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reserve {
    /// What the costs that have a range come to in half of the courses at most: the median.
    pub middle: i64,
    /// What they come to in eight of ten courses at most.
    pub high: i64,
    /// The one less the other: what covers them in eight of ten courses.
    pub from_ranges: i64,
    /// The stated share of the costs without a range.
    pub from_share: i64,
    /// How many costs have no range.
    pub without_range: usize,
    /// What the person keeps for a breakdown: the tow, and nights elsewhere.
    pub breakdown: i64,
    /// All of it.
    pub total: i64,
}

/// The reserve for costs still to come: the 80th percentile less the median of their sum, drawn from their triangles;
/// for those without a range `share_percent` of them (0 to 100; [`super::constants::RESERVE_PERCENT`] is usual); and
/// what is kept for a breakdown. Common practice, no source.
///
/// # Errors
/// As [`Outlook::check`]: at most 1,000 costs, in order, within [`super::chance::MOST_MINOR`].
///
/// ```
/// use kerbstead_core::money::{CostAhead, reserve};
/// let insulation = CostAhead { low: 20_000, likely: 30_000, high: 60_000 };
/// let bed = CostAhead { low: 15_000, likely: 15_000, high: 15_000 };
/// let reserve = reserve(&[insulation, bed], 10, 25_000, 1).unwrap();
/// assert_eq!((reserve.without_range, reserve.from_share), (1, 1_500));
/// assert!((reserve.from_ranges - 8_870).abs() < 500); // 440.80 less 354.00, by the triangle's formula
/// assert_eq!(reserve.total, reserve.from_ranges + 1_500 + 25_000);
/// ```
pub fn reserve(costs: &[CostAhead], share_percent: u32, breakdown: i64, seed: u64) -> Result<Reserve, Refused> {
    let mut ranges = Outlook { opening: breakdown, days: 1, ..Outlook::default() };
    let (mut sure, mut without_range) = (0_i64, 0);
    for cost in costs {
        let flow = UncertainFlow { low: cost.low, likely: cost.likely, high: cost.high, ..UncertainFlow::fixed(0, 0) };
        ranges.uncertain.push(flow);
    }
    ranges.check()?;
    ranges.opening = 0;
    ranges.uncertain.retain(|flow| flow.low < flow.high);
    for cost in costs.iter().filter(|cost| cost.low == cost.high) {
        sure += cost.likely;
        without_range += 1;
    }
    let mut runs = Runs::new(&ranges, seed, PATHS)?;
    runs.step(PATHS);
    let sums = runs.chances().end;
    let (middle, high) = (sums.percentile(50), sums.percentile(80));
    let from_ranges = high - middle;
    let from_share = (sure * i64::from(share_percent.min(100)) + 50) / 100;
    let total = from_ranges + from_share + breakdown;
    Ok(Reserve { middle, high, from_ranges, from_share, without_range, breakdown, total })
}
