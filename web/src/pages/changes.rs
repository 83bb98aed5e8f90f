//! What would mend what falls short: asked of the worker, shown as it is found.

use kerbstead_core::explain::Figure;
use kerbstead_core::moves::{Effect, Move, MoveSet, Moves};
use kerbstead_core::plan::{Edit, Money, Plain, Quantity};
use kerbstead_core::task::Subject;

use super::money::waiting;
use super::{balance_title, section};
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{plain_sentence, tell};
use crate::parts::{button, verdict_badge};
use crate::route::Page;
use crate::state::App;
use crate::worker::ask_and_follow;

/// So many changes are shown on the overview.
const FIRST: usize = 3;
/// So many are shown at first, and so many more each time.
const SHOWN: usize = 6;

/// The page.
pub fn changes() -> View {
    let app = App::here();
    let asked = ask_and_follow(app, Subject::Moves);
    let found = live::memo(move || asked.answer.with(|answer| Moves::from_plain(answer.as_ref()?)));
    let set = live::memo(move || found.with(|found| found.as_ref()?.set.clone()));
    let is_looked_for =
        move || set.with(Option::is_none) && found.with(|found| found.as_ref().is_some_and(falls_short));
    let shown = Signal::new(SHOWN);
    let ranked = move || found.with(|found| found.as_ref().map_or_else(nothing, |found| ranked(app, found, shown)));
    fragment()
        .put(el("h1").put(key!("page-changes")))
        .put(el("p").put(key!("changes-lede")))
        .put(waiting(asked))
        .put(live::view(move || set.with(|set| set.as_ref().map_or_else(nothing, |set| cheapest(app, set)))))
        .put(live::when(is_looked_for, || el("p").put(key!("changes-set-wait")).done()))
        .put(live::view(ranked))
        .done()
}

fn falls_short(found: &Moves) -> bool {
    found.falls_short
}

/// What would mend most, on the overview: nothing while nothing falls short.
pub(super) fn first_changes(app: App) -> View {
    let asked = ask_and_follow(app, Subject::Moves);
    let first: Memo<Vec<Move>> = live::memo(move || {
        asked.answer.with(|answer| {
            let found = answer.as_ref().and_then(Moves::from_plain).filter(|found| found.falls_short);
            found.map_or_else(Vec::new, |found| found.moves.into_iter().take(FIRST).collect())
        })
    });
    live::when(
        move || first.with(|first| !first.is_empty()),
        move || {
            let link = el("p").put(el("a").attr("href", Page::Changes.link()).put(key!("changes-all")));
            let lines = move || first.with(|first| all(first.iter().map(line)));
            section(
                key!("changes-next"),
                fragment().put(el("ul").class("lines").put(live::view(lines))).put(link).done(),
            )
        },
    )
}

fn line(one: &Move) -> View {
    el("li").put(title(one)).done()
}

fn title(one: &Move) -> String {
    let (key, figures) = one.said();
    tell(key, &figures)
}

fn ranked(app: App, found: &Moves, shown: Signal<usize>) -> View {
    if found.wanting.is_empty() {
        return el("p").put(key!("changes-nothing")).done();
    }
    let is_done = found.tried >= found.to_try;
    if found.moves.is_empty() {
        let tried = vec![("count", Figure::count(found.to_try as usize))];
        return if is_done { el("p").put(tell!("changes-none", &tried)).done() } else { nothing() };
    }
    let tried = vec![("count", Figure::count(found.tried as usize))];
    section(
        key!("changes-ranked"),
        fragment()
            .put(el("p").put(key!("changes-ranked-hint")).put(" ").put(tell!("changes-tried", &tried)))
            .put(el("ol").class("changes").put_each(found.moves.iter().take(shown.get()).map(|one| change(app, one))))
            .put(
                (found.moves.len() > shown.get())
                    .then(|| button(key!("more"), move || shown.set(shown.get_untracked() + SHOWN)).done()),
            )
            .put(el("p").put(el("small").put(key!("changes-cost-how"))))
            .done(),
    )
}

fn change(app: App, one: &Move) -> View {
    el("li")
        .class("card")
        .put(el("h3").put(title(one)))
        .put(effects(&one.effects))
        .put(el("p").put(cost(one.money, one.cost_days)))
        .put(taking(app, &one.edit, false))
        .done()
}

/// The changes as one step, which can be taken back as one.
fn taking(app: App, edit: &Edit, is_set: bool) -> View {
    let edit = edit.clone();
    let take = move || {
        app.edit_and_tell(edit.clone(), t!("changes-taken"));
    };
    button(if is_set { key!("changes-take-set") } else { key!("changes-take") }, take).class("primary").done()
}

fn cost(money: Money, cost_days: f64) -> String {
    let amount = if money.is_negative() { Money::ZERO - money } else { money };
    let figures = vec![("money", Figure::Money(amount)), ("days", Figure::of(cost_days, Quantity::Days))];
    if money.is_negative() {
        tell!("changes-cost", &figures)
    } else if money > Money::ZERO {
        tell!("changes-gain", &figures)
    } else {
        tell!("changes-cost-days", &figures)
    }
}

/// Each balance that is another: before, and after.
fn effects(effects: &[Effect]) -> View {
    let line = |effect: &Effect| {
        el("li")
            .put(el("strong").put(plain_sentence(balance_title(effect.balance))))
            .put(" ")
            .put(verdict_badge(effect.before))
            .put(el("span").class("then").attr("aria-hidden", "true").put(" → "))
            .put(verdict_badge(effect.after))
            .put(spare(effect))
            .done()
    };
    el("ul").class("effects").attr("aria-label", t!("changes-effects")).put_each(effects.iter().map(line)).done()
}

/// What is to spare before and after, where both are known.
fn spare(effect: &Effect) -> Option<View> {
    let (before, after) = effect.spare_before.zip(effect.spare_after)?;
    let figures = vec![("before", before.into()), ("after", after.into())];
    Some(el("span").class("spare").put(tell!("changes-spare", &figures)).done())
}

fn cheapest(app: App, set: &MoveSet) -> View {
    let among = vec![("count", Figure::count(set.among as usize))];
    let told = match (set.is_found, set.is_proven) {
        (true, true) => tell!("changes-set-proven", &among),
        (true, false) => tell!("changes-set-best", &among),
        (false, _) if set.moves.is_empty() => t!("changes-set-nothing"),
        (false, _) => {
            let short = set.still_short.iter().map(|balance| plain_sentence(balance_title(*balance)));
            [t!("changes-set-none"), short.collect::<Vec<_>>().join(", ")].join(" ")
        }
    };
    let lines = el("ul").class("lines").put_each(set.moves.iter().map(line)).done();
    let cost = set.is_found.then(|| el("p").put(cost(set.money, set.cost_days)).done());
    let take = set.is_found.then(|| taking(app, &set.edit, true));
    let content = fragment().put(el("p").put(told)).put(lines).put(effects(&set.effects)).put(cost).put(take);
    section(key!("changes-set"), content.done())
}
