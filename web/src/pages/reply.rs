//! The answer to a friend's plan while it is written.

use kerbstead_core::plan::Id;
use kerbstead_core::share::{Answer, Help, Mark, Parcel};

use super::section;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::parts::{button, link_out, told_list};
use crate::post;

/// An answer being written, kept at every key.
#[derive(Clone, Copy)]
pub struct Reply {
    to: Signal<String>,
    answer: Signal<Answer>,
    /// Whether it was made a link as it stands.
    is_made: Signal<bool>,
}

impl Reply {
    /// The answer to the plan in a text, as far as it was written.
    pub fn to(text: &str, title: &str) -> Self {
        let answer = Answer { title: title.to_owned(), ..post::answer_to(text) };
        Self { to: Signal::new(text.to_owned()), answer: Signal::new(answer), is_made: Signal::new(false) }
    }

    /// Signs it, where it is not signed yet.
    pub fn sign(self, name: &str) {
        self.answer.update(|answer| {
            if answer.from.is_empty() {
                name.clone_into(&mut answer.from);
            }
        });
    }

    /// Reads the answer; the caller runs again when it changes.
    pub fn with<R>(self, read: impl FnOnce(&Answer) -> R) -> R {
        self.answer.with(read)
    }

    /// The answer as it is now.
    pub fn answer_now(self) -> Answer {
        self.answer.get_untracked()
    }

    /// Changes the answer and keeps it.
    pub fn change(self, change: impl FnOnce(&mut Answer)) {
        self.answer.update(change);
        self.is_made.set(false);
        self.to.with_untracked(|to| self.answer.with_untracked(|answer| post::keep_answer(to, answer)));
    }

    /// What is offered of a thing.
    pub fn help(self, id: Id) -> Option<Help> {
        self.answer.with(|answer| answer.marks.iter().find(|mark| mark.id == id).map(|mark| mark.help))
    }

    /// What is offered of it now: for what is drawn once.
    pub fn help_now(self, id: Id) -> Option<Help> {
        self.answer.with_untracked(|answer| answer.marks.iter().find(|mark| mark.id == id).map(|mark| mark.help))
    }

    /// What is said to it, as it is now.
    pub fn says(self, id: Id) -> String {
        self.answer.with_untracked(|answer| {
            answer.marks.iter().find(|mark| mark.id == id).map(|mark| mark.says.clone()).unwrap_or_default()
        })
    }

    /// Marks a thing, or takes its mark back.
    pub fn mark(self, id: Id, name: &str, help: Option<Help>) {
        let says = self.says(id);
        self.change(|answer| {
            answer.marks.retain(|mark| mark.id != id);
            answer.marks.extend(help.map(|help| Mark { id, name: name.to_owned(), help, says }));
        });
    }

    /// Says something to a thing that is marked.
    pub fn say(self, id: Id, text: String) {
        self.change(|answer| {
            if let Some(mark) = answer.marks.iter_mut().find(|mark| mark.id == id) {
                mark.says = text;
            }
        });
    }

    /// The name below it, what it tells, and its link.
    pub fn sending(self) -> View {
        let begun = live::memo(move || self.answer.with(Answer::offers_something));
        let none = move || el("p").put(key!("reply-none")).done();
        section(key!("reply-send"), live::view(move || if begun.get() { self.signed() } else { none() }))
    }

    fn signed(self) -> View {
        let is_signed = move || self.answer.with(|answer| !answer.from.trim().is_empty());
        let parcel = move || Parcel::Answer(self.answer.get());
        let asked = Signal::new(false);
        let make = move || {
            asked.set(true);
            self.is_made.set(is_signed());
        };
        let wrong = move || if asked.get() && !is_signed() { t!("reply-no-name") } else { String::new() };
        let way = move || {
            let title = self.answer.with_untracked(|answer| answer.title.clone());
            if self.is_made.get() { link_out(&parcel(), &title) } else { crate::el::nothing() }
        };
        fragment()
            .put(
                el("div")
                    .class("field")
                    .put(el("label").attr("for", "reply-from").put(key!("reply-from")))
                    .put(
                        el("input")
                            .attr("type", "text")
                            .attr("id", "reply-from")
                            .attr("maxlength", "120")
                            .attr("autocomplete", "nickname")
                            .attr("aria-describedby", "reply-from-message")
                            .attr("value", self.answer.with_untracked(|answer| answer.from.clone()))
                            .on_input(move |text| self.change(|answer| answer.from = text)),
                    )
                    .put(
                        el("p")
                            .class("wrong")
                            .attr("id", "reply-from-message")
                            .attr("role", "alert")
                            .put(live::text(wrong)),
                    ),
            )
            .put(el("h3").put(key!("share-tells")))
            .put(live::view(move || told_list(&parcel())))
            .put(button(key!("reply-make"), make).class("primary"))
            .put(live::view(way))
            .done()
    }
}
