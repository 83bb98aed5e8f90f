//! What the work comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::TIGHT_DAYS;
use super::ends::{Endings, endings};
use super::findings::{Block, Finding};
use super::input::{HANDS, Input, SLOTS_PER_DAY, is_open, wait_hours};
use super::schedule::{Hindrance, Lack, Link, Schedule, Why, critical_chain, first_schedule, slack_slots};
use super::sheet::{DayPlan, day_plans};
use super::ways::{DayCosts, TwoWays, two_ways};
use crate::assessment::{Caution, Margin, Moment, Say, Severity, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Id, Path, Plan, Quantity, Task, Tool, ToolSource, days_between};

/// The open work of a plan, placed in time.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// What was placed.
    pub input: Input,
    /// When what must be done before leaving is done; last of all, that it is.
    pub schedule: Schedule,
    /// When what can wait is done, beside it.
    pub beside: Schedule,
}

impl Work {
    /// Places the open tasks of a plan; `paid` says of each item of the kit whether it is paid.
    pub fn new(plan: &Plan, as_of: Date, paid: &[bool]) -> Self {
        Self::of(Input::new(plan, as_of, paid))
    }

    fn of(input: Input) -> Self {
        let schedule = first_schedule(&input.before_leaving());
        let beside = first_schedule(&input.beside(&schedule));
        Self { input, schedule, beside }
    }

    /// The slot in which a task begins and the one after its last, if it was placed.
    pub fn span_of(&self, activity: usize) -> Option<(usize, usize)> {
        let (schedule, at) = self.schedule_of(activity);
        schedule.spans.get(at).copied().flatten().map(|span| (span.start, span.end))
    }

    /// The schedule that an activity is in, and its place there.
    fn schedule_of(&self, activity: usize) -> (&Schedule, usize) {
        match activity.checked_sub(self.input.musts) {
            Some(at) => (&self.beside, at),
            None => (&self.schedule, activity),
        }
    }

    /// The slot at which a task is over with its wait.
    fn ready_slot(&self, activity: usize) -> Option<usize> {
        let (_, end) = self.span_of(activity)?;
        Some(end + self.input.waits.get(activity).copied().unwrap_or(0) as usize)
    }

    /// The slot at which all that must be done before leaving is over, waits included, if all of it could be placed.
    pub fn finish_slot(&self) -> Option<usize> {
        self.schedule.spans.get(self.input.musts).copied().flatten().map(|span| span.end)
    }
}

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

/// A task of the chain that makes the date, and why it begins when it does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChainLink {
    /// The task.
    pub task: Id,
    /// When it begins.
    pub starts: Moment,
    /// What it waits for.
    pub waits_for: WaitsFor,
}

/// What a task of the chain waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum WaitsFor {
    /// Nothing: it begins at once.
    Nothing,
    /// Another task that must be done before.
    Task {
        /// The task.
        id: Id,
    },
    /// Hands that another task has.
    Hands {
        /// That task.
        id: Id,
    },
    /// A tool that another task has.
    Tool {
        /// The tool.
        id: Id,
        /// That task.
        task: Id,
    },
    /// An item that is still to come.
    Item {
        /// The item.
        id: Id,
    },
    /// The day before which it does not begin, or the van.
    ItsDay,
    /// The hours in which somebody, a tool, a place or the daylight is there.
    OpenHours,
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
        standing.verdict = verdict(&standing.findings);
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
    let slack = slack_slots(&work.input.before_leaving(), &work.schedule);
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
            hours_left: work.input.hours.get(activity).map_or(0.0, |hours| hours.likely()),
            block,
        }
    };
    plan.tasks.iter().zip(activity_of).map(line).collect()
}

/// What keeps a task from being placed, or what it needs that is not part of the plan.
fn block(plan: &Plan, work: &Work, activity: usize) -> Option<Block> {
    if let Some(item) = work.input.left_out.get(activity).copied().flatten() {
        return Some(Block::ItemLeftOut { item });
    }
    let (schedule, place) = work.schedule_of(activity);
    let (_, hindrance) = schedule.not_placed.iter().find(|(of, _)| *of == place)?;
    let first = activity - place;
    let task_of = |place: usize| {
        let at = work.input.tasks.get(first + place)?;
        plan.tasks.get(*at).map(|task| task.id)
    };
    Some(match hindrance {
        Hindrance::Circle(_) => Block::Circle,
        Hindrance::Behind { of, .. } => Block::Behind { task: task_of(*of)? },
        Hindrance::BeyondHorizon { .. } => Block::TooLong,
        Hindrance::NeverOpen { lacks, .. } => lack(plan, work, activity, *lacks),
    })
}

