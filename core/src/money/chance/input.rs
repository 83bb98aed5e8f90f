//! What is certain, what is not, and the bounds of both.

use crate::run::MOST_DAYS;

/// The largest amount either way, in minor units: ten thousand millions of a currency with cents.
pub const MOST_MINOR: i64 = 1_000_000_000_000;
/// The most certain flows.
pub const MOST_CERTAIN: usize = 100_000;
/// The most uncertain flows: a few on every day of the longest plan.
pub const MOST_UNCERTAIN: usize = 10_000;
/// The most courses that are drawn.
pub const MOST_PATHS: u32 = 100_000;

/// Money that surely moves on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CertainFlow {
    /// The day, counted from 0.
    pub day: u32,
    /// Minor units that come in; negative for what goes out.
    pub amount: i64,
}

/// Money that may move: a sale that may fail, a price that is a range.
///
/// The amount is drawn from the triangle over `low`, `likely` and `high`, the day evenly from `first_day` to
/// `last_day`, each on its own and apart from all other flows. That is our assumption; common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UncertainFlow {
    /// The least, in minor units; what goes out is negative, so the dearest price is the least.
    pub low: i64,
    /// The most likely, from `low` to `high`.
    pub likely: i64,
    /// The most.
    pub high: i64,
    /// The chance that it happens at all, in millionths: 0 to 1,000,000.
    pub chance_ppm: u32,
    /// The first day on which it can happen, counted from 0.
    pub first_day: u32,
    /// The last one, from `first_day` on.
    pub last_day: u32,
}

impl UncertainFlow {
    /// That amount on that day, for sure: a start for what is less sure.
    pub fn fixed(amount: i64, day: u32) -> Self {
        Self { low: amount, likely: amount, high: amount, chance_ppm: 1_000_000, first_day: day, last_day: day }
    }
}

/// What the runs take. Each day is judged in its evening, after all its flows, as the money balance does.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outlook {
    /// Cash before the first day, in minor units.
    pub opening: i64,
    /// What is never to be gone below, in minor units.
    pub floor: i64,
    /// How many days, 1 to [`MOST_DAYS`].
    pub days: u32,
    /// What is certain, in any order.
    pub certain: Vec<CertainFlow>,
    /// What is not, in any order. The draws of a flow depend on its place here, so what is added behind the others
    /// leaves theirs as they were.
    pub uncertain: Vec<UncertainFlow>,
}

/// Why an outlook is refused. The place is counted from 0 in its list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// There must be 1 to [`MOST_DAYS`] days.
    Days,
    /// There must be 1 to [`MOST_PATHS`] courses.
    Paths,
    /// There may be [`MOST_CERTAIN`] certain and [`MOST_UNCERTAIN`] uncertain flows at most.
    TooMany,
    /// Opening cash or floor is beyond [`MOST_MINOR`].
    Purse,
    /// A certain flow is beyond [`MOST_MINOR`] or outside the days.
    Certain(usize),
    /// The amounts of an uncertain flow are beyond [`MOST_MINOR`] or not in the order low, likely, high.
    Amount(usize),
    /// The chance of an uncertain flow is above 1,000,000 millionths.
    Chance(usize),
    /// The days of an uncertain flow are reversed or outside the days.
    Day(usize),
}

impl Outlook {
    /// The same with a payment on a day.
    #[must_use]
    pub fn paying(mut self, amount: i64, day: u32) -> Self {
        self.certain.push(CertainFlow { day, amount: amount.saturating_neg() });
        self
    }

    /// Whether all is within the bounds, within which no sum overflows: a sum has at most 110,001 amounts, so it stays
    /// below 1.2e17 either way.
    ///
    /// # Errors
    /// The first thing that is out of bounds.
    pub fn check(&self) -> Result<(), Refused> {
        if self.days == 0 || self.days > MOST_DAYS {
            return Err(Refused::Days);
        }
        if self.certain.len() > MOST_CERTAIN || self.uncertain.len() > MOST_UNCERTAIN {
            return Err(Refused::TooMany);
        }
        if !is_amount(self.opening) || !is_amount(self.floor) {
            return Err(Refused::Purse);
        }
        let is_wrong = |flow: &CertainFlow| flow.day >= self.days || !is_amount(flow.amount);
        if let Some(at) = self.certain.iter().position(is_wrong) {
            return Err(Refused::Certain(at));
        }
        for (at, flow) in self.uncertain.iter().enumerate() {
            check_uncertain(flow, at, self.days)?;
        }
        Ok(())
    }

    /// Cash in the evening of each day if nothing uncertain happens. The outlook must be [checked](Self::check).
    pub(super) fn certain_by_day(&self) -> Vec<i64> {
        let mut cash = vec![0; self.days as usize];
        for flow in &self.certain {
            if let Some(day) = cash.get_mut(flow.day as usize) {
                *day += flow.amount;
            }
        }
        let mut sum = self.opening;
        for day in &mut cash {
            sum += *day;
            *day = sum;
        }
        cash
    }
}

fn is_amount(amount: i64) -> bool {
    (-MOST_MINOR..=MOST_MINOR).contains(&amount)
}

fn check_uncertain(flow: &UncertainFlow, at: usize, days: u32) -> Result<(), Refused> {
    let is_ordered = flow.low <= flow.likely && flow.likely <= flow.high;
    if !is_ordered || !is_amount(flow.low) || !is_amount(flow.high) {
        return Err(Refused::Amount(at));
    }
    if flow.chance_ppm > 1_000_000 {
        return Err(Refused::Chance(at));
    }
    if flow.first_day > flow.last_day || flow.last_day >= days {
        return Err(Refused::Day(at));
    }
    Ok(())
}
