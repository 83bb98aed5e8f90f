//! All plans: open, rename, copy, take away; and what holds for all of them.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::Card;
use kerbstead_core::plan::Path;
use kerbstead_core::words::Units;

use super::{keeping, section};
use crate::el::{View, all, el, fragment};
use crate::live::{self, Memo};
use crate::locale::{t, tell, words};
use crate::parts::{button, fields, named};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn plans() -> View {
    let app = App::here();
    let add_demo = move || {
        app.add_demo();
        crate::route::go(Page::Overview);
    };
    fragment()
        .put(el("h1").put(key!("page-plans")))
        .put(section(key!("plans-open"), open_plan()))
        .put(section(key!("plans-all"), shelf()))
        .put(
            el("div")
                .class("buttons")
                .put(el("a").class("button").attr("href", Page::Start.link()).put(key!("plans-new")))
                .put(el("a").class("button").attr("href", Page::Beside.link()).put(key!("page-beside")))
                .put(el("a").class("button").attr("href", Page::Share.link()).put(key!("plans-share")))
                .put(el("a").class("button").attr("href", Page::Open.link()).put(key!("plans-open-link")))
                .put(button(key!("plans-add-demo"), add_demo)),
        )
        .put(keeping::asides())
        .put(section(key!("versions-title"), super::versions::versions()))
        .put(section(key!("backup-title"), fragment().put(keeping::promise()).put(keeping::backup()).done()))
        .put(section(key!("restore-title"), super::restore::restore()))
        .put(section(key!("plans-units"), units()))
        .put(el("p").put(key!("plans-privacy")))
        .put(el("p").put(el("a").attr("href", "plan.schema.json").put(key!("plans-schema"))))
        .put(el("p").put(el("a").attr("href", "backup.schema.json").put(key!("backup-schema"))))
        .done()
}

/// The open plan's own fields: its name is changed here.
fn open_plan() -> View {
    fields(&Path::default(), &["title", "currency", "people"])
}

fn shelf() -> View {
    let app = App::here();
    let cards = live::memo(move || app.desk.shelf.with(|shelf| shelf.cards.clone()));
    let open = live::memo(move || app.desk.shelf.with(|shelf| shelf.open));
    let rows = move || all(cards.get().into_iter().map(|card| row(card, open)));
    el("ul").class("shelf").put(live::view(rows)).done()
}

fn row(card: Card, open: Memo<u32>) -> View {
    let app = App::here();
    let slot = card.slot;
    let title = named(card.title);
    let named = |key: &str| tell(key, &vec![("title", Figure::Name(title.clone()))]);
    let is_open = move || open.get() == slot;
    el("li")
        .put(el("span").class("name").put(title.clone()))
        .put(card.is_demo.then(|| el("small").put(key!("plans-is-demo")).done()))
        .put(live::when(is_open, || el("small").put(key!("plans-is-open")).done()))
        .put(
            el("span")
                .class("buttons")
                .put(
                    button(key!("plans-open-it"), move || app.show(slot))
                        .live_flag("disabled", is_open)
                        .attr("aria-label", named("plans-open-named")),
                )
                .put(
                    button(key!("entry-copy"), move || app.duplicate(slot))
                        .attr("aria-label", named("plans-copy-named")),
                )
                .put(
                    button(key!("plans-save"), move || app.save_plan(slot))
                        .attr("aria-label", named("plans-save-named")),
                )
                .put(
                    button(key!("plans-delete"), move || app.delete(slot))
                        .class("remove")
                        .attr("aria-label", named("plans-delete-named")),
                ),
        )
        .done()
}

fn units() -> View {
    let app = App::here();
    let current = words(kerbstead_core::words::Words::units);
    let option = |units: Units, key: &'static str| {
        el("label")
            .class("choice")
            .put(
                el("input")
                    .attr("type", "radio")
                    .attr("id", key)
                    .attr("name", "units")
                    .flag("checked", current == units)
                    .on_tick(move |_| app.set_units(units)),
            )
            .put(t(key))
            .done()
    };
    el("fieldset")
        .put(el("legend").put(key!("plans-units-legend")))
        .put(option(Units::Metric, "units-metric"))
        .put(option(Units::UsCustomary, "units-us-customary"))
        .done()
}
