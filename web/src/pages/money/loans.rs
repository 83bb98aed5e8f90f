//! What each loan comes to, and what is owed beside what the van would bring.

use kerbstead_core::explain::{Figure, Working};
use kerbstead_core::money::{Instalment, LoanReport, OwedDay};
use kerbstead_core::plan::{Money, Quantity};
use kerbstead_core::words::Key;

use super::super::section;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{plain_sentence, say_date, say_money};
use crate::parts::{TableRow, folded_working, named_in, table};
use crate::state::App;

/// The loans; nothing where there are none.
pub fn loans() -> View {
    let app = App::here();
    let loans = live::memo(move || app.settled_assessment(|assessment| assessment.money.loans.clone()));
    let working = live::memo(move || {
        loans.with(|loans| loans.iter().flat_map(|loan| loan.working.clone()).collect::<Vec<Working>>())
    });
    let owed = live::memo(move || app.settled_assessment(|assessment| assessment.money.owed.clone()));
    let content = move || {
        fragment()
            .put(live::view(move || loans.with(|loans| all(loans.iter().map(|loan| head(app, loan))))))
            .put(folded(
                key!("loans-schedule"),
                PAYMENTS,
                live::memo(move || loans.with(|loans| instalments(app, loans))),
            ))
            .put(folded(key!("loans-owed"), OWED, live::memo(move || owed.with(|owed| owed_rows(owed)))))
            .put(folded_working(working))
            .done()
    };
    live::when(move || loans.with(|loans| !loans.is_empty()), move || section(key!("money-loans"), content()))
}

fn name(app: App, loan: &LoanReport) -> String {
    app.desk.plan.with_untracked(|plan| named_in(plan, loan.loan))
}

fn head(app: App, loan: &LoanReport) -> View {
    let figures = vec![
        ("payment", Figure::Money(loan.payment)),
        ("on", Figure::Date(loan.ends_on)),
        ("interest", Figure::Money(loan.interest)),
        ("saved", Figure::Money(loan.interest_saved)),
        ("percent", Figure::of(loan.yearly_cost_percent.unwrap_or_default(), Quantity::Percent)),
    ];
    let cost = loan.yearly_cost_percent.map(|_| format!(" {}", tell!("loans-yearly", &figures)));
    let saved = (loan.interest_saved != Money::ZERO).then(|| format!(" {}", tell!("loans-saved", &figures)));
    fragment()
        .put(el("h3").put(name(app, loan)))
        .put(el("p").put(tell!("loans-line", &figures)).put(cost).put(saved))
        .done()
}

/// The rows of a table: a head and its cells.
type Rows = Vec<(String, Vec<String>)>;

fn instalments(app: App, loans: &[LoanReport]) -> Rows {
    let row = |payment: &Instalment| {
        let amounts = [payment.payment, payment.interest, payment.principal, payment.balance];
        (say_date(payment.on), amounts.into_iter().map(say_money).collect())
    };
    let several = loans.len() > 1;
    let of = |loan: &LoanReport| {
        let title = several.then(|| (name(app, loan), Vec::new()));
        title.into_iter().chain(loan.payments.iter().map(row)).collect::<Rows>()
    };
    loans.iter().flat_map(of).collect()
}

fn owed_rows(owed: &[OwedDay]) -> Rows {
    owed.iter().map(|day| (say_date(day.on), vec![say_money(day.owed), say_money(day.resale)])).collect()
}

/// The heads of the payments, and of what is owed.
const PAYMENTS: &[Key] =
    &[key!("plot-day"), key!("loans-payment"), key!("loans-interest"), key!("loans-principal"), key!("loans-balance")];
const OWED: &[Key] = &[key!("plot-day"), key!("loans-balance"), key!("loans-resale")];

/// A table that is made when it is unfolded.
fn folded(title: Key, heads: &'static [Key], rows: Memo<Rows>) -> View {
    let is_open = Signal::new(false);
    let draw = move || {
        if !is_open.get() {
            return nothing();
        }
        let rows = rows.get().into_iter().map(|(head, cells)| TableRow(head, cells, None)).collect();
        table(plain_sentence(title), false, heads, rows)
    };
    el("details")
        .class("table")
        .on_toggle(move |open| is_open.set(open))
        .live_flag("hidden", move || rows.with(Vec::is_empty))
        .put(el("summary").put(title))
        .put(live::view(draw))
        .done()
}
