//! The days of work as a sheet to print, with boxes for a pencil.

use kerbstead_core::days::DayPlan;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Plan, ToolKind};

use super::sheet::line_text;
use crate::el::{View, el, fragment};
use crate::locale::{say_day, tell};
use crate::pages::papers::box_to_tick;
use crate::parts::named_in;
use crate::state::App;

/// The sheet.
pub fn day_sheet(app: App) -> View {
    let days: Vec<View> =
        app.assessment(|now| app.plan(|plan| now.days.days.iter().map(|day| one(plan, day)).collect()));
    let none = days.is_empty().then(|| el("p").put(key!("days-none")).done());
    fragment().put(el("h2").put(key!("sheet-days"))).put_each(days).put(none).done()
}

fn one(plan: &Plan, day: &DayPlan) -> View {
    let late = day.is_late.then(|| el("p").put(key!("days-after-leaving")).done());
    let lines = day.work.iter().map(|line| el("li").put(box_to_tick(&line_text(plan, line), 1)).done());
    let names = |key: &'static str, ids: &[Id]| {
        let names = ids.iter().map(|id| to_tick(plan, *id)).collect::<Vec<_>>().join(", ");
        (!ids.is_empty()).then(|| el("p").put(tell(key, &vec![("names", Figure::Name(names))])).done())
    };
    el("section")
        .class("day")
        .put(el("h3").put(say_day(day.on)))
        .put(late)
        .put(el("ul").class("ticks").put_each(lines))
        .put(names("days-tools", &day.tools))
        .put(names("days-bring", &day.items))
        .done()
}

/// A thing or tool with a box; a place, which nobody brings, without.
fn to_tick(plan: &Plan, id: Id) -> String {
    let name = named_in(plan, id);
    let is_place = plan.tools.iter().any(|tool| tool.id == id && tool.tool_kind == ToolKind::Place);
    if is_place { name } else { box_to_tick(&name, plan.item(id).map_or(1, |item| item.quantity)) }
}
