//! What is kept apart: for costs that come out higher, and for a breakdown.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::chance::{Outlook, Refused, Runs, UncertainFlow};
use super::constants::RESERVE_PERCENT;
use super::flows::{Flow, FlowGroup, FlowState};
use super::outlook::{Ahead, NotAhead};
use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures, Source, Working};
use crate::plan::record::record;
use crate::plan::{Id, Money, Plan, Quantity};

/// Courses that the reserve rests on: they place a percentile within a percent.
const PATHS: u32 = 10_000;

/// A cost still to come, in minor units, `low <= likely <= high`. Where all three are the same, nobody gave a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostAhead {
    /// The least.
    pub low: i64,
    /// The most likely.
    pub likely: i64,
    /// The most.
    pub high: i64,
}

/// What is kept apart, in minor units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reserve {
    /// What the costs that have a range come to in half of the courses at most: the median.
    pub middle: i64,
    /// What they come to in eight of ten courses at most.
    pub high: i64,
    /// The one less the other: what covers them in eight of ten courses.
    pub from_ranges: i64,
    /// The stated share of the costs without a range.
    pub from_share: i64,
    /// How many costs have no range.
    pub without_range: usize,
    /// What the person keeps for a breakdown: the tow, and nights elsewhere.
    pub breakdown: i64,
    /// All of it.
    pub total: i64,
}

/// The reserve for costs still to come: the 80th percentile less the median of their sum, drawn from their triangles;
/// for those without a range `share_percent` of them (0 to 100; [`super::constants::RESERVE_PERCENT`] is usual); and
/// what is kept for a breakdown. Common practice, no source.
///
/// # Errors
/// As [`Outlook::check`]: at most [`super::chance::MOST_UNCERTAIN`] costs, in order, within [`super::chance::MOST_MINOR`].
///
/// ```
/// use kerbstead_core::money::{CostAhead, reserve};
/// let insulation = CostAhead { low: 20_000, likely: 30_000, high: 60_000 };
/// let bed = CostAhead { low: 15_000, likely: 15_000, high: 15_000 };
/// let reserve = reserve(&[insulation, bed], 10.into(), 25_000, 1).unwrap();
/// assert_eq!((reserve.without_range, reserve.from_share), (1, 1_500));
/// assert!((reserve.from_ranges - 8_870).abs() < 500); // 440.80 less 354.00, by the triangle's formula
/// assert_eq!(reserve.total, reserve.from_ranges + 1_500 + 25_000);
/// ```
pub fn reserve(costs: &[CostAhead], share_percent: Decimal, breakdown: i64, seed: u64) -> Result<Reserve, Refused> {
    let mut ranges = Outlook { opening: breakdown, days: 1, ..Outlook::default() };
    let (mut sure, mut without_range) = (0_i64, 0);
    for cost in costs {
        let flow = UncertainFlow { low: cost.low, likely: cost.likely, high: cost.high, ..UncertainFlow::fixed(0, 0) };
        ranges.uncertain.push(flow);
    }
    ranges.check()?;
    ranges.opening = 0;
    ranges.uncertain.retain(|flow| flow.low < flow.high);
    for cost in costs.iter().filter(|cost| cost.low == cost.high) {
        sure += cost.likely;
        without_range += 1;
    }
    let mut runs = Runs::new(&ranges, seed, PATHS)?;
    runs.step(PATHS);
    let sums = runs.chances().end;
    let (middle, high) = (sums.percentile(50), sums.percentile(80));
    let from_ranges = high - middle;
    let share_percent = share_percent.clamp(Decimal::ZERO, Decimal::ONE_HUNDRED);
    // A share of an `i64`, which one holds.
    let from_share = Money::whole(sure).percent(share_percent).to_minor(0).unwrap_or(0);
    let total = from_ranges + from_share + breakdown;
    Ok(Reserve { middle, high, from_ranges, from_share, without_range, breakdown, total })
}

/// The reserve of a plan from the day asked on, beside its lowest day.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KeptApart {
    /// What the purchases that have a range come to in half of the courses at most.
    pub middle: Money,
    /// What they come to in eight of ten courses at most.
    pub high: Money,
    /// The one less the other.
    pub from_ranges: Money,
    /// What the purchases without a range come to.
    pub without_range: Money,
    /// The share that is kept of them, in percent.
    pub share_percent: Decimal,
    /// That share.
    pub from_share: Money,
    /// What is kept for a breakdown.
    pub breakdown: Money,
    /// All of it.
    pub total: Money,
    /// The lowest day, if all goes as is likely.
    pub lowest_on: Date,
    /// What is there on it above the floor; negative when it is below.
    pub above_floor: Money,
}

