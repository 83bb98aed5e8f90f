//! The plan with the days that its work gives to purchases, sales and hires.
//!
//! A thing is needed when the first task begins that needs it, a tool at home can be sold after its last use, and a hired
//! tool costs on the days it is used. The balances are run along the plan as it so becomes, which is why this stands here
//! and not in one of them.

use std::borrow::Cow;

use jiff::civil::Date;

use crate::days::{DayCosts, FromMoney, Work, is_open};
use crate::money::constants::DAYS_PER_MONTH;
use crate::money::selling::months_stored;
use crate::money::{self, Flow, FlowGroup, FlowState, are_paid};
use crate::plan::{
    Belonging, BelongingEnd, Cost, CostEvery, CostPhase, Estimate, Id, Item, Money, Plan, ToolSource, add_days, decimal,
};
use rust_decimal::Decimal;

/// A plan with the days that follow from its work.
#[derive(Clone, Debug, PartialEq)]
pub struct Dated<'a> {
    /// The plan.
    pub plan: Cow<'a, Plan>,
    /// The work, placed in time.
    pub work: Work,
}

/// Places the work of a plan and gives its purchases, sales and hires the days that follow from it.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Calendar, Helper, Item, Plan, Task, TaskNeed};
/// use kerbstead_core::run::dated;
/// let plan = Plan {
///     calendar: Calendar { leaves_on: Some(date(2027, 4, 20)), ..Calendar::default() },
///     kit: vec![Item { id: 1, ..Item::default() }],
///     tasks: vec![Task { id: 2, hours: Some(3.0.into()), ..Task::default() }],
///     task_needs: vec![TaskNeed { id: 3, task: Some(2), thing: Some(1), ..TaskNeed::default() }],
///     helpers: vec![Helper { id: 4, saturday_hours: Some(6.0), ..Helper::default() }],
///     ..Plan::default()
/// };
/// let dated = dated(&plan, date(2027, 4, 5));
/// assert_eq!(dated.plan.kit[0].needed_on, Some(date(2027, 4, 10))); // the first Saturday
/// ```
pub fn dated(plan: &Plan, as_of: Date) -> Dated<'_> {
    dated_with(plan, as_of, None)
}

/// The same with the work as it was placed before, where nothing that places it is different.
pub(crate) fn dated_with<'a>(plan: &'a Plan, as_of: Date, known: Option<&Work>) -> Dated<'a> {
    let paid = are_paid(plan);
    let work = known.cloned().unwrap_or_else(|| Work::new(plan, as_of, &paid));
    let is_moved = !plan.tasks.is_empty() || plan.belongings.iter().any(|thing| thing.ends_as() != BelongingEnd::Sold);
    if !is_moved {
        return Dated { plan: Cow::Borrowed(plan), work };
    }
    let mut moved = plan.clone();
    let uses = Uses::new(plan, &work);
    for (item, _) in moved.kit.iter_mut().zip(paid).filter(|(item, is_paid)| item.obtain.is_paid() && !is_paid) {
        if let Some(day) = uses.first(item.id) {
            need_by(item, day, plan.calendar.leaves_on, as_of);
        }
    }
    for item in &mut moved.kit {
        if let (Some(sale), Some(day)) = (item.sale.as_mut(), uses.last(item.id)) {
            sale.on = Some(sale.on.or(plan.calendar.leaves_on).map_or(day, |on| on.max(day)));
        }
    }
    for thing in &mut moved.belongings {
        if let Some(day) = uses.last(thing.id) {
            thing.on = Some(thing.on.or(plan.calendar.leaves_on).map_or(day, |on| on.max(day)));
        }
    }
    let hires = plan.tools.iter().filter(|tool| tool.tool_source == ToolSource::Hired);
    moved.costs.extend(hires.filter_map(|tool| {
        let days = uses.days_of(tool.id);
        let amount = tool.price_per_day?.scaled(Decimal::from(days.len()));
        Some(once(tool.id, &tool.name, amount, *days.first()?))
    }));
    let leaves_on = plan.calendar.leaves_on;
    moved.costs.extend(plan.belongings.iter().filter_map(|thing| fee(thing, leaves_on)));
    moved.costs.extend(plan.belongings.iter().filter_map(storage));
    Dated { plan: Cow::Owned(moved), work }
}

