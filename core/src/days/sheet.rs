//! Day by day: what is done, with whom, with which tool, and what to bring.

use jiff::civil::Date;
use serde::Serialize;

use super::input::{Input, SLOTS_PER_DAY};
use super::work::Work;
use crate::assessment::Moment;
use crate::order;
use crate::plan::{Hands, Id, Plan, Task};

/// A day on which somebody works.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DayPlan {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Whether it lies on or after the day of leaving.
    pub is_late: bool,
    /// What is done, by the time it begins.
    pub work: Vec<WorkLine>,
    /// The tools and places of the day.
    pub tools: Vec<Id>,
    /// The items of the kit that must be there for what begins on this day.
    pub items: Vec<Id>,
}

/// A task on one day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorkLine {
    /// The task.
    pub task: Id,
    /// When it begins on this day.
    pub from: Moment,
    /// When its last bit of this day ends. Between the two it may pause.
    pub until: Moment,
    /// Hours of it on this day.
    pub hours: f64,
    /// Who does it, by their ids.
    pub who: Vec<Id>,
    /// Whether it is begun on this day.
    pub begins: bool,
    /// Whether it is finished on this day.
    pub ends: bool,
}

/// A task in one slot.
struct Worked {
    slot: usize,
    activity: usize,
}

/// The days on which somebody works, in order.
pub fn day_plans(plan: &Plan, work: &Work) -> Vec<DayPlan> {
    let mut worked = Vec::new();
    for activity in 0..work.input.tasks.len() {
        let Some((start, end)) = work.span_of(activity) else { continue };
        worked.extend(work.input.worked(activity, start, end).map(|slot| Worked { slot, activity }));
    }
    let by_slot = order::sorted(worked.iter().map(|worked| worked.slot as u64));
    let in_order: Vec<&Worked> = by_slot.iter().filter_map(|(_, at)| worked.get(*at)).collect();
    in_order.chunk_by(|a, b| day_of(a) == day_of(b)).map(|day| day_plan(plan, work, day)).collect()
}

fn day_of(worked: &Worked) -> usize {
    worked.slot / SLOTS_PER_DAY
}

fn day_plan(plan: &Plan, work: &Work, worked: &[&Worked]) -> DayPlan {
    let input = &work.input;
    let on = worked.first().map_or(input.begins_on, |first| input.day_of(first.slot));
    let mut lines: Vec<(usize, WorkLine)> = Vec::new();
    // Who is taken by which task, slot by slot: whoever began a task goes on with it.
    for slot_work in worked.chunk_by(|a, b| a.slot == b.slot) {
        let mut taken: Vec<usize> = Vec::new();
        for Worked { slot, activity } in slot_work {
            let Some(task) = work.task_of(plan, *activity) else { continue };
            let at = lines.iter().position(|(of, _)| of == activity).unwrap_or_else(|| {
                lines.push((*activity, line(work, task, *activity, *slot)));
                lines.len() - 1
            });
            let line = &mut lines[at].1;
            line.until = input.end_moment(slot + 1);
            line.hours += 1.0 / f64::from(super::constants::SLOTS_PER_HOUR);
            take_hands(plan, input, task, *slot, line, &mut taken);
        }
    }
    let is_of_the_day = |id: Id| lines.iter().any(|(_, line)| line.task == id);
    let begins = |id: Id| lines.iter().any(|(_, line)| line.task == id && line.begins);
    let mut tools = Vec::new();
    let mut items = Vec::new();
    for need in &plan.task_needs {
        let Some(task) = need.task else { continue };
        tools.extend(need.tool.filter(|tool| is_of_the_day(task) && !tools.contains(tool)));
        items.extend(need.thing.filter(|item| begins(task) && !items.contains(item)));
    }
    let is_late = plan.calendar.leaves_on.is_some_and(|leaves_on| on >= leaves_on);
    DayPlan { on, is_late, work: lines.into_iter().map(|(_, line)| line).collect(), tools, items }
}

fn line(work: &Work, task: &Task, activity: usize, slot: usize) -> WorkLine {
    let day = slot / SLOTS_PER_DAY;
    let (start, end) = work.span_of(activity).unwrap_or_default();
    let ends = end > 0 && (end - 1) / SLOTS_PER_DAY == day;
    let begins = start / SLOTS_PER_DAY == day;
    let from = work.input.moment(slot);
    WorkLine { task: task.id, from, until: from, hours: 0.0, who: Vec::new(), begins, ends }
}

/// Gives a task its hands in a slot: first whoever is at it already, one who has done it before where that is needed.
fn take_hands(plan: &Plan, input: &Input, task: &Task, slot: usize, line: &mut WorkLine, taken: &mut Vec<usize>) {
    let (day, of_day) = (slot / SLOTS_PER_DAY, slot % SLOTS_PER_DAY);
    let is_there = |at: &usize| {
        let hours = input.hours_by_helper.get(*at).and_then(|days| days.get(day));
        hours.is_some_and(|(from, to)| (*from..*to).contains(&of_day))
    };
    let is_skilled = |at: usize| plan.helpers[at].is_skilled;
    let mut free: Vec<usize> = (0..plan.helpers.len()).filter(|at| is_there(at) && !taken.contains(at)).collect();
    let is_at_it = |at: usize| line.who.contains(&plan.helpers[at].id);
    let wants_skill = task.hands == Hands::Skilled;
    // Those with skill are kept for what needs it, unless it is this.
    free = order::by_key(&free, |at| {
        let first = u64::from(is_skilled(*at) != wants_skill);
        if is_at_it(*at) { first } else { first + 2 }
    });
    let wanted = if task.hands == Hands::One { 1 } else { 2 };
    let mut chosen: Vec<usize> = free.iter().copied().find(|at| wants_skill && is_skilled(*at)).into_iter().collect();
    for at in free {
        if chosen.len() < wanted && !chosen.contains(&at) {
            chosen.push(at);
        }
    }
    for at in chosen {
        taken.push(at);
        let id = plan.helpers[at].id;
        if !line.who.contains(&id) {
            line.who.push(id);
        }
    }
}
