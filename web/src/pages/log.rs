//! The road log: counts and days entered with one thumb, what they say of the plan, and wishes that are earned.

use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::plan::{Edit, Id, List, Path, Plan, Quantity, date_text};
use kerbstead_core::road_log::{Earned, EarnedWish, Gap, Learned, Span, What, Why, earned, learned};
use serde_json::{Value, json};

use super::section;
use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{say_date, t, tell};
use crate::parts::{Entries, button, fields, named_in};
use crate::route::Page;
use crate::state::App;

/// What can be counted at one moment.
const COUNTS: &[&str] = &[
    "charge_percent",
    "store",
    "fresh_l",
    "grey_l",
    "cash",
    "odometer_km",
    "measured_c",
    "hour",
    "slept",
    "missed",
    "used",
];
/// So many entries are shown at first, and so many more each time.
const SHOWN: usize = 20;
/// So many of the stretches that say nothing are told: the newest, for a long log has many.
const GAPS: usize = 30;

/// The page.
pub fn log() -> View {
    let app = App::here();
    let found = live::memo(move || {
        let as_of = app.desk.assessment.with(|assessment| assessment.as_of);
        app.settled_plan(|plan| learned(plan, as_of))
    });
    let wishes = live::memo(move || {
        let (as_of, a_day) =
            app.desk.assessment.with(|assessment| (assessment.as_of, assessment.money.road_cost_per_day));
        app.settled_plan(|plan| earned(plan, as_of, a_day))
    });
    fragment()
        .put(el("h1").put(key!("page-log")))
        .put(el("p").put(key!("log-lede")))
        .put(section(key!("log-now"), now(app, COUNTS, true)))
        .put(section(key!("log-missed"), missed(app)))
        .put(section(key!("log-learned"), lessons(app, found)))
        .put(section(key!("log-wishes"), wished(app, wishes)))
        .put(section(key!("log-entries"), entries(app)))
        .put(
            el("ul")
                .class("links")
                .put(el("li").put(el("a").attr("href", Page::Brief.link()).put(key!("page-brief"))))
                .put(el("li").put(el("a").attr("href", Page::Receipts.link()).put(key!("page-receipts"))))
                .put(el("li").put(el("a").attr("href", Page::Tonight.link()).put(key!("page-tonight")))),
        )
        .done()
}

/// The last entry of today with its fields, and a button that begins a new one.
pub(super) fn now(app: App, names: &'static [&'static str], asks_of_the_night: bool) -> View {
    let last = live::memo(move || app.plan(last_of_today));
    let entry = move || match last.get() {
        Some(id) => fields(&Path::entry("readings", id), names),
        None => el("p").put(key!("log-nothing-today")).done(),
    };
    let begin = move || {
        app.edit(fresh(app, |_| {}));
    };
    let slept = |key, slept: &'static str| {
        asks_of_the_night.then(|| button(key, move || put_today(app, "slept", slept.into())).done())
    };
    fragment()
        .put(
            el("div")
                .class("buttons")
                .put(button(key!("log-begin"), begin).class("primary"))
                .put(slept(key!("log-slept-well"), "well"))
                .put(slept(key!("log-slept-badly"), "badly")),
        )
        .put(live::view(entry))
        .done()
}

/// The last entry of today.
fn last_of_today(plan: &Plan) -> Option<Id> {
    let of_today = plan.readings.iter().filter(|reading| reading.on == Some(browser::today()));
    of_today.max_by_key(|reading| reading.hour).map(|reading| reading.id)
}

/// The change that begins an entry of this moment.
fn fresh(app: App, fill: impl Fn(&mut Value)) -> Edit {
    let id = app.plan(Plan::next_id);
    let mut entry = json!({ "id": id, "on": date_text(browser::today()), "hour": browser::hour() });
    fill(&mut entry);
    Edit::Insert { list: List::Readings, at: usize::MAX, entry }
}

/// Puts a value into today's last entry, or into a new one.
fn put_today(app: App, field: &'static str, value: Value) {
    let edit = match app.plan(last_of_today) {
        Some(id) => Edit::set(Path::entry("readings", id).child(field), value),
        None => fresh(app, |entry| {
            if let Some(entry) = entry.as_object_mut() {
                entry.insert(field.to_owned(), value.clone());
            }
        }),
    };
    app.edit_and_tell(edit, t!("log-noted"));
}

