//! Places to charge at, and which of them would be enough.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use kerbstead_core::power::Stops;
use serde_json::json;

use super::outlook::Asking;
use crate::el::{View, el, fragment};
use crate::locale::say_date;
use crate::parts::{Entries, button, fields, named_in};
use crate::state::App;

const FIELDS: &[&str] =
    &["name", "gives", "stay", "on", "from_hour", "charging_hours", "gives_w", "stop_price", "hour_price", "in_use"];

/// The places, and the stops that would do.
pub fn charging(asking: Asking) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(place) = plan.charging.iter().find(|place| place.id == id) else { return Default::default() };
        let when = match (place.on, place.stay) {
            (Some(on), _) => say_date(on),
            (None, Some(stay)) => {
                plan.stays.iter().find(|of| of.id == stay).map_or_else(String::new, |stay| stay.place.clone())
            }
            (None, None) => t!("charging-any-day"),
        };
        let state = if place.in_use { t!("charging-in-use") } else { t!("charging-possible") };
        (place.name.clone(), [when, state].join(", "))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("charging", id), FIELDS)
    }
    let list = Entries { list: List::Charging, line, body, fresh: || json!({}), add: key!("charging-add") };
    fragment()
        .put(el("p").put(key!("charging-hint")))
        .put(list.show())
        .put(asking.view(|app, outlook| {
            if outlook.runs == 0 {
                return fragment().done();
            }
            fragment()
                .put(el("h3").put(key!("stops-fewest")))
                .put(stops(app, &outlook.fewest))
                .put(el("h3").put(key!("stops-cheapest")))
                .put(stops(app, &outlook.cheapest))
                .done()
        }))
        .done()
}

fn stops(app: App, stops: &Stops) -> View {
    if !stops.is_found {
        return el("p").put(if stops.is_proven { t!("stops-impossible") } else { t!("stops-not-found") }).done();
    }
    if stops.stops.is_empty() {
        return el("p").put(key!("stops-none-needed")).done();
    }
    let line = |stop: &kerbstead_core::power::Stop| {
        let figures = vec![
            ("name", Figure::Name(app.desk.plan.with_untracked(|plan| named_in(plan, stop.place)))),
            ("on", Figure::Date(stop.on)),
            ("from", Figure::of(stop.from_hour, Quantity::HourOfDay)),
            ("hours", Figure::of(stop.hours, Quantity::Hours)),
            ("price", Figure::Money(stop.price)),
        ];
        el("li").put(tell!("stops-line", &figures)).done()
    };
    let figures = vec![("count", Figure::count(stops.stops.len())), ("price", Figure::Money(stops.price))];
    let sum = if stops.is_proven { tell!("stops-proven", &figures) } else { tell!("stops-thumb", &figures) };
    let taken = stops.clone();
    let take = move || {
        let edit = app.plan(|plan| taken.taking(plan));
        app.edit_and_tell(edit, t!("stops-taken"));
    };
    fragment()
        .put(el("p").put(sum))
        .put(el("ul").class("lines").put_each(stops.stops.iter().map(line)))
        .put(button(key!("stops-take"), take))
        .done()
}
