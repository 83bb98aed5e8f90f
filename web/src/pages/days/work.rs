//! What is to be done, who does it, and with what: the entries of the work.

use kerbstead_core::Balance;
use kerbstead_core::days::{add_implied, add_starters, implied};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Hands, Id, List, Path, Plain, Plan, Quantity, TaskNeed};
use kerbstead_core::words::Key;
use serde_json::json;

use super::super::{section, standing, verdict_line};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{say_date, say_measure, t};
use crate::parts::{Entries, button, field, fields, named_in, said_value};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn work() -> View {
    let app = App::here();
    fragment()
        .put(el("h1").put(key!("page-work")))
        .put(verdict_line(live::memo(move || standing(app, Balance::Days))))
        .put(section(key!("work-tasks"), tasks()))
        .put(section(key!("work-implied"), of_the_kit()))
        .put(section(key!("work-helpers"), helpers()))
        .put(section(key!("work-other-days"), other_days()))
        .put(section(key!("work-tools"), tools()))
        .put(section(key!("work-building"), fields(&Path::section("building"), BUILDING)))
        .put(section(key!("work-dates"), fields(&Path::section("calendar"), &["starts_on", "leaves_on"])))
        .put(el("p").class("links").put(el("a").attr("href", Page::Days.link()).put(key!("days-back"))))
        .done()
}

const BUILDING: &[&str] = &[
    "arrives_on",
    "light_from_hour",
    "light_until_hour",
    "dry_percent",
    "day_longer",
    "road_extra_percent",
    "road_day",
];
const TASK: &[&str] = &[
    "name",
    "hours",
    "hands",
    "spent_hours",
    "done_on",
    "not_before",
    "wait_hours",
    "wait",
    "in_one_go",
    "daylight",
    "dry",
    "without_van",
    "can_wait",
    "left_out",
    "for_item",
    "note",
];

fn tasks() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(task) = plan.tasks.iter().find(|task| task.id == id) else { return Default::default() };
        let value = match (task.done_on, task.left_out) {
            (Some(on), _) => tell!("work-done-on", &vec![("on", Figure::Date(on))]),
            (None, true) => t!("work-left-out"),
            (None, false) => {
                let hours = task.hours.map_or(0.0, |hours| hours.likely());
                let hours = say_measure(hours, Quantity::Hours);
                let path = Path::entry("tasks", id).child("hands");
                match task.hands {
                    Hands::One => hours,
                    more => format!("{hours} · {}", said_value(plan, &path, &more.to_plain())),
                }
            }
        };
        (task.name.clone(), value)
    }
    fn body(id: Id) -> View {
        all([fields(&Path::entry("tasks", id), TASK), needs(id)])
    }
    let app = App::here();
    let add_usual = move || {
        let edit = app.plan(|plan| add_starters(plan, &|key| t(key)));
        app.edit_and_tell(edit, t!("work-starters-added"));
    };
    fragment()
        .put(Entries { list: List::Tasks, line, body, fresh: || json!({}), add: key!("tasks-add") }.show())
        .put(el("p").put(key!("work-starters-hint")))
        .put(button(key!("work-starters-add"), add_usual).class("add"))
        .done()
}

/// What a task needs, each with a way to choose another and to take it out.
fn needs(task: Id) -> View {
    let app = App::here();
    let ids = live::memo(move || {
        app.plan(|plan| {
            let of_task = plan.task_needs.iter().filter(|need| need.task == Some(task));
            of_task.map(|need| need.id).collect::<Vec<_>>()
        })
    });
    let row = move |id: Id| {
        let kinds = app.plan(|plan| plan.task_needs.iter().find(|need| need.id == id).map_or(Vec::new(), kinds_of));
        let path = Path::entry("task_needs", id);
        let take_out = move || {
            app.edit_and_tell(Edit::Remove { list: List::TaskNeeds, id }, t!("work-need-removed"));
        };
        el("li")
            .put_each(kinds.into_iter().map(|kind| field(path.child(kind))))
            .put(button(key!("work-need-remove"), take_out).class("quiet"))
            .done()
    };
    let adding = ADDED.map(|(kind, list, text)| {
        let add = move || app.edit(new_need(app, task, kind, list));
        let is_there = move || app.plan(|plan| list.ids(plan).iter().any(|id| *id != task));
        live::when(is_there, move || button(text, add).class("quiet").done())
    });
    el("fieldset")
        .put(el("legend").put(key!("work-needs")))
        .put(el("ul").class("needs").put(live::rows(ids, row)))
        .put_each(adding)
        .done()
}

/// What can be needed: the field, the list it is chosen from, the text of the button.
const ADDED: [(&str, List, Key); 4] = [
    ("after", List::Tasks, key!("work-need-task")),
    ("tool", List::Tools, key!("work-need-tool")),
    ("thing", List::Kit, key!("work-need-thing")),
    ("at_home", List::Belongings, key!("work-need-at-home")),
];

