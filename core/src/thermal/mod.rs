//! Warmth, damp and air in a small room on wheels: an engine that knows no plan.
//!
//! - [`layers`]: a wall of layers, how much heat it lets through, and how warm it is at each of them;
//! - [`shell`]: surfaces with windows; [`vents`]: what air comes through openings and fans;
//! - [`damp`]: water in the air, and when it settles on a surface; [`people`]: the heat, water and carbon dioxide that people
//!   and flames give off; [`air_quality`]: carbon dioxide against fresh air;
//! - [`setup`]: all of these with the hours they are run through; [`run`]: the hours one after another, each in closed form
//!   (`faces` for the shell, `lump` for heat, `moist` and `saturation` for water);
//! - [`answers`]: heater, layers and a hot day.
//!
//! Temperatures are in °C, heat flows in W, what is held in Wh/K, air in m³/h. No function fails on a strange number: what
//! is not a number counts as 0, and what is out of range as the nearest that is not. Nothing here says that a night or a
//! day is without danger.

pub mod air_quality;
pub mod answers;
pub mod constants;
pub mod damp;
mod faces;
pub mod layers;
mod lump;
mod moist;
pub mod people;
pub mod run;
mod saturation;
pub mod setup;
pub mod shell;
pub mod vents;

/// A number between bounds; what is not a number counts as 0 before.
#[inline]
fn sound(value: f64, least: f64, most: f64) -> f64 {
    let value = if value.is_nan() { 0.0 } else { value };
    if value < least {
        least
    } else if value > most {
        most
    } else {
        value
    }
}

/// An air temperature that may be typed, in °C.
#[inline]
fn sound_c(value: f64) -> f64 {
    sound(value, -90.0, 90.0)
}

/// `(z - 1 + e^-z) / z²`, for `z` from 0 on: how far, on average over a span, a rate that decays to `e^-z` has carried. Within
/// 2e-13 of it, relatively; what it carries, `z` times that, within 1e-14.
#[inline]
fn decay_reach(z: f64) -> f64 {
    if z < 0.05 {
        0.5 - z
            * (1.0 / 6.0
                - z * (1.0 / 24.0 - z * (1.0 / 120.0 - z * (1.0 / 720.0 - z * (1.0 / 5_040.0 - z / 40_320.0)))))
    } else {
        // The division need not wait for the decay.
        (z - 1.0 + libm::exp(-z)) * (1.0 / (z * z))
    }
}

/// One level that fills at a steady rate and drains in proportion to itself, over some hours: mean and end. The end is what
/// the mean leaves, so that nothing is lost: `end = from + hours (fills - drains mean)`.
#[inline]
fn relax(from: f64, fills_per_h: f64, drains_per_h: f64, hours: f64) -> (f64, f64) {
    relax_by(from, fills_per_h, drains_per_h, hours, decay_reach(drains_per_h * hours))
}

/// The same with [`decay_reach`] of what drains known.
#[inline]
fn relax_by(from: f64, fills_per_h: f64, drains_per_h: f64, hours: f64, reach: f64) -> (f64, f64) {
    let mean = from + hours * (fills_per_h - drains_per_h * from) * reach;
    (mean, from + hours * (fills_per_h - drains_per_h * mean))
}

#[cfg(test)]
mod tests {
    use super::decay_reach;

    /// Against `expm1` where it loses nothing, and the series to its end below.
    #[test]
    fn a_decay_carries_as_far_as_said() {
        for step in 1..4_000_u32 {
            let z = f64::from(step) / 500.0;
            let expected = if z < 1.0 {
                (1..20).rev().fold(0.0, |rest, at| 1.0 - z / f64::from(at + 2) * rest) / 2.0
            } else {
                (1.0 + libm::expm1(-z) / z) / z
            };
            assert!((decay_reach(z) - expected).abs() <= 2e-13 * expected, "{z}");
            assert!(z * (decay_reach(z) - expected).abs() <= 1e-14, "{z}");
        }
        for z in [50.0, 1e3, 1e6, 1e12] {
            assert!((decay_reach(z) * z - (1.0 - 1.0 / z)).abs() < 1e-15, "{z}");
        }
        assert!((decay_reach(0.0) - 0.5).abs() < 1e-16);
    }
}
