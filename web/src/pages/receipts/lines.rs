//! The lines of a receipt: each chosen from the kit, or for nothing in it.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Booking, blank_line};
use kerbstead_core::plan::{Edit, Id, List, Money, Path};

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live::{self, Memo};
use crate::parts::{button, fields};
use crate::state::App;

/// The lines, and a button for one more.
pub fn lines(booking: Memo<Booking>, receipt: Id) -> View {
    let app = App::here();
    let ids = live::memo(move || booking.with(|booking| booking.lines.clone()));
    let add = move || {
        let (id, edit) = app.plan(|plan| blank_line(plan, receipt));
        app.edit(edit);
        browser::focus_soon(format!("receipt_lines-{id}-item"));
    };
    let more = (receipt > 0).then(|| button(key!("receipts-add-line"), add).class("add").done());
    fragment().put(el("ul").put(live::rows(ids, move |id| line(booking, id)))).put(more).done()
}

fn line(booking: Memo<Booking>, id: Id) -> View {
    let app = App::here();
    let path = Path::entry("receipt_lines", id);
    let is_for_item = {
        let item = path.child("item");
        move || app.plan(|plan| !plan.value(&item).is_null())
    };
    let rest = {
        let amount = path.child("amount");
        move || {
            let is_open = app.plan(|plan| plan.value(&amount).is_null());
            let rest = is_open.then(|| booking.with(|booking| amount_of(booking, id)));
            rest.filter(|rest| *rest != Money::ZERO)
                .map_or_else(String::new, |rest| tell!("receipts-rest", &vec![("amount", Figure::Money(rest))]))
        }
    };
    let more_follows = path.clone();
    let take = move || {
        let edit = Edit::Remove { list: List::ReceiptLines, id };
        app.edit_and_tell(edit, t!("receipts-line-taken-out"));
    };
    el("li")
        .put(
            el("fieldset")
                .put(el("legend").put(key!("receipts-line")))
                .put(fields(&path, &["item", "amount", "name"]))
                .put(el("output").class("outcome").put(live::text(rest)))
                .put(live::when(is_for_item, move || fields(&more_follows, &["more_follows"])))
                .put(button(key!("receipts-take-out-line"), take).class("quiet")),
        )
        .done()
}

fn amount_of(booking: &Booking, id: Id) -> Money {
    let at = booking.lines.iter().position(|line| *line == id);
    at.and_then(|at| booking.receipt.lines.get(at)).map_or(Money::ZERO, |line| line.amount)
}
