//! What takes longer than a key should: a better order or the proof that there is none, how likely all is done by which
//! day, and what would save days.

use jiff::civil::Date;
use serde_json::Value;

use super::constants::{DRY_PERCENT, MOST_DAYS_TOLD, MOST_SAVINGS, RUNS};
use super::input::{DRY, Input, SLOTS_PER_DAY};
use super::schedule::{Chances, Durations, Runs, Search, Weather, first_schedule};
use super::work::Work;
use crate::plan::record::{record, words};
use crate::plan::{Edit, Helper, Id, List, Money, Plain, Plan, ToolDays, ToolSource, add_days};
use crate::task::Task;
use rust_decimal::Decimal;

/// What the search, the runs and the trials found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outlook {
    /// The day on which all is done that must be before leaving, by the best order found.
    pub finish: Option<Date>,
    /// No order is done before this day.
    pub not_before: Option<Date>,
    /// Whether no order is done earlier.
    pub is_proven: bool,
    /// The tasks in the best order, when it is done earlier than that of the plan; else nothing.
    pub order: Vec<Id>,
    /// How many runs there were, with hours and weather by chance.
    pub runs: u32,
    /// In how many of them all is done before the day of leaving.
    pub on_time: Option<u32>,
    /// The day on which all is done in nine runs of ten.
    pub nine_in_ten: Option<Date>,
    /// Day by day, from the one before the first on which it can be done.
    pub days: Vec<ReadyDay>,
    /// What would save days, the most first.
    pub savings: Vec<Saving>,
}

record!(Outlook { finish, not_before, is_proven, order, runs, on_time, nine_in_ten, days, savings });

/// How likely all is done on a day.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ReadyDay {
    /// The day.
    pub on: Date,
    /// In how many of the runs all is done in the evening.
    pub done: u32,
}

record!(ReadyDay { on, done });

/// Something that would save days.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Saving {
    /// What is changed.
    pub change: Change,
    /// The tool or the task that it is about; 0 for one more helper.
    pub id: Id,
    /// The days that it saves.
    pub days: f64,
    /// When all would be done.
    pub finish: Option<Date>,
    /// What it costs, where that is known.
    pub cost: Option<Money>,
}

record!(Saving { change, id, days, finish, cost });

/// What is changed to save days.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Change {
    /// One more helper, with the hours of the first person.
    #[default]
    Helper,
    /// A tool or place that is there every day, hired if need be.
    Tool,
    /// A task that is left out.
    Task,
}

words!(Change { Helper = "helper", Tool = "tool", Task = "task" });

impl Outlook {
    /// The change that puts the tasks of the plan into the best order; nothing when the plan's is as good.
    pub fn taking(&self, plan: &Plan) -> Option<Edit> {
        let ids = List::Tasks.ids(plan);
        let first = self.order.iter().filter(|id| ids.contains(id));
        let rest = ids.iter().filter(|id| !self.order.contains(id));
        let edits: Vec<Edit> =
            first.chain(rest).enumerate().map(|(to, id)| Edit::Move { list: List::Tasks, id: *id, to }).collect();
        (!self.order.is_empty()).then_some(Edit::All { edits })
    }
}

/// An [`Outlook`] being worked out.
pub struct OutlookTask {
    plan: Plan,
    as_of: Date,
    paid: Vec<bool>,
    work: Work,
    search: Search,
    runs: Option<Runs>,
    trials: Vec<(Change, Id)>,
    next_trial: usize,
    outlook: Outlook,
    seed: u32,
}

