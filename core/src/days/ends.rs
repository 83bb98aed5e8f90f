//! Where everything at home ends, so that the flat is empty on the day it is left.

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde::Serialize;

use super::findings::Finding;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Belonging, BelongingEnd, Id, Money, Plan, Quantity, days_between, decimal};

/// Where everything at home ends.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Endings {
    /// Every belonging, in the order of the plan.
    pub things: Vec<Ending>,
    /// How many have no end yet.
    pub open: usize,
    /// How many have left the flat.
    pub gone: usize,
    /// Days until the flat is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_left: Option<i32>,
    /// To store or to sell, of each thing that can be stored.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stored: Vec<StoreOrSell>,
}

/// Where a thing at home ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Ending {
    /// The belonging.
    pub id: Id,
    /// Where.
    pub end: BelongingEnd,
    /// Whether it has left the flat, or was sold.
    pub is_gone: bool,
}

/// What storing a thing costs against selling it and buying it again.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StoreOrSell {
    /// The belonging.
    pub id: Id,
    /// The rent of the storage over the months.
    pub rent: Money,
    /// What buying it again costs, less what its sale brings now.
    pub again: Money,
    /// Whether storing costs less.
    pub is_storing_cheaper: bool,
    /// After how many months storing has cost as much as buying it again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub even_after_months: Option<f64>,
    /// How it came about.
    pub working: Working,
}

impl Endings {
    /// What is to be said when some have no end.
    pub(super) fn finding(&self) -> Option<Finding> {
        let days = self.days_left.filter(|_| self.open > 0)?;
        Some(Finding::NoEnd { count: self.open, days })
    }
}

/// Where everything at home ends. `months` of storage are counted as the route has them, begun ones as whole; a year
/// where there is no route.
pub fn endings(plan: &Plan, as_of: Date, months: u32) -> Endings {
    let thing =
        |belonging: &Belonging| Ending { id: belonging.id, end: belonging.ends_as(), is_gone: belonging.is_gone() };
    let things: Vec<Ending> = plan.belongings.iter().map(thing).collect();
    Endings {
        open: things.iter().filter(|thing| thing.end == BelongingEnd::Open && !thing.is_gone).count(),
        gone: things.iter().filter(|thing| thing.is_gone).count(),
        days_left: plan.calendar.leaves_on.map(|leaves_on| days_between(as_of, leaves_on).max(0)),
        stored: plan.belongings.iter().filter_map(|belonging| store_or_sell(plan, belonging, months)).collect(),
        things,
    }
}

/// Nothing without a monthly price and a price to buy it again.
fn store_or_sell(plan: &Plan, belonging: &Belonging, months: u32) -> Option<StoreOrSell> {
    let kept = belonging.kept?;
    let (monthly, replaces) = (kept.storage_monthly?, kept.replaces?);
    let digits = plan.minor_digits();
    let sale = belonging.price.map_or(Money::ZERO, |price| price.likely());
    let cost = belonging.selling_cost.unwrap_or(Money::ZERO);
    let bringing = belonging.end_fee.unwrap_or(Money::ZERO);
    let rent = (monthly.scaled(Decimal::from(months)) + bringing).rounded(digits);
    let again = (replaces - (sale - cost).max(Money::ZERO)).rounded(digits);
    let left = (again - bringing).max(Money::ZERO);
    let even = decimal::over(left.decimal(), monthly.decimal()).map(decimal::to_float);
    Some(StoreOrSell {
        id: belonging.id,
        rent,
        again,
        is_storing_cheaper: rent < again,
        even_after_months: even,
        working: Working {
            formula: "working-days-storing",
            figures: vec![
                ("monthly", Figure::Money(monthly)),
                ("months", Figure::of(f64::from(months), Quantity::Months)),
                ("bringing", Figure::Money(bringing)),
                ("rent", Figure::Money(rent)),
                ("replaces", Figure::Money(replaces)),
                ("sale", Figure::Money((sale - cost).max(Money::ZERO))),
                ("again", Figure::Money(again)),
            ],
            source: Source::Arithmetic,
        },
    })
}
