//! Which sales are still open, and how likely they are.

use jiff::civil::Date;
use rust_decimal::Decimal;

use crate::plan::{Belonging, Money, Plan};

/// What is still to be sold: what nobody said anything about yet, and whose day is still ahead.
pub(super) fn open_sales(plan: &Plan, as_of: Date) -> impl Iterator<Item = &Belonging> {
    let is_ahead = move |belonging: &&Belonging| sold_on(plan, belonging).is_none_or(|on| on >= as_of);
    let is_offered = |belonging: &&Belonging| belonging.outcome.is_none() && belonging.is_for_sale();
    plan.belongings.iter().filter(is_offered).filter(is_ahead)
}

/// The day by which it is to be sold, as far as the plan says.
pub(super) fn sold_on(plan: &Plan, belonging: &Belonging) -> Option<Date> {
    belonging.on.or(plan.calendar.leaves_on)
}

/// Whether it is at least as likely as not to be sold.
pub(super) fn is_counted_on(belonging: &Belonging) -> bool {
    belonging.chance_percent.is_none_or(|percent| percent >= Decimal::from(50))
}

/// Its chance in millionths.
pub(super) fn chance_ppm(belonging: &Belonging) -> u32 {
    belonging.chance_percent.map_or(1_000_000, ppm)
}

/// A percent as a chance in millionths, from none to all of them.
pub(super) fn ppm(percent: Decimal) -> u32 {
    // A percent with four decimals is a millionth.
    Money::new(percent).to_minor(4).unwrap_or(0).clamp(0, 1_000_000).unsigned_abs().try_into().unwrap_or(0)
}
