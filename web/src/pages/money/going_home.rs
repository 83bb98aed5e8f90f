//! What would be left for whoever sold the van and went home, day by day.

use kerbstead_core::Verdict;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::GoingHome;

use super::super::section;
use crate::el::{View, el, fragment, nothing};
use crate::live;
use crate::locale::tell;
use crate::parts::{PlotData, Shape, folded_working, icon, plot};
use crate::state::App;

/// The walk-away line; nothing while no room has a price.
pub fn going_home() -> View {
    let app = App::here();
    let home = live::memo(move || app.settled_assessment(|assessment| assessment.money.going_home.clone()));
    let data = live::memo(move || {
        home.with(|home| {
            let days = &home.as_ref()?.days;
            let from = days.first()?.on;
            let values = days.iter().map(|day| day.left.to_plot()).collect();
            Some(PlotData { low_matters: true, ..PlotData::by_day("home-plot", from, from, values) })
        })
    });
    let working =
        live::memo(move || home.with(|home| home.as_ref().map_or_else(Vec::new, |home| home.working.clone())));
    let line = move || home.with(|home| home.as_ref().map_or_else(nothing, line));
    let content = move || {
        fragment()
            .put(el("p").put(key!("home-meaning")))
            .put(live::view(line))
            .put(plot(data))
            .put(folded_working(working))
            .done()
    };
    live::when(move || home.with(Option::is_some), move || section(key!("money-going-home"), content()))
}

fn line(home: &GoingHome) -> View {
    let lasts = home.days.last().is_some_and(|day| Some(day.on) == home.last_on);
    let (verdict, key) = match home.last_on {
        Some(_) if lasts => (Verdict::Holds, "home-always"),
        Some(_) => (Verdict::Tight, "home-until"),
        None => (Verdict::FallsShort, "home-never"),
    };
    let left = home.days.last().map_or_else(Default::default, |day| day.left);
    let mut figures = vec![("left", Figure::Money(left)), ("room", Figure::Money(home.room))];
    figures.extend(home.last_on.map(|on| ("on", Figure::Date(on))));
    el("p").class("reply").put(icon(Shape::Verdict(verdict))).put(" ").put(tell(key, &figures)).done()
}
