//! Every choice and every order of a few purchases, weighed.

use super::purse::Purse;
use super::{Priority, Purchase};

/// No order leads to this set.
const NEVER: u64 = u64::MAX;

/// The best order. A set of purchases is a number with a bit for each.
///
/// The day of the last purchase of a set does not depend on the order within it, so the best order of a set is the best
/// order of the set without its last purchase, for the best last one: Held and Karp's "dynamic programming approach to
/// sequencing problems", 1962 (from memory).
pub(super) fn search(purse: &Purse, purchases: &[Purchase]) -> Vec<Option<u32>> {
    let sets = 1_usize << purchases.len();
    let finish: Vec<u32> = (0..sets).map(|set| finished_on(purse, purchases, set)).collect();
    let mut waits = vec![NEVER; sets];
    waits[0] = 0;
    let mut best = (u32::MAX, u32::MAX, NEVER, 0);
    for set in 0..sets {
        if waits[set] == NEVER {
            continue;
        }
        best = best.min((left_out(purchases, set), finish[set], waits[set], set));
        for (at, purchase) in of(purchases, sets - 1 - set) {
            let with = set | 1 << at;
            if finish[with] <= purchase.needed_by {
                waits[with] = waits[with].min(waits[set] + wait(purchase, finish[with]));
            }
        }
    }
    days_of(purchases, &finish, &waits, best.3)
}

/// The first day on which all of a set is paid: all can be had, and the free money reaches their sum. Nothing is
/// finished on the first day.
fn finished_on(purse: &Purse, purchases: &[Purchase], set: usize) -> u32 {
    let (mut spent, mut day) = (0, 0);
    for (_, purchase) in of(purchases, set) {
        spent += purchase.amount;
        day = day.max(purchase.earliest);
    }
    if set == 0 { 0 } else { day.max(purse.first_day(spent)) }
}

/// How many purchases a set leaves out, those that matter most first: five bits a priority.
fn left_out(purchases: &[Purchase], set: usize) -> u32 {
    let out = of(purchases, (1 << purchases.len()) - 1 - set);
    out.map(|(_, purchase)| 1 << (5 * (Priority::Could as u32 - purchase.priority as u32))).sum()
}

/// The day of a purchase, in the sum of those of its priority: 16 bits each, for at most 16 days below 1,100.
fn wait(purchase: &Purchase, day: u32) -> u64 {
    u64::from(day) << (16 * (Priority::Could as u32 - purchase.priority as u32))
}

/// The purchases of a set with their places.
fn of(purchases: &[Purchase], mut set: usize) -> impl Iterator<Item = (usize, &Purchase)> {
    std::iter::from_fn(move || {
        let at = set.trailing_zeros() as usize;
        set &= set.wrapping_sub(1);
        purchases.get(at).map(|purchase| (at, purchase))
    })
}

/// Goes back from a set to the one it was reached from, purchase by purchase.
fn days_of(purchases: &[Purchase], finish: &[u32], waits: &[u64], mut set: usize) -> Vec<Option<u32>> {
    let mut days = vec![None; purchases.len()];
    while set != 0 {
        let day = finish[set];
        let last = of(purchases, set).find(|(at, purchase)| {
            let before = waits[set & !(1 << at)];
            before != NEVER && day <= purchase.needed_by && before + wait(purchase, day) == waits[set]
        });
        let Some((last, _)) = last else { break };
        days[last] = Some(day);
        set &= !(1 << last);
    }
    days
}
