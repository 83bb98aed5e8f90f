//! What a friend who helps sees of a plan, and what they say to it: their hours, their days, the tools they lend.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::field;
use kerbstead_core::plan::{Helper, Id, OtherDay, Path, Plain, Plan, Tool};
use kerbstead_core::share::Answer;
use serde_json::Value;

use super::reply::Reply;
use super::section;
use crate::browser;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{tell, words};
use crate::parts::{asked, button, field_label, named, tick_box};

/// The dates, the tasks with what they need, the tools.
pub fn work(plan: &Plan) -> View {
    let on = |key: &'static str, on| Some(el("p").put(tell(key, &vec![("on", Figure::Date(on?))])).done());
    let tasks = plan.tasks.iter().map(|task| task_line(plan, task.id));
    let tools = plan.tools.iter().map(|tool| {
        let path = Path::entry("tools", tool.id);
        let is_dated = tool.there_from.is_some() || tool.there_until.is_some();
        line(plan, &path, if is_dated { TOOL_DATED } else { TOOL })
    });
    fragment()
        .put(on("helping-from", plan.building.arrives_on))
        .put(on("helping-until", plan.calendar.leaves_on))
        .put(section(key!("work-tasks"), el("ul").class("marks").put_each(tasks).done()))
        .put(section(key!("work-tools"), el("ul").class("marks").put_each(tools).done()))
        .done()
}

const TASK: &[&str] =
    &["hours", "hands", "not_before", "in_one_go", "daylight", "dry", "without_van", "can_wait", "wait_hours", "note"];
const TOOL: &[&str] = &["tool_source", "lender", "on_days"];
const TOOL_DATED: &[&str] = &["tool_source", "lender", "there_from", "there_until", "on_days"];

fn task_line(plan: &Plan, id: Id) -> View {
    let needs = || plan.task_needs.iter().filter(|need| need.task == Some(id));
    let names = |key: &'static str, ids: Vec<Id>| {
        let names: Vec<&str> = ids.iter().filter_map(|id| plan.name_of(*id)).collect();
        (!names.is_empty())
            .then(|| el("p").class("side").put(tell(key, &vec![("names", Figure::Name(names.join(", ")))])))
    };
    fragment()
        .put(line(plan, &Path::entry("tasks", id), TASK))
        .put(names("helping-after", needs().filter_map(|need| need.after).collect()))
        .put(names("days-tools", needs().filter_map(|need| need.tool).collect()))
        .put(names("days-bring", needs().filter_map(|need| need.thing).collect()))
        .done()
}

/// The name of an entry, and those of its fields that say something.
fn line(plan: &Plan, path: &Path, names: &[&str]) -> View {
    let name = plan.value(&path.child("name")).as_str().unwrap_or_default().to_owned();
    let values = names.iter().filter_map(|name| {
        let (path, value) = (path.child(name), plan.value(&path.child(name)));
        let says_nothing = value.is_null() || value == Value::Bool(false) || value.as_str() == Some("");
        let field = field::at(&path).filter(|_| !says_nothing)?;
        Some(format!("{}: {}", field_label(field), words(|words| words.value(plan, Some(field), &value))))
    });
    let values = values.collect::<Vec<_>>().join(" · ");
    el("li").put(el("span").class("name").put(named(name))).put(" ").put(el("small").put(values)).done()
}

/// What the friend says, and the answer that comes of it.
pub fn answering(text: &str, plan: &Plan) -> View {
    let helper = plan.helpers.first().cloned();
    let reply = Reply::to(text, &plan.title);
    if let Some(helper) = &helper {
        reply.sign(&helper.name);
    }
    fragment()
        .put(el("p").put(key!("helping-hint")))
        .put(helper.map(|helper| when(plan, &helper, reply)))
        .put(part(key!("helping-tools"), tools(plan, reply)))
        .put(reply.sending())
        .done()
}

fn part(legend: impl crate::el::Part, content: View) -> View {
    el("fieldset").put(el("legend").put(legend)).put(content).done()
}

const HOURS: [&str; 7] = [
    "workday_hours",
    "saturday_hours",
    "sunday_hours",
    "workday_from_hour",
    "weekend_from_hour",
    "comes_from",
    "comes_until",
];

fn when(plan: &Plan, helper: &Helper, reply: Reply) -> View {
    let now = reply.answer_now().helper.unwrap_or_else(|| helper.clone()).to_plain();
    let hours = HOURS.map(|name| {
        let first = helper.clone();
        let set = move |value| {
            reply.change(|answer| set_in(answer.helper.get_or_insert_with(|| first.clone()), name, value));
        };
        asked(&Path::entry("helpers", helper.id).child(name), now.get(name).unwrap_or(&Value::Null), set)
    });
    fragment()
        .put(part(key!("helping-hours"), el("div").class("fields").put_each(hours).done()))
        .put(part(key!("work-other-days"), other_days(plan, helper, reply)))
        .done()
}

