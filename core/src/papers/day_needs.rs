//! What a task of a day takes, for its line on paper and in the calendar.

use crate::days::WorkLine;
use crate::plan::{Id, Plan};

/// What a task takes on one day, each once, in the order in which it is entered.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DayNeeds {
    /// Tools and places.
    pub tools: Vec<Id>,
    /// Things of the kit; only on the day on which the task begins.
    pub items: Vec<Id>,
}

/// What a task takes on the day of that line.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::{assess, papers::needs_of, plan::demo_plan};
/// let plan = demo_plan();
/// let days = assess(&plan, date(2027, 2, 1)).days.days;
/// let lines = days.iter().flat_map(|day| &day.work);
/// assert!(lines.clone().any(|line| !needs_of(&plan, line).tools.is_empty()));
/// ```
pub fn needs_of(plan: &Plan, line: &WorkLine) -> DayNeeds {
    let mut needs = DayNeeds::default();
    for need in plan.task_needs.iter().filter(|need| need.task == Some(line.task)) {
        needs.tools.extend(need.tool.filter(|tool| !needs.tools.contains(tool)));
        needs.items.extend(need.thing.filter(|item| line.begins && !needs.items.contains(item)));
    }
    needs
}
