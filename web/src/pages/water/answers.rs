//! What the days ahead come to: what runs out first, how far apart stops may be, what is lacking, how likely it lasts, and what
//! treating water takes.

use jiff::civil::Date;
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::money::Odds;
use kerbstead_core::plan::{Id, Plain, Quantity};
use kerbstead_core::task::Subject;
use kerbstead_core::water::{Outlook, Report, Treatment, Vessel};

use super::super::money::{odds, waiting};
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::parts::named_in;
use crate::state::App;
use crate::worker::{Asked, ask_and_follow};

/// What is asked of the worker, and what came of it.
#[derive(Clone, Copy)]
pub struct Asking {
    asked: Asked,
    outlook: Memo<Option<Outlook>>,
}

impl Asking {
    /// Asks.
    pub fn of(app: App) -> Self {
        let asked = ask_and_follow(app, Subject::Water);
        let outlook = live::memo(move || asked.answer.with(|answer| Outlook::from_plain(answer.as_ref()?)));
        Self { asked, outlook }
    }

    /// The first evening in which a can is empty, or a tank full.
    pub fn can(self, item: Id) -> Option<Date> {
        self.outlook.with(|outlook| outlook.as_ref()?.cans.iter().find(|can| can.item == item)?.done_on)
    }

    /// Draws from the answer; nothing while there is none.
    pub fn view(self, draw: impl Fn(&Outlook) -> View + 'static) -> View {
        let told = move || self.outlook.with(|outlook| outlook.as_ref().map_or_else(nothing, &draw));
        fragment().put(waiting(self.asked)).put(live::view(told)).done()
    }
}

/// The answers.
pub fn answers(asking: Asking) -> View {
    let app = App::here();
    let lines = live::memo(move || {
        app.settled_assessment(|assessment| {
            let report = &assessment.water;
            let mut lines = Vec::new();
            if !report.days.is_empty() {
                lines.extend([first(report), spacing(report)]);
                lacks(report, &mut lines);
            }
            app.desk.plan.with_untracked(|plan| {
                treatment(&report.treatment, &|id| named_in(plan, id), &mut lines);
            });
            lines
        })
    });
    let list = move || {
        let lines = lines.get().into_iter().map(|line| el("li").put(line).done());
        el("ul").class("lines").put_each(lines).done()
    };
    fragment().put(live::view(list)).put(asking.view(chance)).done()
}

fn litres(value: f64) -> Figure {
    Figure::of(value, Quantity::VolumeL)
}

fn days(count: usize) -> Figure {
    Figure::of(count as f64, Quantity::Days)
}

fn first(report: &Report) -> String {
    let Some(first) = report.first else { return t!("water-first-none") };
    let on = vec![("on", Figure::Date(first.on))];
    let said = match first.vessel {
        Vessel::Fresh => tell!("water-first-fresh", &on),
        Vessel::Grey => tell!("water-first-grey", &on),
        Vessel::Toilet => tell!("water-first-toilet", &on),
    };
    let next = first.days_before_next.filter(|later| *later > 0);
    let next = next.map(|later| tell!("water-first-next", &vec![("days", days(later))]));
    std::iter::once(said).chain(next).collect::<Vec<_>>().join(" ")
}

fn spacing(report: &Report) -> String {
    let spacing = report.spacing;
    let Some(first_by) = spacing.first_by else { return t!("water-no-stop-needed") };
    let by = tell!("water-first-stop-by", &vec![("on", Figure::Date(first_by))]);
    let Some(apart) = spacing.days else { return [by, t!("water-one-stop-does")].join(" ") };
    let figures = vec![("days", days(apart))];
    let then = match spacing.limit {
        Some(Vessel::Grey) => tell!("water-apart-grey", &figures),
        Some(Vessel::Toilet) => tell!("water-apart-toilet", &figures),
        _ => tell!("water-apart-fresh", &figures),
    };
    [by, then].join(" ")
}

fn lacks(report: &Report, lines: &mut Vec<String>) {
    let lacks = report.lacks;
    if lacks.fresh_l > 0.0 {
        lines.push(tell!("water-lacks-fresh", &vec![("litres", litres(lacks.fresh_l))]));
    }
    if lacks.grey_l > 0.0 {
        lines.push(tell!("water-lacks-grey", &vec![("litres", litres(lacks.grey_l))]));
    }
    if lacks.toilet_days > 0.0 {
        lines.push(tell!("water-lacks-toilet", &vec![("days", Figure::of(lacks.toilet_days, Quantity::Days))]));
    }
}

fn treatment(treatment: &Treatment, name: &dyn Fn(u32) -> String, lines: &mut Vec<String>) {
    if let Some(boiled) = treatment.boiled {
        let mut figures: Figures =
            vec![("litres", litres(boiled.litres)), ("energy", Figure::of(boiled.energy_wh, Quantity::EnergyWh))];
        lines.push(match (boiled.by, boiled.minutes) {
            (Some(by), Some(minutes)) => {
                figures.push(("minutes", Figure::of(minutes.ceil(), Quantity::Count)));
                figures.push(("name", Figure::Name(name(by))));
                tell!("water-boiling", &figures)
            }
            _ => tell!("water-boiling-by-nothing", &figures),
        });
    }
    for filter in &treatment.filters {
        let mut figures: Figures = vec![("name", Figure::Name(name(filter.item)))];
        lines.push(match filter.days {
            Some(lasts) => {
                figures.push(("days", Figure::of(lasts, Quantity::Days)));
                figures.push(("needed", Figure::count(filter.needed as usize)));
                figures.push(("has", Figure::count(filter.has as usize)));
                tell!("water-filter-lasts", &figures)
            }
            None => tell!("water-filter-idle", &figures),
        });
    }
}

fn chance(outlook: &Outlook) -> View {
    if outlook.runs == 0 {
        return el("p").put(key!("water-no-runs")).done();
    }
    let said = odds(Odds::of(outlook.held, outlook.runs), outlook.runs);
    let by = outlook.likely_on.map(|on| el("p").put(tell!("water-short-by", &vec![("on", Figure::Date(on))])).done());
    let count = |runs: u32| Figure::count(runs as usize);
    let figures = vec![
        ("runs", count(outlook.runs)),
        ("fresh", count(outlook.fresh_first)),
        ("grey", count(outlook.grey_first)),
        ("toilet", count(outlook.toilet_first)),
    ];
    let how = el("details").put(el("summary").put(key!("chances-how"))).put(el("p").put(tell!("water-how", &figures)));
    fragment().put(el("p").put(key!("water-kept")).put(" ").put(el("strong").put(said))).put(by).put(how).done()
}
