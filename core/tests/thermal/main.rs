//! Warmth, damp and air: published values, closed forms, values of independent code, what must hold for any setup, and
//! strange numbers.

#![allow(clippy::float_cmp, reason = "where values are compared exactly, they are exact")]
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

mod air;
mod answers;
mod closed_forms;
mod damp;
mod layers;
mod properties;

use kerbstead_core::thermal::layers::{Flow, Layer, Wall};
use kerbstead_core::thermal::shell::Surface;

fn assert_near(found: f64, expected: f64, off: f64, what: &str) {
    assert!((found - expected).abs() <= off, "{what}: {found} instead of {expected}");
}

const STEEL: Layer = solid(0.0008, 50.0);

const fn solid(thickness_m: f64, conductivity_w_mk: f64) -> Layer {
    Layer::Solid { thickness_m, conductivity_w_mk }
}

/// Steel with foam and plywood inside.
fn lined(foam_m: f64) -> Wall {
    Wall::new(Flow::Sideways, vec![solid(0.006, 0.13), solid(foam_m, 0.034), STEEL])
}

/// One surface that lets through about so much, in W/K, in still air and with no inside but air.
fn side(area_m2: f64) -> Surface {
    Surface::side(area_m2, lined(0.03), 0.0)
}
