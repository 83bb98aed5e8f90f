//! Tonight: from what was read off, how long it lasts, how sure that is, and what to go without.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::power::{Night, Outlook};
use kerbstead_core::{Balance, Caution};

use super::super::{section, standing, verdict_line};
use super::outlook::Asking;
use crate::browser;
use crate::el::{View, el, fragment};
use crate::live;
use crate::parts::{named_in, take_care};
use crate::state::App;

const READ: &[&str] = &["charge_percent", "store", "fresh_l", "grey_l", "cash", "hour"];

/// The page.
pub fn tonight() -> View {
    let app = App::here();
    let asking = Asking::of(app);
    fragment()
        .put(el("h1").put(key!("page-tonight")))
        .put(section(key!("tonight-reading"), super::super::log::now(app, READ, false)))
        .put(section(key!("tonight-power"), asking.view(told)))
        .put(section(key!("page-water"), of_balance(app, Balance::Water)))
        .put(section(key!("page-money"), of_balance(app, Balance::Money)))
        .put(el("p").class("hint").put(key!("tonight-hint")))
        .put(take_care(&[Caution::StoreHeatAndFrost, Caution::ChargingUnattended, Caution::EngineWhileParked]))
        .done()
}

fn of_balance(app: App, balance: Balance) -> View {
    verdict_line(live::memo(move || standing(app, balance)))
}

fn told(app: App, outlook: &Outlook) -> View {
    let Some(night) = &outlook.tonight else {
        let is_read = app.desk.plan.with_untracked(|plan| {
            plan.readings.iter().any(|reading| reading.on == Some(browser::today()) && reading.charge_percent.is_some())
        });
        return el("p").put(if is_read { t!("tonight-not-yet") } else { t!("tonight-nothing-read") }).done();
    };
    let moment = |hours: f64| Figure::Moment(night.moment(hours));
    let lasts = match night.lasts {
        Some(hours) => tell!("tonight-lasts", &vec![("at", moment(hours))]),
        None => t!("tonight-lasts-always"),
    };
    let tenth = night.one_in_ten.map(|hours| tell!("tonight-one-in-ten", &vec![("at", moment(hours))]));
    let next = night.next_charge.map(|hours| {
        let percent = Figure::of(night.reaching_percent.unwrap_or(0.0), Quantity::Percent);
        let figures = vec![("at", moment(hours)), ("share", percent)];
        if night.reaches { tell!("tonight-reaches", &figures) } else { tell!("tonight-reaches-not", &figures) }
    });
    fragment()
        .put(el("p").put(el("strong").put(lasts)))
        .put(tenth.map(|text| el("p").put(text).done()))
        .put(next.map(|text| el("p").put(text).done()))
        .put(without(app, night))
        .done()
}

/// What to go without, one after another.
fn without(app: App, night: &Night) -> View {
    if night.reaches {
        return fragment().done();
    }
    if night.without.is_empty() {
        return el("p").put(key!("tonight-nothing-helps")).done();
    }
    let line = |one: &kerbstead_core::power::Without| {
        let name = app.desk.plan.with_untracked(|plan| named_in(plan, one.item));
        let mut figures = vec![("name", Figure::Name(name)), ("saved", Figure::of(one.saved_wh, Quantity::EnergyWh))];
        let reaches = |lasts: f64| night.next_charge.is_some_and(|next| lasts >= next);
        let text = match one.lasts {
            Some(lasts) if !reaches(lasts) => {
                figures.push(("at", Figure::Moment(night.moment(lasts))));
                tell!("tonight-without", &figures)
            }
            _ => tell!("tonight-without-reaches", &figures),
        };
        el("li").put(text).done()
    };
    fragment()
        .put(el("h3").put(key!("tonight-go-without")))
        .put(el("ol").put_each(night.without.iter().map(line)))
        .done()
}
