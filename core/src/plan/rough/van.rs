//! Usual masses of panel vans by class. Common practice, no source: a tape and a weighbridge win.

use crate::plan::{SizeClass, Vehicle};
use crate::space::constants::usual_inside_mm;

/// A van of that class.
pub(super) fn vehicle(size: SizeClass) -> Vehicle {
    let [length, width, height] = usual_inside_mm(size);
    let [empty, gross] = match size {
        SizeClass::Small => [1_400.0, 2_000.0],
        SizeClass::Medium => [1_850.0, 2_800.0],
        SizeClass::HighRoof => [2_050.0, 3_300.0],
        SizeClass::LongHighRoof => [2_250.0, 3_500.0],
    };
    Vehicle {
        size,
        inside_length_mm: Some(length),
        inside_width_mm: Some(width),
        inside_height_mm: Some(height),
        empty_mass_kg: Some(empty),
        gross_limit_kg: Some(gross),
        ..Vehicle::default()
    }
}
