//! An average day's energy, in and out, ranked. What is tapped tells what it costs.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Quantity};
use kerbstead_core::power::Report;

use super::outlook::Asking;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::say_measure;
use crate::parts::{bar, named_in};
use crate::route::Page;
use crate::state::App;

/// A line: what it is, how much it is on an average day, and the draw that it is.
struct Line {
    name: String,
    wh: f64,
    draw: Option<Id>,
}

/// Both lists.
pub fn daily(app: App, asking: Asking) -> View {
    live::view(move || {
        app.settled_assessment(|assessment| {
            let power = &assessment.power;
            if power.stores.is_empty() || power.hours.is_empty() {
                return el("p").put(key!("power-no-course")).done();
            }
            let (given, taken) = (sorted(ins(power)), sorted(outs(app, power)));
            let most = given.iter().chain(&taken).map(|line| line.wh).fold(1e-9, f64::max);
            fragment()
                .put(el("p").put(key!("power-a-day-hint")))
                .put(el("h3").put(key!("power-out")))
                .put(list(asking, power, taken, most))
                .put(el("h3").put(key!("power-in")))
                .put(list(asking, power, given, most))
                .done()
        })
    })
}

fn sorted(mut lines: Vec<Line>) -> Vec<Line> {
    lines.retain(|line| line.wh > 0.05);
    lines.sort_by(|a, b| b.wh.total_cmp(&a.wh));
    lines
}

fn ins(power: &Report) -> Vec<Line> {
    let sum = |of: fn(&kerbstead_core::power::StoreReport) -> f64| power.stores.iter().map(of).sum();
    let line = |name, wh| Line { name, wh, draw: None };
    vec![
        line(t!("power-from-sun"), sum(|store| store.from_sun_wh)),
        line(t!("power-from-vehicle"), sum(|store| store.from_vehicle_wh)),
        line(t!("power-from-mains"), sum(|store| store.from_mains_wh)),
        line(t!("power-unused-sun"), sum(|store| store.unused_sun_wh)),
    ]
}

fn outs(app: App, power: &Report) -> Vec<Line> {
    let named = |id: Id| app.desk.plan.with_untracked(|plan| named_in(plan, id));
    let draws =
        power.draws.iter().map(|draw| Line { name: named(draw.item), wh: draw.wh_per_day, draw: Some(draw.item) });
    let sum = |of: fn(&kerbstead_core::power::StoreReport) -> f64| power.stores.iter().map(of).sum();
    let losses = [
        Line { name: t!("power-converted"), wh: sum(|store| store.converted_wh), draw: None },
        Line { name: t!("power-lost"), wh: sum(|store| store.lost_wh), draw: None },
    ];
    draws.chain(losses).collect()
}

fn list(asking: Asking, power: &Report, lines: Vec<Line>, most: f64) -> View {
    if lines.is_empty() {
        return el("p").put(key!("power-daily-none")).done();
    }
    let entry = |line: Line| {
        let head = fragment()
            .put(el("span").class("name").put(line.name))
            .put(" ")
            .put(el("span").class("value").put(say_measure(line.wh, Quantity::EnergyWh)))
            .put(bar(line.wh / most));
        match line.draw {
            None => el("li").put(el("div").class("ranked").put(head)).done(),
            Some(id) => {
                let short = short_line(power, id);
                let more = fragment()
                    .put(short.map(|text| el("p").put(text).done()))
                    .put(el("p").attr("aria-live", "polite").put(live::text(move || asking.cost_of(id))))
                    .put(
                        el("p")
                            .put(el("a").attr("href", format!("{}/{id}", Page::Kit.link())).put(key!("power-to-item"))),
                    );
                let summary = el("summary").class("ranked").put(head);
                el("li").put(el("details").put(summary).put(more)).done()
            }
        }
    };
    el("ol").class("swings").put_each(lines.into_iter().map(entry)).done()
}

/// What a draw goes without, if anything.
fn short_line(power: &Report, id: Id) -> Option<String> {
    let draw = power.draws.iter().find(|draw| draw.item == id)?;
    let at = draw.first_short?;
    let figures = vec![
        ("at", Figure::Moment(at)),
        ("energy", Figure::of(draw.without_energy_wh, Quantity::EnergyWh)),
        ("outlet", Figure::of(draw.without_outlet_wh, Quantity::EnergyWh)),
    ];
    Some(tell!("power-draw-short", &figures))
}
