//! The next build, briefed: one sheet that somebody else could quote from.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::road_log::{Brief, BriefLine, brief as briefed};

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{tell, words};
use crate::parts::button;
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn brief() -> View {
    let app = App::here();
    let found = live::memo(move || {
        let as_of = app.desk.assessment.with(|assessment| assessment.as_of);
        app.settled_plan(|plan| briefed(plan, as_of))
    });
    let back = el("p").class("links").put(el("a").attr("href", Page::Log.link()).put(key!("page-log")));
    fragment()
        .put(el("h1").class("screen-only").put(key!("page-brief")))
        .put(
            el("div")
                .class("screen-only")
                .put(el("p").put(key!("brief-lede")))
                .put(button(key!("papers-print"), browser::print).class("primary")),
        )
        .put(el("article").class("sheet").put(live::view(move || found.with(|found| sheet(app, found)))))
        .put(el("div").class("screen-only").put(back))
        .done()
}

fn sheet(app: App, brief: &Brief) -> View {
    let figures = vec![("logged", Figure::of(brief.logged_days as f64, Quantity::Days))];
    let rests = if brief.logged_days > 0 { tell!("brief-rests", &figures) } else { t!("brief-rests-on-plan") };
    let cautions = brief.cautions.iter().map(|caution| el("li").put(words(|words| words.caution(*caution))).done());
    let lines = if brief.lines.is_empty() {
        el("p").put(key!("brief-nothing")).done()
    } else {
        el("ul").class("brief").put_each(brief.lines.iter().map(line)).done()
    };
    fragment()
        .put(el("h2").put(app.desk.plan.with_untracked(|plan| plan.title.clone())))
        .put(el("p").put(rests))
        .put(lines)
        .put(el("h3").put(key!("standing-cautions")))
        .put(el("ul").put_each(cautions))
        .done()
}

fn line(line: &BriefLine) -> View {
    let from = if line.is_logged { key!("brief-counted") } else { key!("brief-planned") };
    let working = line.working.iter().map(|working| {
        let (formula, source) = words(|words| (words.working(working), words.source(working.source)));
        el("p").class("working").put(formula).put(" ").put(el("small").put("(").put(source).put(")")).done()
    });
    el("li")
        .put(el("strong").put(tell(line.key, &line.figures)))
        .put(" ")
        .put(el("small").put(from))
        .put_each(working)
        .done()
}
