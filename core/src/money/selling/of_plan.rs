//! The plan's belongings as things to sell: the chance of each at its price, and prices that bring what is wanted.

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde_json::Value;

use super::drops::sales;
use super::{Demand, SalesPlan, Stage, Thing, Wish, plan_sales};
use crate::explain::{Figure, Source, Working};
use crate::money::Report;
use crate::money::chance::MOST_MINOR;
use crate::money::constants::{DAYS_PER_PRICE, HALF_SOLD_DAYS, LOWEST_PERCENT, STEEPNESS, WANTED_PERCENT};
use crate::money::flows::{Flow, FlowGroup, FlowState};
use crate::money::sales::{open_sales, sold_on};
use crate::plan::{Belonging, Edit, Estimate, Id, Money, Path, Plain, Plan, Quantity, add_days, days_between, decimal};
use crate::run::MOST_DAYS;

/// The most looks at a price that a schedule has; over more weeks it is looked at less often.
const MOST_LOOKS: u32 = super::drops::MOST_LOOKS;

/// A belonging that can still be sold.
#[derive(Clone, Debug, PartialEq)]
pub struct Offered {
    /// The belonging.
    pub id: Id,
    /// What is asked for it.
    pub asking: Money,
    /// The day by which it is to be sold.
    pub on: Date,
    /// The chance, in percent, that it is sold by then at that price.
    pub percent: f64,
    /// How it came about.
    pub working: Working,
}

/// Prices that fall until the sum is there.
#[derive(Clone, Debug, PartialEq)]
pub struct Schedule {
    /// The day from which on things are offered: the day asked or the first of the plan.
    pub from: Date,
    /// The day by which the money must be there.
    pub on: Date,
    /// The sum that is wanted.
    pub sum: Money,
    /// Whether the sum is what cash needs, and not stated.
    pub is_needed: bool,
    /// The chance that is wanted, in percent.
    pub wanted_percent: f64,
    /// The chance, in percent, with which these prices bring it.
    pub percent: f64,
    /// What they bring on average.
    pub expected: Money,
    /// The last day on which all can be offered and still bring it with the chance; none when even the first is too late.
    pub list_by: Option<Date>,
    /// The prices of each thing, in the order of the plan.
    pub prices: Vec<Prices>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

/// What is asked for one thing, and from when on.
#[derive(Clone, Debug, PartialEq)]
pub struct Prices {
    /// The belonging.
    pub id: Id,
    /// Each price with its first day; each is lower than the one before it.
    pub asked: Vec<(Date, Money)>,
    /// What it brings on average if it is sold, in whole units of the currency.
    pub likely: Money,
    /// The chance, in percent, that it is sold by the last day.
    pub percent: f64,
}

/// Why there are no prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSchedule {
    /// Nothing is left to be sold that has a price.
    NothingToSell,
    /// Neither the day nor a day of leaving is known.
    NoDay,
    /// The day is not after the first on which things can be offered, or more than [`MOST_DAYS`] after it.
    DayOut,
    /// No sum is stated, and cash needs none.
    NoSum,
    /// There are more than [`MOST_THINGS`](super::MOST_THINGS) things.
    TooMany,
}

/// Each belonging that can still be sold, with its chance at its price by its day; those without a price, without a
/// day, and whose day has passed are left out.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::money::selling::offered;
/// use kerbstead_core::plan::{Belonging, Money, Plan};
/// let sofa = Belonging {
///     id: 1, price: Some(Money::whole(60).into()), on: Some(date(2027, 4, 15)), half_sold_days: Some(7.0),
///     ..Belonging::default()
/// };
/// let plan = Plan { belongings: vec![sofa], ..Plan::default() };
/// // Two times seven days: half, and half of the rest.
/// assert!((offered(&plan, date(2027, 4, 1))[0].percent - 75.0).abs() < 1e-9);
/// ```
pub fn offered(plan: &Plan, as_of: Date) -> Vec<Offered> {
    open_sales(plan, as_of).filter_map(|belonging| offer(plan, as_of, belonging)).collect()
}

/// The one of them that is this belonging.
pub fn offered_one(plan: &Plan, as_of: Date, id: Id) -> Option<Offered> {
    open_sales(plan, as_of).find(|belonging| belonging.id == id).and_then(|belonging| offer(plan, as_of, belonging))
}

fn offer(plan: &Plan, as_of: Date, belonging: &Belonging) -> Option<Offered> {
    let on = sold_on(plan, belonging)?;
    let asking = asking(belonging)?;
    let minor = minor(asking, plan);
    let demand = demand_of(plan, belonging, minor);
    let since = belonging.listed_on.map_or(first_day(plan, as_of), |listed| listed.max(first_day(plan, as_of)));
    let days = days_between(since, on).max(0);
    let percent = 100.0 * demand.chance_within(minor, f64::from(days));
    let figures = vec![
        ("half", Figure::of(demand.half_sold_days, Quantity::Days)),
        ("usual", Figure::Money(Money::from_minor(demand.usual_price, plan.minor_digits()))),
        ("asking", Figure::Money(asking)),
        ("steepness", Figure::of(STEEPNESS, Quantity::Count)),
        ("days", Figure::of(f64::from(days), Quantity::Days)),
        ("percent", Figure::of(percent, Quantity::Percent)),
    ];
    let working = Working { formula: "working-selling-chance", figures, source: Source::CommonPractice };
    Some(Offered { id: belonging.id, asking, on, percent, working })
}

