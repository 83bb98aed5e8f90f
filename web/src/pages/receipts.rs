//! What was paid, receipt by receipt, beside what was planned.

mod import;
mod lines;

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{
    Booking, Explanation, ItemPaid, blank, bookings, expected_prices, newest_first, paid_against_plan, reckon,
    take_out, tax_percents,
};
use kerbstead_core::papers::{Marks, receipts::receipt_table};
use kerbstead_core::plan::{Id, Money, Path, Plan};

use super::section;
use crate::browser;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{number_marks, plain_sentence, say_date, say_money, words};
use crate::parts::{TableRow, button, entry_row, fields, named, table};
use crate::route::Page;
use crate::state::App;

/// The receipts of the plan, the newest first.
type Ledger = Memo<Vec<Booking>>;

/// So many are shown at first, and so many more each time.
const SHOWN: usize = 40;

/// The page.
pub fn receipts() -> View {
    let app = App::here();
    let ledger = live::memo(move || app.plan(|plan| newest_first(&bookings(plan))));
    fragment()
        .put(el("h1").put(key!("page-receipts")))
        .put(el("p").put(key!("receipts-hint")))
        .put(list(ledger))
        .put(live::when(move || ledger.with(|ledger| !ledger.is_empty()), against_plan))
        .put(section(key!("receipts-import"), import::import()))
        .put(section(key!("receipts-export"), export()))
        .put(el("p").put(el("a").attr("href", Page::Money.link()).put(key!("receipts-to-money"))))
        .done()
}

/// Adding one, and all there are. Those whose receipt is not there go by the number 0.
fn list(ledger: Ledger) -> View {
    let app = App::here();
    let shown = Signal::new(SHOWN);
    let opened = Signal::new(None::<Id>);
    let add = move || {
        let (id, edit) = app.plan(|plan| blank(plan, browser::today()));
        opened.set(Some(id));
        app.edit(edit);
        browser::focus_soon(format!("receipts-{id}-total"));
    };
    let ids = live::memo(move || {
        let first = shown.get();
        ledger.with(|ledger| ledger.iter().take(first).map(|it| it.id.unwrap_or(0)).collect::<Vec<Id>>())
    });
    let are_more = move || ledger.with(Vec::len) > shown.get();
    let more = move || button(key!("receipts-older"), move || shown.set(shown.get_untracked() + SHOWN)).done();
    fragment()
        .put(button(key!("receipts-add"), add).class("primary"))
        .put(
            el("ul")
                .class("entries")
                .put(live::rows(ids, move |id| row(ledger, id, opened.get_untracked() == Some(id)))),
        )
        .put(live::when(are_more, more))
        .done()
}

/// A line that opens into the receipt.
fn row(ledger: Ledger, id: Id, starts_open: bool) -> View {
    let booking = live::memo(move || {
        ledger.with(|ledger| ledger.iter().find(|it| it.id.unwrap_or(0) == id).cloned()).unwrap_or_default()
    });
    let app = App::here();
    let line = live::memo(move || booking.with(|booking| (app.plan(|plan| name_of(plan, booking)), value_of(booking))));
    entry_row(id, starts_open, line, Box::new(move || body(booking, id)))
}

/// The place, or what was bought.
fn name_of(plan: &Plan, booking: &Booking) -> String {
    let receipt = &booking.receipt;
    if !receipt.place.is_empty() {
        return receipt.place.clone();
    }
    let first = receipt.lines.first();
    let item = first.and_then(|line| line.item).and_then(|id| plan.item(id)).map(|item| item.name.clone());
    item.or_else(|| first.map(|line| line.name.clone())).filter(|name| !name.is_empty()).map_or_else(
        || plain_sentence(if booking.id.is_some() { key!("receipts-one") } else { key!("receipts-lost-lines") }),
        named,
    )
}

