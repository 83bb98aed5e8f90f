//! The purchase of the van.

use jiff::civil::Date;

use super::record::record;
use super::{Estimate, Money, Outcome};

/// What is paid for the van, when it is still to be bought. A present car that is sold otherwise is a belonging; a loan for it is one of the loans.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Purchase {
    /// What is agreed, tax included.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub agreed_price: Option<Estimate<Money>>,
    /// The day it is paid; without it, the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub pay_on: Option<Date>,
    /// The part of the price that is paid beforehand. Once its day has passed it counts as paid.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub deposit: Option<Money>,
    /// The day that part is paid; without it, the day of the rest.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub deposit_on: Option<Date>,
    /// What the seller takes off for the present car, which goes in part exchange.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub part_exchange: Option<Estimate<Money>>,
    /// What the seller asks on top of the price, paid with it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub seller_fees: Option<Money>,
    /// Registration, plates and what is asked for them. Once its day has passed it counts as paid.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub registration: Option<Money>,
    /// The day of the registration; without it, the day the van is paid.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub registration_on: Option<Date>,
    /// What came of paying the seller: its amount is what was paid on that day, without the deposit.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub paid: Option<Outcome>,
}

record!(Purchase {
    agreed_price,
    pay_on,
    deposit,
    deposit_on,
    part_exchange,
    seller_fees,
    registration,
    registration_on,
    paid
});
