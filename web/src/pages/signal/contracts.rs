//! Contracts, what became of their periods, and the cheapest of them.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use serde_json::json;

use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{say_date, say_measure, say_money};
use crate::parts::{Entries, TableRow, fields, folded_table, named_in};
use crate::state::App;

const FIELDS: &[&str] =
    &["name", "in_use", "allowance_gb", "period_price", "period_days", "beyond", "per_gb", "slow_kbit_s"];

/// All of it.
pub fn contracts(app: App) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(contract) = plan.data_contracts.iter().find(|contract| contract.id == id) else {
            return Default::default();
        };
        let gb = |gb| say_measure(gb, Quantity::DataGb);
        let included = contract.allowance_gb.map_or_else(|| t!("signal-unlimited"), gb);
        let state = if contract.in_use { t!("signal-in-use") } else { t!("signal-not-in-use") };
        (contract.name.clone(), [included, state].join(", "))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("data_contracts", id), FIELDS)
    }
    let list = Entries {
        list: List::DataContracts,
        line,
        body,
        fresh: || json!({ "in_use": true }),
        add: key!("signal-add-contract"),
    };
    fragment()
        .put(el("p").put(key!("signal-contracts-hint")))
        .put(list.show())
        .put(el("p").put(live::text(move || cheapest(app).unwrap_or_default())))
        .put(live::view(move || periods(app)))
        .done()
}

/// The cheapest contracts for the month in which most is used.
fn cheapest(app: App) -> Option<String> {
    app.assessment(|assessment| {
        let cheapest = assessment.signal.cheapest.as_ref()?;
        let names = app.plan(|plan| cheapest.contracts.iter().map(|id| named_in(plan, *id)).collect::<Vec<_>>());
        let mut figures = vec![("names", Figure::Name(names.join(", "))), ("price", Figure::Money(cheapest.price))];
        Some(match cheapest.in_use {
            Some(in_use) if !names.is_empty() => {
                figures.push(("now", Figure::Money(in_use)));
                tell!("signal-cheapest-beside", &figures)
            }
            None if !names.is_empty() => tell!("signal-cheapest", &figures),
            _ => return None,
        })
    })
}

fn periods(app: App) -> View {
    let rows = app.assessment(|assessment| {
        let gb = |gb: f64| say_measure(gb, Quantity::DataGb);
        let periods = assessment.signal.periods.iter();
        let row = |period: &kerbstead_core::signal::Period| {
            let cells = vec![
                say_date(period.from),
                gb(period.used_gb),
                period.allowance_gb.map_or_else(|| t!("signal-unlimited"), gb),
                say_money(period.price),
            ];
            TableRow(app.plan(|plan| named_in(plan, period.contract)), cells, None)
        };
        periods.map(row).collect::<Vec<_>>()
    });
    let heads = [
        key!("signal-period-contract"),
        key!("signal-period-from"),
        key!("signal-period-used"),
        key!("field-allowance-gb"),
        key!("field-period-price"),
    ];
    folded_table(t!("signal-periods"), &heads, rows)
}
