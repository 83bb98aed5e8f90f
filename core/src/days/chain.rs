//! Why the date is what it is, and why a task has none: what the schedule says, in terms of the plan.

use serde::Serialize;

use super::findings::Block;
use super::input::HANDS;
use super::schedule::{Hindrance, Lack, Link, Why, critical_chain};
use super::work::Work;
use crate::assessment::Moment;
use crate::plan::{Id, Plan, Tool, ToolSource};

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

/// The tasks that make the date, from the first to the last.
pub fn chain(plan: &Plan, work: &Work) -> Vec<ChainLink> {
    let id_of = |activity: usize| work.task_of(plan, activity).map_or(0, |task| task.id);
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
    critical_chain(&work.workload, &work.schedule).iter().filter_map(link).collect()
}

/// What keeps a task from being placed, or what it needs that is not part of the plan.
pub fn block(plan: &Plan, work: &Work, activity: usize) -> Option<Block> {
    if let Some(item) = work.input.left_out.get(activity).copied().flatten() {
        return Some(Block::ItemLeftOut { item });
    }
    let (schedule, place) = work.schedule_of(activity);
    let (_, hindrance) = schedule.not_placed.iter().find(|(of, _)| *of == place)?;
    let first = activity - place;
    let task_of = |place: usize| work.task_of(plan, first + place).map(|task| task.id);
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
