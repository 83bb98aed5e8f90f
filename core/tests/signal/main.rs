//! Data and time: published values, values by hand, the cheapest contracts against every way of using them, and strange numbers.

#![allow(clippy::float_cmp, reason = "where values are compared exactly, they are exact")]
#![allow(clippy::unwrap_used, reason = "a test may fail")]

mod contracts;
mod hours;
mod published;
mod strange;

use kerbstead_core::plan::Money;

fn assert_near(value: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((value - expected).abs() <= tolerance, "{what}: {value} instead of {expected}");
}

fn money(text: &str) -> Money {
    text.parse().unwrap()
}
