//! Cash by day as a drawing, of which each day can be looked at.

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Flow, FlowGroup};
use kerbstead_core::plan::{Money, days_between};

use super::chances::Chances;
use super::names::source_name;
use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{say_date, say_money};
use crate::parts::{Mark, Picked, PlotData, button, plot_to_pick};
use crate::state::App;

/// The drawing, what its marks mean, and the day that is looked at.
pub fn course(chances: Chances) -> View {
    let app = App::here();
    let picked: Picked = Signal::new(None);
    let data = live::memo(move || {
        let band = chances.band();
        let floor = app.desk.plan.with_untracked(|plan| plan.purse.floor.to_plot());
        app.settled_assessment(|assessment| {
            let money = &assessment.money;
            let values = money.days.iter().map(|day| day.closing.to_plot()).collect();
            Some(PlotData {
                floor,
                low_matters: true,
                marks: marks(assessment.starts_on, &money.flows),
                band,
                ..PlotData::by_day("money-plot", assessment.starts_on, assessment.as_of, values)
            })
        })
    });
    fragment().put(plot_to_pick(data, picked)).put(legend()).put(steps(picked)).put(day(picked)).done()
}

/// What kind of mark a flow has; what comes again and again has none.
pub fn mark_of(flow: &Flow) -> Option<Mark> {
    let is_payment = flow.amount.is_negative();
    match flow.group {
        FlowGroup::Sales => Some(Mark::Sale),
        FlowGroup::Income => Some(Mark::In),
        FlowGroup::Kit(_) | FlowGroup::Vehicle if is_payment => Some(Mark::Out),
        FlowGroup::Kit(_) | FlowGroup::Vehicle | FlowGroup::Loans if !is_payment => Some(Mark::In),
        _ => None,
    }
}

/// A mark a day and kind.
fn marks(from: Date, flows: &[Flow]) -> Vec<(usize, Mark)> {
    let of = |flow: &Flow| Some((usize::try_from(days_between(from, flow.on)).ok()?, mark_of(flow)?));
    let mut marks: Vec<(usize, Mark)> = flows.iter().filter(|flow| flow.counts()).filter_map(of).collect();
    marks.dedup();
    marks
}

fn legend() -> View {
    let entry = |mark: Mark, key| el("span").put(mark.icon()).put(" ").put(crate::locale::plain_sentence(key)).done();
    let entries = [
        entry(Mark::In, key!("plot-mark-in")),
        entry(Mark::Sale, key!("plot-mark-sale")),
        entry(Mark::Out, key!("plot-mark-out")),
    ];
    el("p").class("legend").put_each(entries).done()
}

/// The days on which something moves, one after the other, for whoever does not tap.
fn steps(picked: Picked) -> View {
    let app = App::here();
    let moving = move || {
        app.desk.assessment.with_untracked(|assessment| {
            let from = assessment.starts_on;
            let place = |date: Date| usize::try_from(days_between(from, date)).unwrap_or(0);
            let mut days: Vec<usize> = assessment.money.flows.iter().map(|flow| place(flow.on)).collect();
            days.dedup();
            (days, place(browser::today()), assessment.money.lowest.map(|day| place(day.on)))
        })
    };
    let earlier = move || {
        let (days, today, _) = moving();
        let now = picked.get_untracked().unwrap_or(today);
        picked.set(days.into_iter().rfind(|day| *day < now).or(Some(now)));
    };
    let later = move || {
        let (days, today, _) = moving();
        let now = picked.get_untracked().unwrap_or(today);
        picked.set(days.into_iter().find(|day| *day > now).or(Some(now)));
    };
    let lowest = move || picked.set(moving().2);
    el("div")
        .class("buttons")
        .put(button(key!("day-earlier"), earlier))
        .put(button(key!("day-lowest"), lowest))
        .put(button(key!("day-later"), later))
        .done()
}

/// What moves on the day that is looked at.
fn day(picked: Picked) -> View {
    let app = App::here();
    let draw = move || {
        let Some(index) = picked.get() else { return el("p").put(key!("day-hint")).done() };
        app.settled_assessment(|assessment| {
            let Some(day) = assessment.money.days.get(index) else { return nothing() };
            let flows = assessment.money.flows.iter().filter(|flow| flow.on == day.on);
            let lines = all(flows.map(|flow| line(app, flow)));
            let evening = tell!(
                "day-evening",
                &vec![("opening", Figure::Money(day.opening)), ("closing", Figure::Money(day.closing))]
            );
            let corrected = (day.corrected != Money::ZERO)
                .then(|| tell!("day-corrected", &vec![("amount", Figure::Money(day.corrected))]));
            fragment()
                .put(el("h3").put(say_date(day.on)))
                .put(el("ul").class("moves").put(lines))
                .put(el("p").put(evening))
                .put(corrected.map(|text| el("p").put(text).done()))
                .done()
        })
    };
    el("div").class("day").attr("aria-live", "polite").put(live::view(draw)).done()
}

fn line(app: App, flow: &Flow) -> View {
    let name = app.desk.plan.with_untracked(|plan| source_name(plan, flow));
    let uncounted = (!flow.counts()).then(|| el("small").put(" ").put(key!("day-uncounted")).done());
    el("li")
        .put(el("span").class("name").put(name).put(uncounted))
        .put(" ")
        .put(el("span").class("value").put(say_money(flow.amount)))
        .done()
}