/// The prices that bring the sum that is wanted, or come nearest. It takes milliseconds with many things: ask for it
/// when it is to be seen.
///
/// # Errors
/// When something is missing or out of bounds.
pub fn schedule(plan: &Plan, as_of: Date, report: &Report) -> Result<Schedule, NoSchedule> {
    let wish = &plan.selling;
    let from = first_day(plan, as_of);
    let on = wish.wanted_on.or(plan.calendar.leaves_on).ok_or(NoSchedule::NoDay)?;
    let days = u32::try_from(days_between(from, on)).unwrap_or(0);
    if days == 0 || days > MOST_DAYS {
        return Err(NoSchedule::DayOut);
    }
    let (ids, things): (Vec<Id>, Vec<Thing>) =
        open_sales(plan, as_of).filter_map(|belonging| Some((belonging.id, thing(plan, belonging)?))).unzip();
    if things.is_empty() {
        return Err(NoSchedule::NothingToSell);
    }
    let needed = || needed_of_sales(plan, report, as_of, on);
    let sum = wish.wanted_sum.or_else(needed).filter(|sum| *sum > Money::ZERO).ok_or(NoSchedule::NoSum)?;
    let digits = plan.minor_digits();
    let wanted = wish.wanted_percent.unwrap_or(Decimal::from(WANTED_PERCENT));
    let asked = Wish {
        sum: minor(sum, plan),
        chance: decimal::to_float(wanted) / 100.0,
        days,
        days_per_price: DAYS_PER_PRICE.max(days.div_ceil(MOST_LOOKS)),
        price_step: 10_i64.pow(digits.min(9)),
    };
    // All else that can be wrong was looked at before.
    let found = plan_sales(&things, &asked).map_err(|_| NoSchedule::TooMany)?;
    let day = |day: u32| add_days(from, i32::try_from(day).unwrap_or(0)).unwrap_or(from);
    let prices = |(id, stages): (Id, &Vec<Stage>)| prices(id, stages, &day, digits);
    let mut schedule = Schedule {
        from,
        on,
        sum,
        is_needed: wish.wanted_sum.is_none(),
        wanted_percent: decimal::to_float(wanted),
        percent: found.chance * 100.0,
        expected: Money::from_minor(found.expected, digits),
        list_by: found.list_by.map(day),
        prices: ids.into_iter().zip(&found.stages).map(prices).collect(),
        working: Vec::new(),
    };
    schedule.working = working(&schedule, &found, asked.days_per_price);
    Ok(schedule)
}

/// Takes the prices of a thing into the plan: what it is expected to bring, when, with which chance, and since when it
/// is offered. What such things usually bring stays what it was.
pub fn taking(plan: &Plan, schedule: &Schedule, id: Id) -> Option<Edit> {
    let belonging = plan.belongings.iter().find(|belonging| belonging.id == id)?;
    let prices = schedule.prices.iter().find(|prices| prices.id == id)?;
    let (first, last) = (prices.asked.first()?.1, prices.asked.last()?.1);
    let price = if first == last {
        Estimate::Plain(first)
    } else {
        Estimate::Range { low: last, likely: prices.likely, high: first }
    };
    let path = Path::entry("belongings", id);
    let set = |name: &str, value: Value| Edit::set(path.child(name), value);
    let mut edits = vec![
        set("price", price.to_plain()),
        set("on", schedule.on.to_plain()),
        set("chance_percent", Decimal::from(whole(prices.percent)).to_plain()),
    ];
    if belonging.listed_on.is_none_or(|listed| listed > schedule.from) {
        edits.push(set("listed_on", schedule.from.to_plain()));
    }
    if belonging.usual_price.is_none() {
        edits.push(set("usual_price", asking(belonging)?.to_plain()));
    }
    Some(Edit::All { edits })
}

/// The first day on which something can be offered.
fn first_day(plan: &Plan, as_of: Date) -> Date {
    plan.calendar.starts_on.map_or(as_of, |starts_on| starts_on.max(as_of))
}

fn asking(belonging: &Belonging) -> Option<Money> {
    belonging.price.map(|price| price.likely()).filter(|price| *price > Money::ZERO)
}

/// An amount within what is planned with, from 1 on.
fn minor(amount: Money, plan: &Plan) -> i64 {
    amount.to_minor(plan.minor_digits()).unwrap_or(MOST_MINOR).clamp(1, MOST_MINOR)
}

/// How a thing at home finds its buyer, if it is to bring so much, in minor units.
pub(crate) fn demand_of(plan: &Plan, belonging: &Belonging, asking: i64) -> Demand {
    Demand {
        usual_price: belonging.usual_price.map_or(asking, |usual| minor(usual, plan)),
        half_sold_days: belonging.half_sold_days.unwrap_or(HALF_SOLD_DAYS),
        steepness: STEEPNESS,
    }
}

