//! Calibration against independent code: what `tests/reference/calibration.py` made with `NumPy` and `SciPy`.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::road_log::calibration::{Posterior, Prior, Stretch, calibrate};
use serde_json::Value;

fn cases() -> Vec<Value> {
    let table: Value = serde_json::from_str(include_str!("../data/calibration.json")).unwrap();
    table["cases"].as_array().unwrap().clone()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn list(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(number).collect()
}

/// To 1e-9 of the number itself.
fn near(found: f64, expected: &Value, what: &str, case: &Value) {
    let expected = number(expected);
    let off = 1e-9 * expected.abs().max(1e-2);
    assert!((found - expected).abs() <= off, "{what}: {found} instead of {expected}\n{}", case["name"]);
}

fn prior(case: &Value) -> Prior {
    let sds = list(&case["sds"]);
    let (noise_sd, noise_weight) = (number(&case["noise_sd"]), number(&case["noise_weight"]));
    Prior { means: vec![1.0; sds.len()], sds, noise_sd, noise_weight }
}

fn stretches(case: &Value) -> Vec<Stretch> {
    let stretch = |row: &Value| Stretch {
        observed: number(&row[0]),
        expected: list(&row[1]),
        known: number(&row[2]),
        weight_days: number(&row[3]),
    };
    case["stretches"].as_array().unwrap().iter().map(stretch).collect()
}

fn check_factors(posterior: &Posterior, case: &Value) {
    for (at, mean) in posterior.means.iter().enumerate() {
        near(*mean, &case["means"][at], "mean", case);
        near(posterior.sds[at], &case["posterior_sds"][at], "standard deviation", case);
        for row in case["intervals"].as_array().unwrap() {
            let interval = posterior.interval(at, number(&row[0])).unwrap();
            near(interval.low, &row[at + 1][0], "lower end", case);
            near(interval.high, &row[at + 1][1], "upper end", case);
        }
    }
    near(posterior.noise_sd, &case["posterior_noise_sd"], "noise", case);
    near(posterior.degrees, &case["degrees"], "degrees", case);
    near(posterior.surprise, &case["surprise"], "surprise", case);
    if let Some(expected) = case["correlation_of_first_and_last"].as_f64() {
        let found = posterior.correlation(0, posterior.means.len() - 1).unwrap();
        assert!((found - expected).abs() < 1e-9, "{found} instead of {expected}");
    }
}

/// Source: `NumPy`, `SciPy`. The posterior by matrix formulas with the covariance of all readings, summed over the noise.
#[test]
fn posteriors_are_those_of_matrix_formulas() {
    for case in cases() {
        let posterior = calibrate(&stretches(&case), &prior(&case)).unwrap();
        assert_eq!((posterior.outliers.len(), posterior.unusable), (0, 0), "{}", case["name"]);
        check_factors(&posterior, &case);
        for (at, residual) in posterior.residuals.iter().enumerate() {
            near(residual.unwrap(), &case["residuals"][at], "residual", &case);
        }
    }
}

/// With readings that no noise explains between the others, which are left out.
#[test]
fn gross_readings_change_nothing_once_they_are_out() {
    for case in cases() {
        let mut stretches = stretches(&case);
        if stretches.len() < 8 || number(&case["noise_weight"]) > 1e3 {
            continue;
        }
        let gross = |times: f64| Stretch { observed: times * stretches[1].observed, ..stretches[1].clone() };
        let (high, low) = (gross(6.0), gross(-4.0));
        stretches.insert(3, high);
        stretches.push(low);
        let posterior = calibrate(&stretches, &prior(&case)).unwrap();
        assert_eq!(posterior.outliers, [3, stretches.len() - 1], "{}", case["name"]);
        check_factors(&posterior, &case);
    }
}
