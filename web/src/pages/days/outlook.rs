//! How sure the date is, and what would save days: asked of the worker.

use kerbstead_core::days::{Change, Outlook, Saving};
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::money::Odds;
use kerbstead_core::plan::{Plain, Quantity};
use kerbstead_core::task::Subject;

use super::super::money::{odds, waiting};
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::locale::tell;
use crate::parts::{PlotData, button, named_in, plot};
use crate::state::App;
use crate::worker::ask_and_follow;

/// What there is to say of it.
pub fn outlook() -> View {
    let app = App::here();
    let asked = ask_and_follow(app, Subject::Days);
    let outlook = live::memo(move || asked.answer.with(|answer| Outlook::from_plain(answer.as_ref()?)));
    let told = move || outlook.with(|outlook| outlook.as_ref().map_or_else(nothing, |outlook| told(app, outlook)));
    fragment()
        .put(waiting(asked))
        .put(live::view(told))
        .put(better_order(app, outlook))
        .put(ready_plot(app, outlook))
        .done()
}

fn told(app: App, outlook: &Outlook) -> View {
    let Some(finish) = outlook.finish else {
        return el("p").put(key!("days-finish-none")).put(savings(app, outlook)).done();
    };
    let mut figures = vec![("finish", Figure::Date(finish))];
    figures.extend(outlook.not_before.map(|day| ("not_before", Figure::Date(day))));
    figures.extend(outlook.nine_in_ten.map(|day| ("on", Figure::Date(day))));
    let is_proven = outlook.is_proven || outlook.not_before == outlook.finish;
    let sure = if is_proven { tell!("days-finish-proven", &figures) } else { tell!("days-finish-bound", &figures) };
    let chance = outlook.on_time.map(|on_time| {
        let figures = vec![
            ("runs", Figure::count(outlook.runs as usize)),
            ("odds", Figure::Name(odds(Odds::of(on_time, outlook.runs), outlook.runs))),
        ];
        el("p").put(el("strong").put(tell!("days-on-time", &figures))).done()
    });
    let nine = outlook.nine_in_ten.map(|_| el("p").put(tell!("days-nine-in-ten", &figures)).done());
    let how = el("details").put(el("summary").put(key!("chances-how"))).put(el("p").put(key!("days-how")));
    fragment().put(el("p").put(sure)).put(chance).put(nine).put(how).put(savings(app, outlook)).done()
}

fn savings(app: App, outlook: &Outlook) -> View {
    let line = |saving: &Saving| el("li").put(saving_text(app, saving)).done();
    let list = if outlook.savings.is_empty() {
        el("p").put(key!("days-savings-none"))
    } else {
        el("ul").class("lines").put_each(outlook.savings.iter().map(line))
    };
    fragment().put(el("h3").put(key!("days-savings"))).put(list).done()
}

fn saving_text(app: App, saving: &Saving) -> String {
    let name = app.desk.plan.with_untracked(|plan| named_in(plan, saving.id));
    let mut figures: Figures = vec![("name", Figure::Name(name)), ("days", Figure::of(saving.days, Quantity::Days))];
    figures.extend(saving.finish.map(|finish| ("finish", Figure::Date(finish))));
    figures.extend(saving.cost.map(|cost| ("cost", Figure::Money(cost))));
    let unblocks = saving.days <= 0.0;
    let key = match (saving.change, unblocks) {
        (Change::Helper, true) => "days-saving-unblocks-helper",
        (Change::Tool, true) => "days-saving-unblocks-tool",
        (Change::Task, true) => "days-saving-unblocks-task",
        (Change::Helper, false) => "days-saving-helper",
        (Change::Tool, false) if saving.cost.is_some() => "days-saving-tool-cost",
        (Change::Tool, false) => "days-saving-tool",
        (Change::Task, false) => "days-saving-task",
    };
    tell(key, &figures)
}

/// Another order of the tasks that is done earlier, with a button that takes it.
fn better_order(app: App, outlook: Memo<Option<Outlook>>) -> View {
    let is_better = move || outlook.with(|outlook| outlook.as_ref().is_some_and(|outlook| !outlook.order.is_empty()));
    live::when(is_better, move || {
        let text = move || {
            let finish = outlook.with(|outlook| outlook.as_ref().and_then(|outlook| outlook.finish));
            finish.map_or_else(String::new, |day| tell!("days-better-order", &vec![("finish", Figure::Date(day))]))
        };
        let take = move || {
            let edit = app.plan(|plan| outlook.with(|outlook| outlook.as_ref().and_then(|found| found.taking(plan))));
            if let Some(edit) = edit {
                app.edit_and_tell(edit, t!("days-order-taken"));
            }
        };
        fragment().put(el("p").put(live::text(text))).put(button(key!("days-take-order"), take)).done()
    })
}

/// In what share of the runs all is done by each evening.
fn ready_plot(app: App, outlook: Memo<Option<Outlook>>) -> View {
    let data = live::memo(move || {
        let (as_of, days) = outlook.with(|outlook| {
            let outlook = outlook.as_ref().filter(|outlook| outlook.runs > 0 && outlook.days.len() > 1)?;
            let share = |done: u32| f64::from(done) * 100.0 / f64::from(outlook.runs);
            let values = outlook.days.iter().map(|day| share(day.done)).collect::<Vec<_>>();
            Some((app.desk.assessment.with_untracked(|assessment| assessment.as_of), (outlook.days[0].on, values)))
        })?;
        let (from, values) = days;
        Some(PlotData {
            quantity: Some(Quantity::Percent),
            ceiling: Some(100.0),
            ..PlotData::by_day("days-ready-plot", from, as_of, values)
        })
    });
    plot(data)
}
