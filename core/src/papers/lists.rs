//! What a plan says is still to be bought, and what to borrow from whom.

use jiff::civil::Date;

use crate::money::{purchase_price, still_to_buy};
use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{Group, Item, Money, Obtain, Plan};

/// A line of the shopping list.
#[derive(Clone, Debug, PartialEq)]
pub struct ToBuy {
    /// What it is.
    pub name: String,
    /// The heading it is listed under.
    pub group: Group,
    /// How many.
    pub quantity: u32,
    /// When it must be there; without it, by the day of leaving.
    pub needed_on: Option<Date>,
    /// What it costs in all with tax, if it has a price.
    pub price: Option<Money>,
}

/// Everything that is to be bought, or made from materials, and not paid yet: by the day it is needed, what has no day
/// last.
///
/// ```
/// use kerbstead_core::{papers::to_buy, plan::demo_plan};
/// assert!(to_buy(&demo_plan()).iter().all(|line| !line.name.is_empty()));
/// ```
pub fn to_buy(plan: &Plan) -> Vec<ToBuy> {
    let lines: Vec<ToBuy> = still_to_buy(plan).into_iter().map(|item| line(plan, item)).collect();
    order::by_key(&lines, |line| line.needed_on.map_or(u64::MAX, day_key))
}

fn line(plan: &Plan, item: &Item) -> ToBuy {
    let price = purchase_price(item, &plan.purse, plan.minor_digits());
    ToBuy {
        name: item.name.clone(),
        group: item.group,
        quantity: item.quantity,
        needed_on: item.needed_on,
        price: price.map(|price| price.total),
    }
}

/// What one person is to lend.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loan {
    /// Who; empty where that is not settled yet.
    pub lender: String,
    /// What and how many.
    pub things: Vec<(String, u32)>,
}

/// Everything to borrow, by who lends it, in the order of the kit.
pub fn to_borrow(plan: &Plan) -> Vec<Loan> {
    let mut loans: Vec<Loan> = Vec::new();
    for item in plan.carried().filter(|item| item.obtain == Obtain::Borrowed) {
        let thing = (item.name.clone(), item.quantity);
        match loans.iter_mut().find(|loan| loan.lender == item.lender) {
            Some(loan) => loan.things.push(thing),
            None => loans.push(Loan { lender: item.lender.clone(), things: vec![thing] }),
        }
    }
    loans
}
