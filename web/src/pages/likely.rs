//! How likely the whole plan holds: one draw of the world drives all balances together. Asked of the worker.

use kerbstead_core::chances::{BalanceChance, First, Input, What, Whole};
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::money::Odds;
use kerbstead_core::plan::{Plain, Plan};
use kerbstead_core::task::Subject;

use super::money::{odds, waiting};
use super::{balance_title, section};
use crate::el::{View, el, fragment, nothing};
use crate::live;
use crate::locale::{plain_sentence, t, tell};
use crate::parts::{bar, named_in};
use crate::state::App;
use crate::worker::ask_and_follow;

/// The page.
pub fn likely() -> View {
    let app = App::here();
    let asked = ask_and_follow(app, Subject::Whole);
    let whole = live::memo(move || asked.answer.with(|answer| Whole::from_plain(answer.as_ref()?)));
    let told = move || whole.with(|whole| whole.as_ref().map_or_else(nothing, |whole| told(app, whole)));
    fragment()
        .put(el("h1").put(key!("page-likely")))
        .put(el("p").put(key!("likely-lede")))
        .put(waiting(asked))
        .put(live::view(told))
        .done()
}

fn told(app: App, whole: &Whole) -> View {
    if whole.runs == 0 {
        return el("p").put(key!("likely-nothing")).done();
    }
    let all = vec![("odds", Figure::Name(said(whole.all_hold, whole.runs)))];
    let how = vec![
        ("runs", Figure::count(whole.runs as usize)),
        ("from", Figure::Date(whole.from)),
        ("until", Figure::Date(whole.until)),
    ];
    fragment()
        .put(el("p").class("verdict-line").put(el("strong").put(tell!("likely-all", &all))))
        .put(whole.first.map(|first| el("p").put(first_to_fail(app, &first, whole.runs)).done()))
        .put(section(key!("likely-balances"), balances(whole)))
        .put(section(key!("likely-inputs"), inputs(app, whole)))
        .put(el("details").put(el("summary").put(key!("chances-how"))).put(el("p").put(tell!("likely-how", &how))))
        .done()
}

/// So many of so many, as people say it.
fn said(count: u32, of: u32) -> String {
    odds(Odds::of(count, of), of)
}

fn first_to_fail(app: App, first: &First, runs: u32) -> String {
    let by = first.by.map(|id| app.desk.plan.with_untracked(|plan| named_in(plan, id)));
    let mut figures: Figures = vec![
        ("balance", Figure::Name(plain_sentence(balance_title(first.balance)))),
        ("odds", Figure::Name(said(first.fails, runs))),
    ];
    figures.extend(first.likely_on.map(|on| ("on", Figure::Date(on))));
    figures.extend(by.map(|name| ("name", Figure::Name(name))));
    match (first.likely_on.is_some(), first.by.is_some()) {
        (true, true) => tell!("likely-first-by", &figures),
        (true, false) => tell!("likely-first-on", &figures),
        _ => tell!("likely-first", &figures),
    }
}

fn balances(whole: &Whole) -> View {
    let line = |chance: &BalanceChance| {
        let name = el("strong").put(plain_sentence(balance_title(chance.balance)));
        if !chance.is_known {
            return el("li").put(name).put(el("span").put(key!("likely-unknown"))).done();
        }
        let mut figures: Figures = vec![
            ("held", Figure::Name(said(chance.held, whole.runs))),
            ("first", Figure::Name(said(chance.first_fails, whole.runs))),
        ];
        figures.extend(chance.likely_on.map(|on| ("on", Figure::Date(on))));
        let fails = match (chance.likely_on.is_some(), chance.first_fails > 0) {
            (true, true) => Some(tell!("likely-fails-first", &figures)),
            (true, false) => Some(tell!("likely-fails", &figures)),
            _ => None,
        };
        let text = std::iter::once(tell!("likely-holds", &figures)).chain(fails).collect::<Vec<_>>().join(" ");
        el("li")
            .put(name)
            .put(bar(f64::from(chance.held) / f64::from(whole.runs.max(1))))
            .put(el("span").put(text))
            .done()
    };
    el("ul").class("inputs").put_each(whole.balances.iter().map(line)).done()
}

fn inputs(app: App, whole: &Whole) -> View {
    if whole.inputs.is_empty() {
        return el("p").put(key!("likely-no-inputs")).done();
    }
    let line = |input: &Input| {
        let name = app.desk.plan.with_untracked(|plan| told_of(plan, input));
        let figures = vec![
            ("name", Figure::Name(name)),
            ("low", Figure::Name(said(input.fails_low, input.of_low))),
            ("high", Figure::Name(said(input.fails_high, input.of_high))),
        ];
        el("li")
            .put(el("strong").put(tell(key_of(input.what), &figures)))
            .put(bar(input.correlation.abs()))
            .put(el("span").put(tell!("likely-halves", &figures)))
            .done()
    };
    fragment()
        .put(el("p").put(key!("likely-inputs-hint")))
        .put(el("ol").class("inputs").put_each(whole.inputs.iter().map(line)))
        .done()
}

/// The name of what an uncertain number stands in: an entry, or a place of the route.
fn told_of(plan: &Plan, input: &Input) -> String {
    let stay = plan.stays.iter().find(|stay| stay.id == input.id).map(|stay| stay.place.clone());
    let day = plan.week.iter().find(|day| day.id == input.id);
    let day = day.map(|day| t(&format!("choice-weekday-{}", day.weekday.to_plain().as_str().unwrap_or_default())));
    stay.or(day).unwrap_or_else(|| named_in(plan, input.id))
}

fn key_of(what: What) -> &'static str {
    match what {
        What::Price => "likely-of-price",
        What::SalePrice => "likely-of-sale-price",
        What::SaleDay => "likely-of-sale-day",
        What::Income => "likely-of-income",
        What::Cost => "likely-of-cost",
        What::Night => "likely-of-night",
        What::VanPrice => "likely-of-van-price",
        What::PartExchange => "likely-of-part-exchange",
        What::FuelUse => "likely-of-fuel-use",
        What::FuelPrice => "likely-of-fuel-price",
        What::Driving => "likely-of-driving",
        What::Mains => "likely-of-mains",
        What::Use => "likely-of-use",
        What::Often => "likely-of-often",
        What::Water => "likely-of-water",
        What::Mass => "likely-of-mass",
        What::TaskHours => "likely-of-task-hours",
        What::Clouds => "likely-of-clouds",
        What::DryDays => "likely-of-dry-days",
        What::Toilet => "likely-of-toilet",
    }
}
