//! The plan's loans: what they pay, cost and leave owed, beside what the van would still bring.

use jiff::civil::Date;
use serde::Serialize;

use super::loan::{Instalment, Terms, payoff, schedule, total_interest, yearly_cost_percent};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Estimate, Id, Loan, Money, Plan, Quantity, add_months, days_between};
use crate::run::Timeline;

/// A loan of the plan with all its payments.
#[derive(Clone, Debug, PartialEq)]
pub struct Debt {
    /// The loan.
    pub loan: Id,
    /// What is agreed.
    pub terms: Terms,
    /// Every payment that is made: up to the day on which the rest is paid at once, if there is one.
    pub payments: Vec<Instalment>,
    /// What all payments would be without that.
    pub agreed: Vec<Instalment>,
}

/// What a loan comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LoanReport {
    /// The loan.
    pub loan: Id,
    /// What is paid a month.
    pub payment: Money,
    /// All interest that is paid.
    pub interest: Money,
    /// The interest that is saved by paying the rest at once.
    pub interest_saved: Money,
    /// What it costs a year in percent with its fees, if it is kept to its end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yearly_cost_percent: Option<f64>,
    /// The day on which nothing is owed any more.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub ends_on: Date,
    /// Every payment.
    pub payments: Vec<Instalment>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

/// What is owed and what the van would bring, on one day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct OwedDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// What would settle all loans.
    pub owed: Money,
    /// What the van would bring.
    pub resale: Money,
}

impl Debt {
    /// The loan as it is agreed; `None` without an amount or a day, and when it did not come.
    pub fn new(plan: &Plan, loan: &Loan) -> Option<Self> {
        let drawn_on = loan.comes_on(&plan.purchase, &plan.calendar)?;
        let terms = Terms {
            principal: loan.amount.filter(|_| loan.drawn != Some(false))?,
            yearly_percent: loan.yearly_percent,
            months: loan.months,
            fees: loan.fees.unwrap_or(Money::ZERO),
            drawn_on,
            first_payment_on: loan.first_due_on(drawn_on),
            digits: plan.minor_digits(),
        };
        let mut agreed = schedule(&terms);
        if loan.first_payment_on.is_none() {
            // Counted from the day the money comes, so that the 31st comes back after a short month.
            let later = (1..).map_while(|months| add_months(drawn_on, months));
            agreed.iter_mut().zip(later).for_each(|(payment, on)| payment.on = on);
        }
        let payments = match loan.paid_off_on {
            Some(on) => paid_off(&terms, &agreed, on.max(drawn_on)),
            None => agreed.clone(),
        };
        Some(Self { loan: loan.id, terms, payments, agreed })
    }

    /// What would settle it on a day: nothing before the money came.
    pub fn owed(&self, on: Date) -> Money {
        let is_over = || self.payments.last().is_some_and(|last| last.on <= on);
        if on < self.terms.drawn_on || is_over() { Money::ZERO } else { payoff(&self.terms, &self.agreed, on) }
    }

    /// What it comes to.
    pub fn report(&self) -> LoanReport {
        let interest = total_interest(&self.payments);
        let payment = self.agreed.first().map_or(Money::ZERO, |first| first.payment);
        let yearly_cost_percent = yearly_cost_percent(&self.terms, &self.agreed);
        let last = self.payments.last();
        let mut working = vec![Working {
            formula: "working-money-loan",
            figures: vec![
                ("amount", Figure::Money(self.terms.principal)),
                ("payment", Figure::Money(payment)),
                ("count", Figure::count(self.payments.len())),
                ("last", Figure::Money(last.map_or(Money::ZERO, |last| last.payment))),
                ("interest", Figure::Money(interest)),
            ],
            source: Source::Arithmetic,
        }];
        working.extend(yearly_cost_percent.map(|percent| Working {
            formula: "working-money-loan-cost",
            figures: vec![
                ("percent", Figure::of(percent, Quantity::Percent)),
                ("fees", Figure::Money(self.terms.fees)),
            ],
            source: Source::Published("12 CFR 1026, Appendix J"),
        }));
        LoanReport {
            loan: self.loan,
            payment,
            interest,
            interest_saved: total_interest(&self.agreed) - interest,
            yearly_cost_percent,
            ends_on: last.map_or(self.terms.drawn_on, |last| last.on),
            payments: self.payments.clone(),
            working,
        }
    }
}

/// The payments up to a day, and on it what is left with the interest of the days since the last one.
fn paid_off(terms: &Terms, agreed: &[Instalment], on: Date) -> Vec<Instalment> {
    let mut payments: Vec<Instalment> = agreed.iter().copied().filter(|payment| payment.on <= on).collect();
    let balance = payments.last().map_or(terms.principal.rounded(terms.digits), |last| last.balance);
    if balance != Money::ZERO {
        let payment = payoff(terms, agreed, on).rounded(terms.digits);
        let interest = payment - balance;
        payments.push(Instalment { on, payment, interest, principal: balance, balance: Money::ZERO });
    }
    payments
}

/// What the van would bring on a day: its price less a fixed part for each month since, never below nothing. A
/// straight line is common practice, no source.
pub fn van_resale(plan: &Plan, starts_on: Date, on: Date) -> Option<Money> {
    let vehicle = &plan.vehicle;
    let price = vehicle.resale.as_ref().map(Estimate::likely)?;
    let Some(falls) = vehicle.resale_falls else { return Some(price) };
    let since = plan.purchase.pay_on.unwrap_or(starts_on);
    let left = price - falls.times(months_between(since, on));
    Some(if left.is_negative() { Money::ZERO } else { left })
}

/// Whole months from a day to a later one.
fn months_between(from: Date, to: Date) -> u32 {
    let months = (i32::from(to.year()) - i32::from(from.year())) * 12 + i32::from(to.month()) - i32::from(from.month());
    let is_reached = add_months(from, months).is_some_and(|reached| days_between(reached, to) >= 0);
    u32::try_from(if is_reached { months } else { months - 1 }).unwrap_or(0)
}

/// What is owed and what the van would bring, month by month from the first day on; nothing without loans or without
/// a price for the van.
pub fn owed_by_month(plan: &Plan, timeline: &Timeline, debts: &[Debt]) -> Vec<OwedDay> {
    let (starts_on, ends_on) = (timeline.starts_on(), timeline.ends_on());
    let mut days = Vec::new();
    for months in 0.. {
        let Some(on) = add_months(starts_on, months).filter(|on| *on <= ends_on) else { break };
        let Some(resale) = van_resale(plan, starts_on, on).filter(|_| !debts.is_empty()) else { break };
        days.push(OwedDay { on, owed: owed(debts, on), resale });
    }
    days
}

/// What would settle all loans on a day.
pub fn owed(debts: &[Debt], on: Date) -> Money {
    debts.iter().map(|debt| debt.owed(on)).sum()
}
