//! In the aisle: what one thing would do to the plan, worked out with one hand.

mod answers;
mod counter;
mod inputs;
mod keys;

use counter::Counter;

use crate::el::{View, el};
use crate::route::Page;

/// The page.
pub fn shop() -> View {
    let counter = Counter::new();
    el("div")
        .class("shop")
        .put(el("h1").put(key!("page-shop")))
        .put(answers::answer(counter))
        .put(
            el("form")
                .attr("autocomplete", "off")
                .on_submit(move || counter.next())
                .put(inputs::first_inputs(counter))
                .put(answers::details(counter))
                .put(inputs::more_inputs(counter))
                .put(answers::taking(counter))
                .put(keys::keys(counter)),
        )
        .put(answers::past(counter))
        .put(el("p").class("links").put(el("a").attr("href", Page::Aisle.link()).put(key!("shop-to-aisle"))))
        .put(el("p").class("links").put(el("a").attr("href", Page::Materials.link()).put(key!("to-materials"))))
        .put(el("p").class("links").put(el("a").attr("href", Page::Signal.link()).put(key!("shop-to-send"))))
        .done()
}
