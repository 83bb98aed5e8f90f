//! Two to four plans side by side: asked of the worker.

use kerbstead_core::compare::{Assumption, By, Compared, KitRow, Line, MOST_PLANS, Row, Under};
use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::Slot;
use kerbstead_core::plan::{Plain, Plan};
use kerbstead_core::task::Subject;
use kerbstead_core::words::Key;

use super::money::waiting;
use super::{balance_title, section};
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{plain_sentence, say_figure, say_money, t};
use crate::parts::{TableRow, named, named_table, tick_box, verdict_word};
use crate::state::{App, kept_plan};
use crate::worker::ask_beside;

/// The page.
pub fn beside() -> View {
    let app = App::here();
    let chosen: Signal<Vec<Slot>> = Signal::new(first_other(app));
    let others: Memo<Vec<(String, Plan)>> = live::memo(move || chosen.with(|slots| plans_of(app, slots)));
    let asked = ask_beside(app, Subject::Compare, move || {
        others.with(|others| others.iter().map(|(_, plan)| plan.clone()).collect())
    });
    let told = move || {
        let names = others.with(|others| others.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>());
        let compared = asked.answer.with(|answer| Compared::from_plain(answer.as_ref()?));
        let own = app.plan(|plan| named(plan.title.clone()));
        let names: Vec<String> = std::iter::once(own).chain(names).collect();
        match compared.filter(|compared| compared.plans == names.len() && names.len() > 1) {
            Some(compared) => told(&compared, &names),
            None => nothing(),
        }
    };
    fragment()
        .put(el("h1").put(key!("page-beside")))
        .put(el("p").put(key!("beside-lede")))
        .put(choice(app, chosen))
        .put(waiting(asked))
        .put(live::view(told))
        .done()
}

/// The first plan of the shelf that is not open.
fn first_other(app: App) -> Vec<Slot> {
    app.desk.shelf.with_untracked(|shelf| {
        shelf.cards.iter().map(|card| card.slot).filter(|slot| *slot != shelf.open).take(1).collect()
    })
}

fn plans_of(app: App, slots: &[Slot]) -> Vec<(String, Plan)> {
    let titles = app.desk.shelf.with(|shelf| shelf.cards.clone());
    let title = |slot: Slot| titles.iter().find(|card| card.slot == slot).map(|card| named(card.title.clone()));
    slots.iter().filter_map(|slot| Some((title(*slot)?, kept_plan(*slot)?))).collect()
}

/// Which plans stand beside the open one.
fn choice(app: App, chosen: Signal<Vec<Slot>>) -> View {
    let cards = live::memo(move || app.desk.shelf.with(|shelf| (shelf.open, shelf.cards.clone())));
    let boxes = move || {
        let (open, cards) = cards.get();
        if cards.len() < 2 {
            return el("p").put(key!("beside-only-one")).done();
        }
        let others = cards.into_iter().filter(|card| card.slot != open);
        let one = others.map(|card| {
            let slot = card.slot;
            let is_on = move || chosen.with(|slots| slots.contains(&slot));
            let set = move |on: bool| {
                let mut slots: Vec<Slot> = chosen.get_untracked().into_iter().filter(|other| *other != slot).collect();
                slots.extend(on.then_some(slot));
                // The oldest choice makes room.
                let many = slots.len().saturating_sub(MOST_PLANS - 1);
                chosen.set(slots.split_off(many));
            };
            tick_box(format!("beside-{slot}"), named(card.title), is_on, set)
        });
        el("fieldset").put(el("legend").put(key!("beside-choose"))).put_each(one).done()
    };
    live::view(boxes)
}

fn told(compared: &Compared, names: &[String]) -> View {
    let currency = (!compared.same_currency).then(|| el("p").put(key!("beside-currencies")).done());
    let differ = compared.rows.iter().any(|row| row.differs);
    let rows = |differs: bool| {
        let rows = compared.rows.iter().filter(|row| row.differs == differs).map(row).collect();
        named_table(t!("beside-lines"), false, heads(key!("beside-line"), names), rows)
    };
    let alike = el("details").put(el("summary").put(key!("beside-alike"))).put(rows(false));
    fragment()
        .put(currency)
        .put(section(
            key!("beside-differ"),
            if differ { rows(true) } else { el("p").put(key!("beside-nothing")).done() },
        ))
        .put(alike)
        .put(section(key!("beside-under"), assumptions(&compared.under, names)))
        .put(section(key!("beside-only"), kit(&compared.only, names)))
        .done()
}

/// The head of the first column, and the names of the plans.
fn heads(first: Key, names: &[String]) -> Vec<String> {
    std::iter::once(plain_sentence(first)).chain(names.iter().cloned()).collect()
}

