//! The places of the route with their signal.

use kerbstead_core::plan::{Id, Mode, Plain, Plan, Signal};

use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{plain_sentence, t};
use crate::parts::named;
use crate::route::Page;
use crate::state::App;

/// Each a link to where it is changed.
pub fn places(app: App) -> View {
    let lines = live::memo(move || app.plan(lines));
    let rows = move || {
        all(lines.get().into_iter().map(|(id, name, signal)| {
            el("li")
                .put(el("a").attr("href", format!("{}/{id}", Page::Route.link())).put(name))
                .put(el("span").put(signal_word(signal)))
                .done()
        }))
    };
    fragment()
        .put(el("ul").class("item-lines").put(live::view(rows)))
        .put(el("p").put(el("a").attr("href", Page::Route.link()).put(key!("signal-to-route"))))
        .done()
}

/// Each with what it is called, and its signal.
pub fn lines(plan: &Plan) -> Vec<(Id, String, Signal)> {
    let line = |id: Id, signal: Signal| (id, place_name(plan, id), signal);
    match plan.calendar.mode {
        Mode::Stays => plan.stays.iter().map(|stay| line(stay.id, stay.offers.signal)).collect(),
        Mode::Week => plan.week.iter().map(|day| line(day.id, day.offers.signal)).collect(),
    }
}

/// What a stay, or a day of the week, is called.
pub fn place_name(plan: &Plan, id: Id) -> String {
    let stay = plan.stays.iter().find(|stay| stay.id == id).map(|stay| stay.place.clone());
    let day = || {
        let day = plan.week.iter().find(|day| day.id == id)?;
        Some(t(&format!("choice-weekday-{}", day.weekday.to_plain().as_str()?)))
    };
    named(stay.or_else(day).unwrap_or_default())
}

/// What a signal is called.
pub fn signal_word(signal: Signal) -> String {
    plain_sentence(match signal {
        Signal::Unknown => key!("choice-signal-unknown"),
        Signal::None => key!("choice-signal-none"),
        Signal::Weak => key!("choice-signal-weak"),
        Signal::Good => key!("choice-signal-good"),
    })
}
