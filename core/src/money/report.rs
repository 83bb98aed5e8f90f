//! What the money comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::TIGHT_DAYS;
use super::debt::{Debt, LoanReport, OwedDay, owed_by_month};
use super::findings::Finding;
use super::flows::{Flow, FlowGroup, FlowState};
use super::going_home::{GoingHome, going_home};
use super::month::{Month, month};
use super::step::{CashDay, Course};
use super::unearned::pay_at_risk;
use crate::assessment::{Caution, Margin, Moment, Say, Severity, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{CostEvery, CostPhase, Money, Need, Night, Path, Plan, Quantity, decimal};
use crate::run::{Timeline, missing_road};

/// The money balance of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// Cash by day.
    pub days: Vec<CashDay>,
    /// Every flow, by date.
    pub flows: Vec<Flow>,
    /// Totals by group, in the order of the groups.
    pub groups: Vec<GroupTotal>,
    /// The lowest day from the day asked on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lowest: Option<CashDay>,
    /// What is still to be paid for the kit from the day asked on.
    pub still_to_pay: Money,
    /// What each loan comes to, in the order of the plan.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub loans: Vec<LoanReport>,
    /// What is owed beside what the van would bring, month by month.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub owed: Vec<OwedDay>,
    /// How much more is needed by when, step by step, to stay above the floor.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub needed: Vec<Needed>,
    /// What would be left for whoever went home, where a room has a price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub going_home: Option<GoingHome>,
    /// A month at home against one on the road, where there is a route.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub month: Option<Month>,
    /// What an average day on the road costs: running costs, fuel and paid nights over the days of the route.
    pub road_cost_per_day: Money,
}

/// A group's total over the whole plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct GroupTotal {
    /// The group.
    pub group: FlowGroup,
    /// All that was foreseen or happened; negative for what goes out.
    pub foreseen: Money,
    /// Of it, what happened.
    pub settled: Money,
    /// Of it, what is still to come.
    pub open: Money,
}

/// How much more must have come in by a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Needed {
    /// By that evening.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub by: Date,
    /// So much in all, since the day asked.
    pub in_all: Money,
}

/// Judges the course of the cash from `as_of` on. `unearned` is pay that the work on the road cannot bring, by day: incomes are
/// taken as they are planned, and what is missing of them by then is told apart.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, course: Course, unearned: &[(Date, Money)]) -> Report {
    let Course { days, input, .. } = course;
    let road_cost_per_day = road_cost_per_day(plan, timeline, &input.flows);
    let groups = group_totals(&input.flows);
    let ahead = days.get(timeline.index_from(as_of)..).unwrap_or(&[]);
    let lowest = ahead.iter().copied().min_by_key(|day| day.closing);
    let kit_left = |flow: &&Flow| {
        matches!(flow.group, FlowGroup::Kit(_)) && flow.state != FlowState::Confirmed && flow.amount.is_negative()
    };
    let still_to_pay = input.flows.iter().filter(kit_left).map(|flow| -flow.amount).sum();
    let mut standing = match lowest {
        Some(lowest) if is_cash_known(plan, as_of) => judge(plan, ahead, lowest, road_cost_per_day),
        Some(_) => Standing::unknown(vec![Path::section("purse").child("opening_cash")]),
        None => Standing::unknown(missing_road(plan, as_of, timeline)),
    };
    let is_known = standing.verdict != Verdict::Unknown;
    if let Some(finding) = pay_at_risk(plan, as_of, ahead, &input.flows, unearned).filter(|_| is_known) {
        if finding.severity() == Severity::Close {
            standing.verdict = standing.verdict.min(Verdict::Tight);
        }
        standing.findings.push(finding);
    }
    standing.findings.extend(largest_before(plan, &standing, &input.flows));
    standing.findings.extend(unanswered(&input.flows));
    standing.findings.extend(without_price(plan, &input.unpriced));
    let loans = input.debts.iter().map(Debt::report).collect();
    let owed = owed_by_month(plan, timeline, &input.debts);
    standing.findings.extend(owes_more(&owed, as_of));
    standing.findings.extend(overlap(plan, &input.flows));
    standing.findings.extend(unlikely(&input.unlikely));
    let going_home = going_home(plan, timeline, ahead, &input).filter(|_| is_known);
    standing.findings.extend(going_home.as_ref().and_then(GoingHome::finding));
    let needed = if is_known { needed(ahead, plan.purse.floor) } else { Vec::new() };
    let month = month(plan, timeline, &input.flows, &input.debts);
    if timeline.road().any(|day| day.offer.is_none_or(|offer| offer.night != Night::Allowed)) {
        standing.cautions.push(Caution::NightsNotCleared);
    }
    Report {
        standing,
        days,
        flows: input.flows,
        groups,
        lowest,
        still_to_pay,
        loans,
        owed,
        needed,
        going_home,
        month,
        road_cost_per_day,
    }
}

