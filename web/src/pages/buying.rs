//! What to buy when, so that cash stays above the floor, and what would have to come for the rest.

use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::money::buying::{BuyingLine, BuyingPlan, Lack, Proof};
use kerbstead_core::plan::{Money, Need, Plain, Plan};
use kerbstead_core::task::Subject;

use super::money::{refused, waiting};
use super::section;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::locale::plain_sentence;
use crate::parts::button;
use crate::route::Page;
use crate::state::App;
use crate::worker::ask_and_follow;

/// The page.
pub fn buying() -> View {
    let app = App::here();
    let asked = ask_and_follow(app, Subject::Buying);
    let order = live::memo(move || asked.answer.with(|answer| BuyingPlan::from_plain(answer.as_ref()?)));
    let told = move || order.with(|order| order.as_ref().map_or_else(nothing, |order| told(app, order)));
    fragment()
        .put(el("h1").put(key!("page-buying")))
        .put(el("p").put(key!("buying-intro")))
        .put(waiting(asked))
        .put(live::view(told))
        .put(taking(app, order))
        .put(el("p").put(el("a").attr("href", Page::Money.link()).put(key!("buying-to-money"))))
        .done()
}

fn told(app: App, order: &BuyingPlan) -> View {
    if let Some(why) = order.refused {
        return refused(why);
    }
    let floor = order.floor_lack.map(|lack| el("p").put(tell!("buying-floor-lack", &of_lack(&lack))).done());
    let finished = order.finished_on.filter(|_| order.lack.is_none());
    let finished = finished.map(|on| el("p").put(tell!("buying-finished", &vec![("on", Figure::Date(on))])).done());
    let (paid, unpaid): (Vec<_>, Vec<_>) = order.lines.iter().partition(|line| line.on.is_some());
    let paid = (!paid.is_empty()).then(|| {
        let rows = app.settled_plan(|plan| paid.iter().map(|line| row(plan, line)).collect::<Vec<_>>());
        section(key!("buying-order"), el("ol").class("buying").put_each(rows).done())
    });
    let unpaid = (!unpaid.is_empty()).then(|| {
        let rows = app.settled_plan(|plan| unpaid.iter().map(|line| unpaid_row(plan, line)).collect::<Vec<_>>());
        let together = order.lack.filter(|_| unpaid.len() > 1);
        let together = together.map(|lack| el("p").put(tell!("buying-all-lack", &of_lack(&lack))).done());
        let list = el("ul").class("buying").put_each(rows);
        section(key!("buying-unpaid"), fragment().put(list).put(together).done())
    });
    let proof = el("p").put(match order.proof {
        Proof::Proven => key!("buying-proven"),
        Proof::FinishProven => key!("buying-finish-proven"),
        Proof::RuleOfThumb => key!("buying-rule-of-thumb"),
    });
    fragment().put(floor).put(finished).put(paid).put(unpaid).put(section(key!("buying-sure"), proof.done())).done()
}

/// A thing and its day.
fn row(plan: &Plan, line: &BuyingLine) -> View {
    let figures = figures(plan, line);
    let was = line.on.filter(|on| *on != line.planned_on).map(|_| tell!("buying-instead", &figures));
    el("li")
        .put(el("strong").put(tell!("buying-line", &figures)))
        .put(el("span").put(tell!("buying-needed", &figures)))
        .put(was.map(|was| el("span").put(was).done()))
        .done()
}

/// A thing that cannot be paid, and what would pay for it.
fn unpaid_row(plan: &Plan, line: &BuyingLine) -> View {
    let mut help = Vec::new();
    if let Some(lack) = &line.lack {
        let mut figures = of_lack(lack);
        figures.push(("sale", Figure::Name(lack.sale.and_then(|id| plan.name_of(id)).unwrap_or_default().to_owned())));
        help.push(tell!("buying-lack", &figures));
        help.extend(lack.sale.map(|_| tell!("buying-lack-sale", &figures)));
        help.extend(lack.a_week.map(|_| tell!("buying-lack-week", &figures)));
    }
    let figures = figures(plan, line);
    el("li")
        .put(el("strong").put(tell!("buying-unpaid-line", &figures)))
        .put(el("span").put(tell!("buying-needed", &figures)))
        .put_each(help.into_iter().map(|help| el("span").put(help)))
        .done()
}

fn figures(plan: &Plan, line: &BuyingLine) -> Figures {
    let need = plain_sentence(match line.need {
        Need::Must => key!("choice-need-must"),
        Need::Want => key!("choice-need-want"),
        Need::Experiment => key!("choice-need-experiment"),
    });
    let mut figures = vec![
        ("name", Figure::Name(plan.name_of(line.item).unwrap_or_default().to_owned())),
        ("amount", Figure::Money(line.amount)),
        ("need", Figure::Name(need)),
        ("needed", Figure::Date(line.needed_on)),
        ("planned", Figure::Date(line.planned_on)),
    ];
    figures.extend(line.on.map(|on| ("on", Figure::Date(on))));
    figures
}

fn of_lack(lack: &Lack) -> Figures {
    vec![
        ("missing", Figure::Money(lack.amount)),
        ("by", Figure::Date(lack.by)),
        ("brings", Figure::Money(lack.sale_brings)),
        ("week", Figure::Money(lack.a_week.unwrap_or(Money::ZERO))),
    ]
}

/// The button that takes the days into the plan.
fn taking(app: App, order: Memo<Option<BuyingPlan>>) -> View {
    let count = move || order.with(|order| order.as_ref().map_or(0, BuyingPlan::changes));
    let take = move || {
        let taking = order.with(|order| order.as_ref().and_then(BuyingPlan::taking));
        let text = tell!("buying-taken", &vec![("count", Figure::count(count()))]);
        if let Some(edit) = taking {
            app.edit_and_tell(edit, text);
        }
    };
    let is_there = move || order.with(|order| order.as_ref().is_some_and(|order| order.refused.is_none()));
    live::when(is_there, move || {
        let as_planned = live::when(move || count() == 0, || el("p").put(key!("buying-as-planned")).done());
        let button = button(key!("buying-take"), take).class("primary").live_flag("disabled", move || count() == 0);
        all([el("p").put(button).done(), as_planned])
    })
}
