//! Humidity ratio of saturated air as a table, for the many faces of a run: a cubic between whole degrees that has the
//! equations' values and slopes there. From -60 to 60 °C at sea level it is within 1e-6 of them (1e-4 between 0 °C and water's
//! triple point, a hundredth of a degree above). Where water would all but boil, it stops to grow.

use super::constants::{WATER_TO_AIR, ZERO_C_IN_K};
use super::damp::log_saturation;

const LEAST_C: f64 = -90.0;
const CELLS: usize = 180;
/// Of the air pressure, the most that counts as vapour.
const MOST_SHARE: f64 = 0.9;

/// Of each degree from -90 to 89 °C, the cubic's four coefficients.
#[derive(Clone, Debug)]
pub(super) struct Table(Vec<[f64; 4]>);

impl Table {
    pub fn new(pressure_pa: f64) -> Self {
        Self((0..CELLS).map(|cell| cubic(cell, pressure_pa)).collect())
    }

    /// In kg/kg, from -90 to 90 °C.
    #[inline]
    pub fn saturated(&self, face_c: f64) -> f64 {
        let from_least = super::sound(face_c - LEAST_C, 0.0, 180.0);
        let cell = whole(from_least).min(CELLS - 1);
        let within = from_least - cell as f64;
        let [a, b, c, d] = self.0.get(cell).copied().unwrap_or_default();
        a + within * (b + within * (c + within * d))
    }
}

fn cubic(cell: usize, pressure_pa: f64) -> [f64; 4] {
    // Each cell is all over ice or all over water.
    let low_c = LEAST_C + cell as f64;
    let over_ice = low_c < 0.0;
    let (a, a_slope) = with_slope(low_c, over_ice, pressure_pa);
    let (b, b_slope) = with_slope(low_c + 1.0, over_ice, pressure_pa);
    [a, a_slope, 3.0 * (b - a) - 2.0 * a_slope - b_slope, 2.0 * (a - b) + a_slope + b_slope]
}

/// The ratio and what it gains a kelvin.
fn with_slope(air_c: f64, over_ice: bool, pressure_pa: f64) -> (f64, f64) {
    let (log, each) = log_saturation(air_c + ZERO_C_IN_K, over_ice);
    let (pa, most_pa) = (libm::exp(log), MOST_SHARE * pressure_pa);
    let dry_pa = pressure_pa - pa.min(most_pa);
    let slope = if pa < most_pa { WATER_TO_AIR * pressure_pa * pa * each / (dry_pa * dry_pa) } else { 0.0 };
    (WATER_TO_AIR * pa.min(most_pa) / dry_pa, slope)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "it is between 0 and 180")]
fn whole(value: f64) -> usize {
    value as usize
}

#[cfg(test)]
mod tests {
    use super::Table;
    use crate::thermal::damp::{humidity_ratio, saturation_pa};

    #[test]
    fn the_table_is_as_the_equations_have_it() {
        let table = Table::new(101_325.0);
        for step in -6_000..=6_000 {
            let air_c = f64::from(step) / 100.0;
            let expected = humidity_ratio(saturation_pa(air_c), 101_325.0);
            let off = if (0.0..=0.011).contains(&air_c) { 1.1e-4 } else { 1e-6 };
            assert!((table.saturated(air_c) - expected).abs() <= off * expected, "{air_c}");
        }
    }

    #[test]
    fn no_pressure_gives_a_ratio_below_nothing_or_without_end() {
        for pressure_pa in [1e4, 2e4, 7e4, 2e5] {
            let table = Table::new(pressure_pa);
            for step in -9_100..=9_100 {
                assert!((0.0..10.0).contains(&table.saturated(f64::from(step) / 100.0)));
            }
        }
    }
}
