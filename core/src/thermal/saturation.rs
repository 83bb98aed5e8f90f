//! Saturation pressure as a table, and its inverse, for the many faces of a run: between temperatures a kelvin apart a fifth-
//! degree polynomial that has the equations' values, slopes and curvatures there. From -60 to 90 °C it is within 2e-10 of them,
//! relatively, below that within 1e-9; the dew point is within 1e-8 K of theirs.

use super::constants::{TRIPLE_POINT_C, ZERO_C_IN_K};
use super::damp::log_saturation;
use super::{sound, sound_c};

const CELLS: usize = 180;
/// Cells begin here, so that water's triple point is where one ends that is all over ice.
const LEAST_C: f64 = TRIPLE_POINT_C - 90.0;

/// Of each kelvin from -89.99 °C on, the polynomial's six coefficients.
#[derive(Clone, Debug)]
pub(super) struct Table(Vec<[f64; 6]>);

impl Table {
    pub fn new() -> Self {
        let mut cells = Vec::with_capacity(CELLS);
        for over_ice in [true, false] {
            let from = cells.len();
            let mut low = at_node(from, over_ice);
            for at in from..from + CELLS / 2 {
                let high = at_node(at + 1, over_ice);
                cells.push(between(low, high));
                low = high;
            }
        }
        Self(cells)
    }

    /// Vapour pressure of saturated air from -90 to 90 °C, in Pa, as [`super::damp::saturation_pa`] has it.
    #[inline]
    pub fn saturation_pa(&self, air_c: f64) -> f64 {
        let from_least = sound_c(air_c) - LEAST_C;
        // At the triple point itself it is over ice; over water it is 6e-9 of it more.
        let most = if air_c > TRIPLE_POINT_C { CELLS } else { CELLS / 2 } - 1;
        let cell = whole(from_least).min(most);
        value(self.cell(cell), from_least - cell as f64)
    }

    /// Temperature at which air with so much vapour (in Pa) is saturated, in °C, -90 to 90, as [`super::damp::dew_point_c`] has
    /// it. The search begins near a guess, which changes how long it takes and not what it finds.
    #[inline]
    pub fn dew_point_c(&self, vapour_pa: f64, guess_c: f64) -> f64 {
        let vapour_pa = sound(vapour_pa, 0.0, 1e5);
        let mut cell = whole(sound_c(guess_c) - LEAST_C);
        while cell > 0 && vapour_pa < self.cell(cell)[0] {
            cell -= 1;
        }
        while cell + 1 < CELLS && vapour_pa >= self.cell(cell + 1)[0] {
            cell += 1;
        }
        sound_c(LEAST_C + cell as f64 + where_it_is(self.cell(cell), vapour_pa))
    }

    #[inline]
    fn cell(&self, at: usize) -> &[f64; 6] {
        self.0.get(at).unwrap_or(&[0.0; 6])
    }
}

/// How far into a cell it has a value. The first guess, on the chord, is off by an eighth of what the slope changes, 0.025
/// at most; each of Newton's steps takes a tenth of the square of that.
#[inline]
fn where_it_is(cell: &[f64; 6], vapour_pa: f64) -> f64 {
    let [first, each, rest @ ..] = *cell;
    let mut within = (vapour_pa - first) / (each + rest.iter().sum::<f64>());
    for _ in 0..2 {
        let by_third = 3.0 * rest[1] + within * (4.0 * rest[2] + within * 5.0 * rest[3]);
        let slope = each + within * (2.0 * rest[0] + within * by_third);
        within += (vapour_pa - value(cell, within)) / slope;
    }
    within
}

#[inline]
fn value(cell: &[f64; 6], within: f64) -> f64 {
    let by_third = cell[3] + within * (cell[4] + within * cell[5]);
    cell[0] + within * (cell[1] + within * (cell[2] + within * by_third))
}

/// The polynomial between two nodes that are 1 apart, by Hermite.
fn between(low: [f64; 3], high: [f64; 3]) -> [f64; 6] {
    let [a, b, c] = [low[0], low[1], low[2] / 2.0];
    let value = high[0] - a - b - c;
    let slope = high[1] - b - 2.0 * c;
    let half_curve = high[2] / 2.0 - c;
    [
        a,
        b,
        c,
        10.0 * value - 4.0 * slope + half_curve,
        7.0 * slope - 15.0 * value - 2.0 * half_curve,
        6.0 * value - 3.0 * slope + half_curve,
    ]
}

/// Pressure where a cell begins, what it gains a kelvin, and what that gains.
fn at_node(cell: usize, over_ice: bool) -> [f64; 3] {
    let (log, each, each_gains) = log_saturation(LEAST_C + cell as f64 + ZERO_C_IN_K, over_ice);
    let pa = libm::exp(log);
    [pa, pa * each, pa * (each * each + each_gains)]
}

#[inline]
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "it is between -0.01 and 180")]
fn whole(value: f64) -> usize {
    (value as usize).min(CELLS - 1)
}

#[cfg(test)]
mod tests {
    use super::Table;
    use crate::thermal::damp::{dew_point_c, saturation_pa};

    #[test]
    fn the_table_is_as_the_equations_have_it() {
        let table = Table::new();
        for step in -90_000..=90_000 {
            let air_c = f64::from(step) / 1_000.0;
            let expected = saturation_pa(air_c);
            let off = if air_c < -60.0 { 1e-9 } else { 2e-10 };
            assert!((table.saturation_pa(air_c) - expected).abs() <= off * expected, "{air_c}");
        }
    }

    #[test]
    fn a_dew_point_is_found_from_any_guess() {
        let table = Table::new();
        for step in -1_799..=1_799 {
            let air_c = f64::from(step) / 20.0 + 0.003;
            let vapour_pa = saturation_pa(air_c);
            let found_c = table.dew_point_c(vapour_pa, air_c);
            assert!((found_c - air_c).abs() <= 1e-8, "{found_c} instead of {air_c}");
            assert!((found_c - dew_point_c(vapour_pa)).abs() <= 1e-8, "{found_c}");
            for guess_c in [-90.0, -40.0, 0.0, 0.01, 50.0, 90.0, f64::NAN, f64::INFINITY] {
                assert_eq!(
                    table.dew_point_c(vapour_pa, guess_c).to_bits(),
                    found_c.to_bits(),
                    "{air_c} from {guess_c}"
                );
            }
        }
    }

    #[test]
    fn strange_vapour_has_a_dew_point_within_bounds() {
        let table = Table::new();
        for vapour_pa in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -1.0, 1e-300, 1e-3, 7e4, 1e5, 1e300] {
            assert!((-90.0..=90.0).contains(&table.dew_point_c(vapour_pa, 10.0)), "{vapour_pa}");
        }
    }
}
