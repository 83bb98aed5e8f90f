//! The walk-away line: what would be left of it all, if somebody sold the van and went home.

use jiff::civil::Date;
use serde::Serialize;

use super::debt::{owed, van_resale};
use super::findings::Finding;
use super::flows::{Flow, FlowGroup, Input};
use super::step::CashDay;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Money, Obtain, Plan};
use crate::run::Timeline;

/// What would be left on each day for whoever went home on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct GoingHome {
    /// Deposit and first rent of a room.
    pub room: Money,
    /// Day by day from the day asked on.
    pub days: Vec<HomeDay>,
    /// The last day on which it is still affordable, up to the first on which it is not. None when that is today; the
    /// last day of the plan when there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub last_on: Option<Date>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

/// One day: what there is, what is owed, what is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct HomeDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Cash in the evening.
    pub cash: Money,
    /// What the van would bring.
    pub van: Money,
    /// What those things of the kit would bring whose sale is planned for later.
    pub kit: Money,
    /// What would settle the loans.
    pub owed: Money,
    /// What is left of it after the deposit and the first rent of a room.
    pub left: Money,
}

/// The walk-away line; nothing while no room has a price.
pub(super) fn going_home(plan: &Plan, timeline: &Timeline, ahead: &[CashDay], input: &Input) -> Option<GoingHome> {
    let purse = &plan.purse;
    if purse.room_deposit.is_none() && purse.room_rent.is_none() || ahead.is_empty() {
        return None;
    }
    let room = purse.room_deposit.unwrap_or(Money::ZERO) + purse.room_rent.unwrap_or(Money::ZERO);
    let starts_on = timeline.starts_on();
    let later_sales = later_sales(plan, &input.flows);
    let day = |cash: &CashDay| {
        let on = cash.on;
        let van = van_resale(plan, starts_on, on).filter(|_| is_van_there(plan, on)).unwrap_or(Money::ZERO);
        let is_there = |sale: &&(Date, &Flow)| sale.0 <= on && sale.1.on > on;
        let kit = later_sales.iter().filter(is_there).map(|sale| sale.1.amount).sum();
        let owed = owed(&input.debts, on);
        HomeDay { on, cash: cash.closing, van, kit, owed, left: cash.closing + van + kit - owed - room }
    };
    let days: Vec<HomeDay> = ahead.iter().map(day).collect();
    let gone = days.iter().position(|day| day.left.is_negative()).unwrap_or(days.len());
    let last = gone.checked_sub(1).and_then(|at| days.get(at)).copied();
    let working = last.or(days.first().copied()).map(|day| working(day, room)).into_iter().collect();
    Some(GoingHome { room, days, last_on: last.map(|day| day.on), working })
}

impl GoingHome {
    /// What there is to say when it does not stay affordable to the end.
    pub(super) fn finding(&self) -> Option<Finding> {
        let first_not = self.days.iter().find(|day| day.left.is_negative())?;
        let missing = -first_not.left;
        Some(match self.last_on {
            Some(last_on) => Finding::HomeUntil { last_on, missing },
            None => Finding::NoWayHome { missing },
        })
    }
}

/// Sales of things of the kit that are still to come, each with the day from which the thing is there.
fn later_sales<'a>(plan: &Plan, flows: &'a [Flow]) -> Vec<(Date, &'a Flow)> {
    let is_of_kit = |flow: &&Flow| flow.group == FlowGroup::Sales && flow.counts();
    let there_from = |sale: &'a Flow| {
        let item = plan.item(sale.source)?;
        let is_payment = |flow: &&Flow| {
            flow.source == item.id && matches!(flow.group, FlowGroup::Kit(_)) && flow.amount.is_negative()
        };
        let paid_on = flows.iter().find(is_payment).map(|flow| flow.on);
        let is_own = item.obtain != Obtain::LeftOut && item.obtain != Obtain::Borrowed;
        is_own.then_some((paid_on.unwrap_or(Date::MIN), sale))
    };
    flows.iter().filter(is_of_kit).filter_map(there_from).collect()
}

/// Whether the van is there to be sold.
fn is_van_there(plan: &Plan, on: Date) -> bool {
    let purchase = &plan.purchase;
    let paid_on = purchase.paid.and_then(|paid| paid.on).or(purchase.pay_on).or(plan.calendar.leaves_on);
    let is_off = purchase.paid.is_some_and(|paid| !paid.happened);
    purchase.agreed_price.is_none() || !is_off && paid_on.is_some_and(|paid_on| paid_on <= on)
}

fn working(day: HomeDay, room: Money) -> Working {
    let figures = vec![
        ("on", Figure::Date(day.on)),
        ("cash", Figure::Money(day.cash)),
        ("van", Figure::Money(day.van)),
        ("kit", Figure::Money(day.kit)),
        ("owed", Figure::Money(day.owed)),
        ("room", Figure::Money(room)),
        ("left", Figure::Money(day.left)),
    ];
    Working { formula: "working-money-going-home", figures, source: Source::Arithmetic }
}
