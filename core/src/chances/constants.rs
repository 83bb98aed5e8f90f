//! Numbers of the likelihoods of a whole plan that do not come from it.

/// How many runs by chance there are: they place a chance within three percent, 19 times in 20 (twice the standard error of
/// a share, at most 1.6 %).
pub const RUNS: u32 = 1_000;

/// The most inputs that are told.
pub const MOST_INPUTS: usize = 12;

/// What hangs together less than this is not told: of so many runs, inputs that change nothing stay below it 999 times in
/// 1,000 (three times the standard error of a rank correlation, `1 / sqrt(runs - 1)`).
pub const LEAST_CORRELATION: f64 = 0.1;

/// Of the runs in which a balance fails, so many percent fail before its early day.
pub const EARLY_PERCENT: usize = 10;