record!(KeptApart {
    middle,
    high,
    from_ranges,
    without_range,
    share_percent,
    from_share,
    breakdown,
    total,
    lowest_on,
    above_floor,
});

impl KeptApart {
    /// The reserve for what is still to be paid for the van and the kit.
    pub(super) fn new(plan: &Plan, ahead: &Ahead, seed: u32) -> Result<Self, NotAhead> {
        let purse = &plan.purse;
        let minor = |amount: Money| amount.to_minor(ahead.digits).ok_or(NotAhead::TooLarge);
        let money = |minor: i64| Money::from_minor(minor, ahead.digits);
        let mut costs = Vec::new();
        let mut without_range = Money::ZERO;
        for flow in ahead.flows.iter().filter(|flow| is_cost_of_the_build(flow)) {
            let (low, likely, high) = (minor(-flow.range.high)?, minor(-flow.amount)?, minor(-flow.range.low)?);
            costs.push(CostAhead { low, likely, high });
            if low == high {
                without_range += -flow.amount;
            }
        }
        let breakdown = purse.breakdown_fund.unwrap_or(Money::ZERO);
        let share_percent = purse.reserve_percent.unwrap_or(RESERVE_PERCENT);
        let reserve = reserve(&costs, share_percent, minor(breakdown)?, seed.into())?;
        let lowest = ahead.days.iter().min_by_key(|day| day.closing).ok_or(NotAhead::Over)?;
        Ok(Self {
            middle: money(reserve.middle),
            high: money(reserve.high),
            from_ranges: money(reserve.from_ranges),
            without_range,
            share_percent,
            from_share: money(reserve.from_share),
            breakdown,
            total: money(reserve.total),
            lowest_on: lowest.on,
            above_floor: lowest.closing - purse.floor,
        })
    }

    /// Whether the lowest day covers it.
    pub fn is_covered(&self) -> bool {
        self.above_floor >= self.total
    }

    /// How it came about.
    pub fn working(&self) -> Vec<Working> {
        let line = |formula, source, figures: &[(&'static str, Money)]| {
            let figures = figures.iter().map(|(name, amount)| (*name, Figure::Money(*amount))).collect();
            Working { formula, figures, source }
        };
        let mut lines = Vec::new();
        if self.high != Money::ZERO {
            let figures = [("high", self.high), ("middle", self.middle), ("from_ranges", self.from_ranges)];
            lines.push(line("working-reserve-ranges", Source::CommonPractice, &figures));
        }
        if self.without_range != Money::ZERO {
            let figures = [("without", self.without_range), ("from_share", self.from_share)];
            let mut share = line("working-reserve-share", Source::CommonPractice, &figures);
            let percent = crate::plan::decimal::to_float(self.share_percent);
            share.figures.push(("percent", Figure::of(percent, Quantity::Percent)));
            lines.push(share);
        }
        let figures = [
            ("from_ranges", self.from_ranges),
            ("from_share", self.from_share),
            ("breakdown", self.breakdown),
            ("total", self.total),
        ];
        lines.push(line("working-reserve", Source::Arithmetic, &figures));
        lines
    }
}

/// What there is to say of it.
impl Say for KeptApart {
    fn key(&self) -> &'static str {
        if self.is_covered() { "reserve-covered" } else { "reserve-not-covered" }
    }

    fn figures(&self) -> Figures {
        let (total, above) = (self.total, self.above_floor);
        let figures = vec![("total", total), ("above", above), ("missing", total - above)];
        let mut figures: Figures = figures.into_iter().map(|(name, amount)| (name, Figure::Money(amount))).collect();
        figures.push(("on", Figure::Date(self.lowest_on)));
        figures
    }

    fn next_step(&self) -> Option<&'static str> {
        (!self.is_covered()).then_some("reserve-next")
    }

    fn severity(&self) -> Severity {
        if self.is_covered() { Severity::Note } else { Severity::Close }
    }

    fn subject(&self) -> Option<Id> {
        None
    }
}

/// What is still to be paid for the van or the kit.
fn is_cost_of_the_build(flow: &Flow) -> bool {
    let is_of_it = matches!(flow.group, FlowGroup::Kit(_) | FlowGroup::Vehicle);
    is_of_it && flow.state == FlowState::Planned && flow.amount.is_negative()
}
