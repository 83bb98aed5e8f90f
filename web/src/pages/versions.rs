//! Earlier versions of the open plan, with the way back to each.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{Version, count};
use serde_json::Value;

use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{date_time, tell};
use crate::parts::button;
use crate::state::App;

/// The list, the newest first.
pub fn versions() -> View {
    let app = App::here();
    let rows = move || {
        let now = app.document_now();
        app.desk.versions.with(|versions| all(versions.0.iter().rev().map(|version| row(version.clone(), &now))))
    };
    fragment().put(el("p").put(key!("versions-hint"))).put(el("ul").class("shelf").put(live::view(rows))).done()
}

fn row(version: Version, now: &Value) -> View {
    let app = App::here();
    let when = date_time(version.at);
    let differs = if *now == version.document {
        t!("version-same")
    } else {
        tell!("version-differs", &vec![("count", Figure::count(count(&version.document, now)))])
    };
    let figures = vec![("when", Figure::Name(when.clone()))];
    let named = |key: &str| tell(key, &figures);
    let beside = version.clone();
    el("li")
        .put(el("span").class("name").put(when.clone()))
        .put(el("small").put(differs))
        .put(
            el("span")
                .class("buttons")
                .put(
                    button(key!("version-back"), move || app.go_back_to(&version))
                        .attr("aria-label", named("version-back-named")),
                )
                .put(
                    button(key!("version-beside"), move || app.put_beside(&beside))
                        .attr("aria-label", named("version-beside-named")),
                ),
        )
        .done()
}
