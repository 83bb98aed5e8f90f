//! The plan, or a part of it, as a link for a friend.

use kerbstead_core::share::{Parcel, Scope};

use super::section;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::t;
use crate::parts::{link_out, told_list};
use crate::route::Page;
use crate::state::App;

/// What can be chosen, with what is said of it.
const CHOICES: [(Scope, &str); 4] = [
    (Scope::Whole, "share-whole"),
    (Scope::Kit, "share-kit"),
    (Scope::Shopping, "share-shopping"),
    (Scope::Borrowing, "share-borrowing"),
];

/// The page.
pub fn share() -> View {
    let app = App::here();
    let (scope, with_money) = (Signal::new(Scope::Whole), Signal::new(false));
    // What it tells and its link are drawn anew when the choice or the plan changes; they come after the choice, so that
    // nothing leaves before it was said what it tells.
    let parcel = live::memo(move || app.plan(|plan| Parcel::of(&app.file_of(plan), scope.get(), with_money.get())));
    let title = move || app.plan(|plan| plan.title.clone());
    fragment()
        .put(el("h1").put(key!("page-share")))
        .put(el("p").put(key!("share-hint")))
        .put(choice(scope, with_money))
        .put(section(key!("share-tells"), live::view(move || parcel.with(told_list))))
        .put(el("p").put(key!("share-for-ever")))
        .put(section(key!("share-way"), live::view(move || parcel.with(|parcel| link_out(parcel, &title())))))
        .put(el("p").put(el("a").attr("href", Page::Open.link()).put(key!("share-to-open"))))
        .done()
}

fn choice(scope: Signal<Scope>, with_money: Signal<bool>) -> View {
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
    el("fieldset")
        .put(el("legend").put(key!("share-what")))
        .put_each(CHOICES.map(option))
        .put(
            el("label")
                .class("choice")
                .put(
                    el("input")
                        .attr("type", "checkbox")
                        .attr("id", "share-money")
                        .on_tick(move |is_on| with_money.set(is_on)),
                )
                .put(key!("share-money")),
        )
        .done()
}
