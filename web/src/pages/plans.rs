//! All plans: open, rename, copy, take away; and what holds for all of them.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Path;
use kerbstead_core::words::Units;
use leptos::prelude::*;

use super::section;
use crate::live;
use crate::locale::{t, tell, words};
use crate::parts::fields;
use crate::route::Page;
use crate::state::{App, DeskStoreFields};
use crate::storage::Card;

/// The page.
pub fn plans() -> AnyView {
    let app = App::here();
    let add_demo = move || {
        app.add_demo();
        crate::route::go(Page::Overview);
    };
    view! {
        <h1>{t("page-plans")}</h1>
        {section("plans-open", open_plan())}
        {section("plans-all", shelf())}
        <div class="buttons">
            <a class="button" href=Page::Start.link()>{t("plans-new")}</a>
            <button type="button" on:click=live::tap(add_demo)>{t("plans-add-demo")}</button>
        </div>
        {section("plans-units", units())}
        <p>{t("plans-privacy")}</p>
        <p><a href="plan.schema.json">{t("plans-schema")}</a></p>
    }
    .into_any()
}

/// The open plan's own fields: its name is changed here.
fn open_plan() -> AnyView {
    fields(&Path::default(), &["title", "currency", "people"])
}

fn shelf() -> AnyView {
    let app = App::here();
    let cards = live::memo(move || app.desk.shelf().with(|shelf| shelf.cards.clone()));
    let open = live::memo(move || app.desk.shelf().with(|shelf| shelf.open));
    let rows = move || cards.get().into_iter().map(|card| row(card, open)).collect::<Vec<_>>().into_any();
    view! { <ul class="shelf">{live::view(rows)}</ul> }.into_any()
}

fn row(card: Card, open: Memo<u32>) -> AnyView {
    let app = App::here();
    let slot = card.slot;
    let title = if card.title.is_empty() { t("entry-unnamed") } else { card.title };
    let named = |key: &str| tell(key, &vec![("title", Figure::Name(title.clone()))]);
    let is_open = move || open.get() == slot;
    view! {
        <li>
            <span class="name">{title.clone()}</span>
            {card.is_demo.then(|| view! { <small>{t("plans-is-demo")}</small> })}
            {live::when(is_open, || view! { <small>{t("plans-is-open")}</small> }.into_any())}
            <span class="buttons">
                <button type="button" disabled=live::flag(is_open) aria-label=named("plans-open-named") on:click=live::tap(move || app.show(slot))>{t("plans-open-it")}</button>
                <button type="button" aria-label=named("plans-copy-named") on:click=live::tap(move || app.duplicate(slot))>{t("entry-copy")}</button>
                <button type="button" class="remove" aria-label=named("plans-delete-named") on:click=live::tap(move || app.delete(slot))>{t("plans-delete")}</button>
            </span>
        </li>
    }
    .into_any()
}

fn units() -> AnyView {
    let app = App::here();
    let current = words(kerbstead_core::words::Words::units);
    let option = |units: Units, key: &'static str| {
        view! {
            <label class="choice">
                <input type="radio" name="units" checked=current == units on:change=live::ticked(move |_| app.set_units(units)) />
                {t(key)}
            </label>
        }
        .into_any()
    };
    view! {
        <fieldset>
            <legend>{t("plans-units-legend")}</legend>
            {option(Units::Metric, "units-metric")}
            {option(Units::UsCustomary, "units-us-customary")}
        </fieldset>
    }
    .into_any()
}
