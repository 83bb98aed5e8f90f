//! Changes that may mend the power.

use crate::assessment::Outlined;
use crate::moves::constants::{LESS_HOURS_PERCENT, MOST_OF_A_KIND, STOP_DAYS};
use crate::moves::{Change, Found, of_item};
use crate::plan::{Charging, Draw, Edit, Estimate, Id, Item, List, Path, Plain, Works, add_days};
use crate::run::Timeline;

/// Adds the changes that may mend the power: stops at places that are not in use, longer ones at those that are, what draws
/// used less, left out, or hung on another store.
pub fn moves(found: &mut Found, balance: Outlined) {
    stops(found, balance);
    for place in found.plan.charging.iter().filter(|place| place.in_use) {
        for more in [1.0, 2.0] {
            let path = Path::entry(List::Charging.name(), place.id).child("charging_hours");
            let hours = place.hours() + more;
            if hours <= 24.0 {
                found.add_of_days(Change::ChargeLonger, place.id, Edit::set(path, hours), more / 24.0, None);
            }
        }
    }
    let hungriest = hungriest(found);
    for (item, draw) in &hungriest {
        use_less(found, item.id, draw);
        hang_elsewhere(found, item.id, draw);
    }
    found.leave_out(hungriest.iter().map(|(item, _)| *item));
}

/// What draws and is no must, what takes most a day first.
fn hungriest<'a>(found: &Found<'a>) -> Vec<(&'a Item, Draw)> {
    let wants = found.wants();
    let mut draws: Vec<(&Item, Draw)> = wants.into_iter().filter_map(|(item, _)| Some((item, item.draw?))).collect();
    draws.sort_by(|a, b| b.1.wh_per_day(b.0.kept()).total_cmp(&a.1.wh_per_day(a.0.kept())));
    draws.truncate(MOST_OF_A_KIND);
    draws
}

/// Each place on each of the last days before it is first short, or on that day; and each of them for good.
fn stops(found: &mut Found, balance: Outlined) {
    let plan = found.plan;
    let timeline = Timeline::new(plan, found.as_of);
    let short_on = balance.first_short.map(|moment| moment.on);
    for place in plan.charging.iter().filter(|place| !place.in_use) {
        let stop_hours = place.hours() / 24.0;
        for day in short_on.into_iter().flat_map(|on| (0..=STOP_DAYS).filter_map(move |days| add_days(on, -days))) {
            let there = timeline.road().find(|road| road.date == day && day >= found.as_of);
            if there.is_some_and(|road| place.is_there(day, road.source)) {
                let entry = Charging { id: plan.next_id(), on: Some(day), in_use: true, ..place.clone() }.to_plain();
                let edit = Edit::Insert { list: List::Charging, at: plan.charging.len(), entry };
                found.add_of_days(Change::Stop, place.id, edit, stop_hours, Some(day));
            }
        }
        let path = Path::entry(List::Charging.name(), place.id).child("in_use");
        found.add_of_days(Change::Stop, place.id, Edit::set(path, true), stop_hours, None);
    }
}

/// What runs by the clock runs shorter, what heats does it less often; what cools cannot.
fn use_less(found: &mut Found, id: Id, draw: &Draw) {
    match draw.works.unwrap_or_default() {
        Works::ByClock => {
            let hours = draw.hours_per_day.unwrap_or(Estimate::Plain(24.0));
            let less = |hours: f64| hours * LESS_HOURS_PERCENT / 100.0;
            let hours = match hours {
                Estimate::Plain(hours) => Estimate::Plain(less(hours)),
                Estimate::Range { low, likely, high } => {
                    Estimate::Range { low: less(low), likely: less(likely), high: less(high) }
                }
            };
            found.add(Change::UseLess, id, Edit::set(of_item(id, "draw/hours_per_day"), hours.to_plain()));
        }
        Works::Heating => match draw.times_per_day.unwrap_or(1) {
            0 | 1 => {
                let percent = draw.used_percent.unwrap_or(100.0) * LESS_HOURS_PERCENT / 100.0;
                found.add(Change::UseLess, id, Edit::set(of_item(id, "draw/used_percent"), percent));
            }
            times => found.add(Change::UseLess, id, Edit::set(of_item(id, "draw/times_per_day"), times - 1)),
        },
        Works::Cooling | Works::Warming => {}
    }
}

fn hang_elsewhere(found: &mut Found, id: Id, draw: &Draw) {
    let stores: Vec<Id> = found.plan.carried().filter(|item| item.store.is_some()).map(|item| item.id).collect();
    let own = draw.store.or(stores.first().copied());
    for other in stores.iter().filter(|other| Some(**other) != own).take(3) {
        found.add(Change::HangElsewhere, id, Edit::set(of_item(id, "draw/store"), *other));
    }
}
