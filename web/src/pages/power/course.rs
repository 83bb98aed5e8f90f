//! Charge by hour along the route, of which a day can be looked at.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Quantity};

use super::day::day;
use super::outlook::Asking;
use crate::el::{View, all, el, fragment};
use crate::live::{self, Signal};
use crate::parts::{Picked, PlotData, button, named_in, plot_to_pick};
use crate::state::App;

/// A drawing a store.
pub fn courses(app: App, asking: Asking) -> View {
    let stores = live::memo(move || {
        app.assessment(|assessment| assessment.power.stores.iter().map(|store| store.item).collect::<Vec<_>>())
    });
    live::view(move || {
        let stores = stores.get();
        if stores.is_empty() {
            return el("p").put(key!("power-no-course")).done();
        }
        let is_only = stores.len() == 1;
        all(stores.into_iter().map(|id| course(app, id, asking, is_only)))
    })
}

fn course(app: App, id: Id, asking: Asking, is_only: bool) -> View {
    let picked: Picked = Signal::new(None);
    let name = move || app.plan(|plan| named_in(plan, id));
    let data = live::memo(move || {
        let band = if is_only { asking.band() } else { None };
        app.settled_assessment(|assessment| {
            let store = assessment.power.stores.iter().find(|store| store.item == id)?;
            Some(PlotData {
                per_day: 24,
                quantity: Some(Quantity::EnergyWh),
                floor: store.floor_wh,
                ceiling: Some(store.usable_wh),
                low_matters: true,
                band,
                ..PlotData::by_day("power-plot", assessment.power.from?, assessment.as_of, store.charge_wh.clone())
            })
        })
    });
    let cycles = move || {
        app.settled_assessment(|assessment| {
            let store = assessment.power.stores.iter().find(|store| store.item == id)?;
            let figures = vec![
                ("cycles", Figure::of(store.cycles, Quantity::Count)),
                ("reserve", Figure::of(store.reserve_hours, Quantity::Hours)),
            ];
            Some(tell!("power-cycles", &figures))
        })
        .unwrap_or_default()
    };
    fragment()
        .put(el("h3").put(live::text(name)))
        .put(plot_to_pick(data, picked))
        .put(el("p").put(live::text(cycles)))
        .put(steps(app, id, picked))
        .put(live::view(move || day(app, id, picked.get())))
        .done()
}

/// A day earlier, a day later, and the one on which there is least.
fn steps(app: App, id: Id, picked: Picked) -> View {
    let lowest = move || {
        app.desk.assessment.with_untracked(|assessment| {
            let store = assessment.power.stores.iter().find(|store| store.item == id)?;
            let least = store.charge_wh.iter().copied().fold(f64::INFINITY, f64::min);
            store.charge_wh.iter().position(|charge| *charge <= least)
        })
    };
    let shift = move |by: isize| {
        let now = picked.get_untracked().or_else(lowest).unwrap_or(0);
        let last = app.desk.assessment.with_untracked(|assessment| assessment.power.hours.len().saturating_sub(1));
        picked.set(Some(now.checked_add_signed(by).map_or(now, |next| next.min(last))));
    };
    el("div")
        .class("buttons")
        .put(button(key!("day-earlier"), move || shift(-24)))
        .put(button(key!("day-lowest"), move || picked.set(lowest())))
        .put(button(key!("day-later"), move || shift(24)))
        .done()
}
