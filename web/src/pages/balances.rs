//! All balances, to choose from.

use kerbstead_core::Balance;

use super::{BALANCES, balance_page, balance_title, standing};
use crate::el::{View, el, fragment};
use crate::live;
use crate::parts::verdict_badge;
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn balances() -> View {
    let lines = BALANCES.map(line);
    let to_route = el("p").put(el("a").attr("href", Page::Route.link()).put(key!("next-route")));
    fragment()
        .put(el("h1").put(key!("page-balances")))
        .put(el("ul").class("balance-list").put_each(lines))
        .put(el("p").class("links").put(el("a").attr("href", Page::Materials.link()).put(key!("to-materials"))))
        .put(el("p").class("links").put(el("a").attr("href", Page::Changes.link()).put(key!("page-changes"))))
        .put(el("p").class("links").put(el("a").attr("href", Page::Likely.link()).put(key!("page-likely"))))
        .put(to_route.class("links"))
        .done()
}

fn line(balance: Balance) -> View {
    let app = App::here();
    let view = live::memo(move || standing(app, balance));
    el("li")
        .put(el("a").attr("href", balance_page(balance).link()).put(el("strong").put(balance_title(balance))).put(
            live::view(move || {
                let standing = view.get();
                fragment().put(verdict_badge(standing.verdict)).put(el("span").put(standing.line)).done()
            }),
        ))
        .done()
}
