//! Charge by hour, the stores and what hangs on them.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Item, Path, Plan, Quantity};

use super::{balance_head, section};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{t, words};
use crate::parts::{PlotData, fields, plot};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn power() -> View {
    fragment()
        .put(balance_head(Balance::Power))
        .put(plots())
        .put(section(key!("power-stores"), items(|item| item.store.is_some(), store_line, "power-add-store")))
        .put(section(key!("power-draws"), items(|item| item.draw.is_some(), draw_line, "power-add-draw")))
        .put(section(key!("power-vehicle"), fields(&Path::section("vehicle"), SOCKET)))
        .done()
}

const SOCKET: &[&str] = &["socket_volts", "socket_fuse_a"];

fn plots() -> View {
    let app = App::here();
    let stores = live::memo(move || {
        app.assessment(|assessment| assessment.power.stores.iter().map(|store| store.item).collect::<Vec<_>>())
    });
    live::view(move || all(stores.get().into_iter().map(store_plot)))
}

fn store_plot(id: Id) -> View {
    let app = App::here();
    let name = move || app.plan(|plan| plan.item(id).map(|item| item.name.clone())).unwrap_or_default();
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let store = assessment.power.stores.iter().find(|store| store.item == id)?;
            Some(PlotData {
                title: "power-plot",
                from: assessment.power.from?,
                values: store.charge_wh.clone(),
                per_day: 24,
                quantity: Some(Quantity::EnergyWh),
                floor: 0.0,
                ceiling: Some(store.usable_wh),
                low_matters: true,
                today: assessment.as_of,
                marks: Vec::new(),
                band: None,
            })
        })
    });
    fragment().put(el("h2").put(live::text(name))).put(plot(data)).done()
}

/// Items of the kit that matter here, each a link to where it is edited.
fn items(matters: fn(&Item) -> bool, line: fn(&Item) -> String, add: &'static str) -> View {
    let app = App::here();
    let lines = live::memo(move || {
        app.plan(|plan: &Plan| {
            let items = plan.carried().filter(|item| matters(item));
            items.map(|item| (item.id, item.name.clone(), line(item))).collect::<Vec<_>>()
        })
    });
    let rows = move || {
        all(lines.get().into_iter().map(|(id, name, line)| {
            el("li")
                .put(el("a").attr("href", format!("{}/{id}", Page::Kit.link())).put(name))
                .put(el("span").put(line))
                .done()
        }))
    };
    fragment()
        .put(el("ul").class("item-lines").put(live::view(rows)))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(t(add))))
        .done()
}

fn store_line(item: &Item) -> String {
    item.store.map_or_else(String::new, |store| words(|words| words.measure(store.usable_wh, Quantity::EnergyWh)))
}

/// What it draws on a day it is used, at the outlet.
fn draw_line(item: &Item) -> String {
    let Some(draw) = item.draw else { return String::new() };
    words(|words| {
        let day = words.measure(draw.wh_per_day(item.quantity), Quantity::EnergyWh);
        let power = words.measure(draw.power_w.likely(), Quantity::PowerW);
        words.with("power-draw-line", &vec![("day", Figure::Name(day)), ("power", Figure::Name(power))])
    })
}
