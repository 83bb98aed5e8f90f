//! Plans: what can be done with those on the shelf.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{Card, Kept, Shelf, Slot, Versions, replayed};
use kerbstead_core::plan::{Path, Plan, demo_plan_after};

use super::desk::Removed;
use super::tabs::{Seen, without_history};
use super::{App, Upkeep, WayBack, fresh_demo, read};
use crate::{browser, route, storage};

/// The shelf, the open plan, and the names of journals to forget.
pub type Found = (Shelf, Kept, Vec<String>);

/// The shelf as it was kept, with the plan that is open: the one that was, or another that can be read, or the example.
/// What was done to it and not kept is done again; the names of those journals, to forget when all went well.
pub fn found() -> Found {
    let mut shelf = storage::shelf();
    let mut left = storage::left_journals();
    let slots: Vec<Slot> = shelf.cards.iter().map(|card| card.slot).collect();
    left.retain(|left| {
        left.slot == shelf.open || {
            play_again(left);
            false
        }
    });
    for slot in std::iter::once(shelf.open).chain(slots) {
        if let Some(kept) = storage::plan(slot) {
            shelf.open = slot;
            let names = left.iter().map(|left| left.name.clone()).collect();
            let kept = left.into_iter().fold(kept, |kept, left| replayed(kept, left.journal.steps));
            return (shelf, kept, names);
        }
        // It cannot be read, and is set aside.
        shelf.cards.retain(|card| card.slot != slot);
    }
    let kept = fresh_demo();
    let slot = storage::free_slot();
    shelf.cards.push(Card { slot, title: kept.title().to_owned(), is_demo: true });
    shelf.open = slot;
    storage::keep_plan(slot, &kept);
    storage::keep_shelf(&shelf);
    (shelf, kept, Vec::new())
}

/// Does again what was done to a plan that is not open now.
fn play_again(left: &storage::Left) {
    if let Some(kept) = storage::plan(left.slot)
        && storage::keep_plan(left.slot, &replayed(kept, left.journal.steps.clone()))
    {
        storage::forget(&left.name);
    }
}

/// A plan of the shelf as it was kept last.
pub fn kept_plan(slot: Slot) -> Option<Plan> {
    storage::plan(slot).map(|kept| read(&kept).1)
}

impl App {
    /// Puts a new plan on the shelf and opens it.
    pub fn add_plan(self, plan: &Plan, is_demo: bool) {
        self.add(Kept::of(plan), is_demo);
    }

    /// Puts the example on the shelf and opens it.
    pub fn add_demo(self) {
        self.add_plan(&demo_plan_after(browser::today()), true);
    }

    /// Copies a plan of the shelf and opens the copy.
    pub fn duplicate(self, slot: Slot) {
        let Some(mut kept) = self.plan_in(slot) else { return };
        let title = tell!("plans-copy-of", &vec![("title", Figure::Name(kept.title().to_owned()))]);
        kept.put_title(title);
        self.add(kept, false);
    }

    /// Puts a plan on the shelf and opens it.
    pub fn add(self, kept: Kept, is_demo: bool) {
        self.finish();
        let card = Card { slot: storage::free_slot(), title: kept.title().to_owned(), is_demo };
        let at = self.desk.shelf.with_untracked(|shelf| shelf.cards.len());
        self.put_back(Removed { card, at, kept, versions: Versions::default() });
    }

    /// Takes a plan off the shelf, with a way back. The last plan makes room for the example.
    pub fn delete(self, slot: Slot) {
        let Some(kept) = self.plan_in(slot) else { return };
        let all = self.desk.shelf;
        let Some(at) = all.with_untracked(|shelf| shelf.cards.iter().position(|card| card.slot == slot)) else {
            return;
        };
        let Some(card) = all.with_untracked(|shelf| shelf.card(slot).cloned()) else { return };
        let name = Figure::Name(card.title.clone());
        let removed = Removed { card, at, kept, versions: storage::versions(slot) };
        storage::drop_plan(slot);
        self.change_shelf(&mut |shelf| shelf.cards.retain(|card| card.slot != slot));
        if all.with_untracked(|shelf| shelf.cards.is_empty()) {
            self.add_demo();
        } else if self.open_slot() == slot {
            let next = all.with_untracked(|shelf| shelf.cards.get(at).or(shelf.cards.last()).map(|card| card.slot));
            self.turn_to(next.unwrap_or_default());
        }
        let text = tell!("plans-deleted", &vec![("title", name)]);
        self.tell(text, WayBack::Plan(Box::new(removed)));
    }

    pub(super) fn put_back(self, removed: Removed) {
        self.finish();
        let Removed { card, at, kept, versions } = removed;
        let slot = card.slot;
        storage::keep_plan(slot, &kept);
        storage::keep_versions(slot, &versions);
        self.change_shelf(&mut |shelf| {
            shelf.cards.retain(|card| card.slot != slot);
            shelf.cards.insert(at.min(shelf.cards.len()), card.clone());
        });
        self.lay_out(slot, kept);
        self.look_whether_kept();
    }

    /// Opens a plan of the shelf.
    pub fn turn_to(self, slot: Slot) {
        if let Some(kept) = self.plan_in(slot) {
            self.lay_out(slot, kept);
        } else {
            // It cannot be read, and is set aside.
            self.change_shelf(&mut |shelf| shelf.cards.retain(|card| card.slot != slot));
            self.desk.asides.set(storage::asides());
        }
    }

    /// A plan of the shelf as it is kept; the open one as it is now.
    pub(super) fn plan_in(self, slot: Slot) -> Option<Kept> {
        self.finish();
        if slot == self.open_slot() { Some(self.kept().1) } else { storage::plan(slot) }
    }

    /// Changes the shelf as it is kept now, also by another tab.
    pub(super) fn change_shelf(self, change: &mut dyn FnMut(&mut Shelf)) {
        let open = self.open_slot();
        let mut found = Shelf { open, ..storage::shelf() };
        change(&mut found);
        storage::keep_shelf(&found);
        self.desk.shelf.set(found);
    }

    pub(super) fn lay_out(self, slot: Slot, kept: Kept) {
        let (document, plan) = read(&kept);
        self.document.set(document);
        let seen = Seen::of(without_history(kept.clone()));
        self.upkeep.set(Upkeep { journal: storage::journal(slot), seen, version_made: 0 });
        self.change_shelf(&mut |shelf| shelf.open = slot);
        self.desk.plan.set(plan);
        self.desk.drafts.set(kept.drafts);
        self.desk.history.set(kept.history);
        self.desk.versions.set(storage::versions(slot));
        self.desk.notice.set(None);
        // The thing of the kit that was chosen in the shop is one of the other plan.
        self.write_slip(|slip| slip.texts.remove(&Path::from("for")));
        self.settle();
        self.after_change();
        self.redraw();
    }

    /// Opens a plan and goes to where it stands.
    pub fn show(self, slot: Slot) {
        self.turn_to(slot);
        route::go(route::Page::Overview);
    }
}
