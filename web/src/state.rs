//! The one store of the app, and everything that can be done to it.

use std::ops::Deref;

use kerbstead_core::keeping::{History, Journal, Kept, Moment, Settings, Slip, Slot, Step};
use kerbstead_core::plan::{Document, Edit, Path, Plan, demo_plan_after, validate};
use kerbstead_core::words::Units;
use kerbstead_core::{Assessment, assess};
use leptos::prelude::{expect_context, provide_context};
use serde_json::Value;

use crate::live::Signal;
use crate::locale;
use crate::{browser, storage};

mod desk;
mod keep;
mod restore;
mod shelf;
mod tabs;
mod versions;

use desk::Book;
pub use desk::{Desk, Keeping, Notice, WayBack};
pub use keep::save_aside;
pub use restore::{Choice, Restoring};
pub use shelf::{Found, found, kept_plan};
use tabs::{Seen, without_history};

/// A handle to the store, passed to every component as context: as thin as can be, since hundreds of closures hold one.
#[derive(Clone, Copy)]
pub struct App(&'static Parts);

/// What the app consists of, from its start until the page is closed.
pub struct Parts {
    /// The store.
    pub desk: Desk,
    /// The file the open plan came from.
    document: Signal<Document>,
    /// The field that is being typed in: its edits are one step of undo.
    typing: Signal<Option<Path>>,
    /// Whether a change is still to be assessed.
    is_stale: Signal<bool>,
    /// Whether a change is still to be checked and kept.
    is_unfinished: Signal<bool>,
    /// What keeping needs to know of the open plan.
    upkeep: Signal<Upkeep>,
}

/// What keeping needs to know of the open plan.
#[derive(Clone, Debug, Default, PartialEq)]
struct Upkeep {
    /// What was done since the plan was kept.
    journal: Journal,
    /// The states of the plan that this tab knows.
    seen: Seen,
    /// When the last earlier version was made of it here.
    version_made: Moment,
}

impl Deref for App {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        self.0
    }
}

impl App {
    /// Opens what was found.
    pub fn open((shelf, kept, left): Found) -> Self {
        let settings = storage::settings();
        let (document, plan) = read(&kept);
        let seen = Seen::of(without_history(kept.clone()));
        locale::set_up(units(&settings), &plan.currency);
        let (assessment, problems) = (assess(&plan, browser::today()), validate(&plan));
        let keeping = if storage::is_available() { Keeping::Kept } else { Keeping::Refused };
        let desk = Desk::new(Book::new(plan, assessment, problems), kept.drafts, kept.history, keeping);
        desk.versions.set(storage::versions(shelf.open));
        desk.shelf.set(shelf);
        desk.settings.set(settings);
        desk.slip.set(storage::slip());
        desk.asides.set(storage::asides());
        let app = Self(Box::leak(Box::new(Parts {
            desk,
            document: Signal::new(document),
            typing: Signal::new(None),
            is_stale: Signal::new(false),
            is_unfinished: Signal::new(false),
            upkeep: Signal::new(Upkeep { seen, ..Upkeep::default() }),
        })));
        if !left.is_empty() {
            app.keep();
            for name in &left {
                storage::forget(name);
            }
        }
        provide_context(app);
        app
    }

    /// The app of this page.
    pub fn here() -> Self {
        expect_context()
    }

    /// The place of the open plan.
    fn open_slot(self) -> Slot {
        self.desk.shelf.with_untracked(|shelf| shelf.open)
    }

    /// Reads the plan; the caller is drawn again when it changes.
    pub fn plan<R>(self, read: impl FnOnce(&Plan) -> R) -> R {
        self.desk.plan.with(read)
    }

    /// Reads the assessment; the caller is drawn again when it changes.
    pub fn assessment<R>(self, read: impl FnOnce(&Assessment) -> R) -> R {
        self.desk.assessment.with(read)
    }

    /// Reads the plan for what may be drawn a moment after the verdict.
    pub fn settled_plan<R>(self, read: impl FnOnce(&Plan) -> R) -> R {
        self.desk.settled.with(|_| ());
        self.desk.plan.with_untracked(read)
    }

    /// Reads the assessment for what may be drawn a moment after the verdict, such as a plot.
    pub fn settled_assessment<R>(self, read: impl FnOnce(&Assessment) -> R) -> R {
        self.desk.settled.with(|_| ());
        self.desk.assessment.with_untracked(read)
    }

    /// The file of the open plan, as it is now.
    pub fn file_of(self, plan: &Plan) -> Value {
        self.document.with_untracked(|file| file.write(plan))
    }

    /// Makes a change that can be taken back. A change that is not possible (an entry that is gone) changes nothing.
    pub fn edit(self, edit: Edit) {
        self.change(edit, false);
    }

