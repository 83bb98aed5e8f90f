//! What was foreseen, has happened and is still to come, by group.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::GroupTotal;

use super::names::group_name;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::say_money;
use crate::parts::{TableRow, table};
use crate::state::App;

/// The table.
pub fn groups() -> View {
    let app = App::here();
    let totals = live::memo(move || app.settled_assessment(|assessment| assessment.money.groups.clone()));
    let still = move || {
        let amount = app.assessment(|assessment| assessment.money.still_to_pay);
        tell!("groups-still-to-pay", &vec![("amount", Figure::Money(amount))])
    };
    let row = |total: &GroupTotal| {
        let amounts = [total.foreseen, total.settled, total.open];
        TableRow(group_name(total.group), amounts.into_iter().map(say_money).collect(), None)
    };
    let heads = [key!("groups-group"), key!("groups-foreseen"), key!("groups-settled"), key!("groups-open")];
    let rows = move || totals.with(|totals| totals.iter().map(row).collect());
    fragment()
        .put(live::view(move || table(t!("money-groups"), true, &heads, rows())))
        .put(el("p").put(live::text(still)))
        .done()
}
