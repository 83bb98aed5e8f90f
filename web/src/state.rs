//! The one store of the app, and everything that can be done to it.

use std::time::Duration;

use kerbstead_core::plan::{Document, Edit, Path, Plan, Problem, demo_plan_after, validate};
use kerbstead_core::words::Units;
use kerbstead_core::{Assessment, assess};
use leptos::prelude::{Set, Update, With, WithUntracked, expect_context, provide_context, set_timeout};
use reactive_stores::{Field, Store};

use crate::live::Signal;
use crate::locale::{self, t};
use crate::storage::{self, Card, Drafts, Kept, Settings, Shelf, Slot};
use crate::{browser, route};

/// The most steps that can be taken back.
const MOST_UNDO: usize = 200;

/// How long a change waits to be checked and kept: past the next frame, so that the verdict is on the screen first.
const FINISH_AFTER: Duration = Duration::from_millis(60);

/// The open plan and what core says of it, in one store.
#[derive(Store)]
struct Book {
    plan: Plan,
    assessment: Assessment,
    problems: Vec<Problem>,
}

/// A part of the store, read and changed as a signal is.
pub struct Part<T: 'static>(Field<T>);

impl<T> Clone for Part<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Part<T> {}

impl<T: Send + Sync + 'static> Part<T> {
    /// Reads it; the caller runs again when it changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        self.0.with(read)
    }

    /// Reads it as it is now.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        self.0.with_untracked(read)
    }

    /// Puts another in its place.
    pub fn set(self, value: T) {
        self.0.set(value);
    }

    /// Changes it.
    pub fn update<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        self.0.try_update(change)
    }
}

/// What lies on the desk: the open plan and all that goes with it.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The open plan.
    pub plan: Part<Plan>,
    /// What it comes to today.
    pub assessment: Part<Assessment>,
    /// What is wrong with it.
    pub problems: Part<Vec<Problem>>,
    /// Text that no field could take yet.
    pub drafts: Signal<Drafts>,
    /// How to take the last changes back, the newest last.
    pub undo: Signal<Vec<Edit>>,
    /// How to make them again.
    pub redo: Signal<Vec<Edit>>,
    /// The plans there are.
    pub shelf: Signal<Shelf>,
    /// What the person chose for themselves.
    pub settings: Signal<Settings>,
    /// What was just done, with a way back.
    pub notice: Signal<Option<Notice>>,
    /// Whether what is typed is being kept.
    pub is_kept: Signal<bool>,
    /// Raised when every word must be drawn again: other units, another currency, another plan.
    pub edition: Signal<u32>,
    /// Raised when a change has been checked and kept: what may come a moment after the verdict is drawn then.
    pub settled: Signal<u32>,
}

/// What was just done, with a way back.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// What to say.
    pub text: String,
    /// What taking it back means.
    pub way_back: WayBack,
}

/// How to take back what a notice tells.
#[derive(Clone, Debug, PartialEq)]
pub enum WayBack {
    /// It is the last edit of the plan.
    Undo,
    /// A plan was taken off the shelf.
    Plan {
        /// Its card.
        card: Card,
        /// Where it stood.
        at: usize,
        /// The plan itself.
        kept: Box<Kept>,
    },
}

/// A handle to the store, passed to every component as context.
#[derive(Clone, Copy)]
pub struct App {
    /// The store.
    pub desk: Desk,
    /// The file the open plan came from.
    document: Signal<Document>,
    /// The field that is being typed in: its edits are one step of undo.
    typing: Signal<Option<Path>>,
    /// Whether a change is still to be checked and kept.
    is_unfinished: Signal<bool>,
}

impl App {
    /// Opens what was kept, or the example at the first visit.
    pub fn open() -> Self {
        let settings = storage::settings();
        let mut shelf = storage::shelf();
        if shelf.cards.is_empty() {
            put_demo(&mut shelf);
        }
        let (document, plan, drafts) = storage::plan(shelf.open).map_or_else(fresh_demo, |kept| read(&kept));
        locale::set_up(units(&settings), &plan.currency);
        let (assessment, problems) = (assess(&plan, browser::today()), validate(&plan));
        let book = Store::new(Book { plan, assessment, problems });
        let desk = Desk {
            plan: Part(book.plan().into()),
            assessment: Part(book.assessment().into()),
            problems: Part(book.problems().into()),
            drafts: Signal::new(drafts),
            undo: Signal::default(),
            redo: Signal::default(),
            shelf: Signal::new(shelf),
            settings: Signal::new(settings),
            notice: Signal::default(),
            is_kept: Signal::new(storage::is_available()),
            edition: Signal::default(),
            settled: Signal::default(),
        };
        let app = Self {
            desk,
            document: Signal::new(document),
            typing: Signal::new(None),
            is_unfinished: Signal::new(false),
        };
        provide_context(app);
        app
    }

