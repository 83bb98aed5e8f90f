//! Changes that may mend the water.

use crate::assessment::Outlined;
use crate::moves::constants::{LESS_WATER_PERCENT, STOP_DAYS};
use crate::moves::{Change, Found};
use crate::plan::{Edit, Estimate, Item, List, Need, Obtain, Path, Plain, TankKind, WaterStop, add_days};
use crate::run::Timeline;

/// Adds the changes that may mend the water: stops that are not in use, one more can, tank or toilet of each kind there is, less
/// water for a use, and what uses water left out.
pub fn moves(found: &mut Found, balance: Outlined) {
    stops(found, balance);
    for kind in [TankKind::Fresh, TankKind::Grey] {
        one_more(found, |item| item.tank.is_some_and(|tank| tank.holds == kind));
    }
    one_more(found, |item| item.toilet.is_some());
    for water_use in &found.plan.water_uses {
        let litres = water_use.litres_per_day;
        let little =
            if litres.low() < litres.likely() { litres.low() } else { litres.likely() * LESS_WATER_PERCENT / 100.0 };
        let path = Path::entry(List::WaterUses.name(), water_use.id).child("litres_per_day");
        found.add(Change::LessWater, water_use.id, Edit::set(path, Estimate::Plain(little).to_plain()));
    }
    let thirsty: Vec<&Item> = found.wants().into_iter().map(|(item, _)| item).filter(|it| it.water.is_some()).collect();
    found.leave_out(thirsty);
}

/// Each stop on each of the last days before it is first short, or on that day; and each of them for good.
fn stops(found: &mut Found, balance: Outlined) {
    let plan = found.plan;
    let timeline = Timeline::new(plan, found.as_of);
    let short_on = balance.first_short.map(|moment| moment.on);
    for stop in plan.water_stops.iter().filter(|stop| !stop.in_use) {
        let Some(from) = plan.begins_on(stop.stay) else { continue };
        for day in short_on.into_iter().flat_map(|on| (0..=STOP_DAYS).filter_map(move |days| add_days(on, -days))) {
            let there = timeline.road().find(|road| road.date == day && day >= found.as_of);
            if there.is_some_and(|road| stop.is_there(day, road.source, from)) {
                let entry = WaterStop { id: plan.next_id(), on: Some(day), in_use: true, ..stop.clone() }.to_plain();
                let edit = Edit::Insert { list: List::WaterStops, at: plan.water_stops.len(), entry };
                found.add_of_days(Change::WaterStop, stop.id, edit, 0.0, Some(day));
            }
        }
        let path = Path::entry(List::WaterStops.name(), stop.id).child("in_use");
        found.add_of_days(Change::WaterStop, stop.id, Edit::set(path, true), 0.0, None);
    }
}

/// One more of those that have a price, or of the first; to be bought, not paid or sold yet.
fn one_more(found: &mut Found, is_one: impl Fn(&Item) -> bool) {
    let plan = found.plan;
    let mut cans = plan.carried().filter(|item| is_one(item));
    let first = cans.next();
    let Some(can) = cans.chain(first).find(|can| can.unit_price.is_some()).or(first) else { return };
    let entry = Item {
        id: plan.next_id(),
        need: Need::Want,
        obtain: Obtain::Bought,
        quantity: 1,
        paid: None,
        sale: None,
        returned: None,
        ..can.clone()
    };
    let edit = Edit::Insert { list: List::Kit, at: plan.kit.len(), entry: entry.to_plain() };
    found.add(Change::MoreCans, can.id, edit);
}