fn thing(plan: &Plan, belonging: &Belonging) -> Option<Thing> {
    let demand = demand_of(plan, belonging, minor(asking(belonging)?, plan));
    let cost = belonging.selling_cost.map_or(0, |cost| cost.to_minor(plan.minor_digits()).unwrap_or(MOST_MINOR));
    let cost = cost.clamp(0, MOST_MINOR);
    let usual = Money::from_minor(demand.usual_price, plan.minor_digits());
    let lowest = belonging.lowest.unwrap_or_else(|| usual.percent(LOWEST_PERCENT.into()));
    // Nobody sells for less than it costs to sell.
    Some(Thing { demand, lowest: minor(lowest, plan).max(cost), cost })
}

/// What the open sales must bring by a day so that cash stays above the floor up to it; nothing if it does without them.
fn needed_of_sales(plan: &Plan, report: &Report, as_of: Date, on: Date) -> Option<Money> {
    plan.purse.opening_cash?;
    let open: Vec<Id> = open_sales(plan, as_of).map(|belonging| belonging.id).collect();
    let is_open_sale = |flow: &&Flow| {
        flow.group == FlowGroup::Sales && flow.state == FlowState::Planned && open.contains(&flow.source)
    };
    let sales: Vec<&Flow> = report.flows.iter().filter(is_open_sale).collect();
    let days = report.days.iter().filter(|day| day.on >= as_of && day.on <= on);
    let needed = days.map(|day| {
        let brought: Money = sales.iter().filter(|flow| flow.on <= day.on).map(|flow| flow.amount).sum();
        plan.purse.floor - (day.closing - brought)
    });
    needed.max()
}

fn prices(id: Id, stages: &[Stage], day: &dyn Fn(u32) -> Date, digits: u32) -> Prices {
    let mut asked: Vec<(Date, Money)> = Vec::new();
    for stage in stages {
        let asking = Money::from_minor(stage.asking, digits);
        if asked.last().is_none_or(|(_, before)| *before != asking) {
            asked.push((day(stage.from_day), asking));
        }
    }
    let percent = stages.last().map_or(0.0, |stage| stage.sold_by_end * 100.0);
    Prices { id, likely: likely(stages, digits), asked, percent }
}

/// A chance in percent as it is told: without decimals that nobody knows, and never as sure, or as hopeless, while it is
/// neither.
///
/// ```
/// use kerbstead_core::{explain::Figure, money::selling::told_chance, plan::Quantity};
/// assert_eq!(told_chance(99.97), Figure::of(99.0, Quantity::Percent));
/// assert_eq!(told_chance(0.2), Figure::of(1.0, Quantity::Percent));
/// assert_eq!(told_chance(74.6), Figure::of(75.0, Quantity::Percent));
/// ```
pub fn told_chance(percent: f64) -> Figure {
    let is_open = percent > 0.0 && percent < 100.0;
    let whole = libm::round(percent);
    Figure::of(if is_open { whole.clamp(1.0, 99.0) } else { whole }, Quantity::Percent)
}

/// A number without what is behind its point.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a cast keeps to the range
fn whole(number: f64) -> u32 {
    number as u32
}

/// What it brings on average if it is sold: each price by its chance, in whole millionths.
fn likely(stages: &[Stage], digits: u32) -> Money {
    let (mut sum, mut weight) = (Money::ZERO, Money::ZERO);
    for (asking, chance) in sales(stages) {
        let chance = Decimal::from(whole(chance * 1e6 + 0.5));
        sum += Money::from_minor(asking, digits).scaled(chance);
        weight += Money::new(chance);
    }
    let first = stages.first().map_or(0, |stage| stage.asking);
    let last = stages.last().map_or(0, |stage| stage.asking);
    let (first, last) = (Money::from_minor(first, digits), Money::from_minor(last, digits));
    decimal::over(sum.decimal(), weight.decimal()).map_or(last, |mean| Money::new(mean).rounded(0).clamp(last, first))
}

fn working(schedule: &Schedule, found: &SalesPlan, days_per_price: u32) -> Vec<Working> {
    let most: Money = schedule.prices.iter().filter_map(|prices| prices.asked.first()).map(|(_, first)| *first).sum();
    let line = |formula, figures| Working { formula, figures, source: Source::CommonPractice };
    vec![
        line(
            "working-selling-sum",
            vec![
                ("count", Figure::count(found.stages.len())),
                ("most", Figure::Money(most)),
                ("expected", Figure::Money(schedule.expected)),
                ("sum", Figure::Money(schedule.sum)),
                ("percent", Figure::of(schedule.percent, Quantity::Percent)),
            ],
        ),
        line(
            "working-selling-prices",
            vec![
                ("days", Figure::of(f64::from(days_per_price), Quantity::Days)),
                ("lowest", Figure::of(f64::from(LOWEST_PERCENT), Quantity::Percent)),
            ],
        ),
    ]
}
