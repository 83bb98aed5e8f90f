//! How likely the stores last, and what sizes would do: asked of the worker.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::Odds;
use kerbstead_core::plan::{Id, Plain, Quantity};
use kerbstead_core::power::{Outlook, Size};
use kerbstead_core::task::Subject;

use super::super::money::{odds, waiting};
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::parts::{Band, named_in};
use crate::state::App;
use crate::worker::{Asked, ask_and_follow};

/// What is asked, and what came of it.
#[derive(Clone, Copy)]
pub struct Asking {
    app: App,
    pub asked: Asked,
    pub outlook: Memo<Option<Outlook>>,
}

impl Asking {
    /// Asks.
    pub fn of(app: App) -> Self {
        let asked = ask_and_follow(app, Subject::Power);
        let outlook = live::memo(move || asked.answer.with(|answer| Outlook::from_plain(answer.as_ref()?)));
        Self { app, asked, outlook }
    }

    /// Draws from the answer; nothing while there is none.
    pub fn view(self, draw: impl Fn(App, &Outlook) -> View + 'static) -> View {
        let app = self.app;
        let told = move || self.outlook.with(|outlook| outlook.as_ref().map_or_else(nothing, |found| draw(app, found)));
        fragment().put(waiting(self.asked)).put(live::view(told)).done()
    }

    /// Where the charge lies in eight runs of ten.
    pub fn band(self) -> Option<Band> {
        self.outlook.with(|outlook| {
            let outlook = outlook.as_ref().filter(|outlook| outlook.runs > 0)?;
            let (low, high) = (outlook.low_wh.clone(), outlook.high_wh.clone());
            Some(Band { from: outlook.from, skips: outlook.from_hour as usize, low, high })
        })
    }

    /// The chance that it lasts.
    pub fn told(self) -> View {
        self.view(|_, outlook| {
            if outlook.runs == 0 {
                return el("p").put(key!("power-no-runs")).done();
            }
            let chance = odds(Odds::of(outlook.kept, outlook.runs), outlook.runs);
            let figures = vec![("from", Figure::Date(outlook.from)), ("runs", Figure::count(outlook.runs as usize))];
            let how = el("details")
                .put(el("summary").put(key!("chances-how")))
                .put(el("p").put(tell!("power-how", &figures)));
            fragment().put(el("p").put(key!("power-kept")).put(" ").put(el("strong").put(chance))).put(how).done()
        })
    }

    /// The least panel and the least store.
    pub fn sizes(self) -> View {
        self.view(|app, outlook| {
            if outlook.runs == 0 {
                return el("p").put(key!("power-no-runs")).done();
            }
            let name = app.desk.plan.with_untracked(|plan| named_in(plan, outlook.store));
            let panel = size(&outlook.least_panel, Quantity::PowerW, &name, true);
            let store = size(&outlook.least_store, Quantity::EnergyWh, &name, false);
            fragment().put(el("p").put(panel)).put(el("p").put(store)).put(el("p").put(key!("power-sizes-hint"))).done()
        })
    }

    /// What a draw costs in hours.
    pub fn cost_of(self, item: Id) -> String {
        self.outlook.with(|outlook| {
            let Some(outlook) = outlook else { return t!("power-cost-waiting") };
            let cost = outlook.costs.iter().find(|cost| cost.item == item);
            cost.map_or_else(
                || t!("power-cost-none"),
                |cost| tell!("power-cost", &vec![("hours", Figure::of(cost.hours, Quantity::Hours))]),
            )
        })
    }
}

fn size(size: &Size, quantity: Quantity, name: &str, is_panel: bool) -> String {
    let mut figures = vec![("name", Figure::Name(name.to_owned()))];
    if size.is_prevented {
        return tell!("power-size-prevented", &figures);
    }
    let Some(least) = size.least else {
        return if is_panel { tell!("power-no-panel-does", &figures) } else { tell!("power-no-store-does", &figures) };
    };
    let measure = |value: u32| Figure::of(f64::from(value), quantity);
    figures.push(("least", measure(least)));
    let text = match (is_panel, least) {
        (true, 0) => tell!("power-no-panel-needed", &figures),
        (true, _) => tell!("power-least-panel", &figures),
        (false, _) => tell!("power-least-store", &figures),
    };
    match size.greater_fails {
        None => text,
        Some(greater) => [text, tell!("power-size-uneven", &vec![("greater", measure(greater))])].join(" "),
    }
}
