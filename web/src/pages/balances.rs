//! All balances, to choose from.

use kerbstead_core::Balance;
use leptos::prelude::*;

use super::{balance_title, standing};
use crate::live;
use crate::locale::t;
use crate::parts::verdict_badge;
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn balances() -> AnyView {
    let lines = [(Balance::Money, Page::Money), (Balance::Power, Page::Power), (Balance::Water, Page::Water)];
    let lines = lines.map(|(balance, page)| line(balance, page));
    view! {
        <h1>{t("page-balances")}</h1>
        <ul class="balance-list">{Vec::from(lines)}</ul>
    }
    .into_any()
}

fn line(balance: Balance, page: Page) -> AnyView {
    let app = App::here();
    let view = live::memo(move || standing(app, balance));
    view! {
        <li>
            <a href=page.link()>
                <strong>{t(balance_title(balance))}</strong>
                {live::view(move || {
                    let standing = view.get();
                    view! { {verdict_badge(standing.verdict)} <span>{standing.line}</span> }.into_any()
                })}
            </a>
        </li>
    }
    .into_any()
}
