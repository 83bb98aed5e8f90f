//! Taking a thing into the plan.

use jiff::civil::Date;
use serde_json::Value;

use super::constants::COUNTED_AFTER_HOUR;
use super::offer::{ITEM_FIELDS, Offer};
use crate::plan::civil::day_after;
use crate::plan::{Edit, Estimate, Item, List, Money, Outcome, Path, Plain, Plan, decimal, value_in};
use crate::run::Timeline;

/// How a thing is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taking {
    /// It is paid for now.
    Paid,
    /// It is to be bought, for this price.
    Planned,
}

/// The change that takes a thing into the plan as seen on `as_of`: a new entry at the end of the kit, or the entry it
/// is for. What was paid is the amount at the till; a price still to be paid is turned into one as the purse has them,
/// with or without tax.
pub fn take(plan: &Plan, as_of: Date, offer: &Offer, taking: Taking) -> Edit {
    let item = item(plan, as_of, offer, taking);
    let Some(planned) = offer.is_for.and_then(|id| plan.item(id)) else {
        let entry = Item { id: plan.next_id(), ..item }.to_plain();
        return Edit::Insert { list: List::Kit, at: plan.kit.len(), entry };
    };
    let (before, after) = (planned.to_plain(), item.to_plain());
    let of_item = ITEM_FIELDS.into_iter().chain(["obtain", "needed_on", "paid"]);
    let changed = of_item.filter_map(|name| {
        let value = value_in(&after, name).cloned().unwrap_or_default();
        let path = Path::entry("kit", planned.id).child(name);
        (*value_in(&before, name).unwrap_or(&Value::Null) != value).then_some(Edit::Set { path, value })
    });
    Edit::All { edits: changed.collect() }
}

fn item(plan: &Plan, as_of: Date, offer: &Offer, taking: Taking) -> Item {
    let mut item = Item { unit_price: Some(Estimate::Plain(price_for_purse(plan, offer))), ..offer.item.clone() };
    if taking == Taking::Paid {
        let total = offer.price(plan.minor_digits()).total;
        item.paid = Some(Outcome { happened: true, on: Some(pay_day(plan, as_of)), amount: Some(total) });
    }
    item
}

/// The price of one as the purse has prices. Where the shelf marks them the other way, it is the price at the till, or
/// what of it is not tax, over how many are bought.
fn price_for_purse(plan: &Plan, offer: &Offer) -> Money {
    if offer.includes_tax == plan.purse.prices_include_tax {
        return offer.marked();
    }
    let parts = offer.price(plan.minor_digits());
    let line = if plan.purse.prices_include_tax { parts.total } else { parts.net };
    let one = decimal::over(line.decimal(), offer.item.quantity.into());
    one.map_or(line, Money::new).rounded(plan.minor_digits() + MORE_DIGITS)
}

/// Digits more than a coin that a price of one keeps, so that a thousand of it still come to the amount at the till.
const MORE_DIGITS: u32 = 4;

/// The day a payment made now counts on: today, or tomorrow if today's cash was counted in the afternoon and does not
/// yet know of it; never before the plan begins.
pub fn pay_day(plan: &Plan, as_of: Date) -> Date {
    let is_counted = plan
        .readings
        .iter()
        .any(|reading| reading.on == Some(as_of) && reading.hour >= COUNTED_AFTER_HOUR && reading.cash.is_some());
    let day = if is_counted { day_after(as_of) } else { as_of };
    day.max(Timeline::new(plan, as_of).starts_on())
}
