//! Changes that may mend the days.

use super::is_open;
use crate::moves::constants::MOST_OF_A_KIND;
use crate::moves::{Change, Found};
use crate::plan::{Edit, List, Need, Path, Plain, ToolSource};

/// Adds the changes that may mend the days: tasks done on the road or not at all, the longest first, tools hired, and leaving
/// later. What is done for a must is not touched.
pub fn moves(found: &mut Found) {
    let plan = found.plan;
    let is_for_a_must = |task: &crate::plan::Task| {
        task.for_item.and_then(|id| plan.item(id)).is_some_and(|item| item.need == Need::Must)
    };
    let mut tasks: Vec<&crate::plan::Task> =
        plan.tasks.iter().filter(|task| is_open(task) && !is_for_a_must(task)).collect();
    let hours = |task: &crate::plan::Task| task.hours.map_or(0.0, |hours| hours.likely());
    tasks.sort_by(|a, b| hours(b).total_cmp(&hours(a)));
    for task in tasks.into_iter().take(MOST_OF_A_KIND) {
        let path = Path::entry(List::Tasks.name(), task.id);
        if task.can_wait {
            continue;
        }
        found.add(Change::TaskLater, task.id, Edit::set(path.child("can_wait"), true));
        found.add(Change::LeaveTaskOut, task.id, Edit::set(path.child("left_out"), true));
    }
    for tool in plan.tools.iter().filter(|tool| tool.tool_source == ToolSource::Missing) {
        let path = Path::entry(List::Tools.name(), tool.id).child("tool_source");
        found.add(Change::HireTool, tool.id, Edit::set(path, ToolSource::Hired.to_plain()));
    }
    crate::money::leave_elsewhen(found);
}
