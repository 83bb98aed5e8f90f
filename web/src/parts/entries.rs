//! Lists of entries that are edited in place.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Plan};
use leptos::prelude::*;
use serde_json::{Value, json};

use super::field::Fields;
use crate::locale::{t, tell};
use crate::state::App;

/// A list with a line for each entry that opens into its fields, and a button to add one.
#[component]
pub fn Entries(
    /// The list.
    list: List,
    /// What an entry opens into.
    body: fn(Id) -> AnyView,
    /// The line of an entry: its name, and what matters of it.
    line: fn(&Plan, Id) -> (String, String),
    /// What a new entry starts with.
    fresh: fn() -> Value,
    /// The catalogue's text for adding one.
    add: &'static str,
) -> impl IntoView {
    let app = App::here();
    let ids = Memo::new(move |_| app.plan(|plan| list.ids(plan)));
    let opened = RwSignal::new(None::<Id>);
    let add_one = move |_| {
        let id = app.plan(Plan::next_id);
        opened.set(Some(id));
        app.edit(Edit::Insert { list, at: usize::MAX, entry: with_id(fresh(), id) });
    };
    view! {
        <ul class="entries">
            <For each=move || ids.get() key=|id| *id let:id>
                <Entry list=list id=id body=body line=line starts_open=opened.get_untracked() == Some(id) />
            </For>
        </ul>
        <button type="button" class="add" on:click=add_one>{t(add)}</button>
    }
}

fn with_id(mut entry: Value, id: Id) -> Value {
    if let Some(entry) = entry.as_object_mut() {
        entry.insert("id".to_owned(), id.into());
    }
    entry
}

/// A line that opens into the entry's fields and buttons.
#[component]
pub fn Entry(
    /// The list the entry is in.
    list: List,
    /// The entry.
    id: Id,
    /// What it opens into.
    body: fn(Id) -> AnyView,
    /// Its line.
    line: fn(&Plan, Id) -> (String, String),
    /// Whether it is open when first shown.
    starts_open: bool,
) -> impl IntoView {
    let app = App::here();
    let is_open = RwSignal::new(starts_open);
    let text = Memo::new(move |_| app.plan(|plan| line(plan, id)));
    let name = move || {
        let (name, _) = text.get();
        if name.is_empty() { t("entry-unnamed") } else { name }
    };
    view! {
        <li>
            <details class="entry" open=starts_open on:toggle:target=move |event| is_open.set(event.target().has_attribute("open"))>
                <summary>
                    <span class="name">{name}</span>
                    <span class="value">{move || text.get().1}</span>
                </summary>
                <Show when=move || is_open.get()>
                    {body(id)}
                    <EntryButtons list=list id=id />
                </Show>
            </details>
        </li>
    }
}

/// Moving, copying and taking out an entry, each with a way back.
#[component]
pub fn EntryButtons(list: List, id: Id) -> impl IntoView {
    let app = App::here();
    let position = move || app.plan(|plan| list.ids(plan).iter().position(|other| *other == id));
    let shift = move |by: isize| {
        let Some(to) = position().and_then(|at| at.checked_add_signed(by)) else { return };
        app.edit(Edit::Move { list, id, to });
    };
    let copy = move |_| {
        let entry = app.plan(|plan| list.entry(plan, id));
        let (Some(entry), Some(at)) = (entry, position()) else { return };
        let new = app.plan(Plan::next_id);
        app.edit(Edit::Insert { list, at: at + 1, entry: with_id(entry, new) });
    };
    let remove = move |_| {
        let name = app.plan(|plan| entry_name(plan, list, id));
        let text = tell("entry-removed", &vec![("name", Figure::Name(name))]);
        app.edit_and_tell(Edit::Remove { list, id }, text);
    };
    let is_first = move || position() == Some(0);
    let is_last = move || app.plan(|plan| list.ids(plan).last() == Some(&id));
    view! {
        <div class="buttons">
            <button type="button" disabled=is_first on:click=move |_| shift(-1)>{t("entry-up")}</button>
            <button type="button" disabled=is_last on:click=move |_| shift(1)>{t("entry-down")}</button>
            <button type="button" on:click=copy>{t("entry-copy")}</button>
            <button type="button" class="remove" on:click=remove>{t("entry-remove")}</button>
        </div>
    }
}

fn entry_name(plan: &Plan, list: List, id: Id) -> String {
    let entry = list.entry(plan, id).unwrap_or_default();
    let name = entry.get("name").or_else(|| entry.get("place")).and_then(Value::as_str).unwrap_or_default();
    if name.is_empty() { t("entry-unnamed") } else { name.to_owned() }
}

/// A part of an entry that may be there or not, such as what an item draws: a button puts it in, another takes it out.
#[component]
pub fn Optional(
    /// The part.
    path: Path,
    /// Its fields below the entry.
    names: &'static [&'static str],
    /// The entry's path.
    base: Path,
    /// The catalogue's title for it.
    title: &'static str,
    /// What it starts with.
    fresh: fn() -> Value,
) -> impl IntoView {
    let app = App::here();
    let is_there = {
        let path = path.clone();
        Memo::new(move |_| app.plan(|plan| !plan.value(&path).is_null()))
    };
    let put = {
        let path = path.clone();
        move |_| app.edit(Edit::Set { path: path.clone(), value: fresh() })
    };
    let text = Figure::Name(t(title));
    let take = {
        let text = tell("part-removed", &vec![("part", text.clone())]);
        move |_| app.edit_and_tell(Edit::Set { path: path.clone(), value: Value::Null }, text.clone())
    };
    let put_text = tell("part-add", &vec![("part", text.clone())]);
    let take_text = tell("part-remove", &vec![("part", text)]);
    view! {
        <Show
            when=move || is_there.get()
            fallback=move || view! { <button type="button" class="add" on:click=put.clone()>{put_text.clone()}</button> }
        >
            <fieldset>
                <legend>{t(title)}</legend>
                <Fields base=base.clone() names=names />
                <button type="button" class="remove" on:click=take.clone()>{take_text.clone()}</button>
            </fieldset>
        </Show>
    }
}

/// An empty part.
pub fn nothing() -> Value {
    json!({})
}