    /// Makes a change and tells of it, with a way back. False when it is not possible, and changes nothing.
    pub fn edit_and_tell(self, edit: Edit, text: String) -> bool {
        let is_made = self.change(edit, false);
        if is_made {
            self.tell(text, WayBack::Undo);
        }
        is_made
    }

    /// Tells of something that was done.
    pub fn tell(self, text: String, way_back: WayBack) {
        self.desk.notice.set(Some(Notice { text, way_back }));
    }

    /// Makes a change by typing in a field: what is typed there until the field is left is one step of undo.
    pub fn type_in(self, path: &Path, edit: Edit) {
        let goes_on = self.typing.with_untracked(|typing| typing.as_ref() == Some(path));
        if self.desk.drafts.with_untracked(|drafts| drafts.get(path).is_some()) {
            self.draft(path, None);
        }
        self.change(edit, goes_on);
        self.typing.set(Some(path.clone()));
    }

    /// Keeps text that the field cannot take yet.
    pub fn keep_draft(self, path: &Path, text: String) {
        self.draft(path, Some(text));
        self.finish_soon();
    }

    fn draft(self, path: &Path, text: Option<String>) {
        self.note(Step::Draft { path: path.clone(), text: text.clone() });
        self.desk.drafts.update(|drafts| match text {
            Some(text) => drafts.insert(path.clone(), text),
            None => drafts.remove(path),
        });
    }

    /// Changes the slip of the shop and keeps it.
    pub fn write_slip(self, change: impl FnOnce(&mut Slip)) {
        self.desk.slip.update(change);
        self.desk.slip.with_untracked(storage::keep_slip);
        self.look_whether_kept();
    }

    /// Ends the typing in a field.
    pub fn settle(self) {
        self.typing.set(None);
    }

    fn change(self, edit: Edit, goes_on: bool) -> bool {
        let step = Step::Edit { edit: edit.clone(), goes_on };
        let is_done = self.turn(|history, plan| history.change(plan, edit, goes_on).is_ok());
        if !is_done {
            return false;
        }
        if !goes_on {
            self.settle();
        }
        self.desk.notice.set(None);
        self.note(step);
        self.after_change();
        true
    }

    /// Takes the last change back.
    pub fn undo(self) {
        self.turn(History::undo);
        self.note(Step::Undo);
        self.settle();
        self.desk.notice.set(None);
        self.after_change();
    }

    /// Makes the last change that was taken back again.
    pub fn redo(self) {
        self.turn(History::redo);
        self.note(Step::Redo);
        self.settle();
        self.after_change();
    }

    fn turn(self, turn: impl FnOnce(&mut History, &mut Plan) -> bool) -> bool {
        let turned = self.desk.history.update(|history| self.desk.plan.update(|plan| turn(history, plan)));
        turned.flatten().unwrap_or(false)
    }

    /// Takes back what the notice tells of.
    pub fn take_back(self) {
        let Some(notice) = self.desk.notice.get_untracked() else { return };
        self.desk.notice.set(None);
        match notice.way_back {
            WayBack::None => {}
            WayBack::Undo => self.undo(),
            WayBack::Slip(slip) => self.write_slip(|now| *now = *slip),
            WayBack::Plan(removed) => self.put_back(*removed),
            WayBack::Aside(aside, text) => {
                storage::put_aside_back(&aside, &text);
                self.desk.asides.set(storage::asides());
            }
        }
    }

    /// Sets up the words anew and draws everything again.
    fn redraw(self) {
        let currency = self.desk.plan.with_untracked(|plan| plan.currency.clone());
        locale::set_up(units(&self.desk.settings.get_untracked()), &currency);
        self.desk.edition.update(|edition| *edition += 1);
    }

    /// Shows values in other units.
    pub fn set_units(self, units: Units) {
        self.desk.settings.update(|settings| settings.us_customary = Some(units == Units::UsCustomary));
        self.desk.settings.with_untracked(storage::keep_settings);
        self.redraw();
    }
}

fn units(settings: &Settings) -> Units {
    match settings.us_customary {
        Some(true) => Units::UsCustomary,
        Some(false) => Units::Metric,
        None => locale::default_units(),
    }
}

fn fresh_demo() -> Kept {
    Kept::of(&demo_plan_after(browser::today()))
}

/// The file and the plan of a record. Every record that was read has both.
fn read(kept: &Kept) -> (Document, Plan) {
    if let Ok(opened) = Document::from_value(kept.document.clone()) {
        return (opened.document, opened.plan);
    }
    let plan = Plan { title: t!("plans-unreadable"), ..Plan::default() };
    (Document::new(&plan), plan)
}
