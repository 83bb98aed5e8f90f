//! Changes that may mend the water.

use crate::moves::constants::LESS_WATER_PERCENT;
use crate::moves::{Change, Found};
use crate::plan::{Edit, Estimate, Item, List, Need, Obtain, Path, Plain, TankKind};

/// Adds the changes that may mend the water: one more can or tank of each kind there is, less water for a use, and what uses
/// water left out.
pub fn moves(found: &mut Found) {
    for kind in [TankKind::Fresh, TankKind::Grey] {
        one_more(found, kind);
    }
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

/// One more of those that have a price, or of the first; to be bought, not paid or sold yet.
fn one_more(found: &mut Found, kind: TankKind) {
    let plan = found.plan;
    let mut cans = plan.carried().filter(|item| item.tank.is_some_and(|tank| tank.holds == kind));
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
