//! What goes out as a link: to send, to copy, to photograph.

use std::rc::Rc;

use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::share::{Code, Parcel, QUIET_MODULES, Unreadable, codes, seal, told};

use super::button::button;
use crate::browser;
use crate::el::{View, el, fragment, svg};
use crate::live::{self, Signal};
use crate::locale::{plain_sentence, t, tell};
use crate::route::Page;
use crate::send;

/// The pixels that a code takes on the narrowest screen, from edge to edge.
const CODE_PX: usize = 320;

/// What a parcel tells whoever gets it.
pub fn told_list(parcel: &Parcel) -> View {
    let lines = told(parcel).into_iter().map(|told| el("li").put(tell(told.key, &told.figures())).done());
    el("ul").class("told").put_each(lines).done()
}

/// Why a link cannot be read or made, in words.
pub fn unreadable(why: Unreadable) -> String {
    tell(why.key(), &why.figures())
}

/// A parcel as a link: what sends it, what copies it, and its codes; or why it cannot be one.
pub fn link_out(parcel: &Parcel, title: &str) -> View {
    match seal(parcel) {
        Ok(text) => sealed(&text, title),
        Err(why) => el("p").class("wrong").attr("role", "alert").put(unreadable(why)).done(),
    }
}

fn sealed(text: &str, title: &str) -> View {
    let before = format!("{}{}/", browser::address(), Page::Open.link());
    let link = [&before, text].concat();
    fragment().put(ways_out(link, title.to_owned())).put(code_sheet(codes(&before, text))).done()
}

/// The link in a field of its own, with buttons that send and copy it.
fn ways_out(link: String, title: String) -> View {
    const FIELD: &str = "share-link";
    let said = Signal::new("");
    let sending = send::can_send().then(|| {
        let link = link.clone();
        let send_it = move || send::send(&title, &link);
        button(key!("share-send"), send_it).class("primary").done()
    });
    let copy = {
        let link = link.clone();
        move || {
            send::select_text(FIELD);
            let say = move |is_copied: bool| said.set(if is_copied { "share-copied" } else { "share-copy-by-hand" });
            send::copy(&link, Box::new(say));
        }
    };
    let outcome = move || match said.get() {
        "" => String::new(),
        key => t(key),
    };
    fragment()
        .put(el("div").class("buttons").put(sending).put(button(key!("share-copy"), copy)))
        .put(el("p").attr("role", "status").put(live::text(outcome)))
        .put(
            el("div").class("field wide").put(el("label").attr("for", FIELD).put(key!("share-link"))).put(
                el("input")
                    .attr("type", "text")
                    .attr("id", FIELD)
                    .flag("readonly", true)
                    .attr("value", link)
                    .on_click(|| send::select_text(FIELD)),
            ),
        )
        .done()
}

/// The codes of a link, one at a time.
fn code_sheet(codes: Vec<Code>) -> View {
    let (codes, shown) = (Rc::new(codes), Signal::new(0_usize));
    let count = codes.len();
    let figures =
        move || -> Figures { vec![("number", Figure::count(shown.get() + 1)), ("count", Figure::count(count))] };
    let which = move || if count > 1 { tell!("share-code-of", &figures()) } else { t!("share-code") };
    let step = move |key: &'static str, is_last: fn(usize, usize) -> bool, to: fn(usize) -> usize| {
        el("button")
            .attr("type", "button")
            .live_flag("disabled", move || is_last(shown.get(), count))
            .on_click(move || shown.set(to(shown.get_untracked())))
            .put(t(key))
            .done()
    };
    let steps = (count > 1).then(|| {
        el("div")
            .class("buttons")
            .put(step("share-code-before", |at, _| at == 0, |at| at.saturating_sub(1)))
            .put(step("share-code-next", |at, count| at + 1 >= count, |at| at + 1))
            .done()
    });
    let drawn = move || codes.get(shown.get()).map_or_else(crate::el::nothing, |code| drawing(code, &which()));
    el("section")
        .attr("aria-label", t!("share-codes"))
        .put(el("h3").put(key!("share-codes")))
        .put(el("p").put(plain_sentence(if count > 1 { key!("share-codes-hint") } else { key!("share-code-hint") })))
        .put(steps)
        .put(el("p").class("which").attr("aria-live", "polite").put(live::text(which)))
        .put(live::view(drawn))
        .done()
}

/// A code as a drawing, dark on light whatever the page's colours, and the link in it as text.
fn drawing(code: &Code, name: &str) -> View {
    let side = code.side() + 2 * QUIET_MODULES;
    let px = i32::try_from(side * (CODE_PX / side).max(1)).unwrap_or_default();
    let mut path = String::new();
    for (column, row, length) in code.stripes() {
        path += &format!("M{} {}h{length}v1h-{length}z", column + QUIET_MODULES, row + QUIET_MODULES);
    }
    el("figure")
        .class("code")
        .put(
            svg("svg")
                .attr("viewBox", format!("0 0 {side} {side}"))
                .attr("width", px)
                .attr("height", px)
                .attr("shape-rendering", "crispEdges")
                .attr("role", "img")
                .attr("aria-label", name)
                .attr("data-version", i32::from(code.version()))
                .put(svg("path").attr("fill", "#fff").attr("d", format!("M0 0h{side}v{side}h-{side}z")))
                .put(svg("path").attr("fill", "#000").attr("d", path)),
        )
        .put(
            el("figcaption").put(
                el("details")
                    .put(el("summary").put(key!("share-code-text")))
                    .put(el("p").put(el("a").attr("href", code.link.as_str()).put(code.link.as_str()))),
            ),
        )
        .done()
}
