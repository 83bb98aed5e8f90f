//! Files brought back: what they would change, and then what the person chose of it.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{Backup, Card, Fit, Kept, MOST_BACKUP_BYTES, Saved, Slot};
use kerbstead_core::plan::Wrong;
use web_sys::File;

use super::{App, WayBack};
use crate::locale::words;
use crate::{browser, json, route, storage};

/// A file that was opened, and what is to be done with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Restoring {
    /// What is in it.
    pub backup: Backup,
    /// How each plan goes together with those here, and what is to become of it.
    pub plans: Vec<(Fit, Choice)>,
    /// Whether the settings are to be taken over.
    pub with_settings: bool,
}

/// What is to become of a plan of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// It is put beside those here.
    Beside,
    /// It takes the place of the one of its name, which can be taken back.
    Replace(Slot),
    /// It is left out.
    Leave,
}

impl App {
    /// Opens a file that the person chose or let fall onto the page.
    pub fn open_file(self, file: &File) {
        route::go(route::Page::Plans);
        #[allow(clippy::cast_precision_loss)] // a few million
        if file.size() > MOST_BACKUP_BYTES as f64 {
            return self.refuse(&Wrong::TooLarge { most: MOST_BACKUP_BYTES });
        }
        browser::read_file(file, Box::new(move |text: String| self.read_file(&text)));
    }

    fn read_file(self, text: &str) {
        self.finish();
        let value = json::read(text);
        let Some(backup) = value.and_then(|value| Backup::from_value(&value).ok()) else {
            return self.refuse(&Wrong::NotAPlan);
        };
        let slots: Vec<Slot> =
            self.desk.shelf.with_untracked(|shelf| shelf.cards.iter().map(|card| card.slot).collect());
        let here: Vec<(Slot, Kept)> = slots.into_iter().filter_map(|slot| Some((slot, self.plan_in(slot)?))).collect();
        let plans = backup.plans.iter().map(|saved| {
            let fit = saved.fit(&here);
            (fit, if fit == Fit::Same { Choice::Leave } else { Choice::Beside })
        });
        let restoring = Restoring { plans: plans.collect(), with_settings: backup.settings.is_some(), backup };
        self.desk.restoring.set(Some(restoring));
        browser::focus_soon("restore-preview".to_owned());
    }

    fn refuse(self, wrong: &Wrong) {
        self.desk.restoring.set(None);
        self.tell(words(|words| words.wrong(wrong)), WayBack::None);
    }

    /// Does with the file what was chosen.
    pub fn restore(self) {
        let Some(Restoring { backup, plans, with_settings }) = self.desk.restoring.get_untracked() else { return };
        self.desk.restoring.set(None);
        let mut count = 0;
        for (saved, (_, choice)) in backup.plans.into_iter().zip(plans) {
            match choice {
                Choice::Leave => continue,
                Choice::Beside => self.take_in(saved),
                Choice::Replace(slot) => self.replace(slot, &saved),
            }
            count += 1;
        }
        if let Some(settings) = backup.settings.filter(|_| with_settings) {
            self.desk.settings.update(|own| own.us_customary = settings.us_customary);
            self.desk.settings.with_untracked(storage::keep_settings);
            self.redraw();
        }
        self.look_whether_kept();
        let figures = vec![("count", Figure::count(count))];
        self.tell(tell!("restore-done", &figures), WayBack::None);
    }

    /// Puts a plan of a file on the shelf.
    fn take_in(self, saved: Saved) {
        let slot = storage::free_slot();
        let card = Card { slot, title: saved.title().to_owned(), is_demo: saved.is_demo };
        let kept = Kept { document: saved.document, drafts: saved.drafts, at: browser::now(), ..Kept::default() };
        storage::keep_plan(slot, &kept);
        storage::keep_versions(slot, &saved.earlier);
        self.change_shelf(&mut |shelf| {
            shelf.cards.retain(|card| card.slot != slot);
            shelf.cards.push(card.clone());
        });
    }

    /// Puts a plan of a file in the place of one of the shelf, which becomes an earlier version and can be taken back.
    fn replace(self, slot: Slot, saved: &Saved) {
        let Some(kept) = self.plan_in(slot) else { return };
        self.add_version(slot, browser::now(), kept.document.clone());
        let kept = saved.in_place_of(kept);
        if self.open_slot() == slot {
            self.lay_out(slot, kept);
        } else {
            storage::keep_plan(slot, &kept);
        }
    }
}
