//! Plans in local storage. Every plan has a slot of its own; the shelf lists the slots.
//!
//! Where the browser keeps nothing, all of it works in memory until the page is closed; [`is_available`] tells.

use std::cell::RefCell;
use std::collections::BTreeMap;

use gloo_storage::{LocalStorage, Storage};
use kerbstead_core::plan::Path;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

const SHELF: &str = "kerbstead.shelf";
const SETTINGS: &str = "kerbstead.settings";

/// The number of a plan's place in the storage.
pub type Slot = u32;

/// The plans there are.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Shelf {
    /// In the order they are listed.
    pub cards: Vec<Card>,
    /// The plan that is open.
    pub open: Slot,
}

/// A plan on the shelf.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Card {
    /// Where it is kept.
    pub slot: Slot,
    /// Its title.
    pub title: String,
    /// Whether it is the invented example.
    pub is_demo: bool,
}

/// A plan as it is kept: its file, and what is half typed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Kept {
    /// The file.
    pub document: Value,
    /// Text that no field could take yet, by the field's path.
    pub drafts: BTreeMap<Path, String>,
}

/// What the person chose for themselves rather than for a plan.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
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

thread_local! {
    /// Whether the browser keeps anything, found out once.
    static AVAILABLE: bool = probe();
    /// What would be kept.
    static MEMORY: RefCell<BTreeMap<String, Value>> = const { RefCell::new(BTreeMap::new()) };
}

/// Whether this browser lets the page keep anything. Private windows and some settings do not.
pub fn is_available() -> bool {
    AVAILABLE.with(|available| *available)
}

fn probe() -> bool {
    const PROBE: &str = "kerbstead.probe";
    let storage = leptos::prelude::window().local_storage().ok().flatten();
    storage.is_some_and(|storage| storage.set_item(PROBE, "1").is_ok() && storage.remove_item(PROBE).is_ok())
}

fn get<T: DeserializeOwned>(key: &str) -> Option<T> {
    if is_available() {
        return LocalStorage::get(key).ok();
    }
    let value = MEMORY.with_borrow(|memory| memory.get(key).cloned())?;
    serde_json::from_value(value).ok()
}

/// Keeps a value; false when the storage is full or refused.
fn set(key: &str, value: &impl Serialize) -> bool {
    if is_available() {
        return LocalStorage::set(key, value).is_ok();
    }
    let value = serde_json::to_value(value).unwrap_or_default();
    MEMORY.with_borrow_mut(|memory| memory.insert(key.to_owned(), value));
    true
}

/// The shelf, empty at the first visit.
pub fn shelf() -> Shelf {
    get(SHELF).unwrap_or_default()
}

/// Keeps the shelf.
pub fn keep_shelf(shelf: &Shelf) -> bool {
    set(SHELF, shelf)
}

/// The person's settings.
pub fn settings() -> Settings {
    get(SETTINGS).unwrap_or_default()
}

/// Keeps the settings.
pub fn keep_settings(settings: &Settings) -> bool {
    set(SETTINGS, settings)
}

/// The plan of a slot.
pub fn plan(slot: Slot) -> Option<Kept> {
    get(&key(slot))
}

/// Keeps a plan in its slot; false when the storage is full or refused.
pub fn keep_plan(slot: Slot, kept: &Kept) -> bool {
    set(&key(slot), kept)
}

/// Empties a slot.
pub fn drop_plan(slot: Slot) {
    if is_available() {
        LocalStorage::delete(key(slot));
    } else {
        MEMORY.with_borrow_mut(|memory| memory.remove(&key(slot)));
    }
}

fn key(slot: Slot) -> String {
    format!("kerbstead.plan.{slot}")
}