/// The fields of a need that name something.
fn kinds_of(need: &TaskNeed) -> Vec<&'static str> {
    let all = [("after", need.after), ("tool", need.tool), ("thing", need.thing), ("at_home", need.at_home)];
    let named = all.into_iter().filter(|(_, id)| id.is_some()).map(|(kind, _)| kind).collect::<Vec<_>>();
    if named.is_empty() { vec!["after"] } else { named }
}

/// A need with the first that there is, to be changed by whoever meant another.
fn new_need(app: App, task: Id, kind: &str, list: List) -> Edit {
    let (id, first) = app.plan(|plan| (plan.next_id(), list.ids(plan).into_iter().find(|id| *id != task)));
    let mut entry = json!({ "id": id, "task": task });
    entry[kind] = first.unwrap_or_default().into();
    Edit::Insert { list: List::TaskNeeds, at: usize::MAX, entry }
}

/// Things of the kit that imply a task which is not on the list: a tap adds it.
fn of_the_kit() -> View {
    let app = App::here();
    let things = live::memo(move || {
        app.plan(|plan| {
            let is_missing = |id: Id| plan.tasks.iter().all(|task| task.for_item != Some(id));
            let implied = plan.kit.iter().filter(|item| implied(item).is_some() && is_missing(item.id));
            implied.map(|item| item.id).collect::<Vec<_>>()
        })
    });
    let row = move |id: Id| {
        let name = app.desk.plan.with_untracked(|plan| task_name(plan, id));
        let add = {
            let name = name.clone();
            move || {
                let edit = app.plan(|plan| add_implied(plan, plan.item(id)?, &name));
                if let Some(edit) = edit {
                    app.edit_and_tell(edit, tell!("work-added", &vec![("name", Figure::Name(name.clone()))]));
                }
            }
        };
        el("li").put(el("button").attr("type", "button").on_click(add).put(name)).done()
    };
    let list = move || {
        if things.with(Vec::is_empty) {
            return el("p").put(key!("work-implied-none")).done();
        }
        el("ul").class("starter-list").put(live::rows(things, row)).done()
    };
    fragment().put(el("p").put(key!("work-implied-hint"))).put(live::view(list)).done()
}

/// The name of the task that a thing implies.
fn task_name(plan: &Plan, id: Id) -> String {
    let Some(implied) = plan.item(id).and_then(implied) else { return String::new() };
    crate::locale::tell(implied.key, &vec![("name", Figure::Name(named_in(plan, id)))])
}

fn helpers() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(helper) = plan.helpers.iter().find(|helper| helper.id == id) else { return Default::default() };
        let hours = |value: Option<f64>| say_measure(value.unwrap_or(0.0), Quantity::Hours);
        let figures = vec![
            ("workday", Figure::Name(hours(helper.workday_hours))),
            ("saturday", Figure::Name(hours(helper.saturday_hours))),
            ("sunday", Figure::Name(hours(helper.sunday_hours))),
        ];
        (helper.name.clone(), tell!("work-helper-hours", &figures))
    }
    fn body(id: Id) -> View {
        let names = &[
            "name",
            "workday_hours",
            "saturday_hours",
            "sunday_hours",
            "workday_from_hour",
            "weekend_from_hour",
            "is_skilled",
            "comes_from",
            "comes_until",
        ];
        fields(&Path::entry("helpers", id), names)
    }
    Entries { list: List::Helpers, line, body, fresh: || json!({}), add: key!("helpers-add") }.show()
}

fn other_days() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(day) = plan.other_days.iter().find(|day| day.id == id) else { return Default::default() };
        let who = day.helper.map_or_else(|| t!("work-everybody"), |helper| named_in(plan, helper));
        let on = day.first_day.map_or_else(String::new, say_date);
        let hours = match day.hours_then {
            Some(hours) => say_measure(hours, Quantity::Hours),
            None => t!("work-day-off"),
        };
        (who, format!("{on} {hours}"))
    }
    fn body(id: Id) -> View {
        let names = &["helper", "first_day", "last_day", "hours_then", "from_hour"];
        fields(&Path::entry("other_days", id), names)
    }
    Entries { list: List::OtherDays, line, body, fresh: || json!({}), add: key!("other-days-add") }.show()
}

fn tools() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(tool) = plan.tools.iter().find(|tool| tool.id == id) else { return Default::default() };
        let path = Path::entry("tools", id).child("tool_source");
        (tool.name.clone(), said_value(plan, &path, &tool.tool_source.to_plain()))
    }
    fn body(id: Id) -> View {
        let names =
            &["name", "tool_kind", "tool_source", "lender", "there_from", "there_until", "on_days", "price_per_day"];
        fields(&Path::entry("tools", id), names)
    }
    Entries { list: List::Tools, line, body, fresh: || json!({}), add: key!("tools-add") }.show()
}
