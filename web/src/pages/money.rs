//! Cash by day, and everything that moves it apart from the kit.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Flow, FlowGroup, FlowState, GroupTotal, answer};
use kerbstead_core::plan::{Estimate, Group, Id, List, Money, Path, Plan};
use serde_json::json;

use super::{balance_head, section};
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{t, words};
use crate::parts::{Entries, PlotData, fields};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn money() -> View {
    fragment()
        .put(balance_head(Balance::Money))
        .put(plot())
        .put(unanswered())
        .put(section(key!("money-purse"), fields(&Path::section("purse"), PURSE)))
        .put(section(key!("money-belongings"), belongings()))
        .put(section(key!("money-incomes"), incomes()))
        .put(section(key!("money-costs"), costs()))
        .put(section(key!("money-groups"), groups()))
        .put(section(key!("money-readings"), readings()))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(key!("money-to-kit"))))
        .done()
}

const PURSE: &[&str] = &["opening_cash", "floor", "tax_percent", "prices_include_tax"];

fn plot() -> View {
    let app = App::here();
    let data = live::memo(move || {
        let floor = app.desk.plan.with_untracked(|plan| plan.purse.floor.to_plot());
        app.settled_assessment(|assessment| {
            Some(PlotData {
                title: "money-plot",
                from: assessment.starts_on,
                values: assessment.money.days.iter().map(|day| day.closing.to_plot()).collect(),
                per_day: 1,
                quantity: None,
                floor,
                ceiling: None,
                low_matters: true,
                today: assessment.as_of,
            })
        })
    });
    crate::parts::plot(data)
}

/// What lies before today and nobody answered yet.
fn unanswered() -> View {
    let app = App::here();
    let flows = live::memo(move || {
        app.assessment(|assessment| {
            let open = assessment.money.flows.iter().filter(|flow| flow.state == FlowState::Unanswered);
            open.cloned().collect::<Vec<_>>()
        })
    });
    let questions = move || all(flows.get().iter().enumerate().map(|(at, flow)| question(at, flow)));
    live::when(
        move || !flows.get().is_empty(),
        move || {
            el("section")
                .class("unanswered")
                .attr("aria-label", t!("money-unanswered"))
                .put(el("h2").put(key!("money-unanswered")))
                .put(el("ul").put(live::view(questions)))
                .done()
        },
    )
}

fn question(at: usize, flow: &Flow) -> View {
    let app = App::here();
    let name = app.plan(|plan| source_name(plan, flow));
    let text = words(|words| {
        format!("{}: {} {}", words.figure(&Figure::Date(flow.on)), name, words.figure(&Figure::Money(flow.amount)))
    });
    let button = |happened: bool, key: &'static str| {
        let edit = app.plan(|plan| answer(plan, flow, happened));
        edit.map(|edit| {
            let act = move || app.edit(edit.clone());
            // The id is of the place, so that the next question has the focus when this one is answered.
            el("button").attr("type", "button").attr("id", format!("{key}-{at}")).on_click(act).put(t(key)).done()
        })
    };
    el("li").put(el("p").put(text)).put(button(true, "answer-yes")).put(button(false, "answer-no")).done()
}

fn source_name(plan: &Plan, flow: &Flow) -> String {
    let id = flow.source;
    let item = || plan.item(id).map(|item| item.name.clone());
    let belonging = || plan.belongings.iter().find(|entry| entry.id == id).map(|entry| entry.name.clone());
    let income = || plan.incomes.iter().find(|entry| entry.id == id).map(|entry| entry.name.clone());
    let loan = || plan.loans.iter().find(|entry| entry.id == id).map(|entry| entry.name.clone());
    item().or_else(belonging).or_else(income).or_else(loan).unwrap_or_else(|| group_name(flow.group))
}

fn money_text(amount: Option<Estimate<Money>>) -> String {
    amount.map_or_else(|| t!("no-amount"), |amount| words(|words| words.figure(&Figure::Money(amount.likely()))))
}

fn date_text(date: Option<jiff::civil::Date>) -> String {
    date.map_or_else(String::new, |date| words(|words| words.figure(&Figure::Date(date))))
}

fn belongings() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.belongings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            (entry.name.clone(), format!("{} {}", money_text(entry.price), date_text(entry.on)))
        })
    }
    fn body(id: Id) -> View {
        let names = &["name", "price", "on", "outcome/happened", "outcome/on", "outcome/amount"];
        fields(&Path::entry("belongings", id), names)
    }
    Entries { list: List::Belongings, line, body, fresh: || json!({}), add: key!("belongings-add") }.show()
}

