//! Changes that may mend the money.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::purchase_price;
use super::sales::sold_on;
use super::selling::demand_of;
use crate::assessment::Outlined;
use crate::moves::constants::{MOST_OF_A_KIND, MOVED_DAYS, SOLD_PERCENT, USED_PERCENT};
use crate::moves::{Candidate, Change, Found, of_item};
use crate::order;
use crate::plan::civil::day_after;
use crate::plan::{
    Belonging, BelongingEnd, Edit, Estimate, Item, List, Money, Obtain, Path, Plain, add_days, days_between,
};

/// Adds the changes that may mend the money: things not bought, lent, bought used, fewer or later; more sold, or sooner for
/// less; and leaving on another day.
pub fn moves(found: &mut Found, balance: Outlined) {
    let short_on = balance.first_short.map(|moment| moment.on);
    let purchases = dearest(found);
    found.leave_out(purchases.iter().copied());
    for item in purchases.iter().take(MOST_OF_A_KIND) {
        if item.obtain == Obtain::Bought {
            found.add(Change::Borrow, item.id, Edit::set(of_item(item.id, "obtain"), Obtain::Borrowed.to_plain()));
            buy_used(found, item);
        }
        buy_later(found, item);
    }
    sell_more(found, short_on);
    leave_elsewhen(found);
}

/// What is still to be bought and no must, the dearest first.
fn dearest<'a>(found: &Found<'a>) -> Vec<&'a Item> {
    let plan = found.plan;
    let price = |item: &Item| {
        let parts = purchase_price(item, &plan.purse, plan.minor_digits());
        parts.and_then(|parts| parts.total.to_minor(plan.minor_digits())).unwrap_or(0)
    };
    let unpaid = found.wants().into_iter().filter(|(item, is_paid)| item.obtain.is_paid() && !is_paid);
    let priced: Vec<(&Item, i64)> =
        unpaid.map(|(item, _)| (item, price(item))).filter(|(_, price)| *price > 0).collect();
    order::by_key(&priced, |(_, price)| u64::MAX - price.unsigned_abs()).into_iter().map(|(item, _)| item).collect()
}

fn buy_used(found: &mut Found, item: &Item) {
    let Some(price) = item.unit_price else { return };
    let digits = found.plan.minor_digits();
    let used = |price: Money| price.percent(Decimal::from(USED_PERCENT)).rounded(digits);
    let price = match price {
        Estimate::Plain(price) => Estimate::Plain(used(price)),
        Estimate::Range { low, likely, high } => {
            Estimate::Range { low: used(low), likely: used(likely), high: used(high) }
        }
    };
    let edit = Edit::set(of_item(item.id, "unit_price"), price.to_plain());
    let amount = Some(price.likely());
    found.add_whole(Candidate { change: Change::BuyUsed, id: item.id, edit, amount, ..Candidate::default() });
}

/// On the first day from which the money stays above the floor even with it paid; without one, on the last day.
fn buy_later(found: &mut Found, item: &Item) {
    let (plan, cash) = (found.plan, &found.before.cash);
    let Some(price) = purchase_price(item, &plan.purse, plan.minor_digits()) else { return };
    let due_on = item.buy_on.or(item.needed_on).or(plan.calendar.leaves_on).unwrap_or(found.as_of);
    // Its price is in the cash already from the day on which it is due.
    let is_low = |(on, cash): &&(Date, Money)| {
        *cash - (if *on < due_on { price.total } else { Money::ZERO }) < plan.purse.floor && *on >= due_on
    };
    let Some((last_low, _)) = cash.iter().rev().find(is_low) else { return };
    let Some(last) = cash.last().map(|(on, _)| *on) else { return };
    let on = day_after(*last_low).min(last);
    if on <= due_on {
        return;
    }
    let mut edits = vec![Edit::set(of_item(item.id, "buy_on"), on.to_string())];
    if item.needed_on.is_some() {
        edits.push(Edit::set(of_item(item.id, "needed_on"), on.to_string()));
    }
    let days = f64::from(days_between(due_on, on));
    // Going without it is not as bad as losing the days.
    found.add_of_days(Change::BuyLater, item.id, Edit::All { edits }, days / 30.0, Some(on));
}

/// What was not to be sold is; and what is to be sold is asked less for, so that it is gone before the money is short.
fn sell_more(found: &mut Found, short_on: Option<Date>) {
    let plan = found.plan;
    for thing in plan.belongings.iter().filter(|thing| !thing.is_gone()) {
        if thing.is_for_sale() {
            ask_less(found, thing, short_on);
        } else if let Some(price) = thing.usual_price.or(thing.kept.and_then(|kept| kept.later_price)) {
            let path = Path::entry(List::Belongings.name(), thing.id);
            let edits = vec![
                Edit::set(path.child("end"), BelongingEnd::Sold.to_plain()),
                Edit::set(path.child("price"), price.to_plain()),
            ];
            let (edit, amount) = (Edit::All { edits }, Some(price));
            found.add_whole(Candidate { change: Change::Sell, id: thing.id, edit, amount, ..Candidate::default() });
        }
    }
}

/// For the price at which it is as good as sold by the evening before the first short day, if that is not below the lowest it
/// is given away for.
fn ask_less(found: &mut Found, thing: &Belonging, short_on: Option<Date>) {
    let plan = found.plan;
    let (Some(planned_on), Some(price)) = (sold_on(plan, thing), thing.price) else { return };
    let before_short = short_on.and_then(|on| add_days(on, -1)).unwrap_or(planned_on);
    let is_unlikely = thing.chance_percent.is_some_and(|percent| percent < Decimal::from(50));
    // Sooner than planned, or by its day where it is less likely than not.
    let on = before_short.min(planned_on);
    if on <= found.as_of || (on == planned_on && !is_unlikely) {
        return;
    }
    let digits = plan.minor_digits();
    let Some(asking) = price.likely().to_minor(digits) else { return };
    let days = f64::from(days_between(found.as_of, on));
    let demand = demand_of(plan, thing, asking);
    // At most a hundred.
    let asked = demand.price_for(days, SOLD_PERCENT as f64 / 100.0).min(asking);
    let asked = Money::from_minor(asked, digits);
    if asked <= thing.lowest.unwrap_or(Money::ZERO) {
        return;
    }
    let path = Path::entry(List::Belongings.name(), thing.id);
    let edits = vec![
        Edit::set(path.child("price"), asked.to_plain()),
        Edit::set(path.child("on"), on.to_string()),
        Edit::set(path.child("chance_percent"), Decimal::from(SOLD_PERCENT).to_plain()),
    ];
    let (edit, on, amount) = (Edit::All { edits }, Some(on), Some(asked));
    found.add_whole(Candidate { change: Change::AskLess, id: thing.id, edit, on, amount, ..Candidate::default() });
}

/// On other days than planned, but not before today.
pub fn leave_elsewhen(found: &mut Found) {
    let Some(leaves_on) = found.plan.calendar.leaves_on else { return };
    for moved in MOVED_DAYS {
        let Some(on) = add_days(leaves_on, moved).filter(|on| *on > found.as_of) else { continue };
        if leaves_on > found.as_of {
            let edit = Edit::set("calendar/leaves_on", on.to_string());
            found.add_of_days(Change::Leave, 0, edit, f64::from(moved.abs()), Some(on));
        }
    }
}
