//! Calibration against closed forms and by hand; whether what it states is so; outliers; strange numbers. What `NumPy` and `SciPy`
//! have is in `tests/tests/calibration_reference.rs`.
#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test stops at what it did not expect")]

mod closed_forms;
mod coverage;
mod outliers;
mod strange;

use kerbstead_core::road_log::calibration::{Prior, Stretch};

/// A stretch of one parameter with nothing known.
fn stretch(observed: f64, expected: f64, weight_days: f64) -> Stretch {
    Stretch { observed, expected: vec![expected], known: 0.0, weight_days }
}

fn prior(sds: &[f64], noise_sd: f64, noise_weight: f64) -> Prior {
    Prior { means: vec![1.0; sds.len()], sds: sds.to_vec(), noise_sd, noise_weight }
}

fn near(found: f64, expected: f64, off: f64) {
    assert!((found - expected).abs() <= off, "{found} instead of {expected}");
}
