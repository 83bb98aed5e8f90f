//! The open work of a plan, placed in time.

use jiff::civil::Date;

use super::input::Input;
use super::schedule::{Schedule, Workload, first_schedule};
use crate::plan::{Plan, Task};

/// The open work of a plan, placed in time.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// What was placed.
    pub input: Input,
    /// What must be done before leaving, as it was placed.
    pub workload: Workload,
    /// When what must be done before leaving is done; last of all, that it is.
    pub schedule: Schedule,
    /// When what can wait is done, beside it.
    pub beside: Schedule,
}

impl Work {
    /// Places the open tasks of a plan; `paid` says of each item of the kit whether it is paid.
    pub fn new(plan: &Plan, as_of: Date, paid: &[bool]) -> Self {
        let input = Input::new(plan, as_of, paid);
        let workload = input.before_leaving();
        let schedule = first_schedule(&workload);
        let can_any_wait = input.musts < input.activities.len();
        let beside = if can_any_wait { first_schedule(&input.beside(&schedule)) } else { Schedule::default() };
        Self { input, workload, schedule, beside }
    }

    /// The slot in which a task begins and the one after its last, if it was placed.
    pub fn span_of(&self, activity: usize) -> Option<(usize, usize)> {
        let (schedule, at) = self.schedule_of(activity);
        schedule.spans.get(at).copied().flatten().map(|span| (span.start, span.end))
    }

    /// The schedule that an activity is in, and its place there.
    pub(super) fn schedule_of(&self, activity: usize) -> (&Schedule, usize) {
        match activity.checked_sub(self.input.musts) {
            Some(at) => (&self.beside, at),
            None => (&self.schedule, activity),
        }
    }

    /// The slot at which a task is over with its wait.
    pub(super) fn ready_slot(&self, activity: usize) -> Option<usize> {
        let (_, end) = self.span_of(activity)?;
        Some(end + self.input.waits.get(activity).copied().unwrap_or(0) as usize)
    }

    /// The slot at which all that must be done before leaving is over, waits included, if all of it could be placed.
    pub fn finish_slot(&self) -> Option<usize> {
        self.schedule.spans.get(self.input.musts).copied().flatten().map(|span| span.end)
    }

    /// The task of an activity.
    pub fn task_of<'a>(&self, plan: &'a Plan, activity: usize) -> Option<&'a Task> {
        self.input.tasks.get(activity).and_then(|at| plan.tasks.get(*at))
    }
}
