//! What the work comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::chain::{ChainLink, WaitsFor, block, chain};
use super::constants::TIGHT_DAYS;
use super::ends::{Endings, endings};
use super::findings::{Block, Finding};
use super::input::{SLOTS_PER_DAY, is_open, wait_hours};
use super::schedule::slack_slots;
use super::sheet::{DayPlan, day_plans};
use super::ways::{DayCosts, TwoWays, two_ways};
use super::work::Work;
use crate::assessment::{Caution, Margin, Moment, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Estimate, Id, Path, Plan, Quantity, Task};

/// The balance of days of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// Every task, in the order of the plan.
    pub tasks: Vec<TaskLine>,
    /// The tasks that make the date, from the first to the last.
    pub chain: Vec<ChainLink>,
    /// When all that must be done before leaving is done, waits included, where all of it could be placed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finish: Option<Moment>,
    /// Day by day what is done, with whom and with what.
    pub days: Vec<DayPlan>,
    /// Hours of work that are left.
    pub hours_left: f64,
    /// Of them, those of tasks that are not over on the day of leaving.
    pub hours_late: f64,
    /// Where everything at home ends.
    pub endings: Endings,
    /// To leave on the date with what is done, or to stay longer, where not all is done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ways: Option<TwoWays>,
}

/// A task as it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TaskLine {
    /// The task.
    pub task: Id,
    /// How it stands.
    pub state: TaskState,
    /// When it begins.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starts: Option<Moment>,
    /// When the work ends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ends: Option<Moment>,
    /// When its wait is over.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ready: Option<Moment>,
    /// By how many days it could begin later with the end of all work unmoved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slack_days: Option<f64>,
    /// Hours of work that are left.
    pub hours_left: f64,
    /// Why it is not placed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub block: Option<Block>,
}

/// How a task stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum TaskState {
    /// It is done.
    Done,
    /// It was placed, and is over before the day of leaving.
    InTime,
    /// It was placed, and is not over on the day of leaving.
    Late,
    /// It cannot be placed.
    Blocked,
    /// The plan goes without it.
    LeftOut,
}

/// Judges the work, with what the money says of it.
pub fn report(plan: &Plan, as_of: Date, work: &Work, money: &FromMoney) -> Report {
    let lines = lines(plan, work);
    let chain = chain(plan, work);
    let finish_slot = work.finish_slot();
    let finish = finish_slot.map(|slot| work.input.end_moment(slot));
    let missing = missing(plan);
    let is_known = missing.is_empty();
    let mut standing = if is_known { judge(plan, work, &lines, finish_slot) } else { Standing::unknown(missing) };
    if is_known {
        standing.findings.extend(money_blocks(plan, work, money));
        standing.findings.extend(holds_up(plan, &chain));
    }
    let endings = endings(plan, as_of, money.months_stored);
    standing.findings.extend(endings.finding());
    if is_known {
        standing.verdict = Verdict::by_worst(&standing.findings);
    }
    if plan.tasks.iter().any(is_open) {
        standing.cautions = vec![
            Caution::PowerToolsAndDust,
            Caution::SolventsAndFoam,
            Caution::LiftingAndTired,
            Caution::CuttingTheVan,
        ];
    }
    standing.working = working(plan, work, finish, &chain);
    let late = |line: &&TaskLine| matches!(line.state, TaskState::Late | TaskState::Blocked);
    Report {
        hours_left: lines.iter().map(|line| line.hours_left).sum(),
        hours_late: lines.iter().filter(late).map(|line| line.hours_left).sum(),
        ways: two_ways(plan, &lines, finish, money.a_day),
        days: day_plans(plan, work),
        standing,
        tasks: lines,
        chain,
        finish,
        endings,
    }
}

/// What the days need to know of the money.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FromMoney {
    /// The day on which it falls short.
    pub short_on: Option<Date>,
    /// The items that are to be paid that day.
    pub unpaid: Vec<Id>,
    /// What a day costs at home and on the road.
    pub a_day: DayCosts,
    /// Months for which things would be stored.
    pub months_stored: u32,
}

fn missing(plan: &Plan) -> Vec<Path> {
    let mut missing = Vec::new();
    if plan.tasks.is_empty() {
        missing.push(Path::section("tasks"));
    }
    if plan.helpers.is_empty() {
        missing.push(Path::section("helpers"));
    }
    if plan.calendar.leaves_on.is_none() {
        missing.push(Path::section("calendar").child("leaves_on"));
    }
    missing
}