impl OutlookTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date, seed: u32) -> Self {
        let paid = crate::money::are_paid(plan);
        let work = Work::new(plan, as_of, &paid);
        Self {
            search: Search::new(&work.workload),
            trials: trials(plan),
            next_trial: 0,
            runs: None,
            outlook: Outlook::default(),
            plan: plan.clone(),
            as_of,
            paid,
            work,
            seed,
        }
    }

    /// The search is over: what it found, and the runs along its order.
    fn begin_runs(&mut self) -> Runs {
        let input = &self.work.input;
        let best = self.search.best().clone();
        let is_all_placed = best.spans.last().copied().flatten().is_some();
        self.outlook.finish = is_all_placed.then(|| last_day(input, best.finish));
        self.outlook.not_before = is_all_placed.then(|| last_day(input, self.search.bound()));
        self.outlook.is_proven = self.search.is_proven();
        if self.work.finish_slot().is_some_and(|finish| best.finish < finish) {
            // Last of all in it stands that all is done, which is no task.
            let musts = best.order.iter().filter(|at| **at < input.musts);
            let tasks = musts.filter_map(|at| self.work.task_of(&self.plan, *at));
            self.outlook.order = tasks.map(|task| task.id).collect();
        }
        let durations: Vec<Durations> = input
            .hours
            .iter()
            .take(input.musts)
            .map(|hours| {
                let slots = |hours: f64| hours * f64::from(super::constants::SLOTS_PER_HOUR);
                Durations { low: slots(hours.low()), likely: slots(hours.likely()), high: slots(hours.high()) }
            })
            .collect();
        let dry = self.plan.building.dry_percent.unwrap_or(DRY_PERCENT).clamp(0.0, 100.0);
        let weather = Weather { calendars: vec![DRY], chances: vec![1.0 - dry / 100.0], slots_per_day: SLOTS_PER_DAY };
        Runs::new(
            &self.work.workload,
            &best,
            &durations,
            weather,
            self.seed.into(),
            if is_all_placed { RUNS } else { 0 },
        )
    }

    fn tell_chances(&mut self, chances: &Chances) {
        let input = &self.work.input;
        let runs = chances.runs();
        if runs == 0 {
            return;
        }
        let count = |runs: usize| u32::try_from(runs).unwrap_or(u32::MAX);
        self.outlook.runs = count(runs);
        if let Some(leaves_on) = self.plan.calendar.leaves_on {
            self.outlook.on_time = Some(count(chances.done_by(input.slot_of(leaves_on))));
        }
        self.outlook.nine_in_ten = chances.percentile(90).map(|slot| last_day(input, slot));
        let by_day = chances.done_by_day(SLOTS_PER_DAY);
        let first = by_day.iter().position(|count| *count > 0).unwrap_or(by_day.len()).saturating_sub(1);
        let told = by_day.iter().enumerate().skip(first).take(MOST_DAYS_TOLD);
        let days = told.filter_map(|(day, done)| {
            let on = add_days(input.begins_on, i32::try_from(day).ok()?)?;
            Some(ReadyDay { on, done: count(*done) })
        });
        self.outlook.days = days.collect();
    }

    /// What one change of the plan would save.
    fn tried(&self, change: Change, id: Id) -> Option<Saving> {
        let before = self.work.finish_slot();
        let plan = changed(&self.plan, change, id)?;
        let input = Input::new(&plan, self.as_of, &self.paid);
        let schedule = first_schedule(&input.before_leaving());
        let finish = schedule.spans.last().copied().flatten()?.end;
        // What could not be done at all is done now: that is worth more than any days.
        let saved = before.map_or(f64::INFINITY, |before| (before as f64 - finish as f64) / SLOTS_PER_DAY as f64);
        if saved <= 0.0 {
            return None;
        }
        let days = if saved.is_finite() { saved } else { 0.0 };
        let tool = plan.tools.iter().find(|tool| tool.id == id && change == Change::Tool);
        let cost = tool.and_then(|tool| tool.price_per_day).map(|price| {
            let mut used: Vec<usize> = Vec::new();
            for (activity, span) in schedule.spans.iter().enumerate().take(input.musts) {
                let needs = input.needs_tool(activity, id);
                if let Some(span) = span.filter(|_| needs) {
                    used.extend(input.worked(activity, span.start, span.end).map(|slot| slot / SLOTS_PER_DAY));
                }
            }
            used.sort_unstable();
            used.dedup();
            price.scaled(Decimal::from(used.len())).rounded(plan.minor_digits())
        });
        Some(Saving { change, id, days, finish: Some(last_day(&input, finish)), cost })
    }
}

/// The day on which work ends whose last slot is the one before.
fn last_day(input: &Input, end: usize) -> Date {
    input.end_moment(end).on
}

/// One more helper, each tool that is not always there, each open task.
fn trials(plan: &Plan) -> Vec<(Change, Id)> {
    let is_scarce = |tool: &&crate::plan::Tool| {
        tool.tool_source == ToolSource::Missing
            || tool.there_from.is_some()
            || tool.there_until.is_some()
            || tool.on_days != ToolDays::Every
    };
    let helper = (!plan.helpers.is_empty()).then_some((Change::Helper, 0));
    let tools = plan.tools.iter().filter(is_scarce).map(|tool| (Change::Tool, tool.id));
    let tasks = plan.tasks.iter().filter(|task| super::is_open(task)).map(|task| (Change::Task, task.id));
    helper.into_iter().chain(tools).chain(tasks).collect()
}

fn changed(plan: &Plan, change: Change, id: Id) -> Option<Plan> {
    let mut plan = plan.clone();
    match change {
        Change::Helper => {
            let first = plan.helpers.first()?;
            let more = Helper { id: 0, comes_from: None, comes_until: None, ..first.clone() };
            plan.helpers.push(more);
        }
        Change::Tool => {
            let tool = plan.tools.iter_mut().find(|tool| tool.id == id)?;
            tool.tool_source = ToolSource::Hired;
            (tool.there_from, tool.there_until, tool.on_days) = (None, None, ToolDays::Every);
        }
        Change::Task => plan.tasks.iter_mut().find(|task| task.id == id)?.left_out = true,
    }
    Some(plan)
}

impl Task for OutlookTask {
    fn step(&mut self) -> f64 {
        /// The shares of the search and of the runs in all of it.
        const SEARCH: f64 = 0.5;
        const ALL_RUNS: f64 = 0.3;
        let Some(runs) = &mut self.runs else {
            let share = self.search.step();
            if share >= 1.0 {
                self.runs = Some(self.begin_runs());
            }
            return share.min(1.0) * SEARCH;
        };
        if self.outlook.runs == 0 {
            let share = runs.step();
            if share < 1.0 {
                return SEARCH + share * ALL_RUNS;
            }
            let chances = runs.chances();
            self.tell_chances(&chances);
        }
        if let Some((change, id)) = self.trials.get(self.next_trial).copied() {
            self.next_trial += 1;
            self.outlook.savings.extend(self.tried(change, id));
            return SEARCH
                + ALL_RUNS
                + self.next_trial as f64 / (self.trials.len() + 1) as f64 * (1.0 - SEARCH - ALL_RUNS);
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // above nothing, and far below the most
        let worth = |saving: &Saving| match saving.days {
            days if days > 0.0 => (days * 1_000.0).min(1e9) as u64,
            // It makes possible what was not.
            _ => u64::MAX,
        };
        let mut savings = crate::order::by_key(&self.outlook.savings, |saving| u64::MAX - worth(saving));
        savings.truncate(MOST_SAVINGS);
        self.outlook.savings = savings;
        1.0
    }

    fn answer(&self) -> Value {
        self.outlook.to_plain()
    }
}
