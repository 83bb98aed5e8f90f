//! What runs by chance came to.

use super::{sound, whole};

/// What the runs came to. Energy is that of all stores together, in Wh; lists are in ascending order.
#[derive(Clone, Debug, PartialEq)]
pub struct Chances {
    /// How many runs.
    pub runs: u32,
    /// In how many of them all was served and every floor held.
    pub kept: u32,
    /// The first hours in which something was not served, of the runs in which something was not.
    pub first_short_hours: Vec<f64>,
    /// The least charge at the end of an hour, run by run.
    pub lowest_wh: Vec<f64>,
    /// What was not served, run by run: at the cells of one store, at the outlets if there are several.
    pub unserved_wh: Vec<f64>,
    /// The charge at the end, run by run.
    pub end_wh: Vec<f64>,
    /// The charge hour by hour, to half a percent of what the stores hold; empty if it was not wanted.
    pub band: Vec<BandHour>,
}

/// Charge at the end of an hour, in Wh: one run in ten has less than `low`, half of them less than `middle`, nine in ten less
/// than `high`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BandHour {
    /// The tenth percentile.
    pub low_wh: f64,
    /// The median.
    pub middle_wh: f64,
    /// The ninetieth percentile.
    pub high_wh: f64,
}

impl Chances {
    /// The share of the runs in which all was served until an hour begins: the chance of reaching it.
    pub fn reaching_hour(&self, hour: usize) -> f64 {
        let short = self.first_short_hours.partition_point(|first| *first < hour as f64);
        1.0 - short as f64 / f64::from(self.runs.max(1))
    }

    /// The share of the runs in which all was served and every floor held.
    pub fn share_kept(&self) -> f64 {
        f64::from(self.kept) / f64::from(self.runs.max(1))
    }
}

/// What `percent` of ascending values (0 to 100) are at most, between two in proportion: type 7 of Hyndman and Fan, "Sample
/// quantiles in statistical packages", 1996 (from memory). 0 of no values.
pub fn percentile(ascending: &[f64], percent: f64) -> f64 {
    let place = sound(percent, 100.0) / 100.0 * ascending.len().saturating_sub(1) as f64;
    let at = whole(place);
    let below = ascending.get(at).copied().unwrap_or(0.0);
    let above = ascending.get(at + 1).copied().unwrap_or(below);
    below + (above - below) * (place - at as f64)
}

pub(super) fn ascending(values: &[f64]) -> Vec<f64> {
    let mut values = values.to_vec();
    values.sort_unstable_by(f64::total_cmp);
    values
}
