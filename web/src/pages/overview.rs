//! Where the plan stands.

use jiff::civil::Date;
use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Path, Plan, days_between, field, read_date};

use super::changes::first_changes;
use super::{BALANCES, balance_page, balance_title, section, standing};
use crate::el::{View, all, el, fragment};
use crate::live::{self, Signal};
use crate::locale::{say_date, t, words};
use crate::parts::{button, field_label, verdict_badge};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn overview() -> View {
    let cards = BALANCES.map(card);
    fragment()
        .put(el("h1").put(key!("page-overview")))
        .put(demo_banner())
        .put(dates_line())
        .put(el("div").class("cards").put_each(cards))
        .put(first_changes(App::here()))
        .put(guesses())
        .put(problems())
        .put(next_pages())
        .done()
}

fn demo_banner() -> View {
    let app = App::here();
    let is_demo =
        move || app.desk.shelf.with(|shelf| shelf.cards.iter().any(|card| card.slot == shelf.open && card.is_demo));
    live::when(is_demo, || {
        el("div")
            .class("banner")
            .put(el("p").put(key!("demo-banner")))
            .put(el("a").class("button").attr("href", Page::Start.link()).put(key!("demo-start-own")))
            .done()
    })
}

/// When the plan begins and ends, as a sentence.
pub(super) fn dates_line() -> View {
    let app = App::here();
    let line = move || app.assessment(|assessment| dates(assessment.as_of, assessment.leaves_on, assessment.ends_on));
    el("p").class("dates").put(live::text(line)).done()
}

fn dates(as_of: Date, leaves_on: Option<Date>, ends_on: Date) -> String {
    let Some(leaves_on) = leaves_on else { return t!("dates-no-leaving") };
    let days = days_between(as_of, leaves_on);
    let figures = vec![
        ("days", Figure::of(f64::from(days), kerbstead_core::plan::Quantity::Days)),
        ("leaves", Figure::Date(leaves_on)),
        ("ends", Figure::Date(ends_on)),
    ];
    match days {
        1.. => tell!("dates-ahead", &figures),
        _ => tell!("dates-on-the-road", &figures),
    }
}

fn card(balance: Balance) -> View {
    let app = App::here();
    let view = live::memo(move || standing(app, balance));
    let page = balance_page(balance);
    el("article")
        .class("card")
        .put(el("h2").put(el("a").attr("href", page.link()).put(balance_title(balance))))
        .put(live::view(move || {
            let standing = view.get();
            let worst = standing.findings.first().map(|finding| finding.text().to_owned());
            fragment()
                .put(el("p").put(verdict_badge(standing.verdict)))
                .put(el("p").class("line").put(standing.line.clone()))
                .put(worst.map(|text| el("p").class("worst").put(text).done()))
                .done()
        }))
        .done()
}

/// Values this tool put in, to be confirmed or corrected.
fn guesses() -> View {
    let app = App::here();
    let guesses = live::memo(move || app.plan(|plan| plan.guesses.iter().cloned().collect::<Vec<_>>()));
    let confirm_all = move || {
        let text = t!("guesses-confirmed");
        app.edit_and_tell(Edit::Guess { paths: guesses.get_untracked(), guessed: false }, text);
    };
    let count = move || tell!("guesses-count", &vec![("count", Figure::count(guesses.get().len()))]);
    let list = move || app.plan(|plan| all(guesses.get().iter().map(|path| guess_line(plan, path))));
    let is_open = Signal::new(false);
    live::when(
        move || !guesses.get().is_empty(),
        move || {
            el("section")
                .class("guesses")
                .attr("aria-label", t!("guesses-title"))
                .put(el("h2").put(key!("guesses-title")))
                .put(el("p").put(live::text(count)))
                .put(
                    el("details")
                        .on_toggle(move |open| is_open.set(open))
                        .put(el("summary").put(key!("guesses-list")))
                        .put(el("ul").put(live::when(move || is_open.get(), move || live::view(list)))),
                )
                .put(button(key!("guesses-confirm-all"), confirm_all))
                .done()
        },
    )
}

fn guess_line(plan: &Plan, path: &Path) -> View {
    el("li").put(el("a").attr("href", page_of(path)).put(place_name(plan, path))).done()
}

