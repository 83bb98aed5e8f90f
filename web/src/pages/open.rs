//! What came by a link, a code or a message.

use kerbstead_core::explain::Figure;
use kerbstead_core::share::{self, Collected, Parcel, found_in};

use super::{compare, visitor};
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::parts::unreadable;
use crate::post;
use crate::route::{self, Page};

/// What stands before a text in the address when it is to be compared with the open plan.
const COMPARE: &str = "compare/";

/// The page.
pub fn open() -> View {
    let rest = route::rest_of_address();
    let (is_to_compare, text) = match rest.strip_prefix(COMPARE) {
        Some(text) => (true, text),
        None => (false, rest.as_str()),
    };
    if text.is_empty() {
        return fragment()
            .put(el("h1").put(key!("page-open")))
            .put(el("p").put(key!("open-hint")))
            .put(pasting())
            .done();
    }
    let text = found_in(text).first().copied().unwrap_or_default();
    if let Some(outcome) = post::put_part(text) {
        return part(&outcome);
    }
    match share::open(text) {
        Err(why) => refused(unreadable(why)),
        Ok(Parcel::Plan { scope, with_money, file }) if !is_to_compare => {
            visitor::visitor(text, scope, with_money, file).unwrap_or_else(refused)
        }
        Ok(parcel) => compare::compare(parcel),
    }
}

/// The link to the comparison of what a text holds.
pub(super) fn compare_link(text: &str) -> String {
    format!("{}/{COMPARE}{text}", Page::Open.link())
}

fn text_link(text: &str) -> String {
    format!("{}/{text}", Page::Open.link())
}

/// One of several codes: the whole is opened once all are there.
fn part(outcome: &Collected) -> View {
    match outcome {
        Collected::Whole(text) => {
            route::replace(&text_link(text));
            nothing()
        }
        Collected::Damaged => refused(t!("open-parts-damaged")),
        Collected::Waiting { .. } => fragment()
            .put(el("h1").put(key!("page-open")))
            .put(el("p").attr("role", "status").put(waiting(outcome)))
            .put(el("p").put(key!("open-parts-hint")))
            .put(pasting())
            .done(),
    }
}

/// How many parts are there and which are missing.
fn waiting(outcome: &Collected) -> String {
    let Collected::Waiting { count, missing } = outcome else { return String::new() };
    let count = *count as usize;
    let numbers: Vec<String> = missing.iter().map(|index| (index + 1).to_string()).collect();
    let figures = vec![
        ("have", Figure::count(count - missing.len().min(count))),
        ("count", Figure::count(count)),
        ("missing_count", Figure::count(missing.len())),
        ("missing", Figure::Name(numbers.join(", "))),
    ];
    tell!("open-parts-waiting", &figures)
}

/// Why it cannot be opened, and a place to try again.
fn refused(why: String) -> View {
    fragment()
        .put(el("h1").put(key!("page-open")))
        .put(
            el("div")
                .class("warning")
                .attr("role", "alert")
                .put(el("p").put(why))
                .put(el("p").put(key!("open-unchanged"))),
        )
        .put(pasting())
        .done()
}

/// A field for a link or a whole message.
fn pasting() -> View {
    let (pasted, wrong) = (Signal::new(String::new()), Signal::new(String::new()));
    let send = move || wrong.set(opened(&pasted.get_untracked()));
    el("form")
        .class("pasting")
        .on_submit(send)
        .put(
            el("div")
                .class("field wide")
                .put(el("label").attr("for", "pasted").put(key!("open-paste")))
                .put(
                    el("textarea")
                        .attr("id", "pasted")
                        .attr("rows", "4")
                        .attr("spellcheck", "false")
                        .attr("autocomplete", "off")
                        .attr("aria-describedby", "pasted-message")
                        .on_input(move |text| pasted.set(text)),
                )
                .put(
                    el("p")
                        .class("wrong")
                        .attr("id", "pasted-message")
                        .attr("role", "alert")
                        .put(live::text(move || wrong.get())),
                ),
        )
        .put(el("button").attr("type", "submit").class("primary").put(key!("open-it")))
        .done()
}

/// Goes to what a message holds; else says what is wrong with it.
fn opened(message: &str) -> String {
    let mut waits = String::new();
    for text in found_in(message) {
        match post::put_part(text) {
            Some(Collected::Whole(text)) => {
                route::go_to(&text_link(&text));
                return String::new();
            }
            Some(Collected::Damaged) => return t!("open-parts-damaged"),
            Some(outcome) => waits = waiting(&outcome),
            None => match share::open(text) {
                Ok(_) => {
                    route::go_to(&text_link(text));
                    return String::new();
                }
                Err(why) => waits = unreadable(why),
            },
        }
    }
    waits
}
