//! Charge by hour, a day's energy, how likely it lasts, where to charge, and what hangs on the stores.

mod aisle;
mod charging;
mod course;
mod daily;
mod day;
mod import;
mod outlook;
mod sky;
mod tonight;

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Item, Path, Plan, Quantity};

pub use aisle::aisle;
pub use sky::sky;
pub use tonight::tonight;

use super::{balance_head, section};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{say_measure, t, words};
use crate::parts::fields;
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn power() -> View {
    let app = App::here();
    let outlook = outlook::Asking::of(app);
    fragment()
        .put(balance_head(Balance::Power))
        .put(links())
        .put(section(key!("power-course"), course::courses(app, outlook)))
        .put(section(key!("power-daily"), daily::daily(app, outlook)))
        .put(section(key!("power-likely"), outlook.told()))
        .put(section(key!("power-sizes"), outlook.sizes()))
        .put(section(key!("power-charging"), charging::charging(outlook)))
        .put(section(key!("power-stores"), items(|item| item.store.is_some(), store_line, "power-add-store")))
        .put(section(key!("power-panels"), items(|item| item.panel.is_some(), panel_line, "power-add-panel")))
        .put(section(key!("power-draws"), items(|item| item.draw.is_some(), draw_line, "power-add-draw")))
        .put(section(key!("power-vehicle"), fields(&Path::section("vehicle"), SOCKET)))
        .done()
}

const SOCKET: &[&str] = &["socket_volts", "socket_fuse_a"];

/// The pages that belong to it.
fn links() -> View {
    let line = |page: &Page| el("li").put(el("a").attr("href", page.link()).put(page.title())).done();
    el("ul").class("more").put_each([Page::Tonight, Page::Sky, Page::Aisle].iter().map(line)).done()
}

/// Items of the kit that matter here, each a link to where it is edited.
pub(super) fn items(matters: fn(&Item) -> bool, line: fn(&Item) -> String, add: &'static str) -> View {
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
    let usable = |store| say_measure(kerbstead_core::power::usable_wh(store), Quantity::EnergyWh);
    item.store.as_ref().map_or_else(String::new, usable)
}

fn panel_line(item: &Item) -> String {
    item.panel.map_or_else(String::new, |panel| say_measure(panel.peak_w * f64::from(item.kept()), Quantity::PowerW))
}

/// What it draws on a day it is used, at the outlet.
pub(super) fn draw_line(item: &Item) -> String {
    let Some(draw) = item.draw else { return String::new() };
    words(|words| {
        let power = words.measure(draw.power_w.likely(), Quantity::PowerW);
        if draw.works.unwrap_or_default() != kerbstead_core::plan::Works::ByClock {
            return power;
        }
        let day = words.measure(draw.wh_per_day(item.quantity), Quantity::EnergyWh);
        words.with("power-draw-line", &vec![("day", Figure::Name(day)), ("power", Figure::Name(power))])
    })
}
