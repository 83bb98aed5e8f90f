//! The prices of one thing, and taking them into the plan.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::selling::{NoSchedule, Prices, Schedule, taking, told_chance};
use kerbstead_core::plan::Id;

use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::parts::{button, named_in};
use crate::state::App;

/// What to ask for it from which day on; nothing while there are no prices.
pub fn prices(id: Id, found: Memo<Result<Schedule, NoSchedule>>) -> View {
    let of_it = live::memo(move || {
        found.with(|found| {
            let found = found.as_ref().ok()?;
            let prices = found.prices.iter().find(|prices| prices.id == id)?;
            Some((prices.clone(), found.on))
        })
    });
    let app = App::here();
    let take = move || {
        let edit = found.with(|found| found.as_ref().ok().and_then(|found| app.plan(|plan| taking(plan, found, id))));
        let name = app.plan(|plan| named_in(plan, id));
        if let Some(edit) = edit {
            app.edit_and_tell(edit, tell!("selling-taken", &vec![("name", Figure::Name(name))]));
        }
    };
    live::view(move || {
        of_it.with(|of_it| {
            let Some((prices, on)) = of_it else { return nothing() };
            let figures = vec![
                ("on", Figure::Date(*on)),
                ("percent", told_chance(prices.percent)),
                ("likely", Figure::Money(prices.likely)),
            ];
            fragment()
                .put(el("h3").put(key!("selling-prices")))
                .put(list(prices))
                .put(el("p").put(tell!("selling-prices-bring", &figures)))
                .put(button(key!("selling-take"), take))
                .done()
        })
    })
}

fn list(prices: &Prices) -> View {
    let line = |(from, asking): &(jiff::civil::Date, kerbstead_core::plan::Money)| {
        let figures = vec![("from", Figure::Date(*from)), ("asking", Figure::Money(*asking))];
        el("li").put(tell!("selling-ask", &figures)).done()
    };
    el("ol").class("steps").put_each(prices.asked.iter().map(line)).done()
}
