//! What lies on the desk: the open plan and all that goes with it.

use kerbstead_core::Assessment;
use kerbstead_core::keeping::{Card, Drafts, History, Kept, Settings, Shelf, Slip, Versions};
use kerbstead_core::plan::{Plan, Problem};
use leptos::prelude::{Set, Update, With, WithUntracked};
use reactive_stores::{Field, Store};

use super::restore::Restoring;
use crate::live::Signal;
use crate::storage::Aside;

/// The open plan and what core says of it, in one store.
#[derive(Store)]
pub struct Book {
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

/// What lies on the desk.
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
    /// What can be taken back and made again.
    pub history: Signal<History>,
    /// The plans there are.
    pub shelf: Signal<Shelf>,
    /// What the person chose for themselves.
    pub settings: Signal<Settings>,
    /// What is worked out in the shop.
    pub slip: Signal<Slip>,
    /// What was just done, with a way back.
    pub notice: Signal<Option<Notice>>,
    /// Whether what is typed is being kept.
    pub keeping: Signal<Keeping>,
    /// What was found and could not be read.
    pub asides: Signal<Vec<Aside>>,
    /// Earlier versions of the open plan.
    pub versions: Signal<Versions>,
    /// Whether the browser promised to clear nothing by itself; none until it answered.
    pub stays: Signal<Option<bool>>,
    /// A file that was opened, until it is decided what is to be done with it.
    pub restoring: Signal<Option<Restoring>>,
    /// Raised when every word must be drawn again: other units, another currency, another plan.
    pub edition: Signal<u32>,
    /// Raised when a change has been checked and kept: what may come a moment after the verdict is drawn then.
    pub settled: Signal<u32>,
}

impl Desk {
    /// A desk with that plan on it.
    pub fn new(book: Book, drafts: Drafts, history: History, keeping: Keeping) -> Self {
        let book = Store::new(book);
        Self {
            plan: Part(book.plan().into()),
            assessment: Part(book.assessment().into()),
            problems: Part(book.problems().into()),
            drafts: Signal::new(drafts),
            history: Signal::new(history),
            shelf: Signal::default(),
            settings: Signal::default(),
            slip: Signal::default(),
            notice: Signal::default(),
            keeping: Signal::new(keeping),
            asides: Signal::default(),
            versions: Signal::default(),
            stays: Signal::default(),
            restoring: Signal::default(),
            edition: Signal::default(),
            settled: Signal::default(),
        }
    }
}

impl Book {
    /// A plan with what core says of it.
    pub fn new(plan: Plan, assessment: Assessment, problems: Vec<Problem>) -> Self {
        Self { plan, assessment, problems }
    }
}

/// Whether what is typed is being kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// It is.
    Kept,
    /// The browser lets the page keep nothing.
    Refused,
    /// There is no more room: what was kept before is there, what came last is not.
    Full,
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
    /// There is nothing to take back.
    None,
    /// It is the last edit of the plan.
    Undo,
    /// The answers of the shop were cleared.
    Slip(Box<Slip>),
    /// A plan was taken off the shelf.
    Plan(Box<Removed>),
    /// What was set aside was thrown away.
    Aside(Aside, String),
}

/// A plan that was taken off the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Removed {
    /// Its card.
    pub card: Card,
    /// Where it stood.
    pub at: usize,
    /// The plan itself.
    pub kept: Kept,
    /// Its earlier versions.
    pub versions: Versions,
}
