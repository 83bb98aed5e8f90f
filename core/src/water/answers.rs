//! What runs out first, how far apart stops may be, and what is lacking: along the days ahead, as the likely run has them.

use jiff::civil::Date;
use serde::Serialize;

use super::course::{Vessel, first_of, note};
use super::input::{Input, units};
use super::sizing::{least_extra, longest_interval};
use super::step::{Course, WaterDay};
use super::tanks::{Setup, Tank};

/// What falls short first.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct First {
    /// Fresh water, room for used water, or the toilet.
    pub vessel: Vessel,
    /// The first day on which it does.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// So many days later the next of the others does, if one does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_before_next: Option<usize>,
}

/// How far apart stops may be at which all is filled and emptied, wherever on the road they are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Spacing {
    /// Days from one stop to the next; none if a single stop is enough.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<usize>,
    /// The day on which the first must be at the latest; none if none is needed.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub first_by: Option<Date>,
    /// What would fall short otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Vessel>,
}

/// What a can, a tank or a toilet more would have to hold for the days ahead to hold with the stops they have; 0 of what lacks
/// nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Lacks {
    /// A full can more, in l.
    pub fresh_l: f64,
    /// Room for used water more, in l.
    pub grey_l: f64,
    /// Room in the toilet more, in person-days.
    pub toilet_days: f64,
}

/// The days ahead as a question for the engine, and the first of them. It begins after the last count.
pub(super) fn ahead(input: &Input, course: &Course, from: usize) -> (Setup, usize) {
    let evening = |day: usize| course.days.get(day).map(|day| (day.fresh_l, day.grey_l));
    let morning = |day: usize| course.mornings.get(day).map(|level| (units(level.fresh), units(level.grey)));
    let is_counted = morning(from + 1).is_some_and(|morning| Some(morning) != evening(from));
    let from = if is_counted { from + 1 } else { from };
    let opening = course.mornings.get(from).copied().unwrap_or_default();
    let holds = input.rooms.holds;
    let tank = |capacity_ml, opening_ml| Tank { capacity_ml, opening_ml };
    let setup = Setup {
        fresh: vec![tank(holds.fresh, opening.fresh)],
        grey: input.rooms.has_grey.then(|| tank(holds.grey, opening.grey)).into_iter().collect(),
        toilet: input.rooms.has_toilet.then(|| tank(holds.toilet, opening.toilet)),
        days: course.places.get(from..).unwrap_or_default().to_vec(),
    };
    (setup, from)
}

/// What falls short first on these days.
pub(super) fn first(days: &[WaterDay]) -> Option<First> {
    let mut shorts = [None; 3];
    for (at, day) in days.iter().enumerate() {
        for (short, by) in shorts.iter_mut().zip([day.missing_l, day.grey_over_l, day.toilet_over_days]) {
            note(short, at, super::tanks::milli(by));
        }
    }
    let first = first_of(shorts)?;
    let on = days.get(first.day)?.on;
    Some(First { vessel: first.vessel, on, days_before_next: first.days_before_next })
}

/// How far apart stops may be; `days` are those of the question.
pub(super) fn spacing(setup: &Setup, days: &[WaterDay]) -> Spacing {
    let interval = longest_interval(setup);
    let first_by = interval.first_by_day.and_then(|day| Some(days.get(day)?.on));
    Spacing { days: interval.days, first_by, limit: interval.limit }
}

/// What is lacking.
pub(super) fn lacks(setup: &Setup) -> Lacks {
    let extra = least_extra(setup);
    Lacks { fresh_l: units(extra.fresh_ml), grey_l: units(extra.grey_ml), toilet_days: units(extra.toilet) }
}
