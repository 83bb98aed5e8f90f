//! What the device keeps: whether it stays, what could not be read, all of it as a file.

use kerbstead_core::explain::Figure;

use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{plain_sentence, tell};
use crate::parts::button;
use crate::state::{App, save_aside};
use crate::storage::Aside;

/// Whether what is kept here stays.
pub fn promise() -> View {
    let app = App::here();
    app.look_whether_it_stays();
    let text = move || {
        plain_sentence(match app.desk.stays.get() {
            None => key!("stays-unknown"),
            Some(true) => key!("stays-promised"),
            Some(false) => key!("stays-not-promised"),
        })
    };
    el("p").put(live::text(text)).done()
}

/// All of it as a file.
pub fn backup() -> View {
    let app = App::here();
    let save = move |with_versions| move || app.save_all(with_versions);
    fragment()
        .put(el("p").put(key!("backup-hint")))
        .put(
            el("div")
                .class("buttons")
                .put(button(key!("backup-save"), save(false)))
                .put(button(key!("backup-save-with-versions"), save(true))),
        )
        .done()
}

/// What was found here and could not be read.
pub fn asides() -> View {
    let app = App::here();
    let asides = move || app.desk.asides.get();
    live::when(
        move || !app.desk.asides.with(Vec::is_empty),
        move || {
            let rows = live::view(move || all(asides().into_iter().map(aside_row)));
            super::section(key!("aside-title"), fragment().put(el("p").put(key!("aside-hint"))).put(list(rows)).done())
        },
    )
}

fn list(rows: View) -> View {
    el("ul").class("shelf").put(rows).done()
}

fn aside_row(aside: Aside) -> View {
    let app = App::here();
    let what = match aside.was.as_str() {
        "shelf" => t!("aside-shelf"),
        "settings" => t!("aside-settings"),
        "slip" => t!("aside-slip"),
        was => tell!("aside-plan", &vec![("number", Figure::Name(was.to_owned()))]),
    };
    let dropped = aside.clone();
    let figures = vec![("what", Figure::Name(what.clone()))];
    let named = |key: &str| tell(key, &figures);
    el("li")
        .put(el("span").class("name").put(what.clone()))
        .put(
            el("span")
                .class("buttons")
                .put(
                    button(key!("aside-save"), move || save_aside(&aside))
                        .attr("aria-label", named("aside-save-named")),
                )
                .put(
                    button(key!("aside-drop"), move || app.drop_aside(&dropped))
                        .class("remove")
                        .attr("aria-label", named("aside-drop-named")),
                ),
        )
        .done()
}
