//! Load: does the van carry it, is it spread well, and does it stay where it is?

use std::collections::BTreeSet;

use jiff::civil::Date;
use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::load::{Axle, Check, Report, Side, Tying, before_driving};
use kerbstead_core::plan::{Path, Plain, Quantity, Room, Vehicle};
use kerbstead_core::space::Placed;
use kerbstead_core::words::Key;

use super::papers::{box_to_tick, row};
use super::{balance_head, section};
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{say_measure, tell};
use crate::parts::{PlotData, fields, plot, said_value, tick_box};
use crate::route::Page;
use crate::state::App;

const MASS: &[&str] = &[
    "empty_mass_kg",
    "is_weighed",
    "weighed_people",
    "weighed_fuel_percent",
    "gross_limit_kg",
    "luggage_kg",
    "person_kg",
    "tank_l",
    "burns",
];
const AXLES: &[&str] = &[
    "wheelbase_mm",
    "floor_from_axle_mm",
    "empty_front_kg",
    "front_limit_kg",
    "rear_limit_kg",
    "rear_overhang_mm",
    "seats_from_axle_mm",
    "track_mm",
    "empty_left_kg",
];
const FASTENING: &[&str] = &["strap_limit_kg", "strip_holds_kg", "strip_times", "strip_heat_percent"];

/// The page.
pub fn load() -> View {
    let app = App::here();
    let report = move |draw: fn(App, &Report) -> View| {
        live::view(move || app.settled_assessment(|assessment| draw(app, &assessment.load)))
    };
    let link = el("p").class("links").put(el("a").attr("href", Page::Space.link()).put(key!("load-to-space")));
    fragment()
        .put(balance_head(Balance::Load))
        .put(link)
        .put(section(key!("load-parts"), all([report(parts), by_day(app)])))
        .put(section(key!("load-axles"), report(axles)))
        .put(section(key!("load-leaving"), before_leaving(app)))
        .put(section(key!("load-tying"), report(tying)))
        .put(section(key!("load-builds"), report(builds)))
        .put(section(key!("load-van"), with_usual("vehicle", MASS, "load-van-usual")))
        .put(section(key!("load-axle-measures"), with_usual("vehicle", AXLES, "load-axles-usual")))
        .put(section(key!("load-fastening"), with_usual("room", FASTENING, "load-fastening-usual")))
        .done()
}

/// Fields, with what is taken for those that are left empty.
fn with_usual(section: &str, names: &'static [&'static str], usual: &'static str) -> View {
    let (vehicle, room) = (Vehicle::default(), Room::default());
    let percent = if section == "room" { room.strip_heat_percent() } else { vehicle.weighed_fuel_percent() };
    let figures = vec![
        ("person", Figure::of(vehicle.person_kg(), Quantity::MassKg)),
        ("percent", Figure::of(percent, Quantity::Percent)),
        ("seats", Figure::of(vehicle.seats_from_axle_mm(), Quantity::LengthMm)),
        ("times", Figure::count(room.strip_times() as usize)),
    ];
    fragment().put(fields(&Path::section(section), names)).put(el("p").class("hint").put(tell(usual, &figures))).done()
}

fn kilograms(mass: f64) -> String {
    say_measure(mass, Quantity::MassKg)
}

fn table(rows: Vec<View>) -> View {
    el("table").put(el("tbody").put_each(rows)).done()
}

