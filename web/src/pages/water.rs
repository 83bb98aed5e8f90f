//! Litres by day, the cans and the uses.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use serde_json::json;

use super::{balance_head, section};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::words;
use crate::parts::{Entries, PlotData, field, fields};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn water() -> View {
    fragment()
        .put(balance_head(Balance::Water))
        .put(plot("water-plot", true, |day| day.fresh_l, |report| report.fresh_capacity_l))
        .put(plot("water-grey-plot", false, |day| day.grey_l, |report| report.grey_capacity_l))
        .put(facts())
        .put(section(key!("water-people"), field(Path::section("people"))))
        .put(section(key!("water-uses"), uses()))
        .put(section(key!("water-tanks"), tanks()))
        .done()
}

type OfDay = fn(&kerbstead_core::water::WaterDay) -> f64;
type OfReport = fn(&kerbstead_core::water::Report) -> f64;

fn plot(title: &'static str, low_matters: bool, level: OfDay, capacity: OfReport) -> View {
    let app = App::here();
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let report = &assessment.water;
            (capacity(report) > 0.0).then(|| PlotData {
                title,
                from: report.days.first().map_or(assessment.starts_on, |day| day.on),
                values: report.days.iter().map(level).collect(),
                per_day: 1,
                quantity: Some(Quantity::VolumeL),
                floor: 0.0,
                ceiling: Some(capacity(report)),
                low_matters,
                today: assessment.as_of,
                marks: Vec::new(),
                band: None,
            })
        })
    });
    crate::parts::plot(data)
}

fn facts() -> View {
    let app = App::here();
    let facts = move || {
        app.assessment(|assessment| {
            let water = &assessment.water;
            tell!(
                "water-facts",
                &vec![
                    ("capacity", Figure::of(water.fresh_capacity_l, Quantity::VolumeL)),
                    ("use", Figure::of(water.use_l_per_day, Quantity::VolumeL)),
                    ("mass", Figure::of(water.heaviest_kg, Quantity::MassKg)),
                ],
            )
        })
    };
    el("p").put(live::text(facts)).done()
}

fn uses() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.water_uses.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            let litres = words(|words| words.measure(entry.litres_per_day.likely(), Quantity::VolumeL));
            (entry.name.clone(), litres)
        })
    }
    fn body(id: Id) -> View {
        let names = &["name", "litres_per_day", "per", "to_grey_percent"];
        fields(&Path::entry("water_uses", id), names)
    }
    Entries { list: List::WaterUses, line, body, fresh: || json!({}), add: key!("water-uses-add") }.show()
}

fn tanks() -> View {
    let app = App::here();
    let lines = live::memo(move || {
        app.plan(|plan| {
            let tanks = plan.carried().filter_map(|item| Some((item, item.tank?)));
            tanks
                .map(|(item, tank)| {
                    let litres =
                        words(|words| words.measure(tank.capacity_l * f64::from(item.quantity), Quantity::VolumeL));
                    (item.id, item.name.clone(), litres)
                })
                .collect::<Vec<_>>()
        })
    });
    let rows = move || {
        all(lines.get().into_iter().map(|(id, name, litres)| {
            el("li")
                .put(el("a").attr("href", format!("{}/{id}", Page::Kit.link())).put(name))
                .put(el("span").put(litres))
                .done()
        }))
    };
    fragment()
        .put(el("ul").class("item-lines").put(live::view(rows)))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(key!("water-add-tank"))))
        .done()
}
