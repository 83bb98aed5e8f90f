//! Earlier versions of the open plan.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{APART_MS, Kept, Moment, Slot, Version};
use kerbstead_core::plan::{Document, made_like};
use serde_json::Value;

use super::App;
use crate::locale::date_time;
use crate::{browser, storage};

impl App {
    /// Before a plan is kept: every few minutes, what was kept before becomes an earlier version.
    pub(super) fn keep_version(self, slot: Slot) {
        let now = browser::now();
        if now.saturating_sub(self.upkeep.with_untracked(|upkeep| upkeep.version_made)) < APART_MS {
            return;
        }
        let Some(before) = storage::plan(slot) else { return };
        let at = if before.at == 0 { now } else { before.at };
        if self.desk.versions.with_untracked(|versions| versions.are_due(at)) {
            self.upkeep.update(|upkeep| upkeep.version_made = now);
            self.add_version(slot, at, before.document);
        }
    }

    /// Adds an earlier version.
    pub(super) fn add_version(self, slot: Slot, at: Moment, document: Value) {
        let mut versions = storage::versions(slot);
        versions.add(Version { at, document });
        storage::keep_versions(slot, &versions);
        if self.open_slot() == slot {
            self.desk.versions.set(versions);
        }
    }

    /// The file of the open plan as it is now.
    pub fn document_now(self) -> Value {
        self.kept().1.document
    }

    /// Makes the plan what it once was, as a change that can be taken back.
    pub fn go_back_to(self, version: &Version) {
        let Ok(opened) = Document::from_value(version.document.clone()) else { return };
        let edit = self.desk.plan.with_untracked(|plan| made_like(plan, &opened.plan));
        let when = Figure::Name(date_time(version.at));
        self.edit_and_tell(edit, tell!("version-is-back", &vec![("when", when)]));
    }

    /// Puts the plan as it once was beside the others.
    pub fn put_beside(self, version: &Version) {
        let mut kept = Kept { document: version.document.clone(), ..Kept::default() };
        let title = Figure::Name(kept.title().to_owned());
        let figures = vec![("title", title), ("when", Figure::Name(date_time(version.at)))];
        kept.put_title(tell!("version-title", &figures));
        self.add(kept, false);
    }
}
