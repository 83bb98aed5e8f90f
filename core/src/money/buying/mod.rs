//! The order of buying: what to pay for on which day, so that cash stays above the floor and all is there soonest.
//!
//! Money that is in hand and not needed for the floor later is **free**; it only grows from day to day, because what a
//! later day needs is held back from the start. A purchase can be made when the free money pays for it and for all
//! before it. From this follows, for any set of purchases:
//! - it can be paid if what must be bought by a day is never more than what is free on it, for each needed-by date;
//! - its last purchase falls on the first day on which everything can be had and the free money reaches their sum,
//!   whatever the order.
//!
//! What remains is which purchases to leave out when money is short, and the order. Up to [`MOST_EXACT`] purchases are
//! searched exactly, more by a [rule of thumb](Proof::RuleOfThumb).
//!
//! ```
//! use kerbstead_core::money::buying::{Priority, Proof, Purchase, Wallet, order_of_buying};
//! // 300.00 in hand, a sale brings 400.00 on day 10, and 100.00 are kept.
//! let mut cash = vec![30_000; 21];
//! cash[10..].fill(70_000);
//! let bed = Purchase { amount: 45_000, earliest: 0, needed_by: 12, priority: Priority::Must };
//! let lamp = Purchase { amount: 12_000, earliest: 3, needed_by: 20, priority: Priority::Could };
//! let stove = Purchase { amount: 9_000, earliest: 0, needed_by: 20, priority: Priority::Should };
//! let order = order_of_buying(&Wallet { cash, floor: 10_000 }, &[bed, lamp, stove]).unwrap();
//! assert_eq!(order.proof, Proof::Proven);
//! assert_eq!(order.days, [Some(10), None, Some(0)]); // the lamp would take what the others need
//! assert_eq!(order.missing[0].amount, 6_000); // with 60.00 more by its date it could be had too
//! ```

mod exact;
mod planned;
mod purse;
mod thumb;

use crate::run::MOST_DAYS;

use super::chance::MOST_MINOR;
pub use planned::{BuyingLine, BuyingPlan, BuyingTask, Lack, buying_plan};
use purse::Purse;

/// So many purchases are searched exactly: `2^n n / 2` steps and `8 * 2^n` bytes, ten million and eight megabytes.
pub const MOST_EXACT: usize = 20;
/// The most purchases. The rule of thumb and what is missing take a few passes over the days for each.
pub const MOST_PURCHASES: usize = 500;

/// How much a purchase matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Priority {
    /// Without it there is no going.
    Must,
    /// It is missed where it lacks.
    Should,
    /// It would be nice.
    Could,
}

/// Something to be paid for at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Purchase {
    /// What it costs, in minor units, 1 to [`MOST_MINOR`].
    pub amount: i64,
    /// The first day on which it can be had, counted from 0.
    pub earliest: u32,
    /// The last day on which it may be bought, from `earliest` on; the last of the days if there is no hurry.
    pub needed_by: u32,
    /// How much it matters.
    pub priority: Priority,
}

/// The money.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wallet {
    /// Cash in the evening of each day without the purchases, in minor units: 1 to [`MOST_DAYS`] days.
    pub cash: Vec<i64>,
    /// What is never to be gone below.
    pub floor: i64,
}

/// What is bought when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    /// The day of each purchase, in the order they were given in; `None` for what cannot be paid.
    pub days: Vec<Option<u32>>,
    /// The day of the last one.
    pub finished_on: Option<u32>,
    /// What would pay for each that is left out, beside all that is bought.
    pub missing: Vec<Missing>,
    /// What would pay for all of them together; `None` when all are paid.
    pub missing_for_all: Option<Missing>,
    /// What lacks for the floor even if nothing is bought. Nothing is bought until that day is past.
    pub missing_for_floor: Option<Missing>,
    /// How sure it is that there is no better order.
    pub proof: Proof,
}

/// Money that would have to come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Missing {
    /// The purchase, by its place; `None` for more than one.
    pub purchase: Option<usize>,
    /// How much, in minor units, to stay until the end.
    pub amount: i64,
    /// By when at the latest: the first day on which some of it is missing.
    pub by: u32,
    /// The last day on which some of it is missing.
    pub until: u32,
}

