//! A month on the road beside one at home, line by line.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Month, MonthLine};
use kerbstead_core::plan::Quantity;

use super::super::section;
use super::names::group_name;
use crate::el::{View, el, fragment, nothing};
use crate::live;
use crate::locale::say_money;
use crate::parts::{TableRow, folded_working, table};
use crate::state::App;

/// The comparison; nothing without a route.
pub fn month() -> View {
    let app = App::here();
    let month = live::memo(move || app.settled_assessment(|assessment| assessment.money.month.clone()));
    let working =
        live::memo(move || month.with(|month| month.as_ref().map_or_else(Vec::new, |month| month.working.clone())));
    let draw = move || month.with(|month| month.as_ref().map_or_else(nothing, |month| comparison(app, month)));
    let content = move || fragment().put(live::view(draw)).put(folded_working(working)).done();
    live::when(move || month.with(Option::is_some), move || section(key!("money-month"), content()))
}

fn comparison(app: App, month: &Month) -> View {
    let name = |line: &MonthLine| {
        let named = app.desk.plan.with_untracked(|plan| plan.name_of(line.source).map(str::to_owned));
        named.unwrap_or_else(|| group_name(line.group))
    };
    let row = |line: &MonthLine| TableRow(name(line), vec![say_money(line.home), say_money(line.road)], None);
    let mut rows: Vec<TableRow> = month.lines.iter().map(row).collect();
    rows.push(TableRow(t!("month-in-all"), vec![say_money(month.home), say_money(month.road)], Some("sum")));
    let heads = [key!("month-line"), key!("month-home"), key!("month-road")];
    let pays_back = match (month.days_to_pay_back, month.paid_back_on) {
        (Some(days), Some(on)) => tell!(
            "month-pays-back",
            &vec![
                ("put_in", Figure::Money(month.put_in)),
                ("days", Figure::of(f64::from(days), Quantity::Days)),
                ("on", Figure::Date(on)),
            ]
        ),
        _ => tell!("month-never-pays-back", &vec![("put_in", Figure::Money(month.put_in))]),
    };
    let freedom = month.months_of_freedom.map(|months| {
        let left = Figure::Money(month.saved_in_all);
        el("p")
            .put(tell!("month-freedom", &vec![("left", left), ("months", Figure::of(months, Quantity::Months))]))
            .done()
    });
    fragment().put(table(t!("money-month"), true, &heads, rows)).put(el("p").put(pays_back)).put(freedom).done()
}
