//! Stores, draws and runs: published values, closed forms, limits, what must always hold, the searches, and what
//! the looks ahead say.

#![allow(clippy::float_cmp, reason = "where values are compared exactly, they are exact")]
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "a test may fail, and its seeds are small")]

mod closed_forms;
mod limits;
mod properties;
mod published;
mod quick;
mod searches;
mod tonight;

use kerbstead_core::energy::draw::{Draw, Need};
use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
use kerbstead_core::energy::store::Store;

/// A store and draws through so many hours at 20 °C with nothing coming in.
fn setup(store: Store, draws: Vec<Draw>, hours: usize) -> Setup {
    Setup { stores: vec![OnBoard::full(store)], draws, hours: vec![Given::default(); hours], cloud_by_day: vec![] }
}

/// A steady low-voltage draw.
fn steady(power_w: f64) -> Draw {
    Draw { power_w, need: Need::Duty(1.0), ..Draw::default() }
}

fn assert_near(value: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((value - expected).abs() <= tolerance, "{what}: {value} instead of {expected}");
}