    /// The app of this page.
    pub fn here() -> Self {
        expect_context()
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

    /// Makes a change that can be taken back. A change that is not possible (an entry that is gone) changes nothing.
    pub fn edit(self, edit: Edit) {
        self.change(edit, None);
    }

    /// Makes a change and tells of it, with a way back.
    pub fn edit_and_tell(self, edit: Edit, text: String) {
        if self.change(edit, None) {
            self.desk.notice.set(Some(Notice { text, way_back: WayBack::Undo }));
        }
    }

    /// Makes a change by typing in a field: what is typed there until the field is left is one step of undo.
    pub fn type_in(self, path: &Path, edit: Edit) {
        let goes_on = self.typing.with_untracked(|typing| typing.as_ref() == Some(path));
        self.desk.drafts.update(|drafts| drafts.remove(path));
        self.change(edit, goes_on.then_some(path));
        self.typing.set(Some(path.clone()));
    }

    /// Keeps text that the field cannot take yet.
    pub fn keep_draft(self, path: &Path, text: String) {
        self.desk.drafts.update(|drafts| drafts.insert(path.clone(), text));
        self.finish_soon();
    }

    /// Ends the typing in a field.
    pub fn settle(self) {
        self.typing.set(None);
    }

    fn change(self, edit: Edit, typing: Option<&Path>) -> bool {
        let inverse = self.desk.plan.update(|plan| edit.apply(plan));
        let Some(Ok(inverse)) = inverse else { return false };
        if typing.is_none() {
            self.settle();
            self.desk.undo.update(|undo| {
                undo.push(inverse);
                if undo.len() > MOST_UNDO {
                    undo.remove(0);
                }
            });
        }
        self.desk.redo.update(Vec::clear);
        self.desk.notice.set(None);
        self.after_change();
        true
    }

    /// Takes the last change back.
    pub fn undo(self) {
        let Some(Some(edit)) = self.desk.undo.update(Vec::pop) else { return };
        if let Some(Ok(again)) = self.desk.plan.update(|plan| edit.apply(plan)) {
            self.desk.redo.update(|redo| redo.push(again));
        }
        self.settle();
        self.desk.notice.set(None);
        self.after_change();
    }

    /// Makes the last change that was taken back again.
    pub fn redo(self) {
        let Some(Some(edit)) = self.desk.redo.update(Vec::pop) else { return };
        if let Some(Ok(back)) = self.desk.plan.update(|plan| edit.apply(plan)) {
            self.desk.undo.update(|undo| undo.push(back));
        }
        self.settle();
        self.after_change();
    }

    /// Takes back what the notice tells of.
    pub fn take_back(self) {
        let Some(notice) = self.desk.notice.get_untracked() else { return };
        self.desk.notice.set(None);
        match notice.way_back {
            WayBack::Undo => self.undo(),
            WayBack::Plan { card, at, kept } => self.put_back(card, at, &kept),
        }
    }

    /// Assesses the plan anew and keeps it.
    fn after_change(self) {
        let plan = self.desk.plan;
        let assessment = plan.with_untracked(|plan| assess(plan, browser::today()));
        self.desk.assessment.set(assessment);
        let currency = plan.with_untracked(|plan| plan.currency.clone());
        if locale::words(|words| words.currency() != currency) {
            self.redraw();
        }
        self.finish_soon();
    }

    /// Checks and keeps the plan once what was typed has been drawn, so that the verdict is not kept waiting.
    fn finish_soon(self) {
        if !self.is_unfinished.get_untracked() {
            self.is_unfinished.set(true);
            set_timeout(move || self.finish(), FINISH_AFTER);
        }
    }

    /// Checks and keeps the plan now, if that is still to be done: also before another plan is opened and before the
    /// page goes away.
    pub fn finish(self) {
        if !self.is_unfinished.get_untracked() {
            return;
        }
        self.is_unfinished.set(false);
        let problems = self.desk.plan.with_untracked(validate);
        if self.desk.problems.with_untracked(|before| *before != problems) {
            self.desk.problems.set(problems);
        }
        self.desk.settled.update(|settled| *settled = settled.wrapping_add(1));
        self.keep();
    }

    /// Keeps the open plan and what is half typed.
    fn keep(self) {
        let (slot, kept) = self.kept();
        let title = self.desk.plan.with_untracked(|plan| plan.title.clone());
        let mut is_kept = storage::keep_plan(slot, &kept);
        let all = self.desk.shelf;
        let is_renamed =
            all.with_untracked(|shelf| shelf.cards.iter().any(|card| card.slot == slot && card.title != title));
        if is_renamed {
            all.update(|shelf| {
                shelf.cards.iter_mut().filter(|card| card.slot == slot).for_each(|card| card.title.clone_from(&title));
            });
            is_kept &= all.with_untracked(storage::keep_shelf);
        }
        if !is_kept {
            self.desk.is_kept.set(false);
        }
    }

    /// The open plan as it is kept, and where.
    fn kept(self) -> (Slot, Kept) {
        let document = self.desk.plan.with_untracked(|plan| self.document.with_untracked(|file| file.write(plan)));
        let drafts = self.desk.drafts.get_untracked();
        (self.desk.shelf.with_untracked(|shelf| shelf.open), Kept { document, drafts })
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

/// Plans: the shelf.
impl App {
    /// Puts a new plan on the shelf and opens it.
    pub fn add_plan(self, plan: &Plan, is_demo: bool) {
        self.add(&Kept { document: Document::new(plan).write(plan), drafts: Drafts::default() }, &plan.title, is_demo);
    }

    /// Puts the example on the shelf and opens it.
    pub fn add_demo(self) {
        self.add_plan(&demo_plan_after(browser::today()), true);
    }

    /// Copies a plan of the shelf and opens the copy.
    pub fn duplicate(self, slot: Slot) {
        let Some(mut kept) = self.plan_in(slot) else { return };
        let (_, plan, _) = read(&kept);
        let name = kerbstead_core::explain::Figure::Name(plan.title.clone());
        let title = locale::tell("plans-copy-of", &vec![("title", name)]);
        if let Some(document) = kept.document.as_object_mut() {
            document.insert("title".to_owned(), title.clone().into());
        }
        self.add(&kept, &title, false);
    }

    fn add(self, kept: &Kept, title: &str, is_demo: bool) {
        let slot = self.desk.shelf.with_untracked(Shelf::free_slot);
        let card = Card { slot, title: title.to_owned(), is_demo };
        let at = self.desk.shelf.with_untracked(|shelf| shelf.cards.len());
        self.put_back(card, at, kept);
    }

    /// Takes a plan off the shelf, with a way back. The last plan makes room for the example.
    pub fn delete(self, slot: Slot) {
        let Some(kept) = self.plan_in(slot) else { return };
        let all = self.desk.shelf;
        let Some(at) = all.with_untracked(|shelf| shelf.cards.iter().position(|card| card.slot == slot)) else {
            return;
        };
        let card = all.update(|shelf| shelf.cards.remove(at)).unwrap_or_default();
        storage::drop_plan(slot);
        all.with_untracked(storage::keep_shelf);
        if all.with_untracked(|shelf| shelf.cards.is_empty()) {
            self.add_demo();
        } else if all.with_untracked(|shelf| shelf.open) == slot {
            let next = all.with_untracked(|shelf| shelf.cards.get(at).or(shelf.cards.last()).map(|card| card.slot));
            self.turn_to(next.unwrap_or_default());
        }
        let name = kerbstead_core::explain::Figure::Name(card.title.clone());
        let text = locale::tell("plans-deleted", &vec![("title", name)]);
        self.desk.notice.set(Some(Notice { text, way_back: WayBack::Plan { card, at, kept: Box::new(kept) } }));
    }

    fn put_back(self, card: Card, at: usize, kept: &Kept) {
        self.finish();
        let slot = card.slot;
        self.desk.shelf.update(|shelf| shelf.cards.insert(at.min(shelf.cards.len()), card));
        storage::keep_plan(slot, kept);
        self.lay_out(slot, kept);
    }

    /// Opens a plan of the shelf.
    pub fn turn_to(self, slot: Slot) {
        if let Some(kept) = self.plan_in(slot) {
            self.lay_out(slot, &kept);
        }
    }

    /// A plan of the shelf as it is kept; the open one as it is now.
    fn plan_in(self, slot: Slot) -> Option<Kept> {
        self.finish();
        let (open, kept) = self.kept();
        if slot == open { Some(kept) } else { storage::plan(slot) }
    }

    fn lay_out(self, slot: Slot, kept: &Kept) {
        let (document, plan, drafts) = read(kept);
        self.document.set(document);
        self.desk.shelf.update(|shelf| shelf.open = slot);
        self.desk.shelf.with_untracked(storage::keep_shelf);
        self.desk.plan.set(plan);
        self.desk.drafts.set(drafts);
        self.desk.undo.set(Vec::new());
        self.desk.redo.set(Vec::new());
        self.desk.notice.set(None);
        self.after_change();
        self.redraw();
    }

    /// Opens a plan and goes to where it stands.
    pub fn show(self, slot: Slot) {
        self.turn_to(slot);
        route::go(route::Page::Overview);
    }
}

fn units(settings: &Settings) -> Units {
    match settings.us_customary {
        Some(true) => Units::UsCustomary,
        Some(false) => Units::Metric,
        None => locale::default_units(),
    }
}

fn put_demo(shelf: &mut Shelf) {
    let (document, plan, _) = fresh_demo();
    let slot = shelf.free_slot();
    shelf.cards.push(Card { slot, title: plan.title.clone(), is_demo: true });
    shelf.open = slot;
    storage::keep_plan(slot, &Kept { document: document.write(&plan), drafts: Drafts::default() });
    storage::keep_shelf(shelf);
}

fn fresh_demo() -> (Document, Plan, Drafts) {
    let plan = demo_plan_after(browser::today());
    (Document::new(&plan), plan, Drafts::default())
}

/// A kept plan as it is worked on. One that cannot be read at all becomes an empty plan; its file stays as it is until
/// something is changed.
fn read(kept: &Kept) -> (Document, Plan, Drafts) {
    let drafts = kept.drafts.clone();
    if let Ok(opened) = Document::from_value(kept.document.clone()) {
        return (opened.document, opened.plan, drafts);
    }
    let plan = Plan { title: t("plans-unreadable"), ..Plan::default() };
    (Document::new(&plan), plan, drafts)
}
