//! Local storage: records by name, and the names of the app's own.
//!
//! What the browser does not keep, because it keeps nothing or has no room, is held in memory until the page is closed:
//! [`is_all_kept`] tells. A record that cannot be read is never written over: it is moved to a name of its own, from
//! which it can be had as a file.

use std::cell::RefCell;

use gloo_storage::{LocalStorage, Storage};
use kerbstead_core::keeping::{Card, Journal, Kept, Settings, Shelf, Slip, Slot, Versions};
use kerbstead_core::plan::Plain;

use crate::{browser, json};

/// The name of the shelf.
pub const SHELF: &str = "kerbstead.shelf";
/// The name of the settings.
pub const SETTINGS: &str = "kerbstead.settings";
/// The name of the slip of the shop.
pub const SLIP: &str = "kerbstead.slip";
const PLAN: &str = "kerbstead.plan.";
const VERSIONS: &str = "kerbstead.versions.";
const JOURNAL: &str = "kerbstead.journal.";
const ASIDE: &str = "kerbstead.aside.";

thread_local! {
    /// The number of this tab: no other has the same, or so.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a cast keeps to the range
    static TAB: u32 = (js_sys::Math::random() * f64::from(u32::MAX)) as u32;
    /// Whether the browser keeps anything, found out once.
    static AVAILABLE: bool = probe();
    /// What is to be kept and is not, as text.
    static MEMORY: RefCell<Vec<(String, String)>> = const { RefCell::new(Vec::new()) };
}

/// Whether this browser lets the page keep anything. Private windows and some settings do not.
pub fn is_available() -> bool {
    AVAILABLE.with(|available| *available)
}

fn probe() -> bool {
    const PROBE: &str = "kerbstead.probe";
    // The crate takes for granted that there is a storage; a browser that refuses it throws instead.
    let is_there = leptos::prelude::window().local_storage().is_ok_and(|storage| storage.is_some());
    if !is_there {
        return false;
    }
    let is_kept = LocalStorage::raw().set_item(PROBE, "1").is_ok();
    if is_kept {
        LocalStorage::delete(PROBE);
    }
    // A storage that takes no more because it is full still has what it has.
    is_kept || LocalStorage::length() > 0
}

/// The number of this tab.
pub fn tab() -> u32 {
    TAB.with(|tab| *tab)
}

/// The text under a name.
fn text(name: &str) -> Option<String> {
    let held =
        MEMORY.with_borrow(|memory| memory.iter().find(|(known, _)| known == name).map(|(_, text)| text.clone()));
    held.or_else(|| stored(name))
}

fn stored(name: &str) -> Option<String> {
    if is_available() { LocalStorage::raw().get_item(name).ok().flatten() } else { None }
}

/// Keeps a text, or holds it in memory where that is not possible, and tells which.
fn put(name: &str, text: &str) -> bool {
    release(name);
    let is_kept = is_available() && LocalStorage::raw().set_item(name, text).is_ok();
    if !is_kept {
        MEMORY.with_borrow_mut(|memory| memory.push((name.to_owned(), text.to_owned())));
    }
    is_kept
}

fn release(name: &str) {
    MEMORY.with_borrow_mut(|memory| memory.retain(|(known, _)| known != name));
}

/// Whether everything is kept; what is not is tried again.
pub fn is_all_kept() -> bool {
    let held = if is_available() { MEMORY.take() } else { Vec::new() };
    let kept = held.iter().filter(|(name, text)| put(name, text)).count();
    is_available() && kept == held.len()
}

/// Forgets what stands under a name.
pub fn forget(name: &str) {
    release(name);
    if is_available() {
        LocalStorage::delete(name);
    }
}

