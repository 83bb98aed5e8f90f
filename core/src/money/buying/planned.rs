//! The order of buying of a plan: what is still to be bought for the kit, put into order by what the cash allows.
//!
//! What we assume; common practice, no source: the cash is that of the likely run; each thing can be bought from the day
//! asked on, and must be there on the day it is needed, without one on the day of leaving; a thing is paid for whole.

use jiff::civil::Date;
use serde_json::Value;

use super::{Missing, NotOrdered, Order, Priority, Proof, Purchase, Wallet, order_of_buying};
use crate::money::flows::{Flow, FlowGroup, FlowState};
use crate::money::outlook::{Ahead, NotAhead, ahead_of_dated};
use crate::order;
use crate::plan::record::{record, words};
use crate::plan::{Edit, Id, Money, Need, Path, Plain, Plan, add_days, date_text};
use crate::run::dated;
use crate::task::Task;

/// What to buy when.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BuyingPlan {
    /// Why there is no order. All that follows is empty then.
    pub refused: Option<NotAhead>,
    /// What is still to be bought: by the day it is to be paid, and then what cannot be.
    pub lines: Vec<BuyingLine>,
    /// The day of the last one that is paid.
    pub finished_on: Option<Date>,
    /// What would pay for all of them.
    pub lack: Option<Lack>,
    /// What is missing for the floor even if nothing is bought.
    pub floor_lack: Option<Lack>,
    /// How sure it is that there is no better order.
    pub proof: Proof,
}

record!(BuyingPlan { refused, lines, finished_on, lack, floor_lack, proof });

/// Something that is still to be bought.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BuyingLine {
    /// The item.
    pub item: Id,
    /// What it costs in all, as is likely.
    pub amount: Money,
    /// How much it matters.
    pub need: Need,
    /// The last day on which it may be bought.
    pub needed_on: Date,
    /// The day on which the plan pays it now.
    pub planned_on: Date,
    /// The day on which to buy it; without one it cannot be paid.
    pub on: Option<Date>,
    /// What would pay for it, beside all that is bought.
    pub lack: Option<Lack>,
}

record!(BuyingLine { item, amount, need, needed_on, planned_on, on, lack });

/// Money that would have to come.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Lack {
    /// How much.
    pub amount: Money,
    /// By when at the latest.
    pub by: Date,
    /// The sale that brings the least of those that would bring it, if it came by then: one that is less likely than not,
    /// or one of a later day.
    pub sale: Option<Id>,
    /// What that sale brings.
    pub sale_brings: Money,
    /// What would have to be put by each week until then, where there is a week.
    pub a_week: Option<Money>,
}

record!(Lack { amount, by, sale, sale_brings, a_week });

words!(Proof { Proven = "proven", FinishProven = "finish_proven", RuleOfThumb = "rule_of_thumb" });

/// The order of buying of a plan, as it stands on a day.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::money::buying::buying_plan;
/// use kerbstead_core::plan::demo_plan;
/// let order = buying_plan(&demo_plan(), date(2027, 3, 10));
/// assert_eq!(order.refused, None);
/// assert!(order.lines.iter().all(|line| line.on.is_none_or(|on| on <= line.needed_on)));
/// ```
pub fn buying_plan(plan: &Plan, as_of: Date) -> BuyingPlan {
    let plan = &dated(plan, as_of).plan;
    ahead_of_dated(plan, as_of)
        .and_then(|ahead| ordered(plan, &ahead))
        .unwrap_or_else(|refused| BuyingPlan { refused: Some(refused), ..BuyingPlan::default() })
}

impl BuyingPlan {
    /// The change that has the plan buy each thing on its day; nothing when it does so already.
    pub fn taking(&self) -> Option<Edit> {
        let mut edits = Vec::new();
        for (item, on) in self.moved() {
            edits.push(Edit::Set { path: Path::entry("kit", item).child("buy_on"), value: date_text(on).into() });
        }
        (!edits.is_empty()).then_some(Edit::All { edits })
    }

    /// How many things would be bought on another day than the plan has it.
    pub fn changes(&self) -> usize {
        self.moved().count()
    }

    fn moved(&self) -> impl Iterator<Item = (Id, Date)> {
        let moved = |line: &BuyingLine| Some((line.item, line.on.filter(|on| *on != line.planned_on)?));
        self.lines.iter().filter_map(moved)
    }
}

fn ordered(plan: &Plan, ahead: &Ahead) -> Result<BuyingPlan, NotAhead> {
    let open: Vec<&Flow> = ahead.flows.iter().filter(|flow| is_open_purchase(flow)).collect();
    if open.is_empty() {
        return Err(NotAhead::NothingToBuy);
    }
    let mut lines = Vec::new();
    let mut purchases = Vec::new();
    // By their ids and not by their days: of orders that are as good, the same is found once it was taken into the plan.
    for flow in order::by_key(&open, |flow| flow.source.into()) {
        let (line, purchase) = purchase(plan, ahead, flow)?;
        lines.push(line);
        purchases.push(purchase);
    }
    let wallet = Wallet { cash: cash_without(ahead, &open)?, floor: minor(ahead, plan.purse.floor)? };
    let Order { days, missing, missing_for_all, missing_for_floor, proof, .. } = order_of_buying(&wallet, &purchases)?;
    for (line, day) in lines.iter_mut().zip(days) {
        line.on = day.and_then(|day| date_of(ahead, day));
    }
    let lack = |missing: &Missing| lack(ahead, &open, missing);
    for missing in &missing {
        if let Some(line) = missing.purchase.and_then(|at| lines.get_mut(at)) {
            line.lack = lack(missing);
        }
    }
    let last = u64::MAX;
    let key = |line: &BuyingLine| line.on.map_or(last, |on| ahead.index_of(on).into());
    let lines = order::by_key(&lines, key);
    Ok(BuyingPlan {
        refused: None,
        finished_on: lines.iter().filter_map(|line| line.on).max(),
        lines,
        lack: missing_for_all.as_ref().and_then(lack),
        floor_lack: missing_for_floor.as_ref().and_then(lack),
        proof,
    })
}

