//! What lies before today, and nobody said yet whether it happened.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Flow, FlowState, answer};

use super::names::source_name;
use crate::el::{View, all, el};
use crate::live;
use crate::locale::{t, words};
use crate::state::App;

/// A question for each, if there are any.
pub fn unanswered() -> View {
    let app = App::here();
    let flows = live::memo(move || {
        app.assessment(|assessment| {
            let open = assessment.money.flows.iter().filter(|flow| flow.state == FlowState::Unanswered);
            open.cloned().collect::<Vec<_>>()
        })
    });
    let questions = move || all(flows.get().iter().enumerate().map(|(at, flow)| question(at, flow)));
    live::when(
        move || !flows.get().is_empty(),
        move || {
            el("section")
                .class("unanswered")
                .attr("aria-label", t!("money-unanswered"))
                .put(el("h2").put(key!("money-unanswered")))
                .put(el("ul").put(live::view(questions)))
                .done()
        },
    )
}

fn question(at: usize, flow: &Flow) -> View {
    let app = App::here();
    let name = app.plan(|plan| source_name(plan, flow));
    let text = words(|words| {
        format!("{}: {} {}", words.figure(&Figure::Date(flow.on)), name, words.figure(&Figure::Money(flow.amount)))
    });
    let button = |happened: bool, key: &'static str| {
        let edit = app.plan(|plan| answer(plan, flow, happened));
        edit.map(|edit| {
            let act = move || app.edit(edit.clone());
            // The id is of the place, so that the next question has the focus when this one is answered.
            el("button").attr("type", "button").attr("id", format!("{key}-{at}")).on_click(act).put(t(key)).done()
        })
    };
    el("li").put(el("p").put(text)).put(button(true, "answer-yes")).put(button(false, "answer-no")).done()
}