/// The rest of every name that begins so.
pub fn names(start: &str) -> Vec<String> {
    let mut all: Vec<String> = MEMORY.with_borrow(|memory| memory.iter().map(|(name, _)| name.clone()).collect());
    for at in 0..if is_available() { LocalStorage::length() } else { 0 } {
        let name = LocalStorage::raw().key(at).ok().flatten();
        all.extend(name.filter(|name| !all.contains(name)));
    }
    all.iter().filter_map(|name| name.strip_prefix(start).map(str::to_owned)).collect()
}

/// A record under a name; none when there is none, or none that can be read, which is then set aside.
pub fn record<T: Plain + Default>(name: &str) -> Option<T> {
    let mut record = T::default();
    read_into(name, &mut record).then_some(record)
}

fn read_into(name: &str, record: &mut dyn Plain) -> bool {
    let Some(text) = text(name) else { return false };
    let is_read = json::read(&text).is_some_and(|value| record.read(&value));
    if !is_read {
        set_aside(name, &text);
    }
    is_read
}

/// Keeps a record.
pub fn keep(name: &str, record: &dyn Plain) {
    put(name, &json::text(&record.to_plain()));
}

/// What could not be read and was set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// The name it has now.
    pub name: String,
    /// What it was: `shelf`, `settings`, `plan.3`.
    pub was: String,
}

/// Moves what cannot be read to a name of its own, so that it is neither lost nor written over. Removed first, for in a
/// full storage there is no room for it twice.
fn set_aside(name: &str, text: &str) {
    let was = name.strip_prefix("kerbstead.").unwrap_or(name);
    let new = format!("{ASIDE}{was}.{}", browser::now());
    forget(name);
    if !put(&new, text) {
        release(&new);
        put(name, text);
    }
}

/// What was set aside.
pub fn asides() -> Vec<Aside> {
    let aside = |rest: String| {
        let was = rest.rsplit_once('.').map_or("", |(was, _)| was).to_owned();
        Aside { name: format!("{ASIDE}{rest}"), was }
    };
    names(ASIDE).into_iter().map(aside).collect()
}

/// The text that was set aside.
pub fn aside_text(aside: &Aside) -> String {
    text(&aside.name).unwrap_or_default()
}

/// Keeps a text that was set aside again, after it was thrown away.
pub fn put_aside_back(aside: &Aside, text: &str) {
    put(&aside.name, text);
}

/// The shelf: the cards of the plans that are there, also of those that no card is kept of.
pub fn shelf() -> Shelf {
    let mut shelf: Shelf = record(SHELF).unwrap_or_default();
    let slots = slots();
    shelf.cards.retain(|card| slots.contains(&card.slot));
    for slot in slots {
        if shelf.card(slot).is_none()
            && let Some(kept) = plan(slot)
        {
            shelf.cards.push(Card { slot, title: kept.title().to_owned(), is_demo: false });
        }
    }
    shelf
}

/// Keeps the shelf.
pub fn keep_shelf(shelf: &Shelf) {
    keep(SHELF, shelf);
}

/// The places that have a plan.
fn slots() -> Vec<Slot> {
    names(PLAN).iter().filter_map(|rest| rest.parse().ok()).collect()
}

/// A place no plan is in, nor ever was as far as the storage knows.
pub fn free_slot() -> Slot {
    let set_aside = asides().into_iter().filter_map(|aside| aside.was.strip_prefix("plan.")?.parse().ok());
    slots().into_iter().chain(set_aside).max().unwrap_or(0).saturating_add(1)
}

/// The person's settings.
pub fn settings() -> Settings {
    record(SETTINGS).unwrap_or_default()
}

/// Keeps the settings.
pub fn keep_settings(settings: &Settings) {
    keep(SETTINGS, settings);
}

/// The slip of the shop.
pub fn slip() -> Slip {
    record(SLIP).unwrap_or_default()
}

/// Keeps the slip.
pub fn keep_slip(slip: &Slip) {
    keep(SLIP, slip);
}

/// The plan of a slot.
pub fn plan(slot: Slot) -> Option<Kept> {
    record(&plan_name(slot))
}

