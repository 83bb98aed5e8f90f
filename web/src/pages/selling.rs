//! Sell, keep, store: what to ask for each thing and when, and what is better not sold.

mod kept;
mod prices;

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::selling::{NoSchedule, Offered, Schedule, offered_one, schedule, told_chance};
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use leptos::prelude::{provide_context, use_context};
use serde_json::json;

use super::section;
use crate::browser;
use crate::el::{View, el, fragment};
use crate::live::{self, Memo};
use crate::locale::words;
use crate::parts::{Entries, fields, folded_working, optional};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn selling() -> View {
    let app = App::here();
    let schedule = live::memo(move || {
        app.settled_plan(|plan| {
            let as_of = browser::today();
            app.desk.assessment.with_untracked(|assessment| schedule(plan, as_of, &assessment.money))
        })
    });
    provide_context(Found(schedule));
    fragment()
        .put(el("h1").put(key!("page-selling")))
        .put(section(key!("selling-wish"), wish(schedule)))
        .put(section(key!("money-belongings"), things()))
        .put(kept::kept())
        .put(el("p").class("links").put(el("a").attr("href", Page::Money.link()).put(key!("money-back"))))
        .done()
}

/// The prices that were found, for the parts of the page that show some of them.
#[derive(Clone, Copy)]
struct Found(Memo<Result<Schedule, NoSchedule>>);

const WISH: &[&str] = &["wanted_sum", "wanted_on", "wanted_percent"];

/// What sales are to bring, and whether they do.
fn wish(found: Memo<Result<Schedule, NoSchedule>>) -> View {
    let outcome = move || found.with(|found| found.as_ref().map_or_else(|why| no_schedule(*why), reached));
    let working = live::memo(move || {
        found.with(|found| found.as_ref().map_or_else(|_| Vec::new(), |found| found.working.clone()))
    });
    fragment()
        .put(el("div").attr("role", "status").put(live::view(outcome)))
        .put(folded_working(working))
        .put(fields(&Path::section("selling"), WISH))
        .done()
}

fn no_schedule(why: NoSchedule) -> View {
    let key = match why {
        NoSchedule::NothingToSell => key!("selling-nothing"),
        NoSchedule::NoDay => key!("selling-no-day"),
        NoSchedule::DayOut => key!("selling-day-out"),
        NoSchedule::NoSum => key!("selling-no-sum"),
        NoSchedule::TooMany => key!("selling-too-many"),
    };
    el("p").put(key).done()
}

fn reached(found: &Schedule) -> View {
    let figures = vec![
        ("sum", Figure::Money(found.sum)),
        ("on", Figure::Date(found.on)),
        ("percent", told_chance(found.percent)),
        ("expected", Figure::Money(found.expected)),
        ("wanted", Figure::of(found.wanted_percent, Quantity::Percent)),
    ];
    let by = |day: Date| tell!("selling-list-by", &vec![("on", Figure::Date(day))]);
    let then = found.list_by.map_or_else(|| tell!("selling-not-reached", &figures), by);
    let line = |text: String| el("p").put(text).done();
    fragment()
        .put(el("p").put(el("strong").put(tell!("selling-reached", &figures))))
        .put(line(then))
        .put(found.is_needed.then(|| line(t!("selling-needed"))))
        .done()
}

/// Each thing with its chance; it opens into its prices and what they are made of.
fn things() -> View {
    Entries { list: List::Belongings, line, body, fresh: || json!({}), add: key!("belongings-add") }.show()
}

fn offer(plan: &Plan, id: Id) -> Option<Offered> {
    offered_one(plan, browser::today(), id)
}

fn line(plan: &Plan, id: Id) -> (String, String) {
    let Some(entry) = plan.belongings.iter().find(|entry| entry.id == id) else { return Default::default() };
    let value = match offer(plan, id) {
        Some(offered) => words(|words| {
            let [asking, chance] = [Figure::Money(offered.asking), told_chance(offered.percent)];
            format!("{} · {}", words.figure(&asking), words.figure(&chance))
        }),
        None if entry.outcome.is_some() => t!("field-outcome-happened"),
        None if entry.price.is_none() => t!("no-amount"),
        None => t!("selling-no-chance"),
    };
    (entry.name.clone(), value)
}

const DEMAND: &[&str] =
    &["name", "price", "on", "lowest", "half_sold_days", "usual_price", "selling_cost", "listed_on", "chance_percent"];

fn body(id: Id) -> View {
    let path = Path::entry("belongings", id);
    fragment()
        .put(chance(id))
        .put(use_context::<Found>().map(|found| prices::prices(id, found.0)))
        .put(fields(&path, DEMAND))
        .put(optional(&path, "kept", [kept::FIELDS, &[]], "part-kept"))
        .done()
}

/// The chance at its own price, with how it came about.
fn chance(id: Id) -> View {
    let app = App::here();
    let offered = live::memo(move || app.plan(|plan| offer(plan, id)));
    let text = move || {
        let offered = offered.get()?;
        let figures = vec![
            ("asking", Figure::Money(offered.asking)),
            ("on", Figure::Date(offered.on)),
            ("percent", told_chance(offered.percent)),
        ];
        Some(tell!("selling-chance", &figures))
    };
    let working =
        live::memo(move || offered.with(|offered| offered.iter().map(|one| one.working.clone()).collect::<Vec<_>>()));
    fragment()
        .put(
            el("p")
                .attr("aria-live", "polite")
                .put(live::text(move || text().unwrap_or_else(|| t!("selling-no-chance-why")))),
        )
        .put(folded_working(working))
        .done()
}
