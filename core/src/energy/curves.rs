//! What changes along a store's load, temperature and age.

use super::{least, sound, within};

/// Efficiency over load: straight lines between points, level beyond the first and the last.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Share of the lasting load and the efficiency there, by ascending load.
    pub points: Vec<(f64, f64)>,
}

/// At which temperatures a store charges, in °C: nothing below `none_below_c`, all between `full_from_c` and `full_to_c`,
/// nothing from `none_above_c` on, and in proportion between these.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Charging {
    /// No charging below.
    pub none_below_c: f64,
    /// All of it from here on.
    pub full_from_c: f64,
    /// All of it up to here.
    pub full_to_c: f64,
    /// None from here on.
    pub none_above_c: f64,
}

/// What cycles leave of a store: a straight line to what the maker states.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ageing {
    /// After so many full cycles...
    pub cycles: f64,
    /// ...this share is left.
    pub left: f64,
}

impl Curve {
    /// The same at every load.
    pub fn flat(efficiency: f64) -> Self {
        Self { points: vec![(1.0, efficiency)] }
    }

    /// Efficiency at a share of the lasting load; at least 0.01, and 1 if there is no point.
    pub fn at(&self, load_share: f64) -> f64 {
        let mut before: Option<(f64, f64)> = None;
        for &(load, efficiency) in &self.points {
            if load_share <= load {
                let Some((load_0, efficiency_0)) = before else { return within(efficiency, 0.01, 1.0) };
                let part = if load > load_0 { (load_share - load_0) / (load - load_0) } else { 1.0 };
                return within(efficiency_0 + (efficiency - efficiency_0) * part, 0.01, 1.0);
            }
            before = Some((load, efficiency));
        }
        before.map_or(1.0, |(_, efficiency)| within(efficiency, 0.01, 1.0))
    }

    /// Whether it is the same at every load.
    pub(super) fn is_flat(&self) -> bool {
        self.points.len() < 2
    }
}

impl Charging {
    /// Share of its inputs that a store takes at a temperature, 0 to 1; 0 if the temperature is not a number.
    pub fn share_at(&self, store_c: f64) -> f64 {
        if !(store_c >= self.none_below_c && store_c < self.none_above_c) {
            return 0.0;
        }
        let cold = rising(store_c, self.none_below_c, self.full_from_c);
        let hot = rising(-store_c, -self.none_above_c, -self.full_to_c);
        within(least(cold, hot), 0.0, 1.0)
    }
}

impl Ageing {
    /// Share left after so many full cycles, from 1 down to 0.
    pub fn share_left(&self, cycles: f64) -> f64 {
        let stated = sound(self.cycles, 1e9);
        if stated <= 0.0 {
            return 1.0;
        }
        within(1.0 - (1.0 - sound(self.left, 1.0)) * sound(cycles, 1e9) / stated, 0.0, 1.0)
    }
}

/// 0 up to `from`, 1 from `to` on, in proportion between.
fn rising(value: f64, from: f64, to: f64) -> f64 {
    if value >= to {
        return 1.0;
    }
    if to > from { within((value - from) / (to - from), 0.0, 1.0) } else { 1.0 }
}
