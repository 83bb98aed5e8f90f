//! The ways of building, as a list.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::futures::MOST_BUILDS;
use kerbstead_core::plan::{Edit, Id, List, Path, Plain, Plan, VanBuild};
use serde_json::json;

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::say_money;
use crate::parts::{Entries, button, fields};
use crate::state::App;

/// The list; while it is empty, the plan as it stands, which can be put into it.
pub fn ways() -> View {
    let app = App::here();
    let count = live::memo(move || app.plan(|plan| plan.builds.len()));
    let too_many = move || {
        let is_so = count.get() > MOST_BUILDS;
        if is_so { tell!("futures-too-many", &vec![("most", Figure::count(MOST_BUILDS))]) } else { String::new() }
    };
    let list = Entries { list: List::Builds, line, body, fresh: || json!({}), add: key!("builds-add") };
    live::view(move || {
        if count.with(|count| *count == 0) {
            return fragment()
                .put(el("p").put(key!("futures-none")))
                .put(button(key!("futures-begin"), move || begin(app)).class("add"))
                .done();
        }
        fragment().put(list.show()).put(el("p").put(live::text(too_many))).done()
    })
}

/// Puts the plan as it stands into the list, where it can be changed and others can be put beside it.
fn begin(app: App) {
    let entry = app.plan(|plan| {
        let name = t!("futures-as-planned");
        app.desk.assessment.with_untracked(|assessment| {
            VanBuild::as_planned(plan, browser::today(), &assessment.money, plan.next_id(), name).to_plain()
        })
    });
    app.edit(Edit::Insert { list: List::Builds, at: 0, entry });
}

fn line(plan: &Plan, id: Id) -> (String, String) {
    let Some(build) = plan.builds.iter().find(|build| build.id == id) else { return Default::default() };
    let likely = |amount: Option<kerbstead_core::plan::Estimate<kerbstead_core::plan::Money>>| {
        amount.map_or(kerbstead_core::plan::Money::ZERO, |amount| amount.likely())
    };
    let cost = likely(build.removable) + likely(build.fixed);
    (build.name.clone(), say_money(cost))
}

fn body(id: Id) -> View {
    fields(&Path::entry("builds", id), &["name", "build_months", "removable", "fixed", "redone", "extra_kg"])
}
