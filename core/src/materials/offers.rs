//! The same thing in other packs: which offer costs least for what is needed, whole packs and tax counted, and what of
//! the rest is of use.
//!
//! The cheapest by the unit is often another one: a large pack of which most is left over.
//!
//! ```
//! use kerbstead_core::materials::offers::{PackOffer, Wanted, compare};
//! use kerbstead_core::plan::Quantity;
//! use kerbstead_core::shop::Pack;
//! let offer = |litres: u32, price: &str| PackOffer {
//!     pack: Pack { amount: litres.into(), quantity: Quantity::VolumeL },
//!     price: price.parse().unwrap(),
//!     tax_percent: 0.into(),
//!     includes_tax: true,
//! };
//! let wanted = Wanted { amount: 3.into(), quantity: Quantity::VolumeL, of_use_percent: 0.into() };
//! let found = compare(&[offer(1, "9"), offer(10, "50")], wanted, 2);
//! assert_eq!((found.cheapest, found.cheapest_by_unit), (Some(0), Some(1)));
//! ```

use rust_decimal::Decimal;
use serde::Serialize;

use super::coverage::packs_for;
use crate::money::{PriceParts, price_parts};
use crate::plan::{Money, Quantity, decimal};
use crate::shop::{Pack, UnitPrice};

/// A pack as it is offered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PackOffer {
    /// How much is in it; more than nothing.
    pub pack: Pack,
    /// What it is marked.
    pub price: Money,
    /// Sales tax on it.
    pub tax_percent: Decimal,
    /// Whether the marked price has the tax in it.
    pub includes_tax: bool,
}

/// What is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// So much, in the plan's unit for what it measures.
    pub amount: Decimal,
    /// What it measures.
    pub quantity: Quantity,
    /// How much of what is left over will be of use for something else, in hundredths, 0 to 100.
    pub of_use_percent: Decimal,
}

/// What an offer comes to for what is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct ForNeed {
    /// So many packs.
    pub packs: u32,
    /// What they cost at the till.
    pub price: PriceParts,
    /// What is left over, in the unit of the pack.
    pub left_over: Decimal,
    /// What a unit costs with tax, unrounded.
    pub unit_price: UnitPrice,
    /// What is paid less what the useful rest is worth by its unit price.
    pub counted: Money,
}

/// Which offer is the cheapest; of equal ones the first.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Compared {
    /// Offer by offer; none where its pack measures something else, is empty, or would have to be bought too often.
    pub offers: Vec<Option<ForNeed>>,
    /// The cheapest for what is needed.
    pub cheapest: Option<usize>,
    /// The cheapest by the unit, whatever is left over.
    pub cheapest_by_unit: Option<usize>,
}

/// Compares offers for what is needed; prices are rounded to so many digits, as a till would.
pub fn compare(offers: &[PackOffer], wanted: Wanted, digits: u32) -> Compared {
    let offers: Vec<Option<ForNeed>> = offers.iter().map(|offer| for_need(offer, wanted, digits)).collect();
    let least = |cost: fn(&ForNeed) -> Money| {
        let known = offers.iter().enumerate().filter_map(|(at, offer)| Some((cost(offer.as_ref()?), at)));
        known.min().map(|(_, at)| at)
    };
    let (cheapest, cheapest_by_unit) = (least(|offer| offer.counted), least(|offer| offer.unit_price.price));
    Compared { offers, cheapest, cheapest_by_unit }
}

/// What one offer comes to.
pub fn for_need(offer: &PackOffer, wanted: Wanted, digits: u32) -> Option<ForNeed> {
    if offer.pack.quantity != wanted.quantity {
        return None;
    }
    let (packs, left_over) = packs_for(wanted.amount, offer.pack.amount)?;
    let price = price_parts(offer.price, packs, offer.tax_percent, offer.includes_tax, digits);
    let with_tax = if offer.includes_tax { offer.price } else { offer.price + offer.price.percent(offer.tax_percent) };
    let unit = Money::new(decimal::over(with_tax.decimal(), offer.pack.amount)?);
    let of_use = wanted.of_use_percent.clamp(Decimal::ZERO, Decimal::ONE_HUNDRED);
    let worth = unit.scaled(left_over).percent(of_use).rounded(digits);
    let unit_price = UnitPrice { price: unit, quantity: wanted.quantity };
    Some(ForNeed { packs, price, left_over, unit_price, counted: price.total - worth })
}

/// What is bought for one of several needs, one after another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Bought {
    /// What of it is left over from those before.
    pub from_left_over: Decimal,
    /// So many packs more.
    pub packs: u32,
    /// What they cost at the till.
    pub price: PriceParts,
    /// What is left over then.
    pub left_over: Decimal,
}

/// Packs for several needs of the same thing: what is left over of one goes to the next, with what was there before.
/// Only what can be joined can be counted so: paint and screws can, of boards only what is long enough.
pub fn buy_in_turn(needs: &[Decimal], offer: &PackOffer, on_hand: Decimal, digits: u32) -> Option<Vec<Bought>> {
    let mut left_over = on_hand.max(Decimal::ZERO);
    let mut bought = Vec::new();
    for need in needs {
        if *need < Decimal::ZERO {
            return None;
        }
        let from_left_over = left_over.min(*need);
        let (packs, rest) = packs_for(decimal::less(*need, from_left_over)?, offer.pack.amount)?;
        left_over = decimal::plus(decimal::less(left_over, from_left_over)?, rest)?.normalize();
        let price = price_parts(offer.price, packs, offer.tax_percent, offer.includes_tax, digits);
        bought.push(Bought { from_left_over, packs, price, left_over });
    }
    Some(bought)
}