/// What the days need to know of the money.
pub fn for_days(plan: &Plan, as_of: Date, money: &money::Report) -> FromMoney {
    let short_on = money.standing.first_short.map(|moment| moment.on);
    let is_unpaid = |flow: &&Flow| {
        Some(flow.on) == short_on
            && flow.state == FlowState::Planned
            && flow.amount.is_negative()
            && matches!(flow.group, FlowGroup::Kit(_))
    };
    let a_month = money.month.as_ref();
    FromMoney {
        short_on,
        unpaid: money.flows.iter().filter(is_unpaid).map(|flow| flow.source).collect(),
        a_day: DayCosts {
            home: a_month.map_or(Money::ZERO, |month| by_the_day(month.home)),
            road: a_month.map_or(Money::ZERO, |month| by_the_day(month.road)),
        },
        months_stored: months_stored(plan, as_of),
    }
}

/// What a month costs, by the day.
fn by_the_day(monthly: Money) -> Money {
    Money::new(decimal::over(monthly.decimal(), DAYS_PER_MONTH).unwrap_or_default())
}

/// A thing is there when it is first needed, and so is bought by then, less the days of its delivery. For one that is
/// bought on a day that was chosen, its task waits instead.
fn need_by(item: &mut Item, day: Date, leaves_on: Option<Date>, as_of: Date) {
    if item.buy_on.is_some() {
        return;
    }
    let needed_on = item.needed_on.or(leaves_on).map_or(day, |on| on.min(day));
    item.needed_on = Some(needed_on);
    if let Some(days) = item.delivery_days.filter(|days| *days > 0) {
        let bought_on = i32::try_from(days).ok().and_then(|days| add_days(needed_on, -days));
        item.buy_on = Some(bought_on.map_or(as_of, |on| on.max(as_of)));
    }
}

fn once(id: Id, name: &str, amount: Money, on: Date) -> Cost {
    Cost {
        id,
        name: name.to_owned(),
        amount: Some(Estimate::Plain(amount)),
        every: CostEvery::Once,
        phase: CostPhase::Always,
        first_on: Some(on),
        ..Cost::default()
    }
}

/// What bringing a thing away or throwing it away costs.
fn fee(thing: &Belonging, leaves_on: Option<Date>) -> Option<Cost> {
    let amount = thing.end_fee.filter(|_| !matches!(thing.ends_as(), BelongingEnd::Sold | BelongingEnd::Open))?;
    Some(once(thing.id, &thing.name, amount, thing.ended_on.or(thing.on).or(leaves_on)?))
}

/// The rent of its storage.
fn storage(thing: &Belonging) -> Option<Cost> {
    let monthly =
        thing.kept.and_then(|kept| kept.storage_monthly).filter(|_| thing.ends_as() == BelongingEnd::Stored)?;
    let amount = Some(Estimate::Plain(monthly));
    Some(Cost { id: thing.id, name: thing.name.clone(), amount, phase: CostPhase::Road, ..Cost::default() })
}

/// When the things, tools and belongings of a plan are used.
struct Uses {
    /// What is used, and on which day.
    uses: Vec<(Id, Date)>,
}

impl Uses {
    fn new(plan: &Plan, work: &Work) -> Self {
        let mut uses = Vec::new();
        for activity in 0..work.input.tasks.len() {
            let (Some(task), Some((start, end))) = (work.task_of(plan, activity), work.span_of(activity)) else {
                continue;
            };
            // What takes no time uses its things on the day on which it is done.
            let slots = std::iter::once(start).chain(work.input.worked(activity, start + 1, end));
            let mut days: Vec<Date> = slots.map(|slot| work.input.day_of(slot)).collect();
            days.dedup();
            for need in plan.task_needs.iter().filter(|need| need.task == Some(task.id)) {
                for id in [need.tool, need.thing, need.at_home].into_iter().flatten() {
                    uses.extend(days.iter().map(|day| (id, *day)));
                }
            }
        }
        for task in plan.tasks.iter().filter(|task| !is_open(task)) {
            let of_task = plan.task_needs.iter().filter(|need| need.task == Some(task.id));
            let tools = of_task.filter_map(|need| need.tool);
            uses.extend(tools.zip(std::iter::repeat(task.done_on)).filter_map(|(tool, on)| Some((tool, on?))));
        }
        Self { uses }
    }

    fn of(&self, id: Id) -> impl Iterator<Item = Date> {
        self.uses.iter().filter(move |(used, _)| *used == id).map(|(_, day)| *day)
    }

    fn first(&self, id: Id) -> Option<Date> {
        self.of(id).min()
    }

    fn last(&self, id: Id) -> Option<Date> {
        self.of(id).max()
    }

    /// The days on which it is used, in order, each once.
    fn days_of(&self, id: Id) -> Vec<Date> {
        let mut days: Vec<Date> = self.of(id).collect();
        days.sort_unstable();
        days.dedup();
        days
    }
}
