//! The rule of thumb for many purchases.

use super::purse::Purse;
use super::{Priority, Purchase};
use crate::order;

/// Days by the rule of [`super::Proof::RuleOfThumb`], then each moved forward by that of
/// [`super::Proof::FinishProven`].
pub(super) fn order(purse: &Purse, purchases: &[Purchase]) -> Vec<Option<u32>> {
    // Priority, date and amount in one number: 2, 11 and 40 bits.
    let key = |purchase: &Purchase| {
        (purchase.priority as u64) << 51 | u64::from(purchase.needed_by) << 40 | purchase.amount.unsigned_abs()
    };
    let turns = order::sorted(purchases.iter().map(key));
    let mut left = purse.free.clone();
    let mut days = vec![None; purchases.len()];
    let mut kept = Vec::new();
    let mut class = Priority::Must;
    for (at, purchase) in turns.iter().filter_map(|(_, at)| purchases.get(*at).map(|purchase| (*at, purchase))) {
        if purchase.priority != class {
            class = purchase.priority;
            kept.clear();
        }
        kept.push(at);
        days[at] = Some(purchase.needed_by);
        spend(&mut left, purchase, purchase.needed_by, u32::MAX);
        if left.iter().skip(purchase.needed_by as usize).any(|left| *left < 0) {
            leave_out_dearest(purchases, &mut kept, &mut days, &mut left);
        }
    }
    for (_, at) in turns {
        if let (Some(purchase), Some(Some(day))) = (purchases.get(at), days.get_mut(at)) {
            *day = moved_forward(purchase, *day, &mut left);
        }
    }
    days
}

/// Takes the dearest of a kind out again: what was kept before the newest one could be paid, and the dearest costs at
/// least as much as the newest and was due no later, so without it all can be paid again.
fn leave_out_dearest(purchases: &[Purchase], kept: &mut Vec<usize>, days: &mut [Option<u32>], left: &mut [i64]) {
    let amount = |at: usize| purchases.get(at).map_or(0, |purchase| purchase.amount);
    let Some(place) = (0..kept.len()).max_by_key(|place| amount(kept[*place])) else { return };
    let at = kept.remove(place);
    days[at] = None;
    if let Some(purchase) = purchases.get(at) {
        let back = Purchase { amount: -purchase.amount, ..*purchase };
        spend(left, &back, purchase.needed_by, u32::MAX);
    }
}

/// The earliest day that leaves enough for all others on their days.
fn moved_forward(purchase: &Purchase, from: u32, left: &mut [i64]) -> u32 {
    let mut day = from;
    while day > purchase.earliest && left.get(day as usize - 1).is_some_and(|left| *left >= purchase.amount) {
        day -= 1;
    }
    spend(left, purchase, day, from);
    day
}

/// Takes a purchase out of what is left from a day to before another.
fn spend(left: &mut [i64], purchase: &Purchase, from: u32, to: u32) {
    for left in left.iter_mut().take(to as usize).skip(from as usize) {
        *left -= purchase.amount;
    }
}
