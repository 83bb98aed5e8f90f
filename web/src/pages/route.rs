//! When, and where: the dates, the stays or the repeating week, the van.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Mode, Path, Plan, Quantity, Weekday, add_days};
use serde_json::json;

use super::section;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{t, words};
use crate::parts::{Entries, button, field, fields, folded_fields};
use crate::state::App;

/// The page.
pub fn route() -> View {
    let app = App::here();
    let mode = live::memo(move || app.plan(|plan| plan.calendar.mode));
    let places = move || match mode.get() {
        Mode::Stays => section(key!("route-stays"), stays()),
        Mode::Week => section(key!("route-week"), week()),
    };
    fragment()
        .put(el("h1").put(key!("page-route")))
        .put(el("p").put(key!("route-hint")))
        .put(section(key!("route-dates"), fields(&Path::section("calendar"), &["starts_on", "leaves_on", "mode"])))
        .put(live::view(places))
        .put(section(key!("route-vehicle"), fields(&Path::section("vehicle"), VEHICLE)))
        .done()
}

const VEHICLE: &[&str] =
    &["size", "inside_length_mm", "inside_width_mm", "inside_height_mm", "empty_mass_kg", "gross_limit_kg"];

const DRIVE: &[&str] = &["drive_hours", "drive_km"];

const OFFERS: &[&str] = &[
    "offers/mains_hours",
    "offers/mains_from_hour",
    "offers/mains_w",
    "offers/water",
    "offers/emptying",
    "offers/toilet",
    "offers/toilet_emptying",
    "offers/shower",
    "offers/laundry",
    "offers/rubbish",
    "offers/fuel",
    "offers/signal",
    "offers/price_per_night",
    "offers/night",
    "offers/fallback_km",
];

/// The sky and air of a stay, where they are not the plan's.
const SKY: &[&str] = &[
    "climate/latitude_deg",
    "climate/longitude_deg",
    "climate/altitude_m",
    "climate/clock_ahead_h",
    "climate/like",
    "climate/year",
    "climate/clouds",
    "climate/clearness_percent",
    "climate/low_c",
    "climate/high_c",
];

fn stays() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let mut arrives = plan.calendar.leaves_on;
        for stay in &plan.stays {
            if stay.id == id {
                return (stay.place.clone(), stay_line(arrives, stay.nights));
            }
            let nights = i32::try_from(stay.nights).unwrap_or(i32::MAX);
            arrives = arrives.and_then(|date| add_days(date, nights));
        }
        Default::default()
    }
    fn body(id: Id) -> View {
        let base = Path::entry("stays", id);
        let own = fields(&base, &["place", "nights", "working_days_per_week"]);
        let sky = folded_fields(key!("stay-sky"), &base, SKY);
        fragment().put(own).put(fields(&base, DRIVE)).put(fields(&base, OFFERS)).put(sky).done()
    }
    Entries { list: List::Stays, line, body, fresh: || json!({ "nights": 1 }), add: key!("stays-add") }.show()
}

fn stay_line(arrives: Option<jiff::civil::Date>, nights: u32) -> String {
    words(|words| {
        let nights = words.measure(f64::from(nights), Quantity::Nights);
        match arrives {
            Some(date) => format!("{}, {nights}", words.figure(&Figure::Date(date))),
            None => nights,
        }
    })
}

fn week() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let day = plan.week.iter().find(|day| day.id == id);
        day.map_or_else(Default::default, |day| {
            let word = |value: serde_json::Value| value.as_str().unwrap_or_default().to_owned();
            let weekday = word(json!(day.weekday));
            let kind = word(json!(day.kind));
            (t(&format!("choice-weekday-{weekday}")), t(&format!("choice-kind-{kind}")))
        })
    }
    fn body(id: Id) -> View {
        let base = Path::entry("week", id);
        let own = fields(&base, &["weekday", "kind"]);
        fragment().put(own).put(fields(&base, DRIVE)).put(fields(&base, OFFERS)).done()
    }
    fragment()
        .put(field(Path::from("calendar/ends_on")))
        .put(Entries { list: List::Week, line, body, fresh: || json!({}), add: key!("week-add") }.show())
        .put(fill_week())
        .done()
}

/// Puts in the days of the week that are not there yet.
fn fill_week() -> View {
    let app = App::here();
    let missing = live::memo(move || {
        app.plan(|plan| {
            let has = |weekday: &Weekday| plan.week.iter().any(|day| day.weekday == *weekday);
            Weekday::ALL.into_iter().filter(|weekday| !has(weekday)).collect::<Vec<_>>()
        })
    });
    let fill = move || {
        let first = app.plan(Plan::next_id);
        let entries = missing.get_untracked().into_iter().zip(first..).map(|(weekday, id)| Edit::Insert {
            list: List::Week,
            at: usize::MAX,
            entry: json!({ "id": id, "weekday": weekday }),
        });
        app.edit_and_tell(Edit::All { edits: entries.collect() }, tell!("week-filled", &vec![]));
    };
    live::when(move || !missing.get().is_empty(), move || button(key!("week-fill"), fill).class("add").done())
}