pub(super) fn is_cash_known(plan: &Plan, as_of: Date) -> bool {
    let was_counted = |on: Option<Date>| on.is_some_and(|on| on <= as_of);
    plan.purse.opening_cash.is_some()
        || plan.readings.iter().any(|reading| reading.cash.is_some() && was_counted(reading.on))
}

fn judge(plan: &Plan, ahead: &[CashDay], lowest: CashDay, road_cost_per_day: Money) -> Standing<Finding> {
    let floor = plan.purse.floor;
    let margin = lowest.closing - floor;
    let cushion = road_cost_per_day.times(TIGHT_DAYS);
    let first_short = ahead.iter().find(|day| day.closing < floor);
    let (verdict, findings) = if let Some(first) = first_short {
        let finding = Finding::BelowFloor { on: first.on, missing: -margin, lowest_on: lowest.on };
        (Verdict::FallsShort, vec![finding])
    } else if margin < cushion {
        (Verdict::Tight, vec![Finding::CloseToFloor { lowest_on: lowest.on, margin }])
    } else {
        (Verdict::Holds, Vec::new())
    };
    Standing {
        verdict,
        margin: Some(Margin::Money(margin)),
        first_short: first_short.map(|day| Moment::day(day.on)),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: working(ahead, lowest, floor, cushion),
    }
}