/// What was missed today, in a word: one that is known already, or a new one, which becomes a wish.
fn missed(app: App) -> View {
    const FIELD: &str = "log-missed-word";
    const KNOWN: &str = "log-missed-known";
    let typed = Signal::new(String::new());
    let note = move || {
        let word = typed.get_untracked().trim().to_owned();
        if word.is_empty() {
            return;
        }
        app.edit_and_tell(app.plan(|plan| missing(plan, &word)), t!("log-noted"));
        typed.set(String::new());
    };
    let known =
        live::memo(move || app.plan(|plan| plan.wishes.iter().map(|wish| wish.name.clone()).collect::<Vec<_>>()));
    let options =
        move || known.with(|names| all(names.iter().map(|name| el("option").attr("value", name.as_str()).done())));
    el("form")
        .on_submit(note)
        .put(
            el("div")
                .class("field wide")
                .put(el("label").attr("for", FIELD).put(key!("log-missed-word")))
                .put(
                    el("input")
                        .attr("type", "text")
                        .attr("id", FIELD)
                        .attr("list", KNOWN)
                        .attr("maxlength", "120")
                        .attr("autocomplete", "off")
                        .value(move || typed.get())
                        .on_input(move |text| typed.set(text)),
                )
                .put(el("datalist").attr("id", KNOWN).put(live::view(options))),
        )
        .put(el("button").attr("type", "submit").put(key!("log-missed-note")))
        .done()
}

/// An entry of today that says that this was missed.
fn missing(plan: &Plan, word: &str) -> Edit {
    let known = plan.wishes.iter().find(|wish| wish.name.to_lowercase() == word.to_lowercase());
    let first = plan.next_id();
    let (wish, entry) = known.map_or((first, first + 1), |wish| (wish.id, first));
    let put = (known.is_none()).then(|| Edit::Insert {
        list: List::Wishes,
        at: usize::MAX,
        entry: json!({ "id": wish, "name": word }),
    });
    let entry = json!({
        "id": entry, "on": date_text(browser::today()), "hour": browser::hour(), "missed": wish,
    });
    Edit::all(put.into_iter().chain([Edit::Insert { list: List::Readings, at: usize::MAX, entry }]))
}

/// What the counts say of the plan.
fn lessons(app: App, found: Memo<Vec<Learned>>) -> View {
    let lines = move || {
        found.with(|found| {
            if found.is_empty() {
                return el("p").put(key!("log-nothing-learned")).done();
            }
            el("ul").class("changes").put_each(found.iter().map(|one| lesson(app, one))).done()
        })
    };
    fragment().put(el("p").put(key!("log-learned-hint"))).put(live::view(lines)).done()
}

fn lesson(app: App, one: &Learned) -> View {
    let name = app.desk.plan.with_untracked(|plan| named_in(plan, one.store));
    let amount = |value: f64| match one.quantity() {
        Some(quantity) => Figure::of(value, quantity),
        None => app.desk.plan.with_untracked(|plan| kerbstead_core::road_log::told_money(value, plan)),
    };
    let figures: Figures = vec![
        ("name", Figure::Name(name)),
        ("planned", amount(one.planned)),
        ("mean", amount(one.mean)),
        ("low", amount(one.low)),
        ("high", amount(one.high)),
        ("count", Figure::count(one.used as usize)),
    ];
    let title = match one.what {
        What::Water => "log-of-water",
        What::Spending => "log-of-spending",
        What::Cooling => "log-of-cooling",
        What::OtherDraws => "log-of-draws",
        What::Driving => "log-of-driving",
    };
    let told = if one.used > 0 { tell!("log-mean", &figures) } else { t!("log-not-yet") };
    let planned = (one.what != What::Driving).then(|| tell!("log-planned", &figures));
    let take = one.correction.clone().map(|edit| {
        let correct = move || {
            app.edit_and_tell(edit.clone(), t!("log-corrected"));
        };
        button(key!("log-correct"), correct).class("primary").done()
    });
    el("li")
        .class("card")
        .put(el("h3").put(tell(title, &figures)))
        .put(el("p").put(told).put(" ").put(planned))
        .put(one.contradicts.then(|| el("p").put(el("strong").put(key!("log-contradicts"))).done()))
        .put(take)
        .put(left_out(one))
        .done()
}

