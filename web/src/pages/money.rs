//! Cash by day, and everything that moves it apart from the kit.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Flow, FlowGroup, FlowState, GroupTotal, answer};
use kerbstead_core::plan::{Estimate, Group, Id, List, Money, Path, Plan};
use leptos::prelude::*;
use serde_json::json;

use super::{balance_head, section};
use crate::live;
use crate::locale::{t, tell, words};
use crate::parts::{Entries, PlotData, fields};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn money() -> AnyView {
    view! {
        {balance_head(Balance::Money)}
        {plot()}
        {unanswered()}
        {section("money-purse", fields(&Path::section("purse"), PURSE))}
        {section("money-belongings", belongings())}
        {section("money-incomes", incomes())}
        {section("money-costs", costs())}
        {section("money-groups", groups())}
        {section("money-readings", readings())}
        <p><a href=Page::Kit.link()>{t("money-to-kit")}</a></p>
    }
    .into_any()
}

const PURSE: &[&str] = &["opening_cash", "floor", "tax_percent", "prices_include_tax"];

fn plot() -> AnyView {
    let app = App::here();
    let data = live::memo(move || {
        let floor = app.plan(|plan| plan.purse.floor.to_plot());
        app.assessment(|assessment| PlotData {
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
    });
    live::view(move || crate::parts::plot(data.get()))
}

/// What lies before today and nobody answered yet.
fn unanswered() -> AnyView {
    let app = App::here();
    let flows = live::memo(move || {
        app.assessment(|assessment| {
            let open = assessment.money.flows.iter().filter(|flow| flow.state == FlowState::Unanswered);
            open.cloned().collect::<Vec<_>>()
        })
    });
    let questions = move || flows.get().iter().map(question).collect::<Vec<_>>().into_any();
    live::when(
        move || !flows.get().is_empty(),
        move || {
            view! {
                <section class="unanswered" aria-label=t("money-unanswered")>
                    <h2>{t("money-unanswered")}</h2>
                    <ul>{live::view(questions)}</ul>
                </section>
            }
            .into_any()
        },
    )
}

fn question(flow: &Flow) -> AnyView {
    let app = App::here();
    let name = app.plan(|plan| source_name(plan, flow));
    let text = words(|words| {
        format!("{}: {} {}", words.figure(&Figure::Date(flow.on)), name, words.figure(&Figure::Money(flow.amount)))
    });
    let button = |happened: bool, key: &'static str| {
        let edit = app.plan(|plan| answer(plan, flow, happened));
        edit.map(|edit| {
            let act = move || app.edit(edit.clone());
            view! { <button type="button" on:click=live::tap(act)>{t(key)}</button> }.into_any()
        })
    };
    view! { <li><p>{text}</p> {button(true, "answer-yes")} {button(false, "answer-no")}</li> }.into_any()
}

fn source_name(plan: &Plan, flow: &Flow) -> String {
    let id = flow.source;
    let item = || plan.item(id).map(|item| item.name.clone());
    let belonging = || plan.belongings.iter().find(|entry| entry.id == id).map(|entry| entry.name.clone());
    let income = || plan.incomes.iter().find(|entry| entry.id == id).map(|entry| entry.name.clone());
    item().or_else(belonging).or_else(income).unwrap_or_default()
}

fn money_text(amount: Option<Estimate<Money>>) -> String {
    amount.map_or_else(|| t("no-amount"), |amount| words(|words| words.figure(&Figure::Money(amount.likely()))))
}

fn date_text(date: Option<jiff::civil::Date>) -> String {
    date.map_or_else(String::new, |date| words(|words| words.figure(&Figure::Date(date))))
}

fn belongings() -> AnyView {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.belongings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            (entry.name.clone(), format!("{} {}", money_text(entry.price), date_text(entry.on)))
        })
    }
    fn body(id: Id) -> AnyView {
        let names = &["name", "price", "on", "outcome/happened", "outcome/on", "outcome/amount"];
        fields(&Path::entry("belongings", id), names)
    }
    Entries { list: List::Belongings, line, body, fresh: || json!({}), add: "belongings-add" }.show()
}

fn incomes() -> AnyView {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.incomes.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            (entry.name.clone(), format!("{} {}", money_text(entry.amount), date_text(entry.on)))
        })
    }
    fn body(id: Id) -> AnyView {
        let names = &["name", "amount", "on", "repeat", "until", "received_until"];
        fields(&Path::entry("incomes", id), names)
    }
    Entries { list: List::Incomes, line, body, fresh: || json!({}), add: "incomes-add" }.show()
}

fn costs() -> AnyView {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.costs.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| (entry.name.clone(), money_text(entry.amount)))
    }
    fn body(id: Id) -> AnyView {
        let names = &["name", "amount", "day_of_month", "phase"];
        fields(&Path::entry("costs", id), names)
    }
    Entries { list: List::Costs, line, body, fresh: || json!({}), add: "costs-add" }.show()
}

fn readings() -> AnyView {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.readings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            let cash = entry.cash.map_or_else(String::new, |cash| money_text(Some(cash.into())));
            (date_text(entry.on), cash)
        })
    }
    fn body(id: Id) -> AnyView {
        let names = &["on", "hour", "cash", "charge_percent", "store", "fresh_l", "grey_l"];
        fields(&Path::entry("readings", id), names)
    }
    fn fresh() -> serde_json::Value {
        json!({ "on": kerbstead_core::plan::date_text(crate::browser::today()), "hour": 8 })
    }
    view! {
        <p>{t("money-readings-hint")}</p>
        {Entries { list: List::Readings, line, body, fresh, add: "readings-add" }.show()}
    }
    .into_any()
}

fn groups() -> AnyView {
    let app = App::here();
    let totals = live::memo(move || app.assessment(|assessment| assessment.money.groups.clone()));
    let still = move || {
        let amount = app.assessment(|assessment| assessment.money.still_to_pay);
        tell("groups-still-to-pay", &vec![("amount", Figure::Money(amount))])
    };
    let amount = |amount: Money| words(|words| words.figure(&Figure::Money(amount)));
    let row = move |total: &GroupTotal| {
        view! {
            <tr>
                <th scope="row">{group_name(total.group)}</th>
                <td>{amount(total.foreseen)}</td>
                <td>{amount(total.settled)}</td>
                <td>{amount(total.open)}</td>
            </tr>
        }
        .into_any()
    };
    view! {
        <div class="scroll" tabindex="0" role="group" aria-label=t("money-groups")>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{t("groups-group")}</th>
                        <th scope="col">{t("groups-foreseen")}</th>
                        <th scope="col">{t("groups-settled")}</th>
                        <th scope="col">{t("groups-open")}</th>
                    </tr>
                </thead>
                <tbody>{live::view(move || totals.get().iter().map(row).collect::<Vec<_>>().into_any())}</tbody>
            </table>
        </div>
        <p>{live::text(still)}</p>
    }
    .into_any()
}

fn group_name(group: FlowGroup) -> String {
    t(match group {
        FlowGroup::Sales => "flow-sales",
        FlowGroup::Income => "flow-income",
        FlowGroup::Costs => "flow-costs",
        FlowGroup::Nights => "flow-nights",
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
