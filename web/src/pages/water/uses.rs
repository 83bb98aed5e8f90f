//! What water is used for, and the usual uses to add with a tap.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Per, Plain, Plan, Quantity};
use kerbstead_core::water::needs::{NEEDS, Need, Often};
use serde_json::json;

use crate::el::{View, el, fragment};
use crate::locale::{say_figure, words};
use crate::parts::{Entries, fields};
use crate::state::App;

const FIELDS: &[&str] = &[
    "name",
    "litres_per_day",
    "per",
    "times_per_week",
    "to_grey_percent",
    "treated",
    "is_drunk",
    "exertion_hours",
    "effort",
];

/// The uses, and the usual ones.
pub fn uses() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.water_uses.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            let litres = Figure::of(entry.litres_per_day.likely(), Quantity::VolumeL);
            let value = match entry.times_per_week {
                Some(times) => {
                    let times = Figure::of(times, Quantity::Count);
                    tell!("water-each-week", &vec![("litres", litres), ("times", times)])
                }
                None => say_figure(&litres),
            };
            (entry.name.clone(), value)
        })
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("water_uses", id), FIELDS)
    }
    let needs: &'static [Need] = &NEEDS;
    let list = Entries { list: List::WaterUses, line, body, fresh: || json!({}), add: key!("water-uses-add") };
    fragment()
        .put(list.show())
        .put(
            el("details")
                .class("starters")
                .put(el("summary").put(key!("water-usual")))
                .put(el("p").put(key!("water-usual-hint")))
                .put(el("ul").class("starter-list").put_each(needs.iter().map(usual))),
        )
        .done()
}

/// A button that adds a usual use, with its range and whose that is.
fn usual(need: &'static Need) -> View {
    let app = App::here();
    let name = name_of(need);
    let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
    let figures = vec![("low", litres(need.litres.low())), ("high", litres(need.litres.high()))];
    let range = match (need.often, need.whom) {
        (Often::Day, Per::Person) => tell!("water-range-person-day", &figures),
        (Often::Day, Per::Van) => tell!("water-range-day", &figures),
        (Often::Time, Per::Person) => tell!("water-range-person-time", &figures),
        (Often::Time, Per::Van) => tell!("water-range-time", &figures),
    };
    let source = words(|words| words.source(need.source));
    let add = {
        let name = name.clone();
        move || {
            let entry = need.to_use(app.plan(Plan::next_id), name.clone()).to_plain();
            let text = tell!("water-use-added", &vec![("name", Figure::Name(name.clone()))]);
            app.edit_and_tell(Edit::Insert { list: List::WaterUses, at: usize::MAX, entry }, text);
        }
    };
    el("li")
        .put(el("button").attr("type", "button").on_click(add).put(name))
        .put(" ")
        .put(el("small").put([range, " (".to_owned(), source, ")".to_owned()].concat()))
        .done()
}

fn name_of(need: &Need) -> String {
    match need.key {
        "drinking" => t!("need-drinking"),
        "cooking" => t!("need-cooking"),
        "dishes" => t!("need-dishes"),
        "hands-and-face" => t!("need-hands-and-face"),
        "teeth" => t!("need-teeth"),
        "cleaning" => t!("need-cleaning"),
        "wash-from-a-bowl" => t!("need-wash-from-a-bowl"),
        "shower" => t!("need-shower"),
        "hair" => t!("need-hair"),
        "laundry-by-hand" => t!("need-laundry-by-hand"),
        _ => t!("need-pet-of-ten-kg"),
    }
}
