//! Try it or build in full: what each way of building costs, and what that depends on.

mod ways;

use kerbstead_core::explain::{Figure, Figures, Working};
use kerbstead_core::money::futures::{Against, Compared, Depends, Future, Lever, WayName, compared};
use kerbstead_core::plan::{Money, Path, Quantity, field};

use super::money::odds;
use super::section;
use crate::browser;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::locale::{say_figure, words};
use crate::parts::{Course, TableRow, bar, courses, field_label, fields, folded_working, named, table};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn futures() -> View {
    let app = App::here();
    let found = live::memo(move || {
        app.settled_plan(|plan| {
            app.desk.assessment.with_untracked(|assessment| compared(plan, browser::today(), &assessment.money))
        })
    });
    fragment()
        .put(el("h1").put(key!("page-futures")))
        .put(el("p").put(key!("futures-hint")))
        .put(section(key!("futures-answer"), answer(found)))
        .put(section(key!("futures-depends"), live::view(move || found.with(depends))))
        .put(section(key!("futures-ways"), ways::ways()))
        .put(section(key!("futures-question"), question(found)))
        .put(el("p").class("links").put(el("a").attr("href", Page::Money.link()).put(key!("money-back"))))
        .done()
}

/// What a way is called.
fn name_of(found: &Compared, at: usize) -> String {
    match found.ways.get(at).map(|way| &way.name) {
        Some(WayName::Own(_, name)) => named(name.clone()),
        Some(WayName::AsPlanned) => t!("futures-as-planned"),
        Some(WayName::Stay) | None => t!("futures-stay"),
    }
}

fn answer(found: Memo<Compared>) -> View {
    let working = live::memo(move || {
        let of_all =
            |found: &Compared| -> Vec<Working> { found.ways.iter().flat_map(|way| way.working.clone()).collect() };
        found.with(of_all)
    });
    fragment()
        .put(el("div").attr("role", "status").put(live::view(move || found.with(said))))
        .put(live::view(move || found.with(|found| courses(key!("futures-plot"), &lines(found)))))
        .put(live::view(move || found.with(costs)))
        .put(folded_working(working))
        .done()
}

/// Without the small change: nothing here is known to the cent.
fn rough(amount: Money) -> Figure {
    Figure::Name(words(|words| words.rough_money(amount.to_plot())))
}

/// The cheapest way, and how it stands against the others.
fn said(found: &Compared) -> View {
    let end = |at: usize| found.futures.get(at).and_then(|future| future.expected.last().copied()).unwrap_or_default();
    let figures = vec![
        ("months", Figure::of(f64::from(found.question.months), Quantity::Months)),
        ("name", Figure::Name(name_of(found, found.cheapest))),
        ("cost", rough(end(found.cheapest))),
    ];
    let line = |against: &Against| el("li").put(stands(found, *against)).done();
    fragment()
        .put(el("p").put(el("strong").put(tell!("futures-cheapest", &figures))))
        .put(el("ul").class("lines").put_each(found.against.iter().map(line)))
        .done()
}

fn stands(found: &Compared, against: Against) -> String {
    let mut figures: Figures = vec![
        ("name", Figure::Name(name_of(found, found.cheapest))),
        ("other", Figure::Name(name_of(found, against.other))),
        ("more", rough(against.dearer)),
    ];
    let Some(even) = against.even else {
        let is_same = against.dearer == Money::ZERO;
        return if is_same { tell!("futures-same", &figures) } else { tell!("futures-always", &figures) };
    };
    let percent = Money::new(even.unsuited_percent).to_plot();
    figures.push(("percent", Figure::of(percent, Quantity::Percent)));
    figures.push(("odds", Figure::Name(odds(even.odds(), 0))));
    if even.first_is_cheaper_below { tell!("futures-below", &figures) } else { tell!("futures-above", &figures) }
}

fn lines(found: &Compared) -> Vec<Course> {
    let line = |at: usize| Course {
        name: name_of(found, at),
        values: found
            .futures
            .get(at)
            .into_iter()
            .flat_map(|future| &future.expected)
            .map(|cost| cost.to_plot())
            .collect(),
    };
    (0..found.ways.len()).map(line).collect()
}

