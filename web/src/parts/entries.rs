//! Lists of entries that are edited in place.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Plan};
use leptos::prelude::*;
use serde_json::{Value, json};

use super::field::fields;
use crate::live;
use crate::locale::{t, tell};
use crate::state::App;

/// How the entries of a list are shown.
#[derive(Clone, Copy)]
pub struct Entries {
    /// The list.
    pub list: List,
    /// The line of an entry: its name, and what matters of it.
    pub line: fn(&Plan, Id) -> (String, String),
    /// What an entry opens into.
    pub body: fn(Id) -> AnyView,
    /// What a new entry starts with.
    pub fresh: fn() -> Value,
    /// The catalogue's text for adding one.
    pub add: &'static str,
}

impl Entries {
    /// A line for each entry that opens into its fields, and a button to add one.
    pub fn show(self) -> AnyView {
        let app = App::here();
        let list = self.list;
        let ids = live::memo(move || app.plan(|plan| list.ids(plan)));
        let opened = RwSignal::new(None::<Id>);
        let add_one = move || {
            let id = app.plan(Plan::next_id);
            opened.set(Some(id));
            app.edit(Edit::Insert { list, at: usize::MAX, entry: with_id((self.fresh)(), id) });
        };
        view! {
            <ul class="entries">
                {live::rows(ids, move |id| self.entry(id, opened.get_untracked() == Some(id)))}
            </ul>
            <button type="button" class="add" on:click=live::tap(add_one)>{t(self.add)}</button>
        }
        .into_any()
    }

    /// A line that opens into the entry's fields and buttons.
    pub fn entry(self, id: Id, starts_open: bool) -> AnyView {
        let app = App::here();
        let is_open = RwSignal::new(starts_open);
        let line = live::memo(move || app.plan(|plan| (self.line)(plan, id)));
        let name = move || {
            let (name, _) = line.get();
            if name.is_empty() { t("entry-unnamed") } else { name }
        };
        let opened = move || view! { {(self.body)(id)} {buttons(self.list, id)} }.into_any();
        view! {
            <li>
                <details class="entry" open=starts_open on:toggle=live::folded(move |open| is_open.set(open))>
                    <summary id=entry_line(id)>
                        <span class="name">{live::text(name)}</span>
                        <span class="value">{live::text(move || line.get().1)}</span>
                    </summary>
                    {live::when(move || is_open.get(), opened)}
                </details>
            </li>
        }
        .into_any()
    }
}

/// The id of an entry's line in the page, for going to it.
pub fn entry_line(id: Id) -> String {
    format!("entry-{id}")
}

fn with_id(mut entry: Value, id: Id) -> Value {
    if let Some(entry) = entry.as_object_mut() {
        entry.insert("id".to_owned(), id.into());
    }
    entry
}

/// Moving, copying and taking out an entry, each with a way back.
fn buttons(list: List, id: Id) -> AnyView {
    let app = App::here();
    let position = move || app.plan(|plan| list.ids(plan).iter().position(|other| *other == id));
    let shift = move |by: isize| {
        let Some(to) = position().and_then(|at| at.checked_add_signed(by)) else { return };
        app.edit(Edit::Move { list, id, to });
    };
    let copy = move || {
        let entry = app.plan(|plan| list.entry(plan, id));
        let (Some(entry), Some(at)) = (entry, position()) else { return };
        let new = app.plan(Plan::next_id);
        app.edit(Edit::Insert { list, at: at + 1, entry: with_id(entry, new) });
    };
    let remove = move || {
        let name = app.plan(|plan| entry_name(plan, list, id));
        let text = tell("entry-removed", &vec![("name", Figure::Name(name))]);
        app.edit_and_tell(Edit::Remove { list, id }, text);
    };
    let is_first = live::flag(move || position() == Some(0));
    let is_last = live::flag(move || app.plan(|plan| list.ids(plan).last() == Some(&id)));
    view! {
        <div class="buttons">
            <button type="button" disabled=is_first on:click=live::tap(move || shift(-1))>{t("entry-up")}</button>
            <button type="button" disabled=is_last on:click=live::tap(move || shift(1))>{t("entry-down")}</button>
            <button type="button" on:click=live::tap(copy)>{t("entry-copy")}</button>
            <button type="button" class="remove" on:click=live::tap(remove)>{t("entry-remove")}</button>
        </div>
    }
    .into_any()
}

fn entry_name(plan: &Plan, list: List, id: Id) -> String {
    let entry = list.entry(plan, id).unwrap_or_default();
    let name = entry.get("name").or_else(|| entry.get("place")).and_then(Value::as_str).unwrap_or_default();
    if name.is_empty() { t("entry-unnamed") } else { name.to_owned() }
}

/// A part of an entry that may be there or not, such as what an item draws: a button puts it in, another takes it out.
pub fn optional(entry: &Path, part: &str, names: &'static [&'static str], title: &'static str) -> AnyView {
    let app = App::here();
    let (entry, path) = (entry.clone(), entry.child(part));
    let is_there = {
        let path = path.clone();
        live::memo(move || app.plan(|plan| !plan.value(&path).is_null()))
    };
    live::view(move || {
        let path = path.clone();
        if is_there.get() { part_fields(&entry, path, names, title) } else { part_button(path, title) }
    })
}

fn part_button(path: Path, title: &'static str) -> AnyView {
    let app = App::here();
    let put = move || app.edit(Edit::Set { path: path.clone(), value: json!({}) });
    let text = tell("part-add", &vec![("part", Figure::Name(t(title)))]);
    view! { <button type="button" class="add" on:click=live::tap(put)>{text}</button> }.into_any()
}

fn part_fields(entry: &Path, path: Path, names: &'static [&'static str], title: &'static str) -> AnyView {
    let app = App::here();
    let figures = vec![("part", Figure::Name(t(title)))];
    let text = tell("part-remove", &figures);
    let take = move || {
        app.edit_and_tell(Edit::Set { path: path.clone(), value: Value::Null }, tell("part-removed", &figures));
    };
    view! {
        <fieldset>
            <legend>{t(title)}</legend>
            {fields(entry, names)}
            <button type="button" class="remove" on:click=live::tap(take)>{text}</button>
        </fieldset>
    }
    .into_any()
}
