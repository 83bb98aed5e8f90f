//! What air comes through openings, by warmth and wind, and through a fan.
//!
//! ```
//! use kerbstead_core::thermal::vents::{Opening, Vents, w_k};
//! let vents = Vents { openings: vec![Opening::low_and_high(0.01, 1.5)], fixed: vec![] };
//! let still_m3_h = vents.flow_m3_h(20.0, 0.0, 0.0, 1.0, 0.0);
//! assert!((still_m3_h - 0.61 * 0.01 * (9.80665_f64 * 1.5 * 20.0 / 293.15).sqrt() * 3600.0).abs() < 1e-9);
//! assert!((w_k(still_m3_h) - 0.33533 * still_m3_h).abs() < 1e-3);
//! ```

use super::constants::{AIR_WH_M3K, DISCHARGE, GRAVITY_M_S2, WIND_ONE_SIDED, WIND_THROUGH, ZERO_C_IN_K};
use super::{sound, sound_c};

/// How openings lie to one another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Way {
    /// A single one: air comes in below and goes out above in it.
    #[default]
    Single,
    /// Two of the same area, one low and one high.
    LowAndHigh,
}

/// An opening, or two of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// Free area of one, in m², 0 to 10.
    pub area_m2: f64,
    /// Height of a single one, or between the middles of two, in m, 0 to 10.
    pub height_m: f64,
    /// What comes through of what would without narrowing, 0 to 1.
    pub discharge: f64,
    /// One, or two.
    pub way: Way,
}

impl Opening {
    /// A window or a hatch that is open.
    pub fn single(area_m2: f64, height_m: f64) -> Self {
        Self { area_m2, height_m, discharge: DISCHARGE, way: Way::Single }
    }

    /// Two vents, or the leaks of a shell: half of these low, half high.
    pub fn low_and_high(area_m2: f64, height_m: f64) -> Self {
        Self { way: Way::LowAndHigh, ..Self::single(area_m2, height_m) }
    }

    /// What warmth moves, in m³/h: c A √(g h ΔT / T) between two, a third of that in one (BS 5925, from memory).
    pub fn stack_m3_h(&self, inside_c: f64, outside_c: f64) -> f64 {
        self.stack_per_root() * libm::sqrt(warmth_squared(sound_c(inside_c), sound_c(outside_c)))
    }

    /// What wind moves, in m³/h: a share of area times wind, 0 to 60 m/s (BS 5925 for one opening, ASHRAE Fundamentals for two,
    /// both from memory; the discharge is within these shares).
    pub fn wind_m3_h(&self, wind_m_s: f64) -> f64 {
        let share = if self.way == Way::Single { WIND_ONE_SIDED } else { WIND_THROUGH };
        share * sound(self.area_m2, 0.0, 10.0) * sound(wind_m_s, 0.0, 60.0) * 3_600.0
    }

    /// What multiplies the root of ΔT/T, in m³/h.
    fn stack_per_root(&self) -> f64 {
        let part = if self.way == Way::Single { 1.0 / 3.0 } else { 1.0 };
        let root = libm::sqrt(GRAVITY_M_S2 * sound(self.height_m, 0.0, 10.0));
        part * sound(self.discharge, 0.0, 1.0) * sound(self.area_m2, 0.0, 10.0) * root * 3_600.0
    }
}

/// All that lets air in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Vents {
    /// What nobody can close: leaks, fixed vents.
    pub fixed: Vec<Opening>,
    /// What can be closed.
    pub openings: Vec<Opening>,
}

impl Vents {
    /// Air through all of them, in m³/h, with those that close opened to a share (0 to 1) and a fan blowing out so much (0 to
    /// 5,000 m³/h). Warmth, wind and a fan that blows one way add as squares (ASHRAE Fundamentals, infiltration, from memory).
    pub fn flow_m3_h(&self, inside_c: f64, outside_c: f64, wind_m_s: f64, open: f64, fan_m3_h: f64) -> f64 {
        let outside = Outside::new(outside_c, wind_m_s, open, fan_m3_h);
        Through::of(self).flow_m3_h(sound_c(inside_c), outside)
    }
}

/// What of outside moves air, made sound.
#[derive(Clone, Copy, Debug)]
pub(super) struct Outside {
    air_c: f64,
    wind_m_s: f64,
    open: f64,
    fan_m3_h: f64,
}

impl Outside {
    pub(super) fn new(outside_c: f64, wind_m_s: f64, open: f64, fan_m3_h: f64) -> Self {
        Self {
            air_c: sound_c(outside_c),
            wind_m_s: sound(wind_m_s, 0.0, 60.0),
            open: sound(open, 0.0, 1.0),
            fan_m3_h: sound(fan_m3_h, 0.0, 5_000.0),
        }
    }
}

/// The same as numbers: whether it closes, what multiplies √(ΔT/T), squared, and what multiplies the wind.
#[derive(Clone, Debug)]
pub(super) struct Through(Vec<(bool, f64, f64)>);

impl Through {
    pub(super) fn of(vents: &Vents) -> Self {
        let numbers = |closes: bool| {
            move |opening: &Opening| {
                let stack = opening.stack_per_root();
                (closes, stack * stack, opening.wind_m3_h(1.0))
            }
        };
        Self(vents.fixed.iter().map(numbers(false)).chain(vents.openings.iter().map(numbers(true))).collect())
    }

    /// Whether warmth inside moves any air.
    pub(super) fn is_moved_by_warmth(&self) -> bool {
        self.0.iter().any(|(_, stack_squared, _)| *stack_squared > 0.0)
    }

    pub(super) fn flow_m3_h(&self, inside_c: f64, outside: Outside) -> f64 {
        let warm = warmth_squared(inside_c, outside.air_c);
        let through = |(closes, stack_squared, wind): &(bool, f64, f64)| {
            let wind = wind * outside.wind_m_s;
            let share = if *closes { outside.open } else { 1.0 };
            if share > 0.0 { share * libm::sqrt(stack_squared * warm + wind * wind) } else { 0.0 }
        };
        let open_m3_h: f64 = self.0.iter().map(through).sum();
        libm::sqrt(open_m3_h * open_m3_h + outside.fan_m3_h * outside.fan_m3_h)
    }
}

/// ΔT/T, with T of the warmer side in kelvin.
fn warmth_squared(inside_c: f64, outside_c: f64) -> f64 {
    (inside_c - outside_c).abs() / (inside_c.max(outside_c) + ZERO_C_IN_K)
}

/// Heat that an air flow in m³/h (0 to 1e5) takes away a degree, in W/K: 0.3353 Wh/(m³ K) (project's table of reference
/// values).
pub fn w_k(flow_m3_h: f64) -> f64 {
    AIR_WH_M3K * sound(flow_m3_h, 0.0, 1e5)
}
