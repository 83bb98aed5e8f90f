//! The temperature, the dew point and the air by hour, of which a day can be looked at.

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::warmth::shell::Kind;
use kerbstead_core::warmth::{FaceReport, Hour, Report, SurfaceReport};

use super::shell::kind_name;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::parts::{Lane, Picked, PlotData, TwoDays, around, button, plot, plot_to_pick, time};
use crate::state::App;

/// Inside by hour, and two days of it with what gets wet.
pub fn nights() -> View {
    let app = App::here();
    let picked: Picked = Signal::new(None);
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let warmth = &assessment.warmth;
            of_hours("warmth-plot", warmth, assessment.as_of, |hour| hour.inside_c).map(|plot| PlotData {
                quantity: Some(Quantity::TemperatureC),
                floor: warmth.least_c,
                low_matters: true,
                ..plot
            })
        })
    });
    fragment()
        .put(plot_to_pick(data, picked))
        .put(steps(app, picked))
        .put(live::view(move || two_days(app, picked.get())))
        .done()
}

/// Carbon dioxide by hour.
pub fn air() -> View {
    let app = App::here();
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let (warmth, today) = (&assessment.warmth, assessment.as_of);
            of_hours("warmth-air-plot", warmth, today, |hour| hour.co2_ppm).map(|plot| PlotData {
                quantity: Some(Quantity::Count),
                ceiling: Some(kerbstead_core::thermal::constants::WORK_PPM[0]),
                ..plot
            })
        })
    });
    fragment().put(plot(data)).put(el("p").class("hint").put(key!("warmth-air-limits"))).done()
}

/// How cold and how hot the power stores get, and how long they do not charge for it.
pub fn stores() -> View {
    let app = App::here();
    let line = move |assessment: &kerbstead_core::Assessment| {
        let [coldest, hottest] = assessment.warmth.heavy_c?;
        let hours: u32 = assessment.power.stores.iter().map(|store| store.refused_hours).sum();
        let figures = vec![
            ("coldest", Figure::of(coldest, Quantity::TemperatureC)),
            ("hottest", Figure::of(hottest, Quantity::TemperatureC)),
            ("hours", Figure::of(f64::from(hours), Quantity::Hours)),
        ];
        Some(if hours > 0 { tell!("warmth-store-refuses", &figures) } else { tell!("warmth-store-takes", &figures) })
    };
    let text = move || app.settled_assessment(|assessment| line(assessment)).unwrap_or_default();
    fragment()
        .put(el("p").put(live::text(text)))
        .put(crate::parts::take_care(&[kerbstead_core::Caution::StoreHeatAndFrost]))
        .done()
}

fn of_hours(title: &'static str, warmth: &Report, today: Date, of: fn(&Hour) -> f64) -> Option<PlotData> {
    let from = warmth.from.filter(|_| !warmth.hours.is_empty())?;
    let values = warmth.hours.iter().map(of).collect();
    Some(PlotData { per_day: 24, ..PlotData::by_day(title, from, today, values) })
}

/// A day earlier, a day later, and the coldest night.
fn steps(app: App, picked: Picked) -> View {
    let of = move |of: fn(&Report) -> usize| app.desk.assessment.with_untracked(|assessment| of(&assessment.warmth));
    let coldest = move || of(|warmth| warmth.coldest.unwrap_or(0));
    let shift = move |by: isize| {
        let now = picked.get_untracked().unwrap_or_else(coldest);
        let last = of(|warmth| warmth.hours.len().saturating_sub(1));
        picked.set(Some(now.checked_add_signed(by).map_or(now, |next| next.min(last))));
    };
    el("div")
        .class("buttons")
        .put(button(key!("day-earlier"), move || shift(-24)))
        .put(button(key!("warmth-coldest-night"), move || picked.set(Some(coldest()))))
        .put(button(key!("day-later"), move || shift(24)))
        .done()
}

/// The evening before the hour that is picked belongs to its night, so a night is whole.
fn two_days(app: App, picked: Option<usize>) -> View {
    let Some(picked) = picked else { return el("p").put(key!("power-day-hint")).done() };
    app.settled_assessment(|assessment| {
        let warmth = &assessment.warmth;
        let Some(begins) = warmth.from.filter(|_| !warmth.hours.is_empty()) else { return nothing() };
        let (range, from) = around(picked.saturating_sub(12), begins, warmth.hours.len());
        let hours = warmth.hours.get(range.clone()).unwrap_or_default();
        let of = |of: fn(&Hour) -> f64| hours.iter().map(of).collect::<Vec<f64>>();
        let asleep =
            Lane { name: t!("warmth-asleep"), class: "hours dark", is: hours.iter().map(|hour| hour.asleep).collect() };
        let is_wet =
            |face: &FaceReport, hour: usize| face.wet.iter().any(|(from, until)| (*from..*until).contains(&hour));
        // A surface is wet where its wall, its ribs or its windows are.
        let wet = |surface: &SurfaceReport| Lane {
            name: kind_name(surface.kind),
            class: "hours wet",
            is: range.clone().map(|hour| faces_of(warmth, surface.kind).any(|face| is_wet(face, hour))).collect(),
        };
        let lanes = warmth.surfaces.iter().map(wet).filter(|lane| lane.is.contains(&true));
        let courses = [of(|hour| hour.inside_c), of(|hour| hour.outside_c), of(|hour| hour.dew_point_c)];
        let lowest = courses.iter().flatten().copied().fold(0.0, f64::min);
        let highest = courses.iter().flatten().copied().fold(10.0, f64::max);
        let (low, high) = ((lowest / 5.0).floor() * 5.0, (highest / 5.0).ceil() * 5.0);
        let [inside, outside, dew] = courses;
        TwoDays {
            from,
            lanes: std::iter::once(asleep).chain(lanes).collect(),
            said: said(hours),
            courses: vec![
                (key!("warmth-inside"), inside),
                (key!("warmth-outside"), outside),
                (key!("warmth-dew"), dew),
            ],
            quantity: Quantity::TemperatureC,
            levels: vec![low, f64::midpoint(low, high), high],
            table: "power-day-table",
        }
        .show()
    })
}

fn faces_of(warmth: &Report, kind: Kind) -> impl Iterator<Item = &FaceReport> {
    warmth.faces.iter().filter(move |face| face.kind == kind)
}

fn said(hours: &[Hour]) -> String {
    let coldest = hours.iter().enumerate().min_by(|a, b| a.1.inside_c.total_cmp(&b.1.inside_c));
    let (at, hour) = coldest.map(|(at, hour)| (at, *hour)).unwrap_or_default();
    let figures = vec![
        ("inside", Figure::of(hour.inside_c, Quantity::TemperatureC)),
        ("outside", Figure::of(hour.outside_c, Quantity::TemperatureC)),
        ("at", Figure::Name(time(at + 1))),
        ("humidity", Figure::of(hour.humidity_percent, Quantity::Percent)),
    ];
    tell!("warmth-day-said", &figures)
}