/// What was paid, when, and whether the lines come to it.
fn value_of(booking: &Booking) -> String {
    let receipt = &booking.receipt;
    let mut said = say_money(receipt.paid());
    if let Some(on) = receipt.on {
        said += " · ";
        said += &say_date(on);
    }
    let digits = App::here().desk.plan.with_untracked(Plan::minor_digits);
    let difference = receipt.difference(digits);
    if difference != Money::ZERO {
        said += " · ";
        said += &tell!("receipts-differs", &vec![("difference", Figure::Money(difference.max(-difference)))]);
    }
    said
}

fn body(booking: Memo<Booking>, id: Id) -> View {
    let app = App::here();
    let take = move || {
        let edit = app.plan(|plan| take_out(plan, booking.get_untracked().id));
        app.edit_and_tell(edit, t!("receipts-taken-out"));
    };
    let of_receipt = |names| (id > 0).then(|| fields(&Path::entry("receipts", id), names));
    let early = move || {
        let first = app.assessment(|assessment| assessment.starts_on);
        let is_early = booking.with(|booking| booking.receipt.on.is_some_and(|on| on < first));
        if is_early { tell!("receipts-before", &vec![("first", Figure::Date(first))]) } else { String::new() }
    };
    // What is typed of every receipt comes first, within reach of a thumb.
    fragment()
        .put(of_receipt(&["total"]))
        .put(live::view(move || booking.with(difference)))
        .put(lines::lines(booking, id))
        .put(of_receipt(&["on", "place"]))
        .put(el("p").put(live::text(early)))
        .put(el("div").class("buttons").put(button(key!("receipts-take-out"), take).class("remove")))
        .done()
}

/// That the lines do not come to the total, and what could explain it.
fn difference(booking: &Booking) -> View {
    let (receipt, plan) = (&booking.receipt, App::here().desk.plan);
    let found = plan.with_untracked(|plan| {
        let digits = plan.minor_digits();
        let differs = receipt.difference(digits) != Money::ZERO;
        differs.then(|| reckon(receipt, &expected_prices(plan), &tax_percents(plan), digits))
    });
    let Some(found) = found else { return nothing() };
    let difference = Figure::Money(found.difference.max(-found.difference));
    let figures = vec![("sum", Figure::Money(found.sum)), ("difference", difference)];
    let said = if found.difference.is_negative() {
        tell!("receipts-lines-more", &figures)
    } else {
        tell!("receipts-lines-less", &figures)
    };
    let explanation = |it: &Explanation| {
        let said = words(|words| plan.with_untracked(|plan| words.explanation(it, receipt, plan)));
        el("li").put(said).done()
    };
    el("div")
        .class("warning")
        .put(el("p").put(said))
        .put(el("ul").class("working").put_each(found.explanations.iter().map(explanation)))
        .done()
}

/// For each item what was paid beside what was planned.
fn against_plan() -> View {
    let app = App::here();
    let heads = [key!("receipts-what"), key!("receipts-planned"), key!("receipts-paid"), key!("receipts-beyond")];
    let rows = move || {
        let rows = app.settled_plan(|plan| paid_against_plan(plan).iter().map(|it| paid_row(plan, it)).collect());
        table(t!("receipts-against"), true, &heads, rows)
    };
    section(key!("receipts-against"), live::view(rows))
}

fn paid_row(plan: &Plan, paid: &ItemPaid) -> TableRow {
    let item = paid.item.and_then(|id| plan.item(id)).map(|item| named(item.name.clone()));
    let or_none = |amount: Option<Money>| amount.map_or_else(|| "–".to_owned(), say_money);
    let cells = vec![or_none(paid.planned), say_money(paid.paid), or_none(paid.beyond_plan())];
    TableRow(item.unwrap_or_else(|| t!("flow-receipts")), cells, None)
}

/// All of it as a file.
fn export() -> View {
    let app = App::here();
    let save = move || {
        let all: Vec<_> = app.plan(bookings).into_iter().map(|booking| booking.receipt).collect();
        let marks = Marks { decimal: number_marks().decimal };
        browser::save_file("kerbstead-receipts.csv", &words(|words| receipt_table(&all, words, marks)));
    };
    button(key!("receipts-save"), save).done()
}