/// What the heaviest day is made of.
fn parts(_: App, report: &Report) -> View {
    let Some((parts, worst)) = report.parts.zip(report.worst) else {
        return el("p").put(key!("load-parts-none")).done();
    };
    let lines = [
        (t!("load-part-empty"), parts.empty_kg),
        (t!("load-part-people"), parts.people_kg),
        (t!("load-part-fuel"), parts.fuel_kg),
        (t!("load-part-things"), parts.things_kg),
        (t!("load-part-water"), parts.water_kg),
        (t!("load-part-all"), worst.total_kg),
    ];
    let when =
        worst.on.map_or_else(nothing, |on| el("p").put(tell("load-worst-on", &vec![("on", Figure::Date(on))])).done());
    let range =
        vec![("low", Figure::Name(kilograms(parts.lowest_kg))), ("high", Figure::Name(kilograms(parts.highest_kg)))];
    let unplaced = (report.unplaced_kg > 0.0).then(|| {
        el("p").put(tell("load-unplaced", &vec![("mass", Figure::Name(kilograms(report.unplaced_kg)))])).done()
    });
    fragment()
        .put(when)
        .put(table(lines.into_iter().map(|(name, mass)| row(&name, &[kilograms(mass)])).collect()))
        .put(el("p").put(tell("load-range", &range)))
        .put(unplaced)
        .done()
}

/// What may still come in by day, where there is more than one.
fn by_day(app: App) -> View {
    let data = live::memo(move || {
        let (as_of, days) = app.settled_assessment(|assessment| {
            let days = assessment.load.days.iter().filter_map(|day| Some((day.on?, day.total_kg)));
            (assessment.as_of, days.collect::<Vec<(Date, f64)>>())
        });
        let most =
            app.settled_plan(|plan| plan.vehicle.gross_limit_kg.map(|gross| gross - plan.vehicle.luggage_kg()))?;
        let from = days.first().map(|(on, _)| *on)?;
        let values = || days.iter().map(|(_, mass)| most - mass).collect();
        (days.len() > 1).then(|| PlotData {
            quantity: Some(Quantity::MassKg),
            low_matters: true,
            ..PlotData::by_day("load-plot", from, as_of, values())
        })
    });
    plot(data)
}

/// What each axle and each side bears.
fn axles(_: App, report: &Report) -> View {
    let axle = |name: String, axle: Axle| {
        let spare = match axle.spare_kg {
            Some(spare) if spare < 0.0 => tell("load-axle-over", &mass(-spare)),
            Some(spare) => tell("load-axle-spare", &mass(spare)),
            None => t!("load-axle-no-limit"),
        };
        row(&name, &[kilograms(axle.most_kg), spare])
    };
    let Some(axles) = report.axles else { return el("p").put(key!("load-axles-none")).done() };
    let mut rows = vec![axle(t!("load-axle-front"), axles.front), axle(t!("load-axle-rear"), axles.rear)];
    if let Some(sides) = report.sides {
        rows.push(row(&t!("load-side-left"), &[kilograms(sides.left_kg), String::new()]));
        rows.push(row(&t!("load-side-right"), &[kilograms(sides.right_kg), String::new()]));
    }
    table(rows)
}

fn mass(kg: f64) -> kerbstead_core::explain::Figures {
    vec![("mass", Figure::of(kg, Quantity::MassKg))]
}

/// What it takes to keep each heavy thing where it is.
fn tying(app: App, report: &Report) -> View {
    if report.tying.is_empty() {
        return el("p").put(key!("load-tying-none")).done();
    }
    let list = el("ul").class("lines").put_each(report.tying.iter().map(|tying| tying_line(app, tying)));
    fragment().put(el("p").put(key!("load-tying-how"))).put(list).done()
}

