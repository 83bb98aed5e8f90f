//! Lists of entries that are edited in place.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Plan};
use serde_json::{Value, json};

use super::button::button;
use super::field::fields;
use kerbstead_core::words::Key;

use crate::call::Read;
use crate::el::{View, el, fragment};
use crate::live::{self, Memo, Signal};
use crate::locale::t;
use crate::route;
use crate::state::App;

/// How the entries of a list are shown.
#[derive(Clone, Copy)]
pub struct Entries {
    /// The list.
    pub list: List,
    /// The line of an entry: its name, and what matters of it.
    pub line: fn(&Plan, Id) -> (String, String),
    /// What an entry opens into.
    pub body: fn(Id) -> View,
    /// What a new entry starts with.
    pub fresh: fn() -> Value,
    /// The catalogue's text for adding one.
    pub add: Key,
}

impl Entries {
    /// A line for each entry that opens into its fields, and a button to add one.
    pub fn show(self) -> View {
        let opened = Signal::new(route::entry_in_address());
        fragment().put(self.rows(opened)).put(self.adding(opened)).done()
    }

    fn adding(self, opened: Signal<Option<Id>>) -> View {
        let (app, list) = (App::here(), self.list);
        let add_one = move || {
            let id = app.plan(Plan::next_id);
            opened.set(Some(id));
            app.edit(Edit::Insert { list, at: usize::MAX, entry: with_id((self.fresh)(), id) });
        };
        button(self.add, add_one).class("add").done()
    }

    /// The lines alone, for a list that is added to in another way.
    pub fn listed(self) -> View {
        self.rows(Signal::new(route::entry_in_address()))
    }

    /// A button to add one, and the lines of so many of the last entries, the last first.
    pub fn newest(self, count: Signal<usize>) -> View {
        let (app, list) = (App::here(), self.list);
        let ids = live::memo(move || {
            let count = count.get();
            app.plan(|plan| list.ids(plan).into_iter().rev().take(count).collect())
        });
        let opened = Signal::new(route::entry_in_address());
        fragment().put(self.adding(opened)).put(self.rows_of(ids, opened)).done()
    }

    fn rows(self, opened: Signal<Option<Id>>) -> View {
        let (app, list) = (App::here(), self.list);
        self.rows_of(live::memo(move || app.plan(|plan| list.ids(plan))), opened)
    }

    fn rows_of(self, ids: Memo<Vec<Id>>, opened: Signal<Option<Id>>) -> View {
        let row = move |id| self.entry(id, opened.get_untracked() == Some(id));
        el("ul").class("entries").put(live::rows(ids, row)).done()
    }

    /// A line that opens into the entry's fields and buttons.
    pub fn entry(self, id: Id, starts_open: bool) -> View {
        let app = App::here();
        let line = live::memo(move || {
            let (name, value) = app.settled_plan(|plan| (self.line)(plan, id));
            (named(name), value)
        });
        let opened = move || fragment().put((self.body)(id)).put(buttons(self.list, id)).done();
        entry_row(id, starts_open, line, Box::new(opened))
    }
}

/// A line, its name and what matters of it, that opens into a body, which is made only then.
pub fn entry_row(id: Id, starts_open: bool, line: Memo<(String, String)>, body: Box<dyn Read<View>>) -> View {
    let is_open = Signal::new(starts_open);
    el("li")
        .put(
            el("details")
                .class("entry")
                .flag("open", starts_open)
                .on_toggle(move |open| is_open.set(open))
                .put(
                    el("summary")
                        .attr("id", entry_line(id))
                        .put(el("span").class("name").put(live::text(move || line.get().0)))
                        .put(el("span").class("value").put(live::text(move || line.get().1))),
                )
                .put(live::when(move || is_open.get(), move || body.read())),
        )
        .done()
}

/// The id of an entry's line in the page, for going to it.
pub fn entry_line(id: Id) -> String {
    format!("entry-{id}")
}

/// What the person calls an entry of the plan, to show it.
pub fn named_in(plan: &Plan, id: Id) -> String {
    named(plan.name_of(id).unwrap_or_default().to_owned())
}

/// A name to show; what is said where there is none.
pub fn named(name: String) -> String {
    if name.is_empty() { t!("entry-unnamed") } else { name }
}

fn with_id(mut entry: Value, id: Id) -> Value {
    if let Some(entry) = entry.as_object_mut() {
        entry.insert("id".to_owned(), id.into());
    }
    entry
}

/// Moving, copying and taking out an entry, each with a way back.
fn buttons(list: List, id: Id) -> View {
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
        let text = tell!("entry-removed", &vec![("name", Figure::Name(name))]);
        app.edit_and_tell(Edit::Remove { list, id }, text);
    };
    let is_first = move || position() == Some(0);
    let is_last = move || app.plan(|plan| list.ids(plan).last() == Some(&id));
    el("div")
        .class("buttons")
        .put(
            el("button")
                .attr("type", "button")
                .live_flag("disabled", is_first)
                .on_click(move || shift(-1))
                .put(key!("entry-up")),
        )
        .put(
            el("button")
                .attr("type", "button")
                .live_flag("disabled", is_last)
                .on_click(move || shift(1))
                .put(key!("entry-down")),
        )
        .put(button(key!("entry-copy"), copy))
        .put(button(key!("entry-remove"), remove).class("remove"))
        .done()
}

fn entry_name(plan: &Plan, list: List, id: Id) -> String {
    let entry = list.entry(plan, id).unwrap_or_default();
    let name = entry.get("name").or_else(|| entry.get("place")).and_then(Value::as_str).unwrap_or_default();
    named(name.to_owned())
}

/// A part of an entry that may be there or not, such as what an item draws: a button puts it in, another takes it out.
/// The second names are folded away.
pub fn optional(entry: &Path, part: &str, names: [&'static [&'static str]; 2], title: &'static str) -> View {
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

fn part_button(path: Path, title: &'static str) -> View {
    let app = App::here();
    let put = move || app.edit(Edit::Set { path: path.clone(), value: json!({}) });
    let text = tell!("part-add", &vec![("part", Figure::Name(t(title)))]);
    el("button").attr("type", "button").class("add").on_click(put).put(text).done()
}

fn part_fields(entry: &Path, path: Path, [names, more]: [&'static [&'static str]; 2], title: &'static str) -> View {
    let app = App::here();
    let figures = vec![("part", Figure::Name(t(title)))];
    let text = tell!("part-remove", &figures);
    let take = move || {
        app.edit_and_tell(Edit::Set { path: path.clone(), value: Value::Null }, tell!("part-removed", &figures));
    };
    let more = (!more.is_empty()).then(|| folded_fields(key!("part-more"), entry, more));
    el("fieldset")
        .put(el("legend").put(t(title)))
        .put(fields(entry, names))
        .put(more)
        .put(el("button").attr("type", "button").class("remove").on_click(take).put(text))
        .done()
}

/// Fields that are folded away and made only when they are wanted.
pub fn folded_fields(title: Key, base: &Path, names: &'static [&'static str]) -> View {
    let is_open = Signal::new(false);
    let base = base.clone();
    el("details")
        .on_toggle(move |open| is_open.set(open))
        .put(el("summary").put(title))
        .put(live::when(move || is_open.get(), move || fields(&base, names)))
        .done()
}
