//! Statistics against independent code: what `tests/reference/statistical.py` made with `NumPy` and `SciPy`.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::statistics::{
    median, median_absolute_deviation, normal_quantile, percentile, rank_correlation, ranks, t_quantile, t_share_below,
};
use serde_json::Value;

fn table() -> Value {
    serde_json::from_str(include_str!("../data/statistical.json")).unwrap()
}

fn list(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}

/// The rows of a table of numbers.
fn rows(of: &str) -> Vec<Vec<f64>> {
    table()[of].as_array().unwrap().iter().map(list).collect()
}

/// To `off`, of the number itself where that is greater than 1.
fn near(found: f64, expected: f64, off: f64, what: &str) {
    assert!((found - expected).abs() <= off * expected.abs().max(1.0), "{what}: {found} instead of {expected}");
}

/// Source: `NumPy`, `percentile` and `median`; `SciPy`, `median_abs_deviation` and `rankdata`.
#[test]
fn percentiles_and_ranks_are_those_of_numpy_and_scipy() {
    for case in table()["lists"].as_array().unwrap() {
        let values = list(&case["values"]);
        let mut ascending = values.clone();
        ascending.sort_by(f64::total_cmp);
        for row in case["percentiles"].as_array().unwrap().iter().map(list) {
            near(percentile(&ascending, row[0]), row[1], 1e-11, "percentile");
        }
        near(median(&values), case["median"].as_f64().unwrap(), 1e-11, "median");
        near(median_absolute_deviation(&values), case["deviation"].as_f64().unwrap(), 1e-11, "deviation");
        assert_eq!(ranks(&values), list(&case["ranks"]));
    }
}

/// Source: `SciPy`, `spearmanr`, on lists with and without ties.
#[test]
fn rank_correlations_are_those_of_scipy() {
    for case in table()["pairs"].as_array().unwrap() {
        let found = rank_correlation(&list(&case["a"]), &list(&case["b"])).unwrap();
        near(found, case["correlation"].as_f64().unwrap(), 1e-11, "correlation");
    }
}

/// Source: `SciPy`, `t.ppf`, `t.cdf` and `norm.ppf`.
#[test]
fn students_t_and_the_normal_distribution_are_those_of_scipy() {
    for row in rows("t_quantiles") {
        near(t_quantile(row[0], row[1]), row[2], 1e-10, &format!("t of {row:?}"));
    }
    for row in rows("t_shares") {
        near(t_share_below(row[0], row[1]), row[2], 1e-11, &format!("share of {row:?}"));
    }
    for row in rows("normal_quantiles") {
        near(normal_quantile(row[0]), row[1], 1e-11, &format!("normal of {row:?}"));
    }
}
