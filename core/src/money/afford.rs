//! Can this be afforded today?

use jiff::civil::Date;

use super::flows::{Flow, FlowState};
use super::report::Report;
use super::step::CashDay;
use crate::assessment::Verdict;
use crate::plan::Money;

/// What a payment of today would do to the days ahead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Afford {
    /// What would be left above the floor on the tightest evening from today on; negative for what would be missing.
    pub left: Money,
    /// That evening, the first of equal ones.
    pub tightest_on: Date,
    /// The first day on which it could be paid without ever going below the floor; `None` if there is none.
    pub from: Option<Date>,
}

impl Report {
    /// What a payment of `amount` on `as_of`, or on the first day of a plan that has not begun, would leave above
    /// `floor`; `None` while the cash is not known or no day lies ahead. A payment of nothing tells what is free to be
    /// spent.
    ///
    /// ```
    /// use kerbstead_core::{assess, plan::{Money, demo_plan}};
    /// let plan = demo_plan();
    /// let today = plan.calendar.starts_on.unwrap();
    /// let money = assess(&plan, today).money;
    /// let free = money.afford(plan.purse.floor, today, Money::ZERO).unwrap();
    /// let all_of_it = money.afford(plan.purse.floor, today, free.left).unwrap();
    /// assert_eq!((all_of_it.left, all_of_it.from), (Money::ZERO, Some(today)));
    /// ```
    pub fn afford(&self, floor: Money, as_of: Date, amount: Money) -> Option<Afford> {
        let ahead = || self.days.iter().filter(|day| day.on >= as_of);
        let tightest = ahead().min_by_key(|day| day.closing).filter(|_| self.standing.verdict != Verdict::Unknown)?;
        let is_too_little = |day: &&CashDay| day.closing - amount < floor;
        let from = match ahead().rfind(is_too_little) {
            Some(last) => ahead().find(|day| day.on > last.on),
            None => ahead().next(),
        };
        Some(Afford { left: tightest.closing - floor - amount, tightest_on: tightest.on, from: from.map(|day| day.on) })
    }

    /// The first day from `as_of` on, before its own, on which a payment that is planned could be made without ever going
    /// below `floor` until its own day. `None` for what is paid, comes in, or cannot be paid any sooner.
    pub fn payable_from(&self, floor: Money, as_of: Date, flow: &Flow) -> Option<Date> {
        if flow.state != FlowState::Planned || !flow.amount.is_negative() || self.standing.verdict == Verdict::Unknown {
            return None;
        }
        let before = || self.days.iter().filter(|day| day.on >= as_of && day.on < flow.on);
        match before().rfind(|day| day.closing + flow.amount < floor) {
            Some(last) => before().find(|day| day.on > last.on),
            None => before().next(),
        }
        .map(|day| day.on)
    }
}