/// What a task never has.
fn lack(plan: &Plan, work: &Work, activity: usize, lacks: Lack) -> Block {
    let input = &work.input;
    match lacks {
        Lack::Calendar(calendar) => {
            input.place_of(calendar).map_or(Block::NeverTogether, |place| tool_block(plan, place))
        }
        Lack::Resource(resource) => match input.tool_of(resource) {
            Some(tool) => tool_block(plan, tool),
            None if resource == HANDS => Block::TooFewHands { hands: input.hands_for(activity) },
            None => Block::NobodySkilled,
        },
        Lack::Together => Block::NeverTogether,
        Lack::Length => Block::TooLong,
    }
}

fn tool_block(plan: &Plan, id: Id) -> Block {
    let is_missing = |tool: &Tool| tool.tool_source == ToolSource::Missing;
    if plan.tools.iter().any(|tool| tool.id == id && is_missing(tool)) {
        Block::NobodyHas { tool: id }
    } else {
        Block::ToolGone { tool: id }
    }
}

fn chain(plan: &Plan, work: &Work) -> Vec<ChainLink> {
    let id_of =
        |activity: usize| work.input.tasks.get(activity).and_then(|at| plan.tasks.get(*at)).map_or(0, |task| task.id);
    let link = |link: &Link| {
        let (start, _) = work.span_of(link.activity).filter(|_| link.activity < work.input.musts)?;
        let freed = |resource: usize, by: usize| match work.input.tool_of(resource) {
            Some(tool) => WaitsFor::Tool { id: tool, task: id_of(by) },
            None => WaitsFor::Hands { id: id_of(by) },
        };
        let waits_for = match link.why {
            Why::After { activity, .. } => WaitsFor::Task { id: id_of(activity) },
            Why::Freed { resource, by } | Why::Room { resource, beside: by } => freed(resource, by),
            Why::Earliest => match work.input.awaited.get(link.activity).copied().flatten() {
                Some(item) => WaitsFor::Item { id: item },
                None => WaitsFor::ItsDay,
            },
            Why::Beginning | Why::Unforced if link.closed_slots > 0 => WaitsFor::OpenHours,
            Why::Beginning | Why::Unforced => WaitsFor::Nothing,
        };
        Some(ChainLink { task: id_of(link.activity), starts: work.input.moment(start), waits_for })
    };
    critical_chain(&work.input.before_leaving(), &work.schedule).iter().filter_map(link).collect()
}

fn judge(plan: &Plan, work: &Work, lines: &[TaskLine], finish_slot: Option<usize>) -> Standing<Finding> {
    let mut findings = Vec::new();
    let must = |line: &&TaskLine| plan.tasks.iter().any(|task| task.id == line.task && !task.can_wait);
    for line in lines {
        if let Some(block) = line.block {
            let (name, what) = (name(plan, line.task), block.names(plan));
            findings.push(Finding::Blocked { task: line.task, name, block, what, can_wait: !must(&line) });
        }
    }
    let leaves_on = plan.calendar.leaves_on.unwrap_or(work.input.begins_on);
    let leaving = usize::try_from(days_between(work.input.begins_on, leaves_on)).unwrap_or(0) * SLOTS_PER_DAY;
    let spare = finish_slot.map(|slot| (leaving as f64 - slot as f64) / SLOTS_PER_DAY as f64);
    let last = || {
        lines
            .iter()
            .filter(must)
            .max_by_key(|line| line.ready.or(line.ends))
            .map_or(String::new(), |line| name(plan, line.task))
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

fn verdict(findings: &[Finding]) -> Verdict {
    match findings.iter().map(Say::severity).min() {
        Some(Severity::Short) => Verdict::FallsShort,
        Some(Severity::Close) => Verdict::Tight,
        _ => Verdict::Holds,
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
    for (activity, at) in work.input.tasks.iter().enumerate() {
        let (Some(task), Some((start, _))) = (plan.tasks.get(*at), work.span_of(activity)) else { continue };
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
        let task = work.input.tasks.get(*activity).and_then(|at| plan.tasks.get(*at));
        task.is_some_and(|task| chain.iter().any(|link| link.task == task.id))
    };
    let sum = (0..work.input.tasks.len()).filter(in_chain).filter_map(|activity| work.input.hours.get(activity));
    vec![Working {
        formula: "working-days-chain",
        figures: vec![
            ("finish", Figure::Moment(finish)),
            ("chain", Figure::Name(names.join(" → "))),
            ("hours", hours(sum.map(|hours| hours.likely()).sum())),
            ("from", Figure::Date(work.input.begins_on)),
        ],
        source: Source::Published("Kelley and Walker 1959, critical path (from memory)"),
    }]
}
