//! Where the plan's places are, what sky is over them, and typical years that were read in.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use serde_json::json;

use super::super::section;
use super::import::import;
use crate::el::{View, el, fragment};
use crate::parts::{Entries, fields};
use crate::route::Page;

/// What is said of a sky, and of where it is.
const SKY: &[&str] = &[
    "latitude_deg",
    "longitude_deg",
    "altitude_m",
    "clock_ahead_h",
    "like",
    "year",
    "clouds",
    "clearness_percent",
    "low_c",
    "high_c",
];

const YEAR: &[&str] = &["name", "latitude_deg", "longitude_deg", "altitude_m", "clock_ahead_h"];

/// The page.
pub fn sky() -> View {
    let stays = el("p").class("links").put(el("a").attr("href", Page::Route.link()).put(key!("sky-to-stays")));
    fragment()
        .put(el("h1").put(key!("page-sky")))
        .put(el("p").put(key!("sky-hint")))
        .put(section(key!("sky-everywhere"), fields(&Path::section("climate"), SKY)))
        .put(stays)
        .put(section(key!("sky-years"), fragment().put(years()).put(import()).done()))
        .done()
}

fn years() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(year) = plan.years.iter().find(|year| year.id == id) else { return Default::default() };
        let figures = vec![
            ("north", Figure::of(year.latitude_deg, Quantity::Degrees)),
            ("east", Figure::of(year.longitude_deg, Quantity::Degrees)),
        ];
        (year.name.clone(), tell!("sky-year-line", &figures))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("years", id), YEAR)
    }
    Entries { list: List::Years, line, body, fresh: || json!({}), add: key!("sky-choose") }.listed()
}
