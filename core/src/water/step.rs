//! Litres by day.

use jiff::civil::Date;
use serde::Serialize;

use super::input::{Input, Level};
use crate::run::Day;

/// One day of the water. `opening + filled - used = closing`, for fresh water.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct WaterDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Fresh water in the morning.
    pub opening_l: f64,
    /// Fresh water taken on or used straight from a tap.
    pub filled_l: f64,
    /// Fresh water used.
    pub used_l: f64,
    /// Fresh water that was wanted and not there.
    pub missing_l: f64,
    /// Fresh water in the evening.
    pub fresh_l: f64,
    /// Used water in the evening.
    pub grey_l: f64,
    /// Used water for which there was no room.
    pub grey_over_l: f64,
}

/// The water as the run went.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Day by day, on the road.
    pub days: Vec<WaterDay>,
}

impl Course {
    /// One day.
    pub fn step(&mut self, level: Level, input: &Input, day: &Day) -> Level {
        let has_tap = day.offer.is_some_and(|offer| offer.water);
        let has_drain = day.offer.is_some_and(|offer| offer.emptying);
        let ended = water_day(day.date, level, input, has_tap, has_drain);
        self.days.push(ended);
        ended.level()
    }
}

impl WaterDay {
    /// What is on board in the evening.
    pub(crate) fn level(&self) -> Level {
        Level { fresh_l: self.fresh_l, grey_l: self.grey_l }
    }
}

/// A day: where there is a tap, the day's water comes from it and the cans are full in the evening; where there is a place
/// to empty, used water is gone in the evening.
pub(crate) fn water_day(on: Date, level: Level, input: &Input, has_tap: bool, has_drain: bool) -> WaterDay {
    let used_l = if has_tap { input.use_l_per_day } else { input.use_l_per_day.min(level.fresh_l) };
    let fresh_l = if has_tap { input.fresh_capacity_l } else { level.fresh_l - used_l };
    let share = if input.use_l_per_day > 0.0 { used_l / input.use_l_per_day } else { 0.0 };
    let collected_l = if has_drain { 0.0 } else { level.grey_l + input.grey_l_per_day * share };
    let grey_l = collected_l.min(input.grey_capacity_l);
    WaterDay {
        on,
        opening_l: level.fresh_l,
        filled_l: if has_tap { fresh_l + used_l - level.fresh_l } else { 0.0 },
        used_l,
        missing_l: input.use_l_per_day - used_l,
        fresh_l,
        grey_l,
        grey_over_l: collected_l - grey_l,
    }
}
