//! Days: what is done when, with whom and with what, and whether it is done by the date.

mod bars;
mod clearing;
mod outlook;
mod paper;
mod sheet;
mod work;

pub use clearing::clearing;
pub use paper::day_sheet;
pub use work::work;

use kerbstead_core::Balance;
use kerbstead_core::days::{ChainLink, WaitsFor, Way};
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::plan::{Id, Plan, Quantity};

use super::{balance_head, section};
use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::locale::tell;
use crate::parts::{folded_working, named_in};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn days() -> View {
    fragment()
        .put(balance_head(Balance::Days))
        .put(links())
        .put(section(key!("days-next"), sheet::next()))
        .put(section(key!("days-ahead"), sheet::ahead()))
        .put(bars::bars())
        .put(section(key!("days-chain"), chain()))
        .put(section(key!("days-sure"), outlook::outlook()))
        .put(ways())
        .done()
}

fn links() -> View {
    let link = |page: Page, text| el("a").attr("href", page.link()).put(text).done();
    let links = [
        link(Page::Work, key!("days-to-work")),
        link(Page::Clearing, key!("days-to-clearing")),
        link(Page::Materials, key!("to-materials")),
        link(Page::Papers, key!("days-to-papers")),
    ];
    all(links.map(|link| el("p").class("links").put(link).done()))
}

/// The tasks that make the date, each with what it waits for.
fn chain() -> View {
    let app = App::here();
    let lines = move || {
        app.settled_assessment(|assessment| {
            let chain = &assessment.days.chain;
            if chain.is_empty() {
                return el("p").put(key!("days-chain-none")).done();
            }
            app.desk.plan.with_untracked(|plan| {
                el("ol").class("chain").put_each(chain.iter().map(|link| el("li").put(link_text(plan, link)))).done()
            })
        })
    };
    live::view(lines)
}

fn link_text(plan: &Plan, link: &ChainLink) -> String {
    let (key, what, other) = match link.waits_for {
        WaitsFor::Nothing => ("days-link-nothing", None, None),
        WaitsFor::Task { id } => ("days-link-task", Some(id), None),
        WaitsFor::Hands { id } => ("days-link-hands", Some(id), None),
        WaitsFor::Tool { id, task } => ("days-link-tool", Some(id), Some(task)),
        WaitsFor::Item { id } => ("days-link-item", Some(id), None),
        WaitsFor::ItsDay => ("days-link-its-day", None, None),
        WaitsFor::OpenHours => ("days-link-open-hours", None, None),
    };
    let name = |id: Option<Id>| Figure::Name(id.map_or_else(String::new, |id| named_in(plan, id)));
    let figures = vec![
        ("name", Figure::Name(named_in(plan, link.task))),
        ("starts", Figure::Moment(link.starts)),
        ("what", name(what)),
        ("other", name(other)),
    ];
    tell(key, &figures)
}

/// To leave with what is done, or to stay longer: only where not all is done.
fn ways() -> View {
    let app = App::here();
    let ways = live::memo(move || app.settled_assessment(|assessment| assessment.days.ways.clone()));
    let working = live::memo(move || {
        ways.with(|ways| {
            let both = ways.iter().flat_map(|ways| [Some(&ways.leave), ways.stay.as_ref()]).flatten();
            both.map(|way| way.working.clone()).collect::<Vec<_>>()
        })
    });
    live::when(
        move || ways.with(Option::is_some),
        move || {
            let told = move || {
                ways.with(|ways| {
                    let Some(ways) = ways else { return nothing() };
                    let line = |key: &'static str, way: &Way| el("li").put(tell(key, &way_figures(way))).done();
                    let stay = match &ways.stay {
                        Some(way) => line("days-way-stay", way),
                        None => el("li").put(key!("days-way-never")).done(),
                    };
                    el("ul").class("lines").put_each([line("days-way-leave", &ways.leave), stay]).done()
                })
            };
            let content = all([live::view(told), folded_working(working)]);
            section(key!("days-ways"), content)
        },
    )
}

fn way_figures(way: &Way) -> Figures {
    let mut figures = vec![
        ("days", Figure::of(f64::from(way.days), Quantity::Days)),
        ("hours", Figure::of(way.hours, Quantity::Hours)),
        ("cost", Figure::Money(way.cost)),
    ];
    figures.extend(way.done_on.map(|on| ("on", Figure::Date(on))));
    figures
}
