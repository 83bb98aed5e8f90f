//! Every choice and every order of a few purchases, weighed.

use super::purse::Purse;
use super::{MOST_EXACT, Priority, Purchase};

/// No order leads to this set. Waits are below 2^48, and adding some to it keeps it above all of them.
const NEVER: u64 = 1 << 63;

/// The best order. A set of purchases is a number with a bit for each.
///
/// The day of the last purchase of a set does not depend on the order within it, so the best order of a set is the best
/// order of the set without its last purchase, for the best last one: Held and Karp's "dynamic programming approach to
/// sequencing problems", 1962 (from memory).
pub(super) fn search(purse: &Purse, purchases: &[Purchase]) -> Vec<Option<u32>> {
    let finish = Finish::new(purse, purchases);
    let sets = 1_usize << purchases.len();
    let of_priority = [Priority::Must, Priority::Should, Priority::Could].map(|priority| {
        let is_of = |(_, purchase): &(usize, &Purchase)| purchase.priority == priority;
        of(purchases, sets - 1).filter(is_of).map(|(at, _)| 1 << at).sum::<usize>()
    });
    // How many purchases a set leaves out, those that matter most first: five bits a priority.
    let left_out = |set: usize| of_priority.iter().fold(0, |out, all| out << 5 | (all & !set).count_ones());
    let mut waits = vec![NEVER; sets];
    waits[0] = 0;
    let mut best = (left_out(0), 0, 0, 0);
    for set in 1..sets {
        let day = finish.of(set);
        waits[set] = last_of(purchases, &waits, set, day).0.min(NEVER);
        if waits[set] < NEVER {
            best = best.min((left_out(set), day, waits[set], set));
        }
    }
    days_of(purchases, &finish, &waits, best.3)
}

/// The shortest wait for a set that is finished on that day, and the purchase that is then the last.
fn last_of(purchases: &[Purchase], waits: &[u64], set: usize, day: u32) -> (u64, usize) {
    let in_time = of(purchases, set).filter(|(_, purchase)| day <= purchase.needed_by);
    let waits = in_time.map(|(at, purchase)| (waits[set & !(1 << at)] + wait(purchase, day), at));
    waits.fold((NEVER, 0), Ord::min)
}

/// The day of a purchase, in the sum of those of its priority: 16 bits each, for at most 20 days below 1,100.
fn wait(purchase: &Purchase, day: u32) -> u64 {
    u64::from(day) << (16 * (Priority::Could as u32 - purchase.priority as u32))
}

/// Goes back from a set to the one it was reached from, purchase by purchase.
fn days_of(purchases: &[Purchase], finish: &Finish, waits: &[u64], mut set: usize) -> Vec<Option<u32>> {
    let mut days = vec![None; purchases.len()];
    while set != 0 {
        let day = finish.of(set);
        let (_, last) = last_of(purchases, waits, set, day);
        days[last] = Some(day);
        set &= !(1 << last);
    }
    days
}

/// The purchases of a set with their places.
fn of(purchases: &[Purchase], mut set: usize) -> impl Iterator<Item = (usize, &Purchase)> {
    std::iter::from_fn(move || {
        let at = set.trailing_zeros() as usize;
        set &= set.wrapping_sub(1);
        purchases.get(at).map(|purchase| (at, purchase))
    })
}

/// On which day a set is finished. Sums of half of the purchases are looked up, which takes less time than to add up
/// each of a million sets.
struct Finish<'a> {
    purse: &'a Purse,
    /// What the sets of the first half of the purchases cost, and the day from which all of each can be had.
    low: Vec<(i64, u32)>,
    /// The same of the second half.
    high: Vec<(i64, u32)>,
}

/// The purchases of the first half.
const HALF: usize = MOST_EXACT / 2;

impl<'a> Finish<'a> {
    fn new(purse: &'a Purse, purchases: &[Purchase]) -> Self {
        let (low, high) = purchases.split_at(purchases.len().min(HALF));
        Self { purse, low: sums(low), high: sums(high) }
    }

    /// The first day on which all of a set is paid: all can be had, and the free money reaches their sum.
    fn of(&self, set: usize) -> u32 {
        let (low, high) = (self.low[set % (1 << HALF)], self.high[set >> HALF]);
        low.1.max(high.1).max(self.purse.first_day(low.0 + high.0))
    }
}

fn sums(purchases: &[Purchase]) -> Vec<(i64, u32)> {
    let mut sums = vec![(0, 0)];
    for purchase in purchases {
        for set in 0..sums.len() {
            let (spent, day): (i64, u32) = sums[set];
            sums.push((spent + purchase.amount, day.max(purchase.earliest)));
        }
    }
    sums
}
