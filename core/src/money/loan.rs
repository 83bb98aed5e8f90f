//! A loan with level monthly payments: its schedule to the cent, and what it costs a year.

use jiff::civil::Date;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use super::rate::{RatedFlow, rate_per_period};
use crate::plan::civil::days_between;
use crate::plan::{Money, add_months};

/// The most months a loan may run: fifty years.
pub const MOST_MONTHS: u32 = 600;

/// What is agreed about a loan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terms {
    /// What is owed at first, fees that are financed included.
    pub principal: Money,
    /// Interest a year in percent, a twelfth of it a month.
    pub yearly_percent: Decimal,
    /// How many monthly payments, 1 to 600.
    pub months: u32,
    /// What is kept back or paid for the loan on the day it is drawn.
    pub fees: Money,
    /// The day the money comes.
    pub drawn_on: Date,
    /// The day of the first payment; the later ones fall on the same day of the month.
    pub first_payment_on: Date,
    /// Decimal digits of the currency's minor unit.
    pub digits: u32,
}

/// One payment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Instalment {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// What is paid.
    pub payment: Money,
    /// The part that is interest.
    pub interest: Money,
    /// The part that pays the loan off.
    pub principal: Money,
    /// What is still owed afterwards.
    pub balance: Money,
}

/// The level payment before rounding: `P i / (1 - (1 + i)^-n)`, with `i` a month's interest. Without interest, equal
/// parts.
pub fn level_payment(principal: Money, yearly_percent: Decimal, months: u32) -> Money {
    let months = months.clamp(1, MOST_MONTHS);
    let monthly = monthly_rate(yearly_percent);
    let discount = Decimal::ONE.checked_div(Decimal::ONE.saturating_add(monthly)).unwrap_or(Decimal::ZERO);
    let annuity = Decimal::ONE.saturating_sub(power(discount, months));
    let share = if monthly.is_zero() || annuity.is_zero() {
        Decimal::ONE.checked_div(Decimal::from(months))
    } else {
        monthly.checked_div(annuity)
    };
    principal.scaled(share.unwrap_or(Decimal::ONE))
}

/// Every payment to the minor unit: the level payment and each month's interest are rounded half up, and the last
/// payment settles what is left exactly. A loan whose payment does not even meet its interest after rounding is settled
/// whole at its end.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::{money::{Terms, schedule}, plan::Money};
/// let terms = Terms {
///     principal: Money::whole(1200), yearly_percent: "9.99".parse().unwrap(), months: 12, fees: Money::ZERO,
///     drawn_on: date(2030, 1, 31), first_payment_on: date(2030, 2, 28), digits: 2,
/// };
/// let payments = schedule(&terms);
/// assert_eq!(payments[0].payment.to_string(), "105.49");
/// assert_eq!(payments[11].payment.to_string(), "105.51");
/// assert!(payments[11].balance.decimal().is_zero());
/// ```
pub fn schedule(terms: &Terms) -> Vec<Instalment> {
    let months = terms.months.clamp(1, MOST_MONTHS);
    let level = level_payment(terms.principal, terms.yearly_percent, months).rounded(terms.digits);
    let mut balance = terms.principal.rounded(terms.digits);
    let mut payments = Vec::new();
    for number in 0..months {
        let interest = month_interest(balance, terms);
        let due = balance + interest;
        let is_last = number + 1 == months;
        let payment = if is_last || due <= level { due } else { level };
        let principal = payment - interest;
        balance -= principal;
        let on = month_later(terms.first_payment_on, number).unwrap_or(terms.first_payment_on);
        payments.push(Instalment { on, payment, interest, principal, balance });
        if balance == Money::ZERO {
            break;
        }
    }
    payments
}

/// All interest of a schedule.
pub fn total_interest(payments: &[Instalment]) -> Money {
    payments.iter().map(|payment| payment.interest).sum()
}

/// What settles the loan on a day: what is owed after the last payment before it, with the interest of the days since
/// as their share of the month.
pub fn payoff(terms: &Terms, payments: &[Instalment], on: Date) -> Money {
    let paid = payments.iter().filter(|payment| payment.on <= on).count();
    let last = paid.checked_sub(1).and_then(|index| payments.get(index));
    let balance = last.map_or(terms.principal, |payment| payment.balance);
    let since = last.map_or(terms.drawn_on, |payment| payment.on);
    let Some(next) = payments.get(paid) else { return balance };
    let month = Decimal::from(days_between(since, next.on).max(1));
    let days = Decimal::from(days_between(since, on).max(0));
    let share = days.checked_div(month).unwrap_or(Decimal::ZERO).min(Decimal::ONE);
    balance + month_interest(balance, terms).scaled(share).rounded(terms.digits)
}

/// What the loan costs a year in percent with its fees, by the actuarial method of 12 CFR 1026, Appendix J, with the
/// month as unit-period; the days before the first whole month count as thirtieths, paragraph (b)(5)(ii). `None` when no
/// rate does it.
pub fn yearly_cost_percent(terms: &Terms, payments: &[Instalment]) -> Option<f64> {
    let float = |amount: Money| amount.decimal().to_f64().unwrap_or(0.0);
    let (periods, fraction) = months_and_days(terms.drawn_on, terms.first_payment_on);
    let advance = RatedFlow { periods: 0, fraction: 0.0, amount: float(terms.principal - terms.fees) };
    let later = (periods..).zip(payments);
    let flows: Vec<RatedFlow> = std::iter::once(advance)
        .chain(later.map(|(periods, payment)| RatedFlow { periods, fraction, amount: -float(payment.payment) }))
        .collect();
    rate_per_period(&flows).map(|rate| rate * 1200.0)
}

/// Whole months back from the first payment to the drawing, and the odd days before them as thirtieths of a month.
fn months_and_days(drawn_on: Date, first_payment_on: Date) -> (u32, f64) {
    let whole = (1..=MOST_MONTHS)
        .take_while(|months| month_later(drawn_on, *months).is_some_and(|later| later <= first_payment_on))
        .last()
        .unwrap_or(0);
    let reached = month_later(drawn_on, whole).unwrap_or(drawn_on);
    let odd_days = u32::try_from(days_between(reached, first_payment_on)).unwrap_or(0).min(29);
    (whole, f64::from(odd_days) / 30.0)
}

/// The same day of a later month, or that month's last day: always stepped from the first date.
fn month_later(date: Date, months: u32) -> Option<Date> {
    add_months(date, i32::try_from(months).ok()?)
}

fn monthly_rate(yearly_percent: Decimal) -> Decimal {
    yearly_percent.max(Decimal::ZERO).checked_div(Decimal::from(1200)).unwrap_or(Decimal::ZERO)
}

fn month_interest(balance: Money, terms: &Terms) -> Money {
    balance.scaled(monthly_rate(terms.yearly_percent)).rounded(terms.digits)
}

/// A number from 0 to 1 to a whole power, by squaring.
fn power(base: Decimal, exponent: u32) -> Decimal {
    let (mut result, mut square, mut left) = (Decimal::ONE, base, exponent);
    while left > 0 {
        if left % 2 == 1 {
            result = result.saturating_mul(square);
        }
        square = square.saturating_mul(square);
        left /= 2;
    }
    result
}
