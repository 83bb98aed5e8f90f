//! How much goes into a can: by its sizes, and by weighing.
//!
//! ```
//! use kerbstead_core::water::volume::{box_l, lying_cylinder_l};
//! // A quarter of the height of a lying drum is a fifth of its water.
//! let (quarter, full) = (lying_cylinder_l(300.0, 600.0, 75.0), lying_cylinder_l(300.0, 600.0, 300.0));
//! assert!((quarter - 8.2915).abs() < 1e-4 && (full - 42.4115).abs() < 1e-4);
//! assert_eq!(box_l(400.0, 300.0, 200.0), 24.0);
//! ```
//!
//! No function fails on a strange number: what is not a number or below nothing counts as 0.

use std::f64::consts::PI;

use super::constants::{ICE_GROWTH, KELL, MM3_PER_L};
use crate::energy::{sound, within};

/// The longest side that is believed, in mm.
const MOST_MM: f64 = 1e5;
/// The most that is believed of a can, in kg or l.
const MOST_L: f64 = 1e6;

/// A box by its inside, in l: length times width times height, in mm. From sizes outside, take twice the wall off each first.
pub fn box_l(length_mm: f64, width_mm: f64, height_mm: f64) -> f64 {
    mm(length_mm) * mm(width_mm) * mm(height_mm) / MM3_PER_L
}

/// A standing cylinder by its inside, filled to a height, in l: π d² h / 4.
pub fn upright_cylinder_l(diameter_mm: f64, filled_height_mm: f64) -> f64 {
    PI * mm(diameter_mm) * mm(diameter_mm) / 4.0 * mm(filled_height_mm) / MM3_PER_L
}

/// A lying cylinder with flat ends by its inside, filled to a height (at most the diameter), in l: the segment of its circle
/// times its length.
pub fn lying_cylinder_l(diameter_mm: f64, length_mm: f64, filled_height_mm: f64) -> f64 {
    let radius_mm = mm(diameter_mm) / 2.0;
    segment_mm2(radius_mm, within(filled_height_mm, 0.0, 2.0 * radius_mm)) * mm(length_mm) / MM3_PER_L
}

/// The part of a circle below a height: r² acos((r - h) / r) - (r - h) sqrt(2 r h - h²). Source: geometry of the circle.
fn segment_mm2(radius_mm: f64, height_mm: f64) -> f64 {
    if radius_mm <= 0.0 {
        return 0.0;
    }
    let below_middle_mm = radius_mm - height_mm;
    let half_chord_mm = libm::sqrt(sound(height_mm * (2.0 * radius_mm - height_mm), f64::MAX));
    let sector_mm2 = radius_mm * radius_mm * libm::acos(within(below_middle_mm / radius_mm, -1.0, 1.0));
    sound(sector_mm2 - below_middle_mm * half_chord_mm, f64::MAX)
}

/// Density of water at a temperature from 0 to 100 °C and sea level, in kg/l. Source: Kell 1975 (see [`KELL`]).
///
/// ```
/// use kerbstead_core::water::volume::density_kg_per_l;
/// assert!((density_kg_per_l(15.0) - 0.9991).abs() < 1e-5);
/// ```
pub fn density_kg_per_l(water_c: f64) -> f64 {
    let celsius = within(water_c, 0.0, 100.0);
    let (numerator, denominator) = KELL;
    let above = numerator.iter().rev().fold(0.0, |sum, term| sum * celsius + term);
    above / (1.0 + denominator * celsius) / 1_000.0
}

/// What a can holds by weighing it empty and full, in l: the difference over the density of water at its temperature.
///
/// ```
/// use kerbstead_core::water::volume::weighed_l;
/// assert!((weighed_l(1.35, 21.2, 20.0) - 19.886).abs() < 0.005);
/// ```
pub fn weighed_l(empty_kg: f64, full_kg: f64, water_c: f64) -> f64 {
    sound(sound(full_kg, MOST_L) - sound(empty_kg, MOST_L), MOST_L) / density_kg_per_l(water_c)
}

/// How full a can may be that may freeze through, in l: ice takes 9.07 % more room than the water it was. What is above it,
/// is head room. A can that freezes from outside may burst all the same: the lid stays loose.
///
/// ```
/// use kerbstead_core::water::volume::frost_safe_l;
/// assert!((frost_safe_l(20.0) - 18.337).abs() < 1e-3);
/// ```
pub fn frost_safe_l(capacity_l: f64) -> f64 {
    sound(capacity_l, MOST_L) / ICE_GROWTH
}

fn mm(length_mm: f64) -> f64 {
    sound(length_mm, MOST_MM)
}
