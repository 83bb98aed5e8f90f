//! What runs by chance came to.

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
