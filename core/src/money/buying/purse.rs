//! The free money of each day, and what lacks.

use super::{Missing, Purchase, Wallet};

/// The money above the floor.
pub(super) struct Purse {
    /// Cash less the floor, by day.
    above: Vec<i64>,
    /// The least of it from each day on: what can be spent by then without falling below the floor later. It never
    /// shrinks from a day to the next.
    pub(super) free: Vec<i64>,
}

impl Purse {
    pub(super) fn new(wallet: &Wallet) -> Self {
        let above: Vec<i64> = wallet.cash.iter().map(|cash| cash - wallet.floor).collect();
        let mut free = above.clone();
        let mut least = i64::MAX;
        for day in free.iter_mut().rev() {
            least = least.min(*day);
            *day = least;
        }
        Self { above, free }
    }

    /// The first day on which so much is free, or the day after the last.
    pub(super) fn first_day(&self, spent: i64) -> u32 {
        // At most 1,100 days.
        u32::try_from(self.free.partition_point(|free| *free < spent)).unwrap_or(u32::MAX)
    }

    /// What each purchase that is left out lacks beside those that are made, if all wait as long as they may.
    pub(super) fn missing(&self, purchases: &[Purchase], days: &[Option<u32>]) -> Vec<Missing> {
        let mut left = self.above.clone();
        for (purchase, _) in purchases.iter().zip(days).filter(|(_, day)| day.is_some()) {
            spend(&mut left, purchase);
        }
        let mut missing = Vec::new();
        for (at, (purchase, _)) in purchases.iter().zip(days).enumerate().filter(|(_, (_, day))| day.is_none()) {
            let mut left = left.clone();
            spend(&mut left, purchase);
            missing.extend(lacking(&left, purchase.needed_by).map(|lack| Missing { purchase: Some(at), ..lack }));
        }
        missing
    }

    /// What all purchases together lack, if each waits as long as it may.
    pub(super) fn missing_for_all(&self, purchases: &[Purchase]) -> Option<Missing> {
        let mut left = self.above.clone();
        for purchase in purchases {
            spend(&mut left, purchase);
        }
        lacking(&left, purchases.iter().map(|purchase| purchase.needed_by).min()?)
    }

    pub(super) fn missing_for_floor(&self) -> Option<Missing> {
        lacking(&self.above, 0)
    }
}

fn spend(left: &mut [i64], purchase: &Purchase) {
    for left in left.iter_mut().skip(purchase.needed_by as usize) {
        *left -= purchase.amount;
    }
}

/// The deepest lack from a day on, and the first and the last day with one.
fn lacking(left: &[i64], from: u32) -> Option<Missing> {
    let (mut deepest, mut first, mut until) = (0, None, 0);
    for (day, left) in (0_u32..).zip(left).skip(from as usize).filter(|(_, left)| **left < 0) {
        deepest = deepest.min(*left);
        first = first.or(Some(day));
        until = day;
    }
    first.map(|by| Missing { purchase: None, amount: -deepest, by, until })
}
