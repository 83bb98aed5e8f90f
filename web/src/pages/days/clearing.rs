//! Where everything at home ends, so that the flat is empty on the day it is left.

use kerbstead_core::days::StoreOrSell;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Plain, Plan, Quantity, date_text};
use serde_json::json;

use super::super::section;
use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::locale::say_money;
use crate::parts::{Entries, button, fields, folded_working, named_in, said_value};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn clearing() -> View {
    let links = [(Page::Days, key!("days-back")), (Page::Selling, key!("clearing-to-selling"))];
    let links = links.map(|(page, text)| el("a").attr("href", page.link()).put(text).done());
    fragment()
        .put(el("h1").put(key!("page-clearing")))
        .put(el("p").attr("role", "status").put(live::text(standing)))
        .put(section(key!("clearing-things"), things()))
        .put(stored())
        .put_each(links.map(|link| el("p").class("links").put(link)))
        .done()
}

/// How many have no end yet, and how many days are left.
fn standing() -> String {
    App::here().assessment(|assessment| {
        let endings = &assessment.days.endings;
        let mut figures = vec![
            ("count", Figure::count(endings.things.len())),
            ("open", Figure::count(endings.open)),
            ("gone", Figure::count(endings.gone)),
        ];
        match endings.days_left {
            Some(days) => {
                figures.push(("days", Figure::of(f64::from(days), Quantity::Days)));
                tell!("clearing-standing", &figures)
            }
            None => tell!("clearing-standing-undated", &figures),
        }
    })
}

fn things() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.belongings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            let path = Path::entry("belongings", id).child("end");
            let end = said_value(plan, &path, &entry.ends_as().to_plain());
            (entry.name.clone(), if entry.is_gone() { format!("✓ {end}") } else { end })
        })
    }
    fn body(id: Id) -> View {
        let path = Path::entry("belongings", id);
        let names = &["name", "end", "end_with", "end_fee", "ended_on", "price", "on"];
        let stored = &["kept/storage_monthly", "kept/replaces"];
        all([fields(&path, names), gone_today(id), fields(&path, stored)])
    }
    Entries { list: List::Belongings, line, body, fresh: || json!({}), add: key!("clearing-add") }.show()
}

/// A tap says that it has left the flat.
fn gone_today(id: Id) -> View {
    let app = App::here();
    let path = Path::entry("belongings", id).child("ended_on");
    let is_there =
        move || app.plan(|plan| plan.belongings.iter().any(|entry| entry.id == id && entry.ended_on.is_none()));
    let gone = move || {
        let name = app.desk.plan.with_untracked(|plan| named_in(plan, id));
        let edit = Edit::set(path.clone(), date_text(browser::today()));
        app.edit_and_tell(edit, tell!("clearing-went", &vec![("name", Figure::Name(name))]));
    };
    live::when(is_there, move || button(key!("clearing-gone"), gone.clone()).done())
}

/// To store or to sell, thing by thing.
fn stored() -> View {
    let app = App::here();
    let stored = live::memo(move || app.settled_assessment(|assessment| assessment.days.endings.stored.clone()));
    let working =
        live::memo(move || stored.with(|stored| stored.iter().map(|one| one.working.clone()).collect::<Vec<_>>()));
    live::when(
        move || stored.with(|stored| !stored.is_empty()),
        move || {
            let lines = move || stored.with(|stored| all(stored.iter().map(|one| stored_line(app, one))));
            let list = el("ul").class("lines").put(live::view(lines)).done();
            section(key!("clearing-stored"), all([list, folded_working(working)]))
        },
    )
}

fn stored_line(app: App, one: &StoreOrSell) -> View {
    let name = app.desk.plan.with_untracked(|plan| named_in(plan, one.id));
    let mut figures = vec![
        ("name", Figure::Name(name)),
        ("rent", Figure::Name(say_money(one.rent))),
        ("again", Figure::Name(say_money(one.again))),
    ];
    figures.extend(one.even_after_months.map(|months| ("months", Figure::of(months, Quantity::Months))));
    let line =
        if one.is_storing_cheaper { tell!("clearing-store", &figures) } else { tell!("clearing-sells", &figures) };
    let even = one.even_after_months.map(|_| tell!("clearing-even", &figures));
    el("li").put(line).put(" ").put(even.map_or_else(nothing, |even| el("span").put(even).done())).done()
}
