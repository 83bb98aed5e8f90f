//! Plans in local storage. Every plan has a slot of its own; the shelf lists the slots.
//!
//! Where the browser keeps nothing, all of it works in memory until the page is closed; [`is_available`] tells.

use std::cell::RefCell;

use gloo_storage::{LocalStorage, Storage};
use kerbstead_core::plan::{Path, Plain};
use serde_json::{Map, Value};

use crate::json;

const SHELF: &str = "kerbstead.shelf";
const SETTINGS: &str = "kerbstead.settings";

/// The number of a plan's place in the storage.
pub type Slot = u32;

/// The plans there are.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shelf {
    /// In the order they are listed.
    pub cards: Vec<Card>,
    /// The plan that is open.
    pub open: Slot,
}

/// A plan on the shelf.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Card {
    /// Where it is kept.
    pub slot: Slot,
    /// Its title.
    pub title: String,
    /// Whether it is the invented example.
    pub is_demo: bool,
}

/// A plan as it is kept: its file, and what is half typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// The file.
    pub document: Value,
    /// Text that no field could take yet, by the field's path.
    pub drafts: Drafts,
}

/// Text by the path of its field. There are never more than a few.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drafts(Vec<(Path, String)>);

/// What the person chose for themselves rather than for a plan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// Whether values are shown in US customary units; `None` follows the region.
    pub us_customary: Option<bool>,
}

impl Shelf {
    /// A slot no plan is in.
    pub fn free_slot(&self) -> Slot {
        self.cards.iter().map(|card| card.slot).max().unwrap_or(0).saturating_add(1)
    }
}

impl Drafts {
    /// The text of a field.
    pub fn get(&self, path: &Path) -> Option<&String> {
        self.0.iter().find(|(of, _)| of == path).map(|(_, text)| text)
    }

    /// Keeps a text, in place of the one there was for its field.
    pub fn insert(&mut self, path: Path, text: String) {
        self.remove(&path);
        self.0.push((path, text));
    }

    /// Forgets the text of a field.
    pub fn remove(&mut self, path: &Path) {
        self.0.retain(|(of, _)| of != path);
    }
}

impl Plain for Shelf {
    fn to_plain(&self) -> Value {
        object(vec![("cards", self.cards.to_plain()), ("open", self.open.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { cards: part(value, "cards"), open: part(value, "open") };
        value.is_object()
    }
}

impl Plain for Card {
    fn to_plain(&self) -> Value {
        object(vec![
            ("slot", self.slot.to_plain()),
            ("title", self.title.to_plain()),
            ("is_demo", self.is_demo.to_plain()),
        ])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { slot: part(value, "slot"), title: part(value, "title"), is_demo: part(value, "is_demo") };
        value.is_object()
    }
}

impl Plain for Kept {
    fn to_plain(&self) -> Value {
        let drafts = self.drafts.0.iter().map(|(path, text)| (path.as_str(), text.to_plain()));
        object(vec![("document", self.document.clone()), ("drafts", object(drafts.collect()))])
    }

    fn read(&mut self, value: &Value) -> bool {
        self.document = value.get("document").cloned().unwrap_or_default();
        self.drafts = Drafts::default();
        for (path, text) in value.get("drafts").and_then(Value::as_object).into_iter().flatten() {
            if let Some(text) = text.as_str() {
                self.drafts.insert(Path::from(path.as_str()), text.to_owned());
            }
        }
        value.is_object()
    }
}

impl Plain for Settings {
    fn to_plain(&self) -> Value {
        object(vec![("us_customary", self.us_customary.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { us_customary: part(value, "us_customary") };
        value.is_object()
    }
}

fn object(fields: Vec<(&str, Value)>) -> Value {
    let mut object = Map::new();
    for (name, value) in fields {
        object.insert(name.to_owned(), value);
    }
    Value::Object(object)
}

/// A field of an object; its default where it is missing or not of its kind.
fn part<T: Plain + Default>(value: &Value, name: &str) -> T {
    value.get(name).and_then(T::from_plain).unwrap_or_default()
}

thread_local! {
    /// Whether the browser keeps anything, found out once.
    static AVAILABLE: bool = probe();
    /// What would be kept.
    static MEMORY: RefCell<Vec<(String, Value)>> = const { RefCell::new(Vec::new()) };
}

/// Whether this browser lets the page keep anything. Private windows and some settings do not.
pub fn is_available() -> bool {
    AVAILABLE.with(|available| *available)
}

fn probe() -> bool {
    const PROBE: &str = "kerbstead.probe";
    // The crate takes for granted that there is a storage; a browser that refuses it throws instead.
    let is_there = leptos::prelude::window().local_storage().is_ok_and(|storage| storage.is_some());
    let is_kept = is_there && LocalStorage::raw().set_item(PROBE, "1").is_ok();
    if is_kept {
        LocalStorage::delete(PROBE);
    }
    is_kept
}

fn get<T: Plain + Default>(key: &str) -> Option<T> {
    let value = if is_available() { stored(key) } else { remembered(key) };
    T::from_plain(&value?)
}

/// What the browser keeps under a key. The browser itself parses and prints the text, which it can already.
fn stored(key: &str) -> Option<Value> {
    let text = LocalStorage::raw().get_item(key).ok()??;
    json::from_js(&js_sys::JSON::parse(&text).ok()?)
}

fn remembered(key: &str) -> Option<Value> {
    MEMORY.with_borrow(|memory| memory.iter().find(|(name, _)| name == key).map(|(_, value)| value.clone()))
}

/// Keeps a value; false when the storage is full or refused.
fn set(key: &str, value: &Value) -> bool {
    if is_available() {
        return written(key, value).is_some();
    }
    forget(key);
    MEMORY.with_borrow_mut(|memory| memory.push((key.to_owned(), value.clone())));
    true
}

fn written(key: &str, value: &Value) -> Option<()> {
    let text = js_sys::JSON::stringify(&json::to_js(value)).ok()?;
    LocalStorage::raw().set_item(key, &String::from(text)).ok()
}

fn forget(key: &str) {
    if is_available() {
        return LocalStorage::delete(key);
    }
    MEMORY.with_borrow_mut(|memory| memory.retain(|(name, _)| name != key));
}

/// The shelf, empty at the first visit.
pub fn shelf() -> Shelf {
    get(SHELF).unwrap_or_default()
}

/// Keeps the shelf.
pub fn keep_shelf(shelf: &Shelf) -> bool {
    set(SHELF, &shelf.to_plain())
}

/// The person's settings.
pub fn settings() -> Settings {
    get(SETTINGS).unwrap_or_default()
}

/// Keeps the settings.
pub fn keep_settings(settings: &Settings) -> bool {
    set(SETTINGS, &settings.to_plain())
}

/// The plan of a slot.
pub fn plan(slot: Slot) -> Option<Kept> {
    get(&key(slot))
}

/// Keeps a plan in its slot; false when the storage is full or refused.
pub fn keep_plan(slot: Slot, kept: &Kept) -> bool {
    set(&key(slot), &kept.to_plain())
}

/// Empties a slot.
pub fn drop_plan(slot: Slot) {
    forget(&key(slot));
}

fn key(slot: Slot) -> String {
    format!("kerbstead.plan.{slot}")
}
