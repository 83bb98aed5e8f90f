//! Several tabs at once: what another one wrote is taken over, or made one with what was done here.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{Clash, History, Journal, Kept, Mark, Merged, Shelf, Side, merge};
use kerbstead_core::plan::{Plain, field};
use serde_json::Value;
use wasm_bindgen::JsCast;
use web_sys::StorageEvent;

use super::{App, Upkeep, WayBack, read};
use crate::locale::{self, plain_sentence};
use crate::parts::field_label;
use crate::{browser, json, storage};

/// The states of the open plan that this tab knows, the newest last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// The state that the next one is made from.
    pub last: Mark,
    /// The highest revision there was.
    pub revision: u32,
    /// The last states, without what could be taken back.
    states: Vec<Kept>,
}

/// How many states are known: another tab may not have seen the last of them yet.
const MOST_STATES: usize = 8;

impl Seen {
    /// What is known of a plan that was just opened.
    pub fn of(state: Kept) -> Self {
        let mut seen = Self::default();
        seen.add(state);
        seen
    }

    /// Takes note of a state.
    pub fn add(&mut self, state: Kept) {
        self.last = state.mark;
        self.revision = self.revision.max(state.mark.revision);
        if self.states.len() == MOST_STATES {
            self.states.remove(0);
        }
        self.states.push(state);
    }

    /// The name of the next state.
    pub fn next(&self) -> Mark {
        Mark { revision: self.revision.saturating_add(1), tab: storage::tab() }
    }

    /// Whether it is a state of here, or one that a state of here was made from.
    fn knows(&self, mark: Mark) -> bool {
        self.states.iter().any(|state| state.mark == mark || state.after == mark)
    }

    /// The last state that both sides come from.
    fn common(&self, theirs: &Kept) -> Kept {
        let same = self.states.iter().rev().find(|state| state.mark == theirs.after);
        same.or(self.states.first()).cloned().unwrap_or_default()
    }
}

impl App {
    /// Follows what other tabs write.
    pub fn listen_to_tabs(self) {
        let heard = move |event: &StorageEvent| self.hear(event.key().as_deref(), event.new_value());
        let act = move |event: web_sys::Event| heard(event.unchecked_ref());
        browser::listen(&leptos::prelude::window(), "storage", Box::new(act));
    }

    fn hear(self, name: Option<&str>, text: Option<String>) {
        let slot = self.open_slot();
        // Without a name, everything was cleared.
        let is_own = name.is_none_or(|name| name == storage::plan_name(slot));
        if is_own {
            match text.and_then(|text| state_in(&text)) {
                Some(theirs) => self.take_in_state(&theirs),
                None => self.tell(t!("tabs-deleted"), WayBack::None),
            }
        } else if name == Some(storage::SHELF) {
            self.desk.shelf.set(Shelf { open: slot, ..storage::shelf() });
        } else if name == Some(storage::SETTINGS) {
            self.desk.settings.set(storage::settings());
            self.redraw();
        } else if name == Some(storage::SLIP) {
            self.desk.slip.set(storage::slip());
        } else if name.is_some_and(|name| name == storage::versions_name(slot)) {
            self.desk.versions.set(storage::versions(slot));
        }
    }

    /// Takes in what another tab wrote that was not told yet. Before anything is written, so that nothing is written over.
    pub(super) fn look_at_other_tabs(self) {
        let slot = self.open_slot();
        let Some(text) = storage::plan_text(slot) else { return };
        let Mark { revision, tab } = self.upkeep.with_untracked(|upkeep| upkeep.seen.last);
        // The mark stands last: nearly always this is enough, and all of it need not be read.
        if text.ends_with(&format!("\"mark\":{{\"revision\":{revision},\"tab\":{tab}}}}}")) {
            return;
        }
        match state_in(&text) {
            Some(theirs) => self.take_in_state(&theirs),
            None => storage::set_plan_aside(slot, &text),
        }
    }

    fn take_in_state(self, theirs: &Kept) {
        let Upkeep { seen, journal, .. } = self.upkeep.get_untracked();
        if seen.knows(theirs.mark) {
            return;
        }
        let (slot, own) = self.kept();
        let is_changed = journal != Journal::default();
        // What is not kept yet was done after what the other tab has kept already.
        let is_later = is_changed || seen.last > theirs.mark;
        let is_same = own.document == theirs.document && own.drafts == theirs.drafts;
        let base = seen.common(theirs);
        self.upkeep.update(|upkeep| upkeep.seen.add(without_history(theirs.clone())));
        if is_same {
            return;
        }
        let sides = [side(&own), side(theirs)];
        let [later, earlier] = if is_later { sides } else { [sides[1], sides[0]] };
        let merged = merge(side(&base), later, earlier);
        if !merged.clashes.is_empty() {
            self.add_version(slot, browser::now(), earlier.document.clone());
        }
        let is_theirs = merged.document == theirs.document && merged.drafts == theirs.drafts;
        let history = if is_later { own.history } else { own.history.renamed(&merged.renamings) };
        self.tell_of(&merged, is_theirs);
        let kept = Kept { document: merged.document, drafts: merged.drafts, history, ..*theirs };
        self.show_state(kept, is_theirs);
    }

    /// Shows what came of several tabs, and keeps it unless it is kept already.
    fn show_state(self, kept: Kept, is_kept: bool) {
        let (document, plan) = read(&kept);
        self.document.set(document);
        self.desk.plan.set(plan);
        self.desk.drafts.set(kept.drafts);
        self.desk.history.set(kept.history);
        self.assess();
        if is_kept {
            self.check();
        } else {
            self.finish_soon();
        }
    }

    fn tell_of(self, merged: &Merged, is_theirs: bool) {
        let text = match merged.clashes.first() {
            Some(clash) => {
                let count = merged.clashes.len();
                let mut figures = vec![
                    ("what", Figure::Name(name_of(clash))),
                    ("later", Figure::Name(said(&clash.later))),
                    ("earlier", Figure::Name(said(&clash.earlier))),
                ];
                if count == 1 {
                    tell!("tabs-clash", &figures)
                } else {
                    figures.push(("count", Figure::count(count)));
                    tell!("tabs-clashes", &figures)
                }
            }
            None => plain_sentence(if is_theirs { key!("tabs-taken-over") } else { key!("tabs-merged") }),
        };
        self.tell(text, WayBack::None);
    }
}

/// The state of a plan in the text that is kept of it.
fn state_in(text: &str) -> Option<Kept> {
    json::read(text).and_then(|value| Kept::from_plain(&value))
}

fn side(kept: &Kept) -> Side<'_> {
    Side { document: &kept.document, drafts: &kept.drafts }
}

/// A state as it is remembered.
pub fn without_history(kept: Kept) -> Kept {
    Kept { history: History::default(), ..kept }
}

fn name_of(clash: &Clash) -> String {
    field::at(&clash.path).map_or_else(|| clash.path.as_str().to_owned(), field_label)
}

fn said(value: &Value) -> String {
    match value {
        Value::Null => t!("tabs-nothing"),
        Value::String(text) => text.clone(),
        Value::Number(number) => locale::typing_number(number.as_f64().unwrap_or_default()),
        Value::Object(fields) => fields.get("likely").or(fields.get("name")).map(said).unwrap_or_default(),
        _ => String::new(),
    }
}
