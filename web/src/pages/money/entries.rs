//! What comes in and what goes out apart from the kit, and what was counted.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{
    COST_STARTERS, CostStarter, Edit, Estimate, Id, List, Money, Path, Plain, Plan, starter_cost,
};
use serde_json::json;

use super::super::{section, standing, verdict_line};
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{say_date, say_money, t};
use crate::parts::{Entries, fields, optional};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn in_and_out() -> View {
    let app = App::here();
    fragment()
        .put(el("h1").put(key!("page-in-and-out")))
        .put(verdict_line(live::memo(move || standing(app, Balance::Money))))
        .put(section(key!("money-purse"), fields(&Path::section("purse"), PURSE)))
        .put(section(key!("money-belongings"), belongings()))
        .put(section(key!("money-incomes"), incomes()))
        .put(section(key!("money-costs"), costs()))
        .put(section(key!("money-van"), van()))
        .put(section(key!("money-loans"), loans()))
        .put(section(key!("money-going-home"), fields(&Path::section("purse"), ROOM)))
        .put(section(key!("money-readings"), readings()))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(key!("money-to-kit"))))
        .put(el("p").put(el("a").attr("href", Page::Money.link()).put(key!("money-back"))))
        .done()
}

const PURSE: &[&str] = &["opening_cash", "floor", "tax_percent", "prices_include_tax"];
const ROOM: &[&str] = &["room_deposit", "room_rent"];
const BOUGHT: &[&str] = &[
    "agreed_price",
    "pay_on",
    "deposit",
    "deposit_on",
    "part_exchange",
    "seller_fees",
    "registration",
    "registration_on",
];
const PAID: &[&str] = &["paid/happened", "paid/on", "paid/amount"];
const VEHICLE: &[&str] = &["resale", "resale_falls", "fuel_l_per_100_km", "fuel_price_per_l"];

/// The van: what is paid for it, what it would bring again, what it burns.
fn van() -> View {
    fragment()
        .put(fields(&Path::section("purchase"), BOUGHT))
        .put(optional(&Path::section("purchase"), "paid", [PAID, &[]], "part-paid"))
        .put(fields(&Path::section("vehicle"), VEHICLE))
        .done()
}

fn loans() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.loans.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| (entry.name.clone(), money_text(entry.amount.map(Estimate::from))))
    }
    fn body(id: Id) -> View {
        let names = &[
            "name",
            "amount",
            "yearly_percent",
            "months",
            "fees",
            "drawn_on",
            "drawn",
            "first_payment_on",
            "paid_off_on",
        ];
        fields(&Path::entry("loans", id), names)
    }
    Entries { list: List::Loans, line, body, fresh: || json!({}), add: key!("loans-add") }.show()
}

fn money_text(amount: Option<Estimate<Money>>) -> String {
    amount.map_or_else(|| t!("no-amount"), |amount| say_money(amount.likely()))
}

fn date_text(date: Option<jiff::civil::Date>) -> String {
    date.map_or_else(String::new, say_date)
}

fn belongings() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let entry = plan.belongings.iter().find(|entry| entry.id == id);
        entry.map_or_else(Default::default, |entry| {
            (entry.name.clone(), format!("{} {}", money_text(entry.price), date_text(entry.on)))
        })
    }
    fn body(id: Id) -> View {
        let names = &[
            "name",
            "price",
            "lowest",
            "selling_cost",
            "listed_on",
            "on",
            "chance_percent",
            "outcome/happened",
            "outcome/on",
            "outcome/amount",
        ];
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
        let names = &["name", "amount", "every", "day_of_month", "phase", "first_on", "last_on"];
        fields(&Path::entry("costs", id), names)
    }
    fragment()
        .put(Entries { list: List::Costs, line, body, fresh: || json!({}), add: key!("costs-add") }.show())
        .put(
            el("details")
                .class("starters")
                .put(el("summary").put(key!("costs-starters")))
                .put(el("ul").class("starter-list").put_each(COST_STARTERS.iter().map(usual_cost))),
        )
        .done()
}

/// A button that adds a usual cost, with its amount as a guess.
fn usual_cost(starter: &'static CostStarter) -> View {
    let app = App::here();
    let add = move || {
        let name = t(starter.name_key);
        let (id, currency) = app.plan(|plan| (plan.next_id(), plan.currency.clone()));
        let (cost, paths) = starter_cost(starter, id, name.clone(), &currency);
        let insert = Edit::Insert { list: List::Costs, at: usize::MAX, entry: cost.to_plain() };
        let edit = Edit::All { edits: vec![insert, Edit::Guess { paths, guessed: true }] };
        app.edit_and_tell(edit, tell!("costs-added", &vec![("name", Figure::Name(name))]));
    };
    el("li").put(el("button").attr("type", "button").on_click(add).put(t(starter.name_key))).done()
}

fn readings() -> View {
    let link = el("a").attr("href", Page::Log.link()).put(key!("page-log"));
    fragment().put(el("p").put(key!("money-readings-hint"))).put(el("p").put(link)).done()
}
