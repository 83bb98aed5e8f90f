//! The work and the tools in the calendar file.

use jiff::civil::Date;

use super::calendar_file::{CalendarFile, Event, Span};
use super::day_needs::needs_of;
use crate::days::{DayPlan, WorkLine};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Plan, Tool, ToolKind, ToolSource};
use crate::words::{Format, Words};

/// An event for each task on each day on which it is worked on.
///
/// The events of a task are numbered by its days, so that one that moves to another day keeps its identity.
pub(super) fn work_events<F: Format>(file: &mut CalendarFile, plan: &Plan, days: &[DayPlan], words: &Words<F>) {
    let mut before: Vec<Id> = Vec::new();
    for line in days.iter().flat_map(|day| &day.work) {
        let number = before.iter().filter(|task| **task == line.task).count();
        before.push(line.task);
        file.event(&Event {
            identity: format!("agenda-work-{}-{number}", line.task),
            span: Span::Hours { from: line.from, until: line.until },
            summary: plan.name_of(line.task).unwrap_or_default(),
            description: &description(plan, line, words),
        });
    }
}

/// With whom, with which tools and where, and what to bring, each in a line of its own.
fn description<F: Format>(plan: &Plan, line: &WorkLine, words: &Words<F>) -> String {
    let needs = needs_of(plan, line);
    let parts: [(&str, &[Id]); 3] =
        [("agenda-with", &line.who), ("days-tools", &needs.tools), ("days-bring", &needs.items)];
    let told = parts.iter().filter(|(_, ids)| !ids.is_empty()).map(|(key, ids)| {
        let names: Vec<&str> = ids.iter().filter_map(|id| plan.name_of(*id)).collect();
        words.with(key, &vec![("names", Figure::Name(names.join(", ")))])
    });
    told.collect::<Vec<_>>().join("\n")
}

/// An event for each tool that goes back and each place that is not there any longer, on its last day.
pub(super) fn tool_events<F: Format>(file: &mut CalendarFile, plan: &Plan, as_of: Date, words: &Words<F>) {
    let is_of_another = |tool: &&Tool| matches!(tool.tool_source, ToolSource::Borrowed | ToolSource::Hired);
    for tool in plan.tools.iter().filter(is_of_another) {
        let Some(until) = tool.there_until.filter(|until| *until >= as_of) else { continue };
        let key = match (tool.tool_kind, tool.lender.is_empty()) {
            (ToolKind::Place, _) => "agenda-place-until",
            (ToolKind::Tool, true) => "agenda-tool-back",
            (ToolKind::Tool, false) => "agenda-tool-back-to",
        };
        let figures: Figures =
            vec![("name", Figure::Name(tool.name.clone())), ("lender", Figure::Name(tool.lender.clone()))];
        file.event(&Event {
            identity: format!("agenda-tool-back-{}", tool.id),
            span: Span::day(until),
            summary: &words.with(key, &figures),
            description: "",
        });
    }
}
