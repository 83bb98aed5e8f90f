//! Keys for a thumb: a phone's own number keys have no signs of arithmetic.

use super::counter::{Counter, input_id};
use crate::browser;
use crate::el::{El, View, el};
use crate::live;
use crate::locale::{self, plain_sentence, t};

/// The keys, row by row.
pub fn keys(counter: Counter) -> View {
    let mark = locale::number_marks().decimal.to_string();
    let digit = |digit: &'static str| put(counter, digit, None);
    let sign = |sign: &'static str, name: &'static str| put(counter, sign, Some(name));
    el("div")
        .class("keys")
        .attr("role", "group")
        .attr("aria-label", t!("shop-keys"))
        .put_each(["7", "8", "9"].map(digit))
        .put(sign("÷", "shop-key-divide"))
        .put(sign("(", "shop-key-open"))
        .put(erase(counter))
        .put_each(["4", "5", "6"].map(digit))
        .put(sign("×", "shop-key-times"))
        .put(sign(")", "shop-key-close"))
        .put(clear(counter))
        .put_each(["1", "2", "3"].map(digit))
        .put(sign("−", "shop-key-minus"))
        .put(sign("%", "shop-key-percent"))
        .put(el("button").attr("type", "submit").class("primary next").keeps_focus().put(key!("shop-key-next")))
        .put(digit("0"))
        .put(digit("00"))
        .put(key(counter, mark, Some("shop-key-mark")))
        .put(put(counter, "+", Some("shop-key-plus")).class("plus"))
        .done()
}

fn put(counter: Counter, text: &'static str, name: Option<&'static str>) -> El {
    key(counter, text.to_owned(), name)
}

/// A key that puts its text where the caret is.
fn key(counter: Counter, text: String, name: Option<&'static str>) -> El {
    let shown = text.clone();
    let press = move || browser::type_text(&input_id(counter.current.get_untracked()), &text);
    el("button").attr("type", "button").attr("aria-label", name.map(t)).keeps_focus().on_click(press).put(shown)
}

fn erase(counter: Counter) -> El {
    let press = move || browser::erase(&input_id(counter.current.get_untracked()));
    el("button").attr("type", "button").attr("aria-label", t!("shop-key-erase")).keeps_focus().on_click(press).put("⌫")
}

/// What was cleared comes back with the same key.
fn clear(counter: Counter) -> El {
    let name = move || {
        Some(plain_sentence(if counter.can_bring_back() {
            key!("shop-key-bring-back")
        } else {
            key!("shop-key-clear")
        }))
    };
    let shown = move || if counter.can_bring_back() { "↶" } else { "C" }.to_owned();
    el("button")
        .attr("type", "button")
        .live("aria-label", name)
        .keeps_focus()
        .on_click(move || counter.clear_or_bring_back())
        .put(live::text(shown))
}