/// Stretches that were left out, and why.
fn left_out(one: &Learned) -> View {
    if one.outliers.is_empty() && one.gaps.is_empty() {
        return nothing();
    }
    let span = |from, to| format!("{} – {}", say_date(from), say_date(to));
    let outlier = |of: &Span| el("li").put(span(of.from, of.to)).put(": ").put(key!("log-outlier")).done();
    let gap = |gap: &Gap| {
        let why = match gap.why {
            Why::Refilled => key!("log-gap-refilled"),
            Why::Charged => key!("log-gap-charged"),
            Why::FullOrEmpty => key!("log-gap-full-or-empty"),
            Why::TooLong => key!("log-gap-too-long"),
            Why::TooShort => key!("log-gap-too-short"),
            Why::AtHome => key!("log-gap-at-home"),
            Why::Backwards => key!("log-gap-backwards"),
        };
        el("li").put(span(gap.from, gap.to)).put(": ").put(why).done()
    };
    let gaps = one.gaps.iter().rev().take(GAPS).map(gap);
    el("details")
        .put(el("summary").put(key!("log-left-out")))
        .put(el("ul").put_each(one.outliers.iter().map(outlier)).put_each(gaps))
        .done()
}

/// Wishes as they are earned, what was not missed, and what was never used.
fn wished(app: App, found: Memo<Earned>) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(wish) = plan.wishes.iter().find(|wish| wish.id == id) else { return Default::default() };
        let cost = wish.would_cost.map(|cost| tell!("wish-would-cost", &vec![("amount", Figure::Money(cost))]));
        (wish.name.clone(), cost.unwrap_or_default())
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("wishes", id), &["name", "would_cost", "worth", "thing"])
    }
    let list = Entries { list: List::Wishes, line, body, fresh: || json!({}), add: key!("wishes-add") };
    let ranked = move || found.with(|found| ranking(app, found));
    fragment().put(el("p").put(key!("wishes-hint"))).put(live::view(ranked)).put(list.show()).done()
}

fn ranking(app: App, found: &Earned) -> View {
    let name = |id: Id| app.desk.plan.with_untracked(|plan| named_in(plan, id));
    let line = |wish: &EarnedWish| {
        let figures = vec![
            ("name", Figure::Name(name(wish.id))),
            ("days", Figure::of(wish.missed_days as f64, Quantity::Days)),
            ("logged", Figure::of(found.logged_days as f64, Quantity::Days)),
            ("worth", Figure::count(wish.worth as usize)),
        ];
        el("li").put(tell!("wish-earned", &figures)).done()
    };
    let names = |ids: &[Id]| ids.iter().map(|id| name(*id)).collect::<Vec<_>>().join(", ");
    let missed = found.wishes.iter().filter(|wish| wish.missed_days > 0);
    let list = |title, ids: &[Id]| (!ids.is_empty()).then(|| el("p").put(t(title)).put(" ").put(names(ids)).done());
    fragment()
        .put(el("ol").put_each(missed.map(line)))
        .put(list("wishes-not-missed", &found.not_missed))
        .put(list("wishes-never-used", &found.never_used))
        .done()
}

/// The newest entries, and more of them when they are wanted.
fn entries(app: App) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(entry) = plan.readings.iter().find(|entry| entry.id == id) else { return Default::default() };
        let name = entry.on.map_or_else(|| t!("log-no-day"), say_date);
        let missed =
            entry.missed.map(|wish| tell!("log-line-missed", &vec![("name", Figure::Name(named_in(plan, wish)))]));
        let figures = [
            entry.charge_percent.map(|percent| Figure::of(percent, Quantity::Percent)),
            entry.fresh_l.map(|litres| Figure::of(litres, Quantity::VolumeL)),
            entry.cash.map(Figure::Money),
            entry.odometer_km.map(|km| Figure::of(km, Quantity::DistanceKm)),
            entry.measured_c.map(|degrees| Figure::of(degrees, Quantity::TemperatureC)),
        ];
        let said = figures.into_iter().flatten().map(|figure| crate::locale::say_figure(&figure));
        (name, said.chain(missed).collect::<Vec<_>>().join(", "))
    }
    fn body(id: Id) -> View {
        fragment()
            .put(fields(&Path::entry("readings", id), &["on"]))
            .put(fields(&Path::entry("readings", id), COUNTS))
            .done()
    }
    let list = Entries {
        list: List::Readings,
        line,
        body,
        fresh: || json!({ "on": date_text(browser::today()), "hour": 8 }),
        add: key!("readings-add"),
    };
    let shown = Signal::new(SHOWN);
    let is_more = move || app.plan(|plan| plan.readings.len()) > shown.get();
    fragment()
        .put(el("p").put(key!("log-entries-hint")))
        .put(list.newest(shown))
        .put(live::when(is_more, move || button(key!("more"), move || shown.set(shown.get_untracked() + SHOWN)).done()))
        .done()
}