/// How sure an order is. "Better" is: more musts paid, then more shoulds, then more coulds; then finished sooner; then the
/// musts sooner (the sum of their days), then the shoulds, then the coulds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Proof {
    /// Every choice was weighed: there is no better one.
    #[default]
    Proven,
    /// Everything is paid, and no order is finished sooner. Which comes first is a rule of thumb: what matters most is
    /// moved to the earliest day that the rest can bear, then what is needed soonest, then the cheapest.
    FinishProven,
    /// What is left out is a rule of thumb: purchases are taken by what matters most, then by the date they are needed by;
    /// when money is short on a date, the dearest of its kind up to that date is left out. That pays for as many as can
    /// be of the musts (Moore, "An n job, one machine sequencing algorithm for minimizing the number of late jobs",
    /// 1968, from memory), yet a choice of others may leave more for the rest.
    RuleOfThumb,
}

/// Why purchases are refused. The place is counted from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotOrdered {
    /// There must be 1 to [`MOST_DAYS`] days of cash.
    Days,
    /// There may be [`MOST_PURCHASES`] at most.
    TooMany,
    /// Cash on a day or the floor is too large; no amount may be beyond 100,000 times [`MOST_MINOR`].
    Cash,
    /// A purchase costs nothing, less than nothing, or more than [`MOST_MINOR`].
    Amount(usize),
    /// The days of a purchase are reversed or outside the days of cash.
    Day(usize),
}

/// Finds what to buy when.
///
/// # Errors
/// When something is out of bounds, with its place.
pub fn order_of_buying(wallet: &Wallet, purchases: &[Purchase]) -> Result<Order, NotOrdered> {
    check(wallet, purchases)?;
    let purse = Purse::new(wallet);
    let is_exact = purchases.len() <= MOST_EXACT;
    let days = if is_exact { exact::search(&purse, purchases) } else { thumb::order(&purse, purchases) };
    Ok(order(&purse, purchases, days, is_exact))
}

/// The same by the rule of thumb, however few the purchases are.
///
/// # Errors
/// As [`order_of_buying`].
pub fn order_by_rule(wallet: &Wallet, purchases: &[Purchase]) -> Result<Order, NotOrdered> {
    check(wallet, purchases)?;
    let purse = Purse::new(wallet);
    let days = thumb::order(&purse, purchases);
    Ok(order(&purse, purchases, days, false))
}

fn order(purse: &Purse, purchases: &[Purchase], days: Vec<Option<u32>>, is_exact: bool) -> Order {
    let are_all_paid = days.iter().all(Option::is_some);
    Order {
        finished_on: days.iter().flatten().copied().max(),
        missing: purse.missing(purchases, &days),
        missing_for_all: if are_all_paid { None } else { purse.missing_for_all(purchases) },
        missing_for_floor: purse.missing_for_floor(),
        proof: match (is_exact, are_all_paid) {
            (true, _) => Proof::Proven,
            (false, true) => Proof::FinishProven,
            (false, false) => Proof::RuleOfThumb,
        },
        days,
    }
}

fn check(wallet: &Wallet, purchases: &[Purchase]) -> Result<(), NotOrdered> {
    let is_cash = |amount: i64| amount.unsigned_abs() / 100_000 <= MOST_MINOR.unsigned_abs();
    if wallet.cash.is_empty() || wallet.cash.len() > MOST_DAYS as usize {
        return Err(NotOrdered::Days);
    }
    if purchases.len() > MOST_PURCHASES {
        return Err(NotOrdered::TooMany);
    }
    if !is_cash(wallet.floor) || !wallet.cash.iter().all(|cash| is_cash(*cash)) {
        return Err(NotOrdered::Cash);
    }
    for (at, purchase) in purchases.iter().enumerate() {
        if purchase.amount < 1 || purchase.amount > MOST_MINOR {
            return Err(NotOrdered::Amount(at));
        }
        if purchase.earliest > purchase.needed_by || purchase.needed_by as usize >= wallet.cash.len() {
            return Err(NotOrdered::Day(at));
        }
    }
    Ok(())
}
