//! Money that is lent.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::record::record;
use super::{Calendar, Id, Money, Purchase, add_months};

/// A loan that is paid back in equal parts, one a month: of a bank, or of a friend who asks no interest.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Loan {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What is owed at first, fees that are financed included.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub amount: Option<Money>,
    /// Interest a year in percent, a twelfth of it a month.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub yearly_percent: Decimal,
    /// How many payments, 1 to 600.
    pub months: u32,
    /// What is kept back of the amount, or paid for the loan, on the day it comes.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fees: Option<Money>,
    /// The day the money comes; without it, the day the van is paid. What came before the first day of the plan is in
    /// the cash already.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub drawn_on: Option<Date>,
    /// Whether it came. Without an answer it is asked for once its day has passed.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub drawn: Option<bool>,
    /// The day of the first payment, the later ones being on the same day of the month; without it, a month after the
    /// money comes.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub first_payment_on: Option<Date>,
    /// The day on which all that is left is paid at once.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub paid_off_on: Option<Date>,
}

record!(Loan { id, name, amount, yearly_percent, months, fees, drawn_on, drawn, first_payment_on, paid_off_on });

impl Default for Loan {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            amount: None,
            yearly_percent: Decimal::ZERO,
            months: 12,
            fees: None,
            drawn_on: None,
            drawn: None,
            first_payment_on: None,
            paid_off_on: None,
        }
    }
}

impl Loan {
    /// The day the money comes, as far as the plan says.
    pub fn comes_on(&self, purchase: &Purchase, calendar: &Calendar) -> Option<Date> {
        self.drawn_on.or(purchase.pay_on).or(calendar.leaves_on)
    }

    /// The day of the first payment of a loan that comes on `drawn_on`.
    pub fn first_due_on(&self, drawn_on: Date) -> Date {
        self.first_payment_on.or_else(|| add_months(drawn_on, 1)).unwrap_or(drawn_on)
    }
}
