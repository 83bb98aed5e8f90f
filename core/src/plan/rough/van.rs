//! Usual inside sizes and masses of panel vans by class. Common practice, no source: a tape and a weighbridge win.

use crate::plan::{SizeClass, Vehicle};

/// A van of that class.
pub(super) fn vehicle(size: SizeClass) -> Vehicle {
    let [length, width, height, empty, gross] = match size {
        SizeClass::Small => [1_750.0, 1_450.0, 1_200.0, 1_400.0, 2_000.0],
        SizeClass::Medium => [2_450.0, 1_650.0, 1_380.0, 1_850.0, 2_800.0],
        SizeClass::HighRoof => [3_100.0, 1_750.0, 1_880.0, 2_050.0, 3_300.0],
        SizeClass::LongHighRoof => [4_000.0, 1_780.0, 1_900.0, 2_250.0, 3_500.0],
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