fn tying_line(app: App, tying: &Tying) -> View {
    let path = Path::entry("placements", tying.placement).child("fastened");
    let held = app.desk.plan.with_untracked(|plan| said_value(plan, &path, &tying.fastened.to_plain()));
    let force = |newtons: f64| Figure::of(newtons, Quantity::ForceN);
    let figures = vec![
        ("name", Figure::Name(tying.name.clone())),
        ("mass", Figure::of(tying.mass_kg, Quantity::MassKg)),
        ("held", Figure::Name(held)),
        ("forward", force(tying.forward_n)),
        ("sideways", force(tying.sideways_n)),
        ("up", force(tying.upward_n)),
        ("limit", Figure::of(tying.aggregate_limit_kg, Quantity::MassKg)),
        ("ties", Figure::count(tying.straps.unwrap_or(tying.fewest_ties) as usize)),
        ("strips", Figure::count(tying.strips.unwrap_or(0) as usize)),
    ];
    let straps = if tying.straps.is_some() { "load-tying-straps" } else { "load-tying-fewest" };
    el("li")
        .put(
            el("a")
                .attr("href", format!("{}/{}", Page::Space.link(), tying.placement))
                .put(tell("load-tying-name", &figures)),
        )
        .put(el("br"))
        .put(tell("load-tying-forces", &figures))
        .put(" ")
        .put(tell(straps, &figures))
        .put(tying.strips.map(|_| fragment().put(" ").put(tell("load-tying-strips", &figures)).done()))
        .done()
}

/// What heavier ways of building leave.
fn builds(_: App, report: &Report) -> View {
    if report.builds.is_empty() {
        let link = el("a").attr("href", Page::Futures.link()).put(key!("page-futures"));
        return el("p").put(key!("load-builds-none")).put(" ").put(link).done();
    }
    let rows = report.builds.iter().map(|build| {
        let spare = if build.spare_kg < 0.0 {
            tell("load-axle-over", &mass(-build.spare_kg))
        } else {
            tell("load-axle-spare", &mass(build.spare_kg))
        };
        row(&build.name, &[kilograms(build.mass_kg), spare])
    });
    table(rows.collect())
}

/// The list to go through before driving off, with boxes to tick; ticks stay while the page does.
fn before_leaving(app: App) -> View {
    let checks = live::memo(move || app.settled_plan(|plan| before_driving(plan, &Placed::new(plan))));
    let ticked: Signal<BTreeSet<String>> = Signal::new(BTreeSet::new());
    let list = move || checks.with(|checks| by_side(checks, &|check| line(check, ticked)));
    let left = move || {
        let left = checks
            .with(|checks| ticked.with(|ticked| checks.iter().filter(|check| !ticked.contains(&check.id)).count()));
        if left == 0 {
            t!("load-leaving-done")
        } else {
            tell("load-leaving-left", &vec![("count", Figure::count(left))])
        }
    };
    fragment()
        .put(el("p").attr("role", "status").put(live::text(left)))
        .put(live::view(list))
        .put(crate::parts::button(key!("load-leaving-again"), move || ticked.set(BTreeSet::new())).class("quiet"))
        .done()
}

fn line(check: &Check, ticked: Signal<BTreeSet<String>>) -> View {
    let (id, text) = (check.id.clone(), tell(check.key, &check.figures));
    let is_on = {
        let id = id.clone();
        move || ticked.with(|ticked| ticked.contains(&id))
    };
    let set = {
        let id = id.clone();
        move |on: bool| {
            ticked.update(|ticked| if on { ticked.insert(id.clone()) } else { ticked.remove(&id) });
        }
    };
    el("li").put(tick_box(format!("check-{id}"), text, is_on, set)).done()
}

/// The same list to print, with boxes for a pencil.
pub fn leaving_sheet(app: App) -> View {
    let checks = app.plan(|plan| before_driving(plan, &Placed::new(plan)));
    let line = |check: &Check| el("li").put(box_to_tick(&tell(check.key, &check.figures), 1)).done();
    fragment().put(el("h2").put(key!("sheet-leaving"))).put(by_side(&checks, &line)).done()
}

/// The points of the list, each where one stands.
fn by_side(checks: &[Check], line: &dyn Fn(&Check) -> View) -> View {
    let part = |side: Side, title: Key| {
        let lines = checks.iter().filter(|check| check.side == side).map(line);
        fragment().put(el("h3").put(title)).put(el("ul").class("ticks").put_each(lines)).done()
    };
    all([
        part(Side::Outside, key!("load-leaving-outside")),
        part(Side::Inside, key!("load-leaving-inside")),
        part(Side::Driver, key!("load-leaving-driver")),
    ])
}