fn lines(plan: &Plan, work: &Work) -> Vec<TaskLine> {
    let slack = slack_slots(&work.workload, &work.schedule);
    let mut activity_of = vec![None; plan.tasks.len()];
    for (activity, at) in work.input.tasks.iter().enumerate() {
        activity_of[*at] = Some(activity);
    }
    let line = |(task, activity): (&Task, Option<usize>)| {
        let Some(activity) = activity else {
            let state = if task.left_out { TaskState::LeftOut } else { TaskState::Done };
            return TaskLine {
                task: task.id,
                state,
                starts: None,
                ends: None,
                ready: None,
                slack_days: None,
                hours_left: 0.0,
                block: None,
            };
        };
        let span = work.span_of(activity);
        let ready = work.ready_slot(activity).map(|slot| work.input.end_moment(slot));
        let block = block(plan, work, activity);
        let leaves_on = plan.calendar.leaves_on;
        let is_late = ready.zip(leaves_on).is_some_and(|(ready, leaves_on)| ready.on >= leaves_on);
        let state = match span {
            Some(_) if block.is_none() && is_late => TaskState::Late,
            Some(_) if block.is_none() => TaskState::InTime,
            _ => TaskState::Blocked,
        };
        TaskLine {
            task: task.id,
            state,
            starts: span.map(|(start, _)| work.input.moment(start)),
            ends: span.map(|(_, end)| work.input.end_moment(end)),
            ready: ready.filter(|_| wait_hours(task) > 0.0),
            slack_days: slack
                .get(activity)
                .filter(|_| activity < work.input.musts)
                .copied()
                .flatten()
                .map(|slots| f64::from(slots) / SLOTS_PER_DAY as f64),
            hours_left: work.input.hours.get(activity).map_or(0.0, Estimate::likely),
            block,
        }
    };
    plan.tasks.iter().zip(activity_of).map(line).collect()
}

fn judge(plan: &Plan, work: &Work, lines: &[TaskLine], finish_slot: Option<usize>) -> Standing<Finding> {
    let mut findings = Vec::new();
    // The lines are those of the tasks, in their order.
    for (line, task) in lines.iter().zip(&plan.tasks) {
        if let Some(block) = line.block {
            let (name, what) = (name(plan, line.task), block.names(plan));
            findings.push(Finding::Blocked { task: line.task, name, block, what, can_wait: task.can_wait });
        }
    }
    let leaves_on = plan.calendar.leaves_on.unwrap_or(work.input.begins_on);
    let spare = finish_slot.map(|slot| (work.input.slot_of(leaves_on) as f64 - slot as f64) / SLOTS_PER_DAY as f64);
    let last = || {
        lines
            .iter()
            .zip(&plan.tasks)
            .filter(|(_, task)| !task.can_wait)
            .max_by_key(|(line, _)| line.ready.or(line.ends))
            .map_or(String::new(), |(_, task)| task.name.clone())
    };
    if let Some((slot, days)) = finish_slot.zip(spare) {
        let finish = work.input.end_moment(slot);
        if days < 0.0 {
            findings.push(Finding::NotReady { finish: finish.on, days: -days, last: last() });
        } else if days < TIGHT_DAYS && slot > 0 {
            findings.push(Finding::CloseToLeaving { finish, days, last: last() });
        }
    }
    let first_late = lines.iter().filter(|line| line.state == TaskState::Late).filter_map(|line| line.ends).min();
    Standing {
        verdict: Verdict::Holds,
        margin: spare.map(Margin::Early),
        first_short: first_late.map(|_| Moment::day(leaves_on)),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: Vec::new(),
    }
}

fn name(plan: &Plan, id: Id) -> String {
    plan.name_of(id).unwrap_or_default().to_owned()
}

/// Tasks whose things are to be paid on the day on which the money falls short.
fn money_blocks(plan: &Plan, work: &Work, money: &FromMoney) -> Option<Finding> {
    let on = money.short_on?;
    let needs = |task: &Task, item: Id| {
        plan.task_needs.iter().any(|need| need.task == Some(task.id) && need.thing == Some(item))
    };
    let mut first: Option<(usize, Id, Id)> = None;
    for activity in 0..work.input.tasks.len() {
        let (Some(task), Some((start, _))) = (work.task_of(plan, activity), work.span_of(activity)) else { continue };
        let item = money.unpaid.iter().find(|item| needs(task, **item));
        if let Some(item) = item.filter(|_| first.is_none_or(|(earlier, ..)| start < earlier)) {
            first = Some((start, task.id, *item));
        }
    }
    let (_, task, item) = first?;
    Some(Finding::MoneyNotThere { task, name: name(plan, task), item: name(plan, item), on })
}

/// What holds up the chain that makes the date: the first thing that is awaited.
fn holds_up(plan: &Plan, chain: &[ChainLink]) -> Option<Finding> {
    chain.iter().find_map(|link| {
        let WaitsFor::Item { id } = link.waits_for else { return None };
        Some(Finding::ItemAwaited {
            task: link.task,
            name: name(plan, link.task),
            item: name(plan, id),
            on: link.starts.on,
        })
    })
}

fn working(plan: &Plan, work: &Work, finish: Option<Moment>, chain: &[ChainLink]) -> Vec<Working> {
    let Some(finish) = finish.filter(|_| !chain.is_empty()) else { return Vec::new() };
    let hours = |value: f64| Figure::of(value, Quantity::Hours);
    let names: Vec<String> = chain.iter().map(|link| name(plan, link.task)).collect();
    let in_chain = |activity: &usize| {
        work.task_of(plan, *activity).is_some_and(|task| chain.iter().any(|link| link.task == task.id))
    };
    let sum = (0..work.input.tasks.len()).filter(in_chain).filter_map(|activity| work.input.hours.get(activity));
    vec![Working {
        formula: "working-days-chain",
        figures: vec![
            ("finish", Figure::Moment(finish)),
            ("chain", Figure::Name(names.join(" → "))),
            ("hours", hours(sum.map(Estimate::likely).sum())),
            ("from", Figure::Date(work.input.begins_on)),
        ],
        source: Source::Published("Kelley and Walker 1959, critical path (from memory)"),
    }]
}