/// What each way costs at the end.
fn costs(found: &Compared) -> View {
    let heads = [key!("futures-way"), key!("futures-suited"), key!("futures-unsuited"), key!("futures-average")];
    let cell = |amounts: &Vec<Money>| {
        let end = amounts.last().copied().unwrap_or_default();
        say_figure(&rough(end))
    };
    let row = |(at, future): (usize, &Future)| {
        let cells = [&future.suited, &future.unsuited, &future.expected].map(cell);
        TableRow(name_of(found, at), cells.to_vec(), None)
    };
    let rows = found.futures.iter().enumerate().map(row).collect();
    fragment().put(el("h3").put(key!("futures-costs"))).put(table(t!("futures-costs"), true, &heads, rows)).done()
}

/// What the difference between the two cheapest ways depends on, the most first.
fn depends(found: &Compared) -> View {
    let Some(next) = found.against.first() else { return nothing() };
    let names = [name_of(found, found.cheapest), name_of(found, next.other)];
    let most = found.depends.first().map_or(Money::ZERO, |widest| widest.swing.size()).to_plot().max(1e-9);
    let figures = vec![("name", Figure::Name(names[0].clone())), ("other", Figure::Name(names[1].clone()))];
    let line = |one: &Depends| {
        el("li").put(bar(one.swing.size().to_plot() / most)).put(el("p").put(swing(one, &names))).done()
    };
    let hint = if found.depends.is_empty() {
        tell!("futures-no-ranges", &figures)
    } else {
        tell!("futures-depends-hint", &figures)
    };
    fragment().put(el("p").put(hint)).put(el("ol").class("swings").put_each(found.depends.iter().map(line))).done()
}

fn swing(one: &Depends, names: &[String; 2]) -> String {
    let differs = |difference: Money| {
        let amount = |amount| vec![("amount", rough(amount))];
        Figure::Name(if difference.is_negative() {
            tell!("futures-less", &amount(-difference))
        } else {
            tell!("futures-more", &amount(difference))
        })
    };
    let figures = vec![
        ("what", Figure::Name(lever_name(one.swing.lever, names))),
        ("low", one.low.clone()),
        ("high", one.high.clone()),
        ("name", Figure::Name(names[0].clone())),
        ("at_low", differs(one.swing.at_low)),
        ("at_high", differs(one.swing.at_high)),
    ];
    let text = tell!("futures-swing", &figures);
    if one.swing.turns() { [text, t!("futures-turns")].join(" ") } else { text }
}

/// What an input is called: as its field, with the name of its way where it has one.
fn lever_name(lever: Lever, names: &[String; 2]) -> String {
    let (path, way) = match lever {
        Lever::HomeMonthly => ("trial/home_monthly", None),
        Lever::RoadMonthly => ("trial/road_monthly", None),
        Lever::UnsuitedPercent => ("trial/unsuited_percent", None),
        Lever::FindsOutMonths => ("trial/finds_out_months", None),
        Lever::GoingBack => ("trial/going_back", None),
        Lever::KeptPercent => ("trial/kept_percent", None),
        Lever::BuildMonths(at) => ("builds/1/build_months", names.get(at)),
        Lever::Removable(at) => ("builds/1/removable", names.get(at)),
        Lever::Fixed(at) => ("builds/1/fixed", names.get(at)),
        Lever::Redone(at) => ("builds/1/redone", names.get(at)),
    };
    let label = field::at(&Path::from(path)).map_or_else(String::new, field_label);
    way.map_or(label.clone(), |way| format!("“{way}”: {label}"))
}

const QUESTION: &[&str] = &[
    "trial_months",
    "unsuited_percent",
    "finds_out_months",
    "kept_percent",
    "home_monthly",
    "road_monthly",
    "going_back",
];

fn question(found: Memo<Compared>) -> View {
    let taken = move || {
        let line = |line: &Working| words(|words| words.working(line));
        found.with(|found| found.working.iter().map(line).collect::<Vec<_>>().join(" "))
    };
    fragment()
        .put(el("p").put(key!("futures-question-hint")))
        .put(el("p").put(live::text(taken)))
        .put(fields(&Path::section("trial"), QUESTION))
        .done()
}