/// The friend's days that are otherwise: those of the plan, as they are changed or taken back, and new ones.
fn other_days(plan: &Plan, helper: &Helper, reply: Reply) -> View {
    let of_plan: Vec<OtherDay> = plan.other_days.iter().filter(|day| day.helper == Some(helper.id)).copied().collect();
    let ids = {
        let of_plan = of_plan.clone();
        live::memo(move || {
            reply.with(|answer| {
                let is_kept = |id: &Id| answer.other_days.iter().all(|day| day.id != *id || day.first_day.is_some());
                let new = answer.other_days.iter().map(|day| day.id).filter(|id| Answer::is_new(*id));
                of_plan.iter().map(|day| day.id).filter(is_kept).chain(new).collect::<Vec<_>>()
            })
        })
    };
    let of_helper = helper.clone();
    let put = move |day: OtherDay| {
        reply.change(|answer| {
            answer.helper.get_or_insert_with(|| of_helper.clone());
            answer.put_day(day);
        });
    };
    let (put_new, helper) = (put.clone(), helper.id);
    let add = move || {
        let id = reply.answer_now().new_id();
        put_new(OtherDay { id, helper: Some(helper), first_day: Some(browser::today()), ..OtherDay::default() });
    };
    let row = move |id: Id| {
        let of_plan = of_plan.iter().find(|day| day.id == id).copied();
        let now = move || {
            let said = reply.answer_now().other_days.into_iter().find(|day| day.id == id);
            said.or(of_plan).unwrap_or_default()
        };
        day_row(now, put.clone())
    };
    fragment()
        .put(el("ul").class("marks").put(live::rows(ids, row)))
        .put(button(key!("other-days-add"), add).class("add"))
        .done()
}

fn day_row(now: impl Fn() -> OtherDay + Copy + 'static, put: impl Fn(OtherDay) + Clone + 'static) -> View {
    let (day, path) = (now(), Path::entry("other_days", now().id));
    let plain = day.to_plain();
    let fields = ["first_day", "last_day", "hours_then", "from_hour"].map(|name| {
        let put = put.clone();
        let set = move |value: Value| {
            // A day that is emptied while another one is typed is not taken back: there is a button for that.
            if name != "first_day" || !value.is_null() {
                let mut day = now();
                set_in(&mut day, name, value);
                put(day);
            }
        };
        asked(&path.child(name), plain.get(name).unwrap_or(&Value::Null), set)
    });
    let take_back = move || put(OtherDay { first_day: None, ..now() });
    el("li")
        .put(el("div").class("fields").put_each(fields))
        .put(button(key!("helping-day-back"), take_back).class("quiet"))
        .done()
}

/// The tools of the plan, each to be ticked by who can lend it, and others.
fn tools(plan: &Plan, reply: Reply) -> View {
    let known = plan.tools.iter().map(|tool| {
        let (id, tool) = (tool.id, tool.clone());
        let name = named(tool.name.clone());
        let is_on = move || reply.with(|answer| answer.tools.iter().any(|lent| lent.id == id));
        let lend = move |is_on: bool| {
            let is_theirs = tool.lender == reply.answer_now().from;
            let days = if is_theirs { tool.clone() } else { Tool::default() };
            let lent = Tool { id, name: tool.name.clone(), tool_kind: tool.tool_kind, ..days };
            reply.change(|answer| {
                answer.tools.retain(|lent| lent.id != id);
                answer.tools.extend(is_on.then_some(lent));
            });
        };
        let days = live::when(is_on, move || tool_fields(reply, id, &["there_from", "there_until", "on_days"]));
        el("li").put(tick_box(format!("lend-{id}"), name, is_on, lend)).put(days).done()
    });
    let known: Vec<View> = known.collect();
    let new = live::memo(move || {
        reply
            .with(|answer| answer.tools.iter().map(|tool| tool.id).filter(|id| Answer::is_new(*id)).collect::<Vec<_>>())
    });
    let row = move |id: Id| {
        let take_out = move || reply.change(|answer| answer.tools.retain(|tool| tool.id != id));
        el("li")
            .put(tool_fields(reply, id, &["name", "there_from", "there_until", "on_days"]))
            .put(button(key!("helping-tool-out"), take_out).class("quiet"))
            .done()
    };
    let add = move || {
        reply.change(|answer| {
            let id = answer.new_id();
            answer.tools.push(Tool { id, ..Tool::default() });
        });
    };
    fragment()
        .put(el("ul").class("marks").put_each(known).put(live::rows(new, row)))
        .put(button(key!("helping-tool-add"), add).class("add"))
        .done()
}

fn tool_fields(reply: Reply, id: Id, names: &'static [&'static str]) -> View {
    let lent = reply.answer_now().tools.into_iter().find(|tool| tool.id == id).unwrap_or_default().to_plain();
    let fields = names.iter().map(|name| {
        let set = move |value| {
            reply.change(|answer| {
                if let Some(tool) = answer.tools.iter_mut().find(|tool| tool.id == id) {
                    set_in(tool, name, value);
                }
            });
        };
        asked(&Path::entry("tools", id).child(name), lent.get(*name).unwrap_or(&Value::Null), set)
    });
    el("div").class("fields").put_each(fields).done()
}

/// Sets a field of an entry; what it cannot hold leaves it as it is.
fn set_in<T: Plain + Default>(entry: &mut T, name: &str, value: Value) {
    let mut plain = entry.to_plain();
    plain[name] = value;
    if let Some(changed) = T::from_plain(&plain) {
        *entry = changed;
    }
}
