//! What a purchase costs, with its tax.

use rust_decimal::Decimal;
use serde::Serialize;

use super::span::Span;
use crate::plan::{Item, Money, Purse, decimal};

/// What is paid for some of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PriceParts {
    /// Without tax.
    pub net: Money,
    /// The tax.
    pub tax: Money,
    /// Both.
    pub total: Money,
}

/// Price of `quantity` at `unit_price`, with the tax worked out on the line and rounded half up to the currency's minor
/// unit, as tills do it. With tax-inclusive prices the tax is what is contained.
///
/// ```
/// use kerbstead_core::money::price_parts;
/// let parts = price_parts("1.50".parse().unwrap(), 1, 7.into(), false, 2);
/// assert_eq!(parts.tax.to_string(), "0.11");
/// ```
pub fn price_parts(
    unit_price: Money,
    quantity: u32,
    tax_percent: Decimal,
    includes_tax: bool,
    digits: u32,
) -> PriceParts {
    let line = unit_price.times(quantity).rounded(digits);
    if includes_tax {
        let share = (Money::whole(100) + Money::new(tax_percent)).decimal();
        let net = decimal::over(Decimal::ONE_HUNDRED, share).map_or(line, |factor| line.scaled(factor).rounded(digits));
        PriceParts { net, tax: line - net, total: line }
    } else {
        let tax = line.percent(tax_percent).rounded(digits);
        PriceParts { net: line, tax, total: line + tax }
    }
}

/// What an item's purchase costs in all, if it has a price: less the discount, with its delivery. The tax within the
/// delivery is not told apart.
pub fn purchase_price(item: &Item, purse: &Purse, digits: u32) -> Option<PriceParts> {
    let price = goods_price(item, item.unit_price?.likely(), item.quantity, purse, digits);
    let delivery = delivery(item, digits);
    Some(PriceParts { net: price.net + delivery, total: price.total + delivery, ..price })
}

/// What an item's purchase may cost in all, over the range of its price.
pub(super) fn purchase_span(item: &Item, purse: &Purse, digits: u32) -> Option<Span> {
    let goods = goods_span(item, item.quantity, purse, digits)?;
    Some(goods.plus(Span::sure(delivery(item, digits))))
}

/// What so many of an item may cost, without their delivery.
pub(super) fn goods_span(item: &Item, quantity: u32, purse: &Purse, digits: u32) -> Option<Span> {
    let marked = Span::of(item.unit_price?);
    Some(marked.each(&|marked| goods_price(item, marked, quantity, purse, digits).total))
}

fn delivery(item: &Item, digits: u32) -> Money {
    item.delivery.unwrap_or(Money::ZERO).rounded(digits)
}

fn goods_price(item: &Item, marked: Money, quantity: u32, purse: &Purse, digits: u32) -> PriceParts {
    let unit_price = item.discount_percent.map_or(marked, |percent| marked - marked.percent(percent));
    let tax = item.tax_percent.unwrap_or(purse.tax_percent);
    price_parts(unit_price, quantity, tax, purse.prices_include_tax, digits)
}