/// A line: its values, the best marked by a word.
fn row(row: &Row) -> TableRow {
    let cell = |at: usize| {
        let cell = row.cells.get(at).copied().unwrap_or_default();
        let text = match (cell.verdict, row.figure(at), cell.is_never) {
            (Some(verdict), ..) => verdict_word(verdict),
            (_, Some(figure), _) => say_figure(&figure),
            (.., true) => t!("beside-never"),
            _ => t!("beside-unknown"),
        };
        if row.best.get(at) == Some(&true) { better(&text) } else { text }
    };
    let name = t(line_key(row.line));
    let name = row.balance.map_or(name.clone(), |balance| [plain_sentence(balance_title(balance)), name].join(": "));
    TableRow(name, (0..row.cells.len()).map(cell).collect(), None)
}

fn better(text: &str) -> String {
    tell!("beside-better", &vec![("value", Figure::Name(text.to_owned()))])
}

/// What becomes of each plan under each assumption, and which of them is better.
fn assumptions(under: &[Under], names: &[String]) -> View {
    let one = |under: &Under| {
        let plan = |(at, outcome): (usize, &kerbstead_core::compare::Outcome)| {
            let figures = vec![
                ("hold", Figure::count(outcome.hold as usize)),
                ("tight", Figure::count(outcome.tight as usize)),
                ("short", Figure::count(outcome.short as usize)),
            ];
            let cash = outcome.cash_at_end.map(say_money);
            let text = std::iter::once(tell!("beside-comes-to", &figures)).chain(cash).collect::<Vec<_>>().join("; ");
            let text = if under.best.get(at) == Some(&true) { better(&text) } else { text };
            el("li").put(names.get(at).cloned().unwrap_or_default()).put(": ").put(text).done()
        };
        let why = match under.by {
            By::Nothing => key!("beside-by-nothing"),
            By::Short => key!("beside-by-short"),
            By::Hold => key!("beside-by-hold"),
            By::Cash => key!("beside-by-cash"),
        };
        let turns = under.turns.then(|| el("strong").put(" ").put(key!("beside-turns")).done());
        el("li")
            .put(el("strong").put(t(assumption_key(under.assumption))))
            .put(el("span").put(why))
            .put(turns)
            .put(el("ul").put_each(under.outcomes.iter().enumerate().map(plan)))
            .done()
    };
    el("ul").class("inputs").put_each(under.iter().map(one)).done()
}

fn kit(only: &[KitRow], names: &[String]) -> View {
    if only.is_empty() {
        return el("p").put(key!("beside-kit-alike")).done();
    }
    let row = |thing: &KitRow| {
        let cells = thing.had.iter().map(|had| match (had.quantity, had.price) {
            (0, _) => t!("beside-none"),
            (quantity, price) => {
                let count = say_figure(&Figure::count(quantity as usize));
                let price = price.map(say_money);
                std::iter::once(count).chain(price).collect::<Vec<_>>().join("; ")
            }
        });
        TableRow(named(thing.name.clone()), cells.collect(), None)
    };
    named_table(t!("beside-only"), false, heads(key!("beside-thing"), names), only.iter().map(row).collect())
}

fn line_key(line: Line) -> &'static str {
    match line {
        Line::Verdict => "beside-verdict",
        Line::Margin => "beside-margin",
        Line::FirstShort => "beside-first-short",
        Line::CashAtEnd => "beside-cash-at-end",
        Line::LowestCash => "beside-lowest-cash",
        Line::KitToPay => "beside-kit-to-pay",
        Line::MonthOnRoad => "beside-month-on-road",
        Line::MonthAtHome => "beside-month-at-home",
        Line::DayOnRoad => "beside-day-on-road",
        Line::PaidBack => "beside-paid-back",
        Line::Leaves => "beside-leaves",
        Line::Ends => "beside-ends",
        Line::Done => "beside-done",
        Line::HoursLeft => "beside-hours-left",
        Line::EmptyMass => "beside-empty-mass",
        Line::KitMass => "beside-kit-mass",
        Line::MostMass => "beside-most-mass",
        Line::SpareMass => "beside-spare-mass",
        Line::FreshLitres => "beside-fresh-litres",
        Line::LitresADay => "beside-litres-a-day",
        Line::LowestLitres => "beside-lowest-litres",
        Line::StoresHold => "beside-stores-hold",
        Line::DrawnADay => "beside-drawn-a-day",
        Line::SunADay => "beside-sun-a-day",
        Line::Goods => "beside-goods",
        Line::LeftOver => "beside-left-over",
    }
}

fn assumption_key(assumption: Assumption) -> &'static str {
    match assumption {
        Assumption::AsPlanned => "beside-as-planned",
        Assumption::DearPurchases => "beside-dear-purchases",
        Assumption::SalesFail => "beside-sales-fail",
        Assumption::MuchUsed => "beside-much-used",
        Assumption::DullerSky => "beside-duller-sky",
        Assumption::DearRunning => "beside-dear-running",
        Assumption::LeavingLater => "beside-leaving-later",
    }
}
