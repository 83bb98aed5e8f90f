//! The plan as the runs by chance take it: what is certain from a day on, and what is not.
//!
//! What we assume; common practice, no source:
//! - Every flow of the likely run keeps its day. A payment or receipt that comes again is drawn anew each time, apart from
//!   all others, so many small ranges even out.
//! - A price, income or cost that is a range is drawn from the triangle over low, likely and high. What follows from two
//!   ranges, such as fuel, reaches from the least of both to the most of both.
//! - A sale happens with its chance, and without one surely. It may go down to the lowest price it is given away for. One
//!   that is less likely than not is in no flow of the likely run; here it counts with its chance.
//! - What has happened, and loans, are certain. What nobody confirmed counts as it does in the likely run.
//! - A count of the cash on the evening of the day asked has in it whatever happened on that day.

use jiff::civil::Date;

use super::chance::{CertainFlow, Outlook, Refused, UncertainFlow};
use super::flows::{Flow, FlowRange};
use super::report::is_cash_known;
use super::step::{CashDay, Course};
use crate::plan::record::words;
use crate::plan::{Money, Plan, days_between};
use crate::run::{Timeline, dated, walk};

/// A plan from the day asked on.
#[derive(Clone, Debug, PartialEq)]
pub struct Ahead {
    /// The first day: that on which it was asked, or the first of the plan.
    pub from: Date,
    /// Cash by day from then on, if all goes as is likely.
    pub days: Vec<CashDay>,
    /// Every flow that counts from then on, by date.
    pub flows: Vec<Flow>,
    /// The sales from then on that are less likely than not, which are among no flows.
    pub unlikely: Vec<Flow>,
    /// The same as chances take it, in minor units.
    pub outlook: Outlook,
    /// Digits of the currency's minor unit.
    pub digits: u32,
}

/// Why a plan cannot be looked at by chances or put into an order of buying.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum NotAhead {
    /// The cash to begin with is not known.
    #[default]
    CashUnknown,
    /// No day of the plan is ahead.
    Over,
    /// There are more flows than are worked out.
    TooMany,
    /// An amount is too large.
    TooLarge,
    /// There is nothing left to buy.
    NothingToBuy,
}

words!(NotAhead {
    CashUnknown = "cash_unknown", Over = "over", TooMany = "too_many", TooLarge = "too_large", NothingToBuy = "nothing_to_buy" });

impl From<Refused> for NotAhead {
    fn from(refused: Refused) -> Self {
        match refused {
            Refused::Days => Self::Over,
            Refused::Paths | Refused::TooMany => Self::TooMany,
            Refused::Purse | Refused::Certain(_) | Refused::Amount(_) | Refused::Chance(_) | Refused::Day(_) => {
                Self::TooLarge
            }
        }
    }
}

/// The plan from the day asked on.
///
/// # Errors
/// When the cash is not known, the plan is over, or something is out of the bounds of [`Outlook::check`].
///
/// ```
/// use kerbstead_core::{money::ahead, plan::demo_plan};
/// use jiff::civil::date;
/// let ahead = ahead(&demo_plan(), date(2027, 3, 10)).unwrap();
/// assert_eq!(ahead.outlook.days as usize, ahead.days.len());
/// assert!(!ahead.outlook.uncertain.is_empty());
/// ```
pub fn ahead(plan: &Plan, as_of: Date) -> Result<Ahead, NotAhead> {
    ahead_of_dated(&dated(plan, as_of).plan, as_of)
}

/// The same of a plan whose work has given its days already.
pub(crate) fn ahead_of_dated(plan: &Plan, as_of: Date) -> Result<Ahead, NotAhead> {
    let timeline = Timeline::new(plan, as_of);
    let Course { days, input, .. } = walk(plan, as_of, &timeline).money;
    let days = days.get(timeline.index_from(as_of)..).unwrap_or(&[]).to_vec();
    let from = days.first().ok_or(NotAhead::Over)?.on;
    if !is_cash_known(plan, as_of) {
        return Err(NotAhead::CashUnknown);
    }
    let mut ahead = Ahead {
        from,
        days,
        flows: input.flows.into_iter().filter(|flow| flow.on >= from && flow.counts()).collect(),
        unlikely: input.unlikely.into_iter().filter(|flow| flow.on >= from).collect(),
        outlook: Outlook::default(),
        digits: plan.minor_digits(),
    };
    if is_counted_tonight(plan, from) {
        ahead.settle_today();
    }
    ahead.outlook = ahead.outlook(plan.purse.floor)?;
    Ok(ahead)
}

impl Ahead {
    /// The place of a day, counted from the first.
    pub fn index_of(&self, on: Date) -> u32 {
        // At most 1,100 days.
        u32::try_from(days_between(self.from, on)).unwrap_or(0)
    }

    /// Makes all of the first day certain.
    fn settle_today(&mut self) {
        let today = self.from;
        self.unlikely.retain(|flow| flow.on != today);
        for flow in self.flows.iter_mut().filter(|flow| flow.on == today) {
            flow.range = FlowRange { low: flow.amount, high: flow.amount, ..flow.range };
            flow.range.chance_ppm = 1_000_000;
        }
    }

    fn outlook(&self, floor: Money) -> Result<Outlook, NotAhead> {
        let minor = |amount: Money| amount.to_minor(self.digits).ok_or(NotAhead::TooLarge);
        let opening = minor(self.days.first().map_or(Money::ZERO, |day| day.opening))?;
        let days = u32::try_from(self.days.len()).unwrap_or(u32::MAX);
        let mut outlook = Outlook { opening, floor: minor(floor)?, days, ..Outlook::default() };
        for (day, cash) in (1..).zip(&self.days).filter(|(day, cash)| *day < days && cash.corrected != Money::ZERO) {
            // What a count in the evening changed is there the next day.
            outlook.certain.push(CertainFlow { day, amount: minor(cash.corrected)? });
        }
        for flow in self.flows.iter().chain(&self.unlikely) {
            let (day, range) = (self.index_of(flow.on), flow.range);
            let (low, likely, high) = (minor(range.low)?, minor(flow.amount)?, minor(range.high)?);
            if low == high && range.chance_ppm == 1_000_000 {
                outlook.certain.push(CertainFlow { day, amount: likely });
            } else {
                let flow =
                    UncertainFlow { low, likely, high, chance_ppm: range.chance_ppm, first_day: day, last_day: day };
                outlook.uncertain.push(flow);
            }
        }
        outlook.check()?;
        Ok(outlook)
    }
}

/// Whether the cash of a day was counted after its flows.
pub(crate) fn is_counted_tonight(plan: &Plan, on: Date) -> bool {
    plan.readings.iter().any(|reading| reading.on == Some(on) && reading.cash.is_some() && reading.hour >= 12)
}