fn incomes() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.incomes.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            (entry.name.clone(), format!("{} {}", money_text(entry.amount), date_text(entry.on)))
        })
    }
    fn body(id: Id) -> View {
        let names = &["name", "amount", "on", "repeat", "until", "received_until"];
        fields(&Path::entry("incomes", id), names)
    }
    Entries { list: List::Incomes, line, body, fresh: || json!({}), add: key!("incomes-add") }.show()
}

fn costs() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.costs.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| (entry.name.clone(), money_text(entry.amount)))
    }
    fn body(id: Id) -> View {
        let names = &["name", "amount", "day_of_month", "phase"];
        fields(&Path::entry("costs", id), names)
    }
    Entries { list: List::Costs, line, body, fresh: || json!({}), add: key!("costs-add") }.show()
}

fn readings() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.readings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            let cash = entry.cash.map_or_else(String::new, |cash| money_text(Some(cash.into())));
            (date_text(entry.on), cash)
        })
    }
    fn body(id: Id) -> View {
        let names = &["on", "hour", "cash", "charge_percent", "store", "fresh_l", "grey_l"];
        fields(&Path::entry("readings", id), names)
    }
    fn fresh() -> serde_json::Value {
        json!({ "on": kerbstead_core::plan::date_text(crate::browser::today()), "hour": 8 })
    }
    fragment()
        .put(el("p").put(key!("money-readings-hint")))
        .put(Entries { list: List::Readings, line, body, fresh, add: key!("readings-add") }.show())
        .done()
}

fn groups() -> View {
    let app = App::here();
    let totals = live::memo(move || app.settled_assessment(|assessment| assessment.money.groups.clone()));
    let still = move || {
        let amount = app.assessment(|assessment| assessment.money.still_to_pay);
        tell!("groups-still-to-pay", &vec![("amount", Figure::Money(amount))])
    };
    let amount = |amount: Money| words(|words| words.figure(&Figure::Money(amount)));
    let row = move |total: &GroupTotal| {
        el("tr")
            .put(el("th").attr("scope", "row").put(group_name(total.group)))
            .put(el("td").put(amount(total.foreseen)))
            .put(el("td").put(amount(total.settled)))
            .put(el("td").put(amount(total.open)))
            .done()
    };
    fragment()
        .put(
            el("div")
                .class("scroll whole")
                .attr("tabindex", "0")
                .attr("role", "group")
                .attr("aria-label", t!("money-groups"))
                .put(
                    el("table")
                        .put(
                            el("thead").put(
                                el("tr")
                                    .put(el("th").attr("scope", "col").put(key!("groups-group")))
                                    .put(el("th").attr("scope", "col").put(key!("groups-foreseen")))
                                    .put(el("th").attr("scope", "col").put(key!("groups-settled")))
                                    .put(el("th").attr("scope", "col").put(key!("groups-open"))),
                            ),
                        )
                        .put(el("tbody").put(live::view(move || all(totals.get().iter().map(row))))),
                ),
        )
        .put(el("p").put(live::text(still)))
        .done()
}

fn group_name(group: FlowGroup) -> String {
    t(match group {
        FlowGroup::Sales => "flow-sales",
        FlowGroup::Income => "flow-income",
        FlowGroup::Costs => "flow-costs",
        FlowGroup::Nights => "flow-nights",
        FlowGroup::Vehicle => "flow-vehicle",
        FlowGroup::Loans => "flow-loans",
        FlowGroup::Fuel => "flow-fuel",
        FlowGroup::Kit(group) => group_key(group),
    })
}

/// The name of a heading of the kit in the catalogue.
pub const fn group_key(group: Group) -> &'static str {
    match group {
        Group::Sleeping => "choice-group-sleeping",
        Group::Kitchen => "choice-group-kitchen",
        Group::Power => "choice-group-power",
        Group::Water => "choice-group-water",
        Group::Hygiene => "choice-group-hygiene",
        Group::Structure => "choice-group-structure",
        Group::Warmth => "choice-group-warmth",
        Group::Work => "choice-group-work",
        Group::Clothing => "choice-group-clothing",
        Group::Safety => "choice-group-safety",
        Group::Tools => "choice-group-tools",
        Group::Vehicle => "choice-group-vehicle",
        Group::Other => "choice-group-other",
    }
}
