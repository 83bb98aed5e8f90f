//! What a thing comes to, what can be done with it, and what was worked out before.

use kerbstead_core::shop::Taking;

use super::super::balance_title;
use super::counter::{Answer, Counter};
use kerbstead_core::words::Key;

use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::parts::{button, verdict_badge};

/// The price and its days, big: they stay in sight.
pub fn answer(counter: Counter) -> View {
    let price = move || of_answer(counter, |answer| answer.price.clone()).unwrap_or_else(|| t!("shop-no-price"));
    let days = move || of_answer(counter, |answer| answer.days.clone()).unwrap_or_default();
    el("p")
        .class("answer")
        .attr("role", "status")
        .put(el("strong").put(live::text(price)))
        .put(" ")
        .put(el("span").put(live::text(days)))
        .done()
}

/// What else it comes to.
pub fn details(counter: Counter) -> View {
    let lines = move || of_answer(counter, lines).unwrap_or_else(nothing);
    let working = move || of_answer(counter, working).unwrap_or_else(nothing);
    let fold = move || {
        el("details")
            .put(el("summary").put(key!("standing-working")))
            .put(el("ul").class("working").put(live::view(working)))
            .done()
    };
    el("section")
        .attr("aria-label", t!("shop-answer"))
        .put(live::view(lines))
        .put(live::when(move || of_answer(counter, |_| ()).is_some(), fold))
        .done()
}

fn of_answer<T>(counter: Counter, read: impl FnOnce(&Answer) -> T) -> Option<T> {
    counter.said.with(|said| said.answer.as_ref().map(read))
}

/// Verdicts that change, and the sentences.
fn lines(answer: &Answer) -> View {
    let changes = answer.changes.iter().map(|(balance, before, after)| {
        el("p")
            .class("change")
            .put(el("strong").put(balance_title(*balance)))
            .put(" ")
            .put(verdict_badge(*before))
            .put(el("span").attr("aria-label", t!("shop-becomes")).attr("role", "img").put("→"))
            .put(verdict_badge(*after))
            .done()
    });
    let line =
        |(text, is_bad): &(String, bool)| el("li").attr("class", is_bad.then_some("short")).put(text.as_str()).done();
    let list = el("ul").class("lines").put_each(answer.lines.iter().map(line));
    fragment().put_each(changes).put(list).done()
}

fn working(answer: &Answer) -> View {
    all(answer.working.iter().map(|line| el("li").put(line.as_str()).done()))
}

/// What can be done with it.
pub fn taking(counter: Counter) -> View {
    let has_no_price = move || of_answer(counter, |_| ()).is_none();
    let take = |key: Key, taking: Taking| button(key, move || counter.take(taking)).live_flag("disabled", has_no_price);
    el("div")
        .class("buttons")
        .put(take(key!("shop-take-paid"), Taking::Paid).class("primary"))
        .put(take(key!("shop-take-planned"), Taking::Planned))
        .put(button(key!("shop-next-thing"), move || counter.put_away()).class("quiet"))
        .done()
}

/// What was worked out before: each can be taken up again.
pub fn past(counter: Counter) -> View {
    let lines = live::memo(move || counter.past());
    let row = move |(at, line): (usize, String)| {
        let take_up = move || counter.take_up(at);
        el("li").put(el("button").attr("type", "button").class("quiet").on_click(take_up).put(line)).done()
    };
    live::when(
        move || lines.with(|lines| !lines.is_empty()),
        move || {
            let rows = move || all(lines.get().into_iter().enumerate().map(row));
            el("section")
                .attr("aria-label", t!("shop-past"))
                .put(el("h2").put(key!("shop-past")))
                .put(el("ul").class("past").put(live::view(rows)))
                .put(button(key!("shop-past-clear"), move || counter.forget_past()).class("quiet"))
                .done()
        },
    )
}