/// Moves a plan aside that cannot be read.
pub fn set_plan_aside(slot: Slot, text: &str) {
    set_aside(&plan_name(slot), text);
}

/// A plan as it is kept for all tabs.
pub fn plan_text(slot: Slot) -> Option<String> {
    stored(&plan_name(slot))
}

/// Keeps a plan in its slot, and then its journal needs no keeping any more. Where there is no room, earlier versions
/// make some: they are worth less than what is new. False when there is none at all.
pub fn keep_plan(slot: Slot, kept: &Kept) -> bool {
    let (name, text) = (plan_name(slot), json::text(&kept.to_plain()));
    let is_kept = put(&name, &text) || [1, 0].into_iter().any(|most| make_room(most) && put(&name, &text));
    if is_kept {
        forget(&journal_name(slot));
    }
    is_kept
}

/// Keeps what was done to a plan since it was kept.
pub fn keep_journal(slot: Slot, journal: &Journal) {
    keep(&journal_name(slot), journal);
}

/// What was done to a plan by this page since it was kept.
pub fn journal(slot: Slot) -> Journal {
    record(&journal_name(slot)).unwrap_or_default()
}

/// A journal that a page left behind which ended before it could keep its plan.
pub struct Left {
    /// The plan it is about.
    pub slot: Slot,
    /// Its name, to forget it by.
    pub name: String,
    /// What was done.
    pub journal: Journal,
}

/// All journals that were left behind. Each is counted as tried, and one that was tried too often is set aside.
pub fn left_journals() -> Vec<Left> {
    const MOST_TRIES: u32 = 2;
    let mut left = Vec::new();
    for rest in names(JOURNAL) {
        let name = format!("{JOURNAL}{rest}");
        let slot = rest.split('.').next().and_then(|slot| slot.parse().ok());
        let (Some(slot), Some(mut journal)) = (slot, record::<Journal>(&name)) else { continue };
        if journal.tries >= MOST_TRIES || text(&plan_name(slot)).is_none() {
            set_aside(&name, &text(&name).unwrap_or_default());
            continue;
        }
        journal.tries += 1;
        keep(&name, &journal);
        left.push(Left { slot, name, journal });
    }
    left
}

/// Leaves only the newest versions of each plan. False when there was nothing to leave out.
fn make_room(most: usize) -> bool {
    let mut is_more = false;
    for rest in names(VERSIONS) {
        let name = format!("{VERSIONS}{rest}");
        let mut versions: Versions = record(&name).unwrap_or_default();
        let surplus = versions.0.len().saturating_sub(most);
        is_more |= surplus > 0;
        versions.0.drain(..surplus);
        forget(&name);
        if !versions.0.is_empty() {
            keep(&name, &versions);
        }
    }
    is_more
}

/// Empties a slot.
pub fn drop_plan(slot: Slot) {
    forget(&plan_name(slot));
    forget(&versions_name(slot));
}

/// The earlier versions of a plan.
pub fn versions(slot: Slot) -> Versions {
    record(&versions_name(slot)).unwrap_or_default()
}

/// Keeps the earlier versions of a plan, as many as there is room for.
pub fn keep_versions(slot: Slot, versions: &Versions) {
    let name = versions_name(slot);
    for first in 0..versions.0.len() {
        let newest = Versions(versions.0.iter().skip(first).cloned().collect());
        if put(&name, &json::text(&newest.to_plain())) || !is_available() {
            return;
        }
    }
    forget(&name);
}

/// The name of a plan.
pub fn plan_name(slot: Slot) -> String {
    format!("{PLAN}{slot}")
}

fn journal_name(slot: Slot) -> String {
    format!("{JOURNAL}{slot}.{}", tab())
}

/// The name of the earlier versions of a plan.
pub fn versions_name(slot: Slot) -> String {
    format!("{VERSIONS}{slot}")
}
