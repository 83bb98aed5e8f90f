//! What a helper answers, put into the plan: their hours, their days, the tools they lend.

use super::answer::Answer;
use crate::plan::{Helper, Id, OtherDay, Plan, Tool, ToolSource};

/// Puts all of it into the plan. What is not theirs to say (their name there, whether they have done such work before,
/// the days of others) stays as it is.
pub(super) fn take(answer: &Answer, plan: &mut Plan) {
    if let Some(told) = &answer.helper
        && let Some(own) = helper_of(plan, told).and_then(|at| plan.helpers.get_mut(at))
    {
        *own = Helper { id: own.id, name: own.name.clone(), is_skilled: own.is_skilled, ..told.clone() };
        let helper = own.id;
        for day in &answer.other_days {
            take_day(plan, helper, day);
        }
    }
    for tool in answer.tools.iter().filter(|tool| !tool.name.trim().is_empty()) {
        take_tool(plan, &answer.from, tool);
    }
}

/// Where the helper stands that is meant: by id and name, or by the name alone.
pub(super) fn helper_of(plan: &Plan, told: &Helper) -> Option<usize> {
    let same = |helper: &Helper| helper.id == told.id && helper.name == told.name;
    let at = plan.helpers.iter().position(same);
    at.or_else(|| plan.helpers.iter().position(|helper| helper.name == told.name))
}

/// A day that is known is changed, or is gone where it has no first day any more; another one is new. Whoever takes it a
/// second time has it once.
fn take_day(plan: &mut Plan, helper: Id, day: &OtherDay) {
    let told = OtherDay { helper: Some(helper), ..*day };
    let is_same = |own: &OtherDay| own.id == told.id;
    let is_alike = |own: &OtherDay| (own.first_day, own.last_day) == (told.first_day, told.last_day);
    let own =
        |is: &dyn Fn(&OtherDay) -> bool| plan.other_days.iter().position(|own| own.helper == Some(helper) && is(own));
    match (own(&is_same).or_else(|| own(&is_alike)), told.first_day) {
        (Some(at), None) => drop(plan.other_days.remove(at)),
        (Some(at), Some(_)) => plan.other_days[at] = OtherDay { id: plan.other_days[at].id, ..told },
        (None, None) => {}
        (None, Some(_)) => {
            let id = plan.next_id();
            plan.other_days.push(OtherDay { id, ..told });
        }
    }
}

/// A tool that the plan knows by id and name, or by its name alone, is borrowed; another one is new and borrowed.
fn take_tool(plan: &mut Plan, lender: &str, told: &Tool) {
    let at = plan.tools.iter().position(|tool| tool.id == told.id && tool.name == told.name);
    let at = at.or_else(|| plan.tools.iter().position(|tool| tool.name == told.name));
    let new = Tool { id: plan.next_id(), name: told.name.clone(), tool_kind: told.tool_kind, ..Tool::default() };
    let before = at.and_then(|at| plan.tools.get(at)).cloned();
    let lent = Tool {
        tool_source: ToolSource::Borrowed,
        lender: lender.to_owned(),
        there_from: told.there_from,
        there_until: told.there_until,
        on_days: told.on_days,
        ..before.unwrap_or(new)
    };
    match at.and_then(|at| plan.tools.get_mut(at)) {
        Some(tool) => *tool = lent,
        None => plan.tools.push(lent),
    }
}
