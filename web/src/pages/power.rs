//! Charge by hour, the stores and what hangs on them.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Item, Path, Plan, Quantity};
use leptos::prelude::*;

use super::{balance_head, section};
use crate::el::{el, fragment};
use crate::live;
use crate::locale::{t, words};
use crate::parts::{PlotData, fields, plot};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn power() -> AnyView {
    fragment()
        .put(balance_head(Balance::Power))
        .put(plots())
        .put(section("power-stores", items(|item| item.store.is_some(), store_line, "power-add-store")))
        .put(section("power-draws", items(|item| item.draw.is_some(), draw_line, "power-add-draw")))
        .put(section("power-vehicle", fields(&Path::section("vehicle"), SOCKET)))
        .done()
}

const SOCKET: &[&str] = &["socket_volts", "socket_fuse_a"];

fn plots() -> AnyView {
    let app = App::here();
    let plots = live::memo(move || {
        app.assessment(|assessment| {
            let from = assessment.power.from?;
            let draw = |store: &kerbstead_core::power::StoreReport| {
                let data = PlotData {
                    title: "power-plot",
                    from,
                    values: store.charge_wh.clone(),
                    per_day: 24,
                    quantity: Some(Quantity::EnergyWh),
                    floor: 0.0,
                    ceiling: Some(store.usable_wh),
                    low_matters: true,
                    today: assessment.as_of,
                };
                (store.item, data)
            };
            Some(assessment.power.stores.iter().map(draw).collect::<Vec<_>>())
        })
    });
    let name = move |id| app.plan(|plan| plan.item(id).map(|item| item.name.clone()));
    let views = move || {
        plots
            .get()
            .unwrap_or_default()
            .into_iter()
            .map(|(item, data)| fragment().put(el("h2").put(name(item))).put(plot(data)).done())
            .collect::<Vec<_>>()
            .into_any()
    };
    live::view(views)
}

/// Items of the kit that matter here, each a link to where it is edited.
fn items(matters: fn(&Item) -> bool, line: fn(&Item) -> String, add: &'static str) -> AnyView {
    let app = App::here();
    let lines = live::memo(move || {
        app.plan(|plan: &Plan| {
            let items = plan.carried().filter(|item| matters(item));
            items.map(|item| (item.id, item.name.clone(), line(item))).collect::<Vec<_>>()
        })
    });
    let rows = move || {
        lines
            .get()
            .into_iter()
            .map(|(id, name, line)| {
                el("li")
                    .put(el("a").attr("href", format!("{}/{id}", Page::Kit.link())).put(name))
                    .put(el("span").put(line))
                    .done()
            })
            .collect::<Vec<_>>()
            .into_any()
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
