//! Numbers of calibration that nobody typed.

/// No more parameters than these.
pub const MOST_PARAMETERS: usize = 4;

/// A stretch is an outlier where it is not within so much of what the others predict. Common practice, no source.
pub const OUTLIER_SHARE: f64 = 0.999;
/// Stretches whose studentised deleted residual is greater are looked at. Common practice, no source; it only saves time.
pub const SUSPECT: f64 = 2.0;
/// No outlier is named among fewer stretches.
pub const LEAST_FOR_OUTLIERS: usize = 5;
/// At most one stretch of so many is left out.
pub const ONE_OUT_OF: usize = 5;
/// So many times outliers are searched again among what is left.
pub const MOST_ROUNDS: usize = 8;

/// The data contradict the prior where they are farther from it than this share of what it predicts. Common practice, no
/// source.
pub const CONTRADICTION_SHARE: f64 = 0.98;

/// A reading, an expectation or a factor that is farther from zero is not used.
pub const MOST_VALUE: f64 = 1e12;
/// The shortest stretch that is used, in days: a tenth of a second.
pub const LEAST_DAYS: f64 = 1e-6;
/// The longest, in days.
pub const MOST_DAYS: f64 = 1e6;
/// The greatest standard deviation of a factor.
pub const MOST_SD: f64 = 1e9;
/// The smallest guess of the noise.
pub const LEAST_NOISE_SD: f64 = 1e-9;
/// The greatest number of stretches that a guess of the noise counts as; the least is 1.
pub const MOST_NOISE_WEIGHT: f64 = 1e6;
