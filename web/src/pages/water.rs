//! Litres by day, what they come to, uses, stops, cans and toilets.

mod answers;
mod measure;
mod stops;
mod toilets;
mod uses;

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Path, Quantity, TankKind};

use self::answers::Asking;
use super::{balance_head, section};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::say_measure;
use crate::parts::{PlotData, field};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn water() -> View {
    let asking = Asking::of(App::here());
    fragment()
        .put(balance_head(Balance::Water))
        .put(plot("water-plot", Quantity::VolumeL, true, |day| day.fresh_l, |report| report.fresh_capacity_l))
        .put(plot("water-grey-plot", Quantity::VolumeL, false, |day| day.grey_l, |report| report.grey_capacity_l))
        .put(plot(
            "water-toilet-plot",
            Quantity::Days,
            false,
            |day| day.toilet_days,
            |report| report.toilet_capacity_days,
        ))
        .put(facts())
        .put(section(key!("water-answers"), answers::answers(asking)))
        .put(section(key!("water-people"), field(Path::section("people"))))
        .put(section(key!("water-uses"), uses::uses()))
        .put(section(key!("water-stops"), stops::stops(asking)))
        .put(section(key!("water-tanks"), tanks(asking)))
        .put(section(key!("water-measure"), measure::measure()))
        .put(section(key!("water-toilets"), toilets::toilets()))
        .done()
}

type OfDay = fn(&kerbstead_core::water::WaterDay) -> f64;
type OfReport = fn(&kerbstead_core::water::Report) -> f64;

fn plot(title: &'static str, quantity: Quantity, low_matters: bool, level: OfDay, capacity: OfReport) -> View {
    let app = App::here();
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let report = &assessment.water;
            let from = report.days.first().map_or(assessment.starts_on, |day| day.on);
            let values = || report.days.iter().map(level).collect();
            (capacity(report) > 0.0).then(|| PlotData {
                quantity: Some(quantity),
                ceiling: Some(capacity(report)),
                low_matters,
                ..PlotData::by_day(title, from, assessment.as_of, values())
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

fn tanks(asking: Asking) -> View {
    let app = App::here();
    let lines = live::memo(move || {
        app.plan(|plan| {
            let tanks = plan.carried().filter_map(|item| Some((item, item.tank?)));
            tanks
                .map(|(item, tank)| {
                    let litres = say_measure(tank.capacity_l * f64::from(item.kept()), Quantity::VolumeL);
                    (item.id, item.name.clone(), litres, tank.holds)
                })
                .collect::<Vec<_>>()
        })
    });
    // What the worker tells of a can changes its text alone: a link that somebody has come to stays.
    let done = move |id, holds| {
        let on = asking.can(id)?;
        let figures = vec![("on", Figure::Date(on))];
        Some(match holds {
            TankKind::Fresh => tell!("water-can-empty", &figures),
            TankKind::Grey => tell!("water-can-full", &figures),
        })
    };
    let rows = move || {
        all(lines.get().into_iter().map(|(id, name, litres, holds)| {
            let value = move || std::iter::once(litres.clone()).chain(done(id, holds)).collect::<Vec<_>>().join(", ");
            el("li")
                .put(el("a").attr("href", format!("{}/{id}", Page::Kit.link())).put(name))
                .put(el("span").put(live::text(value)))
                .done()
        }))
    };
    fragment()
        .put(el("ul").class("item-lines").put(live::view(rows)))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(key!("water-add-tank"))))
        .done()
}
