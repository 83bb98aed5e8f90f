//! How much is in a pack, and what that makes one of two offers cost.

use rust_decimal::Decimal;
use serde::Serialize;

use crate::plan::{Money, NumberMarks, Quantity, Wrong, decimal, typed_amount};

/// How much is in one pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pack {
    /// So much, in the plan's unit for what it measures; more than nothing.
    pub amount: Decimal,
    /// What it measures: mass, volume, length, or a count of pieces.
    pub quantity: Quantity,
}

/// What one unit of something costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct UnitPrice {
    /// For one of the plan's unit, unrounded.
    pub price: Money,
    /// What it measures.
    pub quantity: Quantity,
}

/// Which of two offers is cheaper.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Comparison {
    /// The first.
    First {
        /// How much less a unit costs, in hundredths of the dearer price.
        percent: f64,
        /// On as much as is bought of the first, rounded as a till would.
        saved: Money,
    },
    /// The second.
    Second {
        /// How much less a unit costs, in hundredths of the dearer price.
        percent: f64,
        /// On as much as is bought of the first, rounded as a till would.
        saved: Money,
    },
    /// A unit of either costs the same.
    Same,
    /// What they hold cannot be compared: one is weighed, the other counted.
    NotAlike,
}

/// Reads how much is in a pack: `500 ml`, `2 x 1.5 kg`, `6 m`, or a bare number of pieces.
///
/// # Errors
/// What is wrong with the text, and what would be right.
pub fn read_pack(text: &str, marks: NumberMarks) -> Result<Pack, Wrong> {
    const KINDS: [Quantity; 4] = [Quantity::Count, Quantity::MassKg, Quantity::VolumeL, Quantity::LengthMm];
    let (amount, quantity) = typed_amount(text, marks, &KINDS)?;
    if amount > Decimal::ZERO {
        Ok(Pack { amount, quantity })
    } else {
        Err(Wrong::NotANumber { example: 0.5, quantity: Quantity::MassKg })
    }
}

/// What a unit costs when a pack costs so much.
pub fn unit_price(price: Money, pack: Pack) -> Option<UnitPrice> {
    let price = decimal::over(price.decimal(), pack.amount).map(Money::new)?;
    Some(UnitPrice { price, quantity: pack.quantity })
}

/// Compares what a unit costs here and there, for so many units bought.
///
/// ```
/// use kerbstead_core::plan::Quantity;
/// use kerbstead_core::shop::{Comparison, UnitPrice, compared};
/// let per_kg = |price: &str| UnitPrice { price: price.parse().unwrap(), quantity: Quantity::MassKg };
/// let Comparison::First { percent, saved } = compared(per_kg("3"), per_kg("4"), 2.into(), 2) else { panic!() };
/// assert_eq!((percent, saved.to_string().as_str()), (25.0, "2"));
/// ```
pub fn compared(first: UnitPrice, second: UnitPrice, bought: Decimal, digits: u32) -> Comparison {
    if first.quantity != second.quantity {
        return Comparison::NotAlike;
    }
    let (cheap, dear) = (first.price.min(second.price), first.price.max(second.price));
    if cheap == dear {
        return Comparison::Same;
    }
    let less = dear - cheap;
    let share = decimal::over(less.scaled(Decimal::ONE_HUNDRED).decimal(), dear.decimal());
    let percent = decimal::to_float(share.unwrap_or_default());
    let saved = less.scaled(bought).rounded(digits);
    if first.price < second.price {
        Comparison::First { percent, saved }
    } else {
        Comparison::Second { percent, saved }
    }
}
