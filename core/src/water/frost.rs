//! Frost: what may freeze, and burst.

use serde::Serialize;

use super::constants::{CAN_FREEZES_H, FILTER_FREEZES_H};
use super::findings::Finding;
use super::step::WaterDay;
use crate::plan::{Id, Level, Plan};

/// How long it freezes, by day of the road from the first on; empty when that is not known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Frost {
    /// Hours below 0 °C in the van.
    pub inside_h: Vec<f64>,
    /// Hours below 0 °C outside.
    pub outside_h: Vec<f64>,
    /// How cold it gets in the van, in °C, where it is known.
    pub coldest_inside_c: Option<f64>,
    /// How cold it gets outside, in °C, where it is known.
    pub coldest_outside_c: Option<f64>,
}

/// Days of frost.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FrostDays {
    /// The first of them.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: jiff::civil::Date,
    /// How many.
    pub days: usize,
    /// Hours below 0 °C on the worst.
    pub hours: f64,
    /// How cold it gets, in °C.
    pub coldest_c: f64,
}

/// What may freeze on the days from one on: cans and filters in the van together with it, what is placed outside with the air.
pub(super) fn findings(plan: &Plan, frost: &Frost, days: &[WaterDay], from: usize, findings: &mut Vec<Finding>) {
    if frost.inside_h.is_empty() && frost.outside_h.is_empty() {
        return;
    }
    let found = |is_outside: bool, least_h: f64| {
        let (hours, coldest_c) = if is_outside {
            (&frost.outside_h, frost.coldest_outside_c)
        } else {
            (&frost.inside_h, frost.coldest_inside_c)
        };
        frosty(hours, coldest_c.unwrap_or(0.0), days, from, least_h)
    };
    let is_outside = |id: Id| plan.placements.iter().any(|it| it.thing == Some(id) && it.level == Level::Outside);
    let mut tanks = plan.kept().filter(|item| item.tank.is_some());
    if tanks.any(|item| !is_outside(item.id)) {
        findings.extend(found(false, CAN_FREEZES_H).map(|frost| Finding::CansFreeze { frost }));
    }
    for item in plan.kept().filter(|item| item.tank.is_some() && is_outside(item.id)) {
        findings.extend(found(true, CAN_FREEZES_H).map(|frost| Finding::TankFreezes { item: item.id, frost }));
    }
    for item in plan.kept().filter(|item| item.filters_l.is_some()) {
        let frost = found(is_outside(item.id), FILTER_FREEZES_H);
        findings.extend(frost.map(|frost| Finding::FilterFreezes { item: item.id, frost }));
    }
}

fn frosty(hours: &[f64], coldest_c: f64, days: &[WaterDay], from: usize, least_h: f64) -> Option<FrostDays> {
    let ahead = days.get(from..)?.iter().zip(hours.get(from..)?);
    let mut cold = ahead.filter(|(_, hours)| **hours >= least_h);
    let (first, first_h) = cold.next()?;
    let (days, hours) = cold.fold((1, *first_h), |(days, most), (_, hours)| (days + 1, most.max(*hours)));
    Some(FrostDays { on: first.on, days, hours: hours.min(24.0), coldest_c })
}