/// The page on which a path can be edited.
fn page_of(path: &Path) -> String {
    let (section, rest) = path.split_first();
    match section {
        "kit" => format!("{}/{}", Page::Kit.link(), rest.split('/').next().unwrap_or_default()),
        "purse" | "belongings" | "incomes" | "costs" | "purchase" | "loans" => Page::Money.link(),
        "readings" | "wishes" => Page::Log.link(),
        "selling" => Page::Selling.link(),
        "trial" | "builds" => Page::Futures.link(),
        "tasks" | "task_needs" | "tools" | "helpers" | "other_days" | "building" => Page::Work.link(),
        "placements" | "sleepers" | "distances" | "room" => Page::Space.link(),
        "corners" | "built_ins" | "doors" | "wall_rows" | "roof_rows" => Page::Inside.link(),
        "climate" | "years" => Page::Sky.link(),
        "charging" => Page::Power.link(),
        "water_uses" | "water_stops" | "people" => Page::Water.link(),
        "shell" | "layers" => Page::Warmth.link(),
        "stock" | "flaws" | "cuts" | "cutting" | "coverings" | "material_packs" => Page::Materials.link(),
        "work" | "data_uses" | "data_contracts" => Page::Signal.link(),
        "vehicle" => match rest {
            "socket_volts" | "socket_fuse_a" => Page::Power.link(),
            "resale" | "resale_falls" | "fuel_l_per_100_km" | "fuel_price_per_l" => Page::InAndOut.link(),
            "size" | "inside_length_mm" | "inside_width_mm" | "inside_height_mm" => Page::Inside.link(),
            _ => Page::Load.link(),
        },
        "title" | "currency" => Page::Plans.link(),
        _ => Page::Route.link(),
    }
}

/// Where a path is, in words: the name of the entry and the label of the field.
pub(super) fn place_name(plan: &Plan, path: &Path) -> String {
    let label = part_label(path);
    let mut parts = path.as_str().splitn(3, '/');
    let (section, id) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
    let entry = plan.value(&Path::from(format!("{section}/{id}").as_str()));
    let name = ["name", "place", "weekday", "first_day"].iter().find_map(|key| entry.get(key)?.as_str());
    match (section, name) {
        ("other_days", Some(day)) => {
            let day = read_date(day).map_or_else(|| day.to_owned(), say_date);
            format!("{day}: {label}")
        }
        ("week", Some(day)) => format!("{}: {label}", t(&format!("choice-weekday-{day}"))),
        (_, Some(name)) => format!("{name}: {label}"),
        _ => label,
    }
}

/// The label of a field, or the name of a part such as `draw`.
pub(super) fn part_label(path: &Path) -> String {
    match (field::at(path), path.last()) {
        (Some(field), _) => field_label(field),
        (None, "outcome") => t!("part-outcome"),
        (None, "returned") => t!("part-returned"),
        (None, part @ ("draw" | "store" | "panel" | "tank" | "toilet" | "water" | "paid" | "sale")) => {
            t(&format!("part-{part}"))
        }
        (None, _) => path.to_string(),
    }
}

fn problems() -> View {
    let app = App::here();
    let lines = move || {
        app.plan(|plan| {
            app.desk.problems.with(|problems| {
                let line = |problem: &kerbstead_core::plan::Problem| {
                    let text = words(|words| words.problem(problem));
                    let name = place_name(plan, &problem.path);
                    el("li").put(el("a").attr("href", page_of(&problem.path)).put(name)).put(": ").put(text).done()
                };
                all(problems.iter().map(line))
            })
        })
    };
    live::when(
        move || app.desk.problems.with(|problems| !problems.is_empty()),
        move || section(key!("problems-title"), el("ul").class("problems").put(live::view(lines)).done()),
    )
}

fn next_pages() -> View {
    let links = [
        (Page::Log, "next-log"),
        (Page::Tonight, "next-tonight"),
        (Page::Kit, "next-kit"),
        (Page::Route, "next-route"),
        (Page::Papers, "next-papers"),
        (Page::Share, "next-share"),
        (Page::Plans, "next-plans"),
    ];
    let links = links.map(|(page, text)| el("li").put(el("a").attr("href", page.link()).put(t(text))).done());
    section(key!("next-title"), el("ul").class("links").put_each(links).done())
}
