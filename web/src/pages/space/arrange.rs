//! Arranging for somebody: asked of the worker once, shown as small pictures, taken by a button.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Plain, Plan};
use kerbstead_core::space::{Arranged, Arrangement, Ending, drawing};
use kerbstead_core::task::Subject;

use super::super::money::waiting;
use super::view::small_picture;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::tell;
use crate::parts::button;
use crate::state::App;
use crate::worker::{ask_once, cancel, not_asked};

/// The button, how far it is, and what was found.
pub fn arrange(app: App) -> View {
    let asked = not_asked();
    let is_asked = Signal::new(false);
    let go = move || {
        is_asked.set(true);
        ask_once(app, Subject::Arranging, asked);
    };
    let stop = move || {
        cancel(asked);
        is_asked.set(false);
    };
    let is_waiting = move || is_asked.get() && asked.answer.with(Option::is_none) && !asked.has_failed.get();
    let found = live::memo(move || asked.answer.with(|answer| Arranged::from_plain(answer.as_ref()?)));
    fragment()
        .put(el("p").put(key!("space-arrange-hint")))
        .put(live::when(move || !is_waiting(), move || button(key!("space-arrange-go"), go).class("primary").done()))
        .put(live::when(is_waiting, move || {
            fragment().put(waiting(asked)).put(button(key!("asked-stop"), stop)).done()
        }))
        .put(live::view(move || found.with(|found| found.as_ref().map_or_else(nothing, |found| told(app, found)))))
        .done()
}

fn told(app: App, found: &Arranged) -> View {
    let count = vec![("count", Figure::count(found.arrangements.len()))];
    let text = match found.ending {
        Ending::Found => tell("space-arrange-found", &count),
        Ending::Impossible => t!("space-arrange-impossible"),
        Ending::NotFound => t!("space-arrange-not-found"),
        Ending::NothingToMove => t!("space-arrange-nothing"),
    };
    let pictures = found.arrangements.iter().enumerate().map(|(at, arrangement)| picture(app, at + 1, arrangement));
    fragment()
        .put(el("p").attr("role", "status").put(el("strong").put(text)))
        .put(el("ul").class("arrangements").put_each(pictures))
        .done()
}

fn picture(app: App, number: usize, arrangement: &Arrangement) -> View {
    let edit = arrangement.edit();
    let mut arranged = app.desk.plan.with_untracked(Plan::clone);
    // What was taken out meanwhile cannot be arranged; then the picture shows the van as it is.
    let _ = edit.clone().apply(&mut arranged);
    let label = tell("space-arrange-picture", &vec![("number", Figure::count(number))]);
    let take = move || {
        app.edit_and_tell(edit.clone(), t!("space-arrange-taken"));
    };
    el("li")
        .put(small_picture(&drawing(&arranged), label, None))
        .put(button(key!("space-arrange-take"), take).class("primary"))
        .done()
}
