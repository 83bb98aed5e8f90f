//! What takes data.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{DataUse, Id, List, Path, Plan, Quantity};
use kerbstead_core::signal::data::{By, each_mb, of_a_day_mb, total, usual};
use serde_json::json;

use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{say_measure, words};
use crate::parts::{Entries, fields};
use crate::state::App;

const FIELDS: &[&str] = &["name", "data_task", "uses_per_day", "data_days", "each_mb"];

/// The list.
pub fn uses() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        entry(plan, id).map_or_else(Default::default, |one| {
            let [_, likely_mb, _] = of_a_day_mb(one);
            let day = say_measure(likely_mb, Quantity::DataMb);
            (one.name.clone(), tell!("signal-use-line", &vec![("day", Figure::Name(day))]))
        })
    }
    fn body(id: Id) -> View {
        let app = App::here();
        let figure = move || app.settled_plan(|plan| entry(plan, id).map_or_else(String::new, figures));
        fragment()
            .put(fields(&Path::entry("data_uses", id), FIELDS))
            .put(el("p").put(el("small").put(live::text(figure))))
            .done()
    }
    let list = Entries { list: List::DataUses, line, body, fresh: || json!({}), add: key!("signal-add-use") };
    fragment().put(el("p").put(key!("signal-uses-hint"))).put(list.show()).done()
}

fn entry(plan: &Plan, id: Id) -> Option<&DataUse> {
    plan.data_uses.iter().find(|entry| entry.id == id)
}

/// The usual figures of its kind with their source, or that it counts as stated.
fn figures(one: &DataUse) -> String {
    let Some(task) = usual(one.data_task) else {
        return if each_mb(one).high() > 0.0 { String::new() } else { t!("signal-each-needed") };
    };
    let mb = |value: f64| Figure::of(value, Quantity::DataMb);
    let usual = total(&[(*task, 1.0)]).both_mb();
    let figures = vec![
        ("low", mb(usual.low())),
        ("likely", mb(usual.likely())),
        ("high", mb(usual.high())),
        ("source", Figure::Name(words(|words| words.source(task.source)))),
    ];
    match task.by {
        By::Hour => tell!("signal-usual-hour", &figures),
        By::Piece => tell!("signal-usual-piece", &figures),
    }
}
