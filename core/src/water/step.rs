//! Litres by day.

use jiff::civil::Date;
use serde::Serialize;

use super::course::{DayOf, Level, step};
use super::input::{Aboard, Input, Meter, units};
use super::tanks::Day as Place;
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
    /// Person-days in the toilets in the evening.
    pub toilet_days: f64,
    /// Person-days for which they had no room.
    pub toilet_over_days: f64,
    /// Litres in the toilets in the evening.
    pub toilet_l: f64,
}

/// The water as the run went.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Day by day, on the road.
    pub days: Vec<WaterDay>,
    /// What was on board in the morning of each.
    pub(super) mornings: Vec<Level>,
    /// What each asked for, and what its place offered.
    pub(super) places: Vec<Place>,
    /// How warm the air got on each, in °C, where it is known.
    pub(super) highs_c: Vec<Option<f64>>,
    meter: Meter,
}

impl Course {
    /// One day, on which the air gets so warm: in °C, where that is known.
    pub fn step(&mut self, level: Level, input: &Input, day: &Day, high_c: Option<f64>) -> Level {
        let asks = self.meter.next(input.wants.on(high_c), input.person_days());
        let place = input.place(day, asks);
        let went = step(&input.rooms, level, &place, place.asks());
        self.days.push(WaterDay::new(day.date, level, &went, input));
        self.mornings.push(level);
        self.places.push(place);
        self.highs_c.push(high_c);
        went.evening()
    }
}

impl WaterDay {
    /// What is on board when it is most.
    pub fn most_aboard(&self) -> Aboard {
        Aboard { fresh_l: self.fresh_l.max(self.opening_l), grey_l: self.grey_l, toilet_l: self.toilet_l }
    }

    fn new(on: Date, morning: Level, went: &DayOf, input: &Input) -> Self {
        Self {
            on,
            opening_l: units(morning.fresh),
            filled_l: units(went.filled_ml),
            used_l: units(went.used_ml),
            missing_l: units(went.missing_ml),
            fresh_l: units(went.fresh_ml),
            grey_l: units(went.grey_ml),
            grey_over_l: units(went.grey_over_ml),
            toilet_days: units(went.toilet),
            toilet_over_days: units(went.toilet_over),
            toilet_l: input.toilet_l(went.toilet),
        }
    }
}
