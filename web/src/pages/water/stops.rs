//! Stops for water, and the fewest that do.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use kerbstead_core::water::Outlook;
use serde_json::json;

use super::answers::Asking;
use crate::el::{View, el, fragment};
use crate::locale::say_date;
use crate::parts::{Entries, fields, named};
use crate::state::App;

const FIELDS: &[&str] =
    &["name", "stay", "on", "every_days", "refills", "empties", "empties_toilet", "stop_price", "in_use"];

/// The stops of the plan, and the fewest.
pub fn stops(asking: Asking) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(stop) = plan.water_stops.iter().find(|stop| stop.id == id) else { return Default::default() };
        let every = |days: u32| tell!("water-every", &vec![("days", Figure::of(f64::from(days), Quantity::Days))]);
        let when = match (stop.on, stop.every_days, stop.stay) {
            (Some(on), ..) => say_date(on),
            (None, Some(days), _) => every(days),
            (None, None, Some(stay)) => place_of(plan, stay),
            (None, None, None) => t!("charging-any-day"),
        };
        let state = if stop.in_use { t!("charging-in-use") } else { t!("charging-possible") };
        (stop.name.clone(), [when, state].join(", "))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("water_stops", id), FIELDS)
    }
    let fresh = || json!({ "refills": true, "empties": true });
    let list = Entries { list: List::WaterStops, line, body, fresh, add: key!("water-stops-add") };
    fragment()
        .put(el("p").put(key!("water-stops-hint")))
        .put(list.show())
        .put(el("h3").put(key!("stops-fewest")))
        .put(asking.view(fewest))
        .done()
}

fn place_of(plan: &Plan, stay: Id) -> String {
    plan.stays.iter().find(|of| of.id == stay).map_or_else(String::new, |stay| stay.place.clone())
}

fn fewest(outlook: &Outlook) -> View {
    let fewest = &outlook.fewest;
    let text = match () {
        () if outlook.runs == 0 => t!("water-no-runs"),
        () if !fewest.is_found => t!("water-stops-not-enough"),
        () if fewest.days.is_empty() => t!("stops-none-needed"),
        () => tell!("water-fewest", &vec![("count", Figure::count(fewest.days.len()))]),
    };
    let lines = App::here().desk.plan.with_untracked(|plan| {
        let name = |id: Id| named(plan.name_of(id).map_or_else(|| place_of(plan, id), str::to_owned));
        let days = fewest.days.iter().map(|stop| {
            let place = stop.place.map(name);
            std::iter::once(say_date(stop.on)).chain(place).collect::<Vec<_>>().join(": ")
        });
        days.collect::<Vec<_>>()
    });
    let lines = lines.into_iter().map(|line| el("li").put(line).done());
    fragment().put(el("p").put(text)).put(el("ul").class("lines").put_each(lines)).done()
}