fn working(ahead: &[CashDay], lowest: CashDay, floor: Money, cushion: Money) -> Vec<Working> {
    let until_lowest = || ahead.iter().take_while(|day| day.on <= lowest.on);
    let opening = ahead.first().map_or(Money::ZERO, |day| day.opening);
    vec![
        Working {
            formula: "working-money-lowest",
            figures: vec![
                ("opening", Figure::Money(opening)),
                ("inflow", Figure::Money(until_lowest().map(|day| day.inflow).sum())),
                ("outflow", Figure::Money(until_lowest().map(|day| day.outflow).sum())),
                ("lowest", Figure::Money(lowest.closing)),
                ("on", Figure::Date(lowest.on)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-money-margin",
            figures: vec![
                ("lowest", Figure::Money(lowest.closing)),
                ("floor", Figure::Money(floor)),
                ("margin", Figure::Money(lowest.closing - floor)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-money-cushion",
            figures: vec![
                ("days", Figure::of(f64::from(TIGHT_DAYS), Quantity::Days)),
                ("cushion", Figure::Money(cushion)),
            ],
            source: Source::CommonPractice,
        },
    ]
}

fn road_cost_per_day(plan: &Plan, timeline: &Timeline, flows: &[Flow]) -> Money {
    let Some(leaves_on) = plan.calendar.leaves_on else { return Money::ZERO };
    let is_running = |flow: &&Flow| flow.group.is_running() && flow.on >= leaves_on;
    let total: Money = flows.iter().filter(is_running).map(|flow| -flow.amount).sum();
    let days = rust_decimal::Decimal::from(timeline.road().count());
    let per_day = decimal::over(total.decimal(), days).map_or(Money::ZERO, Money::new);
    per_day.rounded(plan.minor_digits())
}

fn group_totals(flows: &[Flow]) -> Vec<GroupTotal> {
    let mut totals: Vec<GroupTotal> = Vec::new();
    for flow in flows {
        let at = totals.partition_point(|total| total.group < flow.group);
        if totals.get(at).is_none_or(|total| total.group != flow.group) {
            let (group, nothing) = (flow.group, Money::ZERO);
            totals.insert(at, GroupTotal { group, foreseen: nothing, settled: nothing, open: nothing });
        }
        let total = &mut totals[at];
        total.foreseen += flow.amount;
        let part = if flow.state == FlowState::Confirmed { &mut total.settled } else { &mut total.open };
        *part += flow.amount;
    }
    totals
}

/// The largest purchase up to the first short day that is not a must.
fn largest_before(plan: &Plan, standing: &Standing<Finding>, flows: &[Flow]) -> Option<Finding> {
    let short = standing.first_short?;
    let may_wait = |flow: &Flow| {
        let item = plan.item(flow.source).filter(|item| item.need != Need::Must)?;
        let is_payment = matches!(flow.group, FlowGroup::Kit(_)) && flow.amount.is_negative();
        (flow.on <= short.on && flow.state == FlowState::Planned && is_payment).then(|| Finding::LargestBefore {
            item: item.id,
            name: item.name.clone(),
            amount: -flow.amount,
        })
    };
    let amount = |finding: &Finding| match finding {
        Finding::LargestBefore { amount, .. } => *amount,
        _ => Money::ZERO,
    };
    flows.iter().filter_map(may_wait).max_by_key(amount)
}

fn unanswered(flows: &[Flow]) -> Vec<Finding> {
    let open = |receipts: bool| {
        let open = flows.iter().filter(|flow| flow.state == FlowState::Unanswered);
        let open: Vec<Money> = open.map(|flow| flow.amount).filter(|amount| amount.is_negative() != receipts).collect();
        let total: Money = open.iter().copied().sum();
        (open.len(), if receipts { total } else { -total })
    };
    let mut findings = Vec::new();
    let (count, amount) = open(true);
    if count > 0 {
        findings.push(Finding::ReceiptsUnanswered { count, amount });
    }
    let (count, amount) = open(false);
    if count > 0 {
        findings.push(Finding::PaymentsUnanswered { count, amount });
    }
    findings
}

fn without_price(plan: &Plan, unpriced: &[crate::plan::Id]) -> Option<Finding> {
    let item = plan.item(*unpriced.first()?)?;
    Some(Finding::WithoutPrice { count: unpriced.len(), item: item.id, name: item.name.clone() })
}

/// The first month from the day asked on at which the loans are more than the van would bring.
fn owes_more(owed: &[OwedDay], as_of: Date) -> Option<Finding> {
    let day = owed.iter().find(|day| day.on >= as_of && day.owed > day.resale)?;
    Some(Finding::OwesMore { on: day.on, owed: day.owed, resale: day.resale })
}

/// What is due for the home once the van has left, and for the road before it has.
fn overlap(plan: &Plan, flows: &[Flow]) -> Option<Finding> {
    let leaves_on = plan.calendar.leaves_on?;
    let due = |phase: CostPhase, is_after: bool| -> Money {
        let is_of = |flow: &&Flow| {
            let cost = plan.costs.iter().find(|cost| cost.id == flow.source && cost.every != CostEvery::HundredKm);
            let is_meant = cost.is_some_and(|cost| cost.phase == phase && cost.every != CostEvery::Once);
            flow.group == FlowGroup::Costs && (flow.on >= leaves_on) == is_after && is_meant
        };
        flows.iter().filter(is_of).map(|flow| -flow.amount).sum()
    };
    let (home, road) = (due(CostPhase::Home, true), due(CostPhase::Road, false));
    (home > Money::ZERO || road > Money::ZERO).then_some(Finding::Overlap { home, road })
}

/// Each day on which more is missing than on any day before.
fn needed(ahead: &[CashDay], floor: Money) -> Vec<Needed> {
    let mut needed: Vec<Needed> = Vec::new();
    for day in ahead {
        let in_all = floor - day.closing;
        if in_all > needed.last().map_or(Money::ZERO, |last| last.in_all) {
            needed.push(Needed { by: day.on, in_all });
        }
    }
    needed
}

fn unlikely(unlikely: &[Flow]) -> Option<Finding> {
    let amount = unlikely.iter().map(|flow| flow.amount).sum();
    (!unlikely.is_empty()).then_some(Finding::SalesUnlikely { count: unlikely.len(), amount })
}
