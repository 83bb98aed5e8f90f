//! Saturation pressure as a table, for the many faces of a run: a cubic between whole degrees that has the equations' values and
//! slopes there, within 1e-6 of them (1e-4 between 0 °C and water's triple point, a hundredth of a degree above).

use super::constants::ZERO_C_IN_K;
use super::damp::log_saturation;

const LEAST_C: f64 = -90.0;
const CELLS: usize = 180;

/// Of each degree from -90 to 89 °C, the cubic's four coefficients.
#[derive(Clone, Debug)]
pub(super) struct Table(Vec<[f64; 4]>);

impl Table {
    pub fn new() -> Self {
        Self((0..CELLS).map(cubic).collect())
    }

    /// In Pa, from -90 to 90 °C.
    #[inline]
    pub fn saturation_pa(&self, face_c: f64) -> f64 {
        let from_least = super::sound(face_c - LEAST_C, 0.0, 180.0);
        let cell = whole(from_least).min(CELLS - 1);
        let within = from_least - cell as f64;
        let [a, b, c, d] = self.0.get(cell).copied().unwrap_or_default();
        a + within * (b + within * (c + within * d))
    }
}

fn cubic(cell: usize) -> [f64; 4] {
    // Each cell is all over ice or all over water.
    let low_c = LEAST_C + cell as f64;
    let over_ice = low_c < 0.0;
    let (a, a_slope) = with_slope(low_c, over_ice);
    let (b, b_slope) = with_slope(low_c + 1.0, over_ice);
    [a, a_slope, 3.0 * (b - a) - 2.0 * a_slope - b_slope, 2.0 * (a - b) + a_slope + b_slope]
}

fn with_slope(air_c: f64, over_ice: bool) -> (f64, f64) {
    let (log, each) = log_saturation(air_c + ZERO_C_IN_K, over_ice);
    let pa = libm::exp(log);
    (pa, pa * each)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "it is between 0 and 180")]
fn whole(value: f64) -> usize {
    value as usize
}

#[cfg(test)]
mod tests {
    use super::Table;
    use crate::thermal::damp::saturation_pa;

    #[test]
    fn the_table_is_as_the_equations_have_it() {
        let table = Table::new();
        for step in -9_000..=9_000 {
            let air_c = f64::from(step) / 100.0;
            let expected_pa = saturation_pa(air_c);
            let off = if (0.0..=0.011).contains(&air_c) { 1.1e-4 } else { 1e-6 };
            assert!((table.saturation_pa(air_c) - expected_pa).abs() <= off * expected_pa, "{air_c}");
        }
    }
}
