//! Keeping: what was done is checked and kept a moment after it is on the screen.

use std::time::Duration;

use kerbstead_core::assess;
use kerbstead_core::keeping::{Backup, History, Journal, Kept, Saved, Slot, Step, Versions, as_stored};
use kerbstead_core::plan::{Plain, date_text, validate};
use leptos::prelude::set_timeout;

use super::tabs::without_history;
use super::{App, Keeping, WayBack};
use crate::locale;
use crate::storage::{self, Aside};
use crate::{browser, json};

/// How long a change waits to be checked and kept: past the next frame, so that the verdict is on the screen first.
const FINISH_AFTER: Duration = Duration::from_millis(60);

impl App {
    /// Notes a step in the journal, at once: whatever becomes of the page, it is done again when the plan is next opened.
    pub(super) fn note(self, step: Step) {
        self.upkeep.update(|upkeep| upkeep.journal.steps.push(step));
        let slot = self.open_slot();
        self.upkeep.with_untracked(|upkeep| storage::keep_journal(slot, &upkeep.journal));
    }

    /// Assesses the plan anew and keeps it, once what was typed is on the screen: no key waits for that.
    pub(super) fn after_change(self) {
        self.is_unfinished.set(true);
        if !self.is_stale.get_untracked() {
            self.is_stale.set(true);
            browser::after_paint(move || self.catch_up());
        }
    }

    /// Assesses the plan if it has changed since, and lets it be kept a moment later.
    fn catch_up(self) {
        if self.is_stale.get_untracked() {
            self.is_stale.set(false);
            self.assess();
            self.finish_soon();
        }
    }

    pub(super) fn assess(self) {
        let plan = self.desk.plan;
        let assessment = plan.with_untracked(|plan| assess(plan, browser::today()));
        self.desk.assessment.set(assessment);
        let currency = plan.with_untracked(|plan| plan.currency.clone());
        if locale::words(|words| words.currency() != currency) {
            self.redraw();
        }
    }

    /// Checks and keeps the plan once its verdict has been drawn, so that it is not kept waiting.
    pub(super) fn finish_soon(self) {
        self.is_unfinished.set(true);
        set_timeout(move || self.finish(), FINISH_AFTER);
    }

    /// Checks and keeps the plan now, if that is still to be done: also before another plan is opened and before the
    /// page goes away.
    pub fn finish(self) {
        if !self.is_unfinished.get_untracked() {
            return;
        }
        self.catch_up();
        self.is_unfinished.set(false);
        self.check();
        self.keep();
        self.ask_to_stay();
    }

    /// Checks the plan, and lets be drawn what may come a moment after the verdict.
    pub(super) fn check(self) {
        let problems = self.desk.plan.with_untracked(validate);
        if self.desk.problems.with_untracked(|before| *before != problems) {
            self.desk.problems.set(problems);
        }
        self.desk.settled.update(|settled| *settled = settled.wrapping_add(1));
    }

    /// Keeps the open plan and what is half typed.
    pub(super) fn keep(self) {
        self.look_at_other_tabs();
        let (slot, kept) = self.kept();
        let title = kept.title().to_owned();
        self.keep_version(slot);
        if storage::keep_plan(slot, &kept) {
            self.upkeep.update(|upkeep| {
                upkeep.journal = Journal::default();
                upkeep.seen.add(without_history(kept));
            });
        }
        let is_renamed =
            self.desk.shelf.with_untracked(|shelf| shelf.card(slot).is_some_and(|card| card.title != title));
        if is_renamed {
            self.change_shelf(&mut |shelf| {
                shelf.cards.iter_mut().filter(|card| card.slot == slot).for_each(|card| card.title.clone_from(&title));
            });
        }
        self.look_whether_kept();
    }

    /// Tells the person when there is no more room, and when there is some again.
    pub(super) fn look_whether_kept(self) {
        let now = match (storage::is_available(), storage::is_all_kept()) {
            (false, _) => Keeping::Refused,
            (true, true) => Keeping::Kept,
            (true, false) => Keeping::Full,
        };
        if self.desk.keeping.get_untracked() != now {
            self.desk.keeping.set(now);
        }
    }

    /// A plan alone, as a file.
    pub fn save_plan(self, slot: Slot) {
        if let Some(kept) = self.plan_in(slot) {
            browser::save_file(
                &format!("kerbstead-plan-{}.json", date_text(browser::today())),
                &json::text(&kept.document),
            );
        }
    }

    /// The open plan as it is kept, and where.
    pub(super) fn kept(self) -> (Slot, Kept) {
        let document = self.desk.plan.with_untracked(|plan| self.file_of(plan));
        let kept = Kept {
            document: as_stored(document),
            drafts: self.desk.drafts.get_untracked(),
            history: self.desk.history.get_untracked(),
            mark: self.upkeep.with_untracked(|upkeep| upkeep.seen.next()),
            after: self.upkeep.with_untracked(|upkeep| upkeep.seen.last),
            at: browser::now(),
        };
        (self.open_slot(), kept)
    }

    /// Whether something on the screen would be lost with it.
    pub fn would_lose(self) -> bool {
        match self.desk.keeping.get_untracked() {
            Keeping::Kept => false,
            Keeping::Full => true,
            Keeping::Refused => self.desk.history.with_untracked(History::can_undo),
        }
    }

    /// Asks the browser once, after the first own change, not to clear what is kept when it needs room.
    fn ask_to_stay(self) {
        let is_own = self.desk.history.with_untracked(History::can_undo);
        if !is_own || !storage::is_available() || self.desk.settings.with_untracked(|all| all.asked_to_stay) {
            return;
        }
        self.desk.settings.update(|settings| settings.asked_to_stay = true);
        self.desk.settings.with_untracked(storage::keep_settings);
        browser::ask_to_stay(Box::new(move |stays| self.desk.stays.set(Some(stays))));
    }

    /// Finds out whether the browser has promised to clear nothing by itself.
    pub fn look_whether_it_stays(self) {
        browser::look_whether_it_stays(Box::new(move |stays| {
            if self.desk.stays.get_untracked() != Some(stays) {
                self.desk.stays.set(Some(stays));
            }
        }));
    }

    /// All there is, as one file: also what is on the screen and cannot be kept.
    pub fn save_all(self, with_versions: bool) {
        self.finish();
        let mut backup = Backup { settings: Some(self.desk.settings.get_untracked()), ..Backup::default() };
        for card in self.desk.shelf.with_untracked(|shelf| shelf.cards.clone()) {
            let Some(Kept { document, drafts, .. }) = self.plan_in(card.slot) else { continue };
            let earlier = if with_versions { storage::versions(card.slot) } else { Versions::default() };
            backup.plans.push(Saved { document, drafts, is_demo: card.is_demo, earlier });
        }
        browser::save_file(&format!("kerbstead-{}.json", date_text(browser::today())), &json::text(&backup.to_plain()));
    }

    /// Throws away what was set aside, with a way back.
    pub fn drop_aside(self, aside: &Aside) {
        let text = storage::aside_text(aside);
        storage::forget(&aside.name);
        self.desk.asides.set(storage::asides());
        self.tell(t!("aside-dropped"), WayBack::Aside(aside.clone(), text));
    }
}

/// Gives what was set aside as a file.
pub fn save_aside(aside: &Aside) {
    browser::save_file(&format!("kerbstead-{}.txt", aside.was), &storage::aside_text(aside));
}