/// Whether it is a purchase for the kit that nobody has made yet.
fn is_open_purchase(flow: &Flow) -> bool {
    matches!(flow.group, FlowGroup::Kit(_)) && flow.state == FlowState::Planned && flow.amount.is_negative()
}

fn purchase(plan: &Plan, ahead: &Ahead, flow: &Flow) -> Result<(BuyingLine, Purchase), NotAhead> {
    let item = plan.item(flow.source);
    let last = ahead.days.last().map_or(ahead.from, |day| day.on);
    // What is bought later than it is needed is wanted then.
    let needed_on = item.and_then(|item| item.needed_on.or(plan.calendar.leaves_on)).unwrap_or(last);
    let needed_on = if needed_on < ahead.from { flow.on } else { needed_on.min(last) };
    let need = item.map(|item| item.need).unwrap_or_default();
    let amount = -flow.amount;
    let line = BuyingLine { item: flow.source, amount, need, needed_on, planned_on: flow.on, on: None, lack: None };
    let priority = match need {
        Need::Must => Priority::Must,
        Need::Want => Priority::Should,
        Need::Experiment => Priority::Could,
    };
    let needed_by = ahead.index_of(needed_on);
    Ok((line, Purchase { amount: minor(ahead, amount)?, earliest: 0, needed_by, priority }))
}

/// Cash by day if none of them is bought.
fn cash_without(ahead: &Ahead, open: &[&Flow]) -> Result<Vec<i64>, NotAhead> {
    let mut back = Money::ZERO;
    let mut open = open.iter().peekable();
    let mut cash = Vec::with_capacity(ahead.days.len());
    for day in &ahead.days {
        while let Some(flow) = open.next_if(|flow| flow.on <= day.on) {
            back += -flow.amount;
        }
        cash.push(minor(ahead, day.closing + back)?);
    }
    Ok(cash)
}

fn lack(ahead: &Ahead, open: &[&Flow], missing: &Missing) -> Option<Lack> {
    let by = date_of(ahead, missing.by)?;
    let amount = Money::from_minor(missing.amount, ahead.digits);
    let until = date_of(ahead, missing.until)?;
    // A later sale, brought forward, fills the lack only as long as it was not there yet.
    let later = ahead.flows.iter().filter(|flow| flow.state == FlowState::Planned && flow.on > until);
    let is_there = |flow: &Flow| open.iter().all(|bought| bought.source != flow.source);
    let sales = later.chain(&ahead.unlikely).filter(|flow| flow.group == FlowGroup::Sales && flow.amount >= amount);
    // Nothing is sold before it is bought.
    let sales = sales.filter(|flow| is_there(flow));
    let sale = sales.min_by_key(|flow| flow.amount);
    let weeks = i64::from(missing.by / 7);
    Some(Lack {
        amount,
        by,
        sale: sale.map(|flow| flow.source),
        sale_brings: sale.map_or(Money::ZERO, |flow| flow.amount),
        a_week: (weeks > 0).then(|| Money::from_minor((missing.amount + weeks - 1) / weeks.max(1), ahead.digits)),
    })
}

fn date_of(ahead: &Ahead, day: u32) -> Option<Date> {
    add_days(ahead.from, i32::try_from(day).ok()?)
}

fn minor(ahead: &Ahead, amount: Money) -> Result<i64, NotAhead> {
    amount.to_minor(ahead.digits).ok_or(NotAhead::TooLarge)
}

impl From<NotOrdered> for NotAhead {
    fn from(refused: NotOrdered) -> Self {
        match refused {
            NotOrdered::Days => Self::Over,
            NotOrdered::TooMany => Self::TooMany,
            NotOrdered::Cash | NotOrdered::Amount(_) | NotOrdered::Day(_) => Self::TooLarge,
        }
    }
}

/// A [`BuyingPlan`] being worked out, in one step: that of twenty things takes some tens of milliseconds on a phone.
pub struct BuyingTask {
    plan: Plan,
    as_of: Date,
    order: BuyingPlan,
}

impl BuyingTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date) -> Self {
        Self { plan: plan.clone(), as_of, order: BuyingPlan::default() }
    }
}

impl Task for BuyingTask {
    fn step(&mut self) -> f64 {
        self.order = buying_plan(&self.plan, self.as_of);
        1.0
    }

    fn answer(&self) -> Value {
        self.order.to_plain()
    }
}
