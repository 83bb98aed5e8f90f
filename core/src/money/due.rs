//! The days on which something comes again.

use jiff::civil::Date;

use crate::plan::civil::on_day;
use crate::plan::{Cost, CostEvery, CostPhase, Repeat, add_days, add_months, days_between};
use crate::run::Timeline;

/// The days of the timeline on which a cost is due. From its first day on, or from the beginning of its part of the
/// plan; up to its last day, or the end of its part. Of a cost without a first day that comes less often than each
/// month, the first day of the month in its part counts.
pub(super) fn due_days(cost: &Cost, leaves_on: Option<Date>, timeline: &Timeline) -> Vec<Date> {
    let begins_on = match cost.phase {
        CostPhase::Home | CostPhase::Always => Some(timeline.starts_on()),
        CostPhase::Road => leaves_on,
    };
    let is_over = |on: Date| match (cost.last_on, cost.phase, leaves_on) {
        (Some(last_on), ..) => on > last_on,
        (None, CostPhase::Home, Some(leaves_on)) => on >= leaves_on,
        _ => false,
    };
    let Some(first) = cost.first_on.or(begins_on) else { return Vec::new() };
    let (from, to) = (first.max(timeline.starts_on()), timeline.ends_on());
    let mut days = match cost.every {
        CostEvery::HundredKm => Vec::new(),
        CostEvery::Once => vec![cost.first_on.or(leaves_on).unwrap_or(to)],
        CostEvery::Week => occurrences(first, Repeat::Weekly, from, to).collect(),
        CostEvery::Month => month_days(cost, first, 1, from, to),
        CostEvery::Quarter => month_days(cost, first, 3, from, to),
        CostEvery::HalfYear => month_days(cost, first, 6, from, to),
        CostEvery::Year => month_days(cost, first, 12, from, to),
    };
    days.retain(|on| !is_over(*on) || cost.every == CostEvery::Once);
    days
}

/// The cost's day of every so many months, counted from its first day: in shorter months the last day. Months are
/// stepped from the first, so that the 31st comes back.
fn month_days(cost: &Cost, first: Date, months: i32, from: Date, to: Date) -> Vec<Date> {
    let own = cost.day_of_month.unwrap_or(1).clamp(1, 31);
    let day = cost.first_on.map_or(own, |on| u32::from(on.day().unsigned_abs()));
    let is_too_early = on_day(first, day).is_some_and(|on| on < first);
    let first = if is_too_early { add_months(first, 1).unwrap_or(first) } else { first };
    // No later than `from`: no month has more than 31 days.
    let before = days_between(first, from).max(0) / (31 * months) * months;
    let mut days = Vec::new();
    for step in 0.. {
        let Some(on) = add_months(first, before + step * months).and_then(|month| on_day(month, day)) else { break };
        if on > to {
            break;
        }
        if on >= from {
            days.push(on);
        }
    }
    days
}

/// The days from `first` on, by its rhythm, that lie between `from` and `to`. Months and years are counted from the
/// first date, never from one that a short month moved, so that the 31st comes back after February.
pub(super) fn occurrences(first: Date, repeat: Repeat, from: Date, to: Date) -> impl Iterator<Item = Date> {
    let start = steps_before(first, repeat, from);
    (start..)
        .map_while(move |step| nth(first, repeat, step))
        .take_while(move |on| *on <= to)
        .filter(move |on| *on >= from)
}

/// A number of steps that surely leads to no later day than `from`.
fn steps_before(first: Date, repeat: Repeat, from: Date) -> i32 {
    let days = days_between(first, from).max(0);
    let longest_step = match repeat {
        Repeat::Once => return 0,
        Repeat::Weekly => 7,
        Repeat::Fortnightly => 14,
        Repeat::Monthly => 31,
        Repeat::Yearly => 366,
    };
    days / longest_step
}

fn nth(first: Date, repeat: Repeat, step: i32) -> Option<Date> {
    match repeat {
        Repeat::Once => (step == 0).then_some(first),
        Repeat::Weekly => add_days(first, step.checked_mul(7)?),
        Repeat::Fortnightly => add_days(first, step.checked_mul(14)?),
        Repeat::Monthly => add_months(first, step),
        Repeat::Yearly => add_months(first, step.checked_mul(12)?),
    }
}
