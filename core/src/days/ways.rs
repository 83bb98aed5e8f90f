//! Not all is done on the day of leaving: leave all the same and finish on the road, or stay until it is done?

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde::Serialize;

use super::constants::ROAD_EXTRA_PERCENT;
use super::input::sound;
use super::report::{TaskLine, TaskState};
use crate::assessment::Moment;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Helper, Money, Plan, Quantity, add_days, days_between};

/// Both ways over the same days, beside each other.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TwoWays {
    /// To leave on the date and finish on the road.
    pub leave: Way,
    /// To stay until it is done; nothing when some task can never be done at home.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stay: Option<Way>,
}

/// One way.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Way {
    /// Days of it: of work on the road, or longer at home.
    pub days: u32,
    /// Hours of work in them.
    pub hours: f64,
    /// What it costs.
    pub cost: Money,
    /// The day on which all is done, where it is known.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub done_on: Option<Date>,
    /// How it came about.
    pub working: Working,
}

/// What a day costs at home and on the road.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DayCosts {
    /// At home.
    pub home: Money,
    /// On the road.
    pub road: Money,
}

/// Nothing when all is done in time.
pub fn two_ways(plan: &Plan, lines: &[TaskLine], finish: Option<Moment>, costs: DayCosts) -> Option<TwoWays> {
    let leaves_on = plan.calendar.leaves_on?;
    let is_late = |line: &TaskLine| matches!(line.state, TaskState::Late | TaskState::Blocked);
    let lines = lines.iter().zip(&plan.tasks).filter(|(line, task)| !task.can_wait && is_late(line));
    let late: Vec<f64> = lines.map(|(line, _)| line.hours_left).collect();
    if late.is_empty() {
        return None;
    }
    let hours_late = late.iter().sum();
    let leave = leaving(plan, hours_late, costs);
    let stay = finish.map(|finish| staying(plan, leaves_on, finish.on, hours_late, costs));
    Some(TwoWays { leave, stay })
}

fn leaving(plan: &Plan, hours_late: f64, costs: DayCosts) -> Way {
    let extra_percent = sound(plan.building.road_extra_percent.unwrap_or(ROAD_EXTRA_PERCENT)).min(1_000.0);
    let hours = hours_late * (1.0 + extra_percent / 100.0);
    let a_day = hours_a_day(plan);
    let days = whole_days(hours, a_day);
    let bench = plan.building.road_day.unwrap_or(Money::ZERO);
    let cost = (costs.road + bench).scaled(Decimal::from(days)).rounded(plan.minor_digits());
    Way {
        days,
        hours,
        cost,
        done_on: plan.calendar.leaves_on.and_then(|on| add_days(on, i32::try_from(days).unwrap_or(0))),
        working: Working {
            formula: "working-days-leave",
            figures: vec![
                ("late", Figure::of(hours_late, Quantity::Hours)),
                ("extra", Figure::of(extra_percent, Quantity::Percent)),
                ("hours", Figure::of(hours, Quantity::Hours)),
                ("a_day", Figure::of(a_day, Quantity::Hours)),
                ("days", Figure::of(f64::from(days), Quantity::Days)),
                ("road", Figure::Money(costs.road)),
                ("bench", Figure::Money(bench)),
                ("cost", Figure::Money(cost)),
            ],
            source: Source::CommonPractice,
        },
    }
}

fn staying(plan: &Plan, leaves_on: Date, finish: Date, hours: f64, costs: DayCosts) -> Way {
    // Who is done in the course of a day leaves on the next.
    let days = u32::try_from(days_between(leaves_on, finish).saturating_add(1)).unwrap_or(0);
    let a_day = plan.building.day_longer.unwrap_or(costs.home);
    let cost = a_day.scaled(Decimal::from(days)).rounded(plan.minor_digits());
    Way {
        days,
        hours,
        cost,
        done_on: Some(finish),
        working: Working {
            formula: "working-days-stay",
            figures: vec![
                ("finish", Figure::Date(finish)),
                ("days", Figure::of(f64::from(days), Quantity::Days)),
                ("a_day", Figure::Money(a_day)),
                ("cost", Figure::Money(cost)),
            ],
            source: Source::Arithmetic,
        },
    }
}

/// The hours that the first person works on an average day.
fn hours_a_day(plan: &Plan) -> f64 {
    let of = |helper: &Helper| {
        let hours = |value: Option<f64>| value.map_or(0.0, sound).min(24.0);
        (hours(helper.workday_hours) * 5.0 + hours(helper.saturday_hours) + hours(helper.sunday_hours)) / 7.0
    };
    plan.helpers.first().map_or(0.0, of)
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped just before
fn whole_days(hours: f64, a_day: f64) -> u32 {
    /// What rounding leaves above a whole day is nothing.
    const BREATH: f64 = 1e-9;
    if a_day > 0.0 && hours.is_finite() { (hours / a_day - BREATH).ceil().clamp(0.0, 10_000.0) as u32 } else { 0 }
}
