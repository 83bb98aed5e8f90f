//! The plan, or a part of it, as a link for a friend.

use kerbstead_core::plan::{Id, List};
use kerbstead_core::share::{Parcel, Scope};

use super::section;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::t;
use crate::parts::{link_out, named_in, told_list};
use crate::route::Page;
use crate::state::App;

/// What can be chosen, with what is said of it.
const CHOICES: [(Scope, &str); 5] = [
    (Scope::Whole, "share-whole"),
    (Scope::Kit, "share-kit"),
    (Scope::Shopping, "share-shopping"),
    (Scope::Borrowing, "share-borrowing"),
    (Scope::Helper, "share-helper"),
];

/// The page.
pub fn share() -> View {
    let app = App::here();
    let (scope, with_money) = (Signal::new(Scope::Whole), Signal::new(false));
    let helper = Signal::new(app.desk.plan.with_untracked(|plan| List::Helpers.ids(plan).first().copied()));
    // What it tells and its link are drawn anew when the choice or the plan changes; they come after the choice, so that
    // nothing leaves before it was said what it tells.
    let parcel = live::memo(move || {
        let file = app.plan(|plan| app.file_of(plan));
        match (scope.get(), helper.get()) {
            (Scope::Helper, Some(helper)) => Parcel::for_helper(&file, helper),
            (scope, _) => Parcel::of(&file, scope, with_money.get()),
        }
    });
    let title = move || app.plan(|plan| plan.title.clone());
    fragment()
        .put(el("h1").put(key!("page-share")))
        .put(el("p").put(key!("share-hint")))
        .put(choice(scope, with_money, helper))
        .put(section(key!("share-tells"), live::view(move || parcel.with(told_list))))
        .put(el("p").put(key!("share-for-ever")))
        .put(section(key!("share-way"), live::view(move || parcel.with(|parcel| link_out(parcel, &title())))))
        .put(el("p").put(el("a").attr("href", Page::Open.link()).put(key!("share-to-open"))))
        .done()
}

fn choice(scope: Signal<Scope>, with_money: Signal<bool>, helper: Signal<Option<Id>>) -> View {
    let option = |(value, key): (Scope, &'static str)| {
        el("label")
            .class("choice")
            .put(
                el("input")
                    .attr("type", "radio")
                    .attr("name", "scope")
                    .attr("id", key)
                    .flag("checked", scope.get_untracked() == value)
                    .on_tick(move |_| scope.set(value)),
            )
            .put(t(key))
            .done()
    };
    // Who helps can be chosen where there is anybody.
    let is_offered = |(scope, _): &(Scope, &str)| *scope != Scope::Helper || helper.with_untracked(Option::is_some);
    el("fieldset")
        .put(el("legend").put(key!("share-what")))
        .put_each(CHOICES.into_iter().filter(is_offered).map(option))
        .put(live::view(move || if scope.get() == Scope::Helper { who(helper) } else { money(with_money) }))
        .done()
}

/// Which of those who help it is for.
fn who(helper: Signal<Option<Id>>) -> View {
    let options = App::here().desk.plan.with_untracked(|plan| {
        let option = |id: Id| {
            let is_chosen = helper.get_untracked() == Some(id);
            el("option").attr("value", id.to_string()).flag("selected", is_chosen).put(named_in(plan, id)).done()
        };
        List::Helpers.ids(plan).into_iter().map(option).collect::<Vec<_>>()
    });
    el("div")
        .class("field")
        .put(el("label").attr("for", "share-who").put(key!("share-who")))
        .put(el("select").attr("id", "share-who").on_change(move |id| helper.set(id.parse().ok())).put_each(options))
        .done()
}

fn money(with_money: Signal<bool>) -> View {
    el("label")
        .class("choice")
        .put(
            el("input")
                .attr("type", "checkbox")
                .attr("id", "share-money")
                .flag("checked", with_money.get_untracked())
                .on_tick(move |is_on| with_money.set(is_on)),
        )
        .put(key!("share-money"))
        .done()
}
