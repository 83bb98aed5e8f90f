//! An average month on the road beside one at home, and what that makes of the money put in.

use jiff::civil::Date;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use super::constants::DAYS_PER_MONTH;
use super::debt::Debt;
use super::flows::{Flow, FlowGroup, beyond_allowances, fuel_for_100_km};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Cost, CostEvery, CostPhase, DataContract, Id, Money, Plan, Quantity, add_days, decimal};
use crate::run::Timeline;

/// A month at home against one on the road.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Month {
    /// Line by line: the costs in the order of the plan, then fuel, nights and loans.
    pub lines: Vec<MonthLine>,
    /// All that a month at home costs.
    pub home: Money,
    /// All that a month on the road costs.
    pub road: Money,
    /// What a month on the road costs less than one at home; negative when it costs more.
    pub saved: Money,
    /// Own money that goes into the van and the kit: purchases, less what loans pay of them.
    pub put_in: Money,
    /// Days on the road after which that has come back, if it ever does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_to_pay_back: Option<u32>,
    /// The day of that.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub paid_back_on: Option<Date>,
    /// What is saved over the whole route, less what was put in.
    pub saved_in_all: Money,
    /// The months on the road without income that this pays for, where it is more than nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub months_of_freedom: Option<f64>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

/// One line of the comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct MonthLine {
    /// What it is for.
    pub group: FlowGroup,
    /// The cost, loan or contract it comes from, the place to charge at or the stop for water; 0 for fuel and nights.
    pub source: Id,
    /// In a month at home.
    pub home: Money,
    /// In a month on the road.
    pub road: Money,
}

/// What a cost comes to in an average month in which so far is driven. What is paid once is in no month.
pub fn a_month(cost: &Cost, km: Decimal) -> Money {
    let amount = cost.amount.map_or(Money::ZERO, |amount| amount.likely());
    match cost.every {
        CostEvery::Once => Money::ZERO,
        CostEvery::Week => divided(amount.scaled(DAYS_PER_MONTH), Decimal::from(7)),
        CostEvery::Month => amount,
        CostEvery::Quarter => divided(amount, Decimal::from(3)),
        CostEvery::HalfYear => divided(amount, Decimal::from(6)),
        CostEvery::Year => divided(amount, Decimal::from(12)),
        CostEvery::HundredKm => amount.percent(km),
    }
}

/// Kilometres in an average month of the route.
pub fn km_a_month(timeline: &Timeline) -> Decimal {
    let km: Money = timeline.road().map(|day| Money::new(decimal::of_measure(day.drive_km))).sum();
    a_month_of(km, timeline.road().count()).decimal()
}

/// Fuel for so many kilometres.
pub fn fuel_a_month(plan: &Plan, km: Decimal) -> Money {
    fuel_for_100_km(&plan.vehicle).map_or(Money::ZERO, |price| price.percent(km))
}

/// The comparison; nothing without a route.
pub(super) fn month(plan: &Plan, timeline: &Timeline, flows: &[Flow], debts: &[Debt]) -> Option<Month> {
    let leaves_on = plan.calendar.leaves_on?;
    let days = timeline.road().count();
    if days == 0 {
        return None;
    }
    let lines = lines(plan, timeline, debts);
    let (home, road): (Money, Money) =
        (lines.iter().map(|line| line.home).sum(), lines.iter().map(|line| line.road).sum());
    let saved = home - road;
    let put_in = put_in(flows);
    let in_all = divided(saved.scaled(Decimal::from(days)), DAYS_PER_MONTH);
    let saved_in_all = (in_all - put_in).rounded(plan.minor_digits());
    let days_to_pay_back = days_to_pay_back(put_in, saved);
    let is_over = saved_in_all > Money::ZERO && road > Money::ZERO;
    let months_of_freedom = is_over.then(|| decimal::over(saved_in_all.decimal(), road.decimal())).flatten();
    let mut month = Month {
        lines,
        home,
        road,
        saved,
        put_in,
        days_to_pay_back,
        paid_back_on: days_to_pay_back.and_then(|days| add_days(leaves_on, i32::try_from(days).ok()?)),
        saved_in_all,
        months_of_freedom: months_of_freedom.map(decimal::to_float),
        working: Vec::new(),
    };
    month.working = working(&month, days);
    Some(month)
}

