//! Plans that hold, but only just.

use jiff::civil::Date;
use kerbstead_core::plan::{Money, Plan, TankKind};
use kerbstead_core::{Assessment, assess, power, water};

/// Raises the floor and shrinks stores and cans until little is to spare of what there was plenty of.
pub fn bring_to(plan: &mut Plan, as_of: Date) {
    let Assessment { money, power, water, .. } = assess(plan, as_of);
    if let Some(lowest) = money.lowest.filter(|lowest| lowest.closing > Money::ZERO) {
        plan.purse.floor = lowest.closing;
    }
    power.stores.iter().for_each(|store| shrink_store(plan, store));
    shrink_cans(plan, &water);
}

/// Leaves six hours of reserve.
fn shrink_store(plan: &mut Plan, report: &power::StoreReport) {
    let too_much_wh = report.lowest_wh - 6.0 * report.average_w;
    let item = plan.kit.iter_mut().find(|item| item.id == report.item);
    if let Some(store) = item.and_then(|item| item.store.as_mut())
        && report.first_short.is_none()
        && report.average_w > 0.0
    {
        store.usable_wh -= too_much_wh.clamp(0.0, store.usable_wh.max(0.0));
    }
}

/// Leaves water for half a day.
fn shrink_cans(plan: &mut Plan, report: &water::Report) {
    let mut too_much_l = report.lowest.map_or(0.0, |lowest| lowest.fresh_l - 0.5 * report.use_l_per_day);
    for item in &mut plan.kit {
        let litres = f64::from(item.quantity.max(1));
        if let Some(tank) = item.tank.as_mut().filter(|tank| tank.holds == TankKind::Fresh) {
            let taken_l = too_much_l.clamp(0.0, (tank.capacity_l * litres).max(0.0));
            tank.capacity_l -= taken_l / litres;
            tank.opening_percent = Some(100.0);
            too_much_l -= taken_l;
        }
    }
}
