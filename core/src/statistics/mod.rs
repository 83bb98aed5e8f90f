//! A few statistics, exact and small: percentiles, ranks, the normal distribution and Student's t.
//!
//! ```
//! use kerbstead_core::statistics::{median, rank_correlation, t_quantile};
//! assert_eq!(median(&[3.0, 1.0, 2.0]), 2.0);
//! // The warmer, the thirstier, though not in proportion.
//! assert_eq!(rank_correlation(&[10.0, 20.0, 30.0, 40.0], &[2.0, 2.1, 3.0, 9.0]), Some(1.0));
//! // From a table of Student's t: 95 % of it, with ten degrees, is within 2.228.
//! assert!((t_quantile(0.975, 10.0) - 2.228).abs() < 5e-4);
//! ```
//!
//! No function fails on a strange number, and none gives back what is infinite or not a number.

mod beta;
mod normal;
mod percentiles;
mod ranks;
mod student;

pub(crate) use percentiles::ascending;

pub use normal::{normal_density, normal_quantile, normal_share_below};
pub use percentiles::{median, median_absolute_deviation, percentile};
pub use ranks::{rank_correlation, ranks};
pub use student::{t_quantile, t_share_below};

/// No share that is asked for is nearer to 0 or 1.
const LEAST_SHARE: f64 = 1e-100;

/// The side on which a share lies, -1 below a half and 1 above, and the share beyond it on that side. What is not a number
/// counts as a half.
fn tail(share: f64) -> (f64, f64) {
    let share = if share.is_nan() { 0.5 } else { share };
    let (side, beyond) = if share < 0.5 { (-1.0, share) } else { (1.0, 1.0 - share) };
    (side, beyond.max(LEAST_SHARE))
}
