//! What the sales are good for, if they do not go as is likely.

use jiff::civil::Date;
use serde::Serialize;

use super::step::CashDay;
use crate::plan::{Belonging, Money, Plan};

/// The sales of belongings that are still open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct SalesOutlook {
    /// What they bring if all go as is likely, selling costs taken off.
    pub likely: Money,
    /// What they bring on average, each by its chance: exact, but nobody ever gets an average.
    pub expected: Money,
    /// What they bring if each is given away for its lowest price.
    pub least: Money,
    /// The lowest day if each that is counted on is given away for its lowest price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lowest: Option<LowestDay>,
}

/// A day, and the cash in its evening.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct LowestDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Cash in the evening.
    pub closing: Money,
}

/// The outlook; nothing while no belonging has a chance or a lowest price.
pub(super) fn outlook(plan: &Plan, as_of: Date, ahead: &[CashDay]) -> Option<SalesOutlook> {
    let is_told = |belonging: &Belonging| belonging.chance_percent.is_some() || belonging.lowest.is_some();
    if !plan.belongings.iter().any(is_told) {
        return None;
    }
    let open = || open_sales(plan, as_of);
    let sum = |amount: fn(&Belonging) -> Money| open().map(amount).sum::<Money>().rounded(plan.minor_digits());
    let mut given_away = Money::ZERO;
    let mut lowest: Option<LowestDay> = None;
    for day in ahead {
        let today = open().filter(|belonging| sold_on(plan, belonging) == Some(day.on) && is_counted_on(belonging));
        given_away += today.map(|belonging| likely(belonging) - least(belonging)).sum();
        let closing = day.closing - given_away;
        if lowest.is_none_or(|lowest| closing < lowest.closing) {
            lowest = Some(LowestDay { on: day.on, closing });
        }
    }
    Some(SalesOutlook { likely: sum(likely), expected: sum(expected), least: sum(least), lowest })
}

/// What is still to be sold: what nobody said anything about yet, and whose day is still ahead.
pub(super) fn open_sales(plan: &Plan, as_of: Date) -> impl Iterator<Item = &Belonging> {
    let is_ahead = move |belonging: &&Belonging| sold_on(plan, belonging).is_none_or(|on| on >= as_of);
    plan.belongings.iter().filter(|belonging| belonging.outcome.is_none()).filter(is_ahead)
}

/// The day by which it is to be sold, as far as the plan says.
pub(super) fn sold_on(plan: &Plan, belonging: &Belonging) -> Option<Date> {
    belonging.on.or(plan.calendar.leaves_on)
}

/// Whether it is at least as likely as not to be sold.
pub(super) fn is_counted_on(belonging: &Belonging) -> bool {
    belonging.chance_percent.is_none_or(|percent| percent >= rust_decimal::Decimal::from(50))
}

/// Its chance in millionths.
pub(super) fn chance_ppm(belonging: &Belonging) -> u32 {
    // A percent with four decimals is a millionth.
    let ppm = belonging.chance_percent.map_or(Some(1_000_000), |percent| Money::new(percent).to_minor(4));
    ppm.unwrap_or(0).clamp(0, 1_000_000).unsigned_abs().try_into().unwrap_or(0)
}

fn less_cost(belonging: &Belonging, price: Option<Money>) -> Money {
    price.map_or(Money::ZERO, |price| price - belonging.selling_cost.unwrap_or(Money::ZERO))
}

fn likely(belonging: &Belonging) -> Money {
    less_cost(belonging, belonging.price.map(|price| price.likely()))
}

fn least(belonging: &Belonging) -> Money {
    let price = belonging.price.map(|price| price.likely());
    less_cost(belonging, price.map(|price| belonging.lowest.map_or(price, |lowest| lowest.min(price))))
}

fn expected(belonging: &Belonging) -> Money {
    let amount = likely(belonging);
    belonging.chance_percent.map_or(amount, |percent| amount.percent(percent))
}
