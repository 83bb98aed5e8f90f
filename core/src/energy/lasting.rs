//! When the stores first fall short, within the hour.

use super::prepare::{Prepared, Side};
use super::step::{Factors, StoreStep, need_wh, rates, step};
use super::{least, most};

/// Hours until something is first not served for want of energy, or a charge is below its floor at the end of an hour, in the
/// run without chances; none if neither happens. Within the hour it is the moment in which the first store meets its bottom or
/// its floor: with one store exactly, with several no later than what they lend each other allows.
pub(super) fn lasts_to(prepared: &Prepared) -> Option<f64> {
    let happens: Vec<f64> = prepared.draws.iter().map(|draw| draw.chance).collect();
    let mut charge_wh = prepared.opening_wh();
    let mut before_wh = charge_wh.clone();
    let mut steps = vec![StoreStep::default(); charge_wh.len()];
    let mut is_short = vec![false; charge_wh.len()];
    if prepared.sides.is_empty() && !prepared.draws.is_empty() && !prepared.offers.is_empty() {
        return Some(0.0);
    }
    for (hour, offer) in prepared.offers.iter().copied().enumerate() {
        let cloud = prepared.cloud_by_day.get(hour / 24).copied().unwrap_or(1.0);
        let factors = Factors { cloud, drive: 1.0, scale: 1.0, happens: &happens };
        before_wh.clone_from(&charge_wh);
        let mut short = |at: usize, _: usize, _: f64| {
            if let Some(is_short) = is_short.get_mut(at) {
                *is_short = true;
            }
        };
        step(prepared, hour, offer, factors, &mut charge_wh, &mut steps, &mut short);
        let first_h = prepared.sides.iter().enumerate().filter_map(|(at, side)| {
            let is_low = *charge_wh.get(at)? < side.floor_wh;
            let level_wh = if is_low { side.floor_wh } else { 0.0 };
            let meets_h = || Some(meets_h(side, hour, factors, *before_wh.get(at)?, steps.get(at)?, level_wh));
            if is_low || *is_short.get(at)? { meets_h() } else { None }
        });
        let first_h = first_h.fold(f64::INFINITY, least);
        if first_h <= 1.0 {
            return Some(hour as f64 + first_h);
        }
    }
    None
}

/// The part of an hour after which a charge meets a level that it is below at the end, 0 to 1.
fn meets_h(side: &Side, hour: usize, factors: Factors, before_wh: f64, step: &StoreStep, level_wh: f64) -> f64 {
    let kept_wh = before_wh * side.kept_per_hour;
    if kept_wh <= level_wh {
        return 0.0;
    }
    let out_w = side.hours.get(hour).map_or(0.0, |entry| need_wh(side, entry, hour, factors));
    let rates = rates(side, step.taken, out_w);
    most(least(side.cell.hours_until(kept_wh, rates, level_wh), 1.0), 0.0)
}
