//! What is to be bought and sold from today on, and what comes in, day by day.

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Flow, FlowGroup, FlowState, Needed};
use kerbstead_core::plan::{Id, Money};
use kerbstead_core::words::Key;

use super::course::mark_of;
use super::names::source_name;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{plain_sentence, say_date, say_money, tell};
use crate::parts::Mark;
use crate::state::App;

/// So many lines are shown at once; the rest is unfolded.
const FIRST: usize = 8;

/// One thing to do, or to expect.
#[derive(Clone, PartialEq)]
struct Line {
    on: Date,
    mark: Mark,
    what: Key,
    name: String,
    amount: Money,
    /// Cash in the evening.
    closing: Money,
    /// The thing of the kit that it is.
    item: Option<Id>,
    /// From when on it could be paid already.
    payable_from: Option<Date>,
}

/// The list, and how much more is needed by when.
pub fn ahead() -> View {
    let app = App::here();
    let lines = live::memo(move || lines(app));
    let is_open = Signal::new(false);
    let needed = live::memo(move || app.settled_assessment(|assessment| assessment.money.needed.clone()));
    let first = move || lines.with(|lines| all(lines.iter().take(FIRST).map(row)));
    let rest = move || lines.with(|lines| all(lines.iter().skip(FIRST).map(row)));
    let more = move || tell!("ahead-more", &vec![("count", Figure::count(lines.with(Vec::len).saturating_sub(FIRST)))]);
    let folded = el("details")
        .on_toggle(move |open| is_open.set(open))
        .live_flag("hidden", move || lines.with(|lines| lines.len() <= FIRST))
        .put(el("summary").put(live::text(more)))
        .put(el("ul").class("ahead").put(live::view(move || if is_open.get() { rest() } else { nothing() })));
    fragment()
        .put(live::view(move || needed.with(|needed| needed_list(needed))))
        .put(live::when(move || lines.with(Vec::is_empty), || el("p").put(key!("ahead-nothing")).done()))
        .put(el("ul").class("ahead").put(live::view(first)))
        .put(folded)
        .done()
}

fn lines(app: App) -> Vec<Line> {
    app.settled_assessment(|assessment| {
        let money = &assessment.money;
        app.desk.plan.with_untracked(|plan| {
            let line = |flow: &Flow| {
                let mark = mark_of(flow).filter(|_| flow.state == FlowState::Planned)?;
                let at = money.days.partition_point(|day| day.on < flow.on);
                Some(Line {
                    on: flow.on,
                    mark,
                    what: what(flow),
                    name: source_name(plan, flow),
                    amount: flow.amount,
                    closing: money.days.get(at)?.closing,
                    item: plan.item(flow.source).map(|item| item.id),
                    payable_from: money.payable_from(plan.purse.floor, assessment.as_of, flow),
                })
            };
            money.flows.iter().filter_map(line).collect()
        })
    })
}

fn what(flow: &Flow) -> Key {
    match flow.group {
        FlowGroup::Sales => key!("ahead-sell"),
        FlowGroup::Kit(_) if flow.amount.is_negative() => key!("ahead-buy"),
        FlowGroup::Vehicle => key!("ahead-pay"),
        FlowGroup::Kit(_) => key!("ahead-return"),
        _ => key!("ahead-comes"),
    }
}

fn row(line: &Line) -> View {
    let name = match line.item {
        Some(id) => el("a").attr("href", format!("#/kit/{id}")).put(line.name.clone()),
        None => el("span").put(line.name.clone()),
    };
    let evening = tell!("ahead-evening", &vec![("closing", Figure::Money(line.closing))]);
    let early = line.payable_from.map(|from| tell!("ahead-early", &vec![("from", Figure::Date(from))]));
    el("li")
        .put(
            el("p")
                .put(line.mark.icon())
                .put(" ")
                .put(el("span").class("when").put(say_date(line.on)))
                .put(" ")
                .put(plain_sentence(line.what))
                .put(" ")
                .put(name)
                .put(" ")
                .put(el("span").class("value").put(say_money(line.amount))),
        )
        .put(el("p").class("side").put(evening).put(early.map(|early| format!(" {early}"))))
        .done()
}

/// How much more must come in by when: the first step, and all of it.
fn needed_list(needed: &[Needed]) -> View {
    let (Some(first), Some(last)) = (needed.first(), needed.last()) else { return nothing() };
    let figures = vec![
        ("first", Figure::Money(first.in_all)),
        ("by", Figure::Date(first.by)),
        ("all", Figure::Money(last.in_all)),
        ("at_last", Figure::Date(last.by)),
    ];
    let key = if needed.len() > 1 { "ahead-needed-more" } else { "ahead-needed" };
    el("p").put(tell(key, &figures)).done()
}