/// Line by line, what a month costs at home and on the road.
pub(super) fn lines(plan: &Plan, timeline: &Timeline, debts: &[Debt]) -> Vec<MonthLine> {
    let km = km_a_month(timeline);
    let digits = plan.minor_digits();
    let mut lines = Vec::new();
    let mut line = |group, source, home: Money, road: Money| {
        let (home, road) = (home.rounded(digits), road.rounded(digits));
        if home != Money::ZERO || road != Money::ZERO {
            lines.push(MonthLine { group, source, home, road });
        }
    };
    for cost in &plan.costs {
        let amount = a_month(cost, km);
        // Kilometres are those of the route.
        let is_at_home = cost.phase != CostPhase::Road && cost.every != CostEvery::HundredKm;
        let is_on_the_road = cost.phase != CostPhase::Home || cost.every == CostEvery::HundredKm;
        let if_so = |is_so: bool| if is_so { amount } else { Money::ZERO };
        line(FlowGroup::Costs, cost.id, if_so(is_at_home), if_so(is_on_the_road));
    }
    line(FlowGroup::Fuel, 0, Money::ZERO, fuel_a_month(plan, km));
    let prices = timeline.road().filter_map(|day| day.offer?.price_per_night);
    let nights: Money = prices.map(|price| price.likely()).sum();
    line(FlowGroup::Nights, 0, Money::ZERO, a_month_of(nights, timeline.road().count()));
    for place in plan.charging.iter().filter(|place| place.in_use) {
        let days = timeline.road().filter(|day| place.is_there(day.date, day.source)).count();
        let paid = place.price(place.hours()).scaled(Decimal::from(days));
        line(FlowGroup::Charging, place.id, Money::ZERO, a_month_of(paid, timeline.road().count()));
    }
    for (stop, from) in plan.water_stops_in_use() {
        let days = timeline.road().filter(|day| stop.is_there(day.date, day.source, from)).count();
        let paid = stop.stop_price.unwrap_or(Money::ZERO).scaled(Decimal::from(days));
        line(FlowGroup::WaterStops, stop.id, Money::ZERO, a_month_of(paid, timeline.road().count()));
    }
    let beyond = beyond_allowances(plan, timeline);
    for contract in plan.data_contracts.iter().filter(|contract| contract.in_use) {
        let beyond: Money = beyond.iter().filter(|(_, id, _)| *id == contract.id).map(|(.., amount)| *amount).sum();
        let a_month = data_a_month(contract) + a_month_of(beyond, timeline.road().count());
        line(FlowGroup::Data, contract.id, Money::ZERO, a_month);
    }
    for debt in debts {
        let payment = debt.payments.first().map_or(Money::ZERO, |first| first.payment);
        line(FlowGroup::Loans, debt.loan, Money::ZERO, payment);
    }
    lines
}

/// What an average month of a contract for data costs, without what is used beyond its allowance.
fn data_a_month(contract: &DataContract) -> Money {
    let price = contract.period_price.unwrap_or(Money::ZERO);
    match contract.period_days {
        Some(days) => divided(price.scaled(DAYS_PER_MONTH), Decimal::from(days.max(1))),
        None => price,
    }
}

/// What was and will be paid for the van and the kit, less the money of loans; never less than nothing.
fn put_in(flows: &[Flow]) -> Money {
    let is_put_in = |flow: &&Flow| match flow.group {
        FlowGroup::Kit(_) | FlowGroup::Vehicle => true,
        FlowGroup::Loans => flow.counts() && !flow.amount.is_negative(),
        _ => false,
    };
    let total: Money = flows.iter().filter(is_put_in).map(|flow| flow.amount).sum();
    if total.is_negative() { -total } else { Money::ZERO }
}

/// Whole days until so much is saved at so much a month: `put in x days of a month / saved a month`, rounded up.
fn days_to_pay_back(put_in: Money, saved: Money) -> Option<u32> {
    let days =
        decimal::over(put_in.scaled(DAYS_PER_MONTH).decimal(), saved.decimal()).filter(|_| saved > Money::ZERO)?;
    days.ceil().to_u32()
}

/// An amount of so many days as one of an average month.
fn a_month_of(amount: Money, days: usize) -> Money {
    divided(amount.scaled(DAYS_PER_MONTH), Decimal::from(days))
}

/// An amount by a number; nothing where there is nothing to divide by.
pub(crate) fn divided(amount: Money, by: Decimal) -> Money {
    decimal::over(amount.decimal(), by).map_or(Money::ZERO, Money::new)
}

fn working(month: &Month, days: usize) -> Vec<Working> {
    let line = |formula, figures| Working { formula, figures, source: Source::Arithmetic };
    let mut working = vec![line(
        "working-money-month",
        vec![
            ("home", Figure::Money(month.home)),
            ("road", Figure::Money(month.road)),
            ("saved", Figure::Money(month.saved)),
        ],
    )];
    working.extend(month.days_to_pay_back.map(|days| {
        line(
            "working-money-pay-back",
            vec![
                ("put_in", Figure::Money(month.put_in)),
                ("saved", Figure::Money(month.saved)),
                ("days", Figure::of(f64::from(days), Quantity::Days)),
            ],
        )
    }));
    working.extend(month.months_of_freedom.map(|months| {
        line(
            "working-money-freedom",
            vec![
                ("saved", Figure::Money(month.saved)),
                ("route", Figure::of(days as f64, Quantity::Days)),
                ("put_in", Figure::Money(month.put_in)),
                ("left", Figure::Money(month.saved_in_all)),
                ("road", Figure::Money(month.road)),
                ("months", Figure::of(months, Quantity::Months)),
            ],
        )
    }));
    working
}
